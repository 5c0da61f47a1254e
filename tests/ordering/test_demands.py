"""Chances of demand and the newsvendor's order, against a published example and an independent library."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.ordering.demands import CASES, OUTER, WEIGHTS, Demand, critical_ratio

FIGURES = st.lists(st.integers(0, 2000), min_size=3, max_size=3).map(sorted)


def demand_of(figures):
    low, likely, high = figures
    return Demand(low=low, likely=likely, high=high)


def normal(mean, deviation):
    """Return a demand whose low and high lie so that it is normal, as near as whole pieces allow."""
    away = round(OUTER * deviation)
    return Demand(low=mean - away, likely=mean, high=mean + away), away / OUTER


def test_the_ratio_of_a_published_newsvendor():
    # a question on a homework board: price 600, cost 120, salvage 60 [stored]
    assert pytest.approx(0.8889, abs=5e-5) == critical_ratio(600 - 120, 120 - 60)


def test_the_order_of_a_published_newsvendor():
    # the same: mean 200, deviation 60, the option 273.2 [stored; z 1.2206 computed]
    _, deviation = normal(200, 60)
    demand = Demand(low=123, likely=200, high=277)

    assert pytest.approx(273.2, abs=0.2) == demand.enough_in(480 / 540)
    assert pytest.approx(60, rel=0.002) == deviation


def test_the_reasoning_printed_beside_that_answer_is_wrong():
    # it puts the piece left over above the sum, which would call for 126.8: fewer pieces the more a sale earns
    inverted = critical_ratio(120 - 60, 600 - 120)

    assert pytest.approx(0.1111, abs=5e-5) == inverted
    assert pytest.approx(126.8, abs=0.3) == Demand(low=123, likely=200, high=277).enough_in(inverted)
    assert inverted != pytest.approx(critical_ratio(480, 60))


@pytest.mark.peers
@pytest.mark.parametrize("chance", [0.001, 0.1, 0.37, 0.5, 0.8, 0.9, 0.99])
def test_with_equal_distances_it_is_the_normal_distribution(chance):
    stats = pytest.importorskip("scipy.stats")
    demand, deviation = normal(300, 70)

    assert pytest.approx(stats.norm.ppf(chance, 300, deviation), rel=1e-9) == demand.enough_in(chance)


@pytest.mark.peers
@pytest.mark.parametrize("pieces", [40, 200, 300, 333, 700])
def test_expected_sales_of_a_normal_demand_are_those_of_the_loss_function(pieces):
    stats = pytest.importorskip("scipy.stats")
    # q − E[(q − D)+], with E[(q − D)+] = s·(uΦ(u) + φ(u)) by scipy; demand below 0 is too seldom to show
    demand, deviation = normal(300, 40)
    u = (pieces - 300) / deviation
    loss = deviation * (u * stats.norm.cdf(u) + stats.norm.pdf(u))

    assert pytest.approx(pieces - loss, rel=1e-9) == demand.expected_sold(pieces)


@pytest.mark.peers
@pytest.mark.parametrize("figures", [(20, 180, 260), (0, 10, 400), (150, 150, 260), (80, 180, 180)])
def test_expected_sales_are_the_area_beside_the_distribution(figures):
    integrate = pytest.importorskip("scipy.integrate")
    demand = demand_of(figures)
    area, _ = integrate.quad(lambda x: 1 - demand.at_most(x), 0, 230, points=[figures[1]], limit=200)

    assert pytest.approx(area, rel=1e-6) == demand.expected_sold(230)


@pytest.mark.parametrize(
    ("figures", "chance"),
    [((80, 180, 260), 0.5), ((80, 180, 180), 1.0), ((180, 180, 260), 0.5), ((180, 180, 180), 1.0)],
)
def test_half_of_what_may_be_asked_for_is_at_most_the_likely_demand_and_all_where_nothing_lies_above(figures, chance):
    assert chance == demand_of(figures).at_most(180)


def test_the_ends_lie_one_way_off_and_a_certainty_lies_far_beyond_and_is_a_number():
    demand = demand_of((120, 180, 260))
    ways = [demand.part_of_the_way(chance) for chance in (0, 0.1, 0.5, 0.9, 1)]

    assert pytest.approx([-1, 0, 1]) == ways[1:4]
    assert -10 < ways[0] < -5 < 5 < ways[4] < 10


@given(FIGURES)
def test_the_three_figures_are_enough_in_one_five_and_nine_of_ten(figures):
    demand = demand_of(figures)

    assert pytest.approx(figures, abs=1e-6) == [demand.enough_in(chance) for chance in (0.1, 0.5, 0.9)]


@given(FIGURES, st.floats(0, 1), st.floats(0, 1))
def test_a_greater_chance_needs_no_fewer_pieces(figures, one, other):
    demand = demand_of(figures)

    assert demand.enough_in(min(one, other)) <= demand.enough_in(max(one, other))


@given(FIGURES, st.integers(0, 3000), st.integers(0, 3000))
def test_more_pieces_sell_no_fewer_and_never_more_than_there_are(figures, one, other):
    demand = demand_of(figures)
    few, many = sorted((one, other))

    assert demand.expected_sold(few) <= demand.expected_sold(many) + 1e-9
    assert -1e-9 <= demand.expected_sold(many) <= many + 1e-9


@given(FIGURES.filter(lambda figures: figures[0] < figures[1] < figures[2]), st.floats(0.02, 0.98))
def test_no_order_is_better_than_the_newsvendors(figures, ratio):
    # left on average per unit of missed + left_over: ratio · E[sold] − (1 − ratio) · E[left over]
    demand = demand_of(figures)
    best = demand.enough_in(ratio)

    def worth(pieces):
        sold = demand.expected_sold(pieces)
        return ratio * sold - (1 - ratio) * (pieces - sold)

    assert all(worth(best) >= worth(best * part) - 1e-6 for part in (0, 0.5, 0.9, 0.99, 1.01, 1.1, 2))


@pytest.mark.peers
def test_the_three_weights_stand_for_a_normal_distribution():
    stats = pytest.importorskip("scipy.stats")
    # the ends at 9 and 1 of 10 cases, by scipy: together they keep its mean, and its variance to a fiftieth
    ends = dict(zip(CASES, stats.norm.ppf([0.1, 0.5, 0.9], 300, 70), strict=True))
    mean = sum(float(WEIGHTS[case]) * ends[case] for case in CASES)
    variance = sum(float(WEIGHTS[case]) * (ends[case] - mean) ** 2 for case in CASES)

    assert 1 == sum(WEIGHTS.values())
    assert (pytest.approx(300), pytest.approx(70**2, rel=0.02)) == (mean, variance)


def test_a_sale_that_earns_nothing_calls_for_no_piece():
    assert 0.0 == critical_ratio(0, 5) == critical_ratio(-3, 5) == critical_ratio(-0.5, 2) == critical_ratio(0, 0)
    assert 0.0 == Demand(low=1, likely=2, high=3).enough_in(0.0)


def test_amounts_below_1_are_weighed_as_any_other():
    assert (0.5, 0.75) == (critical_ratio(0.5, 0.5), critical_ratio(0.75, 0.25))


def test_a_piece_left_over_that_loses_nothing_has_no_end():
    assert 1.0 == critical_ratio(5, 0) == critical_ratio(5, -0.5) == critical_ratio(0.5, -3)
    assert float("inf") == Demand(low=1, likely=2, high=3).enough_in(1.0)


@pytest.mark.parametrize("figures", [(5, 4, 9), (5, 9, 8), (-1, 4, 9)])
def test_figures_that_do_not_rise_from_nothing_are_refused(figures):
    with pytest.raises(ValueError, match="rise"):
        demand_of(figures)


@pytest.mark.parametrize(("low", "high", "both"), [(120, 260, True), (120, None, False), (None, 260, False)])
def test_chances_need_both_ends(low, high, both):
    assert both is Demand(likely=180, low=low, high=high).is_spread


def test_the_likely_figure_alone_is_no_spread():
    assert Demand(likely=180).is_spread is False
    assert 180.0 == Demand(likely=180).expected_sold(250)
