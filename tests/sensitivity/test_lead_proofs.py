"""Whether one maker can lead, against exact fractions and a linear programme.

Makers best on one criterion each and one equally good on all, the proof's value being t - 1/3, are derived in exact
fractions [derived].
"""

from fractions import Fraction

import numpy as np
import pytest

from scorecard.ranking import TIE
from scorecard.sensitivity import dual_simplex, lead_proofs
from scorecard.sensitivity.lead_proofs import Outcome, margin_over, prove

NONE_LIKELY = np.array([0])


@pytest.fixture
def in_fractions(monkeypatch):
    """Floating point that always goes in circles."""
    monkeypatch.setattr(dual_simplex, "PIVOTS_PER_VARIABLE", 0)


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


@pytest.mark.parametrize(
    ("margin", "bound", "expected"),
    [
        (-np.inf, -1.5, "beaten"),
        (-1, -1, "level"),
        (1, np.inf, "unproven"),
        (1.5, np.inf, "leads"),
        (-2, 0, "level"),
        (-2.5, 0, "unproven"),
        (0, 2, "level"),
        (0, 2.5, "unproven"),
    ],
)
def test_the_verdict_at_the_edges_in_ties(margin, bound, expected):
    outcome = Outcome(weights=np.ones(1), margin=margin * TIE, mix={}, bound=bound * TIE)
    assert outcome.verdict == expected


def test_who_leads_with_even_weights_needs_no_rival():
    outcome = prove(all_rounder(0.5), 3, np.array([3]))
    assert (pytest.approx([1 / 3] * 3), pytest.approx(100 / 6)) == (outcome.weights.tolist(), outcome.margin)
    assert (outcome.mix, outcome.bound) == ({}, np.inf)


@pytest.mark.parametrize(
    ("likely", "mix", "bound"),
    [
        ([1, 2], {2: 1.0}, -20),  # the strongest of the likely ones comes first
        ([1], {1: 1.0}, -2.5 * TIE),  # one that clearly beats it is enough, however narrowly
        ([3], {2: 1.0}, -20),  # one that is level with it proves nothing: the best of all is next
    ],
)
def test_rivals_are_taken_in_until_one_clearly_beats_it(likely, mix, bound):
    points = np.array([[0.0, 0.0], [2.5 * TIE, 2.5 * TIE], [20.0, 20.0], [0.0, 0.0]])
    outcome = prove(points, 0, np.array(likely))
    assert (outcome.mix, pytest.approx(bound)) == (mix, outcome.bound)


@pytest.mark.parametrize("x", range(1, 20))
def test_a_mix_that_beats_it_by_just_a_tie_does_not_hide_who_is_further_ahead(x):
    # an even mix of the first two rivals is a tie ahead, give or take the rounding; the third is 7.1 ahead
    points = 52.9 + np.array([[0.0, 0.0], [x, -7.0], [2 * TIE - x, 7.0 + 2 * TIE], [7.1, 7.1]])
    assert prove(points, 0, np.array([1, 2])).verdict == "beaten"


def test_one_without_a_point_is_beaten_by_all_the_scale():
    outcome = prove(np.array([[0.0, 0.0], [100.0, 100.0]]), 0, np.array([1]))
    assert (outcome.mix, pytest.approx(-100)) == ({1: 1.0}, outcome.bound)


@pytest.mark.parametrize(("lead", "expected"), [(TIE, "level"), (4 * TIE, "leads")])
def test_a_lead_of_just_a_tie_is_level(lead, expected):
    assert prove(np.array([[lead], [0.0]]), 0, NONE_LIKELY).verdict == expected


def test_being_just_two_ties_behind_is_not_clear(in_fractions):
    assert prove(np.array([[0.0], [2 * TIE], [5 * TIE]]), 0, np.array([1])).mix == {2: 1.0}


@pytest.mark.parametrize(("more", "part"), [(4e-10, 2.5e-12), (8e-11, None)])
def test_a_part_next_to_nothing_is_left_out_of_the_mix(more, part):
    # leads of -80 and 80 over the one rival, -10 and -10 - d over the other: a part of d / (160 + d) makes both alike
    outcome = prove(np.array([[0.0, 80.0], [80.0, 0.0], [10.0, 90.0 + more]]), 0, np.array([1]))
    expected = {2: 1.0} if part is None else {1: part, 2: 1 - part}
    assert pytest.approx(expected, rel=1e-3, abs=0) == outcome.mix


@pytest.mark.parametrize(("no_part", "mix", "bound"), [(0.2, {1: 0.25, 2: 0.75}, -40), (0.25, {2: 1.0}, -30)])
def test_a_part_no_greater_than_no_part_is_shared_out(no_part, mix, bound, in_fractions, monkeypatch):
    # leads of -70 and 20, and of -30 and -60: a quarter and three quarters of them are -40 and -40
    monkeypatch.setattr(lead_proofs, "NO_PART", no_part)
    outcome = prove(np.array([[20.0, 20.0], [90.0, 0.0], [50.0, 80.0]]), 0, np.array([1]))
    assert (outcome.mix, outcome.bound) == (mix, bound)


def test_leads_in_fractions_are_exact():
    exact = (Fraction(0.3) - Fraction(0.1)) / 100
    assert [exact] == lead_proofs._leads(np.array([[0.3], [0.1]]), 0, 1, exact=True).tolist()
    assert lead_proofs._leads(np.array([[0.3], [0.1]]), 0, 1, exact=False).dtype == float


def test_fractions_are_not_asked_where_floating_point_proves_it(monkeypatch):
    asked = []
    play = lead_proofs._play
    monkeypatch.setattr(lead_proofs, "_play", lambda *a, exact: asked.append(exact) or play(*a, exact=exact))
    prove(all_rounder(0.5), 3, NONE_LIKELY)
    assert asked == [False]


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
