"""Working days of a country."""

from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.scheduling.calendars import BESIDE, Calendar, Doubt, doubts_touching, shifted

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


@pytest.mark.parametrize("days", [-(10**7), 10**7])
def test_no_shift_leaves_the_calendar(days):
    assert shifted(date(2026, 1, 1), days) in (date.min, date.max)


def test_years_that_were_not_looked_up_are_told():
    calendar = Calendar(country="CN", years=frozenset({2026, 2027}))

    assert [("no data", 2025)] == [
        (one.kind, one.year) for one in doubts_touching(calendar, date(2025, 12, 1), date(2027, 5, 1))
    ]


def test_doubts_are_told_of_the_years_that_are_touched():
    doubts = tuple(Doubt(kind="estimated", country="BD", text=str(year), year=year) for year in (2026, 2027, 2028))
    always = Doubt(kind="no data", country="BD", text="always")
    calendar = Calendar(doubts=(*doubts, always))

    assert [doubts[1], always] == doubts_touching(calendar, date(2027, 1, 1), date(2027, 5, 1))


def test_without_holidays_or_stops_makers_keep_the_calendar_as_it_is():
    empty = Calendar(country="CN")

    assert (True, True) == (empty.with_stops(6, 5, 7) is empty, CHINA.with_stops(6, 0, 0) is CHINA)


def test_days_in_doubt_matter_where_they_fall_alone():
    guessed = Doubt(kind="estimated", country="IN", year=2027, text="…", days=(date(2027, 3, 10),))
    calendar = Calendar(country="IN", years=frozenset({2026, 2027}), doubts=(guessed,))

    assert ([], [guessed]) == (
        doubts_touching(calendar, date(2027, 1, 1), date(2027, 3, 9)),
        doubts_touching(calendar, date(2026, 12, 1), date(2027, 3, 10)),
    )
