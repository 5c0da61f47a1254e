"""Who can ever lead, with proofs that are checked here once more.

The three suppliers are a textbook-style exercise, "Jolly Company" [stored]; that Z can only tie, and the all-rounder's
threshold of a third, are derived [derived].
"""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import SUPPLIERS

from scorecard.ranking import TIE
from scorecard.sensitivity import can_lead as module
from scorecard.sensitivity.can_lead import can_lead
from scorecard.sensitivity.lead_proofs import prove

X, Y, Z = range(3)
SHARES = np.array([0.6, 0.2, 0.1, 0.1])


def verdicts(points, shares):
    return [(found.possible, found.level) for found in can_lead(points, shares)]


@pytest.mark.parametrize(("t", "expected"), [(0.3, (False, False)), (1 / 3, (True, True)), (0.5, (True, False))])
def test_an_all_rounder_can_lead_from_a_third_up(t, expected):
    points = np.vstack([np.eye(3), np.full(3, t)]) * 100
    assert verdicts(points, np.array([0.7, 0.2, 0.1])) == [(True, False)] * 3 + [expected]


def test_supplier_z_can_only_be_level():
    assert verdicts(SUPPLIERS, SHARES) == [(True, False), (True, False), (True, True)]


def test_suppliers_have_moved_what_the_exact_fractions_say():
    assert pytest.approx([1 / 10, 0, 4 / 5], abs=1e-11) == [found.moved for found in can_lead(SUPPLIERS, SHARES)]


def test_the_leader_leads_under_the_present_weighting():
    found = can_lead(SUPPLIERS, SHARES)[Y]
    assert (found.moved, found.shares.tolist()) == (0, SHARES.tolist())


def test_joint_leaders_have_both_moved_0():
    points = np.array([[100.0, 0.0], [0.0, 100.0]])
    assert [found.moved for found in can_lead(points, np.array([0.5, 0.5]))] == [0, 0]


def test_twins_can_only_be_joint_first():
    assert verdicts(np.array([[60.0, 40.0], [60.0, 40.0]]), np.array([0.5, 0.5])) == [(True, True)] * 2


def test_a_criterion_of_weight_0_makes_nobody_lead():
    found = can_lead(np.array([[60.0, 0.0], [50.0, 100.0]]), np.array([1.0, 0.0]))[1]
    assert (found.possible, found.beaten_by) == (False, {0: 1.0})


def test_a_criterion_of_weight_0_stays_at_0():
    points = np.array([[60.0, 40.0, 0.0], [40.0, 60.0, 100.0]])
    assert can_lead(points, np.array([0.75, 0.25, 0.0]))[1].shares.tolist() == pytest.approx([0.5, 0.5, 0])


def test_a_lone_maker_leads():
    assert verdicts(np.array([[50.0, 20.0]]), np.array([0.5, 0.5])) == [(True, False)]


@pytest.mark.parametrize(
    ("points", "moved"),
    [
        ([[50.0, 50.0], [50.0, 50.0 - TIE]], 0),  # half a tie behind
        ([[4 * TIE, 0.0], [0.0, 2 * TIE]], 0),  # just a tie behind
        ([[8 * TIE, 0.0], [0.0, 4 * TIE]], 1 / 6),  # two ties behind; level where the second criterion counts 2/3
    ],
)
def test_within_a_tie_of_the_lead_nothing_is_moved(points, moved):
    found = can_lead(np.array(points), np.array([0.5, 0.5]))[1]
    assert (found.moved, pytest.approx(0.5 + moved)) == (moved and pytest.approx(moved), found.shares[1])


def searched(monkeypatch, points, makers=None):
    """Return the outcomes, equal shares given, and which makers were proven one by one."""
    points, asked = np.array(points, dtype=float), []
    monkeypatch.setattr(
        module, "prove", lambda points, maker, likely: asked.append(maker) or prove(points, maker, likely)
    )
    search = module._Search(points)
    search.settle(np.full(len(points.T), 1 / len(points.T)), makers or range(len(points)))
    return search.found, asked


EYE = (np.eye(3) * 100).tolist()


@pytest.mark.parametrize(
    ("points", "makers", "asked"),
    [
        (EYE, [0, 1, 2], []),  # each leads with all weight on its best criterion
        ([[90, 10], [10, 90], [20, 0], [0, 30]], [2, 3], []),  # a leader beats it
        ([*EYE, [30, 30, 30], [29, 29, 29], [10, 20, 30]], [3, 4, 5], [3]),  # the mix that beats the one beats the rest
        ([[90, 50], [90, 40]], [1], []),  # level with a leader where it is best, and never ahead
        ([[0, 50], [TIE, 40]], [1], []),  # ahead of it by just a tie
        ([[90, 50, 10], [90, 40, 0], [0, 0, 60]], [1], []),  # best on one criterion of three
        ([[TIE, 50], [0, 20]], [1], [1]),  # behind by just a tie on one criterion: neither clearly beaten nor best
    ],
)
def test_only_whom_nothing_settles_at_once_is_proven_alone(points, makers, asked, monkeypatch):
    assert searched(monkeypatch, points, makers)[1] == asked


