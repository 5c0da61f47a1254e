"""From one order size to the next: worth taking or not."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from quoted import quote
from sized import ALL_PAID, minimum, option, planned, prices, selling

from scorecard.ordering.steps import Step


def steps(*rows, **more):
    return planned(*rows, **more).makers[0].steps


def test_a_break_whose_pieces_are_likely_to_sell_is_worth_taking():
    # 200 at 5.00, 250 at 4.60: 150 more for 50 pieces at 12.00 each
    (step,) = steps(*prices(p200="5.00", p250="4.60"), sold=selling("12.00", (180, 240, 320)))

    assert ("worth taking", Decimal(150), 13) == (step.verdict, step.more_money, step.must_sell)


def test_a_break_whose_pieces_stay_on_the_shelf_is_not():
    (step,) = steps(*prices(p200="5.00", p500="4.50"), sold=selling("12.00", (120, 200, 260)))

    assert ("not worth taking", Decimal(1250)) == (step.verdict, step.more_money)


def test_a_break_may_cost_less_in_all_than_fewer_pieces():
    (step,) = steps(*prices(p200="5.00", p225="4.40"))

    assert ("costs less in all", Decimal(-10), 0) == (step.verdict, step.more_money, step.must_sell)


def test_from_how_many_pieces_on_the_next_break_costs_no_more():
    # 250 at 4.50 are 1125.00, as many as 225 at 5.00
    (step,) = steps(*prices(p200="5.00", p250="4.50"))

    assert 225 == step.less_from


def test_where_no_fewer_pieces_cost_as_much_nothing_is_named():
    assert steps(*prices(p200="5.00", p250="5.00"))[0].less_from is None


def test_pieces_left_over_that_still_bring_something_need_fewer_sales():
    # 150 more, 50 pieces: all of them bring 2.00 = 100; the other 50 need 5 sales at 10.00 more each
    (step,) = steps(*prices(p200="5.00", p250="4.60"), sold=selling("12.00", unsold_worth="2.00"))

    assert 5 == step.must_sell


def test_further_pieces_that_cannot_pay_for_themselves_have_no_number():
    (step,) = steps(*prices(p200="5.00", p201="6.00"), sold=selling("12.00"))

    assert step.must_sell is None


@pytest.mark.parametrize(
    ("larger", "needed"),
    [
        # the 50 further pieces, 12.00 each, just pay 600; a single one pays 1.00; 600.01 is beyond them
        ("6.40", 50),
        ("4.004", 1),
        ("6.40004", None),
    ],
)
def test_how_many_must_sell_is_at_most_the_further_pieces(larger, needed):
    (step,) = steps(*prices(p200="5.00", p250=larger), sold=selling("12.00"))

    assert needed == step.must_sell


def test_pieces_that_bring_their_cost_unsold_need_no_sale():
    # 250 more for 50 pieces, each of which brings 5.00, sold or not
    (step,) = steps(*prices(p200="5.00", p250="5.00"), sold=selling("5.00", unsold_worth="5.00"))

    assert 0 == step.must_sell


@pytest.mark.parametrize(
    ("larger", "likely", "verdict"),
    [
        ("4.00", 200, "costs less in all"),  # 1000 either way
        ("4.004", 300, "worth taking"),  # 1.00 more, 50 more sell
        ("4.48", 210, "not worth taking"),  # 120.00 more, 10 more sell: nothing is left
        ("4.476", 210, "worth taking"),  # 119.00 more: 1.00 is left
        ("4.484", 210, "not worth taking"),  # 121.00 more: 1.00 is lost
    ],
)
def test_what_is_left_decides_once_more_is_paid(larger, likely, verdict):
    (step,) = steps(*prices(p200="5.00", p250=larger), sold=selling("12.00", likely))

    assert verdict == step.verdict


def test_the_gain_at_each_demand():
    # +150 paid; at 180 nothing more sells, at 240 there are 40 more, at 320 all 50
    (step,) = steps(*prices(p200="5.00", p250="4.60"), sold=selling("12.00", (180, 240, 320)))

    assert {"low": Decimal(-150), "likely": Decimal(330), "high": Decimal(450)} == dict(step.gains)


def test_a_size_with_a_cost_missing_is_not_judged():
    (step,) = steps(quote("5.00", pieces=200, covers="goods"), quote("4.60", row=3, pieces=250, covers="goods"))

    assert ("not known", None) == (step.verdict, step.less_from)


@pytest.mark.parametrize(("first", "second"), [("goods", ALL_PAID), (ALL_PAID, "goods")])
def test_a_cost_missing_of_one_size_is_enough(first, second):
    smaller, larger = (
        option(planned(quote("5.00", pieces=pieces, covers=covers)), pieces)
        for pieces, covers in ((200, first), (250, second))
    )

    assert "not known" == Step(smaller=smaller, larger=larger).verdict


def test_a_minimum_leaves_one_size_and_no_step():
    assert () == steps(*prices(p1="2.10"), wanted=120, makers=minimum(300))


@given(st.integers(1, 300), st.decimals("0.5", 9, places=2), st.decimals("0.5", 9, places=2))
def test_less_from_is_the_first_order_that_costs_as_much(more, first, second):
    rows = prices(**{"p200": str(first), f"p{200 + more}": str(second)})
    (step,) = steps(*rows)
    dearer = [pieces for pieces in range(200, 200 + more) if pieces * first >= (200 + more) * second]

    assert (min(dearer) if dearer else None) == step.less_from


def test_the_gain_is_the_difference_on_average():
    (step,) = steps(*prices(p200="5.00", p250="4.60"), sold=selling("12.00", (180, 240, 320)))

    assert pytest.approx(step.larger.promise - step.smaller.promise) == step.gain
