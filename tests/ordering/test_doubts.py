"""A selling price below what the pieces cost."""

from decimal import Decimal

import pytest
from quoted import landed, quote
from sized import ALL_PAID, selling

from scorecard.costing.amounts import Span
from scorecard.errors import Place
from scorecard.ordering.doubts import price_doubts


def doubts(sold, *rows):
    return [(one.code, one.found) for one in price_doubts(sold, landed(*rows))]


def test_a_price_below_the_cheapest_cost_is_warned_of_at_its_key():
    (one,) = price_doubts(
        selling("4.00", places={"price": Place(file="criteria.toml", key="selling.price")}),
        landed(quote(5, covers=ALL_PAID), quote(6, maker="Oxlip", row=3, covers=ALL_PAID)),
    )

    assert ("price-below-cost", "selling.price") == (one.code, one.place.key)
    assert "the price, 4.00 GBP, is below what the cheapest good piece costs, 5.00 GBP (Fernhill)" == one.found


def test_what_fees_leave_of_the_price_is_what_counts():
    found = doubts(selling("5.50", postage="1.00"), quote(5, covers=ALL_PAID))

    assert ["the price, 5.50 GBP, of which 4.50 GBP are left, is below"] == [
        words.split(" what")[0] for _, words in found
    ]


def test_a_price_that_covers_the_cheapest_is_not():
    assert [] == doubts(selling("5.00"), quote(5, covers=ALL_PAID), quote(9, maker="Oxlip", row=3, covers=ALL_PAID))


def test_the_known_part_of_a_cost_is_held_against_the_price():
    (one,) = doubts(selling("1.00"), quote(5, covers="goods"))

    assert "price-below-cost" == one[0]
    assert one[1].startswith("of the price 1.00 GBP are left, less than what is known already of the cheapest good")


@pytest.mark.parametrize("price", ["10.00", "6.24"])
def test_a_price_of_the_known_part_of_a_cost_or_above_says_nothing(price):
    # 5.00 with 4 % duty and 20 % tax is 6.24, freight not counted
    assert [] == doubts(selling(price), quote(5, covers="goods"))


def test_the_least_known_part_of_all_is_held_against_the_price():
    # 2.00 with duty and tax is 2.496
    rows = [quote(5, covers="goods"), quote(2, maker="Oxlip", row=3, covers="goods")]
    (one,) = doubts(selling("2.00"), *rows)

    assert "cheapest good piece, 2.50 GBP (Oxlip)" in one[1]
    assert [] == doubts(selling("4.00"), *rows)


@pytest.mark.parametrize("postage", ["1.00", "1.50"])
def test_of_a_price_that_leaves_nothing_the_reader_has_warned(postage):
    assert () == price_doubts(selling("1.00", postage=postage), landed(quote(5, covers=ALL_PAID)))


def test_a_piece_left_over_that_brings_more_than_it_costs_is_doubted():
    (one,) = doubts(selling("9.00", unsold_worth="5.01"), quote(5, covers=ALL_PAID))

    assert ("left-over-above-cost", True) == (one[0], "bring 5.01 GBP, more than the 5.00 GBP that one costs" in one[1])
    assert [] == doubts(selling("9.00", unsold_worth="5.00"), quote(5, covers=ALL_PAID))


def test_a_piece_left_over_is_held_against_the_least_cost_that_is_known_whole():
    sold = selling("20.00", unsold_worth="6.00")
    dear = quote(9, covers=ALL_PAID)
    (one,) = doubts(sold, dear, quote(5, maker="Oxlip", row=3, covers=ALL_PAID))

    assert "more than the 5.00 GBP that one costs (Oxlip)" in one[1]
    assert [] == doubts(sold, dear, quote(1, maker="Oxlip", row=3, covers="goods"))


def test_without_a_price_there_is_nothing_to_doubt():
    assert [] == doubts(None, quote(5, covers=ALL_PAID))


@pytest.mark.parametrize("price", ["5.00", "4.00"])
def test_a_price_that_a_range_reaches_above_may_be_below_the_cost(price):
    (one,) = doubts(selling(price), quote((4, 6), covers=ALL_PAID), quote(7, maker="Oxlip", row=3, covers=ALL_PAID))

    told = f"the price, {price} GBP, may be below what the cheapest good piece costs, 4.00 to 6.00 GBP (Fernhill)"
    assert told == one[1]


def test_a_cost_without_an_end_is_not_left_out():
    (one,) = doubts(selling("2.00"), quote(Span(Decimal(4), None), covers=ALL_PAID))

    assert "is below what the cheapest good piece costs, 4.00 GBP or more (Fernhill)" in one[1]


def test_one_that_surely_costs_less_than_the_price_leaves_no_doubt():
    assert [] == doubts(
        selling("7.00"), quote((4, 8), covers=ALL_PAID), quote("6.50", maker="Oxlip", row=3, covers=ALL_PAID)
    )


def test_who_may_be_cheaper_is_named_beside():
    (one,) = doubts(selling("4.00"), quote(5, covers=ALL_PAID), quote(1, maker="Oxlip", row=3, covers="goods"))

    assert "may be below what the cheapest good piece costs, 5.00 GBP (Fernhill); Oxlip (at least 1." in one[1]
