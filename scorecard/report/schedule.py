"""By when to order, on the page: orders under way, a row for each maker and way with its time line, every chain.

Enters: an assessment with its names as read. Leaves: ready strings, and places along a line from today to the day by
which the pieces are needed, in per cent.
"""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date

from scorecard.assessment import Assessment
from scorecard.frozen import dataclass
from scorecard.report.charts import percent
from scorecard.report.extent import ROOMS, Room
from scorecard.report.texts import isolate, sentence, visible
from scorecard.scheduling.inputs import MakerTimes
from scorecard.scheduling.plans import Plan
from scorecard.scheduling.progress import Progress
from scorecard.scheduling.schedule import Schedule, WayOut
from scorecard.scheduling.steps import Placed
from scorecard.words import day_words


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """A part of a time line: its look, and its ends in per cent."""

    look: str
    start: str
    end: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanRow:
    """One maker by one way.

    Parameters
    ----------
    line : parts of the time line from today on; empty where all of it is over
    order_at : where the latest day to order lies on it; None where it is over
    """

    maker: str
    way: str
    sample_by: str
    order_by: str
    left: str
    status: str
    line: tuple[Stretch, ...]
    order_at: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Chain:
    """One maker by one way, step by step back from the day by which the pieces are needed."""

    said: str
    steps: tuple[str, ...]
    beside: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ScheduleView:
    """What the page says of dates; without rows while there is nothing to say.

    Parameters
    ----------
    orders : of each order under way its sentences, the last day to complain first
    arrived : the same of those that have arrived, and of which something is still to come
    span : what the time lines reach from and to, in words
    left, chains_left : how many plans the table leaves out, and how many more the steps
    cautions : on holidays, and that no date is a promise
    """

    orders: tuple[tuple[str, ...], ...] = ()
    arrived: tuple[tuple[str, ...], ...] = ()
    headline: str = ""
    rows: tuple[PlanRow, ...] = ()
    span: tuple[str, str] = ("", "")
    left: int = 0
    chains: tuple[Chain, ...] = ()
    chains_left: int = 0
    cautions: tuple[str, ...] = ()


def schedule_of_page(assessment: Assessment, room: Room = ROOMS[0]) -> ScheduleView:
    """Return what the page says of dates.

    Parameters
    ----------
    assessment : with its names as they were read
    room : how many plans the page holds
    """
    if assessment.schedule is None or assessment.schedule.inputs.need_by is None:
        return ScheduleView()
    from scorecard.scheduling.wording import CAUTION, doubt_sentences, headline

    schedule = _isolated(assessment.schedule)
    as_of, need_by = schedule.inputs.as_of, schedule.inputs.need_by or date.max
    told = _most_telling([plan for plan in schedule.plans if plan.is_said] or list(schedule.plans), room.chains)
    return ScheduleView(
        orders=_told(schedule, has_arrived=False),
        arrived=_told(schedule, has_arrived=True),
        headline=sentence(headline(schedule) or "No maker is left to plan with"),
        rows=tuple(_row(plan, as_of, need_by) for plan in schedule.plans[: room.plans]),
        span=(day_words(as_of), day_words(need_by)),
        left=max(len(schedule.plans) - room.plans, 0),
        chains=tuple(_chain(plan, schedule) for plan in told),
        chains_left=len(schedule.plans) - len(told),
        cautions=_sentences([*doubt_sentences(schedule.doubts), CAUTION]),
    )


def _most_telling(plans: Sequence[Plan], most: int) -> list[Plan]:
    """Return the plans whose steps are drawn, in their order.

    First comes the one that holidays move most, then those of makers that are too late by one way and not by another,
    then the others as they stand.
    """
    by_holidays = sorted(plans, key=lambda plan: plan.order_by - plan.order_by_without_holidays)[:1]
    late = {plan.maker.maker for plan in plans if plan.status == "too late"}
    split = late & {plan.maker.maker for plan in plans if plan.status in ("in time", "no time for a sample")}
    by_way = [plan for plan in plans if plan.maker.maker in split]
    chosen = list({id(plan): plan for plan in [*by_holidays, *by_way, *plans]})[:most]
    return [plan for plan in plans if id(plan) in chosen]


