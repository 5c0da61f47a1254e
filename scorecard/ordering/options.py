"""One maker at one order size: what it costs in all, what is left, and how it turns out at each demand.

Enters: a landed cost at that size, and what the pieces sell for. Leaves: figures from least to most, exact.
"""

from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal

from scorecard.costing.amounts import EXACT, HUNDRED, ZERO, added, minor_unit, over, percent_of, times, to_step
from scorecard.costing.choosing import InTime, in_time, status_of
from scorecard.costing.landed import LandedCost
from scorecard.costing.prices import least_quoted
from scorecard.costing.quantities import order_quantities
from scorecard.costing.replies import standing
from scorecard.costing.timing import STATUSES, Status
from scorecard.frozen import dataclass
from scorecard.ordering.demands import CASES, WEIGHTS, Case
from scorecard.ordering.margins import break_even, margin_percent
from scorecard.ordering.selling import Selling
from scorecard.ordering.sizes import Size

Ends = tuple[Decimal, Decimal]


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """How one order turns out at one demand.

    Parameters
    ----------
    demand : pieces asked for
    sold, unsold : good pieces
    tied_up : what the pieces left over cost, least and most
    left : what is left after everything, least and most; below 0 for a loss
    """

    demand: int
    sold: Decimal
    unsold: Decimal
    tied_up: Ends
    left: Ends


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One maker at one order size, by the way that then stands for it.

    Parameters
    ----------
    size : pieces ordered, and why
    cost : of the way, at this size
    selling : what the pieces sell for
    wanted : the brief's pieces, which count as the likely demand where none is given
    is_sure : whether the maker is known to take just so many; not so where its minimum is open
    """

    size: Size
    cost: LandedCost
    selling: Selling
    wanted: int
    is_sure: bool

    @property
    def maker(self) -> str:
        """Whose it is."""
        return self.cost.maker

    @property
    def pieces(self) -> int:
        """Pieces ordered."""
        return self.size.pieces

    @property
    def is_complete(self) -> bool:
        """Whether every cost is known, and the totals have an end."""
        return self.cost.is_complete and self.cost.high.is_finite()

    @property
    def in_time(self) -> InTime | None:
        """Whether it is there by the need-by date if it is ordered today; None without such a date."""
        inputs = self.cost.inputs
        need_by = inputs.brief.need_by
        return None if need_by is None else in_time(self.cost, inputs.as_of, need_by)

    @property
    def status(self) -> Status | None:
        """How it stands against the need-by date; None without one, and where there is no telling."""
        inputs = self.cost.inputs
        return status_of(self.cost, inputs.as_of, inputs.brief.need_by)

    @property
    def worth(self) -> tuple[int, Decimal]:
        """What options are ordered by, the best last: how they stand against the need-by date, then what is left."""
        return -STATUSES.index(self.status or "in time"), self.promise

    @property
    def total(self) -> Ends:
        """Everything paid to have the pieces at the door."""
        return self.cost.low, self.cost.high

    @property
    def good(self) -> Decimal:
        """The good pieces of those ordered; of a broken number, all but the last part of one."""
        faulty = self.cost.inputs.settings.faulty_percent or ZERO
        return percent_of(HUNDRED - faulty, Decimal(self.pieces))

    @property
    def per_good(self) -> Ends:
        """The cost of a good piece, all of them."""
        return self.cost.per_good_piece

    @property
    def likely(self) -> Decimal:
        """The good pieces that are likely to sell."""
        demand = self.selling.demand
        return min(self.good, Decimal(demand.likely if demand else self.wanted))

    @property
    def per_likely(self) -> Ends:
        """The cost of a piece that is likely to sell, which carries that of those left over; open where none is."""
        step = minor_unit(self.cost.inputs.rates.home) / 100
        low, high = (
            to_step(over(end, self.likely), step) if self.likely else Decimal("Infinity") for end in self.total
        )
        return low, high

    @property
    def margin(self) -> tuple[Decimal | None, Decimal | None]:
        """The margin on one piece in percent of the price without sales tax, least and most; None where open."""
        low, high = self.per_good
        kept, takings = self.selling.kept, self.selling.takings
        return margin_percent(kept, high, takings), margin_percent(kept, low, takings)

    @property
    def break_even(self) -> tuple[int | None, int | None]:
        """How many pieces must sell before all the money is back, least and most; None where no number does."""
        low, high = (added([end, self.selling.fixed]) for end in self.total)
        return break_even(low, self.selling.kept), break_even(high, self.selling.kept)

    @property
    def outcomes(self) -> Mapping[Case, Outcome]:
        """How it turns out at the low, the likely and the high demand, as far as they are given."""
        demand = self.selling.demand
        figures = (demand.low, demand.likely, demand.high) if demand else (None, self.wanted, None)
        return {case: self.at_demand(one) for case, one in zip(CASES, figures, strict=True) if one is not None}

    def at_demand(self, demand: int) -> Outcome:
        """Return how it turns out where so many pieces are asked for."""
        sold = min(self.good, Decimal(demand))
        unsold = EXACT.subtract(self.good, sold)
        low, high = self.total
        brought = added([times(self.selling.kept, sold), times(self.selling.unsold_worth, unsold)])
        return Outcome(
            demand=demand,
            sold=sold,
            unsold=unsold,
            tied_up=(over(times(low, unsold), self.good), over(times(high, unsold), self.good)),
            left=(self._after(brought, high), self._after(brought, low)),
        )

    def _after(self, brought: Decimal, total: Decimal) -> Decimal:
        return EXACT.subtract(brought, added([total, self.selling.fixed]))

    @property
    def promise(self) -> Decimal:
        """What is left on average: at the low, the likely and the high demand, each as often as it counts; at the
        likely demand where low and high are not given. In the middle of the costs.
        """  # noqa: D205 - one sentence
        return added(times(weight, amount) for weight, amount in self.promised)

    @property
    def promised(self) -> tuple[tuple[Decimal, Decimal], ...]:
        """What the average is taken of: how much each demand counts, and what is then left."""
        demand, outcomes = self.selling.demand, self.outcomes
        if not (demand and demand.is_spread):
            return ((Decimal(1), middle(outcomes["likely"].left)),)
        return tuple((weight, middle(outcomes[case].left)) for case, weight in WEIGHTS.items())


def held_from(option: Option) -> int:
    """Return the fewest pieces that the maker of an option takes at its price: from its row on, and its least order."""
    rows = [reading.situation.price.row for reading in option.cost.readings]
    return max([least_order(option), *(row.pieces for row in rows if row.pieces is not None)])


def least_order(option: Option) -> int:
    """Return the fewest pieces that the maker of an option takes at any price of any reply that stands."""
    situation = option.cost.readings[0].situation
    brief = replace(situation.inputs.brief, quantity=1)
    replies = standing(situation.inputs.quotes)[option.maker]
    leasts = (max(order_quantities(brief, situation.facts, least_quoted(reply))) for reply in replies)
    return min(option.pieces, *leasts)


def middle(ends: Ends) -> Decimal:
    """Return the middle of the least and the most, by which options compare."""
    return over(added(ends), Decimal(2))
