"""At which quantity another maker becomes the cheapest: exact, to the piece.

Between the places where a cost bends (a price break, a minimum, the end of an offer, a full carton), totals are
straight lines in the quantity. Who is the cheapest at both ends of such a stretch is so throughout; else halving finds
the piece.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from decimal import Decimal
from itertools import pairwise

from scorecard.costing.amounts import HUNDRED, ZERO, over, times
from scorecard.costing.inputs import CostInputs, MakerFacts
from scorecard.costing.prices import least_quoted
from scorecard.costing.quantities import order_quantities
from scorecard.costing.replies import standing
from scorecard.frozen import dataclass
from scorecard.ordering.pricing import Pricing

MOST_BENDS = 120


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """From one quantity to another, both of them with it, one maker's good piece costs least.

    Parameters
    ----------
    maker : None where no maker has every cost known
    rivals : other makers that may be cheaper somewhere in it, for want of what is not known
    """

    start: int
    end: int
    maker: str | None
    rivals: tuple[str, ...] = ()


def cheapest_by_quantity(pricing: Pricing, start: int, end: int) -> tuple[Stretch, ...]:
    """Return who is the cheapest from one quantity to another, stretch by stretch.

    Parameters
    ----------
    pricing : of the makers that come into question
    start, end : the first and the last quantity

    Returns
    -------
    adjoining stretches, each with another maker than the one before; every change is checked at the piece itself
    """
    grid = bends(pricing.inputs, start, end)
    starts = [start, *(at for low, high in pairwise(grid) for at in _changes(pricing, low, high))]
    found: list[Stretch] = []
    for first, beyond in pairwise([*starts, end + 1]):
        maker = pricing.cheapest(first)
        if found and found[-1].maker == maker:
            found[-1] = Stretch(start=found[-1].start, end=beyond - 1, maker=maker)
        else:
            found.append(Stretch(start=first, end=beyond - 1, maker=maker))
    return tuple(replace(one, rivals=_rivals(pricing, one, grid)) for one in found)


def _rivals(pricing: Pricing, one: Stretch, grid: Sequence[int]) -> tuple[str, ...]:
    """Return who may be cheaper somewhere in a stretch: between its ends and the bends in it costs are straight."""
    places = sorted({one.start, one.end, *(at for at in grid if at in range(one.start, one.end))})
    return tuple(dict.fromkeys(maker for pieces in places for maker in pricing.rivals(pieces)))


def _changes(pricing: Pricing, low: int, high: int) -> Iterator[int]:
    """Yield the pieces at which the cheapest line changes, after low and up to high."""
    if pricing.line(low) == pricing.line(high):
        return
    if high - low == 1:
        yield high
        return
    half = (low + high) // 2
    yield from _changes(pricing, low, half)
    yield from _changes(pricing, half, high)


def bends(inputs: CostInputs, start: int, end: int) -> list[int]:
    """Return the quantities at which costs may bend, on both sides of the bend, with both ends.

    Of more than some 120 full cartons, those of the smallest carton are left out first: their steps are the smallest.
    """
    edges = {*breaks_of(inputs), *_minimum_edges(inputs)}
    steps = cartons_of(inputs)
    while steps and sum((end - start) // step for step in steps) > MOST_BENDS:
        steps = steps[1:]
    edges |= {at + 1 for step in steps for at in range(step * (start // step), end, step)}
    both = {at for edge in edges for at in (edge - 1, edge)}
    return sorted({start, end, *(at for at in both if at in range(start, end))})


def cartons_of(inputs: CostInputs) -> list[int]:
    """Return the pieces of one carton, of every offer whose freight rises by the carton, least first."""
    return sorted({offer.carton.pieces for offer in inputs.offers if offer.cost is None and offer.carton})


def breaks_of(inputs: CostInputs) -> Iterable[int]:
    """Yield the first pieces at which another price or offer holds."""
    for row in (row for replies in standing(inputs.quotes).values() for reply in replies for row in reply.rows):
        if row.pieces:
            yield row.pieces
            yield from [row.pieces + 1] if row.price_is_for == "all" else []  # it is for just those pieces
    for offer in inputs.offers:
        yield from (at for at in (offer.from_pieces, offer.to_pieces and offer.to_pieces + 1) if at)


def _minimum_edges(inputs: CostInputs) -> Iterable[int]:
    """Yield the first pieces at which a minimum no longer asks for more."""
    quoted = standing(inputs.quotes)
    good = HUNDRED - (inputs.settings.faulty_percent or ZERO)
    least_order = replace(inputs.brief, quantity=inputs.brief.designs)
    for maker, replies in quoted.items():
        facts = inputs.makers.get(maker, MakerFacts(maker=maker))
        for reply in replies:
            for least in order_quantities(least_order, facts, least_quoted(reply)):
                yield from (least, int(over(times(Decimal(least), good), HUNDRED)) + 1)
