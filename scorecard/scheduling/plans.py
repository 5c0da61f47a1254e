"""The plan of one maker and way: by when to ask for a sample and to order, how much is left, and what is too late.

Leaves: latest days at the late end of every range. "Only if all goes quickly" is at the early end, nothing kept spare.
"""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from scorecard.costing.quotes import Way
from scorecard.costing.timing import Status, next_day, standing_words, status_on
from scorecard.frozen import dataclass
from scorecard.scheduling.calendars import Doubt, doubts_touching
from scorecard.scheduling.chain import Chain
from scorecard.scheduling.inputs import MakerTimes, ScheduleInputs, WayTimes
from scorecard.scheduling.settings import Days
from scorecard.scheduling.steps import Placed, placed_back, placed_on


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """The latest days of one maker and way.

    Parameters
    ----------
    begin_by : the latest day to ask for the first sample; ``order_by`` where none is to be asked for
    order_by : the latest day to order and to pay the deposit
    order_by_quickly : the same if every step takes its least and nothing is kept spare
    order_by_without_holidays : the same if the maker and you had weekends alone
    ship_by, door_by : the latest days on which the pieces leave the maker, and are at the door; ``ship_by`` is None
        where the maker's days hold the journey
    slack_days : from today to ``begin_by``; below 0: so many days too late
    order_slack_days : from today to ``order_by``
    ready_if_begun_now : when all would be over if the first step were begun today, at the late end
    days_to_door : from approval to the door, begun today
    steps : on their latest days
    doubts : of the holidays that these days touch
    sample_due : when the sample that was asked for should be here, at the late end; None without one
    """

    maker: MakerTimes
    times: WayTimes
    status: Status
    begin_by: date
    order_by: date
    order_by_quickly: date
    order_by_without_holidays: date
    ship_by: date | None
    door_by: date
    slack_days: int
    order_slack_days: int
    ready_if_begun_now: date
    days_to_door: Days
    steps: tuple[Placed, ...]
    doubts: tuple[Doubt, ...]
    sample_due: date | None = None

    @property
    def way(self) -> Way:
        """The way of shipping."""
        return self.times.way

    @property
    def days_left(self) -> int:
        """The days to the next thing that can still be done: the sample, or else the order; below 0 of none."""
        return self.slack_days if self.status == "in time" else self.order_slack_days

    @property
    def act_by(self) -> date:
        """The day of that thing."""
        return next_day(self.status, self.begin_by, self.order_by)

    @property
    def standing(self) -> str:
        """How it stands in words, and that it rests on days which nobody has said."""
        return standing_words(self.status, self.times.rests_on)

    @property
    def is_said(self) -> bool:
        """Whether anybody has said how long production or the journey takes."""
        return self.times.is_said

    @property
    def is_nearby(self) -> bool:
        """Whether no customs border lies between the maker and the buyer."""
        return self.maker.nearby

    def of_maker(self, maker: MakerTimes) -> "Plan":
        """Return the plan of another maker that is like this one in all its days."""
        return self if maker is self.maker else replace(self, maker=maker)


@dataclass(frozen=True, slots=True, kw_only=True)
class LatestDays:
    """The latest days of one maker and way, as a ``Plan`` has them, and the steps on these days.

    Parameters
    ----------
    start_by : the latest day for what is first, a sample that is under way among it; ``begin_by`` where none is
    """

    start_by: date
    begin_by: date
    order_by: date
    quickly_by: date
    steps: tuple[Placed, ...]


def latest_days(chain: Chain, need_by: date) -> LatestDays:
    """Return the latest days back from the day by which the pieces are needed."""
    ordered, order_by = _ordered_by(chain, need_by)
    sampled, begin = placed_back(chain.samples(), order_by)
    calendar, asks = chain.maker.calendar, chain.asks_for_sample and bool(sampled)
    begin_by = calendar.latest(begin) if asks else order_by
    return LatestDays(
        start_by=begin if sampled and not asks else begin_by,
        begin_by=begin_by,
        order_by=order_by,
        quickly_by=calendar.latest(placed_back(chain.from_order(), need_by, "early")[1]),
        steps=(*sampled, *ordered),
    )


def plan_of(inputs: ScheduleInputs, maker: MakerTimes, times: WayTimes, need_by: date) -> Plan:
    """Return the plan of one maker and way, back from the day by which the pieces are needed."""
    chain, as_of = Chain(inputs, maker, times), inputs.as_of
    latest = latest_days(chain, need_by)
    begin_by, order_by, steps = latest.begin_by, latest.order_by, latest.steps
    return Plan(
        maker=maker,
        times=times,
        status=status_on(as_of, latest.start_by, order_by, latest.quickly_by),
        begin_by=begin_by,
        order_by=order_by,
        order_by_quickly=latest.quickly_by,
        order_by_without_holidays=_without_holidays(chain, need_by),
        ship_by=ship_by(chain, need_by),
        door_by=door_by(chain, need_by),
        slack_days=(begin_by - as_of).days,
        order_slack_days=(order_by - as_of).days,
        ready_if_begun_now=placed_on(chain.whole(), as_of)[1],
        days_to_door=_days_to_door(chain, as_of),
        steps=steps,
        doubts=tuple(_doubts(chain, begin_by, need_by, steps)),
        sample_due=chain.sample_due(),
    )


def _ordered_by(chain: Chain, need_by: date) -> tuple[tuple[Placed, ...], date]:
    """Return the steps from the order on, and the latest day to order: one on which the maker works."""
    placed, by = placed_back(chain.from_order(), need_by)
    return placed, chain.maker.calendar.latest(by)


def _without_holidays(chain: Chain, need_by: date) -> date:
    """Return the latest day to order if the maker and the buyer had weekends alone."""
    inputs = replace(chain.inputs, buyer=chain.inputs.buyer.weekends_alone())
    maker = replace(chain.maker, calendar=chain.maker.calendar.weekends_alone())
    return _ordered_by(Chain(inputs, maker, chain.times), need_by)[1]


def ship_by(chain: Chain, need_by: date) -> date | None:
    """Return the latest day on which the pieces leave the maker, days kept spare counted."""
    if chain.times.transit is None:
        return None
    steps = (*chain.transit(), *chain.clearance(), *chain.spare(), *chain.receiving())
    return chain.maker.calendar.latest(placed_back(steps, need_by)[1])


def door_by(chain: Chain, need_by: date) -> date:
    """Return the latest day on which the pieces are at the door, nothing kept spare."""
    return placed_back(chain.receiving(), need_by)[1]


def _days_to_door(chain: Chain, as_of: date) -> Days:
    """Return the days from approval to the door, were it approved today."""
    steps = chain.to_the_door()
    low, high = (placed_on(steps, as_of, "early")[1], placed_on(steps, as_of, "late")[1])
    open_end = any(step.days.high is None for step in steps)
    return Days((low - as_of).days, None if open_end else (high - as_of).days)


def _doubts(chain: Chain, first: date, last: date, steps: Sequence[Placed]) -> list[Doubt]:
    """Return what should be known of the calendars that the steps count by."""
    theirs = doubts_touching(chain.maker.calendar, first, last)
    yours = [placed for placed in steps if placed.step.counted == "your working days"]
    mine = doubts_touching(chain.inputs.buyer, yours[0].first, last) if yours else []
    return list(dict.fromkeys([*theirs, *mine]))
