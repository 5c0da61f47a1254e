"""Which size, ordered again and again, costs least a year."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from quoted import MAKER, inputs, offer, quote, uk
from sized import minimum, planned, prices, selling, wanting, with_settings

from scorecard.costing.inputs import MakerFacts
from scorecard.costing.landed import landed_costs
from scorecard.ordering.plan import yearly_of
from scorecard.ordering.sizes import order_sizes, settled
from scorecard.ordering.years import repeated, steady_order

ALL = "to my door, duty and tax paid"
WOHL = {"yearly_demand": 5000, "holding_percent": "20", "order_cost": "49"}


def steady(*rows, wanted=200, offers=(), makers=None, **sold):
    plan = planned(*rows, sold=selling("18.00", **sold), wanted=wanted, offers=offers, makers=makers)
    return plan.makers[0].steady


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
    assert steady(*prices(p1="5.00"), holding_percent="20") is None


def test_without_what_keeping_costs_none_is_either():
    assert steady(*prices(p1="5.00"), yearly_demand=5000) is None


def test_a_piece_of_less_than_one_is_kept_for_a_part_of_it():
    # √(2 · 5000 · 49 / (20 % of 0.50)) = 2213.6; 2500 + 245000 / 2214 + 2214 / 2 · 0.10 = 2721.36
    found = steady(*prices(p1="0.50"), **WOHL)

    assert (2214, pytest.approx(2721.36, abs=0.01)) == (found.economic, found.cost)


def test_faulty_pieces_are_ordered_besides():
    # 4.50 ÷ 0.9 is 5.00 for a good piece, so that 700 good ones are best; 700 ÷ 0.9 = 777.8
    read = with_settings(settled(inputs(*prices(p1="4.50"), brief=wanting(200))), faulty_percent=Decimal(10))

    assert 778 == yearly_of(read, selling(**WOHL), order_sizes(read)[MAKER]).economic


def test_where_more_cost_less_in_all_keeping_costs_nothing():
    # 500.00 for 100, 450.00 for 300: one more piece costs less than nothing; 200 ÷ 300 orders of 450.00
    plan = planned(*prices(p100="5.00", p300="1.50"))
    by_pieces = {option.pieces: option for option in plan.makers[0].options}
    sold = selling(yearly_demand=200, holding_percent="20")
    found = steady_order(sold, by_pieces.get, [100, 300], (), ())

    assert [1000.0, 300.0] == [pytest.approx(one.cost) for one in found.sizes]


def test_a_size_with_a_cost_missing_is_left_out():
    assert steady(quote("5.00", pieces=1, covers="goods"), **WOHL) is None


def flown(cost, from_pieces=1, to_pieces=5000):
    """Return an offer of freight for one sum."""
    return offer("air", cost, from_pieces=from_pieces, to_pieces=to_pieces, covers="door to door")


GOODS = {"covers": "goods", "term": "EXW", "way": "air"}
AT_HOME = {"makers": {MAKER: MakerFacts(maker=MAKER, country="GB")}, "imports": uk("0", "0")}


def flat(*rows, freight, **sold):
    plan = planned(*rows, sold=selling("18.00", **sold), offers=(flown(freight),), **AT_HOME)
    return plan.makers[0].steady


def test_freight_of_one_sum_is_a_cost_of_every_order():
    # √(2 · 1000 · 100 / (20 % of 5)) = 447.2; 1000 · 5 + 1000 / 447 · 100 + 447 / 2 · 1 = 5447.21
    found = flat(quote("5.00", pieces=100, **GOODS), freight=100, yearly_demand=1000, holding_percent="20")

    assert (447, pytest.approx(5447.21, abs=0.01)) == (found.economic, found.cost)


def test_it_comes_beside_the_cost_of_ordering():
    # √(2 · 1000 · 310 / 1) = 787.4; 5000 + 1000 / 787 · 310 + 787 / 2 = 5787.40
    sold = {"yearly_demand": 1000, "holding_percent": "20", "order_cost": "10"}
    found = flat(quote("5.00", pieces=100, **GOODS), freight=300, **sold)

    assert (787, pytest.approx(5787.40, abs=0.01)) == (found.economic, found.cost)


def test_it_moves_the_order_beyond_a_price_break():
    # √(2 · 1200 · 190 / (20 % of 5.80)) = 627.0; 6960 + 1200 / 627 · 190 + 627 / 2 · 1.16 = 7687.30
    rows = [quote("6.00", pieces=100, **GOODS), quote("5.80", row=3, pieces=500, **GOODS)]
    found = flat(*rows, freight=165, yearly_demand=1200, holding_percent="20", order_cost="25")

    assert (627, pytest.approx(7687.30, abs=0.01)) == (found.economic, found.cost)


def test_a_minimum_is_the_least_order():
    found = steady(*prices(p1="5.00"), makers=minimum(900), **WOHL)

    assert 900 == found.economic


MOST = 2500
PRICES = st.dictionaries(st.integers(2, 900), st.decimals(1, 9, places=2), max_size=3)


@settings(max_examples=12, deadline=None)
@given(
    tiers=PRICES,
    first=st.decimals(1, 9, places=2),
    setup=st.integers(0, 300),
    freight=st.lists(st.integers(0, 400), min_size=2, max_size=2),
    edge=st.integers(50, 800),
    demand=st.integers(50, 1500),
    holding=st.integers(5, 60),
)
def test_no_order_costs_less_a_year(tiers, first, setup, freight, edge, demand, holding):
    priced = sorted((tiers | {1: first}).items())
    rows = [quote(price, row=2 + at, pieces=pieces, setup=setup, setup_per="order", setup_again=True, **GOODS)
            for at, (pieces, price) in enumerate(priced)]  # fmt: skip
    offers = (flown(freight[0], 1, edge - 1), flown(freight[1], edge, 100_000))
    sold = selling("18.00", yearly_demand=demand, holding_percent=str(holding), order_cost="10")
    read = settled(inputs(*rows, brief=wanting(200), offers=offers, **AT_HOME))
    found = yearly_of(read, sold, order_sizes(read)[MAKER])

    def year(pieces):
        each = float([price for start, price in priced if start <= pieces][-1])
        once = 10 + setup + freight[pieces >= edge]
        return demand * each + demand / pieces * once + pieces / 2 * holding / 100 * each

    assert found.cost <= min(map(year, range(1, MOST))) + 1e-6
    assert pytest.approx(year(found.economic)) == found.cost


@pytest.mark.parametrize("unknown", [frozenset(), frozenset({"sample_price", "sample_postage"})])
def test_a_sample_that_nobody_priced_is_no_gap_of_a_later_order(unknown):
    facts = {MAKER: MakerFacts(maker=MAKER, country="CN", sample="paid")}
    first = inputs(quote("5.00", covers=ALL, setup=0, unknown=unknown), makers=facts)

    assert [False, True] == [landed_costs(each)[0].is_complete for each in (first, repeated(first))]
