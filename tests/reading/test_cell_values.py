from dataclasses import replace
from datetime import date, datetime, time, timedelta
from math import inf, isnan, nan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.reading.cell_values import UNKNOWN, Reading, read_choice, read_number
from scorecard.reading.cells import CellError, Fault, NoResult, PercentNumber
from scorecard.reading.number_text import NumberRule
from scorecard.reading.units import ColumnUnit

ANY = NumberRule()
DAYS = NumberRule(unit=ColumnUnit("days"))
EUROS = NumberRule(unit=ColumnUnit("EUR"))
PERCENT = NumberRule(unit=ColumnUnit("%"))
PIECES = NumberRule(unit=ColumnUnit("pieces"), counts="pieces", is_minimum=True)
RATING = NumberRule(within=(0, 5))
SAMPLES = ("free", "paid, credited to the order", "paid", "none", "3")


def ends(value, rule=DAYS):
    """Return the two ends that a cell is read as."""
    return read_number(value, rule)[:2]


@pytest.mark.parametrize("value", [None, "", "  ", "-", "–", "—", "−", "?", "n/a", "N/A", " Unknown ", "\u00a0"])
def test_words_for_unknown_are_unknown(value):
    assert isnan(read_number(value, DAYS).low)


@pytest.mark.parametrize("value", [3, 3.0, "3", " 3 ", "３"])
def test_a_plain_number_is_itself_and_not_listed(value):
    assert Reading(3, 3) == read_number(value, DAYS)


@pytest.mark.parametrize(
    ("text", "read_as"),
    [
        ("3 days", "3"),
        ("1 000", "1000"),
        ("2,5", "2.5"),
        ("3-5", "3 to 5"),
        ("50+", "50 or more"),
        ("<24", "24 or less"),
    ],
)
def test_a_text_that_had_to_be_read_says_how(text, read_as):
    assert read_as == read_number(text, DAYS).read_as


@pytest.mark.parametrize(
    ("text", "decimal", "read_as"),
    [
        ("1,000", ",", "1"),
        ("1,000", ".", "1000"),
        ("1.000", ".", "1"),
        ("1.000", ",", "1000"),
        ("1.250", ".", "1.25"),
        ("0.125", None, "0.125"),
        ("0,125", ",", "0.125"),
        ("12.5", None, "12.5"),
        ("12,5", ",", "12.5"),
        ("-1,000", ",", "-1"),
    ],
)
def test_a_text_with_a_mark_is_listed_whatever_settled_it(text, decimal, read_as):
    assert read_as == read_number(text, NumberRule(decimal=decimal)).read_as


@pytest.mark.parametrize(("text", "decimal"), [("12.5", "."), ("12,5", ","), ("0.5", "."), ("12", ",")])
def test_a_number_in_the_mark_of_its_file_is_not_listed(text, decimal):
    assert read_number(text, NumberRule(decimal=decimal, all_is_text=True)).read_as is None


@pytest.mark.parametrize(("text", "decimal", "read_as"), [("1,000", ",", "1"), ("1.000", ".", "1")])
def test_a_number_in_the_mark_of_its_file_is_listed_where_it_could_be_thousands(text, decimal, read_as):
    assert read_as == read_number(text, NumberRule(decimal=decimal, all_is_text=True)).read_as


@pytest.mark.parametrize(
    ("value", "decimal", "meant"),
    [
        ("1,000", ",", "1000"),
        ("1.000", ".", "1000"),
        ("1,500 pcs", ",", "1500"),
        (1.5, None, "1500"),
        ("2,5", None, ""),
    ],
)
def test_a_broken_number_of_whole_things_is_warned_of(value, decimal, meant):
    warning = read_number(value, replace(PIECES, decimal=decimal)).warning

    assert "not-whole" == warning.code
    assert meant in warning.wanted


