"""Landed cost: every maker by every way of shipping, as sums.

Enters: all that was read. Leaves, per maker, reply and way: the readings that the reply allows, each an itemised sum,
and the least and greatest total over them.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from datetime import date
from decimal import Decimal

from scorecard.costing.amounts import Span, added
from scorecard.costing.chargeable import fits
from scorecard.costing.delivery_terms import Coverage, coverages
from scorecard.costing.entries import Gap, Situation
from scorecard.costing.freight import FreightOffer
from scorecard.costing.inputs import CostInputs, MakerFacts
from scorecard.costing.prices import least_quoted, price_for
from scorecard.costing.quantities import order_quantities
from scorecard.costing.quotes import WAYS, Way
from scorecard.costing.replies import Reply, standing
from scorecard.costing.spent import spent_lines
from scorecard.costing.sums import Line, Reading, reckon
from scorecard.costing.timing import Timing
from scorecard.frozen import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class LandedCost:
    """What one maker's goods cost at the door by one way of shipping.

    Parameters
    ----------
    way : None where neither the reply nor an offer names one
    readings : one where nothing is open; several where it is not known what the price covers or how many to order
    spent : what is already paid, which is in no total
    timing : what the schedule says of this way; None where there is none
    """

    maker: str
    way: Way | None
    reply: Reply
    readings: tuple[Reading, ...]
    spent: tuple[Line, ...] = ()
    timing: Timing | None = None

    @property
    def inputs(self) -> CostInputs:
        """All that was read, which is the same for every reading."""
        return self.readings[0].situation.inputs

    @property
    def low(self) -> Decimal:
        """The least total."""
        return min(reading.low for reading in self.readings)

    @property
    def high(self) -> Decimal:
        """The greatest total; infinite where there is no telling."""
        return max(reading.high for reading in self.readings)

    @property
    def per_good_piece(self) -> tuple[Decimal, Decimal]:
        """The least and the greatest cost of a good piece that is wanted."""
        pieces = [reading.per_good_piece for reading in self.readings]
        return min(low for low, _ in pieces), max(high for _, high in pieces)

    @property
    def quantities(self) -> tuple[int, int]:
        """The fewest and the most pieces that may have to be ordered."""
        pieces = [reading.situation.quantity for reading in self.readings]
        return min(pieces), max(pieces)

    @property
    def gaps(self) -> tuple[Gap, ...]:
        """Every cost without a figure, in any reading: with one, the total is no answer."""
        return tuple(dict.fromkeys(gap for reading in self.readings for gap in reading.gaps))

    @property
    def notes(self) -> tuple[str, ...]:
        """Every note, once."""
        return tuple(dict.fromkeys(note for reading in self.readings for note in reading.notes))

    @property
    def is_complete(self) -> bool:
        """Whether no cost is missing."""
        return not self.gaps

    @property
    def is_open(self) -> bool:
        """Whether the greatest total has no end."""
        return not self.high.is_finite()

    @property
    def held_until(self) -> date | None:
        """The day until which the price that is counted held; None where it holds on the day that stands for today."""
        rows = [self.reply.saying("valid_until", reading.situation.price.row) for reading in self.readings]
        days = [row.valid_until for row in rows if row and row.valid_until]
        return min((day for day in days if day < self.inputs.as_of), default=None)

    @property
    def is_expired(self) -> bool:
        """Whether the price that is counted no longer held on the day that stands for today."""
        return self.held_until is not None

    @property
    def days(self) -> Span | None:
        """Production and transit, least and most; None where any reading does not know."""
        found = [reading.days for reading in self.readings]
        known = [days for days in found if days is not None]
        if len(known) < len(found):
            return None
        high = max(days.at("high") for days in known)
        return Span(min(days.low for days in known), high if high.is_finite() else None)


def landed_costs(inputs: CostInputs) -> tuple[LandedCost, ...]:
    """Return what every quoted maker's goods cost at the door, by every way that is quoted.

    Parameters
    ----------
    inputs : all that was read

    Returns
    -------
    in the order of the makers, then of their replies, then of ``WAYS``; makers without a quote have none

    References
    ----------
    The sum and its order: design section 6, item 11. Terms: ``delivery_terms``; bases: ``import_presets``.
    """
    by_maker, offers = standing(inputs.quotes), _by_maker(inputs.offers)
    found = []
    for maker in sorted(by_maker, key=_place_of(inputs)):
        facts = inputs.makers.get(maker, MakerFacts(maker=maker))
        found += [cost for reply in by_maker[maker] for cost in _by_way(inputs, facts, reply, offers.get(maker, ()))]
    return tuple(found)


def _place_of(inputs: CostInputs) -> Callable[[str], int]:
    places = {maker: at for at, maker in enumerate(inputs.makers)}
    return lambda maker: places.get(maker, len(places))


def _by_maker(offers: Iterable[FreightOffer]) -> dict[str, list[FreightOffer]]:
    found: dict[str, list[FreightOffer]] = {}
    for offer in offers:
        found.setdefault(offer.maker, []).append(offer)
    return found


def _by_way(
    inputs: CostInputs, facts: MakerFacts, reply: Reply, offers: Sequence[FreightOffer]
) -> Iterable[LandedCost]:
    readings_of_price = coverages_of(inputs, reply)
    quantities = order_quantities(inputs.brief, facts, least_quoted(reply))
    prices = [price_for(reply, quantity, inputs.brief.quantity) for quantity in quantities]
    for way in ways_of(reply, readings_of_price, offers):
        of_way = [offer for offer in offers if offer.way == way]
        usable = [each for each in readings_of_price if not each.pays_freight or reply.head.way in (None, way)]
        readings = tuple(
            with_best_offer(
                Situation(inputs=inputs, reply=reply, facts=facts, price=price, way=way, coverage=coverage),
                of_way,
            )
            for coverage in usable
            for price in prices
        )
        spent = spent_lines(readings[0].situation)
        timing = inputs.timings.get((facts.maker, way))
        yield LandedCost(maker=facts.maker, way=way, reply=reply, readings=readings, spent=spent, timing=timing)


def coverages_of(inputs: CostInputs, reply: Reply) -> tuple[Coverage, ...]:
    """Return every way to read what a reply's price covers."""
    head = reply.head
    rule = inputs.shipping.get(head.way) if head.way else None
    return coverages(head.covers, head.term, head.term_place, rule.covers if rule else None)


