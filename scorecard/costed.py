"""Landed costs of a case on a day: every maker by every way, worked out once for all that asks for them.

Enters: a case. Leaves: the same one with its costs worked out, and the warnings that they call for. Nothing of costs is
loaded while nothing is quoted.
"""

from collections.abc import Iterable, Sequence
from dataclasses import field, replace
from datetime import date
from functools import cached_property
from typing import TYPE_CHECKING

from scorecard.case import Case
from scorecard.errors import Problem
from scorecard.frozen import dataclass

if TYPE_CHECKING:
    from scorecard.costing.comparing import CurrencyChange
    from scorecard.costing.inputs import CostInputs
    from scorecard.costing.landed import LandedCost
    from scorecard.costing.timing import Status
    from scorecard.ordering.plan import Plan
    from scorecard.ordering.selling import Selling


@dataclass(frozen=True, kw_only=True, eq=False)
class Costed:
    """What makers' goods cost at the door, each part worked out when it is first asked for.

    Parameters
    ----------
    inputs : all that was read, on the day that stands for today
    selling : what a piece sells for; None where nothing is said of it
    worked_out : the costs of these inputs where they are known from a larger whole
    """

    inputs: "CostInputs"
    selling: "Selling | None" = None
    worked_out: "tuple[LandedCost, ...] | None" = None
    _parts: "dict[frozenset[str], Costed]" = field(default_factory=dict, repr=False)
    _plans: "dict[tuple[str, ...], Plan]" = field(default_factory=dict, repr=False)

    @cached_property
    def costs(self) -> "tuple[LandedCost, ...]":
        """Every quoted maker by every way, in sheet order."""
        from scorecard.costing.landed import landed_costs

        return landed_costs(self.inputs) if self.worked_out is None else self.worked_out

    def of(self, makers: Iterable[str]) -> "Costed":
        """Return the costs of some makers alone, for who is the cheapest of them and what would change that."""
        kept = frozenset(makers)
        if kept.issuperset(row.maker for row in self.inputs.quotes):
            return self
        if kept not in self._parts:
            quotes = tuple(row for row in self.inputs.quotes if row.maker in kept)
            offers = tuple(offer for offer in self.inputs.offers if offer.maker in kept)
            self._parts[kept] = Costed(
                inputs=replace(self.inputs, quotes=quotes, offers=offers),
                selling=self.selling,
                worked_out=tuple(cost for cost in self.costs if cost.maker in kept),
            )
        return self._parts[kept]

    @cached_property
    def chosen(self) -> "dict[str, LandedCost]":
        """By maker, the one way that stands for it: as ordered, else the cheapest in time, else the quickest."""
        from scorecard.costing.choosing import chosen_ways

        return chosen_ways(self.costs, self.inputs.as_of, self.inputs.brief.need_by, self.inputs.ordered)

    @cached_property
    def cheapest_first(self) -> "list[LandedCost]":
        """Every cost, the cheapest good piece first, those with a cost missing last."""
        from scorecard.costing.choosing import cheapest_first

        return cheapest_first(self.costs)

    @cached_property
    def doubts(self) -> tuple[Problem, ...]:
        """Warnings on quotes and freight, each at its cell, and on the price that pieces sell for."""
        from scorecard.costing.doubts import doubts

        if self.selling is None:
            return doubts(self.inputs, self.costs)
        from scorecard.ordering.doubts import price_doubts

        return (*price_doubts(self.selling, self.chosen.values()), *doubts(self.inputs, self.costs))

    def is_ordered(self, cost: "LandedCost") -> bool:
        """Say whether an order was placed with the maker by this way."""
        return cost.way is not None and self.inputs.ordered.get(cost.maker) == cost.way

    def status(self, cost: "LandedCost") -> "Status | None":
        """Return how a way stands if it is begun today; None without a date, once ordered, and if nobody can tell."""
        from scorecard.costing.choosing import status_of

        if self.is_ordered(cost):
            return None
        return status_of(cost, self.inputs.as_of, self.inputs.brief.need_by)

    def doubts_on(self, cost: "LandedCost") -> tuple[Problem, ...]:
        """Return the warnings that one cost calls for by itself."""
        from scorecard.costing.doubts import doubts

        return doubts(replace(self.inputs, quotes=(), offers=()), [cost])

    @cached_property
    def changes(self) -> "tuple[CurrencyChange, ...]":
        """At which rate of each currency another maker becomes the cheapest."""
        from scorecard.costing.comparing import currency_changes

        return currency_changes(self.inputs)

    def plan(self, makers: Sequence[str]) -> "Plan | None":
        """Return how many to order of these makers, best first; None where nothing is said of selling."""
        from scorecard.ordering.plan import plan_of

        if self.selling is None:
            return None
        names = tuple(makers)
        if names not in self._plans:
            self._plans[names] = plan_of(self.inputs, self.selling, names)
        return self._plans[names]


def costed_on(case: Case, as_of: date) -> Costed | None:
    """Return a case's landed costs on a day, those that were worked out before where it has them.

    Returns
    -------
    None while nothing is quoted
    """
    if case.costs is None:
        return None
    if case.costed is not None and case.costed.inputs.as_of == as_of:
        return case.costed
    from scorecard.orders import ordered_ways

    inputs = replace(case.costs, as_of=as_of, ordered=ordered_ways(case.orders, case.costs.quotes))
    return Costed(inputs=_timed(case, inputs), selling=case.selling)


def _timed(case: Case, costs: "CostInputs") -> "CostInputs":
    """Return the inputs of landed costs with what the schedule says of each quoted maker and way, if there is one."""
    if case.schedule is None or case.schedule.need_by is None:
        return costs
    from scorecard.scheduling.timed import timings

    quoted = dict.fromkeys(row.maker for row in costs.quotes)
    found = timings(replace(case.schedule, as_of=costs.as_of), quoted)
    begun = set(costs.ordered.items())
    return replace(costs, timings={key: timing for key, timing in found.items() if key not in begun})


def with_costs(case: Case, as_of: date) -> Case:
    """Return a case with its landed costs on a day, and their warnings among its own.

    Parameters
    ----------
    case : what was read
    as_of : the day that stands for today
    """
    costed = costed_on(case, as_of)
    if costed is None or costed is case.costed:
        return case
    before = set(case.costed.doubts) if case.costed else set()
    kept = tuple(warning for warning in case.warnings if warning not in before)
    return replace(case, costed=costed, warnings=(*kept, *costed.doubts))
