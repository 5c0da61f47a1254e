"""The nearest weighting with which a maker leads, against worked examples and a linear programme.

The three suppliers are a textbook-style exercise, "Jolly Company" [stored]; what must be moved is derived [derived].
"""

from fractions import Fraction

import numpy as np
import pytest
from published import SUPPLIERS

from scorecard.sensitivity import dual_simplex
from scorecard.sensitivity import nearest_lead as module
from scorecard.sensitivity.lead_proofs import margin_over
from scorecard.sensitivity.nearest_lead import least_possible_move, moves, nearest_lead

X, Y, Z = range(3)
SHARES = np.array([0.6, 0.2, 0.1, 0.1])


def test_supplier_x_leads_when_a_tenth_moves():
    assert pytest.approx(1 / 10, abs=1e-12) == nearest_lead(SUPPLIERS, SHARES, X)[0]


def test_supplier_z_is_level_when_all_weight_is_on_quality():
    # Y beats Z on all the rest, so only quality may have weight.
    moved, weights = nearest_lead(SUPPLIERS, SHARES, Z)
    assert pytest.approx([0.8, 0, 1, 0, 0], abs=1e-11) == [moved, *weights]


def test_a_maker_that_leads_has_moved_nothing():
    moved, weights = nearest_lead(SUPPLIERS, SHARES, Y)
    assert (moved, weights.tolist()) == (0, SHARES.tolist())


def test_beating_the_leader_is_not_enough_if_a_third_maker_comes_up():
    # To be level with the first, the third needs 1/8 moved; but the second is ahead of it until 1/4 is.
    points = np.array([[100.0, 20.0], [80.0, 80.0], [10.0, 95.0]])
    moved, weights = nearest_lead(points, np.array([0.5, 0.5]), 2)
    crossing = 70 / 85  # 80 = 10·(1 - w) + 95·w
    assert pytest.approx((crossing - 0.5, crossing)) == (moved, weights[1])


def test_a_maker_that_cannot_lead_has_no_nearest_weighting():
    with pytest.raises(ArithmeticError, match="no nearest"):
        nearest_lead(np.array([[50.0, 50.0], [40.0, 40.0]]), np.array([0.5, 0.5]), 1)


def test_an_allowance_lets_others_be_so_far_ahead():
    moved, _ = nearest_lead(np.array([[50.0, 50.0], [40.0, 49.0]]), np.array([0.5, 0.5]), 1, allowance=1.0)
    assert pytest.approx(0.5) == moved


def test_an_allowance_spares_a_part_of_the_move():
    # X is 0.4 behind, and 0.2 may stay: half of the tenth moves.
    assert pytest.approx(0.05, abs=1e-12) == nearest_lead(SUPPLIERS, SHARES, X, allowance=0.2)[0]
    assert pytest.approx(0.05) == least_possible_move(SUPPLIERS, SHARES, X, {Y: 0.25}, 0.2)


def test_weight_is_gained_only_where_it_is_lost():
    # 8 points behind, a part moved closes 120: 1/15. To add 0.08 to the second weight alone would cost half of that.
    moved, weights = nearest_lead(np.array([[40.0, 100.0], [60.0, 0.0]]), np.array([0.9, 0.1]), 0)
    assert pytest.approx([1 / 15, 5 / 6, 1 / 6], abs=1e-12) == [moved, *weights]


def test_prices_prove_the_least_move_of_the_suppliers():
    # From quality to price, X gains 4 points on Y for all the weight moved: a price of 1/4 on each point of lead.
    assert pytest.approx(0.1) == least_possible_move(SUPPLIERS, SHARES, X, {Y: 0.25}, 0.0)


def test_no_prices_prove_more_than_must_be_moved():
    random = np.random.default_rng(5)
    for _ in range(200):
        prices = {Y: random.random(), Z: random.random()}
        assert least_possible_move(SUPPLIERS, SHARES, X, prices, 0.0) <= 0.1 + 1e-12


