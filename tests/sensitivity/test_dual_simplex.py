"""A small linear programme, against its own laws and another solver."""

from fractions import Fraction

import numpy as np
import pytest

from scorecard.sensitivity import dual_simplex as module
from scorecard.sensitivity.dual_simplex import NIL, EndlessPivotsError, Programme


def solved(cost, rows, **more):
    programme = Programme(cost, **more)
    feasible = all(programme.require(name, row[0], row[1:]) for name, row in enumerate(rows))
    return programme, feasible


def random_case(random):
    variables, rows = random.integers(1, 7), random.integers(1, 9)
    return random.random(variables), np.round(random.uniform(-2, 2, (rows, variables + 1)), 1)


def test_without_constraints_nothing_costs_nothing():
    programme = Programme([1.0, 2.0])
    assert (programme.x.tolist(), programme.least) == ([0, 0], 0)


def test_constraints_that_contradict_one_another_cannot_be_met():
    programme = Programme([1.0])
    assert [programme.require(0, -2, [1]), programme.require(1, 1, [-1])] == [True, False]


def test_a_multiplier_says_how_fast_the_cost_grows():
    assert solved([1.0, 2.0], [[-3, 1, 1]])[0].multipliers == {0: 1.0}


def test_a_constraint_met_at_no_cost_has_no_multiplier():
    programme, _ = solved([0.0, 1.0], [[-3, 1, 1]])
    assert (programme.x.tolist(), programme.multipliers) == ([3, 0], {})


def test_a_copy_goes_its_own_way():
    first, _ = solved([1.0, 2.0], [[-3, 1, 1]])
    second = first.copy()
    second.require(1, 2, [-1, 0])  # the first variable at most 2
    assert [(one.x.tolist(), one.multipliers) for one in (first, second)] == [([3, 0], {0: 1}), ([2, 1], {0: 2, 1: 1})]
    first.require("other", -5, [1, 1])
    assert (first.x.tolist(), second.x.tolist(), first.multipliers) == ([5, 0], [2, 1], {"other": 1})


@pytest.mark.parametrize(("amount", "expected"), [(NIL, 0), (2 * NIL, 2 * NIL)])
def test_in_floating_point_an_amount_next_to_nil_is_nil(amount, expected):
    assert solved([1.0], [[-amount, 1]])[0].x.tolist() == [expected]


def test_in_fractions_no_amount_is_too_small():
    assert solved([1], [[-NIL, 1]], exact=True)[0].x.tolist() == [Fraction(NIL)]


@pytest.mark.parametrize(("exact", "expected"), [(False, [0, 0.5]), (True, [1, 0])])
def test_of_pivots_equally_good_fractions_take_the_first_and_floating_point_the_largest(exact, expected):
    # half a unit of the second, at 2, does as well as one of the first, at 1
    assert solved([1, 2], [[-1, 1, 2]], exact=exact)[0].x.tolist() == expected


@pytest.mark.parametrize("exact", [False, True])
def test_the_answer_meets_all_constraints_and_the_multipliers_prove_it_least(exact):
    random = np.random.default_rng(7)
    met = 0
    for _ in range(60):
        cost, rows = random_case(random)
        programme, feasible = solved(cost, rows, exact=exact)
        if feasible:
            met += 1
            prices = np.array([float(programme.multipliers.get(row, 0)) for row in range(len(rows))])
            x = programme.x.astype(float)
            assert (x >= -1e-9).all()
            assert (rows[:, 0] + rows[:, 1:] @ x >= -1e-9).all()
            assert (prices @ rows[:, 1:] <= cost + 1e-9).all()
            assert pytest.approx(float(programme.least), abs=1e-9) == -prices @ rows[:, 0]
    assert met > 20


def test_exact_arithmetic_is_exact():
    programme, _ = solved([1, 1], [[-1, 3, 1], [-1, 1, 3]], exact=True)
    assert programme.x.tolist() == [Fraction(1, 4), Fraction(1, 4)]


def test_exact_arithmetic_comes_to_an_end_where_much_is_level():
    rows = [row for row in np.random.default_rng(2).integers(-1, 2, (60, 5)) if row.sum() >= 0]  # all 1 meets these
    programme, feasible = solved([0] * 5, [*([0, *row] for row in rows), [-5, 1, 1, 1, 1, 1]], exact=True)
    assert feasible
    assert all((rows @ programme.x) >= 0)


def test_going_in_circles_is_noticed(monkeypatch):
    monkeypatch.setattr(module, "PIVOTS_PER_VARIABLE", 0)
    with pytest.raises(EndlessPivotsError):
        solved([1.0], [[-1, 1]])


def test_so_many_steps_are_allowed_for_each_variable(monkeypatch):
    steps = []
    monkeypatch.setattr(module, "PIVOTS_PER_VARIABLE", 3)
    monkeypatch.setattr(
        Programme, "_exchange", lambda *_: pytest.fail("endless") if len(steps) > 99 else steps.append(1)
    )
    with pytest.raises(EndlessPivotsError):
        solved([1.0, 1.0], [[-1, 1, 1]])  # without an exchange it stays broken
    assert len(steps) == 3 * 2


@pytest.mark.peers
def test_another_solver_finds_the_same_least_cost():
    optimize = pytest.importorskip("scipy.optimize")
    random = np.random.default_rng(3)
    for _ in range(200):
        cost, rows = random_case(random)
        programme, feasible = solved(cost, rows)
        other = optimize.linprog(cost, A_ub=-rows[:, 1:], b_ub=rows[:, 0], method="highs")
        assert feasible == other.success
        assert not feasible or pytest.approx(other.fun, abs=1e-9) == programme.least