@pytest.mark.parametrize(
    ("points", "maker", "margin", "weights"),
    [
        (EYE, 0, 100, [1, 0, 0]),
        (EYE, 2, 100, [0, 0, 1]),
        ([[80, 0], [0, 100]], 0, 80, [1, 0]),
        ([[80, 0], [0, 100]], 1, 100, [0, 1]),
        ([[100, 40], [50, 30]], 0, 50, [1, 0]),  # leads alone: where it has most points
        # of the first two criteria the second is where it is 60 ahead of all; on the first, one rival is near
        ([[100, 60, 0, 0], [90, 0, 100, 0], [0, 0, 0, 100]], 0, 60, [0, 1, 0, 0]),
        ([[90, 0, 100, 0], [0, 0, 0, 100], [100, 60, 0, 0]], 2, 60, [0, 1, 0, 0]),
    ],
)
def test_who_leads_under_a_sample_is_proven_by_the_clearest_one(points, maker, margin, weights, monkeypatch):
    found = searched(monkeypatch, points)[0][maker]
    assert (found.verdict, found.margin, found.weights.tolist()) == ("leads", pytest.approx(margin), weights)


@pytest.mark.parametrize(
    "points",
    [
        [*EYE, [30, 30, 30], [29, 29, 29], [20, 0, 0]],
        [[90, 50, 10], [90, 40, 0], [0, 50, 60], [20, 50, 30]],
        [[0, 50], [TIE, 40], [0, 0]],
    ],
)
def test_every_outcome_holds_what_it_says(points, monkeypatch):
    points = np.array(points, dtype=float)
    for maker, outcome in enumerate(searched(monkeypatch, points)[0]):
        if outcome.verdict != "beaten":
            assert pytest.approx(outcome.weights.sum()) == 1
            rivals = np.delete(points, maker, 0) @ outcome.weights
            assert pytest.approx(outcome.margin, abs=2 * TIE) == points[maker] @ outcome.weights - rivals.max()
        if outcome.verdict != "leads":
            mixed = sum(part * points[rival] for rival, part in outcome.mix.items())
            assert (pytest.approx(1), outcome.bound) == (sum(outcome.mix.values()), (points[maker] - mixed).max())


def test_of_two_that_beat_it_the_one_that_leads_more_often_is_told():
    # the second is ahead of the first where the first criterion has more than a fifth of all weight
    points = np.array([[60.0, 70.0], [100.0, 60.0], [50.0, 50.0]])
    assert can_lead(points, np.array([0.1, 0.9]))[2].beaten_by == {1: 1.0}


def test_ahead_by_just_a_tie_under_a_sample_is_no_proof_of_leading():
    assert verdicts(np.array([[TIE], [0.0]]), np.array([1.0])) == [(True, True)] * 2


TABLES = st.tuples(st.integers(1, 9), st.integers(1, 5)).flatmap(
    lambda size: st.tuples(
        st.lists(
            st.lists(st.integers(0, 10).map(lambda p: 10.0 * p), min_size=size[1], max_size=size[1]),
            min_size=size[0],
            max_size=size[0],
        ),
        st.lists(st.integers(0, 5), min_size=size[1], max_size=size[1]).filter(lambda w: sum(w) > 0),
    )
)


@given(TABLES)
def test_every_answer_carries_a_proof(table):
    points, weights = np.array(table[0]), np.array(table[1], dtype=float)
    shares = weights / weights.sum()
    for maker, found in enumerate(can_lead(points, shares)):
        if found.possible:
            scores = points @ found.shares
            assert scores[maker] >= scores.max() - 3e-9
            assert pytest.approx(1) == found.shares.sum()
            assert (found.shares[shares == 0] == 0).all()
            assert pytest.approx(np.abs(found.shares - shares).sum() / 2) == found.moved
        else:
            assert pytest.approx(1) == sum(found.beaten_by.values())
            mixed = sum(part * points[rival] for rival, part in found.beaten_by.items())
            assert ((mixed - points[maker])[shares > 0] > 0).all()


@given(TABLES)
def test_who_leads_under_some_weighting_can_lead(table):
    points, weights = np.array(table[0]), np.array(table[1], dtype=float)
    shares = weights / weights.sum()
    random = np.random.default_rng(1).dirichlet(np.ones((shares > 0).sum()), 30)
    able = np.array([found.possible for found in can_lead(points, shares)])
    scores = random @ points[:, shares > 0].T
    assert able[scores.argmax(axis=1)].all()


def test_settling_many_at_once_says_the_same_as_one_by_one(monkeypatch):
    points, shares = np.random.default_rng(9).random((300, 5)) * 100, np.full(5, 0.2)
    together = [(s.possible, s.level) for s in can_lead(points, shares)]
    monkeypatch.setattr(module._Search, "_sample", lambda *_: np.array([0]))
    monkeypatch.setattr(module._Search, "_beaten_too", lambda *_: None)
    assert together == [(s.possible, s.level) for s in can_lead(points, shares)]
    assert 20 < sum(possible for possible, _ in together) < 280


def test_a_maker_left_without_a_proof_is_not_passed_over(monkeypatch):
    monkeypatch.setattr(module._Search, "settle", lambda *_: None)
    with pytest.raises(ArithmeticError, match="without a proof"):
        can_lead(SUPPLIERS, SHARES)
