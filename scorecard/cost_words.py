"""Landed costs in words, shared by screen, page and workbook: ready strings, nothing left to work out.

Enters: costs. Leaves: for each a headline, its sums line by line, what is missing, and what must be said beside it.
"""

from collections.abc import Callable, Sequence
from decimal import Decimal

from scorecard.codes import amount_range, money_range
from scorecard.costed import Costed
from scorecard.costing.amounts import Span
from scorecard.costing.charges import PARTS
from scorecard.costing.comparing import shares
from scorecard.costing.entries import Gap, Group, no_figure
from scorecard.costing.landed import LandedCost
from scorecard.costing.paying import PaidBefore, paid_before_checking
from scorecard.costing.sums import Line, Reading
from scorecard.costing.timing import Timing, begin_words, standing_words
from scorecard.frozen import dataclass
from scorecard.words import counted, day_words, listed, span_of_days

WHERE: dict[Group, str] = {
    "maker": "the maker",
    "freight": "freight",
    "border": "the border",
    "extra": "besides",
    "payment": "paying",
}
_GAPS: dict[Group, frozenset[str]] = {
    "freight": frozenset(PARTS) - {"clearance", "duty", "import tax"},
    "border": frozenset({"clearance", "duty", "import tax"}),
}
NOT_KNOWN = "days not known"
AS_QUOTED = "Days are as quoted, production and transit alone, without samples, proof and days on which nobody works"
COUNTED = (
    "How a way stands and by when to begin count all of these, and days kept spare; what is assumed stands with "
    "the dates"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class LineTold:
    """One line of a sum.

    Parameters
    ----------
    amount : what it adds to the total
    low, high : the same as numbers, infinite at an open end
    paid : what is paid where that is another amount, such as a tax that comes back; else ""
    """

    name: str
    where: str
    amount: str
    low: Decimal
    high: Decimal
    paid: str
    working: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SumTold:
    """One way to read a reply, as a sum.

    Parameters
    ----------
    heading : how it is read and for how many pieces; "" where there is no other reading
    lines : which add up to ``total``
    gaps : sentences without the full stop
    """

    heading: str
    lines: tuple[LineTold, ...]
    total: str
    per_piece: str
    gaps: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CostTold:
    """One maker by one way.

    Parameters
    ----------
    maker : as it was typed
    ruled_out : why its maker is ruled out, in short; "" where it is ranked
    way : "by sea"; "" where none is named
    per_piece : of a good piece; "at least …" where a cost is missing
    piece_amount : the same with its currency
    pieces : to order, and how many more than wanted
    time : how it stands against the need-by date, in the words of ``dates``; "" where there is none, and where there is
        no telling
    begin_by : the latest day to begin, in brackets once it is over; "" without a schedule
    begin : the same as a clause: by when to ask for a sample and to order
    adds : what freight and border make of the total
    paid : what will have been paid before anything can be checked
    paid_amount : the same with its currency
    paid_how : the same as a sentence, with the deposit
    missing : the names of the costs without a figure
    spent : what is already paid, in no total
    notes : sentences without the full stop
    """

    maker: str
    ruled_out: str
    way: str
    is_chosen: bool
    is_complete: bool
    per_piece: str
    piece_amount: str
    total: str
    pieces: str
    days: str
    time: str
    begin_by: str
    begin: str
    adds: str
    paid: str
    paid_amount: str
    paid_how: str
    missing: tuple[str, ...]
    sums: tuple[SumTold, ...]
    spent: tuple[LineTold, ...]
    notes: tuple[str, ...]

    @property
    def has_place(self) -> bool:
        """Whether it has a place among the costs: no cost is missing, and its maker is ranked."""
        return self.is_complete and not self.ruled_out

    @property
    def when(self) -> str:
        """Days as quoted, how the way stands, and by when to begin, as far as it can be told."""
        said = f"{self.days}{' as quoted' if self.begin and self.days != NOT_KNOWN else ''}"
        return f"{said}, {self.time}{f': {self.begin}' if self.begin else ''}" if self.time else said

    @property
    def stands(self) -> str:
        """Days as quoted and how the way stands, in a column that is headed so."""
        return f"{self.quoted}, {self.time}" if self.time else self.quoted

    @property
    def quoted(self) -> str:
        """The days in a column that is headed so."""
        return self.days.removeprefix("days ")


def told(costed: Costed, cost: LandedCost, ruled_out: str = "") -> CostTold:
    """Return one cost in words.

    Parameters
    ----------
    costed : that the cost is one of
    cost : one maker by one way
    ruled_out : why its maker is ruled out; "" where it is ranked
    """
    inputs, home = costed.inputs, costed.inputs.rates.home
    paid = paid_before_checking(cost)
    return CostTold(
        maker=cost.maker,
        ruled_out=ruled_out,
        way=f"by {cost.way}" if cost.way else "",
        is_chosen=costed.chosen[cost.maker] is cost,
        is_complete=cost.is_complete,
        per_piece=_at_least(cost, cost.per_good_piece, home),
        piece_amount=_at_least(cost, cost.per_good_piece, home, amount_range),
        total=_at_least(cost, (cost.low, cost.high), home),
        pieces=pieces_words(cost, inputs.brief.quantity),
        days=days_words(cost.days),
        time=standing(costed, cost),
        begin_by=_begin_by(cost.timing) if cost.timing else "",
        begin=begin_words(cost.timing) if cost.timing else "",
        adds=adds_words(cost),
        paid=_at_least(cost, (paid.low, paid.high), home),
        paid_amount=_at_least(cost, (paid.low, paid.high), home, amount_range),
        paid_how=f"{_with_the_order(paid, home)}. {paid.words}",
        missing=tuple(dict.fromkeys(gap.name for gap in cost.gaps)),
        sums=tuple(_sum(reading, home, several=len(cost.readings) > 1) for reading in cost.readings),
        spent=tuple(_line(line, home) for line in cost.spent),
        notes=cost.notes,
    )


def _begin_by(timing: Timing) -> str:
    """Return by when to begin as ``dates`` has it: what can still be done, or in brackets the first day, now over."""
    if timing.status in ("in time", "no time for a sample"):
        return day_words(timing.act_by)
    return f"({day_words(timing.begin_by)})"


def days_counted(costed: Costed) -> list[str]:
    """Return what the days of costs count, and what their verdict counts besides, sentences without the full stop."""
    known = any(cost.days for cost in costed.costs)
    return [*([AS_QUOTED] if known else []), *([COUNTED] if any(cost.timing for cost in costed.costs) else [])]


def standing(costed: Costed, cost: LandedCost) -> str:
    """Return how a way stands against the need-by date; "" without one, and where there is no telling."""
    if costed.is_ordered(cost):
        return "ordered"
    status = costed.status(cost)
    return "" if status is None else standing_words(status, cost.timing.rests_on if cost.timing else "")


def _with_the_order(paid: PaidBefore, home: str) -> str:
    """Return what is paid with the order; a part that is not known is no amount."""
    if not paid.is_deposit_known:
        return "how much of it is paid with the order is not known"
    return f"{money_range(paid.deposit_low, paid.deposit_high, home)} of it with the order"


def _at_least(
    cost: LandedCost,
    ends: tuple[Decimal, Decimal],
    home: str,
    words: Callable[[Decimal, Decimal, str], str] = money_range,
) -> str:
    """Return an amount from least to most; with a cost missing there is no most."""
    low, high = ends
    return words(low, high, home) if cost.is_complete else f"at least {words(low, low, home)}"


def _sum(reading: Reading, home: str, *, several: bool) -> SumTold:
    words, pieces = reading.situation.coverage.words, reading.situation.quantity
    return SumTold(
        heading=f"If {words.removeprefix('if ')}, {pieces} pieces" if several else "",
        lines=tuple(_line(line, home) for line in reading.lines),
        total=money_range(reading.low, reading.high, home),
        per_piece=money_range(*reading.per_good_piece, home),
        gaps=gaps_words(reading.gaps),
    )


def gaps_words(gaps: Sequence[Gap]) -> tuple[str, ...]:
    """Return what is missing: costs of which there is just no figure in one sentence, the others each in its own.

    Examples
    --------
    >>> gaps_words([no_figure("clearance"), no_figure("delivery"), Gap("duty", "duty: no rate")])
    ('clearance and delivery: no figure; the total is too low by them', 'duty: no rate')
    """
    plain = [gap.name for gap in gaps if gap == no_figure(gap.name)]
    if len(plain) < 2:
        return tuple(gap.words for gap in gaps)
    others = [gap.words for gap in gaps if gap.name not in plain]
    return (f"{listed(plain)}: no figure; the total is too low by them", *others)


def _line(line: Line, home: str) -> LineTold:
    returns = (line.paid_low, line.paid_high) != (line.low, line.high)
    low, high = min(line.low, line.high), max(line.low, line.high)
    return LineTold(
        name=line.name,
        where=WHERE[line.group],
        amount=money_range(low, high, home),
        low=line.low,
        high=line.high,
        paid=money_range(line.paid_low, line.paid_high, home) if returns else "",
        working=line.working,
    )


def pieces_words(cost: LandedCost, wanted: int) -> str:
    """Return how many pieces are ordered, and how many of them are more than wanted."""
    fewest, most = cost.quantities
    pieces = counted(fewest, "piece") if fewest == most else f"{fewest} to {most} pieces"
    more = str(most - wanted) if fewest == most else f"{max(fewest - wanted, 0)} to {most - wanted}"
    return f"{pieces}, {more} more than wanted" if most > wanted else pieces


def days_words(days: Span | None) -> str:
    """Return days in words.

    Examples
    --------
    >>> days_words(Span.of(35, 50)), days_words(Span.of(1)), days_words(None)
    ('35 to 50 days', '1 day', 'days not known')
    """
    if days is None:
        return NOT_KNOWN
    return span_of_days(float(days.low), None if days.high is None else float(days.high))


def adds_words(cost: LandedCost) -> str:
    """Return what part of the total freight and border make, such as "freight 12 %, border 8 %"."""
    parts = shares(cost)
    groups: tuple[Group, Group] = ("freight", "border")
    if all(parts[group] is None for group in ("maker", *groups)):
        return "not known"
    if all(parts[group] is None for group in groups):
        return "freight and border in the price"
    return ", ".join(_part_words(group, parts[group], is_lacking=lacks(cost, group)) for group in groups)


def lacks(cost: LandedCost, group: Group) -> bool:
    """Return whether a cost of freight, or at the border, has no figure, so that its part of the total is not known."""
    return any(gap.name in _GAPS[group] for gap in cost.gaps)


def _part_words(group: Group, part: Decimal | None, *, is_lacking: bool) -> str:
    """Return what freight, or the border, makes of a total: never so many per cent of what is nothing or not known."""
    if is_lacking:
        return f"{group} not known"
    if part is None:
        return f"{group} in the price"
    if not part:
        return "nothing at the border" if group == "border" else f"nothing for {group}"
    whole = part.quantize(Decimal(1))
    return f"{group} {'under 1' if not whole else f'{whole:f}'} %"
