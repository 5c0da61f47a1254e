"""Amounts: ranges, exact products and sums, rounding."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.costing.amounts import (
    MOST,
    OPEN,
    Money,
    Span,
    added,
    minor_unit,
    over,
    percent_of,
    times,
    to_minor,
    to_step,
    unit_figure,
    unit_priced,
)

AMOUNTS = st.decimals(min_value=0, max_value=10**7, places=5)


def test_a_range_needs_its_low_end_below_its_high_end():
    with pytest.raises(ValueError, match="at most"):
        Span.of(5, 3)


@pytest.mark.parametrize("end", ["-1", "NaN", "Infinity"])
@pytest.mark.parametrize("other", [None, "3"])
def test_an_end_is_a_number_of_0_or_more(end, other):
    with pytest.raises(ValueError, match="0 or more"):
        Span.of(end, other)


def test_the_largest_amount_that_is_read_is_a_million_millions():
    assert 10**6 * 10**6 == MOST


def test_an_open_range_reaches_without_end():
    assert Span(Decimal(50), None).at("high") == OPEN


def test_a_sum_with_an_open_range_is_open():
    open_one, known = Span(Decimal(50), None), Span.of(2, 3)

    assert [Span(Decimal(52), None)] * 2 == [open_one + known, known + open_one]


def test_a_sum_of_ranges_adds_the_ends():
    assert Span.of(5, 9) == Span.of(2, 3) + Span.of(3, 6)


def test_only_a_single_number_is_known():
    assert [True, False, False] == [Span.of(1).is_known, Span.of(1, 2).is_known, Span(Decimal(1), None).is_known]


def test_nothing_times_an_open_end_is_nothing():
    assert times(Decimal(0), OPEN) == 0


def test_an_open_amount_stays_open_when_rounded():
    assert [OPEN, OPEN] == [to_minor(OPEN, "EUR"), to_step(OPEN, Decimal(5))]


def test_a_quotient_without_end_has_60_digits():
    assert Decimal("0." + 60 * "3") == over(Decimal(1), Decimal(3))


def test_what_one_of_many_costs_is_said_with_its_currency_or_as_unknown():
    assert ("0.8333 EUR", "no known amount") == (unit_priced(Decimal(5) / 6, "EUR"), unit_figure(OPEN, "EUR"))


def test_a_currency_that_is_not_listed_has_hundredths():
    assert Decimal("0.01") == minor_unit("")


@pytest.mark.parametrize(("currency", "rounded"), [("EUR", "2.35"), ("JPY", "2"), ("KWD", "2.345")])
def test_money_is_rounded_to_the_decimals_of_its_currency(currency, rounded):
    assert Decimal(rounded) == to_minor(Decimal("2.3450"), currency)


def test_money_knows_its_currency():
    assert Money(Span.of(3), "EUR").currency == "EUR"


@given(AMOUNTS, AMOUNTS)
def test_products_sums_and_percentages_are_those_of_fractions(a, b):
    exact = (Fraction(a) * Fraction(b), Fraction(a) + Fraction(b), Fraction(a) * Fraction(b) / 100)

    assert exact == (Fraction(times(a, b)), Fraction(added([a, b])), Fraction(percent_of(a, b)))


@given(AMOUNTS, st.sampled_from(["0.01", "0.5", "1", "100", "1000"]))
def test_a_figure_cut_down_lies_less_than_a_step_below(amount, step):
    cut = to_step(amount, Decimal(step), "down")

    assert 0 <= amount - cut < Decimal(step)
    assert Fraction(cut) / Fraction(step) == int(Fraction(cut) / Fraction(step))
