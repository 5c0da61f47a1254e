"""Schedules built in code: one maker, one way, days in one line each."""

from datetime import date

from scorecard.orders import OrderRow
from scorecard.scheduling.calendars import Calendar
from scorecard.scheduling.inputs import MakerTimes, Said, ScheduleInputs, WayTimes
from scorecard.scheduling.settings import Days, ScheduleSettings

AS_OF = date(2026, 11, 25)
NEED_BY = date(2027, 5, 14)
NO_SAMPLE = ScheduleSettings(sample_rounds=0)
QUICK = ScheduleSettings(
    sample_rounds=0,
    proof_days=Days(0, 0),
    approval_days=0,
    clearance_days=Days(0, 0),
    receiving_days=0,
    spare={"sea": 0, "air": 0, "road": 0},
)


def span(low, high=None):
    """Return whole days."""
    return Days(low, low if high is None else high)


def way(name="sea", production=(25, 25), transit=(40, 40), **more):
    """Return how long one way takes, all of it said."""
    journey = None if transit is None else Said(days=span(*transit), source="Freight!G2")
    return WayTimes(way=name, production=Said(days=span(*production), source="Quotes!I2"), transit=journey, **more)


def maker(name="Fernhill", *ways, **more):
    """Return one maker, by sea where no way is given."""
    return MakerTimes(maker=name, row=2, ways=ways or (way(),), **more)


def inputs(*makers, settings=None, orders=(), need_by=NEED_BY, as_of=AS_OF, buyer=None):
    """Return the inputs of a schedule; weekends alone are free."""
    named = {one.maker: one for one in (makers or (maker(),))}
    return ScheduleInputs(
        as_of=as_of,
        need_by=need_by,
        destination="IE",
        settings=settings or ScheduleSettings(),
        buyer=buyer or Calendar(),
        makers=named,
        orders=tuple(orders),
    )


def order(**days):
    """Return one order of Fernhill."""
    return OrderRow(**{"maker": "Fernhill", "row": 2} | days)