@pytest.mark.parametrize("value", ["1,000-2,000", "1,000+", "up to 1,000"])
def test_a_broken_end_of_a_range_of_whole_things_is_warned_of(value):
    assert "not-whole" == read_number(value, replace(PIECES, decimal=",")).warning.code


@pytest.mark.parametrize(("value", "decimal"), [("1,000", "."), ("1.000", ","), (500, ","), ("500", None), ("?", ",")])
def test_a_whole_number_of_whole_things_is_not_warned_of(value, decimal):
    assert read_number(value, replace(PIECES, decimal=decimal)).warning is None


@pytest.mark.parametrize("rule", [DAYS, EUROS, PERCENT, ANY])
def test_a_broken_number_of_what_can_be_parted_is_not_warned_of(rule):
    assert read_number(1.5, rule).warning is None


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("3-5", 3, 5),
        ("3 – 5", 3, 5),
        ("3—5", 3, 5),
        ("20 to 25", 20, 25),
        ("3-5 days", 3, 5),
        ("3 days - 5 days", 3, 5),
        ("1.5 to 2", 1.5, 2),
        ("1,5-2,5", 1.5, 2.5),
        ("4-4", 4, 4),
        ("-5 to -3", -5, -3),
        ("0 - 1 000", 0, 1000),
    ],
)
def test_a_range_keeps_both_ends(text, low, high):
    assert (low, high) == ends(text)


@pytest.mark.parametrize("text", ["€3-€5", "€3-5", "3 to 5 EUR"])
def test_a_range_may_name_its_currency_at_either_end(text):
    assert (3, 5) == ends(text, EUROS)


@pytest.mark.parametrize(
    "text",
    [
        "50+",
        "50 +",
        "50+ days",
        "50 days+",
        "at least 50",
        "At least 50 days",
        "≥50",
        ">= 50",
        ">50",
        "over 50",
        "more than 50",
    ],
)
def test_a_range_open_above_has_no_upper_end(text):
    assert (50, inf) == ends(text)


@pytest.mark.parametrize(
    "text", ["up to 24", "Up to 24 days", "at most 24", "≤24", "<=24", "< 24", "<24", "less than 24", "under 24"]
)
def test_a_range_open_below_has_no_lower_end(text):
    assert (-inf, 24) == ends(text)


def test_from_a_number_is_that_number_in_a_minimum_order():
    assert (100, 100) == ends("from 100 pcs", PIECES)


@pytest.mark.parametrize(
    ("value", "code"),
    [
        ("from 100", "from-number"),
        ("5-3", "reversed-range"),
        ("1.000-2.000", "ambiguous-number"),
        ("at least 1.000", "ambiguous-number"),
        ("2-3 weeks", "other-unit"),
        ("24h", "other-unit"),
        ("$3", "money-for-number"),
        ("~100", "rough-number"),
        ("ca. 100", "rough-number"),
        ("about 3-5", "rough-number"),
        ("1e3", "not-a-number"),
        ("(5.00)", "not-a-number"),
        ("1OO", "not-a-number"),
        ("½", "not-a-number"),
        ("free", "not-a-number"),
        ("n.a.", "not-a-number"),
        ("3/5", "not-a-number"),
        ("3-5-7", "date-for-number"),
        ("25%", "other-unit"),
        ("x" * 40_000, "not-a-number"),
        ("1-" * 20_000, "not-a-number"),
        ("9" * 400, "not-a-number"),
        (True, "true-or-false"),
        (datetime(2026, 5, 3), "date-for-number"),
        (date(2026, 5, 3), "date-for-number"),
        (time(3, 5), "date-for-number"),
        (timedelta(hours=3), "date-for-number"),
        (CellError("#REF!"), "spreadsheet-error"),
        ("#N/A", "spreadsheet-error"),
        (NoResult(), "formula-without-result"),
        (nan, "not-finite"),
        (inf, "not-finite"),
        (10**400, "not-finite"),
    ],
)
def test_what_is_no_number_is_a_fault_of_its_own_kind(value, code):
    assert code == read_number(value, DAYS).code


