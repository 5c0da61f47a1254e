"""In what part of all weightings one maker beats another, and the mean rank that follows, both exactly.

Enters: points and shares. Leaves: the part of the simplex of weightings on which each maker is ahead of each other.
"""

from collections.abc import Iterator

import numpy as np

from scorecard.frozen import dataclass
from scorecard.ranking import TIE
from scorecard.value_functions import Floats

PAIRS_AT_ONCE = 2048
"""Pairs of makers worked on together: few enough for their arrays to stay in the processor's cache."""

NEXT_TO_NIL = 1e-200
"""Added to every gain: makes an absent one weigh nothing beside a loss, and spares a division of nil by nil."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Duels:
    """Every maker against every other.

    Parameters
    ----------
    beats : (makers, makers), the part of all weightings in which the row's maker beats the column's; both are 0 for
        identical makers, else the two of a pair add up to 1
    mean_ranks : (makers,), from 1
    """

    beats: Floats
    mean_ranks: Floats


def duels(points: Floats, shares: Floats) -> Duels:
    """Return in what part of all weightings each maker beats each other, and the mean ranks.

    Weightings are uniform on the simplex of the criteria of positive share. Makers no further apart than ``TIE`` on
    each of these are identical. A mean rank is 1 and the sum of the parts in which the others beat the maker.

    Parameters
    ----------
    points : (makers, criteria), 0 to 100
    shares : (criteria,), summing to 1, 0 allowed

    References
    ----------
    The part is a divided difference of max(x, 0)^(n-1) at the differences in points, by the Hermite-Genocchi formula
    (derived; see ``part_ahead``).

    Examples
    --------
    >>> duels(np.array([[60.0, 0.0], [0.0, 30.0]]), np.array([0.5, 0.5])).beats.round(4).tolist()
    [[0.0, 0.6667], [0.3333, 0.0]]
    """
    counted = points[:, shares > 0]
    beats = np.zeros((len(points), len(points)))
    for one, other in _pairs(len(points)):
        differences = counted[one] - counted[other]
        apart = np.abs(differences).max(axis=1) > TIE
        ahead = np.where(apart, part_ahead(differences), 0.0)
        beats[one, other] = ahead
        beats[other, one] = np.where(apart, 1 - ahead, 0.0)
    return Duels(beats=beats, mean_ranks=1 + beats.sum(axis=0))


def part_ahead(differences: Floats) -> Floats:
    """Return the part of all weightings in which a weighted sum of differences is above nil.

    With one loss u and one gain v besides some others, G(losses, gains) = (v·G(without u) + u·G(without v)) / (u + v);
    it is 1 without losses and 0 without gains. Every step is a mean of two parts, so nothing cancels. Differences of
    nil count for nothing. Losses and gains are taken in the order of the criteria: any order gives the same.

    Parameters
    ----------
    differences : (pairs, criteria)

    Returns
    -------
    (pairs,), 0 to 1; without meaning where all differences are nil
    """
    by_criterion = np.ascontiguousarray(differences.T)
    gains, losses = np.maximum(by_criterion, 0) + NEXT_TO_NIL, np.maximum(-by_criterion, 0)
    parts = np.ones_like(by_criterion)  # by number of gains taken in; no loss yet
    for loss in losses:
        fewer_gains = np.zeros_like(loss)
        for part, gain in zip(parts, gains, strict=True):
            part *= gain
            fewer_gains *= loss
            part += fewer_gains
            part /= gain + loss
            fewer_gains[:] = part
    return np.where((by_criterion > 0).any(axis=0), parts[-1], 0.0)


def _pairs(makers: int) -> Iterator[tuple["np.ndarray[tuple[int, ...], np.dtype[np.intp]]", ...]]:
    """Yield the positions of the first and the second maker of every pair, so many pairs at once."""
    one, other = np.triu_indices(makers, 1)
    for start in range(0, len(one), PAIRS_AT_ONCE):
        yield one[start : start + PAIRS_AT_ONCE], other[start : start + PAIRS_AT_ONCE]
