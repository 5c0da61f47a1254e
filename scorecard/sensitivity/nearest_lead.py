"""The weighting nearest to the present one under which no maker beats a given one.

Enters: points and shares on the criteria that count, and a maker that can lead. Leaves: how much weight must be moved,
and the weighting, with a proof that no nearer one will do.
"""

from collections.abc import Callable
from typing import Any

import numpy as np

from scorecard.ranking import TIE
from scorecard.sensitivity.dual_simplex import EndlessPivotsError, Numbers, Programme
from scorecard.sensitivity.lead_proofs import SCALE, fractions, margin_over
from scorecard.sensitivity.smallest_change import without_dust
from scorecard.value_functions import Floats

PROVEN = 1e-10
"""How far the weight moved may be from its proven least."""

ROOM = 1e-12
"""Points that fractions allow beyond the allowance: that comes of rounded scores, and exactly a maker may lack more."""


def nearest_lead(
    points: Floats, shares: Floats, maker: int, allowance: float = 0.0, start: Programme | None = None
) -> tuple[float, Floats]:
    """Return the least ½·Σ|w' - w| with which no maker beats a given one, and the weighting w'.

    Parameters
    ----------
    points : (makers, criteria), 0 to 100; at least two makers
    shares : (criteria,), all positive, summing to 1
    maker : its position; it must be able to lead
    allowance : by how many points others may be ahead: what it lacks at best, where it can only be level
    start : ``moves`` of the shares, where it is made for many makers

    Raises
    ------
    ArithmeticError
        If even fractions prove no answer, as when the maker cannot lead.
    """
    try:
        found = _solve(points, shares, maker, allowance, start.copy() if start else moves(shares))
    except EndlessPivotsError:
        found = None
    found = found or _solve(points, shares, maker, allowance + ROOM, moves(shares, exact=True))
    if found is None:
        raise ArithmeticError(f"no nearest weighting for the maker at position {maker}")
    return found


def least_possible_move(points: Numbers, shares: Numbers, maker: int, prices: dict[int, Any], allowance: Any) -> float:
    """Return what must be moved at least, as prices on the rivals' leads prove.

    If the maker must not be behind, then what is moved less each lead at its price is at most what is moved. Of that,
    the least over all weightings, met or not, has a closed form: it pays to move weight from a criterion to the best
    one where the priced leads differ by more than 1. Floating point will not do for prices of millions.

    Parameters
    ----------
    prices : by rival, not negative: weight moved per point of lead
    """
    worth = sum(
        (price * (points[maker] - points[rival]) for rival, price in prices.items()), np.zeros(len(shares), dtype=int)
    )
    pays = np.maximum(worth.max() - worth - 1, 0)
    return float(-(shares @ (worth + pays)) - allowance * sum(prices.values()))


def _solve(
    points: Floats, shares: Floats, maker: int, allowance: float, programme: Programme
) -> tuple[float, Floats] | None:
    """Return the least move and the weighting, or None unless both are proven; rivals are taken in as they matter."""
    number = _number(programme)
    start, own, allowed = number(shares), number(points[maker]), number(allowance)[()]
    weights, taken = shares, {maker}
    while True:
        rival = int((points @ weights).argmax())
        if rival in taken:
            return _proven(points, shares, maker, programme, allowance)
        taken.add(rival)
        leads = (own - number(points[rival])) / SCALE
        behind = leads @ start + allowed / SCALE
        if not programme.require(rival, behind, np.concatenate([leads, -leads])):
            return None
        weights = _weights(shares, programme)


def _number(programme: Programme) -> Callable[[Any], Numbers]:
    """Return what makes of floats the numbers that a programme computes in."""
    return fractions if programme.exact else np.asarray


def moves(shares: Floats, exact: bool = False) -> Programme:
    """Return the programme whose variables are what each criterion gains, then what each loses; each costs half."""
    criteria = len(shares)
    programme = Programme(np.full(2 * criteria, 0.5), exact=exact)
    balance = np.repeat([1, -1], criteria)
    programme.require("no more lost than gained", 0, balance)
    programme.require("no more gained than lost", 0, -balance)
    for criterion, row in enumerate(np.eye(criteria)):
        programme.require(("not below nil", criterion), shares[criterion], np.concatenate([row, -row]))
    return programme


def _weights(shares: Floats, programme: Programme) -> Floats:
    gained, lost = programme.x.astype(float).reshape(2, -1)
    weights: Floats = shares + gained - lost
    return weights


def _proven(
    points: Floats, shares: Floats, maker: int, programme: Programme, allowance: float
) -> tuple[float, Floats] | None:
    """Return the move and its weighting, both computed anew, or None if they fail or might be bettered."""
    weights = without_dust(_weights(shares, programme))
    moved = float(np.abs(weights - shares).sum() / 2)
    number = _number(programme)
    prices = {name: price / SCALE for name, price in programme.multipliers.items() if isinstance(name, int)}
    least = least_possible_move(number(points), number(shares), maker, prices, number(allowance)[()])
    leads = margin_over(points, maker, weights) >= -allowance - TIE and abs(weights.sum() - 1) <= PROVEN
    return (moved, weights) if leads and moved - least <= PROVEN else None
