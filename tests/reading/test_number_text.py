import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.reading.cells import Fault
from scorecard.reading.number_text import WRITE_A_NUMBER, NumberRule, read_amount, readings, tidy
from scorecard.reading.units import ColumnUnit

DAYS = NumberRule(unit=ColumnUnit("days"))
EUROS = NumberRule(unit=ColumnUnit("EUR"))


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("12", 12),
        ("+12", 12),
        ("-12", -12),
        ("−12", -12),
        ("12.5", 12.5),
        ("12,5", 12.5),
        ("1,2345", 1.2345),
        (".5", 0.5),
        (",125", 0.125),
        ("0.125", 0.125),
        ("0,125", 0.125),
        ("-0,125", -0.125),
        ("1 000", 1000),
        ("1'000", 1000),
        ("1’000", 1000),
        ("1,000,000", 1_000_000),
        ("1.000.000", 1_000_000),
        ("1 000 000,25", 1_000_000.25),
        ("1,000.5", 1000.5),
        ("1.000,5", 1000.5),
        ("1,000.500", 1000.5),
        ("1234.567", 1234.567),
        ("3 days", 3),
        ("3days", 3),
        ("3 d", 3),
        ("1 Day.", 1),
    ],
)
def test_a_number_in_an_accepted_style_reads_as_itself(text, number):
    assert number == read_amount(text, DAYS)


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("€12.50", 12.5),
        ("12,50 €", 12.5),
        ("EUR 12.50", 12.5),
        ("12.50 EUR", 12.5),
        ("-€5", -5),
        ("€-5", -5),
        ("€1 000,50", 1000.5),
    ],
)
def test_a_number_with_its_columns_currency_reads_as_itself(text, number):
    assert number == read_amount(text, EUROS)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("1,000", "ambiguous-number"),
        ("1.000", "ambiguous-number"),
        ("-12.345", "ambiguous-number"),
        ("1.000 days", "ambiguous-number"),
        ("12.", "not-a-number"),
        ("1,23,456", "not-a-number"),
        ("1 00", "not-a-number"),
        ("1e3", "not-a-number"),
        ("(5.00)", "not-a-number"),
        ("1OO", "not-a-number"),
        ("½", "not-a-number"),
        ("10²", "not-a-number"),
        ("Ⅻ", "not-a-number"),
        ("free", "not-a-number"),
        ("--5", "not-a-number"),
        ("5-", "not-a-number"),
        ("-€-5", "not-a-number"),
        ("0x10", "not-a-number"),
        ("1_000", "not-a-number"),
        ("nan", "not-a-number"),
        ("inf", "not-a-number"),
        ("~100", "rough-number"),
        ("ca. 100", "rough-number"),
        ("about 100", "rough-number"),
        ("24h", "other-unit"),
        ("3 weeks", "other-unit"),
        ("3 working days", "other-unit"),
        ("€3", "money-for-number"),
        ("3 GBP", "money-for-number"),
        ("03/04/2026", "date-for-number"),
        ("2026-11-25", "date-for-number"),
        ("5 Sept. 2026", "date-for-number"),
        ("3, maybe 5", "not-a-number"),
        ("1.2.3", "date-for-number"),
        ("5-Mar", "date-for-number"),
        ("3 May 2026", "date-for-number"),
    ],
)
def test_what_is_no_single_number_is_never_guessed(text, code):
    assert code == read_amount(text, DAYS).code


@pytest.mark.parametrize(
    ("text", "decimal", "number"),
    [
        ("1,000", ".", 1000),
        ("1,000", ",", 1),
        ("1.250", ".", 1.25),
        ("1.250", ",", 1250),
        ("12,5", ".", 12.5),
        ("1.25", ",", 1.25),
    ],
)
def test_the_decimal_mark_settles_what_can_be_read_in_two_ways(text, decimal, number):
    assert number == read_amount(text, NumberRule(decimal=decimal))


def test_an_ambiguous_number_offers_the_line_to_add():
    wanted = read_amount("1,000", DAYS).wanted

    assert 'decimal = "."' in wanted
    assert 'decimal = ","' in wanted
    assert "[brief]" in wanted


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("  3\u00a0 days\n", "3 days"),
        ("1\u202f000\u2009000", "1 000 000"),
        ("１２．５", "12.5"),
        ("٣٤", "34"),
        ("१२", "12"),
        ("10²", "10²"),
        ("½", "½"),
        ("5\u200b", "5"),
        ("２５％", "25%"),
    ],
)
def test_spaces_and_decimal_digits_of_every_kind_are_made_plain(text, plain):
    assert plain == tidy(text)


def _grouped(whole, mark):
    return f"{whole:,}".replace(",", mark)


@given(
    st.integers(1000, 10**9),
    st.integers(0, 99),
    st.sampled_from([(" ", "."), (" ", ","), ("'", "."), ("’", ","), (",", "."), (".", ",")]),
)
def test_a_number_with_thousands_and_cents_reads_back_as_itself(whole, cents, marks):
    thousands, decimal = marks

    assert {float(f"{whole}.{cents:02}")} == readings(f"{_grouped(whole, thousands)}{decimal}{cents:02}")


