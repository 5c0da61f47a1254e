"""Score against one weight: who leads as its share grows from nothing to all, drawn, in words and as a table.

Enters: a calculation. Leaves: the weight nearest to changing the leader, and the others that can, ready to be drawn.
"""

from collections.abc import Sequence
from math import fsum
from operator import attrgetter

from scorecard.calculation import Calculation
from scorecard.frozen import dataclass
from scorecard.report.line_chart import Crossing, Drawn, LineChart, line_chart
from scorecard.report.texts import bare, isolate
from scorecard.sensitivity.lead_crossings import ScoreLines, Stretch, lead_crossings, score_lines
from scorecard.sensitivity.weight_ranges import typed_end
from scorecard.words import counted, listed, rounded

STRETCHES = 6  # told of one weight, the nearest to the share as it is
MANY, FEW = 6, 4  # lines in the first drawing and in the others, at least: those that lead, and then the best
TALL, LOW = 14.0, 9.0  # text sizes: the height of the first drawing's ground, and of the others'
LONGEST = 40  # characters of a name in a drawing; beside it stands the whole


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One maker's figures: its place now, its scores at share 0, as it is and at 100, and where it leads."""

    place: str
    maker: str
    at_none: str
    now: str
    at_all: str
    leads: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Against:
    """Scores against one weight.

    Parameters
    ----------
    title : of the criterion
    share : as it is, of 100
    who : sentence that says who leads from where to where
    typed : sentence that gives the same shares as weights to type; None where weights are not typed
    left_out : sentence about makers that lead further off; None where there are none
    chart : the drawing
    rows : its figures, in the order of rank
    """

    title: str
    share: str
    who: str
    typed: str | None
    left_out: str | None
    chart: LineChart
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Crossings:
    """The weight nearest to changing the leader, and the others that can; None and none where no weight alone can."""

    nearest: Against | None = None
    others: tuple[Against, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Envelope:
    """Lines of the ranked makers against one criterion, the best first, and who leads where."""

    criterion: int
    share: float
    lines: ScoreLines
    stretches: tuple[Stretch, ...]

    @property
    def room(self) -> float:
        """How far the share is from the nearest crossing."""
        return min(abs(one.start - self.share) for one in self.stretches[1:])

    def told(self) -> tuple[Stretch, ...]:
        """Return the stretches nearest to the share as it is."""
        present = next(at for at, one in enumerate(self.stretches) if self.share <= one.end)
        first = max(0, min(present - STRETCHES // 2, len(self.stretches) - STRETCHES))
        return self.stretches[first : first + STRETCHES]


def crossings_of(calculation: Calculation) -> Crossings:
    """Return scores against every weight that alone can change the leader, the nearest to doing so apart."""
    found = sorted(_envelopes(calculation), key=attrgetter("room"))
    if not found:
        return Crossings()
    nearest, *others = found
    return Crossings(
        nearest=_against(calculation, nearest, MANY, TALL),
        others=tuple(_against(calculation, one, FEW, LOW) for one in sorted(others, key=attrgetter("criterion"))),
    )


def _envelopes(calculation: Calculation) -> list[_Envelope]:
    order, shares = list(calculation.ranking.order), calculation.shares
    if len(order) < 2:
        return []
    every = (
        _Envelope(criterion=at, share=float(shares[at]), lines=lines, stretches=lead_crossings(lines))
        for at, lines in enumerate(score_lines(calculation.points.counted[order], shares))
        if lines is not None
    )
    return [one for one in every if len(one.stretches) > 1]


def _against(calculation: Calculation, found: _Envelope, lines: int, room: float) -> Against:
    told, names = found.told(), [calculation.case.table.makers[maker] for maker in calculation.ranking.order]
    leading = [one.leader for one in told]
    drawn = shown_lines(leading, len(names), lines)
    return Against(
        title=calculation.case.criteria.criteria[found.criterion].title,
        share=rounded(100 * found.share),
        who=who_leads(told, names),
        typed=_typed(calculation, found.criterion, told),
        left_out=_left_out(len(found.stretches) - len(told)),
        chart=line_chart(
            [_drawn(found.lines, maker, names[maker], leads=maker in leading) for maker in drawn],
            [_crossing(found.lines, one, names[one.leader]) for one in told[1:]],
            100 * found.share,
            room,
        ),
        rows=tuple(_row(calculation, found, told, maker) for maker in drawn),
    )


def shown_lines(leading: Sequence[int], makers: int, lines: int) -> list[int]:
    """Return whose lines are drawn, the best first: those that lead, and the best up to a few in all.

    Examples
    --------
    >>> shown_lines([9, 0], 12, 4), shown_lines([1, 0], 2, 4)
    ([0, 1, 2, 9], [0, 1])
    """
    rest = [maker for maker in range(makers) if maker not in set(leading)]
    return sorted({*leading, *rest[: max(0, lines - len(set(leading)))]})


def who_leads(told: Sequence[Stretch], names: Sequence[str]) -> str:
    """Return who leads from where to where, as a sentence.

    Examples
    --------
    >>> stretches = (Stretch(leader=0, start=0.0, end=0.3), Stretch(leader=1, start=0.3, end=1.0))
    >>> who_leads(stretches, ["Brightholm", "Cressel"])
    'Up to 30.0 of 100 Brightholm leads, from there on Cressel.'
    """
    first, *middle, last = told
    begin = "Up to" if first.start == 0 else f"From {rounded(100 * first.start)} to"
    said = [f"{begin} {rounded(100 * first.end)} of 100 {names[first.leader]} leads"]
    said += [f"from there to {rounded(100 * one.end)} {names[one.leader]}" for one in middle]
    until = "on" if last.end == 1 else f"to {rounded(100 * last.end)}"
    return f"{', '.join(said)}, from there {until} {names[last.leader]}."


def _typed(calculation: Calculation, criterion: int, told: Sequence[Stretch]) -> str | None:
    criteria = calculation.case.criteria
    if criteria.note.method != "typed":
        return None
    others = fsum(weight for at, weight in enumerate(criteria.typed_weights.values()) if at != criterion)
    ends = (typed_end(one.start, others) for one in told[1:])
    typed = listed(rounded(end) for end in ends if end is not None)
    return f"Typed as a weight, beside the others as they are: {typed}."


def _left_out(more: int) -> str | None:
    return f"Further off the lead passes on {counted(more, 'more time')}." if more else None


def _drawn(lines: ScoreLines, maker: int, name: str, *, leads: bool) -> Drawn:
    start, end = float(lines.none_on[maker]), float(lines.all_on[maker])
    return Drawn(place=str(maker + 1), name=_cut(name), start=start, end=end, leads=leads)


def _crossing(lines: ScoreLines, stretch: Stretch, name: str) -> Crossing:
    at = 100 * stretch.start
    score = float(lines.at(stretch.start)[stretch.leader])
    return Crossing(share=at, score=score, words=f"from {rounded(at)} of 100 {_cut(name)} leads")


def _cut(name: str) -> str:
    return isolate(bare(name), LONGEST)


def _row(calculation: Calculation, found: _Envelope, told: Sequence[Stretch], maker: int) -> Row:
    order = calculation.ranking.order
    leads = [f"{rounded(100 * one.start)} to {rounded(100 * one.end)}" for one in told if one.leader == maker]
    return Row(
        place=str(maker + 1),
        maker=calculation.case.table.makers[order[maker]],
        at_none=rounded(float(found.lines.none_on[maker])),
        now=rounded(float(calculation.ranking.scores[order[maker]])),
        at_all=rounded(float(found.lines.all_on[maker])),
        leads=leads[0] if leads else "nowhere",
    )
