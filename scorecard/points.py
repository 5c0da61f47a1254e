"""Answers to points: for every maker and criterion the least, the greatest, and what counts in the score.

Unknown gives the least and the greatest points that the criterion can give at all; what counts for unknown and for
ranged answers is set by the criterion's ``unknown``.
"""

from collections.abc import Sequence

import numpy as np

from scorecard.answers import Answers
from scorecard.counting import Counting
from scorecard.criteria import Criterion, UnknownRule
from scorecard.frozen import dataclass
from scorecard.screening import Booleans, allowed_that_pass, allows
from scorecard.value_functions import Floats, PiecewiseLinear


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PointsTable:
    """Points of every maker on every criterion, all of (makers, criteria), 0 to 100.

    Parameters
    ----------
    low, high : least and greatest that the answer allows
    counted : what counts in the score
    known : whether the answer is known, be it as a range
    passing : greatest that an answer can give with which the criterion's limit is passed; None where that is ``high``

    Raises
    ------
    ValueError
        If they differ in shape, or ``counted`` leaves low to high.
    """

    low: Floats
    high: Floats
    counted: Floats
    known: Booleans
    passing: Floats | None = None

    def __post_init__(self) -> None:
        if not self.low.shape == self.high.shape == self.counted.shape == self.known.shape == self.reach.shape:
            raise ValueError("low, high, counted, known and passing must have one shape")
        if not ((self.low <= self.counted) & (self.counted <= self.high)).all():
            raise ValueError("counted points must lie between low and high")

    @property
    def open(self) -> Booleans:
        """(makers, criteria): whether the points could still turn out otherwise."""
        return np.asarray(self.high > self.low)

    @property
    def reach(self) -> Floats:
        """(makers, criteria): greatest points that an answer can give without ruling its maker out."""
        return self.high if self.passing is None else self.passing


def table_of_points(criteria: Sequence[Criterion], countings: Sequence[Counting]) -> PointsTable:
    """Return the points of every maker on every criterion.

    Parameters
    ----------
    criteria : (criteria,)
    countings : (criteria,), each about (makers,)
    """
    ends = _ends(criteria, countings)
    passing = [
        high if c.limit is None else greatest_that_pass(c, counting)
        for c, counting, (_, high) in zip(criteria, countings, ends, strict=True)
    ]
    return PointsTable(
        low=np.stack([low for low, _ in ends], axis=1),
        high=np.stack([high for _, high in ends], axis=1),
        counted=_counted(criteria, ends),
        known=np.stack([counting.typed.known for counting in countings], axis=1),
        passing=np.stack(passing, axis=1),
    )


def table_of_counted(criteria: Sequence[Criterion], countings: Sequence[Counting]) -> Floats:
    """Return ``counted`` of the table of points alone, for a list that is too long for the rest of it.

    Parameters
    ----------
    criteria : (criteria,)
    countings : (criteria,), each about (makers,)

    Returns
    -------
    (makers, criteria), 0 to 100
    """
    return _counted(criteria, _ends(criteria, countings))


def _ends(criteria: Sequence[Criterion], countings: Sequence[Counting]) -> list[tuple[Floats, Floats]]:
    return [least_and_greatest(c, counting.allowed) for c, counting in zip(criteria, countings, strict=True)]


def _counted(criteria: Sequence[Criterion], ends: Sequence[tuple[Floats, Floats]]) -> Floats:
    worths = [counted_points(low, high, c.unknown) for c, (low, high) in zip(criteria, ends, strict=True)]
    return np.stack(worths, axis=1)


def least_and_greatest(criterion: Criterion, allowed: Answers) -> tuple[Floats, Floats]:
    """Return the least and the greatest points that each answer allows.

    Parameters
    ----------
    criterion : with its value function
    allowed : (makers,), after ``per`` and ``steady``; NaN for an unknown choice

    Returns
    -------
    two of (makers,), 0 to 100
    """
    low, high = criterion.value.least_and_greatest(allowed.low, allowed.high)
    least, greatest = criterion.value.extremes()
    return np.where(np.isnan(low), least, low), np.where(np.isnan(high), greatest, high)


def greatest_that_pass(criterion: Criterion, counting: Counting) -> Floats:
    """Return the greatest points that each answer can give with which the criterion's limit is passed.

    Parameters
    ----------
    criterion : with its value function, and a limit or none
    counting : its answers

    Returns
    -------
    (makers,), 0 to 100; of no meaning for a maker that fails the limit whatever the answer
    """
    if criterion.limit is None:
        return least_and_greatest(criterion, counting.allowed)[1]
    if isinstance(criterion.value, PiecewiseLinear):
        return least_and_greatest(criterion, allowed_that_pass(criterion, counting))[1]
    passing = [worth for choice, worth in criterion.value.table if allows(criterion.limit, choice)]
    return np.where(counting.allowed.known, criterion.value.points(counting.allowed.low), max(passing, default=0.0))


def counted_points(low: Floats, high: Floats, rule: UnknownRule) -> Floats:
    """Return what counts in the score between two ends.

    Parameters
    ----------
    low, high : (makers,), 0 to 100; equal where the answer is known exactly
    rule : worst is the low end, best the high end, middle their midpoint, a number is held within them

    Returns
    -------
    (makers,), 0 to 100

    Examples
    --------
    >>> counted_points(np.array([20.0]), np.array([60.0]), 70.0).tolist()
    [60.0]
    """
    if rule == "worst":
        return low
    if rule == "best":
        return high
    if rule == "middle":
        return np.clip((low + high) / 2, low, high)
    return np.clip(np.full_like(low, float(rule)), low, high)
