"""Steady sales of one maker's goods: which size, ordered again and again, costs least a year."""

from collections.abc import Iterable
from dataclasses import replace
from decimal import Decimal

from scorecard.costing.inputs import CostInputs
from scorecard.costing.quotes import QuoteRow
from scorecard.frozen import dataclass
from scorecard.ordering.options import Option, middle
from scorecard.ordering.selling import Selling
from scorecard.ordering.slopes import At, Slope, edges_of, known_at, slopes_of
from scorecard.ordering.steady import economic_order_quantity, yearly_cost


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
    economic : the economic order quantity with price breaks, in whole pieces to order
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


def steady_order(
    selling: Selling, at: At, sizes: Iterable[int], breaks: Iterable[int], cartons: Iterable[int]
) -> SteadyOrder | None:
    """Return which size of one maker costs least a year.

    Parameters
    ----------
    selling : with a yearly demand, and what keeping a piece costs
    at : gives what a quantity comes to in an order that repeats an earlier one
    sizes : the real order sizes
    breaks : the first pieces at which another price or offer of freight holds
    cartons : the pieces of one, of every offer that charges whole cartons

    Returns
    -------
    None without these, or where no size has every cost known. Of every slope its economic quantity, held within it, its
    ends and the full cartons beside, the one of which a year costs least: all that its orders cost, and keeping. What
    an order costs however many pieces it has counts as a cost of ordering; a piece is kept at what one more costs

    References
    ----------
    The usual procedure for price breaks on all units. The tests hold it against every quantity tried in turn.
    """
    if selling.yearly_demand is None or selling.holding_percent is None:
        return None
    known = [option for pieces in sizes if (option := known_at(at, pieces)) is not None]
    if not known:
        return None
    year = _Year(
        demand=selling.yearly_demand,
        order_cost=selling.order_cost,
        holding_percent=selling.holding_percent,
        slopes=tuple(slopes_of(at, edges_of(known, breaks), selling.yearly_demand)),
    )
    steps = tuple(cartons)
    tried = {pieces for slope in year.slopes for pieces in slope.near(year.economic(slope), steps)}
    found = [*known, *(option for pieces in sorted(tried) if (option := known_at(at, pieces)) is not None)]
    best = min(found, key=year.cost)
    return SteadyOrder(
        economic=best.pieces,
        cost=year.cost(best),
        orders=selling.yearly_demand / float(best.good),
        sizes=tuple(YearlySize(pieces=option.pieces, cost=year.cost(option)) for option in known),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Year:
    """A year of orders: how many sell, what ordering and keeping cost, and the slopes of a maker's costs."""

    demand: int
    order_cost: Decimal
    holding_percent: Decimal
    slopes: tuple[Slope, ...]

    def economic(self, slope: Slope) -> float:
        """Return the pieces to order that a slope alone would call for."""
        per_order = float(self.order_cost) + float(slope.once)
        keeping = self._keeping(float(slope.further))
        return economic_order_quantity(self.demand, per_order, keeping) / float(slope.good)

    def cost(self, option: Option) -> float:
        """Return what a year of orders of one size costs."""
        each = next((slope.further for slope in self.slopes if slope.has(option.pieces)), middle(option.per_good))
        per_order = float(self.order_cost) + float(middle(option.total))
        good = float(option.good)
        return yearly_cost(good, self.demand, per_order, self._keeping(float(each)))

    def _keeping(self, each: float) -> float:
        return float(self.holding_percent) / 100 * max(each, 0.0)


def repeated(inputs: CostInputs) -> CostInputs:
    """Return inputs for an order that repeats an earlier one, without any sample."""
    quotes = tuple(_without_sample(row) for row in inputs.quotes)
    makers = {name: replace(facts, sample=None) for name, facts in inputs.makers.items()}
    return replace(inputs, quotes=quotes, makers=makers, settings=replace(inputs.settings, reorder=True))


def _without_sample(row: QuoteRow) -> QuoteRow:
    unknown = row.unknown - {"sample_price", "sample_postage", "credited_from"}
    return replace(row, sample_price=None, sample_postage=None, credited_from=None, unknown=unknown)
