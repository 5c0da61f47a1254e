"""Whether one maker can lead, against exact fractions and a linear programme.

Makers best on one criterion each and one equally good on all, the proof's value being t - 1/3, are derived in exact
fractions [derived].
"""

import numpy as np
import pytest

from scorecard.sensitivity import dual_simplex, lead_proofs
from scorecard.sensitivity.lead_proofs import margin_over, prove

NONE_LIKELY = np.array([0])


def all_rounder(t):
    return np.vstack([np.eye(3), np.full(3, t)]) * 100


def test_an_all_rounder_below_a_third_is_beaten_by_an_even_mix():
    outcome = prove(all_rounder(0.3), 3, NONE_LIKELY)
    assert outcome.verdict == "beaten"
    assert pytest.approx(100 * -1 / 30) == outcome.bound
    assert pytest.approx({0: 1 / 3, 1: 1 / 3, 2: 1 / 3}) == outcome.mix


def test_an_all_rounder_at_a_third_can_be_level_and_no_more():
    outcome = prove(all_rounder(1 / 3), 3, NONE_LIKELY)
    assert outcome.verdict == "level"
    assert pytest.approx(np.full(3, 1 / 3)) == outcome.weights


def test_an_all_rounder_at_a_half_leads_by_a_sixth_in_the_middle():
    outcome = prove(all_rounder(0.5), 3, NONE_LIKELY)
    assert outcome.verdict == "leads"
    assert pytest.approx(100 / 6) == margin_over(all_rounder(0.5), 3, np.full(3, 1 / 3))


def test_a_margin_is_the_least_lead_of_all():
    assert margin_over(np.array([[50.0, 50.0], [40.0, 60.0], [0.0, 0.0]]), 0, np.array([0.25, 0.75])) == -5


@pytest.mark.parametrize("t", [0.3, 1 / 3, 0.5])
def test_fractions_say_the_same_where_floating_point_goes_in_circles(t, monkeypatch):
    before = prove(all_rounder(t), 3, NONE_LIKELY)
    monkeypatch.setattr(dual_simplex, "PIVOTS_PER_VARIABLE", 0)
    after = prove(all_rounder(t), 3, NONE_LIKELY)
    assert (before.verdict, pytest.approx(before.bound)) == (after.verdict, after.bound)


def test_fractions_take_over_where_floating_point_is_too_coarse_to_prove_anything(monkeypatch):
    points = np.random.default_rng(1).random((30, 5)) * 100
    before = [prove(points, maker, NONE_LIKELY).verdict for maker in range(30)]
    asked = []
    play = lead_proofs._play
    monkeypatch.setattr(lead_proofs, "_play", lambda *a, exact: asked.append(exact) or play(*a, exact=exact))
    monkeypatch.setattr(dual_simplex, "NIL", 0.05)
    assert before == [prove(points, maker, NONE_LIKELY).verdict for maker in range(30)]
    assert True in asked


def test_what_not_even_fractions_prove_is_not_returned(monkeypatch):
    unproven = lead_proofs.Outcome(weights=np.ones(1), margin=-1.0, mix={}, bound=1.0)
    monkeypatch.setattr(lead_proofs, "_play", lambda *_, exact: unproven)
    with pytest.raises(ArithmeticError, match="no proof"):
        prove(all_rounder(0.3), 3, NONE_LIKELY)


@pytest.mark.peers
def test_a_linear_programme_finds_the_same_makers_able_to_lead():
    optimize = pytest.importorskip("scipy.optimize")
    random = np.random.default_rng(8)
    ours, theirs = [], []
    for _ in range(40):
        makers, criteria = random.integers(2, 12), random.integers(1, 6)
        points = random.random((makers, criteria)) * 100
        for maker in range(makers):
            behind = np.column_stack([np.delete(points, maker, 0) - points[maker], np.ones(makers - 1)])
            best = optimize.linprog(
                [0] * criteria + [-1],
                A_ub=behind,
                b_ub=np.zeros(makers - 1),
                A_eq=[[1] * criteria + [0]],
                b_eq=[1],
                bounds=[(0, None)] * criteria + [(None, None)],
                method="highs",
            )
            ours.append(prove(points, maker, NONE_LIKELY).verdict)
            theirs.append("leads" if -best.fun > 0 else "beaten")
    assert theirs == ours
    assert len(ours) > 200
