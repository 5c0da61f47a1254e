"""Steps in a row, placed on days: backwards from the day by which the last must be over, or forwards from a start.

A day's handing over happens at its end: a step of one working day that is handed over on a Friday is over on Monday.
Going backwards gives the latest days from which going forwards is still in time; the tests hold the two against each
other.
"""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from typing import Literal

from scorecard.frozen import dataclass
from scorecard.scheduling.calendars import Calendar, Closure, days_between, shifted
from scorecard.scheduling.settings import Days

StepName = Literal[
    "sample made",
    "sample in the post",
    "sample looked at",
    "proof drawn",
    "proof approved",
    "production",
    "production and transit",
    "transit",
    "clearance",
    "kept spare",
    "receiving and packing",
]
End = Literal["late", "early"]
Counted = Literal["days", "the maker's working days", "your working days", "days, long holidays left out"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step.

    Parameters
    ----------
    calendar : whose working days count; None: every day does
    source : where its days come from, in words
    assumed : whether nobody has said so, neither the maker nor the criteria file
    """

    name: StepName
    days: Days
    counted: Counted
    calendar: Calendar | None = None
    source: str = ""
    assumed: bool = False

    def lasting(self, end: End) -> int:
        """Return its days: the most to plan with, or the least; nothing is kept spare when all goes quickly."""
        if end == "late":
            return self.days.late
        return 0 if self.name == "kept spare" else self.days.low


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A step on its days.

    Parameters
    ----------
    first : the first day of work; for plain days the day on which it sets out
    last : the day on which it is over
    closures : closed days that it runs across, or that part its end from the day by which it must be over
    """

    step: Step
    days: int
    first: date
    last: date
    closures: tuple[Closure, ...] = ()


def placed_back(steps: Sequence[Step], by: date, end: End = "late") -> tuple[tuple[Placed, ...], date]:
    """Return steps on the latest days that leave all of them over by a day, and the day on which the first must start.

    Parameters
    ----------
    steps : in the order in which they happen
    by : the last day of the last step, at the latest
    end : whether each takes the most or the least of its days

    Returns
    -------
    the steps of at least one day, in order, and the latest day on whose end the first must be handed over
    """
    placed: list[Placed] = []
    for step in reversed(steps):
        days = step.lasting(end)
        if not days:
            continue
        if step.calendar is None:
            placed.append(Placed(step=step, days=days, first=shifted(by, -days), last=by))
            by = shifted(by, -days)
            continue
        first = step.calendar.first_of(by, days)
        placed.append(_worked(step, days, first, step.calendar.latest(by), by))
        by = shifted(first, -1)
    return tuple(reversed(placed)), by


def placed_on(steps: Sequence[Step], start: date, end: End = "late") -> tuple[tuple[Placed, ...], date]:
    """Return steps on the first days that they can have after a start, and the day when all are over."""
    placed: list[Placed] = []
    for step in steps:
        days = step.lasting(end)
        if not days:
            continue
        if step.calendar is None:
            placed.append(Placed(step=step, days=days, first=start, last=shifted(start, days)))
        else:
            over = step.calendar.after(start, days)
            placed.append(_worked(step, days, step.calendar.after(start, 1), over, over))
        start = placed[-1].last
    return tuple(placed), start


def still_to_come(steps: Sequence[Step], begun: date, today: date) -> tuple[Step, ...]:
    """Return steps that were begun on a day with the days that are left of them today: fewer, or none."""
    early = late = begun
    left: list[Step] = []
    for step in steps:
        (least, early), (most, late) = _left(step, early, today, "early"), _left(step, late, today, "late")
        left.append(replace(step, days=Days(least, None if step.days.high is None else most)))
    return tuple(left)


def _left(step: Step, start: date, today: date, end: End) -> tuple[int, date]:
    """Return the days of a step that are left today, and the day on which it is over."""
    over = placed_on((step,), start, end)[1]
    if over == date.max:
        return step.lasting(end), over
    left = days_between(shifted(max(start, today), 1), over)
    return sum(step.calendar is None or step.calendar.is_working(day) for day in left), over


def _worked(step: Step, days: int, first: date, last: date, by: date) -> Placed:
    """Return a step of working days with the closed days that it runs across, or that bring its end forward."""
    closures = step.calendar.closures(first, by) if step.calendar else []
    return Placed(step=step, days=days, first=first, last=last, closures=tuple(closures))
