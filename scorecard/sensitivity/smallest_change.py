"""The least weight moved between criteria that makes another maker draw level with the leader.

Enters: points and shares. Leaves: against every maker, how much is moved and the weighting that it gives.
Moving a part of weight from one criterion to another narrows the lead by that part times the difference of the leads
on the two. So all of it goes to the criterion where the lead is least, first from where the lead is greatest.
"""

from dataclasses import dataclass

import numpy as np

from scorecard.sensitivity.weight_ranges import TIE
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
    counted = np.flatnonzero(shares > 0)
    leads = points[leader, counted] - points[:, counted]
    taken = moved_from(leads, shares[counted], _to_close(leads, shares[counted]))
    moved = taken.sum(axis=1)
    changed = np.zeros_like(points, dtype=float)
    changed[:, counted] = without_dust(given_to_least(leads, shares[counted], taken))
    impossible = leads.min(axis=1) > TIE
    moved[impossible], changed[impossible] = np.nan, np.nan
    return SmallestChanges(moved=moved, shares=changed)


def moved_from(leads: Floats, shares: Floats, to_close: Floats) -> Floats:
    """Return the weight taken from each criterion, (makers, criteria), so that leads close: the greatest first.

    Parameters
    ----------
    leads : (makers, criteria), points by which someone is ahead of each maker
    shares : (criteria,), all positive, summing to 1
    to_close : (makers,), how much of the lead, in points of score, is to be closed
    """
    order = np.argsort(-leads, axis=1, kind="stable")
    taking = np.take_along_axis(leads - leads.min(axis=1, keepdims=True), order, axis=1)
    available = shares[order]
    gains = available * taking
    still = to_close[:, np.newaxis] - (np.cumsum(gains, axis=1) - gains)
    ratio = np.divide(still, taking, out=np.zeros_like(still), where=taking > 0)
    moved = np.empty_like(leads)
    np.put_along_axis(moved, order, np.clip(ratio, 0, available), axis=1)
    return moved


def given_to_least(leads: Floats, shares: Floats, taken: Floats) -> Floats:
    """Return the shares, (makers, criteria), once what is taken goes to the criterion where each lead is least."""
    weights = shares - taken
    weights[np.arange(len(leads)), leads.argmin(axis=1)] += taken.sum(axis=1)
    return weights


def without_dust(weights: Floats) -> Floats:
    """Return weightings, in rows or one, without the parts that are only what rounding left of nil."""
    kept = np.where(weights > DUST, weights, 0.0)
    return np.where((kept == weights).all(axis=-1, keepdims=True), weights, kept / kept.sum(axis=-1, keepdims=True))


def _to_close(leads: Floats, shares: Floats) -> Floats:
    """Return the lead to be closed, (makers,): nothing where the two are level already."""
    lead = leads @ shares
    return np.where(lead > TIE, lead, 0)
