"""The nearest weightings of many makers at once, wherever one rival settles them.

Enters: points and shares on the criteria that count, makers that can lead, and some strong rivals. Leaves: for each
maker how much weight must be moved, and the weighting. To be level with one rival is the least that must be moved;
where the weighting that does it leaves nobody ahead, it is the nearest. Whom no rival settles, a linear programme does.
"""

from collections.abc import Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from scorecard.ranking import TIE
from scorecard.sensitivity.nearest_lead import moves, nearest_lead
from scorecard.sensitivity.smallest_change import moved_from, without_dust
from scorecard.value_functions import Floats

SCORES_AT_ONCE = 2**18
"""Scores in a block: few enough for it to stay small however many makers there are."""

Booleans = NDArray[np.bool_]


def nearest_leads(
    points: Floats, shares: Floats, makers: Sequence[int], allowances: Sequence[float], rivals: Sequence[int]
) -> Iterator[tuple[float, Floats]]:
    """Yield the least ½·Σ|w' - w| with which no maker beats each of these, and the weighting w'.

    Parameters
    ----------
    points : (makers, criteria), 0 to 100; at least two makers
    shares : (criteria,), all positive, summing to 1
    makers : positions of makers that can lead
    allowances : by how many points others may be ahead of each: what it lacks at best, where it can only be level
    rivals : positions of strong makers, the present leader among them; what is yielded does not depend on them
    """
    programme = moves(shares)
    step = max(1, SCORES_AT_ONCE // len(points))
    for start in range(0, len(makers), step):
        some = np.array(makers[start : start + step])
        allowed = np.array(allowances[start : start + step])
        settled, moved, weights = _settled(points, shares, some, allowed, rivals)
        for at, maker in enumerate(some.tolist()):
            if settled[at]:
                yield float(moved[at]), weights[at]
            else:
                yield nearest_lead(points, shares, maker, float(allowed[at]), programme)


def _settled(
    points: Floats, shares: Floats, makers: NDArray[np.intp], allowances: Floats, rivals: Sequence[int]
) -> tuple[Booleans, Floats, Floats]:
    """Return which makers are settled, (makers,), what each moves, and the weighting, (makers, criteria)."""
    weights = without_dust(_level_with_one(points, shares, points[makers], allowances, rivals))
    scores = weights @ points.T
    behind = scores.max(axis=1) - scores[np.arange(len(makers)), makers]
    return behind <= allowances + TIE, np.abs(weights - shares).sum(axis=1) / 2, weights


def _level_with_one(points: Floats, shares: Floats, own: Floats, allowances: Floats, rivals: Sequence[int]) -> Floats:
    """Return the weightings, (makers, criteria), that bring each maker level with the one rival that asks for most."""
    least, nearest = np.zeros(len(own)), np.tile(shares, (len(own), 1))
    for rival in rivals:
        leads = points[rival] - own
        taken = moved_from(leads, shares, leads @ shares - allowances)
        moved = taken.sum(axis=1)
        weights = shares - taken
        weights[np.arange(len(own)), leads.argmin(axis=1)] += moved
        more = moved > least
        least[more], nearest[more] = moved[more], weights[more]
    return nearest
