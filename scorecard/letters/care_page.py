"""Care cards to print and cut: several to an A4 page, with cut marks, in words alone.

Enters: a card. Leaves: a page that needs no network and no script; its content security policy allows its own style
sheet, by its hash, and nothing else. Lengths are millimetres on the paper.
"""

from collections.abc import Iterator, Sequence
from datetime import datetime
from pathlib import Path

from scorecard import __version__
from scorecard.care import CareCard
from scorecard.frozen import dataclass
from scorecard.harmless import environment
from scorecard.letters.plain import one_line
from scorecard.page_policy import worn
from scorecard.words import counted, moment_words

HERE = Path(__file__).parent
PAPER = (210, 297)  # A4, as are the margins below in its style sheet
MARGINS = (15.0, 16.5)  # left and right, top and bottom
SHAPES = {8: (2, 4), 4: (2, 2), 2: (1, 2)}  # cards across and down, by cards on a page
GAP, TICK, CROSS = 3.0, 8.0, 2.5  # between card and tick, length of a tick, arm of a cross


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """Where the cards are cut: across and down, in mm from the paper's top left corner."""

    across: tuple[float, ...]
    down: tuple[float, ...]


def grid_of(per_page: int) -> Grid:
    """Return where so many cards are cut."""
    columns, rows = SHAPES[per_page]
    (width, height), (side, top) = PAPER, MARGINS
    return Grid(
        across=tuple(side + at * (width - 2 * side) / columns for at in range(columns + 1)),
        down=tuple(top + at * (height - 2 * top) / rows for at in range(rows + 1)),
    )


def cut_marks(grid: Grid) -> str:
    """Return the path of the cut marks: ticks in the margins at every cut, crosses where cuts meet within the page."""
    left, right, top, bottom = grid.across[0], grid.across[-1], grid.down[0], grid.down[-1]
    ends = [(top - GAP - TICK, top - GAP), (bottom + GAP, bottom + GAP + TICK)]
    sides = [(left - GAP - TICK, left - GAP), (right + GAP, right + GAP + TICK)]
    return "".join(
        [
            *(_line(x, start, x, end) for x in grid.across for start, end in ends),
            *(_line(start, y, end, y) for y in grid.down for start, end in sides),
            *(_cross(x, y) for x in grid.across[1:-1] for y in grid.down[1:-1]),
        ]
    )


def _line(x: float, y: float, to_x: float, to_y: float) -> str:
    return f"M{x:g} {y:g}L{to_x:g} {to_y:g}"


def _cross(x: float, y: float) -> str:
    return _line(x - CROSS, y, x + CROSS, y) + _line(x, y - CROSS, x, y + CROSS)


def care_page(card: CareCard, notes: Sequence[str], *, per_page: int, pieces: int, made: datetime) -> str:
    """Return the page to print and cut; the same card and time give the same bytes.

    Parameters
    ----------
    card : what stands on each
    notes : what to mind, sentences without the full stop; on the screen alone
    per_page : cards on a page, one of ``SHAPES``
    pieces : how many cards are wanted
    made : when the page is made
    """
    return (
        environment(HERE)
        .get_template("care.html.jinja")
        .render(
            **worn(HERE / "care.css"),
            item=one_line(card.item),
            lines=[one_line(line) for line in card.lines],
            cautions=[one_line(line) for line in card.cautions],
            sender=one_line(card.sender),
            per_page=per_page,
            marks=cut_marks(grid_of(per_page)),
            how=list(_how(per_page, pieces)),
            notes=list(notes),
            version=__version__,
            written=moment_words(made),
        )
    )


def _how(per_page: int, pieces: int) -> Iterator[str]:
    pages = -(-pieces // per_page)
    printed = f"for {counted(pieces, 'piece')} print it {counted(pages, 'time')}"
    yield f"{per_page} cards to a page: {printed}, on card if you have it"
    yield "In the printing window choose A4 and 100 % (actual size), without headers and footers"
    yield "Cut from mark to mark along a ruler"
