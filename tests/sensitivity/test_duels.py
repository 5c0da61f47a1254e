"""Exact parts of all weightings, against exact fractions, special cases and simulation.

The three suppliers are a textbook-style exercise, "Jolly Company" [stored]; all expected parts are derived in exact
fractions [derived], the second computation below by confluent divided differences.
"""

from fractions import Fraction
from math import comb, factorial

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import SUPPLIERS

from scorecard.sensitivity.duels import duels, part_ahead

X, Y, Z = range(3)
EQUAL = np.full(4, 0.25)


def near(*fractions):
    return pytest.approx([float(Fraction(f)) for f in fractions], rel=1e-14, abs=0)


def equal_shares(points):
    return np.full(points.shape[1], 1 / points.shape[1])


def test_supplier_duels_are_the_exact_fractions():
    beats = duels(SUPPLIERS, EQUAL).beats
    assert near("1/32", "1/5", 1) == [beats[X, Y], beats[X, Z], beats[Y, Z]]


def test_supplier_mean_ranks_are_the_exact_fractions():
    assert near("443/160", "33/32", "11/5") == duels(SUPPLIERS, EQUAL).mean_ranks.tolist()


def test_two_criteria_give_the_mean_ranks_of_the_rank_shares():
    # A is first in 2/5 and last in 1/2 of all weightings, B likewise; C is first in 1/5 and second in 4/5.
    points = np.array([[1, 0], [0, 1], [0.6, 0.6]])
    assert near("21/10", "21/10", "9/5") == duels(points, equal_shares(points)).mean_ranks.tolist()


def test_three_criteria_give_the_mean_ranks_of_the_rank_shares():
    # A, B, C have the ranks 1 to 4 in 1/4, 1/12, 1/3, 1/3 of all weightings, D in 1/4, 3/4, 0, 0.
    points = np.vstack([np.eye(3), np.full(3, 0.5)])
    assert near("11/4", "11/4", "11/4", "7/4") == duels(points, equal_shares(points)).mean_ranks.tolist()


def test_suppliers_without_service_give_the_mean_ranks_of_the_rank_shares():
    # X: 1/8, 11/40, 3/5; Y: 7/8, 1/8, 0; Z: 0, 3/5, 2/5.
    points = SUPPLIERS[:, :3]
    assert near("99/40", "9/8", "12/5") == duels(points, equal_shares(points)).mean_ranks.tolist()


@pytest.mark.parametrize("criteria", [2, 3, 7, 15])
def test_one_gain_p_against_one_loss_q_wins_in_p_of_p_and_q(criteria):
    differences = np.zeros((1, criteria))
    differences[0, [0, -1]] = 3.0, -4.0
    assert near("3/7") == part_ahead(differences).tolist()


@pytest.mark.parametrize(("gains", "losses"), [(1, 2), (3, 4), (7, 8)])
def test_equal_gains_against_equal_losses_win_as_the_beta_distribution_says(gains, losses):
    # P(Beta(k, m) > e / (d + e)) with whole k and m is P(Binomial(k + m - 1, e / (d + e)) < k).
    threshold, trials = Fraction(2, 5), gains + losses - 1
    expected = sum(comb(trials, i) * threshold**i * (1 - threshold) ** (trials - i) for i in range(gains))
    assert near(expected) == part_ahead(np.array([[3.0] * gains + [-2.0] * losses])).tolist()


def by_divided_differences(differences):
    """The divided difference of max(x, 0)^(n-1), in fractions, with repeated nodes."""
    nodes = sorted(Fraction(d) for d in differences)
    power = len(nodes) - 1
    column = [max(node, Fraction(0)) ** power for node in nodes]
    for order in range(1, len(nodes)):
        column = [
            derivative(nodes[i], power, order)
            if nodes[i] == nodes[i + order]
            else (column[i + 1] - column[i]) / (nodes[i + order] - nodes[i])
            for i in range(len(nodes) - order)
        ]
    return column[0]


def derivative(node, power, order):
    """The derivative of max(x, 0)^power of this order, over the factorial of the order."""
    falling = factorial(power) // factorial(power - order)
    return Fraction(falling, factorial(order)) * (node ** (power - order) if node > 0 else 0)


@pytest.mark.parametrize("criteria", [2, 5, 9, 15])
def test_random_differences_agree_with_exact_fractions(criteria):
    differences = np.random.default_rng(criteria).uniform(-100, 100, (40, criteria))
    assert near(*map(by_divided_differences, differences.tolist())) == part_ahead(differences).tolist()


@pytest.mark.parametrize("criteria", [3, 8, 15])
def test_repeated_and_nil_differences_agree_with_exact_fractions(criteria):
    differences = np.random.default_rng(criteria).integers(-2, 3, (40, criteria)).astype(float)
    assert near(*map(by_divided_differences, differences.tolist())) == part_ahead(differences).tolist()


