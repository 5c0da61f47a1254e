"""Who beats whom on everything.

The three suppliers are a textbook-style exercise, "Jolly Company" [stored]; that Y over Z is the whole list is derived
[derived], as is the all-rounder that nobody beats on everything.
"""

import tracemalloc

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import SUPPLIERS

from scorecard.ranking import TIE
from scorecard.sensitivity import dominance
from scorecard.sensitivity.dominance import beats_on_everything

X, Y, Z = range(3)
HALVES = np.array([0.5, 0.5])


def test_of_the_suppliers_only_y_beats_another_on_everything():
    assert beats_on_everything(SUPPLIERS, np.full(4, 0.25)) == [(Y, Z)]


@pytest.mark.parametrize("t", [0.3, 0.5])
def test_an_all_rounder_is_never_beaten_on_everything_by_one_maker(t):
    assert beats_on_everything(np.vstack([np.eye(3), np.full(3, t)]) * 100, np.full(3, 1 / 3)) == []


def test_identical_makers_do_not_beat_one_another():
    assert beats_on_everything(np.array([[50.0, 50.0], [50.0, 50.0]]), HALVES) == []


def test_makers_apart_by_rounding_alone_do_not_beat_one_another():
    assert beats_on_everything(np.array([[50.0, 50.0], [50.0 + 1e-12, 50.0]]), HALVES) == []


def test_rounding_saves_nobody_from_being_beaten():
    assert beats_on_everything(np.array([[50.0, 60.0], [50.0 + 1e-12, 50.0]]), HALVES) == [(0, 1)]


@pytest.mark.parametrize(("lead", "expected"), [(TIE, []), (2 * TIE, [(0, 1)])])
def test_points_just_a_tie_apart_are_the_same(lead, expected):
    assert beats_on_everything(np.array([[lead, 50.0], [0.0, 50.0]]), HALVES) == expected


@pytest.mark.parametrize(("lag", "expected"), [(TIE, [(0, 1)]), (2 * TIE, [])])
def test_one_just_a_tie_behind_is_still_as_good(lag, expected):
    assert beats_on_everything(np.array([[0.0, 60.0], [lag, 50.0]]), HALVES) == expected


def test_a_criterion_of_weight_0_saves_nobody_from_being_beaten():
    assert beats_on_everything(np.array([[60.0, 0.0], [50.0, 90.0]]), np.array([1.0, 0.0])) == [(0, 1)]


def test_a_criterion_of_weight_0_beats_nobody():
    assert beats_on_everything(np.array([[50.0, 100.0], [50.0, 90.0]]), np.array([1.0, 0.0])) == []


def test_pairs_come_in_sheet_order_however_many_are_compared_together(monkeypatch):
    points = np.random.default_rng(1).integers(0, 5, (40, 2)).astype(float)
    together = beats_on_everything(points, HALVES)
    monkeypatch.setattr(dominance, "COMPARISONS_AT_ONCE", 1)
    assert together == sorted(beats_on_everything(points, HALVES))


def test_a_thousand_makers_are_never_all_compared_at_once():
    points = np.column_stack([np.arange(1000.0), -np.arange(1000.0)])  # nobody beats anybody
    tracemalloc.start()
    try:
        assert beats_on_everything(points, HALVES) == []
        most = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert most < 1000 * 1000 * 2 * 8  # what one array of all their differences would take


POINTS = st.lists(st.lists(st.integers(0, 4).map(float), min_size=3, max_size=3), min_size=1, max_size=8)


@given(POINTS, st.lists(st.integers(1, 9), min_size=3, max_size=3))
def test_who_is_beaten_on_everything_never_scores_more(points, weights):
    shares = np.array(weights) / sum(weights)
    scores = np.array(points) @ shares
    assert all(scores[loser] < scores[winner] for winner, loser in beats_on_everything(np.array(points), shares))
