"""Which size, ordered again and again, costs least a year."""

import pytest
from quoted import quote
from sized import planned, prices, selling

ALL = "to my door, duty and tax paid"
WOHL = {"yearly_demand": 5000, "holding_percent": "20", "order_cost": "49"}


def steady(*rows, wanted=200, **sold):
    return planned(*rows, sold=selling("18.00", **sold), wanted=wanted).makers[0].steady


def test_the_published_price_breaks_through_the_whole_reckoning():
    # Wohl's stores: 24,725.00 at 1000 beats 25,700.00 at 700 and 24,822.50 at 2000 [stored; totals computed]
    found = steady(*prices(p1="5.00", p1000="4.80", p2000="4.75"), wanted=700, **WOHL)

    assert (1000, pytest.approx(24725.00), 5.0) == (found.economic, found.cost, found.orders)
    assert [(700, 25700.0), (1000, 24725.0), (2000, 24822.5)] == [
        (one.pieces, pytest.approx(one.cost)) for one in found.sizes if one.pieces != 1
    ]
    assert 1000 == found.best.pieces


def test_a_set_up_that_is_charged_again_belongs_to_every_order():
    once = quote("5.00", pieces=1, covers=ALL, setup=100, setup_per="order", setup_again=False)
    again = quote("5.00", pieces=1, covers=ALL, setup=100, setup_per="order", setup_again=True)
    few, many = (steady(row, **WOHL).economic for row in (once, again))

    # √(2 · 5000 · 49 / 1) = 700, √(2 · 5000 · 149 / 1) = 1220.7
    assert (700, 1221) == (few, many)


def test_a_quantity_that_nobody_quoted_gives_way_to_a_real_size():
    for_all = quote("1000.00", pieces=200, price_is_for="all", covers=ALL)

    # √(2 · 5000 · 49 / 1) = 700 of a price for all of 200
    assert (200, 25.0) == (steady(for_all, **WOHL).economic, steady(for_all, **WOHL).orders)


def test_a_sample_is_not_bought_again():
    with_sample = quote("5.00", pieces=1, covers=ALL, sample_price=40, sample_postage=20, credited_from=100)

    assert steady(*prices(p1="5.00"), **WOHL) == steady(with_sample, **WOHL)


def test_without_a_yearly_demand_no_year_is_reckoned():
    assert steady(*prices(p1="5.00")) is None


def test_a_size_with_a_cost_missing_is_left_out():
    assert steady(quote("5.00", pieces=1, covers="goods"), **WOHL) is None
