"""Geometry of scores against one share: straight lines, where the lead passes, and words that never overlap.

Enters: lines, crossings and words. Leaves: places across as percentages, places down as multiples of the text's size,
so that the words keep their size on any screen and the drawing grows with them.
"""

from collections.abc import Sequence
from math import ceil, floor

from scorecard.frozen import dataclass
from scorecard.report.charts import percent
from scorecard.words import shortest

ROW, NAME = 1.6, 1.45  # heights, in text sizes, of the words of a crossing and of a name; in style.css too
HEAD, FOOT = 1.6, 3.2  # above the lines: what the figures are; below them: the scale, and the share as it is
EDGE = 26  # nearer than this to a side, words at a mark begin or end there rather than lie across it


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """One line to draw: its place and name, the scores at share 0 and at share 100, and whether it leads anywhere."""

    place: str
    name: str
    start: float
    end: float
    leads: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Crossing:
    """Where the lead passes on: the share and the score there, 0 to 100, and the words that say so."""

    share: float
    score: float
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line as drawn, its name at its left end: ``look`` names its dashes, ``name_at`` is the middle of the name."""

    place: str
    name: str
    look: str
    start: str
    end: str
    name_at: str
    name_top: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """A crossing as drawn: where it is, where its words stand, and on which side of it they run."""

    x: str
    y: str
    row: str
    row_end: str
    rest: str
    leftwards: bool
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Tick:
    """A line of the grid and its figure."""

    y: str
    figure: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LineChart:
    """A whole drawing.

    Parameters
    ----------
    height, top, bottom : of the drawing, and where the ground of the lines begins and ends
    ticks : scores, the highest first
    lines, marks : as drawn
    now : the share as it is
    now_anchor : how its words lie to it: start, middle or end
    scale_at, now_at, head_at : where words below and above the ground stand
    """

    height: str
    top: str
    bottom: str
    ticks: tuple[Tick, ...]
    lines: tuple[Line, ...]
    marks: tuple[Mark, ...]
    now: str
    now_anchor: str
    scale_at: str
    now_at: str
    head_at: str


@dataclass(frozen=True, slots=True)
class Ground:
    """The ground of the lines: its upper and lower edge in text sizes, and the scores that these stand for."""

    top: float
    bottom: float
    highest: float
    lowest: float

    def down(self, score: float) -> float:
        """Return how far down a score is, in text sizes."""
        return self.top + (self.highest - score) / (self.highest - self.lowest) * (self.bottom - self.top)


def line_chart(lines: Sequence[Drawn], crossings: Sequence[Crossing], now: float, room: float) -> LineChart:
    """Return the drawing of some lines.

    Parameters
    ----------
    lines : at least one, in the order in which their patterns are given out
    crossings : of the lead, by share
    now : the share as it is, 0 to 100
    room : height of the ground in text sizes; more is taken where names need it
    """
    step, lowest, highest = score_steps([score for line in lines for score in (line.start, line.end)])
    top = max(HEAD, ROW * len(crossings) + 0.7)
    ground = Ground(top, top + max(room, NAME * len(lines)), highest, lowest)
    figures = range(highest, lowest - 1, -step)
    return LineChart(
        height=em(ground.bottom + FOOT),
        top=em(ground.top),
        bottom=em(ground.bottom),
        ticks=tuple(Tick(y=em(ground.down(figure)), figure=shortest(figure)) for figure in figures),
        lines=_lines(lines, ground),
        marks=marks_of(crossings, ground),
        now=percent(now),
        now_anchor="start" if now < EDGE else "end" if now > 100 - EDGE else "middle",
        scale_at=em(ground.bottom + 1.2),
        now_at=em(ground.bottom + 2.6),
        head_at=em(ground.top - 1.4),
    )


def score_steps(scores: Sequence[float]) -> tuple[int, int, int]:
    """Return the step between lines of the grid, and the lowest and highest of them, that hold some scores.

    Examples
    --------
    >>> score_steps([58.8, 85.3]), score_steps([20, 100]), score_steps([50, 50]), score_steps([100, 100])
    ((10, 50, 90), (20, 20, 100), (10, 40, 60), (10, 90, 100))
    """
    least, most = max(0.0, min(scores)), min(100.0, max(scores))
    step = 10 if ceil(most / 10) - floor(least / 10) <= 5 else 20
    lowest, highest = step * floor(least / step), step * ceil(most / step)
    if lowest == highest:
        lowest, highest = max(0, lowest - step), min(100, highest + step)
    return step, lowest, highest


def _lines(lines: Sequence[Drawn], ground: Ground) -> tuple[Line, ...]:
    starts = [ground.down(line.start) for line in lines]
    places = apart(starts, NAME, ground.top, ground.bottom)
    return tuple(
        Line(
            place=line.place,
            name=line.name,
            look=f"p{at}" if line.leads else f"p{at} behind",
            start=em(starts[at]),
            end=em(ground.down(line.end)),
            name_at=em(places[at]),
            name_top=em(places[at] - NAME / 2),
        )
        for at, line in enumerate(lines)
    )


def apart(wanted: Sequence[float], gap: float, top: float, bottom: float) -> list[float]:
    """Return places as near as can be to those wanted, in their order, no two nearer than a gap, between two bounds.

    Neighbours that would overlap form a block about the mean of what they want: isotonic regression of the places less
    the gaps, by pooling adjacent violators (least squares).

    Parameters
    ----------
    wanted : in any order; level ones keep theirs
    gap : between neighbours; the bounds leave room for all

    Examples
    --------
    >>> apart([5.0, 1.0, 1.0], 1.0, 0.0, 9.0), apart([9.0, 9.0], 1.0, 0.0, 9.0)
    ([5.0, 0.5, 1.5], [8.0, 9.0])
    """
    order = sorted(range(len(wanted)), key=lambda at: wanted[at])
    blocks: list[tuple[float, int]] = []
    for place, at in enumerate(order):
        mean, size = wanted[at] - place * gap, 1
        while blocks and blocks[-1][0] >= mean:
            before, many = blocks.pop()
            mean, size = (before * many + mean * size) / (many + size), many + size
        blocks.append((mean, size))
    levels = [mean for mean, size in blocks for _ in range(size)]
    last = bottom - gap * (len(wanted) - 1)
    found = {at: min(max(levels[place], top), last) + place * gap for place, at in enumerate(order)}
    return [found[at] for at in range(len(wanted))]


def marks_of(crossings: Sequence[Crossing], ground: Ground) -> tuple[Mark, ...]:
    """Return the crossings in the order of their rows, so that few upright lines pass behind another's words.

    On the left half words run rightwards, the leftmost uppermost; on the right half leftwards, the rightmost uppermost.
    """
    left = [one for one in crossings if one.share < 50]
    right = [one for one in reversed(crossings) if one.share >= 50]
    return tuple(
        Mark(
            x=percent(one.share),
            y=em(ground.down(one.score)),
            row=em(ROW * place),
            row_end=em(ROW * (place + 1)),
            rest=percent(one.share if one.share >= 50 else 100 - one.share),
            leftwards=one.share >= 50,
            words=one.words,
        )
        for place, one in enumerate([*left, *right])
    )


def em(sizes: float) -> str:
    """Return so many text sizes."""
    return f"{sizes:.2f}em"
