"""Working days of a country."""

from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.scheduling.calendars import BESIDE, Calendar, Doubt, days_between, doubts_touching, shifted

NEW_YEAR = {date(2026, 2, day): "Spring Festival" for day in range(16, 24)}
CHINA = Calendar(country="CN", holidays=NEW_YEAR, makeup=frozenset({date(2026, 2, 14), date(2026, 2, 28)}))
DAYS = st.dates(date(2025, 1, 1), date(2027, 12, 31))


def test_a_makeup_day_is_a_working_day_and_a_holiday_is_not():
    days = [date(2026, 2, 13), date(2026, 2, 14), date(2026, 2, 15), date(2026, 2, 17), date(2026, 2, 28)]

    assert [True, True, False, False, True] == [CHINA.is_working(day) for day in days]


def test_a_stop_closes_even_a_makeup_day():
    assert not CHINA.closed({date(2026, 2, 14): "stop"}).is_working(date(2026, 2, 14))


@given(DAYS, st.integers(1, 60), st.sets(DAYS, max_size=60))
def test_working_days_count_as_numpy_counts_them(day, count, holidays):
    calendar = Calendar(holidays=dict.fromkeys(holidays, "holiday"))
    start = np.busday_offset(day, 0, roll="backward", holidays=sorted(holidays))  # the day itself does not count
    expected = np.busday_offset(start, count, holidays=sorted(holidays))

    assert expected.astype(date) == calendar.after(day, count)


@given(DAYS, st.integers(1, 60))
def test_the_first_of_so_many_days_leads_back_to_the_last(day, count):
    first = CHINA.first_of(day, count)

    assert CHINA.latest(day) == CHINA.after(first - timedelta(days=1), count)


def test_a_closure_is_the_whole_row_of_free_days():
    (closure,) = CHINA.closures(date(2026, 2, 20), date(2026, 2, 20))

    assert (date(2026, 2, 15), date(2026, 2, 23), 9) == (closure.first, closure.last, closure.days)


def test_weekends_by_themselves_are_no_closure():
    assert [] == CHINA.closures(date(2026, 3, 1), date(2026, 3, 31))


def test_makers_stop_before_and_after_a_long_holiday():
    stopped = CHINA.with_stops(6, before=5, after=7)
    (closure,) = stopped.closures(date(2026, 2, 1), date(2026, 3, 31))

    assert (date(2026, 2, 10), date(2026, 3, 2), ("Spring Festival", BESIDE)) == (
        closure.first,
        closure.last,
        closure.names,
    )


def test_makers_do_not_stop_beside_a_short_holiday():
    assert CHINA.with_stops(10, before=5, after=7) == CHINA


def test_where_only_long_holidays_count_a_weekend_is_a_day_like_any_other():
    long_only = CHINA.with_stops(6, before=5, after=7).long_only(6)

    assert [True, False, False, True] == [
        long_only.is_working(day) for day in (date(2026, 2, 8), date(2026, 2, 14), date(2026, 3, 1), date(2026, 3, 7))
    ]


def test_a_calendar_that_is_closed_for_good_gives_the_end_of_the_calendar():
    never = Calendar(weekend=frozenset(range(7)))

    assert (date.max, date.min) == (never.after(date(2026, 1, 1), 1), never.first_of(date(2026, 1, 1), 1))


@pytest.mark.parametrize(("closed", "is_found"), [(2_999, True), (3_000, False)])
def test_the_next_working_day_is_looked_for_through_3_000_days(closed, is_found):
    days = [shifted(date(2026, 1, 1), at) for at in range(closed)]
    before, past = shifted(days[0], -1), shifted(days[-1], 1)
    calendar = Calendar(weekend=frozenset(), holidays=dict.fromkeys(days, "closed"))

    forwards = calendar.after(before, 1), calendar.after(shifted(before, -1), 2)
    backwards = calendar.latest(days[-1]), calendar.first_of(past, 2)
    assert ((past, before) if is_found else (date.max, date.min)) == (forwards[0], backwards[0])
    assert (forwards[0], backwards[0]) == (forwards[1], backwards[1])


@pytest.mark.parametrize("day", [date.min, date.max])  # a Monday and a Friday
def test_a_row_of_closed_days_ends_with_the_calendar(day):
    (closure,) = Calendar(holidays={day: "the last"}).closures(day, day)

    assert (day, day) == (closure.first, closure.last)


def test_every_row_of_closed_days_is_told_once():
    days = [date(2026, month, day) for month in (3, 4, 6) for day in (10, 11, 12)]  # none of them beside a weekend
    found = Calendar(weekend=frozenset(), holidays=dict.fromkeys(days, "closed")).closures(days[0], days[-1])

    assert [(date(2026, month, 10), date(2026, month, 12)) for month in (3, 4, 6)] == [
        (one.first, one.last) for one in found
    ]