@pytest.mark.parametrize(("name", "value"), [("PIVOTS_PER_VARIABLE", 0), ("NIL", 0.05)])
def test_fractions_take_over_where_floating_point_proves_nothing(name, value, monkeypatch):
    asked = []
    solve = module._solve
    monkeypatch.setattr(module, "_solve", lambda *a: asked.append(a[-1].exact) or solve(*a))
    monkeypatch.setattr(dual_simplex, name, value)
    assert pytest.approx(1 / 10, abs=1e-12) == nearest_lead(SUPPLIERS, SHARES, X)[0]
    assert asked == [False, True]


def test_fractions_compute_with_the_very_numbers_given():
    # The lead is 3/4·a + 1/4·b, and all weight moved would close b - a: a and b are no floating-point numbers.
    points, shares = np.array([[0.1, 0.7], [0.3, 0.6]]), np.array([0.75, 0.25])
    programme = moves(shares, exact=True)
    assert module._solve(points, shares, 0, 0.0, programme) is not None
    a, b = (Fraction(one) - Fraction(other) for one, other in zip(*points, strict=True))
    assert programme.least == -(Fraction(3, 4) * a + Fraction(1, 4) * b) / (b - a)


def test_fractions_too_find_what_is_level_but_for_rounding(monkeypatch):
    # At halves, where the first is level with both others, it lacks some 10^-14 of a point.
    monkeypatch.setattr(dual_simplex, "PIVOTS_PER_VARIABLE", 0)
    points = np.array([[50.0, 50.0], [100.0, 0.0], [0.0, 100.0 + 4e-14]])
    assert pytest.approx(0.25, abs=1e-12) == nearest_lead(points, np.array([0.75, 0.25]), 0)[0]


def test_prices_of_millions_prove_the_move_too():
    # The leads over the others are 50·(a - b) and -50·(a - b) + 10^-8·(c - b): nil at thirds, 2/15 away. As little as a
    # price of 10^-8 decides, what fractions allow for rounding moves the answer by a ten-thousandth.
    points = np.array([[50.0, 50.0, 50.0], [0.0, 100.0, 50.0], [100.0, 1e-8, 50.0 - 1e-8]])
    moved, weights = nearest_lead(points, np.array([0.4, 0.4, 0.2]), 0)
    assert pytest.approx([2 / 15, 1 / 3, 1 / 3, 1 / 3], abs=2e-4) == [moved, *weights]


@pytest.mark.parametrize(
    ("name", "value", "is_proof"),
    [
        ("margin_over", -1e-9, True),
        ("margin_over", -1.01e-9, False),
        ("least_possible_move", -1e-10, True),
        ("least_possible_move", -1.01e-10, False),
    ],
)
def test_a_proof_leaves_nobody_ahead_and_the_least_move_a_ten_billionth_off(name, value, is_proof, monkeypatch):
    monkeypatch.setattr(module, name, lambda *_: value)
    monkeypatch.setattr(module, "ROOM", 0.0)
    if is_proof:
        assert nearest_lead(SUPPLIERS, SHARES, Y)[0] == 0
    else:
        with pytest.raises(ArithmeticError, match="no nearest"):
            nearest_lead(SUPPLIERS, SHARES, Y)


@pytest.mark.peers
@pytest.mark.parametrize("decimals", [0, 6])
def test_a_linear_programme_moves_as_much(decimals):
    optimize = pytest.importorskip("scipy.optimize")
    random = np.random.default_rng(decimals)
    compared = 0
    for _ in range(80):
        makers, criteria = random.integers(2, 10), random.integers(2, 7)
        points = np.round(random.random((makers, criteria)) * (10 if decimals == 0 else 100), decimals)
        shares = random.dirichlet(np.ones(criteria))
        for maker in range(makers):
            behind = points - points[maker]
            best = optimize.linprog(
                np.full(2 * criteria, 0.5),
                A_ub=np.hstack([behind, -behind]),
                b_ub=-behind @ shares,
                A_eq=[[1] * criteria + [-1] * criteria],
                b_eq=[0],
                bounds=[(0, None)] * criteria + [(0, share) for share in shares],
                method="highs",
            )
            if best.success:
                compared += 1
                moved, weights = nearest_lead(points, shares, maker)
                assert pytest.approx(best.fun, abs=1e-9) == moved
                assert margin_over(points, maker, weights) >= -1e-9
    assert compared > 200
