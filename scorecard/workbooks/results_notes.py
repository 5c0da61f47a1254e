"""The sheets Ruled out and Notes: who is not ranked and why, and how everything is reckoned."""

from collections.abc import Iterator
from itertools import islice
from textwrap import wrap

import numpy as np
from xlsxwriter.worksheet import Worksheet

import scorecard
from scorecard.criteria import Criterion
from scorecard.ranking import TIE, ranks_if_let_in
from scorecard.reasons import what_lets_in, why_ruled_out
from scorecard.stage import draws_on_price
from scorecard.words import counted, shortest
from scorecard.workbooks.results_view import FIRST, HEAD, NAME_WIDTH, QUIET, Book, View, heading_height
from scorecard.workbooks.safe import clean_text, put

RULED_OUT_TITLES = (
    "Maker",
    "Row in makers file",
    "Why",
    "What would let it in",
    "Score",
    "Ranked makers at or above",
    "Rank if it alone were let in",
)
RULED_OUT_WIDTHS = (NAME_WIDTH, 12, 50, 40, 9, 13, 13)
NOTE_WIDTHS = (26, 100)
MOST_CAUTIONS = 100
HAIR = 1e-12  # more than sums differ between programs, less than any difference that counts

Note = tuple[str, str]


def write_ruled_out(book: Book, view: View) -> None:
    """Write the sheet Ruled out: who fails a limit, why, what would let it in, and where it would then stand."""
    about = "Makers that fail a limit whatever the open answers turn out to be. They are not ranked."
    page = book.page("Ruled out", "Ruled out", about if view.ruled_out else "No maker is ruled out.")
    for at, width in enumerate(RULED_OUT_WIDTHS):
        page.set_column(at, at, width)
    book.headings(page, RULED_OUT_TITLES, words=(0, 2, 3))
    page.set_row(HEAD, heading_height(RULED_OUT_TITLES, RULED_OUT_WIDTHS))
    page.freeze_panes(HEAD + 1, 1)
    for row, maker in enumerate(view.ruled_out, start=FIRST):
        _write_ruled_out(book, page, view, (row, maker))
    _write_let_in(book, page, view)


def _write_ruled_out(book: Book, page: Worksheet, view: View, line: tuple[int, int]) -> None:
    row, maker = line
    at, points_row = row - 1, row + len(view.ranked)
    why, needed = why_and_what(view, maker)
    wrapped = book.words(text_wrap=True)
    page.write_string(at, 0, view.names[maker], book.words())
    page.write_number(at, 1, view.assessment.case.table.rows[maker], book.number("0"))
    put(page, (at, 2), why, wrapped)
    put(page, (at, 3), needed, wrapped)
    lines = max(len(wrap(clean_text(text)[:2000], width - 2)) for text, width in ((why, 52), (needed, 42)))
    page.set_row(at, 15.0 * min(max(lines, 1), 10) + 1)
    score = f"=SUMPRODUCT({view.share_row},Points!B{points_row}:{view.last_column}{points_row})"
    page.write_formula(at, 4, score, book.number(), view.assessment.ranking.scores[maker])


def why_and_what(view: View, maker: int) -> tuple[str, str]:
    """Return why a maker is ruled out, and what would let it in, as texts."""
    fails = [at for at, flag in enumerate(view.assessment.screening.fails[maker].tolist()) if flag]
    pairs = [(view.criteria[at], view.assessment.countings[at]) for at in fails]
    why = "; ".join(why_ruled_out(criterion, counting, maker) for criterion, counting in pairs)
    return why, "; ".join(what_lets_in(criterion, counting, maker) for criterion, counting in pairs)


def _write_let_in(book: Book, page: Worksheet, view: View) -> None:
    """Write where each would stand: level with the ranked makers just above it, or in the place below them."""
    whole, quiet = book.number("0"), book.number("0", font_color=QUIET)
    ranks, scores = f"Scores!{view.down('M')}", f"Scores!{view.down('L')}"
    for row, (above, place) in enumerate(_standings(view), start=FIRST):
        level = f"INDEX({scores},INDEX({ranks},F{row}))-E{row}<={TIE}"
        rank = f"=IF(F{row}=0,1,IF({level},INDEX({ranks},F{row}),F{row}+1))"
        if view.ranked:
            page.write_formula(row - 1, 5, f"=SUMPRODUCT(--(Scores!{view.down('C')}>=E{row}-{HAIR}))", quiet, above)
            page.write_formula(row - 1, 6, rank, whole, place)
        else:
            page.write_number(row - 1, 5, 0, quiet)
            page.write_number(row - 1, 6, 1, whole)


def _standings(view: View) -> list[tuple[int, int]]:
    """Return of each ruled-out maker how many that are shown stand at or above it, and the rank it would have."""
    ranking = view.assessment.ranking
    rising = np.sort(-ranking.scores[view.ranked])
    above = np.searchsorted(rising, HAIR - ranking.scores[view.ruled_out], side="right").tolist()
    places = ranks_if_let_in(ranking, view.ruled_out)
    return [(count, min(place, len(view.ranked) + 1)) for count, place in zip(above, places, strict=True)]


