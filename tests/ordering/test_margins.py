"""Break-even and margin, against published figures."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from scorecard.ordering.margins import break_even, contribution, margin_percent

MONEY = st.decimals("0.01", 5000, places=2)


def test_a_published_break_even():
    # a small-business finance blog: fixed 800, price 18, variable 4; 57 loses, 58 earns [stored]
    assert 58 == break_even(Decimal(800), contribution(Decimal(18), Decimal(4)))


def test_the_contribution_of_the_composite_example():
    # price 12.00, landed 2.2775, packing 0.45, fee 0.648; fixed 150 / 8.6245 = 17.39 [computed]
    each = contribution(Decimal("10.902"), Decimal("2.2775"))

    assert (Decimal("8.6245"), 18) == (each, break_even(Decimal(150), each))


def test_a_piece_that_contributes_nothing_breaks_even_nowhere():
    assert (None, None) == (break_even(Decimal(800), Decimal(0)), break_even(Decimal(800), Decimal(-1)))


def test_costs_without_an_end_break_even_nowhere():
    assert break_even(Decimal("Infinity"), Decimal(5)) is None


def test_nothing_paid_once_needs_no_sale():
    assert 0 == break_even(Decimal(0), Decimal(5))


def test_a_credit_that_is_more_than_all_that_is_paid_needs_no_sale():
    assert 0 == break_even(Decimal(-100), Decimal(5))


def test_a_piece_that_costs_more_than_it_brings_has_a_margin_below_zero():
    assert Decimal(-20) == margin_percent(Decimal(8), Decimal(10), Decimal(10))


def test_a_cost_without_an_end_has_no_margin():
    assert margin_percent(Decimal(8), Decimal("Infinity"), Decimal(10)) is None


@given(MONEY, MONEY)
def test_break_even_is_the_fewest_that_covers_what_is_paid_once(once, each):
    pieces = break_even(once, each)

    assert (pieces - 1) * each < once <= pieces * each