def _told(schedule: Schedule, *, has_arrived: bool) -> tuple[tuple[str, ...], ...]:
    """Return the sentences of the orders that have arrived, or of the others."""
    from scorecard.scheduling.order_words import order_sentences

    chosen = [one for one in schedule.orders if (one.stage == "arrived") == has_arrived]
    return tuple(_sentences(order_sentences(one, schedule.ways_out.get(one.order.maker))) for one in chosen)


def _sentences(said: Iterable[str | None]) -> tuple[str, ...]:
    return tuple(sentence(words) for words in said if words)


def _isolated(schedule: Schedule) -> Schedule:
    """Return the schedule with every name and every closure of the user's fit for the page."""
    return replace(
        schedule,
        plans=tuple(replace(plan, maker=_named(plan.maker), steps=_readable(plan.steps)) for plan in schedule.plans),
        orders=tuple(_order(one) for one in schedule.orders),
        ways_out={maker: _way_out(out) for maker, out in _by_shown_name(schedule.ways_out)},
    )


def _by_shown_name(ways_out: dict[str, WayOut]) -> list[tuple[str, WayOut]]:
    return [(isolate(maker), out) for maker, out in ways_out.items()]


def _way_out(out: WayOut) -> WayOut:
    return replace(out, maker=isolate(out.maker) if out.maker else None)


def _named(maker: MakerTimes) -> MakerTimes:
    return replace(maker, maker=isolate(maker.maker))


def _order(one: Progress) -> Progress:
    return replace(one, maker=_named(one.maker), order=replace(one.order, maker=isolate(one.order.maker)))


def _readable(steps: Sequence[Placed]) -> tuple[Placed, ...]:
    """Return steps whose closures are named in signs that can be seen."""
    return tuple(
        replace(
            placed,
            closures=tuple(
                replace(closure, names=tuple(visible(name) for name in closure.names)) for closure in placed.closures
            ),
        )
        for placed in steps
    )


def _row(plan: Plan, as_of: date, need_by: date) -> PlanRow:
    from scorecard.scheduling.wording import ask_words, due_words, left_words

    over = plan.order_by < as_of
    return PlanRow(
        maker=plan.maker.maker,
        way=f"by {plan.way}",
        sample_by=ask_words(plan),
        order_by=due_words(plan.order_by, plan.order_slack_days),
        left=left_words(plan.days_left),
        status=plan.standing,
        line=() if over else _line(plan, as_of, need_by),
        order_at=None if over else _place(plan.order_by, as_of, need_by),
    )


def _line(plan: Plan, as_of: date, need_by: date) -> tuple[Stretch, ...]:
    """Return the parts of a time line: sample, work at the maker, journey, the rest at the buyer's."""
    leaves = plan.ship_by or plan.door_by
    marks: Sequence[tuple[str, date, date]] = (
        ("sample", plan.begin_by, plan.order_by),
        ("work", plan.order_by, leaves),
        ("journey", leaves, plan.door_by),
        ("rest", plan.door_by, need_by),
    )
    return tuple(
        Stretch(look=look, start=_place(first, as_of, need_by), end=_place(last, as_of, need_by))
        for look, first, last in marks
        if last > max(first, as_of)
    )


def _place(day: date, as_of: date, need_by: date) -> str:
    """Return where a day lies between today and the day by which the pieces are needed."""
    whole = max((need_by - as_of).days, 1)
    return percent(min(max((day - as_of).days / whole, 0.0), 1.0) * 100)


def _chain(plan: Plan, schedule: Schedule) -> Chain:
    from scorecard.scheduling.wording import (
        assumed_sentence,
        chain_words,
        holiday_sentence,
        plan_sentence,
        way_out_sentence,
    )

    out = schedule.ways_out.get(plan.maker.maker)
    beside = [holiday_sentence(plan), way_out_sentence(out) if out else None, assumed_sentence(plan)]
    return Chain(
        said=sentence(plan_sentence(plan)),
        steps=tuple(sentence(words) for words in chain_words(plan)),
        beside=_sentences(beside),
    )
