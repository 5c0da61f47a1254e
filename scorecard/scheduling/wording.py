"""The schedule in sentences: plain words first, each with its date, no date a promise."""

from collections.abc import Iterable
from datetime import date

from scorecard.codes import COUNTRIES
from scorecard.costing.quotes import Way
from scorecard.scheduling.calendars import BESIDE, Closure, Doubt
from scorecard.scheduling.plans import Plan
from scorecard.scheduling.schedule import Schedule, WayOut
from scorecard.scheduling.steps import Placed
from scorecard.words import counted, day_words, listed

CAUTION = (
    "No date here is a promise: makers, carriers and customs are late, holidays are moved, and every day counted "
    "without a quote is assumed. Agree on dates in writing"
)


def by_way(way: Way) -> str:
    """Return a way of shipping as one says it.

    Examples
    --------
    >>> by_way("sea"), by_way("express")
    ('by sea', 'by express')
    """
    return f"by {way}"


def span_words(first: date, last: date) -> str:
    """Return a time as one says it, the year and the month once where they are the same.

    Examples
    --------
    >>> span_words(date(2026, 2, 15), date(2026, 2, 23)), span_words(date(2026, 12, 23), date(2027, 1, 6))
    ('15 to 23 February 2026', '23 December 2026 to 6 January 2027')
    """
    if first == last:
        return day_words(last)
    if (first.year, first.month) == (last.year, last.month):
        return f"{first.day} to {day_words(last)}"
    begun = day_words(first)
    return f"{begun.rsplit(' ', 1)[0] if first.year == last.year else begun} to {day_words(last)}"


def slack_words(days: int) -> str:
    """Return how much time there is, in words.

    Examples
    --------
    >>> slack_words(27), slack_words(0), slack_words(-1)
    ('27 days from today', 'today', '1 day too late')
    """
    if days == 0:
        return "today"
    return f"{counted(days, 'day')} from today" if days > 0 else f"{counted(-days, 'day')} too late"


def plan_sentence(plan: Plan) -> str:
    """Return by when to order from one maker on one way, or that it is too late; without the full stop."""
    order = f"order by {day_words(plan.order_by)} ({slack_words(plan.order_slack_days)})"
    match plan.status:
        case "in time" if plan.begin_by == plan.order_by:
            return f"{_whom(plan)}: {order}"
        case "in time":
            asked = f"ask for a sample by {day_words(plan.begin_by)} ({slack_words(plan.slack_days)})"
            return f"{_whom(plan)}: {asked}, and {order}"
        case "no time for a sample":
            late = f"too late to have a sample first, which was to be asked for by {day_words(plan.begin_by)}"
            return f"{_whom(plan)}: {late}; without one, {order}, at the risk of what a sample would have shown"
        case "only if all goes quickly":
            late = f"too late to plan on: the order was due by {day_words(plan.order_by)}"
            return (
                f"{_whom(plan)}: {late}; if every step takes its least and nothing is kept spare, there is time until "
                f"{day_words(plan.order_by_quickly)}"
            )
    gone = f"even if every step takes its least, the order was due by {day_words(plan.order_by_quickly)}"
    return f"{_whom(plan)}: too late; {gone}"


def _whom(plan: Plan) -> str:
    return f"{plan.maker.maker} {by_way(plan.way)}"


def too_late_of(plan: Plan) -> list[str]:
    """Return what is already too late, in the order in which it was due."""
    things = {
        "in time": [],
        "no time for a sample": ["a sample before the order"],
        "only if all goes quickly": ["a sample before the order", "the order, planned on the late end of every step"],
        "too late": ["a sample before the order", "the order, even if every step takes its least"],
    }[plan.status]
    return things if plan.begin_by != plan.order_by else things[1:]


def holiday_sentence(plan: Plan) -> str | None:
    """Return by how much holidays and stops of the maker move the latest day to order; None where they do not."""
    moved = (plan.order_by_without_holidays - plan.order_by).days
    if moved <= 0:
        return None
    closed = [closure for placed in plan.steps for closure in placed.closures if _is_of_maker(placed)]
    longest = max(closed, key=lambda closure: closure.days, default=None)
    several = "the longest is " if len(set(closed)) > 1 else ""
    because = f": {several}{closure_words(longest)}" if longest else ""
    before = day_words(plan.order_by_without_holidays)
    return f"Holidays move the latest day to order from {before} to {day_words(plan.order_by)}{because}"


