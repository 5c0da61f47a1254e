"""What a schedule is worked out from, as one value: plain days, calendars and orders, whoever has read them."""

from collections.abc import Mapping
from dataclasses import field
from datetime import date
from typing import Literal

from scorecard.costing.quotes import Way
from scorecard.costing.timing import RestsOn
from scorecard.frozen import dataclass
from scorecard.orders import OrderRow
from scorecard.scheduling.calendars import Calendar
from scorecard.scheduling.settings import (
    COMMON,
    NEAR_TRANSIT,
    TRANSIT_SOURCES,
    USUAL_TRANSIT,
    Counts,
    Days,
    Reach,
    ScheduleSettings,
)

CoversUpTo = Literal["ready", "at the door", "cleared"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """Days with where they come from.

    Parameters
    ----------
    source : a cell or a key, or "assumed: …"
    assumed : whether nobody has said so
    """

    days: Days
    source: str
    assumed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class WayTimes:
    """How long one maker takes on one way of shipping.

    Parameters
    ----------
    production : from approval, as far as ``up_to``
    counts : how the days of production are counted
    counts_assumed : whether neither the reply nor ``[schedule]`` has said so
    up_to : whether the days of production end when the pieces are ready, when they are at the door, or there and
        cleared through customs
    transit : None where the days of production go further than "ready"
    way_assumed : whether nobody has said that the maker ships this way
    """

    way: Way
    production: Said
    counts: Counts = "working days"
    counts_assumed: bool = False
    up_to: CoversUpTo = "ready"
    transit: Said | None = None
    way_assumed: bool = False

    @property
    def is_said(self) -> bool:
        """Whether anybody has said how long production or the journey takes."""
        return any(one is not None and not one.assumed for one in (self.production, self.transit))

    @property
    def rests_on(self) -> RestsOn:
        """What its days rest on that nobody has said: usual days, or an open end; "" where all is said."""
        parts = [one for one in (self.production, self.transit) if one is not None]
        if any(one.assumed for one in parts):
            return "usual days"
        return "open days" if any(one.days.high is None for one in parts) else ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SampleUnderWay:
    """A sample that was asked for or has come, and on which nothing is decided yet.

    Parameters
    ----------
    number : which of the maker's samples it is, from 1
    asked_on : None where blank, and then it has come
    received_on : None while it is to come
    """

    number: int
    asked_on: date | None = None
    received_on: date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class MakerTimes:
    """What is known of one maker's days.

    Parameters
    ----------
    row : in the sheet Makers, from 1
    country : ISO 3166-1 alpha-2; None where unknown
    reach : where it is, seen from the buyer
    sampled : whether a sample of it has been approved already
    sample : the one that is under way or to be looked at; None where there is none
    calendar : its working days
    ordered_ways : ways of its orders that no quote or offer of it names
    """

    maker: str
    row: int
    ways: tuple[WayTimes, ...]
    country: str | None = None
    reach: Reach = "border"
    sampled: bool = False
    sample: SampleUnderWay | None = None
    calendar: Calendar = field(default_factory=Calendar)
    ordered_ways: tuple[WayTimes, ...] = ()

    @property
    def nearby(self) -> bool:
        """Whether no customs border lies between it and the buyer."""
        return self.reach != "border"

    @property
    def is_said(self) -> bool:
        """Whether anybody has said how long anything takes on any of its ways."""
        return any(times.is_said for times in self.ways)


def likeness(maker: MakerTimes, times: WayTimes) -> tuple[object, ...]:
    """Return what two makers must share for their days to be the same."""
    return id(maker.calendar), maker.reach, maker.sampled, maker.sample, times


@dataclass(frozen=True, slots=True, kw_only=True)
class ScheduleInputs:
    """Everything that a schedule is worked out from.

    Parameters
    ----------
    as_of : the day that stands for today
    need_by : None where the brief does not say
    destination : ISO 3166-1 alpha-2; None where the brief does not say
    buyer : the buyer's working days
    makers : by name, in sheet order
    orders : in sheet order
    """

    as_of: date
    need_by: date | None
    destination: str | None = None
    settings: ScheduleSettings = field(default_factory=ScheduleSettings)
    buyer: Calendar = field(default_factory=Calendar)
    makers: Mapping[str, MakerTimes] = field(default_factory=dict)
    orders: tuple[OrderRow, ...] = ()


def usual_transit(settings: ScheduleSettings, way: Way, reach: Reach = "border") -> Said:
    """Return the days of a journey that nobody has quoted: as the criteria file gives them, or as is usual."""
    near = reach != "border"
    if near and way in settings.near_transit:
        return Said(days=settings.near_transit[way], source=settings.origin("near_transit"))
    if way in settings.transit:
        return Said(days=settings.transit[way], source=settings.origin("transit"))
    if near:
        return Said(days=NEAR_TRANSIT[reach][way], source=f"assumed: {COMMON}", assumed=True)
    return Said(days=USUAL_TRANSIT[way], source=f"assumed: {TRANSIT_SOURCES[way]}", assumed=True)


def usual_production(settings: ScheduleSettings) -> Said:
    """Return the days of production that a maker has not said: as the criteria file gives them, or as is usual."""
    assumed = "production_days" not in settings.given
    return Said(days=settings.production_days, source=settings.origin("production_days"), assumed=assumed)
