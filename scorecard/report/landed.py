"""Landed costs on the page: what they say in sentences, a row for each maker and way, and sums line by line.

Enters: an assessment with its names as read. Leaves: ready strings, and the lengths of plain bars, all of one scale.
"""

from collections.abc import Iterable, Sequence
from decimal import Decimal
from typing import TYPE_CHECKING

from scorecard.assessment import Assessment
from scorecard.cost_results import first_ranked, in_order, not_quoted
from scorecard.frozen import dataclass
from scorecard.report.charts import percent
from scorecard.report.extent import ROOMS, Room
from scorecard.report.texts import isolate, sentence, visible
from scorecard.sentences import unquoted_words
from scorecard.words import listed

if TYPE_CHECKING:
    from scorecard.cost_words import CostTold, LineTold, SumTold

MOST = 60  # costs, up to which it is said at which rate of a currency another is the cheapest
LONGEST = 600  # characters of a line's working, or of a source

Ends = tuple[Decimal, Decimal]


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """A plain bar from 0: to the least, and where there is a range a thin line on to the most; None for no bar."""

    end: str
    until: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class LineRow:
    """One line of a sum."""

    name: str
    amount: str
    bar: Bar | None
    working: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SumRow:
    """One sum: how the reply is read, its lines, its total, what is missing."""

    heading: str
    lines: tuple[LineRow, ...]
    total: str
    per_piece: str
    gaps: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CostRow:
    """One maker by one way, as ``cost_words.CostTold`` says it, fit for the page."""

    place: str
    maker: str
    out: str
    way: str
    is_chosen: bool
    per_piece: str
    bar: Bar | None
    total: str
    pieces: str
    when: str
    adds: str
    missing: str
    paid: str
    sums: tuple[SumRow, ...]
    spent: tuple[LineRow, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Landed:
    """The landed costs of the page; without rows while nothing is quoted.

    Parameters
    ----------
    as_quoted : what the days count, and what they do not
    said : what the costs say beside one another, sentences
    beside : rates, sampling, who has not quoted, sentences
    detailed : costs of which every line is shown, those that stand for their makers first where not all fit
    left : how many costs the table leaves out
    sums : which sums stand here, and where the others are, a sentence
    """

    currency: str = ""
    as_quoted: str = ""
    said: tuple[str, ...] = ()
    rows: tuple[CostRow, ...] = ()
    detailed: tuple[CostRow, ...] = ()
    beside: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    left: int = 0
    sums: str = ""


def landed_of(assessment: Assessment, room: Room = ROOMS[0]) -> Landed:
    """Return the landed costs of an assessment.

    Parameters
    ----------
    assessment : with its names as they were read
    room : how many costs the page holds
    """
    costed = assessment.case.costed
    if costed is None or not costed.costs:
        return Landed()
    from scorecard.cost_sentences import beside, compared
    from scorecard.cost_words import days_counted, told
    from scorecard.costing.cautions import cautions

    costs = in_order(assessment)[: room.costs]
    words = [told(costed, cost, why) for cost, why in costs]
    shown = _in_detail(words, room.sums)
    rows = _rows([cost.per_good_piece for cost, _ in costs], words, shown)
    ranked = assessment.ranked_costs or costed
    unquoted = unquoted_words(not_quoted(assessment), costed.inputs.unread, isolate)
    return Landed(
        currency=costed.inputs.rates.home,
        as_quoted=" ".join(map(sentence, days_counted(costed))),
        said=_sentences(compared(ranked, isolate)),
        rows=rows,
        detailed=tuple(rows[at] for at in shown),
        beside=_sentences(
            [*beside(ranked, first_ranked(assessment), _isolated, changes=len(costed.costs) < MOST), *unquoted]
        ),
        cautions=_sentences(cautions(costed.inputs, costed.costs)),
        left=len(costed.costs) - len(rows),
        sums=_sums_words(words, shown, len(costed.costs)),
    )


def _isolated(words: str) -> str:
    """Return a name, or where rates come from, which is a whole sentence."""
    return isolate(words, LONGEST)


def _in_detail(words: Sequence["CostTold"], most: int) -> list[int]:
    """Return the places of the costs that are shown line by line: first those that stand for their makers."""
    first = sorted(range(len(words)), key=lambda at: not words[at].is_chosen)
    return sorted(first[:most])


def _sums_words(words: Sequence["CostTold"], shown: Sequence[int], costs: int) -> str:
    """Return how many of the sums stand on the page, and where the others are."""
    if len(shown) == costs:
        return "Every line of every sum stands here."
    others = "" if all(words[at].is_chosen for at in shown) else ", and others, the cheapest first"
    return (
        f"Of {costs} sums {len(shown)} stand here line by line: of the ways that stand for their makers{others}. Every "
        "line of all is in the results workbook, on the sheet Cost lines."
    )


def _sentences(said: Sequence[str]) -> tuple[str, ...]:
    return tuple(map(sentence, said))


def _rows(pieces: Sequence[Ends], words: Sequence["CostTold"], detailed: Sequence[int]) -> tuple[CostRow, ...]:
    """Return the costs, their bars of one scale in the table, and of another in all the sums."""
    widest_piece = widest(end for ends in pieces for end in ends)
    lines = [line for at in detailed for each in words[at].sums for line in each.lines]
    widest_line = widest(end for line in lines for end in (line.low, line.high))
    return tuple(
        _row(place, one, bar_of(ends, widest_piece), widest_line)
        for place, (one, ends) in enumerate(zip(words, pieces, strict=True), start=1)
    )


def widest(ends: Iterable[Decimal]) -> Decimal:
    """Return the greatest of some amounts that is known; 0 without any."""
    return max((end for end in ends if end.is_finite()), default=Decimal(0))


def bar_of(ends: Ends, whole: Decimal) -> Bar | None:
    """Return the bar of an amount, as parts of the whole width; None for nothing, a credit, and no known amount.

    Examples
    --------
    >>> bar_of((Decimal(2), Decimal(3)), Decimal(4)), bar_of((Decimal(-2), Decimal(-2)), Decimal(4))
    (Bar(end='50%', until='75%'), None)
    """
    low, high = ends
    if whole <= 0 or not low.is_finite() or max(low, high) <= 0:
        return None
    far = high if high.is_finite() else whole
    until = percent(float(100 * far / whole)) if far > low else None
    return Bar(end=percent(float(100 * max(low, Decimal(0)) / whole)), until=until)


def _row(place: int, one: "CostTold", bar: Bar | None, widest_line: Decimal) -> CostRow:
    return CostRow(
        place=f"{place}." if one.has_place else "–",
        maker=isolate(one.maker),
        out=visible(one.ruled_out, LONGEST),
        way=one.way,
        is_chosen=one.is_chosen,
        per_piece=one.per_piece,
        bar=bar,
        total=one.total,
        pieces=one.pieces,
        when=one.stands,
        adds=one.adds,
        missing=visible(listed(one.missing)) if one.missing else "",
        paid=sentence(f"before you can check anything you will have paid {one.paid}, {one.paid_how}"),
        sums=tuple(_sum(each, widest_line) for each in one.sums),
        spent=tuple(_line(line, widest_line) for line in one.spent),
        notes=tuple(sentence(visible(note, LONGEST)) for note in one.notes),
    )


def _sum(one: "SumTold", widest_line: Decimal) -> SumRow:
    return SumRow(
        heading=one.heading,
        lines=tuple(_line(line, widest_line) for line in one.lines),
        total=one.total,
        per_piece=one.per_piece,
        gaps=tuple(sentence(visible(gap, LONGEST)) for gap in one.gaps),
    )


def _line(line: "LineTold", widest_line: Decimal) -> LineRow:
    back = f"; {line.paid} is paid" if line.paid else ""
    return LineRow(
        name=visible(line.name),
        amount=line.amount,
        bar=bar_of((line.low, line.high), widest_line),
        working=f"{visible(line.working, LONGEST)}{back}",
    )
