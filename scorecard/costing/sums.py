"""One reading of a reply as a sum: its lines from least to most, what is missing, what else must be said."""

from collections.abc import Sequence
from decimal import Decimal

from scorecard.costing.amounts import HUNDRED, ZERO, End, Span, added, minor_unit, over, percent_of, to_step
from scorecard.costing.border_entries import border_entries, value_at_the_border
from scorecard.costing.charge_entries import (
    currency_charges,
    early_charges,
    freight_entries,
    least_of_tax_charges,
    tax_charges,
    value_charges,
)
from scorecard.costing.charges import PARTS
from scorecard.costing.entries import Entry, Gap, Group, Situation, no_figure
from scorecard.costing.maker_entries import maker_entries, maker_gaps
from scorecard.costing.reading_notes import notes_on
from scorecard.frozen import dataclass

_GROUPS: tuple[Group, ...] = ("maker", "freight", "border", "extra", "payment")
_NEVER_A_GAP = frozenset({"packing", "insurance", "duty", "import tax", "unloading"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of the sum, in the brief's currency to the last minor unit.

    Parameters
    ----------
    key : stable, such as "goods", "freight", "charge:Clearance"
    low, high : what it adds to the least and to the greatest total; below 0 for a credit, whose low end may be above
        its high one; infinite where there is no telling how much
    paid_low, paid_high : what is paid; other than low and high where it comes back
    working : how it was worked out, in words
    """

    key: str
    name: str
    group: Group
    low: Decimal
    high: Decimal
    paid_low: Decimal
    paid_high: Decimal
    working: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A reply read in one way, for one quantity and one way of shipping, as a sum.

    Parameters
    ----------
    situation : what was read
    lines : which add up to ``low`` and ``high``
    gaps : costs that are neither covered nor given; with any, both ends are too low
    days : to the door, least and most; None where not known
    per_good_piece : least and most, to two digits beyond the minor unit
    notes : sentences without the full stop
    """

    situation: Situation
    lines: tuple[Line, ...]
    gaps: tuple[Gap, ...]
    notes: tuple[str, ...]
    days: Span | None

    @property
    def low(self) -> Decimal:
        """The least total."""
        return added(line.low for line in self.lines)

    @property
    def high(self) -> Decimal:
        """The greatest total; infinite where there is no telling."""
        return added(line.high for line in self.lines)

    @property
    def per_good_piece(self) -> tuple[Decimal, Decimal]:
        """The total divided by the good pieces that are wanted: least and most."""
        pieces = good_pieces(self.situation)
        step = minor_unit(self.situation.inputs.rates.home) / 100
        low, high = (to_step(over(end, pieces), step) for end in (self.low, self.high))
        return low, high


def good_pieces(situation: Situation) -> Decimal:
    """Return the good pieces that are wanted: of those ordered all but the faulty ones, at most those wanted.

    Pieces beyond those wanted carry no part of the cost, since they may not sell.
    """
    ordered = Decimal(situation.quantity)
    faulty = situation.inputs.settings.faulty_percent or ZERO
    return min(percent_of(HUNDRED - faulty, ordered), Decimal(situation.inputs.brief.quantity))


def reckon(situation: Situation) -> Reading:
    """Return the sum of one situation.

    Parameters
    ----------
    situation : a reply, a quantity, a way of shipping, and what the price is taken to cover

    Returns
    -------
    Reading: worked out twice, once with the low end of every figure and once with the high end; no cost falls when a
    figure rises, so these are the least and the greatest total
    """
    (low, gaps), (high, _) = _entries(situation, "low"), _entries(situation, "high")
    lines = [as_line(least, most) for least, most in sorted(zip(low, high, strict=True), key=_on_the_journey)]
    return Reading(
        situation=situation, lines=tuple(lines), gaps=gaps, notes=notes_on(situation, low), days=days_to_door(situation)
    )


def _on_the_journey(pair: tuple[Entry, Entry]) -> tuple[int, int]:
    """Return where a line stands: by where its money goes, then along the journey."""
    least, _ = pair
    return _GROUPS.index(least.label.group), min(PARTS.index(part) for part in least.label.parts or ("unloading",))


def _entries(situation: Situation, end: End) -> tuple[list[Entry], tuple[Gap, ...]]:
    """Return the entries at one end, and the gaps, in the order of the journey."""
    before = [*maker_entries(situation, end), *freight_entries(situation, end)]
    before += early_charges(situation, before, end)
    on_value = value_charges(situation, value_at_the_border(situation, before), end)
    border = border_entries(situation, before, end, [*on_value, *least_of_tax_charges(situation, end)])
    known = [*before, *border.entries, *on_value]
    known += tax_charges(situation, known, end)
    known += currency_charges(situation, known, end)
    return known, (*_price_gap(situation), *maker_gaps(situation), *_part_gaps(situation, known), *border.gaps)


def _price_gap(situation: Situation) -> list[Gap]:
    doubt = situation.price.doubt
    return [Gap("price", f"{doubt}: ask for it")] if doubt else []


def _part_gaps(situation: Situation, entries: Sequence[Entry]) -> list[Gap]:
    """Return the parts of the journey that nobody pays for."""
    paid_for = {part for each in entries for part in each.label.parts}
    open_parts = situation.left_to_pay - paid_for - _NEVER_A_GAP
    gaps = [no_figure(part) for part in PARTS if part in open_parts and part != "freight"]
    return [*_freight_gap(situation), *gaps] if "freight" in open_parts else gaps


def _freight_gap(situation: Situation) -> list[Gap]:
    missed = situation.offers_missed
    if not missed:
        return [no_figure("freight")]
    quoted = " and ".join(_quoted_for(each.from_pieces, each.to_pieces, situation) for each in missed)
    words = f"freight: offered for {quoted} pieces, not for {situation.quantity}; the total is too low by that"
    return [Gap("freight", words)]


def _quoted_for(low: int | None, high: int | None, situation: Situation) -> str:
    if low and high and low != high:
        return f"{low} to {high}"
    return str(low or high or situation.inputs.brief.quantity)


def as_line(least: Entry, most: Entry) -> Line:
    """Return an entry at its low and at its high end as one line."""
    same = least.working == most.working
    return Line(
        key=least.label.key,
        name=least.label.name,
        group=least.label.group,
        low=least.cost,
        high=most.cost,
        paid_low=least.paid,
        paid_high=most.paid,
        working=least.working if same else f"least: {least.working}; most: {most.working}",
    )


def days_to_door(situation: Situation) -> Span | None:
    """Return production and transit in days; None where either is not known.

    A price that pays the freight names the days to the door itself; else the journey's are added, from the offer or
    from ``[shipping]``.
    """
    ready = situation.reply.days(situation.price.row)
    if ready is None or situation.coverage.pays_freight:
        return ready
    journey = situation.offer.days if situation.offer else None
    journey = journey or (situation.rule.days if situation.rule else None)
    return None if journey is None else ready + journey