def _is_of_maker(placed: Placed) -> bool:
    return placed.step.counted != "your working days"


def closure_words(closure: Closure) -> str:
    """Return a closure in words: what it is, and from when to when."""
    named = [name for name in closure.names if name != BESIDE]
    beside = f", {BESIDE} counted" if BESIDE in closure.names and named else ""
    return f"{named[0] if named else BESIDE}, closed {span_words(closure.first, closure.last)}{beside}"


def step_words(placed: Placed) -> str:
    """Return one step with its days, and when it is; without the full stop."""
    step = placed.step
    unit = {
        "days": "day",
        "days, long holidays left out": "day outside long holidays",
        "the maker's working days": "working day",
        "your working days": "working day of yours",
    }[step.counted]
    plural = unit.replace("day", "days", 1)
    days = counted(placed.days, unit, plural)
    open_end = "at least " if step.days.high is None else ""
    across = "; ".join(closure_words(one) for one in placed.closures)
    when = span_words(placed.first, placed.last)
    return f"{step.name}, {open_end}{days}, {when}" + (f" ({across})" if across else "")


def chain_words(plan: Plan) -> list[str]:
    """Return the chain back from the need-by date: one line a step, the last step first."""
    lines = [step_words(placed) for placed in reversed(plan.steps)]
    ordered = f"order and pay the deposit by {day_words(plan.order_by)}"
    at = next((at for at, placed in enumerate(reversed(plan.steps)) if placed.step.name == "sample looked at"), None)
    if at is None:
        return [*lines, ordered]
    return [*lines[:at], ordered, *lines[at:], f"ask for the sample by {day_words(plan.begin_by)}"]


def assumed_of(steps: Iterable[Placed]) -> list[str]:
    """Return the steps whose days nobody has said, each once."""
    return list(dict.fromkeys(placed.step.name for placed in steps if placed.step.assumed))


def assumed_sentence(plan: Plan) -> str | None:
    """Return which days nobody has said; None where all were."""
    names = assumed_of(plan.steps)
    if len(names) == len({placed.step.name for placed in plan.steps}):
        return "Every day counted here is assumed, since nobody has said"
    way = [f"that it ships {by_way(plan.way)}"] if plan.times.way_assumed else []
    return f"Assumed, since nobody has said: {listed([*way, *names])}" if way or names else None


def way_out_sentence(way_out: WayOut) -> str:
    """Return until when one can still turn to somebody nearby."""
    if way_out.maker is None or way_out.way is None:
        return f"Until {day_words(way_out.day)} you could still cancel and order nearby, by the usual days"
    return (
        f"Until {day_words(way_out.day)} you could still cancel and order from {way_out.maker} "
        f"{by_way(way_out.way)} instead, without a sample first"
    )


def doubt_sentences(doubts: Iterable[Doubt]) -> list[str]:
    """Return what should be known of the holidays; what is much the same of several countries is said once."""
    every = list(doubts)
    parts = [one for one in every if one.kind == "parts of the country"]
    rest = [one.text for one in every if one.kind != "parts of the country"]
    if len(parts) < 2:
        return [*rest, *(one.text for one in parts)]
    names = listed(COUNTRIES[one.country] for one in parts)
    return [
        *rest,
        f"holidays of parts of {names} are not counted; to count them, name the part under [schedule.regions]",
    ]


def headline(schedule: Schedule) -> str | None:
    """Return what to know first: the first day on which something is due, or that all is too late; None of no plan."""
    if not schedule.plans:
        return None
    need_by = schedule.inputs.need_by
    needed = f"To have the pieces by {day_words(need_by)}" if need_by else "To have the pieces"
    in_time = [plan for plan in schedule.plans if plan.status == "in time"]
    if not in_time:
        open_ways = [plan for plan in schedule.plans if plan.status == "no time for a sample"]
        if open_ways:
            last = max(open_ways, key=lambda plan: plan.order_by)
            return f"{needed} there is no time left for a sample first: {plan_sentence(last)}"
        return f"{needed} it is too late to plan on any maker and way"
    first = min(in_time, key=lambda plan: plan.begin_by)
    last = max(in_time, key=lambda plan: plan.begin_by)
    if first.begin_by == last.begin_by:
        return f"{needed}, begin by {day_words(first.begin_by)}"
    return (
        f"{needed}, begin by {day_words(first.begin_by)} with {_whom(first)}, or by {day_words(last.begin_by)} at the "
        f"very latest, with {_whom(last)}"
    )
