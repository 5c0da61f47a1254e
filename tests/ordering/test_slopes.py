"""Quantities over which one more piece costs the same."""

from decimal import Decimal
from math import inf

import pytest
from quoted import MAKER, inputs, quote
from sized import ALL_PAID, minimum, planned, prices, selling, wanting

from scorecard.ordering.plan import plan_of
from scorecard.ordering.slopes import Slope, edges_of, slopes_of


def slopes(*rows, breaks=(), **more):
    plan = planned(*rows, **more)
    options = plan.makers[0].options
    by_pieces = {option.pieces: option for option in options}
    return list(slopes_of(by_pieces.get, edges_of(options, breaks), 0))


def test_the_first_begins_at_the_least_order_though_no_price_does():
    options = planned(*prices(p1="5.00", p300="4.00"), makers=minimum(40)).makers[0].options

    assert [40, 300] == edges_of(options, (1, 300))


def test_the_first_begins_at_the_least_that_an_open_minimum_may_be():
    # 100 an order or a design, of 4 designs: 100, the 200 wanted, or 400
    read = inputs(*prices(p1="5.00"), brief=wanting(200, 4), makers=minimum(100, None))
    options = plan_of(read, selling(), [MAKER]).makers[0].options

    assert [100] == edges_of(options, (1,))


@pytest.mark.parametrize(
    ("edge", "reach", "last"),
    [
        (10, 0, 110),  # a hundred beyond the edge at the least
        (100, 0, 300),  # twice the edge beyond it
        (100, 500, 600),  # as far as may come into question
    ],
)
def test_the_last_is_priced_as_far_beyond_its_edge_as_may_come_into_question(edge, reach, last):
    asked = []

    assert [] == list(slopes_of(asked.append, [edge], reach))
    assert [edge, last] == asked


def test_of_a_single_quantity_there_is_none():
    plan = planned(*prices(p100="5.00", p101="4.50", p300="4.00"))
    by_pieces = {option.pieces: option for option in plan.makers[0].options}

    assert [] == list(slopes_of(by_pieces.get, [100, 101], 0))


def test_what_is_paid_once_is_told_from_what_one_more_piece_costs():
    rows = [quote("5.00", pieces=100, covers=ALL_PAID, setup=60), quote("4.00", row=3, pieces=299, covers=ALL_PAID)]
    plan = planned(*rows, quote("4.00", row=4, pieces=300, covers=ALL_PAID), wanted=298)
    by_pieces = {option.pieces: option for option in plan.makers[0].options}
    (found,) = slopes_of(by_pieces.get, [100, 299], 0)

    assert (100, 298, Decimal(5), Decimal(60)) == (found.first, found.last, found.further, found.once)


def test_one_that_cannot_be_priced_is_left_out():
    assert [] == slopes(*prices(p100="5.00"))


SLOPE = Slope(first=100, last=299, further=Decimal(5), once=Decimal(60), good=Decimal(1))


def test_the_whole_quantities_beside_the_ends_and_full_cartons_come_into_question():
    assert {100, 150, 151, 144, 168, 299} == SLOPE.near(150.5, [24])
    assert {100, 290, 288, 299} == SLOPE.near(290.0, [24])


def test_a_quantity_beyond_it_is_held_within():
    assert {100, 299} == SLOPE.near(1000.0, []) == SLOPE.near(inf, []) == SLOPE.near(3.0, [])


def test_where_nothing_ends_it_the_least_alone_is_left_of_no_end():
    endless = Slope(first=100, last=inf, further=Decimal(5), once=Decimal(60), good=Decimal(1))

    assert {100} == endless.near(inf, [24])