def write_notes(book: Book, view: View) -> None:
    """Write the sheet Notes: how to use the workbook, how it reckons, what was noticed."""
    page = book.page("Notes", "Notes", "What the cells mean, how they are reckoned, and how to keep other weights.")
    for at, width in enumerate(NOTE_WIDTHS):
        page.set_column(at, at, width)
    row = 3
    for heading, text in _notes(view):
        lines = clean_text(text)[:4000]
        put(page, (row, 0), heading, book.words(bold=True, text_wrap=True))
        put(page, (row, 1), lines, book.words(text_wrap=True))
        page.set_row(row, 15.0 * min(max(len(wrap(lines, NOTE_WIDTHS[1] - 6)), 1), 25) + 5)
        row += 1


def _notes(view: View) -> Iterator[Note]:
    yield from _use(view)
    yield from _reckoning(view)
    yield from _limits(view)
    yield from _cautions(view)
    yield "Made", f"{view.made.isoformat(sep=' ', timespec='minutes')}, Maker Scorecard {scorecard.__version__}."
    yield "As of", f"{view.assessment.as_of.isoformat()}: the day that stands for today."
    for source in view.assessment.case.sources:
        yield "Read", f"{source.name} (SHA-256 {source.digest})"


def _use(view: View) -> Iterator[Note]:
    yield (
        "Marked cells",
        (
            "On Shortlist, the cells with a coloured ground and a border are weights: change them, and everything that "
            "depends on weights follows at once. All other cells are locked, without a password."
        ),
    )
    yield (
        "To keep weights",
        (
            "Nothing flows back to the folder: neither the criteria file nor the report changes. Shortlist shows the "
            f"command that keeps the weights, of the form {view.command('reweigh NAME=WEIGHT --save')}"
            if view.assessment.case.criteria.note.method == "typed"
            else "Nothing flows back to the folder: neither the criteria file nor the report changes. These weights "
            "come from judgements: to keep others, change the table [weights] in the criteria file."
        ),
    )
    yield (
        "To change an answer",
        f"Write it into the makers file, then: {view.command('score')} (points are not reckoned here)",
    )
    if view.assessment.case.left_out:
        yield (
            "Not all makers",
            (
                f"{counted(view.assessment.case.left_out, 'maker')} of a very long list, worse at the saved weights, "
                "are not here. Other weights might bring another one in: score again to be sure."
            ),
        )


def _reckoning(view: View) -> Iterator[Note]:
    yield "Share", "A weight over the sum of weights. Only the proportions of the weights matter."
    yield "Points", "What an answer is worth on its criterion, 0 to 100, by the criteria file."
    yield "Score", "The sum of share times points over all criteria, 0 to 100: the additive value model."
    yield (
        "Lowest, Highest",
        (
            "The score if every unknown or ranged answer turned out at its worst, or at its best. Which of them counts "
            "in the score is set for each criterion in the criteria file."
        ),
    )
    yield "Known", "The part of the score's 100 whose answers are known."
    yield (
        "Rank",
        (
            "By score; scores within 0.000000001 of the best of their group are level, share the better rank, and "
            "stand in the order of the makers file."
        ),
    )
    yield (
        "Moves makers by at most",
        "How far this criterion can move two ranked makers apart: share times (most - least points).",
    )
    for criterion in view.criteria:
        yield criterion.title, _what_counts(criterion)


def _what_counts(criterion: Criterion) -> str:
    rule = criterion.unknown
    counts = (
        f"as {shortest(rule)} points, held within what is possible"
        if isinstance(rule, float | int)
        else f"as the {rule} that is possible"
    )
    source = f"column “{criterion.column}”" if criterion.column else f"measure “{criterion.measure}”"
    return (
        f"Named {criterion.key} in the criteria file; from the {source}. An unknown or ranged answer counts {counts}."
    )


def _limits(view: View) -> Iterator[Note]:
    if view.assessment.screening.may_fail.any():
        yield (
            "May yet fail a limit",
            "An answer is still open, and some of what it may be fails a limit. Ask before you order.",
        )
    if not draws_on_price(view.assessment):
        yield "Not in this ranking", "Price and freight, since no criterion that counts draws on them."


def _cautions(view: View) -> Iterator[Note]:
    case = view.assessment.case
    for one in case.set_aside:
        yield "Taken as unknown", str(one)
    cautions = [one for one in case.warnings if one.code != "read-as"]
    for one in islice(cautions, MOST_CAUTIONS):
        yield "Caution", str(one)
    if len(cautions) > MOST_CAUTIONS:
        yield "Caution", f"{len(cautions) - MOST_CAUTIONS} more; to see them all: {view.command('check')}"
