"""The schedule in sentences: plain words first, each with its date, no date a promise."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date

from scorecard.codes import COUNTRIES
from scorecard.costing.quotes import Way
from scorecard.frozen import dataclass
from scorecard.scheduling.calendars import BESIDE, Calendar, Closure, Doubt, days_between
from scorecard.scheduling.plans import Plan
from scorecard.scheduling.progress import Progress
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
    ('27 days from today', 'today', 'too late by 1 day')
    """
    if days < 0:
        return f"too late by {counted(-days, 'day')}"
    return f"{counted(days, 'day')} from today" if days else "today"


def due_words(day: date, days_left: int) -> str:
    """Return a latest day as a table has it: in brackets once it is over."""
    return day_words(day) if days_left >= 0 else f"({day_words(day)})"


def left_words(days: int) -> str:
    """Return the days left as a table has them.

    Examples
    --------
    >>> left_words(9), left_words(-67)
    ('9', 'none')
    """
    return str(days) if days >= 0 else "none"


OVER = "In brackets: a day that is over"
AT_RISK = "at the risk of what a sample would have shown"


def sample_words(plan: Plan) -> str:
    """Return how the sample stands on which nothing is decided yet; "" where there is none."""
    under_way = plan.maker.sample
    if under_way is None or not any(placed.step.name == "sample looked at" for placed in plan.steps):
        return ""
    if under_way.received_on:
        return f"a sample came on {day_words(under_way.received_on)}"
    asked, due = under_way.asked_on, plan.sample_due
    assert asked is not None, "what has not come was asked for"  # noqa: S101 - the sheet has either day
    assert due is not None, "what was asked for is due"  # noqa: S101 - told to the type checker
    is_late = (plan.order_by - due).days > plan.order_slack_days
    verb = "should have come" if is_late else "should come"
    return f"a sample was asked for on {day_words(asked)} and {verb} by {day_words(due)}"


def ask_words(plan: Plan) -> str:
    """Return by when to ask for a sample as a table has it; "" where none is needed."""
    if plan.begin_by != plan.order_by:
        return due_words(plan.begin_by, plan.slack_days)
    sample = plan.maker.sample
    if sample is None or not sample_words(plan):
        return ""
    return "it has come" if sample.received_on else "asked for"


def plan_sentence(plan: Plan) -> str:
    """Return by when to order from one maker on one way, or by how much it is too late; without the full stop."""
    order = f"order by {day_words(plan.order_by)} ({slack_words(plan.order_slack_days)})"
    due = f"the order was due by {day_words(plan.order_by)}"
    sample = sample_words(plan)
    match plan.status:
        case "in time" if sample:
            told = f"{sample}; decide on it, and {order}"
        case "no time for a sample" if sample:
            told = f"{sample}, too late to decide on before the order; without it, {order}, {AT_RISK}"
        case "in time" if plan.begin_by == plan.order_by:
            told = order
        case "in time":
            asked = f"ask for a sample by {day_words(plan.begin_by)} ({slack_words(plan.slack_days)})"
            told = f"{asked}, and {order}"
        case "no time for a sample":
            late = f"{slack_words(plan.slack_days)} to have a sample first, due to be asked for by "
            told = f"{late}{day_words(plan.begin_by)}; without one, {order}, {AT_RISK}"
        case "only if all goes quickly":
            quickly = day_words(plan.order_by_quickly)
            told = (
                f"{slack_words(plan.order_slack_days)} to plan on: {due}; if every step takes its least and nothing is "
                f"kept spare, there is time until {quickly}"
            )
        case _:  # too late
            even = f"and even if every step takes its least, by {day_words(plan.order_by_quickly)}"
            told = f"{slack_words(plan.order_slack_days)}: {due}, {even}"
    return f"{_whom(plan)}: {told}"


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
    return things if plan.begin_by != plan.order_by or sample_words(plan) else things[1:]


NAMED = 3  # closures named in one sentence, the longest first


