"""How many a newsvendor would order of one maker: at the marginal cost, against a published example and brute force."""

import math
from dataclasses import replace
from decimal import Decimal

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from quoted import MAKER, charge, inputs, offer, quote, uk
from sized import ALL_PAID, minimum, option, planned, prices, selling, wanting, with_settings

from scorecard.costing.freight import Carton
from scorecard.ordering.advice import expected
from scorecard.ordering.demands import OUTER
from scorecard.ordering.plan import plan_of


def advice(*rows, sold, **more):
    return planned(*rows, sold=sold, **more).makers[0].newsvendor


def test_the_published_newsvendors_order_through_the_whole_reckoning():
    # price 600, cost 120, salvage 60, mean 200, deviation 60: 273.2, so 274 whole pieces [stored; computed]
    found = advice(*prices(p1="120.00"), sold=selling("600", (123, 200, 277), unsold_worth="60"))

    assert (274, pytest.approx(0.8889, abs=5e-5)) == (found.pieces, found.tier.ratio)
    assert (480, 60) == (found.tier.missed, found.tier.left_over)


def test_what_is_paid_once_moves_no_order():
    # set-up 500 is paid however many are ordered, and so is a clearance: one more piece costs 120 all the same
    rows = [quote("120.00", pieces=1, covers=ALL_PAID, setup=500)]
    found = advice(*rows, sold=selling("600", (123, 200, 277), unsold_worth="60", fixed="900"))

    assert (274, Decimal(120)) == (found.pieces, found.tier.further)


CLEARED = uk(charges=(charge("Clearance", 18, "clearance"),))


def works(price, pieces=1, row=2):
    return quote(price, row=row, pieces=pieces, term="EXW", way="air")


def flown(pieces, kg, rate):
    carton = Carton(pieces=pieces, length_cm=Decimal(1), width_cm=Decimal(1), height_cm=Decimal(1), kg=Decimal(kg))
    return offer("air", rate_per_kg=rate, carton=carton, covers="door to door", days=5)


def by_air(pieces, kg, rate):
    """Return an order by air in full cartons, cleared for 18.00 once."""
    sold = selling("40", (100, 180, 260))
    return advice(works("5.00"), sold=sold, offers=(flown(pieces, kg, rate),), imports=CLEARED)


def test_a_further_piece_carries_its_freight_and_its_part_of_the_border():
    # UK: 5.00 and a kg at 1.00; 4 % duty on 6.00 makes 6.24, 20 % tax on that 7.488; the clearance is paid once
    assert pytest.approx(7.488, abs=0.001) == float(by_air(1, 1, 1).tier.further)


def test_freight_by_the_carton_is_filled():
    # 24 in a carton of 12 kg at 10.00 the kg: a carton begun costs 120, so that a full one leaves most
    found = by_air(24, 12, 10)

    assert (0, True) == (found.pieces % 24, found.is_moved)


def test_freight_by_the_carton_is_priced_up_to_twice_the_high_demand_further():
    # from 1 piece to 521 another 21 cartons at 120: a further piece is 5.00 and 2520 ÷ 520, with duty and tax
    further = (5 + 2520 / 520) * 1.04 * 1.2

    assert pytest.approx(further, abs=0.001) == float(by_air(24, 12, 10).tier.further)


