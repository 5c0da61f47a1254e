"""The newsvendor's order for one maker: a sale missed weighed against a piece left over, with price breaks.

Enters: what any quantity costs in all. Leaves: the quantity that leaves most, with what one more piece costs there.
"""

from collections.abc import Iterable, Sequence
from decimal import Decimal
from math import ceil, isinf

from scorecard.costing.amounts import EXACT
from scorecard.frozen import dataclass
from scorecard.ordering.demands import Demand, critical_ratio
from scorecard.ordering.options import Option, middle
from scorecard.ordering.selling import Selling
from scorecard.ordering.slopes import At, Slope, edges_of, known_at, slopes_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Tier:
    """What a sale missed and a piece left over lose where one more piece costs the same.

    Parameters
    ----------
    slope : these quantities, and what one more good piece costs
    missed : what a sale that is missed for want of a piece loses: what is kept of the price less that
    left_over : what a piece left over loses: that less what it still brings
    ratio : the chance of having enough at which one more piece is no longer worth it
    enough : so many pieces to order are enough with that chance, of which the faulty ones fall away
    """

    slope: Slope
    missed: Decimal
    left_over: Decimal
    ratio: float
    enough: float

    @property
    def first(self) -> int:
        """The fewest pieces."""
        return self.slope.first

    @property
    def whole(self) -> float:
        """The whole pieces that are enough."""
        return self.enough if isinf(self.enough) else ceil(self.enough - 1e-9)

    @property
    def further(self) -> Decimal:
        """What one more good piece costs."""
        return self.slope.further


@dataclass(frozen=True, slots=True, kw_only=True)
class Newsvendor:
    """How many a newsvendor would order of one maker.

    Parameters
    ----------
    pieces : whole pieces to order; None where a piece left over loses nothing, so that there is no end to it
    tier : in which it lies; of a size beside which no further piece is quoted, the one that begins nearest
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
        return self.pieces == self.tier.first and self.tier.whole < self.tier.first

    @property
    def is_moved(self) -> bool:
        """Whether it is other than as many as would be enough: at a tier's end, or a full carton."""
        return self.pieces is not None and self.pieces != self.tier.whole and not self.is_raised


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
    known, selling = [option for option in options if option.is_complete], options[0].selling
    demand = selling.demand
    if not known or demand is None or demand.low is None or demand.high is None:
        return None
    tiers = [_tier(slope, selling, demand) for slope in slopes_of(at, edges_of(known, breaks), 2 * demand.high)]
    nearest = max(known, key=lambda option: option.promise)
    endless = next((tier for tier in tiers if isinf(tier.enough) and isinf(tier.slope.last)), None)
    if endless is not None:
        return Newsvendor(pieces=None, tier=endless, order=None, nearest=nearest)
    steps = sorted(set(cartons))
    if not tiers:
        return None
    found = [(option, tier) for tier in tiers for pieces in tier.slope.near(tier.whole, steps)
             if (option := known_at(at, pieces))]  # fmt: skip
    found += [(option, _tier_of(option.pieces, tiers)) for option in known]
    order, tier = max(found, key=lambda one: expected(one[0], demand))
    return Newsvendor(pieces=order.pieces, tier=tier, order=order, nearest=nearest)


def expected(option: Option, demand: Demand) -> float:
    """Return what an order leaves on average over a demand that may be any number, in the middle of its costs."""
    selling, good = option.selling, float(option.good)
    sold = demand.expected_sold(good)
    paid = float(middle(option.total)) + float(selling.fixed)
    return float(selling.kept) * sold + float(selling.unsold_worth) * (good - sold) - paid


def _tier(slope: Slope, selling: Selling, demand: Demand) -> Tier:
    missed = EXACT.subtract(selling.kept, slope.further)
    left_over = EXACT.subtract(slope.further, selling.unsold_worth)
    ratio = critical_ratio(float(missed), float(left_over))
    enough = demand.enough_in(ratio) / float(slope.good)
    return Tier(slope=slope, missed=missed, left_over=left_over, ratio=ratio, enough=enough)


def _tier_of(pieces: int, tiers: Iterable[Tier]) -> Tier:
    """Return the tier that so many pieces lie in, else the one that begins nearest."""
    return min(tiers, key=lambda tier: (not tier.slope.has(pieces), abs(tier.first - pieces)))
