"""Random weightings: uniform on all of them, on those in a stated order of importance, or on those near the given one.

Enters: shares, the kind and a seed. Leaves: blocks of weightings without end, the same whatever the size of the blocks.
"""

from collections.abc import Iterator, Sequence
from itertools import combinations, tee
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from scorecard.frozen import dataclass
from scorecard.value_functions import Floats

Kind = Literal["any", "ordered", "near"]

KINDS: tuple[Kind, ...] = ("any", "ordered", "near")

SAME_IMPORTANCE = 1e-12
"""Shares no further apart than this have no order of importance between them."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Weightings:
    """A stream of random weightings over the criteria of positive share; the others keep weight 0.

    Parameters
    ----------
    kind : "any", uniform on the simplex; "ordered", uniform on its part in the order of the shares, without order
        between equal ones; "near", uniform on its part with each weight within share·(1 ± spread)
    shares : (criteria,), summing to 1, 0 allowed
    seed : 0 or more
    spread : above 0, at most 1; for "near" alone

    Raises
    ------
    ValueError
        If the spread is not above 0 and at most 1, or no share is positive.
    """

    kind: Kind
    shares: Floats
    seed: int = 1
    spread: float = 0.25

    def __post_init__(self) -> None:
        if not 0 < self.spread <= 1:
            raise ValueError("the spread must be above 0 and at most 1")
        if not (self.shares > 0).any():
            raise ValueError("at least one share must be above 0")

    @property
    def counted(self) -> NDArray[np.intp]:
        """The positions of the criteria of positive share, which are the columns of every block."""
        return np.flatnonzero(self.shares > 0)

    def blocks(self, rows: int) -> Iterator[Floats]:
        """Yield weightings without end, (rows, criteria of positive share), each row summing to 1."""
        shares = self.shares[self.counted]
        random = np.random.default_rng((self.seed, 0))
        if self.kind == "near":
            return _near(shares, self.spread * shares, random, rows)
        drawn = _anywhere(len(shares), random, rows)
        return (in_order(block, shares) for block in drawn) if self.kind == "ordered" else drawn

    def uniforms(self, columns: int, rows: int) -> Iterator[Floats]:
        """Yield numbers from 0 to 1 without end, (rows, columns), from a stream of their own.

        Each block is good until the next is asked for.
        """
        random = np.random.default_rng((self.seed, 1))
        drawn = np.empty((rows, columns))
        while True:
            yield random.random(out=drawn)


def blocks_of_each(streams: Sequence[Weightings], rows: int) -> list[Iterator[Floats]]:
    """Return the blocks of streams of one seed and the same shares; those of "any" also serve "ordered"."""
    by_kind = {stream.kind: stream.blocks(rows) for stream in streams}
    if {"any", "ordered"} <= by_kind.keys():
        by_kind["any"], drawn = tee(by_kind["any"])
        shares = streams[0].shares[streams[0].counted]
        by_kind["ordered"] = (in_order(block, shares) for block in drawn)
    return [by_kind[stream.kind] for stream in streams]


def in_order(weights: Floats, shares: Floats) -> Floats:
    """Return weightings with each row's values put in the order of the shares.

    The result is uniform on the part of the simplex in that order: whatever the sorted values of a uniform row, it is
    as likely to have them in any order, so which criterion drew which may be forgotten; and among equal shares the
    values keep the order in which they were drawn, each of which is again as likely.

    Parameters
    ----------
    weights : (rows, criteria), uniform on the simplex
    shares : (criteria,)
    """
    descending = np.ascontiguousarray(np.sort(weights, axis=1)[:, ::-1].T)
    arranged = np.empty_like(descending)
    start = 0
    for group in _groups(shares):
        values = descending[start : start + len(group)]
        arranged[group] = _taken(values, _places(weights.T[group])) if len(group) > 1 else values
        start += len(group)
    return arranged.T


def _groups(shares: Floats) -> list[NDArray[np.intp]]:
    """Return the positions of the criteria, most important first, those of equal share together."""
    order = np.argsort(-shares, kind="stable")
    steps = np.flatnonzero(-np.diff(shares[order]) > SAME_IMPORTANCE) + 1
    return np.split(order, steps)


def _places(values: Floats) -> NDArray[np.intp]:
    """Return each value's place in its column, from 0 for the greatest; of equal ones the upper comes first."""
    places = np.zeros(values.shape, dtype=np.intp)
    for one, below in combinations(range(len(values)), 2):  # for few values quicker than sorting
        stays = values[one] >= values[below]
        places[below] += stays
        places[one] += ~stays
    return places


def _taken(values: Floats, places: NDArray[np.intp]) -> Floats:
    """Return from each column the values at places in it: ``take_along_axis``, in half its time."""
    taken: Floats = np.take(values, places * values.shape[1] + np.arange(values.shape[1]), mode="clip")
    return taken


def _anywhere(criteria: int, random: np.random.Generator, rows: int) -> Iterator[Floats]:
    """Yield uniform weightings: exponential draws, by inversion, over their sum.

    Plain uniform draws over their sum would not be uniform: they favour the middle.
    """
    while True:
        drawn = random.random((rows, criteria))
        np.log1p(np.negative(drawn, out=drawn), out=drawn)
        drawn /= drawn.sum(axis=1, keepdims=True)
        yield drawn if criteria > 1 else np.ones((rows, 1))


def _near(shares: Floats, reach: Floats, random: np.random.Generator, rows: int) -> Iterator[Floats]:
    """Yield weightings uniform on the part of the simplex within ``reach`` of the shares, so many rows at once."""
    kept = np.empty((0, len(shares)))
    while True:
        while len(kept) < rows:
            kept = np.concatenate([kept, _fitting(shares, reach, random.random((rows, len(shares) - 1)))])
        yield kept[:rows]
        kept = kept[rows:]


def _fitting(shares: Floats, reach: Floats, drawn: Floats) -> Floats:
    """Return the weightings within reach that uniform numbers give: one criterion takes up what the others move.

    The others' weights fix the weighting, by a map that stretches all parts of the simplex alike. So weights uniform
    within their own reach, kept only where the last criterion then lies within its own, are uniform on what is kept.
    The last is the criterion of widest reach, so that at least about one row in the root of their number is kept.

    Parameters
    ----------
    drawn : (rows, criteria - 1), 0 to 1
    """
    last = int(reach.argmax())
    others = np.delete(reach, last)
    moved = drawn * (2 * others)
    moved -= others
    rest = moved @ np.full(len(others), -1.0)
    fits = np.flatnonzero(np.abs(rest) <= reach[last])
    kept = moved[fits]
    weights = np.empty((len(fits), len(shares)))
    weights[:, :last], weights[:, last], weights[:, last + 1 :] = kept[:, :last], rest[fits], kept[:, last:]
    weights += shares
    return weights
