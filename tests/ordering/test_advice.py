"""How many a newsvendor would order of one maker."""

import pytest
from quoted import quote
from scipy import stats
from sized import planned, prices, selling

from scorecard.ordering.demands import OUTER


def advice(*rows, sold):
    return planned(*rows, sold=sold).makers[0].newsvendor


def test_the_published_newsvendors_order_through_the_whole_reckoning():
    # price 600, cost 120, salvage 60, mean 200, deviation 60: 273.2, so 274 whole pieces [stored; computed]
    found = advice(*prices(p1="120.00"), sold=selling("600", (123, 200, 277), unsold_worth="60"))

    assert (274, pytest.approx(0.8889, abs=5e-5)) == (found.pieces, found.ratio)
    assert (480.0, 60.0) == (found.missed, found.left_over)


def test_with_equal_distances_it_is_scipys_normal_quantile():
    found = advice(*prices(p1="5.00"), sold=selling("18.00", (100, 180, 260)))
    expected = stats.norm.ppf(13 / 18, 180, 80 / OUTER)

    assert -(-expected // 1) == found.pieces


def test_it_is_raised_to_a_break_that_is_cheap_enough():
    # 250 at 4.00 cost as much in all as 200 at 5.00
    found = advice(*prices(p1="5.00", p250="4.00"), sold=selling("12.00", (120, 180, 240)))

    assert (250, 250) == (found.pieces, found.nearest.pieces)


def test_a_break_far_beyond_the_demand_is_not_taken():
    found = advice(*prices(p1="5.00", p900="4.90"), sold=selling("12.00", (120, 180, 240)))

    assert found.pieces < 250


def test_a_piece_left_over_that_loses_nothing_has_no_end():
    assert advice(*prices(p1="5.00"), sold=selling("12.00", (120, 180, 240), unsold_worth="5.00")).pieces is None


def test_without_a_low_and_a_high_demand_there_is_no_newsvendor():
    assert advice(*prices(p1="5.00"), sold=selling("12.00", 180)) is None


def test_without_a_size_whose_costs_are_known_there_is_none():
    assert advice(quote(5, covers="goods"), sold=selling("12.00", (120, 180, 240))) is None


def test_the_nearest_size_is_the_one_that_leaves_most():
    plan = planned(*prices(p100="5.00", p250="4.50", p500="4.40"), sold=selling("12.00", (120, 180, 240)))
    (maker,) = plan.makers

    assert max(maker.options, key=lambda one: one.promise).pieces == maker.newsvendor.nearest.pieces
