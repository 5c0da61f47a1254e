"""Steady sales of one maker's goods: which size, ordered again and again, costs least a year."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil

from scorecard.costing.amounts import added
from scorecard.costing.inputs import CostInputs
from scorecard.costing.landed import LandedCost
from scorecard.ordering.options import Option, held_from
from scorecard.ordering.pricing import Pricing
from scorecard.ordering.selling import Selling
from scorecard.ordering.steady import Tier, sizes_with_breaks, yearly_cost


@dataclass(frozen=True, slots=True, kw_only=True)
class YearlySize:
    """A real order size, ordered again and again: good pieces of each order, and what a year costs."""

    pieces: int
    cost: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SteadyOrder:
    """Which size costs least a year.

    Parameters
    ----------
    economic : the economic order quantity with price breaks, in whole pieces to order; the best of the real sizes where
        nobody quoted that many
    cost : of a year, as it reckons
    orders : a year, of that quantity
    sizes : the real order sizes, each with its cost of a year
    """

    economic: int
    cost: float
    orders: float
    sizes: tuple[YearlySize, ...]

    @property
    def best(self) -> YearlySize:
        """The real order size that costs least a year."""
        return min(self.sizes, key=lambda size: size.cost)


def steady_order(pricing: Pricing, selling: Selling, options: Sequence[Option]) -> SteadyOrder | None:
    """Return which size of one maker costs least a year.

    Parameters
    ----------
    pricing : of this maker
    selling : with a yearly demand, and what keeping a piece costs
    options : its real order sizes, least first

    Returns
    -------
    None without these, or where no size has every cost known. Costs are those of an order that repeats an earlier one:
    no sample, and set-up only where it is charged again
    """
    demand, holding = selling.yearly_demand, selling.holding_percent
    if demand is None or holding is None:
        return None
    known = [(option, tier) for option in options if (tier := _tier(pricing, option)) is not None]
    if not known:
        return None
    per_order = float(selling.order_cost)
    (first, tier), *others = known
    from_first = replace(tier, from_pieces=tier.from_pieces * held_from(first) / first.pieces)
    tiers = [from_first, *(other for _, other in others)]
    found = sizes_with_breaks(demand, per_order, float(holding), tiers)
    best = min(found, key=lambda one: one.cost)
    share = float(first.good) / first.pieces
    economic = ceil(best.quantity / share - 1e-9)
    sizes = tuple(
        YearlySize(pieces=option.pieces, cost=_cost(tier, demand, per_order, float(holding))) for option, tier in known
    )
    if pricing.total(first.maker, economic) is None:
        size = min(sizes, key=lambda one: one.cost)
        return SteadyOrder(economic=size.pieces, cost=size.cost, orders=demand / (size.pieces * share), sizes=sizes)
    return SteadyOrder(economic=economic, cost=best.cost, orders=demand / best.quantity, sizes=sizes)


def _cost(tier: Tier, demand: float, per_order: float, holding: float) -> float:
    return yearly_cost(tier.from_pieces, demand, per_order, tier, holding / 100 * tier.each)


def _tier(pricing: Pricing, option: Option) -> Tier | None:
    """Return the cost of a good piece of a repeated order, and what every such order costs besides; None with a gap."""
    cost = Pricing(inputs=_repeated(pricing.inputs)).chosen(option.pieces).get(option.maker)
    if cost is None or not cost.is_complete or not cost.high.is_finite():
        return None
    once = _middle_of_setup(cost)
    total, good = float(added([cost.low, cost.high])) / 2, float(option.good)
    return Tier(from_pieces=good, each=(total - once) / good, once=once)


def _repeated(inputs: CostInputs) -> CostInputs:
    """Return inputs for an order that repeats an earlier one, without any sample."""
    quotes = (replace(row, sample_price=None, sample_postage=None, credited_from=None) for row in inputs.quotes)
    return replace(inputs, quotes=tuple(quotes), settings=replace(inputs.settings, reorder=True))


def _middle_of_setup(cost: LandedCost) -> float:
    found = [end for reading in cost.readings for line in reading.lines if line.key == "set-up" for end in
             (line.low, line.high)]  # fmt: skip
    return float(added(found)) / len(found) if found else 0.0