def test_a_size_that_leaves_most_is_told_with_the_price_that_it_lies_in():
    # a carton of 24 flies for 120.00, all with duty and tax, and the clearance; from 89 pieces on 0.09, else 0.10
    figures = (58, 105, 152)
    found = advice(
        works("0.10"),
        works("0.09", 89, row=3),
        sold=selling("6.96", figures),
        wanted=48,
        offers=(flown(24, 1, 120),),
        imports=CLEARED,
    )

    def total(pieces):
        return (-(-pieces // 24) * 120 + (0.10 if pieces < 89 else 0.09) * pieces) * 1.04 * 1.2 + 18

    assert 48 == 1 + by_brute_force(total, figures, 6.96, 0).argmax() == found.pieces
    assert (1, 88) == (found.tier.first, found.tier.slope.last)


def test_a_lot_that_leaves_most_is_told_with_the_price_that_begins_nearest():
    # 200 pieces by sea for 700 in all; by air 5.00 each, and 4.80 from 900 on: from 201 on it is 5.00
    lot = quote(700, row=5, pieces=200, price_is_for="all", way="sea", covers=ALL_PAID)
    by_piece = [quote(price, row=row, pieces=pieces, way="air", covers=ALL_PAID)
                for row, pieces, price in ((2, 1, "5.00"), (3, 900, "4.80"))]  # fmt: skip
    found = advice(*by_piece, lot, sold=selling("12.00", (120, 180, 240)), wanted=150)

    assert (200, 201, 5) == (found.pieces, found.tier.first, found.tier.further)


@pytest.mark.peers
def test_fewer_than_a_lot_are_ordered_by_another_reply_though_the_lot_alone_is_what_is_wanted():
    stats = pytest.importorskip("scipy.stats")
    # 1.00 is missed with a sale, and 5.00 lost with a piece left over
    lot = quote(700, row=5, pieces=200, price_is_for="all", way="sea", covers=ALL_PAID)
    by_piece = quote("5.00", pieces=1, way="air", covers=ALL_PAID)
    found = advice(by_piece, lot, sold=selling("6.00", (40, 60, 80)))

    assert -(-stats.norm.ppf(1 / 6, 60, 20 / OUTER) // 1) == found.pieces


@pytest.mark.parametrize(
    ("pieces", "enough", "raised", "moved"),
    [
        (250, 249.0, True, False),
        (250, 249.5, False, False),  # 249.5 take 250 whole pieces
        (250, 250.0, False, False),
        (250, 300.0, False, True),
        (300, 240.0, False, True),
        (274, 273.2, False, False),
        (None, math.inf, False, False),
    ],
)
def test_an_order_is_raised_to_the_least_of_its_price_or_moved_elsewhere(pieces, enough, raised, moved):
    found = advice(*prices(p250="4.00"), sold=selling("12.00", (120, 180, 240)))
    other = replace(found, pieces=pieces, tier=replace(found.tier, enough=enough))

    assert (250, raised, moved) == (other.tier.first, other.is_raised, other.is_moved)


def test_where_a_sale_missed_loses_as_much_as_a_piece_left_over_the_likely_demand_is_enough():
    found = advice(*prices(p1="5.00"), sold=selling("10.00", (100, 180, 260)))

    assert (180, 180, False) == (found.pieces, found.tier.whole, found.is_moved)


def test_a_size_without_every_cost_is_neither_told_nor_reckoned_with():
    # the freight is quoted for up to 200 pieces
    freight = offer("air", 90, from_pieces=1, to_pieces=200, covers="door to door", days=5)
    rows = [works("5.00", 100), works("0.50", 250, row=3)]
    found = advice(*rows, sold=selling("40.00", (190, 300, 400)), offers=(freight,), imports=CLEARED)

    assert (200, 200, 100) == (found.pieces, found.nearest.pieces, found.tier.first)


@pytest.mark.peers
def test_with_equal_distances_it_is_scipys_normal_quantile():
    stats = pytest.importorskip("scipy.stats")
    found = advice(*prices(p1="5.00"), sold=selling("18.00", (100, 180, 260)))
    expected_pieces = stats.norm.ppf(13 / 18, 180, 80 / OUTER)

    assert -(-expected_pieces // 1) == found.pieces


@pytest.mark.peers
def test_faulty_pieces_are_ordered_besides():
    stats = pytest.importorskip("scipy.stats")
    # 18.00 kept, 5.00 ÷ 0.9 for one more good piece
    read = with_settings(inputs(*prices(p1="5.00"), brief=wanting(200)), faulty_percent=Decimal(10))
    found = plan_of(read, selling("18.00", (100, 180, 260)), [MAKER]).makers[0].newsvendor
    good = stats.norm.ppf(1 - 5 / 0.9 / 18, 180, 80 / OUTER)

    assert -(-good / 0.9 // 1) == found.pieces


def test_it_is_raised_to_a_break_that_is_cheap_enough():
    # 250 at 4.00 cost as much in all as 200 at 5.00
    found = advice(*prices(p1="5.00", p250="4.00"), sold=selling("12.00", (120, 180, 240)))

    assert (250, 250, True) == (found.pieces, found.nearest.pieces, found.is_raised)


def test_a_break_far_beyond_the_demand_is_not_taken():
    found = advice(*prices(p1="5.00", p900="4.90"), sold=selling("12.00", (120, 180, 240)))

    assert (True, Decimal("5.00")) == (found.pieces < 250, found.tier.further)


def test_a_minimum_is_the_least_order():
    found = advice(*prices(p1="5.00"), sold=selling("12.00", (120, 180, 240)), makers=minimum(300))

    assert (300, True) == (found.pieces, found.is_raised)


def test_a_piece_left_over_that_loses_nothing_has_no_end():
    assert advice(*prices(p1="5.00"), sold=selling("12.00", (120, 180, 240), unsold_worth="5.00")).pieces is None


def test_a_sale_that_earns_nothing_calls_for_the_least_order():
    found = advice(*prices(p100="13.00"), sold=selling("12.00", (120, 180, 240)))

    assert (100, 0.0) == (found.pieces, found.tier.ratio)


@pytest.mark.parametrize("figures", [180, (120, 180, None), (None, 180, 240), None])
def test_without_a_low_and_a_high_demand_there_is_no_newsvendor(figures):
    assert advice(*prices(p1="5.00"), sold=selling("12.00", figures)) is None


def test_without_a_size_whose_costs_are_known_there_is_none():
    assert advice(quote(5, covers="goods"), sold=selling("12.00", (120, 180, 240))) is None


def test_where_nobody_quotes_one_more_piece_there_is_none():
    lot = quote(900, pieces=200, price_is_for="all", covers=ALL_PAID)

    assert advice(lot, sold=selling("12.00", (120, 180, 240))) is None


def test_the_nearest_size_is_the_one_that_leaves_most():
    plan = planned(*prices(p100="5.00", p250="4.50", p500="4.40"), sold=selling("12.00", (120, 180, 240)))
    (maker,) = plan.makers

    assert max(maker.options, key=lambda one: one.promise).pieces == maker.newsvendor.nearest.pieces


MOST = 1200


def by_brute_force(total, figures, kept, worth):
    """Return what every order from 1 to MOST leaves on average: sums over a fine grid of demands."""
    stats = pytest.importorskip("scipy.stats")
    low, likely, high = figures
    below, above = (likely - low) / stats.norm.ppf(0.9), (high - likely) / stats.norm.ppf(0.9)
    grid = np.linspace(0, MOST, 4 * MOST + 1)
    more = np.where(grid < likely, stats.norm.sf(grid, likely, below), stats.norm.sf(grid, likely, above))
    sold = np.concatenate([[0], np.cumsum((more[1:] + more[:-1]) / 2 * np.diff(grid))])[::4]
    orders = np.arange(MOST + 1)
    left = kept * sold + worth * (orders - sold) - np.array([total(pieces) for pieces in orders])
    return left[1:]


PRICES = st.dictionaries(st.integers(20, 900), st.decimals(2, 9, places=2), min_size=1, max_size=4)
SPREADS = st.tuples(st.integers(40, 150), st.integers(180, 260), st.integers(290, 500))


@settings(max_examples=15, deadline=None)
@given(tiers=PRICES, setup=st.integers(0, 300), figures=SPREADS, worth=st.decimals(0, "1.5", places=2))
def test_no_quantity_leaves_more_than_the_newsvendors(tiers, setup, figures, worth):
    tiers = sorted(tiers.items())
    rows = [quote(price, row=2 + at, pieces=pieces, covers=ALL_PAID, setup=setup)
            for at, (pieces, price) in enumerate(tiers)]  # fmt: skip
    found = advice(*rows, sold=selling("12.00", figures, unsold_worth=str(worth)))

    def total(pieces):
        priced = [price for start, price in tiers if start <= pieces]
        return float("inf") if not priced else float(priced[-1]) * pieces + setup

    left = by_brute_force(total, figures, 12.0, float(worth))

    # whole pieces are rounded up, as a fractile is: within a fiftieth of what one piece turns on
    assert left.max() - 12.0 / 50 <= left[found.pieces - 1] <= left.max() + 1e-6


@pytest.mark.parametrize("fixed", ["0", "150"])
def test_what_an_order_leaves_on_average_is_that_of_the_brute_force(fixed):
    sold = selling("12.00", (120, 180, 260), unsold_worth="1.00", fixed=fixed)
    one = option(planned(*prices(p1="5.00"), sold=sold), 200)
    left = by_brute_force(lambda pieces: 5.0 * pieces, (120, 180, 260), 12.0, 1.0)

    assert pytest.approx(left[199] - float(fixed), rel=1e-4) == expected(one, sold.demand)