def holiday_sentence(plan: Plan) -> str | None:
    """Return by how much holidays, theirs and yours, and stops move the latest day to order; None if not at all."""
    moved = (plan.order_by_without_holidays - plan.order_by).days
    if moved <= 0:
        return None
    closed = sorted(_moving(plan), key=lambda one: one[0].days, reverse=True)
    more = len(closed) - NAMED
    named = [
        *(f"{closure_words(one)}{where}" for one, where in closed[:NAMED]),
        *([f"{more} more"] if more > 0 else []),
    ]
    before = day_words(plan.order_by_without_holidays)
    because = f": {'; '.join(named)}" if named else ""
    return f"Holidays move the latest day to order from {before} to {day_words(plan.order_by)}{because}"


def _moving(plan: Plan) -> list[tuple[Closure, str]]:
    """Return the closures that take working days from the steps that follow the order, each once, and where it is."""
    after = [placed for placed in plan.steps if not placed.step.name.startswith("sample")]
    theirs = plan.maker.calendar
    between = theirs.closures(plan.order_by, after[0].first) if after else []
    found = [(closure, "") for closure in between if _takes_work(closure, theirs)]
    for placed in after:
        calendar, where = (theirs, "") if _is_of_maker(placed) else (placed.step.calendar, " where you are")
        found += [(closure, where) for closure in placed.closures if _takes_work(closure, calendar)]
    both = {closure for closure, where in found if not where}
    return list(dict.fromkeys((closure, "" if closure in both else where) for closure, where in found))


def _takes_work(closure: Closure, calendar: Calendar | None) -> bool:
    """Say whether a closure has a day that would count otherwise: one that is no weekend."""
    weekend = calendar.weekend if calendar else frozenset()
    return any(day.weekday() not in weekend for day in days_between(closure.first, closure.last))


def _is_of_maker(placed: Placed) -> bool:
    return placed.step.counted != "your working days"


def closure_words(closure: Closure) -> str:
    """Return a closure in words: what it is, and from when to when."""
    named = [name for name in closure.names if name != BESIDE]
    beside = f", {BESIDE} counted" if BESIDE in closure.names and named else ""
    return f"{named[0] if named else BESIDE}, closed {span_words(closure.first, closure.last)}{beside}"


@dataclass(frozen=True, slots=True)
class StepRow:
    """One line of a chain: when, what, how many days by whose calendar, and the closed days that it runs across."""

    when: str
    what: str
    days: str = ""
    closed: str = ""

    @property
    def in_words(self) -> str:
        """The line as words."""
        if not self.days:
            return f"{self.what} {self.when}"
        return f"{self.what}, {self.days}: {self.when}" + (f" ({self.closed})" if self.closed else "")


def step_row(placed: Placed) -> StepRow:
    """Return one step with its days, and when it is."""
    step = placed.step
    open_end = "at least " if step.days.high is None else ""
    return StepRow(
        when=span_words(placed.first, placed.last),
        what=step.name,
        days=f"{open_end}{_days_counted(placed)}",
        closed="; ".join(closure_words(one) for one in placed.closures if _takes_work(one, step.calendar)),
    )


def _days_counted(placed: Placed) -> str:
    """Return the days of a step, and in whose calendar they are counted."""
    step = placed.step
    country = COUNTRIES.get(step.calendar.country or "") if step.calendar else None
    match step.counted:
        case "days":
            return counted(placed.days, "day")
        case "days, long holidays left out":
            return f"{counted(placed.days, 'day')} less long holidays{f' ({country})' if country else ''}"
        case "your working days":
            return f"{counted(placed.days, 'working day')} of yours{f' ({country})' if country else ''}"
    return f"{counted(placed.days, 'working day')} {f'({country})' if country else 'of the maker'}"


def chain_rows(plan: Plan) -> list[StepRow]:
    """Return the chain back from the need-by date: one row a step, the last step first."""
    rows = [step_row(placed) for placed in reversed(plan.steps)]
    ordered = StepRow(f"by {day_words(plan.order_by)}", "order and pay the deposit")
    at = next((at for at, placed in enumerate(reversed(plan.steps)) if placed.step.name == "sample looked at"), None)
    if at is None:
        return [*rows, ordered]
    return [*rows[:at], ordered, *rows[at:], _sample_row(plan)]


def _sample_row(plan: Plan) -> StepRow:
    """Return when the sample is to be asked for, was, or came."""
    under_way = plan.maker.sample
    if under_way is None:
        return StepRow(f"by {day_words(plan.begin_by)}", "ask for the sample")
    came, asked = under_way.received_on, under_way.asked_on
    day = came or asked
    return StepRow(f"on {day_words(day)}" if day else "", "the sample came" if came else "the sample was asked for")


