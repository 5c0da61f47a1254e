"""The smallest change of weights, against worked examples in exact fractions and a linear programme.

The office location is from Goodwin and Wright, Decision Analysis for Management Judgment, chapter 3, table 3.2 [mixed];
the three suppliers are a textbook-style exercise, "Jolly Company" [stored]. The least changes are derived from them in
exact fractions [derived], as the sum of all absolute changes: twice the weight moved.
"""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import OFFICE_SHARES, OFFICES, SUPPLIER_SHARES, SUPPLIERS

from scorecard.sensitivity.smallest_change import smallest_changes, without_dust

A, B, C, D, E, F, G = range(7)

X, Y, Z = range(3)


def test_of_the_offices_e_needs_the_least_change_of_all():
    moved = smallest_changes(OFFICES, OFFICE_SHARES, A).moved
    assert np.delete(moved, A).argmin() + 1 == E


def test_office_e_draws_level_when_half_of_4_15ths_moves():
    assert pytest.approx(4 / 15 / 2, abs=1e-15) == smallest_changes(OFFICES, OFFICE_SHARES, A).moved[E]


def test_office_e_draws_level_when_closeness_gives_2_15ths_to_comfort():
    change = smallest_changes(OFFICES, OFFICE_SHARES, A).shares[E] - OFFICE_SHARES
    assert pytest.approx([-2 / 15, 0, 0, 0, 2 / 15, 0], abs=1e-15) == change


def test_supplier_x_draws_level_when_half_of_a_fifth_moves():
    assert pytest.approx(1 / 5 / 2, abs=1e-15) == smallest_changes(SUPPLIERS, SUPPLIER_SHARES, Y).moved[X]


def test_the_leader_itself_has_moved_0():
    moved, shares = smallest_changes(SUPPLIERS, SUPPLIER_SHARES, Y).against(Y)
    assert (0.0, SUPPLIER_SHARES.tolist()) == (moved, shares.tolist())


def test_a_joint_leader_has_moved_0_even_when_rounding_parts_them():
    points = np.array([[100.0, 0.0], [0.0, 100.0 - 1e-10]])
    moved, shares = smallest_changes(points, np.array([0.5, 0.5]), 0).against(1)
    assert (moved, shares.tolist()) == (0.0, [0.5, 0.5])


def test_a_maker_that_is_beaten_on_everything_never_draws_level():
    assert smallest_changes(np.array([[60.0, 60.0], [50.0, 59.0]]), np.array([0.5, 0.5]), 0).against(1) is None


def test_a_maker_level_on_one_criterion_alone_needs_all_weight_there():
    moved, shares = smallest_changes(np.array([[60.0, 50.0], [50.0, 50.0]]), np.array([0.75, 0.25]), 0).against(1)
    assert (moved, shares.tolist()) == (0.75, [0.0, 1.0])


def test_a_criterion_of_weight_0_gains_nothing():
    points = np.array([[60.0, 60.0, 0.0], [50.0, 65.0, 100.0]])
    assert smallest_changes(points, np.array([0.5, 0.5, 0.0]), 0).shares[1, 2] == 0


def test_only_a_criterion_of_weight_0_in_its_favour_brings_nobody_level():
    points = np.array([[60.0, 60.0, 0.0], [50.0, 50.0, 100.0]])
    assert smallest_changes(points, np.array([0.5, 0.5, 0.0]), 0).against(1) is None


def test_with_one_criterion_a_lower_maker_never_draws_level():
    assert smallest_changes(np.array([[60.0], [50.0]]), np.array([1.0]), 0).against(1) is None


def test_leads_below_a_point_narrow_as_all_do():
    # The lead is 3/4·1/2 - 1/4·1/4 = 5/16, and all weight moved would close 3/4.
    moved, shares = smallest_changes(np.array([[50.5, 50.0], [50.0, 50.25]]), np.array([0.75, 0.25]), 0).against(1)
    assert pytest.approx([5 / 12, 1 / 3, 2 / 3], abs=1e-15) == [moved, *shares]


