"""The schedule, whole: a plan for every maker and way, every order under way, and the last day to change one's mind."""

from collections.abc import Iterable
from datetime import date
from typing import Any

from scorecard.costing.quotes import Way
from scorecard.frozen import dataclass
from scorecard.scheduling.calendars import Doubt
from scorecard.scheduling.inputs import ScheduleInputs, likeness
from scorecard.scheduling.plans import Plan, plan_of
from scorecard.scheduling.progress import Progress, is_open, progress_of
from scorecard.scheduling.settings import Days
from scorecard.scheduling.steps import Step, placed_back


@dataclass(frozen=True, slots=True, kw_only=True)
class WayOut:
    """The last day on which one can still turn to somebody nearby.

    Parameters
    ----------
    maker, way : None where no nearby maker is known, and ``nearby_days`` stand in
    days_left : from today to it; below 0: so many days too late
    """

    day: date
    days_left: int
    maker: str | None = None
    way: Way | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Schedule:
    """What the inputs lead to.

    Parameters
    ----------
    plans : by maker in sheet order, then by way as the maker has them; empty where the brief names no day
    orders : those with anything still to come, the last day to complain that comes next standing first, days that are
        over last
    ways_out : by maker: the last day to cancel with it, or to leave it, and to order nearby instead
    doubts : of the holidays that any of this touches, each once
    ruled_out : makers that were left out, since they fail a limit
    """

    inputs: ScheduleInputs
    plans: tuple[Plan, ...]
    orders: tuple[Progress, ...]
    ways_out: dict[str, WayOut]
    doubts: tuple[Doubt, ...]
    ruled_out: tuple[str, ...] = ()

    def plans_of(self, maker: str) -> tuple[Plan, ...]:
        """Return the plans of one maker."""
        return tuple(plan for plan in self.plans if plan.maker.maker == maker)


def schedule_of(inputs: ScheduleInputs, ruled_out: Iterable[str] = ()) -> Schedule:
    """Return the schedule of everything that was read.

    Parameters
    ----------
    inputs : plain days, calendars and orders
    ruled_out : makers that fail a limit: no plan is made for them, but their orders are followed
    """
    out = tuple(ruled_out)
    plans = tuple(_plans(inputs, frozenset(out)))
    rows = [order for order in inputs.orders if is_open(order, inputs.as_of) and order.maker in inputs.makers]
    orders = [progress_of(inputs, order, inputs.makers[order.maker]) for order in rows]
    orders.sort(key=_urgency)
    makers = dict.fromkeys([*(plan.maker.maker for plan in plans), *(one.order.maker for one in orders)])
    return Schedule(
        inputs=inputs,
        plans=plans,
        orders=tuple(orders),
        ways_out=_ways_out(inputs, plans, list(makers)),
        doubts=tuple(dict.fromkeys(doubt for plan in plans for doubt in plan.doubts)),
        ruled_out=out,
    )


def _urgency(one: Progress) -> tuple[bool, bool, date, int]:
    """Return what orders stand by: those whose last day to complain is to come, those without one, those past it."""
    until = one.order.complain_until
    is_past = until is not None and until < one.as_of
    return is_past, until is None, until or one.as_of, one.order.row


def _plans(inputs: ScheduleInputs, out: frozenset[str]) -> Iterable[Plan]:
    """Yield the plan of every maker and way; makers alike in every day share the work."""
    if inputs.need_by is None:
        return
    known: dict[Any, Plan] = {}
    for maker in inputs.makers.values():
        for times in maker.ways if maker.maker not in out else ():
            alike = likeness(maker, times)
            if alike not in known:
                known[alike] = plan_of(inputs, maker, times, inputs.need_by)
            yield known[alike].of_maker(maker)


def _ways_out(inputs: ScheduleInputs, plans: Iterable[Plan], makers: list[str]) -> dict[str, WayOut]:
    """Return each maker's last day for turning to the nearby maker that takes an order the latest, if not to itself."""
    need_by = inputs.need_by
    if need_by is None:
        return {}
    near = sorted((plan for plan in plans if plan.is_nearby), key=lambda plan: plan.order_by, reverse=True)
    by = _nearby_by(inputs, need_by)
    usual = WayOut(day=by, days_left=(by - inputs.as_of).days)
    best = [
        WayOut(day=plan.order_by, days_left=plan.order_slack_days, maker=plan.maker.maker, way=plan.way)
        for plan in near
    ]
    return {maker: next((one for one in best if one.maker != maker), usual) for maker in makers}


def _nearby_by(inputs: ScheduleInputs, need_by: date) -> date:
    """Return the last day to order from some maker nearby, by the usual days."""
    settings = inputs.settings
    days = settings.nearby_days + settings.receiving_days
    steps = [Step(name="production", days=Days(days, days), counted="your working days", calendar=inputs.buyer)]
    return inputs.buyer.latest(placed_back(steps, need_by)[1])