@pytest.mark.parametrize("criteria", [4, 15])
def test_differences_a_hair_apart_agree_with_exact_fractions(criteria):
    random = np.random.default_rng(criteria)
    hair = random.integers(-3, 4, (40, criteria)) * 1e-12
    differences = random.choice([-20.0, 0.0, 5.0], (40, criteria)) + hair
    assert near(*map(by_divided_differences, differences.tolist())) == part_ahead(differences).tolist()


def test_a_simulation_agrees_within_4_standard_errors():
    random = np.random.default_rng(3)
    points, draws = random.random((6, 5)) * 100, 100_000
    scores = random.dirichlet(np.ones(5), draws) @ points.T
    simulated = (scores[:, :, np.newaxis] > scores[:, np.newaxis, :]).mean(axis=0)
    exact = duels(points, equal_shares(points)).beats
    assert (np.abs(exact - simulated) <= 4 * np.sqrt(exact * (1 - exact) / draws) + 1e-12).all()


def test_identical_makers_beat_one_another_in_no_weighting():
    points = np.array([[50.0, 20.0], [50.0, 20.0], [0.0, 0.0]])
    assert duels(points, np.array([0.5, 0.5])).beats.tolist() == [[0, 0, 1], [0, 0, 1], [0, 0, 0]]


def test_identical_makers_share_the_better_mean_rank():
    points = np.array([[50.0, 20.0], [50.0, 20.0], [0.0, 0.0]])
    assert duels(points, np.array([0.5, 0.5])).mean_ranks.tolist() == [1, 1, 3]


def test_makers_apart_on_a_criterion_of_weight_0_alone_are_identical():
    points = np.array([[50.0, 20.0], [50.0, 90.0]])
    assert duels(points, np.array([1.0, 0.0])).beats.tolist() == [[0, 0], [0, 0]]


def test_makers_apart_by_rounding_alone_are_identical():
    points = np.array([[50.0, 20.0], [50.0 + 1e-13, 20.0 - 1e-13]])
    assert duels(points, np.array([0.5, 0.5])).beats.tolist() == [[0, 0], [0, 0]]


@pytest.mark.parametrize(("lead", "expected"), [(1e-9, [[0, 0], [0, 0]]), (2e-9, [[0, 1], [0, 0]])])
def test_makers_just_a_tie_apart_are_identical(lead, expected):
    assert duels(np.array([[lead, 20.0], [0.0, 20.0]]), np.array([0.5, 0.5])).beats.tolist() == expected


def test_a_gain_next_to_nil_counts_for_nothing():
    assert near("3/7") == part_ahead(np.array([[1e-200, 3.0, -4.0, 0.0]])).tolist()


@pytest.mark.parametrize("differences", [[-0.5, 0.0], [-3.0, -0.25], [0.0, 0.0, -1e-9]])
def test_without_a_gain_no_weighting_is_won(differences):
    assert part_ahead(np.array([differences])).tolist() == [0.0]


def test_one_criterion_of_positive_share_is_a_plain_comparison():
    points = np.array([[50.0, 0.0], [49.0, 100.0], [51.0, 30.0]])
    assert duels(points, np.array([1.0, 0.0])).beats.tolist() == [[0, 1, 0], [0, 0, 0], [1, 1, 0]]


def test_beating_on_everything_is_beating_in_all_weightings():
    beats = duels(np.array([[50.0, 20.0, 7.0], [50.0, 19.0, 7.0]]), np.array([0.2, 0.3, 0.5])).beats
    assert beats.tolist() == [[0, 1], [0, 0]]


def test_a_lone_maker_has_mean_rank_1():
    assert duels(np.array([[50.0, 20.0]]), np.array([0.5, 0.5])).mean_ranks.tolist() == [1]


DIFFERENCES = st.lists(st.floats(-100, 100).map(lambda d: round(d, 3)), min_size=1, max_size=8)


@given(DIFFERENCES)
def test_both_ways_add_up_to_1(differences):
    points = np.array([differences, [0.0] * len(differences)]) + 100
    beats = duels(points, equal_shares(points)).beats
    assert beats[0, 1] + beats[1, 0] == (1 if np.abs(points[0] - points[1]).max() > 1e-9 else 0)


@given(DIFFERENCES.filter(any))
def test_turning_a_pair_round_gives_the_rest(differences):
    row = np.array([differences])
    assert pytest.approx(1, abs=1e-14) == part_ahead(row)[0] + part_ahead(-row)[0]


def test_more_pairs_than_are_taken_at_once_are_all_there():
    points = np.random.default_rng(1).random((80, 3)) * 100
    beats = duels(points, equal_shares(points)).beats
    assert pytest.approx(np.ones((80, 80)) - np.eye(80)) == beats + beats.T