@pytest.mark.parametrize(
    "text", ["2-3 weeks", "about 100", "1.000-2.000", "€2-3", "at least 1.000", "up to 3 weeks", "from x"]
)
def test_a_fault_quotes_the_whole_text(text):
    assert f"'{text}'" in read_number(text, DAYS).found


def test_a_date_says_how_to_type_the_range_it_was():
    assert "3 to 5" in read_number(datetime(2026, 5, 3), DAYS).wanted


def test_a_reversed_range_offers_the_right_order():
    assert "Write 3-5" == read_number("5-3", DAYS).wanted


def test_a_number_shown_as_a_percentage_counts_in_per_cent():
    assert Reading(7, 7, "7") == read_number(PercentNumber(0.07), PERCENT)


def test_a_number_shown_as_a_percentage_stays_itself_in_another_column():
    assert Reading(0.07, 0.07) == read_number(PercentNumber(0.07), ANY)


@pytest.mark.parametrize("text", ["25%", "25 %", "25 percent"])
def test_a_percentage_as_text_counts_in_per_cent(text):
    assert (25, 25) == ends(text, PERCENT)


@pytest.mark.parametrize("value", [5.1, -0.1, "6", "4-6", "up to 6", "6+"])
def test_an_answer_beyond_its_bounds_is_a_fault(value):
    assert "outside-within" == read_number(value, RATING).code


@pytest.mark.parametrize("value", [0, 5, "4-5", "at least 4", "up to 4"])
def test_an_answer_within_its_bounds_is_none(value):
    assert not isnan(read_number(value, RATING).low)


@pytest.mark.parametrize("value", [-1, "-1", "-5 to 3"])
def test_a_count_below_zero_is_a_fault(value):
    assert "below-zero" == read_number(value, PIECES).code


@pytest.mark.parametrize(
    ("value", "position"),
    [("free", 0), (" FREE ", 0), ("Paid", 2), ("paid, credited to the ORDER", 1), (3, 4), (3.0, 4), ("3", 4)],
)
def test_a_choice_is_met_whatever_its_case_and_outer_space(value, position):
    assert (position, position) == read_choice(value, SAMPLES)[:2]


METHODS = ("kiln-fired transfer", "screen print", "don't know", "same method, art like mine", "3-5 colours")


@pytest.mark.parametrize(
    ("value", "position"),
    [
        ("Kiln fired transfer", 0),
        ("kiln‑fired  transfer.", 0),
        ("screen-print", 1),
        ("Screenprint", 1),
        ("don’t know", 2),
        ("dont know", 2),
        ("same method - art like mine", 3),
    ],
)
def test_hyphens_spaces_and_stops_tell_no_choices_apart_and_it_is_said(value, position):
    assert (position, position, f"'{METHODS[position]}'") == read_choice(value, METHODS)[:3]


def test_a_choice_as_it_is_spelt_is_not_listed():
    assert read_choice(" Screen Print ", METHODS).read_as is None


@pytest.mark.parametrize(
    ("value", "choices"),
    [
        ("re cover", ("re-cover", "recover")),
        ("35 colours", METHODS),
        ("3 5 colours", METHODS),
        ("screen/print", METHODS),
        ("+", ("-", "a")),
        ("screen printing", METHODS),
    ],
)
def test_a_choice_that_would_be_a_guess_is_asked_about(value, choices):
    assert "not-a-choice" == read_choice(value, choices).code


def test_a_near_choice_is_offered_before_the_others():
    wanted = read_choice("screen printing", ("transfer", "screen print", "sticker")).wanted

    assert "Write 'screen print', if that is meant, or else 'transfer' or 'sticker'" == wanted


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("3 weeks", "Write the number of days: 21, or 15 if working days are meant"),
        ("1 wk", "Write the number of days: 7, or 5 if working days are meant"),
        ("3 months", "Write the number of days"),
    ],
)
def test_weeks_in_a_column_of_days_are_told_as_days(text, wanted):
    assert ("other-unit", wanted) == (read_number(text, DAYS).code, read_number(text, DAYS).wanted)


