"""Which maker beats which on everything.

Enters: points and shares. Leaves: pairs. Such a pair keeps its order under every weighting.
"""

from collections.abc import Iterator

import numpy as np

from scorecard.ranking import TIE
from scorecard.value_functions import Floats

COMPARISONS_AT_ONCE = 2**18
"""Points compared together: few enough for their arrays to stay small."""


def beats_on_everything(points: Floats, shares: Floats) -> list[tuple[int, int]]:
    """Return who beats whom on everything: dominance.

    The first is at least as good on every criterion of positive share and better on one; points within ``TIE`` of one
    another are the same. Everyone is compared with everyone, so the list may be as long as half their square.

    Parameters
    ----------
    points : (makers, criteria), 0 to 100
    shares : (criteria,), summing to 1, 0 allowed

    Returns
    -------
    positions of the winner and the loser, in sheet order of winners, then of losers

    Examples
    --------
    >>> beats_on_everything(np.array([[50.0, 50.0], [60.0, 50.0], [0.0, 90.0]]), np.array([0.5, 0.5]))
    [(1, 0)]
    """
    return list(_pairs(points[:, shares > 0]))


def _pairs(points: Floats) -> Iterator[tuple[int, int]]:
    """Yield winners and losers, comparing some makers with all others at a time."""
    step = max(1, COMPARISONS_AT_ONCE // points.size)
    for start in range(0, len(points), step):
        ahead = points[start : start + step, np.newaxis] - points
        wins = (ahead >= -TIE).all(axis=2) & (ahead > TIE).any(axis=2)
        yield from zip((np.nonzero(wins)[0] + start).tolist(), np.nonzero(wins)[1].tolist(), strict=True)
