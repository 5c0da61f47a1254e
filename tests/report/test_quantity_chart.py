"""Geometry of the cost of a good piece against the quantity."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from quoted import quote
from sized import planned, prices

from scorecard.report.quantity_chart import MANY, cost_steps, quantity_chart
from scorecard.report.texts import bare

TWO = (*prices(p100="5.00", p250="4.00"), *prices("Oxlip", 9, p1="4.50"))


def test_a_mark_stands_where_another_maker_becomes_the_cheapest():
    # 100 to 250 pieces: the break at 250 is at the right end
    (mark,) = quantity_chart(planned(*TWO)).marks

    assert ("100%", "from 250 pieces Fernhill", True) == (mark.x, bare(mark.words), mark.leftwards)


def test_the_pieces_wanted_have_a_line_across_the_ground():
    # 200 of 100 to 250
    chart = quantity_chart(planned(*TWO))

    assert ("66.67%", ("100", "175", "250")) == (chart.wanted, chart.ends)


def test_pieces_wanted_that_nobody_sells_have_none():
    plan = planned(*prices(p300="5.00", p400="4.00"), wanted=120)

    assert quantity_chart(plan).wanted is None


def test_real_sizes_are_dots():
    first, _ = quantity_chart(planned(*TWO)).curves

    assert ["0%", "66.67%", "100%"] == [across for across, _ in first.dots]


def test_curves_run_through_the_ground_from_left_to_right():
    for curve in quantity_chart(planned(*TWO)).curves:
        points = [tuple(map(float, point.split(","))) for run in curve.runs for point in run.split()]

        assert [x for x, _ in points] == sorted(x for x, _ in points)
        assert all(0 <= x <= 100 and 0 <= y <= 100 for x, y in points)


def test_a_curve_breaks_where_a_cost_is_missing():
    for_all = quote(900, pieces=200, price_is_for="all", covers="to my door, duty and tax paid")
    plan = planned(for_all, *prices("Oxlip", 9, p100="5", p300="4"))
    curves = {bare(curve.name): curve for curve in quantity_chart(plan).curves}

    assert max(float(point.split(",")[0]) for run in curves["Fernhill"].runs for point in run.split()) == 50


def test_one_quantity_is_no_drawing():
    assert quantity_chart(planned(*prices(p200="5.00"))) is None


def test_no_known_cost_is_no_drawing():
    rows = quote(5, pieces=100, covers="goods"), quote(4, row=3, pieces=300)

    assert quantity_chart(planned(*rows)) is None


def test_no_more_than_a_few_makers_are_drawn():
    rows = [row for at in range(7) for row in prices(f"Maker {at}", 2 + 3 * at, p100=f"5.{at}0", p300=f"4.{at}0")]

    assert MANY == len(quantity_chart(planned(*rows)).curves)


def test_who_never_is_the_cheapest_stays_behind():
    rows = [*prices(p100="5.00", p300="4.00"), *prices("Oxlip", 9, p100="9.00", p300="8.00")]

    assert ["p0", "p1 behind"] == [curve.look for curve in quantity_chart(planned(*rows)).curves]


@given(st.floats(0.05, 1e5), st.floats(1, 2.2))
def test_steps_hold_both_costs_in_few_lines(least, times):
    step, lowest, highest = cost_steps(least, least * times)

    assert lowest <= least * (1 + 1e-9)
    assert highest >= least * times * (1 - 1e-9)
    assert 1 <= round((highest - lowest) / step) <= 5


@pytest.mark.parametrize("price", ["0.01", "4.20", "9800.00"])
def test_any_price_has_ticks_that_differ(price):
    figures = [tick.figure for tick in quantity_chart(planned(*prices(p100=price, p300=price))).ticks]

    assert len(set(figures)) == len(figures)