def test_a_range_of_weeks_is_told_as_one():
    assert "Write the number of days" == read_number("2-3 weeks", DAYS).wanted


@pytest.mark.parametrize("value", [None, "", "?", "-", "n/a"])
def test_a_choice_may_be_unknown(value):
    assert isnan(read_choice(value, SAMPLES).low)


def test_a_choice_may_be_spelt_as_an_unknown_word():
    assert (1, 1) == read_choice("unknown", ("yes", "unknown"))[:2]


def test_true_is_the_choice_of_that_name():
    assert (0, 0) == read_choice(True, ("true", "false"))[:2]


@pytest.mark.parametrize(
    ("value", "code"),
    [
        ("payed", "not-a-choice"),
        (4, "not-a-choice"),
        (datetime(2026, 5, 3), "not-a-choice"),
        (CellError("#N/A"), "spreadsheet-error"),
        (NoResult(), "formula-without-result"),
    ],
)
def test_another_choice_is_a_fault(value, code):
    assert code == read_choice(value, SAMPLES).code


def test_another_choice_lists_those_permitted_the_nearest_first():
    wanted = read_choice("payed", SAMPLES).wanted

    assert wanted.startswith("Write 'paid', ")
    assert all(f"'{choice}'" in wanted for choice in SAMPLES)


@pytest.mark.parametrize(
    ("typed", "nearest"),
    [("free sample", "free"), ("Credited", "paid, credited to the order"), ("non", "none"), ("piad", "paid")],
)
def test_the_nearest_choice_is_named_first(typed, nearest):
    assert read_choice(typed, SAMPLES).wanted.startswith(f"Write '{nearest}', ")


def test_choices_that_are_nothing_like_it_stay_in_the_order_of_the_file():
    assert "Write 'free', 'paid, credited to the order', 'paid', 'none' or '3'" == read_choice("yes!", SAMPLES).wanted


@pytest.mark.parametrize("value", [2015, "2015", "2010-2015", "since 2010"])
def test_a_year_of_the_calendar_is_no_number_of_years(value):
    fault = read_number(value, NumberRule(unit=ColumnUnit("years")))

    assert fault.code in {"year-for-years", "not-a-number"}
    assert "Write how many years it has been, or leave the cell empty" == fault.wanted


@pytest.mark.parametrize("rule", [DAYS, ANY, PIECES])
def test_a_number_like_a_year_is_one_in_other_columns(rule):
    assert (2015, 2015) == ends(2015, rule)


@given(st.one_of(st.text(max_size=40), st.floats(), st.integers(), st.booleans(), st.datetimes(), st.none()))
def test_no_cell_makes_the_reader_stumble(value):
    results = [read_number(value, rule) for rule in (ANY, EUROS, PERCENT, PIECES, RATING)]

    assert all(isinstance(result, Reading | Fault) for result in [*results, read_choice(value, SAMPLES)])


@given(st.floats(0, 1e6), st.floats(0, 1e6), st.sampled_from(["-", " - ", "–", " to ", "—"]))
def test_a_range_reads_back_as_its_ends(one, other, dash):
    low, high = sorted((round(one, 2), round(other, 2)))

    assert (low, high) == ends(f"{low:.2f}{dash}{high:.2f}")


def test_unknown_is_not_known():
    assert [True, True] == [isnan(end) for end in UNKNOWN[:2]]


def test_a_range_that_ends_below_zero_is_turned_round_in_words_that_can_be_read():
    assert "Write -5 to 3" == read_number("3--5", NumberRule()).wanted


def test_choices_with_signs_that_cannot_be_seen_are_offered_on_one_line():
    fault = read_choice("glaze", ("screen\u00a0print", "trans\nfer"))

    assert "Write 'screen print' or 'trans fer'" == fault.wanted
