from datetime import date, datetime, time
from math import isnan, nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.reading.cells import CellError, Fault, NoResult
from scorecard.reading.date_values import day_text, read_day

DAY = date(2026, 11, 25)


@pytest.mark.parametrize(
    "value",
    [DAY, datetime(2026, 11, 25), datetime(2026, 11, 25, 14), "2026-11-25", " 2026-11-25 ", "2026-11-25 00:00:00"],
)
def test_a_date_cell_and_iso_text_are_days(value):
    assert DAY.toordinal() == read_day(value)


@pytest.mark.parametrize("value", [None, "", "-", "?", "n/a"])
def test_no_day_is_unknown(value):
    assert isnan(read_day(value))


@pytest.mark.parametrize(
    ("value", "code"),
    [
        ("03/04/2026", "ambiguous-date"),
        ("25.11.2026", "date-in-another-form"),
        ("2026/11/25", "date-in-another-form"),
        ("2026-13-01", "not-a-date"),
        ("25 Nov", "not-a-date"),
        ("40/40/2026", "not-a-date"),
        (46_351, "number-for-date"),
        (0.5, "number-for-date"),
        (1e300, "number-for-date"),
        (True, "not-a-date"),
        (time(8), "not-a-date"),
        (CellError("#REF!"), "spreadsheet-error"),
        (NoResult(), "formula-without-result"),
    ],
)
def test_another_form_is_asked_about(value, code):
    assert code == read_day(value).code


def test_a_day_that_can_be_read_in_two_ways_says_both():
    fault = read_day("03/04/2026")

    assert "'03/04/2026' can be 3 April 2026 or 4 March 2026" == fault.found
    assert "Write 2026-04-03 or 2026-03-04" == fault.wanted


def test_a_day_in_another_form_with_one_reading_offers_just_that():
    fault = read_day("16/11/2026")

    assert "'16/11/2026' is a day in another form" == fault.found
    assert "If 16 November 2026 is meant, write 2026-11-16" == fault.wanted


def test_a_bare_number_offers_the_day_that_a_spreadsheet_counts_so():
    # day 46351 of a spreadsheet's count: 46351 - 25569 = 20782 days after 1970-01-01
    assert "2026-11-25" in read_day(46_351).wanted


def test_a_day_reads_back_as_its_text():
    assert ("2026-11-25", "") == (day_text(DAY.toordinal()), day_text(nan))


@given(st.one_of(st.text(max_size=20), st.floats(), st.integers(), st.booleans(), st.datetimes(), st.none()))
def test_no_cell_makes_the_reader_stumble(value):
    assert isinstance(read_day(value), float | Fault)


@given(st.dates())
def test_a_day_as_iso_text_reads_back_as_itself(day):
    assert day.toordinal() == read_day(day.isoformat())


@pytest.mark.parametrize(
    "typed",
    ["30 Nov 2026", "30 November 2026", "30th of November 2026", "Nov 30, 2026", "november 30th 2026", "30-Nov-2026",
     "30. Nov. 2026", "Monday, 30 Nov 2026", "Mon 30 Nov 2026"],
)  # fmt: skip
def test_a_day_with_its_month_in_words_is_offered_in_the_right_form(typed):
    fault = read_day(typed)

    assert "date-in-another-form" == fault.code
    assert "If 30 November 2026 is meant, write 2026-11-30" == fault.wanted


@pytest.mark.parametrize(
    "typed", ["Nov 2026", "30 Nov", "31 Nov 2026", "30 Ju 2026", "30 Nov 30 2026", "5 pieces 2026"]
)
def test_no_day_is_offered_where_there_is_not_just_one(typed):
    assert "Write the day as YYYY-MM-DD, such as 2026-11-25, or leave the cell empty" == read_day(typed).wanted
