"""The nearest weightings of many makers at once, against those found one by one and a linear programme."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import SUPPLIERS

from scorecard.sensitivity import can_lead
from scorecard.sensitivity import nearest_at_once as module
from scorecard.sensitivity.lead_proofs import margin_over
from scorecard.sensitivity.nearest_at_once import nearest_leads
from scorecard.sensitivity.nearest_lead import nearest_lead

SHARES = np.array([0.6, 0.2, 0.1, 0.1])


def able(points, shares):
    """Return the makers that lead under some weighting."""
    search = can_lead._Search(points)
    search.settle(shares, range(len(points)))
    return [maker for maker, found in enumerate(search.found) if found.verdict == "leads"]


def test_suppliers_move_what_the_exact_fractions_say():
    # "Jolly Company", a textbook-style exercise [stored]; what must be moved is derived [derived].
    found = list(nearest_leads(SUPPLIERS, SHARES, [0, 1, 2], [0.0, 0.0, 0.0], [1]))
    assert pytest.approx([1 / 10, 0, 4 / 5], abs=1e-11) == [moved for moved, _ in found]


# X is 0.4 behind Y; each part moved from quality to price closes 4 points of it.
# To be level with either of two rivals an eighth must move; moved from the second criterion, it leaves neither ahead.
@pytest.mark.parametrize(
    ("points", "shares", "maker", "allowance", "rivals", "moved", "weights"),
    [
        (SUPPLIERS, SHARES, 0, 0.0, [1], 0.1, [0.7, 0.1, 0.1, 0.1]),
        (SUPPLIERS, SHARES, 0, 0.2, [1], 0.05, [0.65, 0.15, 0.1, 0.1]),
        (SUPPLIERS, SHARES, 1, 0.0, [0, 2], 0.0, SHARES.tolist()),
        ([[40, 40, 40], [60, 100, 20], [80, 80, 16]], [0.25, 0.25, 0.5], 0, 0.0, [1, 2], 0.125, [0.25, 0.125, 0.625]),
        ([[1e-9, 1e-9], [0, 0]], [0.5, 0.5], 1, 0.0, [0], 0.0, [0.5, 0.5]),
    ],
    ids=["one rival", "one rival, not wholly", "none ahead", "the first of two that ask as much", "just level"],
)
def test_one_rival_settles_a_maker(points, shares, maker, allowance, rivals, moved, weights, monkeypatch):
    monkeypatch.delattr(module, "nearest_lead")
    found = next(nearest_leads(np.array(points, dtype=float), np.array(shares), [maker], [allowance], rivals))
    assert pytest.approx([moved, *weights], abs=1e-12) == [found[0], *found[1]]


@given(st.integers(0, 10**6), st.sampled_from([1, 10, 50]), st.integers(0, 9))
def test_many_at_once_move_as_much_as_one_by_one_whatever_the_rivals(seed, step, rival):
    random = np.random.default_rng(seed)
    points = random.integers(0, 100 // step + 1, (10, 4)) * float(step)
    shares = random.dirichlet(np.ones(4))
    makers = able(points, shares)
    together = list(nearest_leads(points, shares, makers, [0.0] * len(makers), [rival]))
    for maker, (moved, weights) in zip(makers, together, strict=True):
        assert pytest.approx(nearest_lead(points, shares, maker)[0], abs=1e-9) == moved
        assert pytest.approx(np.abs(weights - shares).sum() / 2, abs=1e-12) == moved
        assert margin_over(points, maker, weights) >= -1e-9


def test_most_are_settled_without_a_programme(monkeypatch):
    points, shares = np.random.default_rng(2).random((500, 5)) * 100, np.full(5, 0.2)
    asked = []
    monkeypatch.setattr(module, "nearest_lead", lambda *a: asked.append(a[2]) or nearest_lead(*a))
    makers = able(points, shares)
    leader = int((points @ shares).argmax())
    list(nearest_leads(points, shares, makers, [0.0] * len(makers), [leader, *makers[:8]]))
    assert 0 < len(asked) < len(makers)


def test_no_weighting_carries_dust():
    points, shares = np.random.default_rng(3).random((200, 6)) * 100, np.full(6, 1 / 6)
    makers = able(points, shares)
    for _, weights in nearest_leads(points, shares, makers, [0.0] * len(makers), makers[:4]):
        assert ((weights == 0) | (weights > 1e-12)).all()


@pytest.mark.parametrize("scores_at_once", [1, 64])
def test_blocks_of_any_size_give_the_same(monkeypatch, scores_at_once):
    points, shares = np.random.default_rng(4).random((60, 4)) * 100, np.full(4, 0.25)
    makers = able(points, shares)
    whole = [moved for moved, _ in nearest_leads(points, shares, makers, [0.0] * len(makers), makers[:2])]
    monkeypatch.setattr(module, "SCORES_AT_ONCE", scores_at_once)
    parts = [moved for moved, _ in nearest_leads(points, shares, makers, [0.0] * len(makers), makers[:2])]
    assert pytest.approx(whole, abs=1e-12) == parts


@pytest.mark.peers
def test_a_linear_programme_moves_as_much():
    optimize = pytest.importorskip("scipy.optimize")
    random = np.random.default_rng(11)
    compared = 0
    for _ in range(40):
        criteria = int(random.integers(2, 7))
        points, shares = random.integers(0, 21, (30, criteria)) * 5.0, random.dirichlet(np.ones(criteria))
        makers = able(points, shares)
        for maker, (moved, _) in zip(
            makers, nearest_leads(points, shares, makers, [0.0] * len(makers), makers[:3]), strict=True
        ):
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
            assert pytest.approx(best.fun, abs=1e-9) == moved
            compared += 1
    assert compared > 150