@pytest.mark.parametrize(
    ("leader", "moved", "shares"),
    [([2e-9, 0.0], 0.0, [0.5, 0.5]), ([100.0, 1e-9], 0.5, [0.0, 1.0]), ([100.0, 1.01e-9], None, None)],
    ids=["a billionth in all", "a billionth at best", "more than a billionth at best"],
)
def test_a_lead_of_a_billionth_is_level(leader, moved, shares):
    found = smallest_changes(np.array([leader, [0.0, 0.0]]), np.array([0.5, 0.5]), 0).against(1)
    assert (None, None) == (moved, shares) if found is None else (moved, shares) == (found[0], found[1].tolist())


SIXTHS = [1 / 6] * 6  # rounded, they add up to a hair less than 1


def test_a_weight_of_at_most_a_trillionth_is_dust():
    assert without_dust(np.array([0.3, 0.5, 1e-12, 0.0])).tolist() == [0.3 / 0.8, 0.5 / 0.8, 0.0, 0.0]
    assert without_dust(np.array([0.3, 0.5, 1.01e-12, 0.0])).tolist() == [0.3, 0.5, 1.01e-12, 0.0]


def test_weightings_without_dust_stay_as_they_are_beside_one_with_it():
    found = without_dust(np.array([[*SIXTHS, 0.0], [0.2, 0.2, 0.2, 0.2, 0.0, 0.0, 1e-13], [*SIXTHS, 0.0]]))
    assert found.tolist() == [[*SIXTHS, 0.0], [0.25, 0.25, 0.25, 0.25, 0.0, 0.0, 0.0], [*SIXTHS, 0.0]]
    assert without_dust(np.array([*SIXTHS, 0.0])).tolist() == [*SIXTHS, 0.0]


TABLES = st.tuples(st.integers(2, 8), st.integers(1, 5)).flatmap(
    lambda size: st.tuples(
        st.lists(
            st.lists(st.integers(0, 20).map(lambda p: 5.0 * p), min_size=size[1], max_size=size[1]),
            min_size=size[0],
            max_size=size[0],
        ),
        st.lists(st.integers(0, 10), min_size=size[1], max_size=size[1]).filter(lambda w: sum(w) > 0),
    )
)


def solved(table):
    points, weights = np.array(table[0]), np.array(table[1], dtype=float)
    shares = weights / weights.sum()
    leader = int((points @ shares).argmax())
    return points, shares, leader, smallest_changes(points, shares, leader)


@given(TABLES)
def test_the_weighting_found_brings_the_maker_level(table):
    points, _, leader, changes = solved(table)
    possible = ~np.isnan(changes.moved)
    gaps = ((points[leader] - points) * changes.shares).sum(axis=1)[possible]
    assert pytest.approx(np.zeros(possible.sum()), abs=1e-9) == gaps


@given(TABLES)
def test_the_weighting_found_is_a_weighting_and_as_far_away_as_it_says(table):
    _, shares, _, changes = solved(table)
    found = changes.shares[~np.isnan(changes.moved)]
    assert (found >= 0).all()
    assert (found[:, shares == 0] == 0).all()
    assert pytest.approx(np.ones(len(found)), abs=1e-12) == found.sum(axis=1)
    assert pytest.approx(np.abs(found - shares).sum(axis=1) / 2, abs=1e-12) == changes.moved[~np.isnan(changes.moved)]


def least_by_linear_programme(lead, shares):
    from scipy.optimize import linprog

    columns = len(shares)
    ones = np.ones(columns)
    solution = linprog(
        np.ones(2 * columns) / 2,
        A_eq=np.array([np.concatenate([lead, -lead]), np.concatenate([ones, -ones])]),
        b_eq=[-lead @ shares, 0],
        bounds=[(0, None)] * columns + [(0, share) for share in shares],
        method="highs",
    )
    return solution.fun if solution.success else np.nan


@pytest.mark.peers
def test_a_linear_programme_moves_as_much():
    pytest.importorskip("scipy")
    random = np.random.default_rng(11)
    ours, theirs = [], []
    for _ in range(60):
        points, shares = random.random((6, 4)) * 100, random.dirichlet(np.ones(4))
        points[:, random.integers(4)] = 50
        leader = int((points @ shares).argmax())
        ours += smallest_changes(points, shares, leader).moved.tolist()
        theirs += [least_by_linear_programme(points[leader] - row, shares) for row in points]
    assert pytest.approx(theirs, abs=1e-9, nan_ok=True) == ours