def ways_of(reply: Reply, readings: Sequence[Coverage], offers: Sequence[FreightOffer]) -> list[Way | None]:
    """Return the ways by which a reply can be costed: its own, and those of the maker's freight offers.

    Offers count where the price may be without freight. Without any way, one sum is made that names none.
    """
    without_freight = not all(each.pays_freight for each in readings)
    named = {offer.way for offer in offers} if without_freight else set()
    if reply.head.way:
        named.add(reply.head.way)
    return [way for way in WAYS if way in named] or [None]


def with_best_offer(situation: Situation, offers: Sequence[FreightOffer]) -> Reading:
    """Return the sum of a situation with the offer that makes it the cheapest, or with those that were missed.

    Offers pay for different parts of the journey, so that whole sums are compared: those with the fewest costs missing
    first, then by the middle of the total, so that no total falls when a cost rises.

    Parameters
    ----------
    situation : without an offer; where the price pays the freight, it stays so
    offers : of its maker and way
    """
    if situation.coverage.pays_freight:
        return reckon(situation)
    fitting = [offer for offer in offers if fits(offer, situation.quantity, situation.inputs.brief.quantity)]
    if not fitting:
        return reckon(replace(situation, offers_missed=tuple(offers)))
    readings = [reckon(replace(situation, offer=offer)) for offer in fitting]
    return min(readings, key=lambda reading: (len(reading.gaps), added([reading.low, reading.high]), reading.low))
