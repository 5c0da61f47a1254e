"""How far one weight can move, the others keeping their proportions, with the same leader.

Enters: points and shares. Leaves: for each criterion the ends of the range and who takes over at either.
The lead over each rival is a straight line in the share, so the ends are where lines cross nil.
"""

from math import fsum

import numpy as np
from numpy.typing import NDArray

from scorecard.frozen import dataclass
from scorecard.ranking import TIE
from scorecard.value_functions import Floats

WHOLE = 1e-15
"""A criterion that leaves no more share than this to the others has no weight range."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WeightRange:
    """The shares of one criterion with which the leader stays first.

    Parameters
    ----------
    low, high : the ends, as shares from 0 to 1
    overtaken_below, overtaken_above : position of the maker that takes over just beyond; None where nobody does
    """

    low: float
    high: float
    overtaken_below: int | None
    overtaken_above: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class RangeOverAnswers:
    """The weight range when unknown and ranged answers may still turn out either way.

    Parameters
    ----------
    guaranteed : the shares with which the leader is first whatever the answers; None where there is none
    possible : the shares with which some answers leave it first; None where there is none
    """

    guaranteed: WeightRange | None
    possible: WeightRange | None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Leads:
    """The lead over each maker, (makers, criteria), with all share on a criterion and with none on it."""

    all_on: Floats
    none_on: Floats

    def bounds(self) -> tuple[Floats, Floats]:
        """Return the least and the greatest share of each criterion with no lead below nil; crossed where none is."""
        falls, rises = self.all_on < -TIE, self.none_on < -TIE
        start, end = np.maximum(self.none_on, 0), np.maximum(self.all_on, 0)
        high = np.divide(start, start - self.all_on, out=np.ones_like(start), where=falls)
        low = np.divide(-self.none_on, end - self.none_on, out=np.zeros_like(end), where=rises)
        return low.max(axis=0), high.min(axis=0)

    def takers(self, low: Floats, high: Floats) -> tuple[list[int | None], list[int | None]]:
        """Return who takes over just below ``low`` and just above ``high``, by criterion."""
        slope = self.all_on - self.none_on
        below = _steepest(-slope, (self.none_on < -TIE) & (self._at(low) <= TIE))
        above = _steepest(slope, (self.all_on < -TIE) & (self._at(high) <= TIE))
        return below, above

    def _at(self, share: Floats) -> Floats:
        """Return the leads, each criterion having its own share."""
        return share * self.all_on + (1 - share) * self.none_on


def weight_ranges(points: Floats, shares: Floats, leader: int) -> tuple[WeightRange | None, ...]:
    """Return how far each criterion's share can move with the same leader.

    With t on criterion j and the others in proportion, the lead over a rival is t·d + (1-t)·e, where d is the lead in
    points on j and e the lead with no share on j. It is nil at t = e / (e - d). Level counts as leading.

    Parameters
    ----------
    points : (makers, criteria), 0 to 100, in sheet order
    shares : (criteria,), summing to 1, 0 allowed
    leader : position of the leader; in a joint lead, of the first in sheet order

    Returns
    -------
    one a criterion; None where its share is 1. The current share lies inside, ends included.

    References
    ----------
    Weight stability intervals: Mareschal (1988), European Journal of Operational Research 33, 54-64 (from memory).

    Examples
    --------
    >>> price_and_quality = np.array([[100.0, 40.0], [50.0, 100.0]])
    >>> weight_ranges(price_and_quality, np.array([0.75, 0.25]), 0)[1]
    WeightRange(low=0.0, high=0.45454545454545453, overtaken_below=None, overtaken_above=1)
    """
    leads = _leads(points[leader] - points, shares)
    low, high = leads.bounds()
    ranges = _with_takers(leads, np.minimum(low, shares), np.maximum(high, shares))
    return _not_where_whole(ranges, shares)


def ranges_over_answers(low: Floats, high: Floats, shares: Floats, leader: int) -> tuple[RangeOverAnswers, ...]:
    """Return how far each share can move with the leader first whatever the answers, and for some answers.

    Parameters
    ----------
    low, high : (makers, criteria), least and greatest points, 0 to 100
    shares : (criteria,), summing to 1, 0 allowed
    leader : position of the maker whose lead it is

    Returns
    -------
    one a criterion; both ranges None where its share is 1
    """
    guaranteed = _not_where_whole(_ranges(_own_row_nil(low[leader] - high, leader), shares), shares)
    possible = _not_where_whole(_ranges(_own_row_nil(high[leader] - low, leader), shares), shares)
    return tuple(RangeOverAnswers(guaranteed=g, possible=p) for g, p in zip(guaranteed, possible, strict=True))


def typed_end(share: float, others_typed: float) -> float | None:
    """Return the weight to type for a share, the others' typed weights adding up to ``others_typed``.

    Examples
    --------
    >>> typed_end(0.2, 80), typed_end(1.0, 80)
    (20.0, None)
    """
    return None if share >= 1 else share / (1 - share) * others_typed


def _leads(differences: Floats, shares: Floats) -> _Leads:
    """Return the leads at the two ends of every criterion, from differences in points (makers, criteria)."""
    return _Leads(all_on=differences, none_on=differences @ others_in_proportion(shares))


def others_in_proportion(shares: Floats) -> Floats:
    """Return the shares with none on a criterion and the others in proportion: (criteria, left out), a column each.

    Examples
    --------
    >>> others_in_proportion(np.array([0.5, 0.3, 0.2])).T[0].tolist()
    [0.0, 0.6, 0.4]
    """
    others = np.tile(shares[:, np.newaxis], len(shares))
    np.fill_diagonal(others, 0)
    rest = np.array([fsum(column) for column in others.T])
    parts: Floats = np.divide(others, rest, out=np.zeros_like(others), where=rest > 0)
    return parts


def _ranges(differences: Floats, shares: Floats) -> tuple[WeightRange | None, ...]:
    """Return the range of each criterion, or None where there is none, wherever the current share lies."""
    leads = _leads(differences, shares)
    low, high = leads.bounds()
    empty = low > high + WHOLE
    ranges = _with_takers(leads, np.minimum(low, high), high)
    return tuple(None if nothing else found for nothing, found in zip(empty, ranges, strict=True))


def _with_takers(leads: _Leads, low: Floats, high: Floats) -> tuple[WeightRange, ...]:
    columns = zip(low.tolist(), high.tolist(), *leads.takers(low, high), strict=True)
    return tuple(WeightRange(low=a, high=b, overtaken_below=c, overtaken_above=d) for a, b, c, d in columns)


def _not_where_whole(ranges: tuple[WeightRange | None, ...], shares: Floats) -> tuple[WeightRange | None, ...]:
    """Return the ranges, but None for a criterion that leaves nothing to the others."""
    rests = (fsum(np.delete(shares, criterion)) for criterion in range(len(shares)))
    return tuple(found if rest > WHOLE else None for found, rest in zip(ranges, rests, strict=True))


def _own_row_nil(differences: Floats, leader: int) -> Floats:
    """Return the differences with the leader level with itself, whatever is open about it."""
    differences[leader] = 0
    return differences


def _steepest(slope: Floats, crossing: NDArray[np.bool_]) -> list[int | None]:
    """Return by criterion the crossing maker whose line falls most, of equals the first; None where none crosses."""
    falls = np.where(crossing, slope, np.inf)
    least = falls.min(axis=0)
    first = (falls <= least + TIE).argmax(axis=0)
    return [int(maker) if np.isfinite(fall) else None for maker, fall in zip(first, least, strict=True)]