@pytest.mark.parametrize(
    ("long_days", "before", "after", "stops"),
    [
        (9, 1, 2, [date(2026, 2, 14), date(2026, 2, 24), date(2026, 2, 25)]),  # closed for 9 days, 15 to 23 February
        (9, 0, 1, [date(2026, 2, 24)]),
        (9, 1, 0, [date(2026, 2, 14)]),
        (9, 0, 0, []),
        (10, 5, 7, []),
    ],
)
def test_stops_are_the_days_beside_a_holiday_that_is_long_enough(long_days, before, after, stops):
    assert stops == sorted(CHINA.with_stops(long_days, before, after).stops)


def test_makers_stop_beside_every_long_holiday():
    autumn = {date(2026, 10, day): "National Day" for day in range(1, 8)}
    both = Calendar(holidays=NEW_YEAR | autumn).with_stops(7, before=1, after=0)

    assert [date(2026, 2, 13), date(2026, 9, 30)] == sorted(both.stops)  # 14 and 15 February are a weekend


def test_only_long_holidays_and_stops_are_closed_where_only_long_holidays_count():
    """Closed Saturday 14 to Monday 23 February, 10 days; Friday 3 to Sunday 5 April, 3 days; a stop on 6 and 7 May."""
    friday, stop = date(2026, 4, 3), [date(2026, 5, 6), date(2026, 5, 7)]
    whole = Calendar(holidays=NEW_YEAR | {friday: "Good Friday", stop[1]: "a feast"}).closed({stop[0]: "stocktaking"})
    long = dict.fromkeys(days_between(date(2026, 2, 14), date(2026, 2, 23)), "Spring Festival")
    feast = dict.fromkeys(stop, "a feast")

    assert [long | feast, feast, Calendar().holidays] == [
        dict(calendar.long_only(days).holidays) for calendar, days in ((whole, 10), (whole, 11), (Calendar(), 1))
    ]
    assert whole.long_only(10).is_working(friday)


def test_a_calendar_of_weekends_alone_has_its_weekend_left():
    friday = Calendar(weekend=frozenset({4}), makeup=frozenset({date(2026, 2, 13)}), holidays=NEW_YEAR)

    assert Calendar(weekend=frozenset({4})) == friday.closed({date(2026, 3, 2): "stop"}).weekends_alone()


def test_days_between_hold_both_ends():
    assert [date(2026, 2, 27), date(2026, 2, 28), date(2026, 3, 1)] == [
        *days_between(date(2026, 2, 27), date(2026, 3, 1))
    ]


@pytest.mark.parametrize("days", [-(10**7), 10**7])
def test_no_shift_leaves_the_calendar(days):
    assert shifted(date(2026, 1, 1), days) in (date.min, date.max)


@pytest.mark.parametrize(
    ("country", "years", "told"),
    [
        ("CN", {2026, 2027}, [("no data", 2025), ("no data", 2028)]),
        ("CN", {2025, 2026, 2027, 2028}, []),
        ("CN", set(), []),  # not looked up at all, which is told elsewhere
        (None, {2026}, []),
    ],
)
def test_years_that_were_not_looked_up_are_told(country, years, told):
    calendar = Calendar(country=country, years=frozenset(years))

    assert told == [(one.kind, one.year) for one in doubts_touching(calendar, date(2025, 12, 1), date(2028, 1, 1))]


def test_doubts_are_told_of_the_years_that_are_touched():
    doubts = tuple(Doubt(kind="estimated", country="BD", text=str(year), year=year) for year in (2026, 2027, 2028))
    always = Doubt(kind="no data", country="BD", text="always")
    calendar = Calendar(doubts=(*doubts, always))

    assert [doubts[1], always] == doubts_touching(calendar, date(2027, 1, 1), date(2027, 5, 1))


def test_without_holidays_or_stops_makers_keep_the_calendar_as_it_is():
    empty = Calendar(country="CN")

    assert (True, True) == (empty.with_stops(6, 5, 7) is empty, CHINA.with_stops(6, 0, 0) is CHINA)


@pytest.mark.parametrize(
    ("first", "last", "is_told"),
    [
        (date(2027, 1, 1), date(2027, 3, 9), False),
        (date(2026, 12, 1), date(2027, 3, 10), True),
        (date(2027, 3, 11), date(2027, 3, 19), False),
        (date(2027, 3, 20), date(2027, 12, 31), True),
        (date(2027, 3, 21), date(2027, 12, 31), False),
    ],
)
def test_days_in_doubt_matter_where_they_fall_alone(first, last, is_told):
    days = (date(2027, 3, 10), date(2027, 3, 20))
    guessed = Doubt(kind="estimated", country="IN", year=2027, text="…", days=days)
    calendar = Calendar(country="IN", years=frozenset({2026, 2027}), doubts=(guessed,))

    assert ([guessed] if is_told else []) == doubts_touching(calendar, first, last)
