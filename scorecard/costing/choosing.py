"""One way of shipping per maker: the one ordered, else the cheapest that meets the need-by date, else the quickest."""

from collections.abc import Iterable, Mapping
from datetime import date
from decimal import Decimal
from math import nan
from typing import Literal

from scorecard.costing.amounts import OPEN, added
from scorecard.costing.landed import LandedCost
from scorecard.costing.quotes import Way
from scorecard.costing.timing import Status

InTime = Literal["yes", "no", "unknown"]


def in_time(cost: LandedCost, as_of: date, need_by: date | None) -> InTime:
    """Return whether a way surely meets the need-by date if it is begun today; planned on the late end of its days.

    Where there is a schedule, its verdict counts: it reckons with samples, proof, holidays, clearance and days kept
    spare. What it finds in time by days that nobody has said is "unknown". Without one plain days count: a way whose
    early end is in time and whose late end is not is "no", for nobody should count on it.
    """
    if need_by is None:
        return "yes"
    if cost.timing is not None:
        if cost.timing.status != "in time":
            return "no"
        return "unknown" if cost.timing.rests_on else "yes"
    if cost.days is None or cost.days.high is None:
        return "unknown"
    return "yes" if cost.days.high <= (need_by - as_of).days else "no"


def status_of(cost: LandedCost, as_of: date, need_by: date | None) -> Status | None:
    """Return how a way stands, in the words of the schedule; None without a date, and where there is no telling."""
    if need_by is None:
        return None
    if cost.timing is not None:
        return cost.timing.status
    by_days: dict[InTime, Status | None] = {"yes": "in time", "no": "too late", "unknown": None}
    return by_days[in_time(cost, as_of, need_by)]


def cheapness(cost: LandedCost) -> tuple[bool, Decimal]:
    """Return what ways are ordered by: those with every cost first, then by the middle of the cost of a good piece."""
    return not cost.is_complete, middle(cost)


def middle(cost: LandedCost) -> Decimal:
    """Return the middle of the least and the greatest cost of a good piece; infinite where there is no telling."""
    return added(cost.per_good_piece) / 2


def lateness(cost: LandedCost, need_by: date | None) -> tuple[bool, Decimal, bool, Decimal]:
    """Return what ways are ordered by where none is in time: days that were said first, the quickest, then the cost.

    The quickest is the one that may be ordered the latest; without a schedule, the one of the least days at their late
    end.
    """
    if cost.timing is not None and need_by is not None:
        needed = Decimal((need_by - cost.timing.order_by).days)
        return (cost.timing.rests_on != "", needed, *cheapness(cost))
    late = OPEN if cost.days is None or cost.days.high is None else cost.days.high
    return (False, late, *cheapness(cost))


def chosen_way(costs: Iterable[LandedCost], as_of: date, need_by: date | None) -> LandedCost | None:
    """Return the one way that stands for a maker in both measures.

    Parameters
    ----------
    costs : of one maker, by every way and reply
    as_of : the day that stands for today
    need_by : None where the brief names none

    Returns
    -------
    the cheapest of those in time (with a cost missing only where all have one missing), else of those in time by days
    that nobody has said, else the quickest; None without any

    References
    ----------
    Design section 6, item 11.
    """
    found = list(costs)
    return _chosen(found, as_of, need_by) if found else None


def _chosen(found: list[LandedCost], as_of: date, need_by: date | None) -> LandedCost:
    surely = [cost for cost in found if in_time(cost, as_of, need_by) == "yes"]
    punctual = surely or [cost for cost in found if status_of(cost, as_of, need_by) == "in time"]
    if punctual:
        return min(punctual, key=cheapness)
    return min(found, key=lambda cost: lateness(cost, need_by))


def chosen_ways(
    costs: Iterable[LandedCost], as_of: date, need_by: date | None, ordered: Mapping[str, Way] | None = None
) -> dict[str, LandedCost]:
    """Return the chosen way of every maker that has a quote, in the order of the costs.

    Parameters
    ----------
    costs : of any makers, by every way and reply
    as_of : the day that stands for today
    need_by : None where the brief names none
    ordered : by maker, the way of the order that was placed with it, which then stands for the maker
    """
    by_maker: dict[str, list[LandedCost]] = {}
    for cost in costs:
        by_maker.setdefault(cost.maker, []).append(cost)
    return {
        maker: _chosen(_as_ordered(of_maker, (ordered or {}).get(maker)), as_of, need_by)
        for maker, of_maker in by_maker.items()
    }


def _as_ordered(costs: list[LandedCost], way: Way | None) -> list[LandedCost]:
    """Return the costs by the way that was ordered; all of them where none is, or none is known by it."""
    return [cost for cost in costs if way is not None and cost.way == way] or costs


def cheapest_first(costs: Iterable[LandedCost]) -> list[LandedCost]:
    """Return costs with the cheapest good piece first, those with a cost missing last."""
    return sorted(costs, key=cheapness)


def answer_of_cost(cost: LandedCost | None) -> tuple[float, float]:
    """Return the measure ``landed_cost_per_piece`` of a maker's chosen way, in the brief's currency.

    Returns
    -------
    least and most; infinite at an open end; NaN at both where nothing is quoted or a cost is missing
    """
    if cost is None or not cost.is_complete:
        return nan, nan
    low, high = cost.per_good_piece
    return float(low), float(high)


def answer_of_days(cost: LandedCost | None) -> tuple[float, float]:
    """Return the measure ``days_to_door`` of a maker's chosen way: least and most; NaN at both where not known."""
    if cost is None or cost.days is None:
        return nan, nan
    return float(cost.days.at("low")), float(cost.days.at("high"))
