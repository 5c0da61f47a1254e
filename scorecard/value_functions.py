"""The shapes that turn an answer into points, 0 to 100: straight lines between knots, and a table of choices.

Enters: answers as numbers, or as positions in a list of choices, alone or as ranges. Leaves: points.
Each shape is one frozen class with the same methods; a new shape is a new class, with its own test.
"""

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import isclose

import numpy as np
from numpy.typing import NDArray

from scorecard.frozen import dataclass

Floats = NDArray[np.float64]

Stretches = tuple[tuple[float, float], ...]
"""Stretches of answers, each from low to high, infinite where open."""

HAIR = 1e-9  # points nearer than this are the same


@dataclass(frozen=True, slots=True)
class PiecewiseLinear:
    """Points along straight lines between knots, level beyond the first and the last.

    Parameters
    ----------
    knots : at least two (answer, points), answers strictly increasing, points 0 to 100

    References
    ----------
    Piecewise linear single-attribute value functions: Keeney and Raiffa (1976), ch. 3 (from memory).

    Examples
    --------
    >>> years = PiecewiseLinear(((0, 0), (3, 50), (10, 100)))
    >>> years.points(np.array([0.0, 1.5, 3.0, 50.0])).tolist()
    [0.0, 25.0, 50.0, 100.0]
    """

    knots: tuple[tuple[float, float], ...]

    def _columns(self) -> tuple[Floats, Floats]:
        table = np.asarray(self.knots, dtype=float)
        return table[:, 0], table[:, 1]

    def points(self, answers: Floats) -> Floats:
        """Return the points of each answer.

        Parameters
        ----------
        answers : (makers,), in the criterion's unit; NaN where unknown

        Returns
        -------
        (makers,), 0 to 100; NaN where the answer is NaN
        """
        at, worth = self._columns()
        return np.asarray(np.interp(answers, at, worth), dtype=float)

    def least_and_greatest(self, low: Floats, high: Floats) -> tuple[Floats, Floats]:
        """Return the least and the greatest points over each range: at an end, or at a knot inside it.

        Parameters
        ----------
        low, high : (makers,), low at most high; infinite where open, NaN where unknown

        Returns
        -------
        two of (makers,), 0 to 100
        """
        least = self.points(low)
        greatest = least.copy()
        ranges = np.flatnonzero(low != high)  # most answers are one number
        least[ranges], greatest[ranges] = self._over_ranges(low[ranges], high[ranges])
        return least, greatest

    def _over_ranges(self, low: Floats, high: Floats) -> tuple[Floats, Floats]:
        ends = self.points(low), self.points(high)
        least, greatest = np.minimum(*ends), np.maximum(*ends)
        for at, worth in self.knots:
            inside = (low < at) & (at < high)
            least = np.where(inside, np.minimum(least, worth), least)
            greatest = np.where(inside, np.maximum(greatest, worth), greatest)
        return least, greatest

    def extremes(self, within: tuple[float, float] | None = None) -> tuple[float, float]:
        """Return the least and the greatest points of any answer, or of any within two bounds."""
        low, high = within or (-np.inf, np.inf)
        least, greatest = self.least_and_greatest(np.array([low]), np.array([high]))
        return float(least[0]), float(greatest[0])

    def ends(self) -> tuple[float, float]:
        """Return the first and the last knot."""
        return self.knots[0][0], self.knots[-1][0]

    def answers_above(self, points: float) -> Stretches:
        """Return the stretches of answers worth clearly more than so many points; at a finite end they are level.

        Examples
        --------
        >>> PiecewiseLinear(((1, 100), (2, 0))).answers_above(50)
        ((-inf, 1.5),)
        """
        return _above(self.knots, points)

    def answers_below(self, points: float) -> Stretches:
        """Return the stretches of answers worth clearly less than so many points; at a finite end they are level.

        Examples
        --------
        >>> PiecewiseLinear(((1, 100), (2, 0))).answers_below(50)
        ((1.5, inf),)
        """
        return _above([(at, -worth) for at, worth in self.knots], -points)


