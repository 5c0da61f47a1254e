"""One order size in words, and the step to the next."""

import re
from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

import pytest
from quoted import TODAY, quote, timing
from sized import ALL_PAID, minimum, option, planned, prices, selling

from scorecard.costing.amounts import Span
from scorecard.costing.inputs import CostSettings
from scorecard.size_words import (
    at_least_words,
    bears,
    break_even_words,
    cash_words,
    left_cells,
    margin_words,
    option_words,
    outcome_words,
    signed,
    step_words,
)

OPEN = Span.between(5.0, float("inf"))
SOLD = {"sold": selling("12.00", (120, 180, 240))}


def at(pieces, *rows, **more):
    return option(planned(*rows, **more), pieces)


def test_a_size_says_what_it_costs_when_the_money_is_back_and_its_margin():
    assert (
        "250 pieces: 1000.00 GBP in all, 4.00 a good piece of the order, 5.56 a piece that is likely to sell; "
        "the money is back once 84 are sold; margin 67 %"
    ) == option_words(at(250, *prices(p250="4.00"), **SOLD))


def test_a_size_with_a_cost_missing_names_it_and_claims_no_margin():
    # 1000.00, duty 4 % and tax 20 % of 1040.00
    words = option_words(at(200, quote(5, pieces=1, covers="goods and freight"), **SOLD))

    assert words.startswith("200 pieces: 1248.00 GBP in all, 6.24 a good piece of the order, and more: ")
    assert words.endswith("missing")


def test_a_size_whose_cost_has_no_end_says_so_once_and_claims_nothing():
    size = at(200, *[quote(OPEN, pieces=1, covers=ALL_PAID)], **SOLD)

    assert option_words(size) == (
        "200 pieces: 1000.00 GBP or more in all, 5.00 or more a good piece of the order: a cost has no upper end, so "
        "nothing can be weighed: ask for one"
    )
    assert ("1000.00 or more", ("–",) * 4) == (at_least_words(size, size.total), left_cells(size))


def test_a_size_with_a_cost_missing_is_at_least_its_amount():
    size = at(200, quote(5, pieces=1, covers="goods and freight"), **SOLD)

    assert "at least 1248.00" == at_least_words(size, size.total)


def test_an_open_minimum_is_to_be_asked_for():
    words = option_words(at(100, *prices(p1="5"), makers=minimum((100, 400))))

    assert words.endswith("it is not known whether the maker takes so few: ask")


@pytest.mark.parametrize(
    ("price", "words"),
    [
        ("12.00", "the money is back once 84 are sold"),
        ("4.50", "the money would be back after 223 sold, more than there are"),
    ],
)
def test_when_the_money_is_back(price, words):
    assert words == break_even_words(at(200, *prices(p1="5.00"), sold=selling(price)))


def test_money_that_never_comes_back_is_said():
    sold = selling("1.00", postage="2.00")

    assert "the money never comes back at this price" == break_even_words(at(200, *prices(p1="5.00"), sold=sold))


def test_a_range_of_costs_gives_a_range_of_margins():
    assert "margin 50 to 58 %" == margin_words(at(200, quote((5, 6), pieces=1, covers=ALL_PAID), **SOLD))


def test_a_margin_below_nothing_has_a_minus_sign():
    assert "margin −25 %" == margin_words(at(200, *prices(p1="15.00"), **SOLD))


def test_each_demand_says_what_is_left_over_and_what_is_left():
    assert [
        "200 at the low demand, 120: left over 80 pieces, with 400.00 in them; +440.00 GBP after everything",
        "200 at the likely demand, 180: left over 20 pieces, with 100.00 in them; +1160.00 GBP after everything",
        "200 at the high demand, 240: none left over; +1400.00 GBP after everything",
    ] == outcome_words(at(200, *prices(p1="5.00"), **SOLD))


def test_one_piece_left_over_is_one_piece():
    one = at(200, *prices(p1="5.00"), sold=selling("12", 199))

    assert "left over 1 piece, with 5.00 in them" in outcome_words(one)[0]


def test_a_step_that_is_worth_taking_says_how_many_must_sell():
    (step,) = planned(*prices(p200="5.00", p250="4.60"), sold=selling("12.00", 240)).makers[0].steps

    assert (
        "250 instead of 200: 150.00 GBP more, paid for once 13 of the 50 further pieces sell; worth taking, "
        "it leaves 330.00 more if 240 are asked for. From 230 pieces on, 250 cost no more in all"
    ) == step_words(step)


def test_a_step_that_is_not_says_what_it_loses():
    (step,) = planned(*prices(p200="5.00", p250="5.00"), sold=selling("12.00", 200)).makers[0].steps

    assert (
        "250 instead of 200: 250.00 GBP more, paid for once 21 of the 50 further pieces sell; not worth taking, "
        "it leaves 250.00 less if 200 are asked for"
    ) == step_words(step)


