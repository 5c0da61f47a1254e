"""How a maker's way stands against the need-by date: the one judgement, and the words that all commands and pages show.

Enters: days that the schedule has worked out; costs carry them, so that a way is chosen by the same verdict. Leaves:
words, without full stops.
"""

from datetime import date
from typing import Literal

from scorecard.frozen import dataclass
from scorecard.words import day_words

Status = Literal["in time", "no time for a sample", "only if all goes quickly", "too late"]
RestsOn = Literal["", "usual days", "open days"]
STATUSES: tuple[Status, ...] = ("in time", "no time for a sample", "only if all goes quickly", "too late")

_HINTS: dict[RestsOn, str] = {"": "", "usual days": ", by usual days", "open days": ", if it takes the least quoted"}
_LATE: dict[Status, str] = {
    "in time": "",
    "no time for a sample": "begun today there is no time for a sample if it is to be there by {day}",
    "only if all goes quickly": "ordered today it is there by {day} only if all goes quickly",
    "too late": "ordered today it is too late for {day}",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """When things happen if they are begun today, at the late end of every range.

    Parameters
    ----------
    with_sample : whether a sample is asked for first; else the order goes out today
    sent_on : when the pieces leave the maker; None where its days hold the journey
    door_on : when they are at the door, cleared, nothing kept spare
    ready_on : when they can be sold, days kept spare counted
    """

    with_sample: bool
    ordered_on: date
    sent_on: date | None
    door_on: date
    ready_on: date


@dataclass(frozen=True, slots=True, kw_only=True)
class Timing:
    """What the schedule says of one maker and way.

    Parameters
    ----------
    begin_by : the latest day to ask for the first sample; ``order_by`` where none is to be asked for
    order_by : the latest day to order
    quickly_by : the same if every step takes its least and nothing is kept spare
    rests_on : "" where the maker's days and the journey's were said, with an end
    """

    status: Status
    begin_by: date
    order_by: date
    quickly_by: date
    rests_on: RestsOn
    course: Course

    @property
    def act_by(self) -> date:
        """The day of the next thing that can still be done."""
        return next_day(self.status, self.begin_by, self.order_by)


def next_day(status: Status, begin_by: date, order_by: date) -> date:
    """Return the latest day of the next thing that can still be done: the sample, or else the order."""
    return begin_by if status == "in time" else order_by


def status_on(as_of: date, begin_by: date, order_by: date, quickly_by: date) -> Status:
    """Return how a way stands on a day; the first thing to do is what decides."""
    if as_of <= begin_by:
        return "in time"
    if as_of <= order_by:
        return "no time for a sample"
    return "only if all goes quickly" if as_of <= quickly_by else "too late"


def standing_words(status: Status, rests_on: RestsOn = "") -> str:
    """Return how a way stands, and that it rests on days which nobody has said.

    Examples
    --------
    >>> standing_words("in time"), standing_words("too late", "usual days")
    ('in time', 'too late, by usual days')
    """
    return f"{status}{rests_words(rests_on)}"


def rests_words(rests_on: RestsOn) -> str:
    """Return what days rest on that nobody has said, to follow other words; "" where all is said."""
    return _HINTS[rests_on]


def late_words(status: Status, day: str) -> str:
    """Return what is no longer possible for a day; "" where all of it is.

    Examples
    --------
    >>> late_words("too late", "14 May 2027")
    'ordered today it is too late for 14 May 2027'
    """
    return _LATE[status].format(day=day)


def begin_words(timing: Timing) -> str:
    """Return by when to begin on a way, or that it was due."""
    order = day_words(timing.order_by)
    match timing.status:
        case "in time" if timing.begin_by != timing.order_by:
            return f"ask for a sample by {day_words(timing.begin_by)} and order by {order}"
        case "in time":
            return f"order by {order}"
        case "no time for a sample":
            return f"order by {order}, without a sample"
        case "only if all goes quickly":
            return (
                f"the order was due by {order}; if all goes quickly there is time until {day_words(timing.quickly_by)}"
            )
    return f"the order was due by {order}"
