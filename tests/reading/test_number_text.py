import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.reading.cells import Fault
from scorecard.reading.number_text import WRITE_A_NUMBER, NumberRule, read_amount, readings, tidy
from scorecard.reading.units import ColumnUnit

DAYS = NumberRule(unit=ColumnUnit("days"))
EUROS = NumberRule(unit=ColumnUnit("EUR"))
YEARS = NumberRule(unit=ColumnUnit("years"))
PIECES = NumberRule(unit=ColumnUnit("pieces"), counts="pieces", is_minimum=True)
WORKING_DAYS = NumberRule(unit=ColumnUnit("working days"))


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


@pytest.mark.parametrize(
    "text", ["about 1,000", "roughly a few", "about 1-2-3", "about 5 to 3", "~" + "9" * 400, "~" + "9" * 307 + "k"]
)
def test_a_rough_number_that_cannot_be_told_is_answered_without_one(text):
    assert "Write the least and the greatest that it can be, as in 3-5" == read_amount(text, DAYS).wanted


@pytest.mark.parametrize(
    ("rule", "text", "hint"),
    [
        (DAYS, "~3 weeks", "14-28, or 10-20 if working days are meant"),  # 2 to 4 weeks of 7, or of 5
        (DAYS, "about three weeks after proof", "14-28, or 10-20 if working days are meant"),
        (DAYS, "about 2-3 weeks", "14-21, or 10-15 if working days are meant"),
        (DAYS, "~3 weeks to 4 weeks", "21-28, or 15-20 if working days are meant"),
        (DAYS, "~1 week", "6-8, or 4-6 if working days are meant"),  # 0.9 to 1.1 weeks: 6.3 to 7.7, or 4.5 to 5.5
        (WORKING_DAYS, "approx. 10 working days", "9-11 working days"),
        (WORKING_DAYS, "~3 weeks", "10-20 working days"),
        (EUROS, "approx 2.4k", "2100-2700"),
        (EUROS, "~€2.4k", "2100-2700"),
        (PIECES, "around 1.5k", "1300-1700"),
        (PIECES, "~1.5k pcs", "1300-1700"),
        (PIECES, "~2k", "1800-2200"),
        (PIECES, "~1k-2k", "1000-2000"),
        (PIECES, "~2 dozen", "21-27"),  # 1.8 to 2.2 dozen: 21.6 to 26.4
        (PIECES, "about two hundred", "180-220"),
        (PIECES, "~2k per design", "1800-2200, and design under Minimum is per"),
        (PIECES, "about 50 sets", "45-55, if a number of pieces is meant"),
        (EUROS, "~2.50 per dozen", "2.2-2.8, if a number of EUR is meant"),
        (YEARS, "~6 months", "0.41-0.59"),  # 5 to 7 months: 0.4167 to 0.5833 of a year
        (NumberRule(unit=ColumnUnit("kg")), "~500 g", "0.45-0.55"),
        (NumberRule(unit=ColumnUnit("hours")), "~90 minutes", "1.35-1.65"),
        (EUROS, "about .5", "0.4-0.6"),
    ],
)
def test_the_range_for_a_rough_number_is_in_its_columns_unit(rule, text, hint):
    assert f"Write a range such as {hint}" == read_amount(text, rule).wanted


@pytest.mark.parametrize(
    ("rule", "text", "unit"),
    [
        (DAYS, "~2 months", "days"),
        (DAYS, "approx. 10 working days", "days"),
        (DAYS, "~24 hours", "days"),
        (PIECES, "~2 gross", "pieces"),
        (PIECES, "~3 kg", "pieces"),
        (EUROS, "~1.2m", "EUR"),
        (EUROS, "~50p", "EUR"),
        (YEARS, "~6 weeks", "years"),
    ],
)
def test_no_range_is_offered_where_the_unit_cannot_be_converted_for_sure(rule, text, unit):
    assert f"Write the least and the greatest that it can be in {unit}, as in 3-5" == read_amount(text, rule).wanted


@pytest.mark.parametrize("text", ["approx. 2-3k", "~500-1k", "about 3 boxes of 20", "~2-3 dozen", "~5 days to 2 weeks"])
def test_two_numbers_that_may_be_no_range_are_made_none(text):
    assert "Write the least and the greatest that it can be, as in 3-5" == read_amount(text, NumberRule()).wanted


def test_two_numbers_in_two_units_are_made_no_range():
    assert "as in 3-5" in read_amount("~5 days to 2 weeks", DAYS).wanted


@pytest.mark.parametrize("text", ["~$3", "about $3", "~3 USD"])
def test_a_rough_amount_in_another_currency_is_no_range(text):
    assert "Write it in EUR, as a number alone" == read_amount(text, EUROS).wanted


@pytest.mark.parametrize("text", ["about $3-5", "~3-5 USD"])
def test_a_rough_range_in_another_currency_is_not_offered(text):
    assert "Write the least and the greatest that it can be in EUR, as in 3-5" == read_amount(text, EUROS).wanted


def test_a_rough_rating_with_three_decimals_is_within_its_bounds():
    assert "Write a range such as 1.012-1.238" == read_amount("~1,125", NumberRule(within=(0, 5), decimal=",")).wanted


def test_a_rough_year_of_the_calendar_is_to_be_counted():
    assert "Write how many years it has been, or leave the cell empty" == read_amount("about 2010", YEARS).wanted


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("~4.5/5", "Write a range such as 4-5"),
        ("~98%", "Write a number from 0 to 5, which 98 is not, or leave the cell empty"),
    ],
)
def test_a_rough_rating_is_told_from_what_it_is_out_of(text, hint):
    assert hint == read_amount(text, NumberRule(within=(0, 5))).wanted


@pytest.mark.parametrize(
    ("rule", "text", "wanted"),
    [
        (DAYS, "4 weeks + shipping", "If 28 is meant, write that alone, or 20 if working days are meant"),
        (DAYS, "5 working days max", "Write the number of days"),
        (WORKING_DAYS, "5 working days max", "If 5 working days is meant, write that alone"),
        (DAYS, "3 weeks", "Write the number of days: 21, or 15 if working days are meant"),
        (DAYS, "2 months", "Write the number of days"),
        (WORKING_DAYS, "3 weeks", "Write the number of working days: 15"),
        (PIECES, "10 dozen", "If 120 is meant, write that alone"),
        (PIECES, "two dozen", "If 24 is meant, write that alone"),
        (PIECES, "2k pcs per design", "If 2000 is meant, write that alone, and design under Minimum is per"),
        (PIECES, "2 gross", "Write the number of pieces"),
        (EUROS, "€2.4k", "If 2400 is meant, write that alone"),
        (YEARS, "18 months", "Write the number of years: 1.5"),
        (YEARS, "7 months", "Write the number of years"),
        (YEARS, "6 months old", "If 0.5 is meant, write that alone"),
    ],
)
def test_a_number_that_is_named_is_in_its_columns_unit(rule, text, wanted):
    assert wanted == read_amount(text, rule).wanted


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
