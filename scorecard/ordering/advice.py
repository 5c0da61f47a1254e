"""The newsvendor's order for one maker: a sale missed weighed against a piece left over, with price breaks.

Enters: what any quantity costs in all. Leaves: the quantity that leaves most, with what one more piece costs there.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise
from math import ceil, inf, isinf

from scorecard.costing.amounts import EXACT, over
from scorecard.ordering.demands import Demand, critical_ratio
from scorecard.ordering.options import Option, held_from, middle

At = Callable[[int], Option | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Tier:
    """Quantities over which one more piece costs the same.

    Parameters
    ----------
    first, last : the fewest pieces and the most; the most is infinite where nothing ends it
    further : what one more good piece costs: price, freight and border, nothing that is paid once
    missed : what a sale that is missed for want of a piece loses: what is kept of the price less that
    left_over : what a piece left over loses: that less what it still brings
    ratio : the chance of having enough at which one more piece is no longer worth it
    enough : so many pieces to order are enough with that chance, of which the faulty ones fall away
    """

    first: int
    last: float
    further: Decimal
    missed: Decimal
    left_over: Decimal
    ratio: float
    enough: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Newsvendor:
    """How many a newsvendor would order of one maker.

    Parameters
    ----------
    pieces : whole pieces to order; None where a piece left over loses nothing, so that there is no end to it
    tier : in which it lies
    order : what it comes to, where it has an end
    nearest : of the real order sizes with every cost known, the one that leaves most on average
    """

    pieces: int | None
    tier: Tier
    order: Option | None
    nearest: Option

    @property
    def is_raised(self) -> bool:
        """Whether it is raised to the least order of its tier."""
        return self.pieces == self.tier.first and self.tier.enough <= self.tier.first - 1

    @property
    def is_moved(self) -> bool:
        """Whether it is other than as many as would be enough: at a tier's end, or a full carton."""
        return self.pieces is not None and self.pieces != ceil(self.tier.enough - 1e-9) and not self.is_raised


def newsvendor(options: Sequence[Option], at: At, breaks: Iterable[int], cartons: Iterable[int]) -> Newsvendor | None:
    """Return how many a newsvendor would order.

    Parameters
    ----------
    options : the real order sizes of one maker, least first, with a low and a high demand
    at : gives what a quantity comes to; None where the maker does not take just so many
    breaks : the first pieces at which another price or offer of freight holds
    cartons : the pieces of one, of every offer that charges whole cartons

    Returns
    -------
    None without such a demand, where no size has every cost known, or where nobody has quoted what one more piece
    costs. Of the fractile of every tier, held within it, the ends of the tiers and the full cartons beside, the
    quantity that leaves most on average, everything paid counted, what is paid once with it

    References
    ----------
    The newsvendor's fractile at the marginal cost, as ``critical_ratio`` has it; with discounts on all units the best
    of each tier, compared by the whole cost. The tests hold it against every quantity tried in turn.
    """
    known = [option for option in options if option.is_complete]
    demand = known[0].selling.demand if known else None
    if demand is None or not demand.is_spread:
        return None
    tiers = list(_tiers(at, _edges(known, breaks), demand))
    nearest = max(known, key=lambda option: option.promise)
    endless = next((tier for tier in tiers if isinf(tier.enough) and isinf(tier.last)), None)
    if endless is not None:
        return Newsvendor(pieces=None, tier=endless, order=None, nearest=nearest)
    steps = sorted(set(cartons))
    if not tiers:
        return None
    found = [(option, tier) for tier in tiers for pieces in _candidates(tier, steps) if (option := _known(at, pieces))]
    found += [(option, min(tiers, key=lambda tier: abs(tier.first - option.pieces))) for option in known]
    order, tier = max(found, key=lambda one: expected(one[0], demand))
    return Newsvendor(pieces=order.pieces, tier=tier, order=order, nearest=nearest)


def expected(option: Option, demand: Demand) -> float:
    """Return what an order leaves on average over a demand that may be any number, in the middle of its costs."""
    selling, good = option.selling, float(option.good)
    sold = demand.expected_sold(good)
    paid = float(middle(option.total)) + float(selling.fixed)
    return float(selling.kept) * sold + float(selling.unsold_worth) * (good - sold) - paid


def _edges(known: Sequence[Option], breaks: Iterable[int]) -> list[int]:
    """Return the first pieces of every tier: from the fewest that the maker takes at the price of its least size."""
    least = held_from(known[0])
    return sorted({least, *(pieces for pieces in breaks if pieces > least)})


def _tiers(at: At, edges: Sequence[int], demand: Demand) -> Iterator[Tier]:
    """Yield the tiers over which it is known what one more piece costs."""
    for first, beyond in pairwise([*edges, inf]):
        last = int(beyond) - 1 if not isinf(beyond) else int(first + max(2 * first, 2 * (demand.high or 0), 100))
        least, most = _known(at, int(first)), _known(at, last)
        if least and most and last > first:
            yield _tier(least, most, beyond - 1, demand)


def _known(at: At, pieces: int) -> Option | None:
    """Return what a quantity comes to; None where it cannot be had, or a cost is missing."""
    option = at(pieces)
    return option if option is not None and option.is_complete else None


def _tier(least: Option, most: Option, last: float, demand: Demand) -> Tier:
    selling = least.selling
    more = EXACT.subtract(middle(most.total), middle(least.total))
    further = over(more, EXACT.subtract(most.good, least.good))
    missed, left_over = EXACT.subtract(selling.kept, further), EXACT.subtract(further, selling.unsold_worth)
    ratio = critical_ratio(float(missed), float(left_over))
    return Tier(
        first=least.pieces,
        last=last,
        further=further,
        missed=missed,
        left_over=left_over,
        ratio=ratio,
        enough=demand.enough_in(ratio) * least.pieces / float(least.good),
    )


def _candidates(tier: Tier, cartons: Iterable[int]) -> set[int]:
    """Return the quantities of a tier that may leave most: its fractile, its ends, the full cartons beside it."""
    fractile = min(max(ceil(tier.enough - 1e-9), tier.first), tier.last) if not isinf(tier.enough) else tier.last
    found = {tier.first, int(fractile), *([] if isinf(tier.last) else [int(tier.last)])}
    found |= {int(fractile // step + more) * step for step in cartons for more in (0, 1)}
    return {pieces for pieces in found if tier.first <= pieces <= tier.last}
