"""Working days of one country, as sets of days: weekends, holidays, make-up working days, and days that makers stop.

Every loop over days ends: a calendar that is closed for good gives the end of the calendar, not an endless search.
"""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import field, replace
from datetime import date
from typing import Literal

from scorecard.frozen import dataclass

SATURDAY_SUNDAY = frozenset({5, 6})
BESIDE = "days that makers stop before and after"
FARTHEST = 3_000  # days that are looked through for the next working day

Doubted = Literal["no data", "may be thin", "estimated", "parts of the country"]


def shifted(day: date, days: int) -> date:
    """Return the day so many days later, held within what a calendar can say.

    Examples
    --------
    >>> shifted(date(2026, 11, 25), -30), shifted(date(9999, 12, 30), 5)
    (datetime.date(2026, 10, 26), datetime.date(9999, 12, 31))
    """
    return date.fromordinal(min(max(day.toordinal() + days, 1), date.max.toordinal()))


def days_between(first: date, last: date) -> Iterator[date]:
    """Yield every day from the first to the last, both included."""
    for ordinal in range(first.toordinal(), last.toordinal() + 1):
        yield date.fromordinal(ordinal)


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """Why the holidays of one country in one year, or in all, should not be relied on.

    Parameters
    ----------
    days : those in doubt; empty where it is the whole year
    """

    kind: Doubted
    country: str
    text: str
    year: int | None = None
    days: tuple[date, ...] = ()

    def touches(self, first: date, last: date) -> bool:
        """Say whether it bears on a time."""
        if self.days:
            return any(first <= day <= last for day in self.days)
        return self.year is None or first.year <= self.year <= last.year


@dataclass(frozen=True, slots=True, kw_only=True)
class Closure:
    """Days in a row on which nobody works, a holiday or a stop among them.

    Parameters
    ----------
    first, last : of all days in the row, weekends beside the holiday included
    names : of the holidays, the one of the most days first; then why else it is closed
    """

    first: date
    last: date
    names: tuple[str, ...]

    @property
    def days(self) -> int:
        """How many days it lasts."""
        return (self.last - self.first).days + 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Calendar:
    """The working days of one country, or of one maker.

    Parameters
    ----------
    country : ISO 3166-1 alpha-2; None where it is not known, and then weekends alone are free
    weekend : days of the week, Monday being 0
    holidays : days off by what they are called
    makeup : days of the weekend on which people work
    stops : days that are closed besides, by why
    years : those whose holidays were looked up; empty where none were
    doubts : what should be known of these data
    """

    country: str | None = None
    weekend: frozenset[int] = SATURDAY_SUNDAY
    holidays: Mapping[date, str] = field(default_factory=dict)
    makeup: frozenset[date] = frozenset()
    stops: Mapping[date, str] = field(default_factory=dict)
    years: frozenset[int] = frozenset()
    doubts: tuple[Doubt, ...] = ()

    def is_working(self, day: date) -> bool:
        """Say whether people work on a day."""
        is_open = day in self.makeup or not (day in self.holidays or day.weekday() in self.weekend)
        return is_open and day not in self.stops

    def latest(self, day: date) -> date:
        """Return the last working day up to and with a day."""
        return self._nth(day, 1, -1)

    def after(self, day: date, count: int) -> date:
        """Return the day on which so many working days after a day are over; the day itself does not count.

        Parameters
        ----------
        day : on which the work is handed over
        count : of working days, at least 1

        Examples
        --------
        >>> Calendar().after(date(2026, 1, 26), 15)
        datetime.date(2026, 2, 16)
        """
        return self._nth(shifted(day, 1), count, 1)

    def first_of(self, day: date, count: int) -> date:
        """Return the first of so many working days, the last of which is the day or falls before it."""
        return self._nth(day, count, -1)

    def _nth(self, day: date, count: int, way: int) -> date:
        """Return the nth working day from a day on, itself counted, forwards (1) or backwards (-1)."""
        idle = 0
        while idle < FARTHEST:
            idle += 1
            if self.is_working(day):
                count -= 1
                idle = 0
                if count <= 0:
                    return day
            day = shifted(day, way)
        return {-1: date.min, 1: date.max}[way]

    def closed(self, days: Mapping[date, str]) -> "Calendar":
        """Return the same calendar with more days closed, by why; no make-up day opens them."""
        return replace(self, stops={**self.stops, **days}) if days else self

    def closures(self, first: date, last: date) -> list[Closure]:
        """Return the rows of closed days that touch a time, each whole; weekends by themselves are none."""
        found: list[Closure] = []
        for day in sorted({*self.holidays, *self.stops}):
            if (found and day <= found[-1].last) or not first <= day <= last or self.is_working(day):
                continue
            found.append(self._closure(day))
        return found

    def _closure(self, day: date) -> Closure:
        """Return the row of closed days round one of them."""
        first = last = day
        while last != date.max and not self.is_working(shifted(last, 1)):
            last = shifted(last, 1)
        while first != date.min and not self.is_working(shifted(first, -1)):
            first = shifted(first, -1)
        days = list(days_between(first, last))
        names = Counter(self.holidays[one] for one in days if one in self.holidays)
        others = dict.fromkeys(self.stops[one] for one in days if one in self.stops and one not in self.holidays)
        return Closure(first=first, last=last, names=(*(name for name, _ in names.most_common()), *others))

    def with_stops(self, long_days: int, before: int, after: int) -> "Calendar":
        """Return the calendar of makers that stop before and after long holidays.

        Parameters
        ----------
        long_days : so many closed days in a row are a long holiday
        before, after : days on which makers do not work either
        """
        long = (closure for closure in self.closures(date.min, date.max) if closure.days >= long_days)
        return self.closed({day: BESIDE for closure in long for day in _beside(closure, before, after)})

    def weekends_alone(self) -> "Calendar":
        """Return the calendar of the same weekends without a holiday, a stop or a make-up day."""
        return replace(self, holidays={}, makeup=frozenset(), stops={})

    def long_only(self, long_days: int) -> "Calendar":
        """Return the calendar on which every day counts but those of long holidays, and of stops."""
        shut = {
            day: closure.names[0]
            for closure in self.closures(date.min, date.max)
            if closure.days >= long_days or any(day in self.stops for day in days_between(closure.first, closure.last))
            for day in days_between(closure.first, closure.last)
        }
        return replace(self, weekend=frozenset(), holidays=shut, makeup=frozenset(), stops={})


def _beside(closure: Closure, before: int, after: int) -> Iterator[date]:
    """Yield the days before and after a closure."""
    yield from (shifted(closure.first, -days) for days in range(1, before + 1))
    yield from (shifted(closure.last, days) for days in range(1, after + 1))


def doubts_touching(calendar: Calendar, first: date, last: date) -> list[Doubt]:
    """Return what should be known of a calendar's data over a time."""
    known = [one for one in calendar.doubts if one.touches(first, last)]
    return [*known, *_beyond(calendar, first, last)]


def _beyond(calendar: Calendar, first: date, last: date) -> Iterator[Doubt]:
    """Yield that the years before or after those that were looked up have weekends alone."""
    if calendar.country is None or not calendar.years:
        return
    for year in sorted(set(range(first.year, last.year + 1)) - calendar.years):
        text = f"holidays of {year} were not looked up for {calendar.country}: only weekends count as free"
        yield Doubt(kind="no data", country=calendar.country, year=year, text=text)