@given(st.floats(-1e9, 1e9), st.sampled_from([".", ","]))
def test_a_number_with_its_files_decimal_mark_reads_back_as_itself(number, mark):
    text = f"{number:.6f}".replace(".", mark)

    assert float(f"{number:.6f}") == read_amount(text, NumberRule(decimal=mark))


@given(st.text(max_size=30))
def test_no_text_makes_the_reader_stumble(text):
    assert isinstance(read_amount(tidy(text), EUROS), float | Fault)


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("~10", "9-11"),
        ("about ten", "9-11"),
        ("ca. 100", "90-110"),
        ("roughly 3 days", "2-4"),
        ("some 1 500", "1350-1650"),
        ("about 2.5", "2.2-2.8"),
        ("about 3-5", "3-5"),
        ("around a hundred", "90-110"),
    ],
)
def test_a_rough_number_is_answered_with_a_range_that_fits_it(text, hint):
    assert f"Write a range such as {hint}" == read_amount(text, DAYS).wanted


@pytest.mark.parametrize("text", ["about 1,000", "roughly a few", "about 1-2-3", "about 5 to 3", "~" + "9" * 400])
def test_a_rough_number_that_cannot_be_told_is_answered_without_one(text):
    assert "Write the least and the greatest that it can be, as in 3-5" == read_amount(text, DAYS).wanted


def test_a_range_for_a_rough_rating_stays_within_its_bounds():
    assert "Write a range such as 4.4-5" == read_amount("~4.9", NumberRule(within=(0, 5))).wanted


@pytest.mark.parametrize("text", ["98%", "98 %", "98% positive", "98/100", "$98", "98 (120)"])
def test_no_number_is_advised_that_the_column_would_refuse(text):
    rule = NumberRule(within=(0, 5), counted_under="Ratings counted")

    assert "Write a number from 0 to 5, which 98 is not, or leave the cell empty" == read_amount(text, rule).wanted


@pytest.mark.parametrize(
    ("text", "count"),
    [("4.8 (120)", "120"), ("4.8/5 (1,200 ratings)", "1,200"), ("4.8 stars (120 Reviews)", "120")],
)
def test_the_count_beside_a_rating_is_sent_to_its_own_column(text, count):
    rule = NumberRule(within=(0, 5), counted_under="Ratings counted")

    assert f"If 4.8 is meant, write that alone, and {count} under Ratings counted" == read_amount(text, rule).wanted


@pytest.mark.parametrize("text", ["4.8 (good)", "4.8 (2 of 3)", "4.8"])
def test_what_is_no_count_is_sent_nowhere(text):
    rule = NumberRule(counted_under="Ratings counted")

    assert "under" not in str(read_amount(text, rule))


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("4.6/5", "If 4.6 is meant, write that alone"),
        ("4,5 out of 5", "If 4.5 is meant, write that alone"),
        ("4.9 (120)", "If 4.9 is meant, write that alone"),
        ("4.5 stars", "If 4.5 is meant, write that alone"),
        ("MOQ 500", "If 500 is meant, write that alone"),
        ("300 per design", "If 300 is meant, write that alone"),
        ("five", "If 5 is meant, write that alone"),
        ("12.", "If 12 is meant, write that alone"),
        ("1k", "If 1000 is meant, write that alone"),
        ("0,5 K", "If 500 is meant, write that alone"),
        ("1.250k", WRITE_A_NUMBER),
        ("1km", WRITE_A_NUMBER),
        ("100-", WRITE_A_NUMBER),
        ("4..5", WRITE_A_NUMBER),
        ("100 or 200", WRITE_A_NUMBER),
        ("MOQ 1,000", WRITE_A_NUMBER),
        ("none", WRITE_A_NUMBER),
    ],
)
def test_the_number_that_is_likely_meant_is_named(text, wanted):
    assert wanted == read_amount(text, NumberRule()).wanted


@pytest.mark.parametrize(
    ("text", "unit"),
    [("50 per design", "design"), ("MOQ 50 / colour", "colour"), ("50 pcs per color", "colour"), ("50 a Size", "size")],
)
def test_what_a_minimum_is_per_is_sent_to_its_own_column(text, unit):
    wanted = read_amount(text, NumberRule(unit=ColumnUnit("pieces"), is_minimum=True)).wanted

    assert f"If 50 is meant, write that alone, and {unit} under Minimum is per" == wanted


def test_no_minimum_is_a_minimum_of_1():
    assert "If there is no minimum, write 1" == read_amount("none", NumberRule(is_minimum=True)).wanted


def test_a_count_in_brackets_is_not_told_of_minus_signs():
    assert "Write it without brackets" == read_amount("(120)", NumberRule(counts="ratings")).wanted


def test_money_in_a_column_of_pieces_is_not_called_another_currency():
    fault = read_amount("€150", NumberRule(unit=ColumnUnit("pieces")))

    assert "'€150' is an amount of money, where a number of pieces is due" == fault.found
    assert "Write the number of pieces alone" == fault.wanted


def test_another_currency_is_one_where_the_column_has_a_currency():
    assert "other-currency" == read_amount("$3", EUROS).code