def chain_words(plan: Plan) -> list[str]:
    """Return the same as lines of words, without full stops."""
    return [row.in_words for row in chain_rows(plan)]


def assumed_of(steps: Iterable[Placed]) -> list[str]:
    """Return the steps whose days nobody has said, each once."""
    return list(dict.fromkeys(placed.step.name for placed in steps if placed.step.assumed))


def assumed_sentence(plan: Plan) -> str | None:
    """Return which days nobody has said; None where all were."""
    names = assumed_of(plan.steps)
    if len(names) == len({placed.step.name for placed in plan.steps}):
        return "Every day counted here is assumed, since nobody has said"
    way = [f"that it ships {by_way(plan.way)}"] if plan.times.way_assumed else []
    found = [*way, *_counts_assumed(plan), *names]
    return f"Assumed, since nobody has said: {listed(found)}" if found else None


def _counts_assumed(plan: Plan) -> list[str]:
    """Return which days those of the quote are taken to be, where they are given and nobody has said which."""
    times = plan.times
    if not times.counts_assumed:
        return []
    what = "the maker's days" if times.up_to == "ready" else "the maker's days to your door"
    return [f"that {what} are {'calendar days' if times.counts == 'days' else 'working days'}"]


def way_out_sentence(way_out: WayOut, *, is_ordered: bool = False) -> str:
    """Return until when one can still turn to somebody nearby: by cancelling, where an order is under way."""
    of_whom = "nearby, by the usual days"
    if way_out.way is not None:
        of_whom = f"from {way_out.maker} {by_way(way_out.way)}, without a sample first"
    what = "cancel and order" if is_ordered else "order"
    if way_out.days_left < 0:
        return f"{slack_words(way_out.days_left).capitalize()} to {what} {of_whom}: {day_words(way_out.day)}"
    if is_ordered:
        return f"Until {day_words(way_out.day)} you could still cancel and order {of_whom}"
    return f"If it comes to nothing, until {day_words(way_out.day)} you could still order {of_whom}"


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
    """Return what to know first: whether an order is needed at all, and when the first thing is due, or was.

    None where there is no plan.
    """
    if not schedule.plans:
        return None
    makers = list(dict.fromkeys(one.order.maker for one in schedule.orders if not _is_late(one)))
    if not makers:
        return _first_due(schedule)
    others = tuple(plan for plan in schedule.plans if plan.maker.maker not in makers)
    due = _first_due(replace(schedule, plans=others) if others else schedule)
    fails = "the one under way with {} fails" if len(makers) == 1 else "those under way with {} fail"
    return f"Another order is needed only if {fails.format(listed(makers))}; then, {due[0].lower()}{due[1:]}"


def _is_late(order: Progress) -> bool:
    return order.slack_days is not None and order.slack_days < 0


def _first_due(schedule: Schedule) -> str:
    """Return the first day on which something is due for an order, or that all is too late."""
    need_by = schedule.inputs.need_by
    needed = f"To have the pieces by {day_words(need_by)}" if need_by else "To have the pieces"
    in_time = [plan for plan in schedule.plans if plan.status == "in time"]
    if not in_time:
        open_ways = [plan for plan in schedule.plans if plan.status == "no time for a sample"]
        if open_ways:
            last = max(open_ways, key=lambda plan: plan.order_by)
            return f"{needed} there is no time left for a sample first: {plan_sentence(last)}"
        last = max(schedule.plans, key=lambda plan: plan.order_by)
        late = counted(-last.order_slack_days, "day")
        return f"{needed} it is too late to plan on any maker and way, by {late} even with {_whom(last)}"
    first = min(in_time, key=lambda plan: plan.begin_by)
    last = max(in_time, key=lambda plan: plan.begin_by)
    if first.begin_by == last.begin_by:
        return f"{needed}, begin by {day_words(first.begin_by)}"
    return (
        f"{needed}, begin by {day_words(first.begin_by)} with {_whom(first)}, or by {day_words(last.begin_by)} at the "
        f"very latest, with {_whom(last)}"
    )