@pytest.mark.parametrize(
    ("larger", "words"),
    [
        ("4.40", "225 instead of 200: costs 10.00 GBP less in all, for 25 pieces more"),
        ("4.4444444444", "225 instead of 200: costs the same in all, for 25 pieces more"),
    ],
)
def test_more_that_costs_no_more_is_said(larger, words):
    (step,) = planned(*prices(p200="5.00", p225=larger)).makers[0].steps

    assert words == step_words(step)


def test_further_pieces_that_cannot_pay_for_themselves_are_said_to():
    (step,) = planned(*prices(p200="5.00", p201="6.00"), **SOLD).makers[0].steps

    assert "which the 1 further piece cannot bring back" in step_words(step)


def test_parts_of_pieces_that_a_faulty_share_makes_are_told_as_whole_pieces():
    # 3 % of 250 leave 242.5 good ones, 62.5 above the demand; of 201, 194.97: 0.97 more than of 200, 194
    faulty = CostSettings(faulty_percent=Decimal(3))
    plan = planned(*prices(p200="5.00", p201="6.00", p250="6.10"), settings=faulty, **SOLD)
    size, steps = option(plan, 250), plan.makers[0].steps

    assert Decimal("62.5") == size.outcomes["likely"].unsold
    assert "250 at the likely demand, 180: left over about 63 pieces, with" in outcome_words(size)[1]
    assert "which about 1 further piece cannot bring back" in step_words(steps[0])
    assert re.search(
        r"once \d+ of about 48 further pieces sell|which about 48 further pieces cannot", step_words(steps[1])
    )


def test_less_than_half_a_piece_is_no_piece():
    faulty = CostSettings(faulty_percent=Decimal(70))
    step, *_ = planned(*prices(p200="5.00", p201="6.00"), settings=faulty, **SOLD).makers[0].steps

    # 200 leave 60, 201 leave 60.3
    assert "which less than one further piece cannot bring back" in step_words(step)


def test_further_pieces_that_pay_for_themselves_unsold_are_said_to():
    sold = selling("12.00", 200, unsold_worth="4.00")
    (step,) = planned(*prices(p200="5.00", p250="4.60"), sold=sold).makers[0].steps

    assert "150.00 GBP more, which the pieces left over bring back by themselves; worth taking" in step_words(step)


def test_a_step_with_a_cost_missing_cannot_be_weighed():
    rows = quote("5.00", pieces=200, covers="goods"), quote("4.60", row=3, pieces=250, covers="goods")
    (step,) = planned(*rows).makers[0].steps

    assert "250 instead of 200: cannot be weighed while a cost is missing or has no upper end" == step_words(step)


def test_cash_says_what_is_paid_when_and_for_how_long():
    row = quote(5, pieces=1, covers=ALL_PAID, deposit_percent=30, days=(20, 35), sample_price=30, sample_postage=15)
    sold = selling("18.00", 180, fixed="150", selling_weeks="12")
    said = cash_words(at(200, row, sold=sold), TODAY + timedelta(days=70))

    assert [
        "Cash for 200: 45.00 samples before the order; 300.00 deposit with the order; 700.00 balance before the goods "
        "are sent; 150.00 your own costs before the first sale",
        "1195.00 GBP are out before the first sale, all of it for 5 weeks; the first sale is 10 weeks after an order "
        "today; at the likely demand the money is back 4.5 weeks after that",
    ] == said


def test_a_day_after_the_order_is_named_where_it_is_known():
    read = quote(5, pieces=1, covers="goods", days=20)

    assert "balance before the goods are sent (day 20)" in cash_words(at(200, read), None)[0]


@pytest.mark.parametrize(
    ("with_sample", "rests_on", "said"),
    [
        (True, "", "Cash for 200, begun today with a sample: "),
        (False, "", "Cash for 200, ordered today: "),
        (True, "usual days", "Cash for 200, begun today with a sample, by usual days: "),
    ],
)
def test_cash_says_from_when_its_days_are_counted(with_sample, rests_on, said):
    one = at(200, quote(5, pieces=1, covers=ALL_PAID, way="air", days=20))
    timed = replace(one, cost=replace(one.cost, timing=timing(rests_on=rests_on, with_sample=with_sample)))
    payments, weeks = cash_words(timed, TODAY + timedelta(days=70))

    assert (True, True) == (payments.startswith(said), weeks.endswith("the first sale is 10 weeks from today"))


def test_the_wanted_margin_is_borne_at_the_dearest_or_not():
    sold = selling("10.00", wanted_margin_percent="40")
    row = quote((5, 7), pieces=1, covers=ALL_PAID)

    assert (True, False, None, None) == (
        bears(at(200, *prices(p1="6.00"), sold=sold)),
        bears(at(200, row, sold=sold)),
        bears(at(200, *prices(p1="6.00"))),
        bears(at(200, quote(5, pieces=1, covers="goods"), sold=sold)),
    )


def test_an_amount_carries_its_sign():
    assert ["+1.50", "−1.50", "0.00"] == [signed(Decimal(one), "GBP") for one in ("1.5", "-1.5", "0.001")]