@dataclass(frozen=True, slots=True)
class Choices:
    """Points by a table of choices; an answer is a choice's position in the table.

    Parameters
    ----------
    table : at least one (choice, points), points 0 to 100

    Examples
    --------
    >>> sample = Choices((("free", 100), ("paid", 60)))
    >>> sample.points(np.array([1.0, 0.0])).tolist()
    [60.0, 100.0]
    """

    table: tuple[tuple[str, float], ...]

    def names(self) -> tuple[str, ...]:
        """Return the choices as the criteria file spells them."""
        return tuple(name for name, _ in self.table)

    def points(self, answers: Floats) -> Floats:
        """Return the points of each answer.

        Parameters
        ----------
        answers : (makers,), positions in the table, from 0; NaN where unknown

        Returns
        -------
        (makers,), 0 to 100; NaN where the answer is NaN
        """
        known = ~np.isnan(answers)
        worth = np.asarray([points for _, points in self.table], dtype=float)
        return np.where(known, worth[np.where(known, answers, 0).astype(int)], np.nan)

    def least_and_greatest(self, low: Floats, high: Floats) -> tuple[Floats, Floats]:  # noqa: ARG002 - one choice, no range
        """Return the points of each answer twice: a choice has no range."""
        points = self.points(low)
        return points, points

    def extremes(self, within: tuple[float, float] | None = None) -> tuple[float, float]:  # noqa: ARG002 - no bounds
        """Return the least and the greatest points of the table."""
        worth = [float(points) for _, points in self.table]
        return min(worth), max(worth)

    def ends(self) -> tuple[float, float]:
        """Return the first and the last position."""
        return 0.0, len(self.table) - 1.0

    def answers_above(self, points: float) -> Stretches:
        """Return the positions of the choices worth clearly more than so many points, each as a stretch of one.

        Examples
        --------
        >>> Choices((("free", 100), ("paid", 60))).answers_above(70)
        ((0.0, 0.0),)
        """
        return tuple((float(at), float(at)) for at, (_, worth) in enumerate(self.table) if worth > points + HAIR)

    def answers_below(self, points: float) -> Stretches:
        """Return the positions of the choices worth clearly less than so many points, each as a stretch of one.

        Examples
        --------
        >>> Choices((("free", 100), ("paid", 60))).answers_below(70)
        ((1.0, 1.0),)
        """
        return tuple((float(at), float(at)) for at, (_, worth) in enumerate(self.table) if worth < points - HAIR)


def _above(knots: Sequence[tuple[float, float]], points: float) -> Stretches:
    whole: list[tuple[float, float]] = []
    for start, end in pairwise([(-np.inf, knots[0][1]), *knots, (np.inf, knots[-1][1])]):
        part = _part_above(start, end, points)
        if part is not None and whole and start[1] > points + HAIR:
            whole[-1] = (whole[-1][0], part[1])
        elif part is not None:
            whole.append(part)
    return tuple(whole)


def _part_above(start: tuple[float, float], end: tuple[float, float], points: float) -> tuple[float, float] | None:
    (x0, y0), (x1, y1) = start, end
    starts_above, ends_above = y0 > points + HAIR, y1 > points + HAIR
    if starts_above == ends_above:
        return (x0, x1) if starts_above else None
    crossing = min(max(x0 + (points - y0) / (y1 - y0) * (x1 - x0), x0), x1)
    return (x0, crossing) if starts_above else (crossing, x1)


def joined(stretches: Iterable[tuple[float, float]]) -> Stretches:
    """Return stretches from the lowest up, those that overlap made one; where two only touch, neither has the point.

    Two that overlap by no more than a hair only touch.

    Examples
    --------
    >>> joined([(5, 7), (1, 3), (2, 5), (8, 8), (8, 8)])
    ((1, 5), (5, 7), (8, 8))
    """
    whole: list[tuple[float, float]] = []
    for low, high in sorted(set(stretches)):
        start, end = whole[-1] if whole else (low, low)
        if isclose(low, end, rel_tol=HAIR, abs_tol=HAIR):
            low = max(low, end)
        if low < end:
            whole[-1] = (start, max(high, end))
        elif low <= high:
            whole.append((low, high))
    return tuple(whole)
