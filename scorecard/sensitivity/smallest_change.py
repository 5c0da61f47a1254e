"""The least weight moved between criteria that makes another maker draw level with the leader.

Enters: points and shares. Leaves: against every maker, how much is moved and the weighting that it gives.
Moving a part of weight from one criterion to another narrows the lead by that part times the difference of the leads
on the two. So all of it goes to the criterion where the lead is least, first from where the lead is greatest.
"""

import numpy as np

from scorecard.frozen import dataclass
from scorecard.ranking import TIE
from scorecard.value_functions import Floats

DUST = 1e-12
"""A weight no greater than this is nil."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SmallestChanges:
    """The smallest change against every maker, in sheet order.

    Parameters
    ----------
    moved : (makers,), the part of all weight that is moved, 0 to 1; NaN where no weighting brings the maker level
    shares : (makers, criteria), the weighting with the maker level; NaN likewise
    """

    moved: Floats
    shares: Floats

    def against(self, maker: int) -> tuple[float, Floats] | None:
        """Return what is moved and the shares it gives, or None where no weighting brings the maker level."""
        moved = float(self.moved[maker])
        return None if np.isnan(moved) else (moved, self.shares[maker])


def smallest_changes(points: Floats, shares: Floats, leader: int) -> SmallestChanges:
    """Return the least ½·Σ|w' - w| that brings each maker level with the leader.

    Exact: a fractional knapsack, solved by sorting. A criterion of weight 0 stays at 0. A joint leader has moved 0, as
    has the leader itself. Of several least changes, the one whose criteria stand first is given.

    Parameters
    ----------
    points : (makers, criteria), 0 to 100, in sheet order
    shares : (criteria,), summing to 1, 0 allowed
    leader : position of the leader; in a joint lead, of the first in sheet order

    References
    ----------
    The fractional knapsack is filled greedily: Dantzig (1957), Operations Research 5, 266-277 (from memory).

    Examples
    --------
    >>> changes = smallest_changes(np.array([[100.0, 40.0], [50.0, 100.0]]), np.array([0.75, 0.25]), 0)
    >>> changes.moved.round(4).tolist(), changes.shares[1].round(4).tolist()
    ([0.0, 0.2045], [0.5455, 0.4545])
    """
    if np.count_nonzero(shares) == len(shares):
        return _changes(points, shares, leader)
    counted = np.flatnonzero(shares)
    found = _changes(points[:, counted], shares[counted], leader)
    spread = np.zeros_like(points, dtype=float)
    spread[:, counted] = found.shares
    spread[np.isnan(found.moved)] = np.nan
    return SmallestChanges(moved=found.moved, shares=spread)


def _changes(points: Floats, shares: Floats, leader: int) -> SmallestChanges:
    """Return the smallest changes where every share is positive."""
    leads = np.ascontiguousarray(points[leader] - points)
    lead = leads @ shares
    lead *= lead > TIE
    taken = moved_from(leads, shares, lead)
    least = leads.argmin(axis=1)
    least += np.arange(0, leads.size, len(shares))
    moved = np.add.reduce(taken, axis=1)
    changed = np.subtract(shares, taken, out=taken)
    changed.reshape(-1)[least] += moved
    changed = without_dust(changed)
    impossible = leads.take(least) > TIE
    if np.count_nonzero(impossible):
        moved[impossible] = changed[impossible] = np.nan
    return SmallestChanges(moved=moved, shares=changed)


def moved_from(leads: Floats, shares: Floats, to_close: Floats) -> Floats:
    """Return the weight taken from each criterion, (makers, criteria), so that leads close: the greatest first.

    Parameters
    ----------
    leads : (makers, criteria), points by which someone is ahead of each maker
    shares : (criteria,), all positive, summing to 1
    to_close : (makers,), how much of the lead, in points of score, is to be closed
    """
    order = (-leads).argsort(axis=1, kind="stable")
    available = shares.take(order)
    order += np.arange(0, leads.size, leads.shape[1])[:, np.newaxis]  # from here on, positions in the whole
    taking = leads.take(order)
    taking -= taking[:, -1:]
    still = available * taking
    still -= np.add.accumulate(still, axis=1)
    still += to_close[:, np.newaxis]
    parts = np.divide(still, taking, out=np.zeros_like(still), where=taking > 0)
    np.minimum(parts, available, out=parts)
    np.maximum(parts, 0, out=parts)
    still.put(order, parts)
    return still


def without_dust(weights: Floats) -> Floats:
    """Return weightings, in rows or one, without the parts that are only what rounding left of nil."""
    dust = weights <= DUST
    dust &= weights != 0
    if not np.count_nonzero(dust):
        return weights
    kept = np.where(dust, 0.0, weights)
    return np.where(dust.any(axis=-1, keepdims=True), kept / kept.sum(axis=-1, keepdims=True), weights)
