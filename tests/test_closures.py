"""Holidays of countries, against calendars that were published."""

import subprocess
import sys
from datetime import date, timedelta

import holidays
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from scorecard.closures import calendar_of, calendars_for, plain_name, regions_of
from scorecard.codes import COUNTRIES
from scorecard.scheduling.calendars import Calendar

YEARS = (2025, 2026, 2027, 2028)
CHINA = calendar_of("CN", YEARS)


def long_closures(country, year, least=5):
    """Return (first, last) of closures of so many days in one year, as month-day texts."""
    found = calendar_of(country, YEARS).closures(date(year, 1, 2), date(year, 12, 30))
    return [(f"{one.first:%m-%d}", f"{one.last:%m-%d}") for one in found if one.days >= least]


def test_china_2026_is_closed_as_its_official_calendar_says():
    """Spring Festival 15 to 23 February, Labour Day 1 to 5 May, National Day 1 to 7 October.

    Notice of the General Office of the State Council on holidays in 2026, as tabulated at sxwanpai.com, seen in
    November 2026.
    """
    assert [("02-15", "02-23"), ("05-01", "05-05"), ("10-01", "10-07")] == long_closures("CN", 2026)


@pytest.mark.parametrize("day", ["2026-02-14", "2026-02-28", "2026-05-09", "2026-09-20", "2026-10-10"])
def test_china_2026_works_on_its_official_make_up_days(day):
    """The same notice: each of these falls on a weekend and is a working day."""
    on = date.fromisoformat(day)

    assert (True, True) == (on.weekday() >= 5, CHINA.is_working(on))


def test_fifteen_working_days_from_26_january_2026_end_on_saturday_14_february():
    """By the notice: 27 to 30 January, 2 to 6 and 9 to 13 February are 14, and Saturday the 14th is a make-up day.

    With weekends alone it would be Monday 16 February, in the middle of the holiday.
    """
    assert [date(2026, 2, 14), date(2026, 2, 16)] == [
        calendar.after(date(2026, 1, 26), 15) for calendar in (CHINA, Calendar())
    ]


def test_february_2026_has_sixteen_working_days_in_china():
    """By the notice: 20 weekdays less 6 from 16 to 23 February, and 2 make-up Saturdays."""
    assert 16 == sum(CHINA.is_working(date(2026, 2, day)) for day in range(1, 29))


@pytest.mark.parametrize(
    ("country", "year", "closed"),
    [
        ("VN", 2026, ("02-14", "02-22")),
        ("VN", 2027, ("02-04", "02-10")),
        ("TW", 2026, ("02-14", "02-22")),
        ("KR", 2026, ("02-14", "02-18")),
        ("JP", 2026, ("05-02", "05-06")),
        ("JP", 2026, ("09-19", "09-23")),
        ("TR", 2026, ("05-27", "05-31")),
        ("TH", 2026, ("04-11", "04-15")),
        ("ID", 2026, ("03-18", "03-24")),
    ],
)
def test_other_long_closures_are_those_looked_up_in_november_2026(country, year, closed):
    """Looked up apart from this tool in the library's release 0.109, weekends joined on by hand.

    That of Indonesia needs the collective leave of the category "government".
    """
    assert closed in long_closures(country, year)


def test_korea_in_september_2026_is_closed_for_four_days():
    """Chuseok, 24 to 27 September 2026: looked up as above."""
    assert ("09-24", "09-27") in long_closures("KR", 2026, least=4)


def test_the_weekend_is_the_countrys_own():
    """Bangladesh rests on Friday and Saturday, Hong Kong on Sunday alone: looked up as above."""
    assert [{4, 5}, {6}] == [set(calendar_of(country, YEARS).weekend) for country in ("BD", "HK")]


@settings(max_examples=60, deadline=None)
@given(
    st.sampled_from(["CN", "VN", "IE", "BD", "JP"]), st.dates(date(2026, 1, 2), date(2027, 9, 1)), st.integers(1, 40)
)
def test_working_days_count_as_the_library_itself_counts_them(country, day, count):
    """A second computation, by the library's own counting."""
    library = holidays.country_holidays(country, years=YEARS)

    assert library.get_nth_working_day(day, count) == calendar_of(country, YEARS).after(day, count)


def doubts(country, year=None, region=None):
    return [one.kind for one in calendar_of(country, YEARS, region).doubts if one.year in (year, None)]


def test_a_year_without_its_official_calendar_may_be_thin():
    assert [[], ["may be thin"]] == [doubts("CN", year) for year in (2026, 2027)]


def test_days_that_hang_on_the_moon_are_estimated_far_ahead():
    assert "estimated" in doubts("BD", 2028)


def test_a_year_of_which_nothing_is_known_says_so():
    (doubt, *_) = calendar_of("CN", (2150,)).doubts

    assert ("no data", 2150) == (doubt.kind, doubt.year)


def test_holidays_of_parts_of_a_country_are_pointed_out_until_the_part_is_named():
    assert [["parts of the country"], []] == [doubts("GB", region=region) for region in (None, "ENG")]


def test_a_part_of_a_country_adds_its_holidays():
    """Easter Monday is a holiday in England and not in Scotland (gov.uk, bank holidays)."""
    easter_monday = date(2027, 3, 29)

    assert [False, True] == [calendar_of("GB", YEARS, part).is_working(easter_monday) for part in ("ENG", "SCT")]


def test_the_parts_of_a_country_are_listed():
    assert ({"ENG", "NIR", "SCT", "WLS"}, ()) == (set(regions_of("GB")), regions_of("IE"))


@pytest.mark.parametrize("country", COUNTRIES)
def test_every_country_has_a_calendar(country):
    calendar = calendar_of(country, (2026,))

    assert (country, True) == (
        calendar.country,
        date(2026, 11, 25) + timedelta(30) > calendar.after(date(2026, 11, 25), 1),
    )


def test_calendars_span_the_years_round_today_and_the_need_by_date():
    (calendar,) = calendars_for(["IE", "IE"], date(2026, 11, 25), date(2029, 5, 1), {}).values()

    assert {2025, 2026, 2027, 2028, 2029, 2030, 2031} == {day.year for day in calendar.holidays}


@pytest.mark.parametrize("day", [date.min, date.max])
def test_the_ends_of_all_calendars_do_no_harm(day):
    assert calendars_for(["CN"], day, day, {})


def test_names_lose_what_the_library_adds():
    assert ["day off in exchange", "National Day"] == [
        plain_name(name) for name in ("Day off (substituted from 10/10/2026)", "National Day (observed)")
    ]


def test_holidays_are_loaded_for_no_other_purpose():
    code = "import sys; import scorecard.cli.app, scorecard.cli.scoring; print('holidays' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)

    assert "False" == done.stdout.strip()
