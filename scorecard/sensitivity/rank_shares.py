"""How often, over random weightings, each maker takes each rank, or the first alone.

Enters: least and greatest points, and a stream of weightings. Leaves: shares of the draws, with their half-width.
Draws are worked through in small blocks, so that any number of them needs the same memory.
"""

from collections.abc import Sequence
from itertools import islice

import numpy as np
from numpy.typing import NDArray

from scorecard.frozen import dataclass
from scorecard.ranking import TIE
from scorecard.sensitivity.weightings import Weightings, blocks_of_each
from scorecard.value_functions import Floats

FIRST_DRAWS, MOST_DRAWS = 2**14, 2**20
DRAWS_OF_FIRST = 2**14
TARGET = 0.005
"""More is drawn until no share's 95 % half-width is above this."""

SCORES_AT_ONCE = 2**17
"""Scores, and numbers drawn for them, in a block: few enough to stay in the processor's cache."""

MOST_AT_ONCE = 2048
"""Weightings in a block at most; the number of draws is a multiple of it, whatever the size of the blocks."""

ALIKE_DECIMALS = 9
"""Makers whose points are equal to so many decimals are identical."""

SPREAD_AT_MOST = 2**12
"""Open answers times makers up to which one product is quicker than adding answer by answer."""

WHOLE_BITS, KEY_BITS = 7, 62
"""A score of 0 to 100 takes 7 bits before the point; a key has 62 in all, clear of the sign."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class RankShares:
    """How often each maker took each rank.

    Parameters
    ----------
    draws : weightings drawn
    half_width : the widest 95 % half-width of all the shares
    shares : (makers, ranks), parts of the draws; identical makers share the better rank
    """

    draws: int
    half_width: float
    shares: Floats


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FirstShares:
    """How often each maker came first: as ``RankShares``, with shares (makers,)."""

    draws: int
    half_width: float
    shares: Floats


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Field:
    """The makers without their doubles.

    Parameters
    ----------
    base, width : (different makers, criteria), the least points and how much more there may be
    of : (makers,), which of the different makers each one is
    sizes : (different makers,), how many makers each one stands for
    open_cells : by criterion, the different makers whose answer is open
    """

    base: Floats
    width: Floats
    of: NDArray[np.intp]
    sizes: NDArray[np.intp]
    open_cells: tuple[NDArray[np.intp], ...]

    @property
    def open_answers(self) -> int:
        """How many answers are open."""
        return sum(map(len, self.open_cells))

    def rows_at_once(self) -> int:
        """Return how many weightings to work on together: a power of two, so that they add up to any larger one."""
        wanted = SCORES_AT_ONCE // (len(self.base) + self.base.shape[1] + self.open_answers)
        return _power_of_two(min(max(wanted, 128), MOST_AT_ONCE))


def rank_shares_of_each(
    low: Floats, high: Floats, streams: Sequence[Weightings], target: float = TARGET
) -> list[RankShares]:
    """Return how often each maker takes each rank over random weightings: the rank acceptability indices.

    Points that are open, from ``low`` to ``high``, are drawn uniformly with each weighting. Scores within ``TIE`` of
    the best of their group share its rank, and so do identical makers. Meant for up to 200 makers.

    Parameters
    ----------
    low, high : (makers, criteria), least and greatest points, 0 to 100
    streams : to draw from, of one seed and the same shares; what they draw alike is drawn once
    target : from 16,384 draws on, more are added until each share's 95 % half-width is at most this, or to 2^20

    Returns
    -------
    one for each stream, each what it gives alone

    References
    ----------
    Rank acceptability indices: Lahdelma and Salminen (2001), Operations Research 49, 444-454 (from memory).

    Examples
    --------
    >>> points = np.array([[100.0, 0.0], [0.0, 100.0], [60.0, 60.0]])
    >>> (found,) = rank_shares_of_each(points, points, [Weightings(kind="any", shares=np.array([0.5, 0.5]))])
    >>> found.draws, found.shares[:, 0].round(2).tolist()
    (38912, [0.4, 0.4, 0.2])
    """
    field = _field(low, high, streams[0].counted)
    scorer, counter, rows = _Scorer(field, -_scale(field)), _Counter(field, len(low)), field.rows_at_once()
    tallies = [_Tally(field, len(low), target) for _ in streams]
    blocks, uniforms = blocks_of_each(streams, rows), streams[0].uniforms(field.open_answers, rows)
    while short := [(tally, block) for tally, block in zip(tallies, blocks, strict=True) if tally.wants_more()]:
        drawn = next(uniforms)
        for tally, block in short:
            tally.add(counter.counts(scorer.scores(next(block), drawn)), rows)
    return [tally.shares() for tally in tallies]


def first_shares(low: Floats, high: Floats, weightings: Weightings, draws: int = DRAWS_OF_FIRST) -> FirstShares:
    """Return how often each maker comes first over random weightings, for thousands of makers.

    Scores are in single precision: makers closer than about a hundred-thousandth of a point are told apart by chance.

    Parameters
    ----------
    low, high : (makers, criteria), least and greatest points, 0 to 100
    weightings : the stream to draw from
    draws : a power of two, 2,048 at least
    """
    field = _field(low, high, weightings.counted)
    scorer, rows = _Scorer(field, np.float32(1)), field.rows_at_once()
    counts, uniforms = np.zeros(len(field.base), dtype=np.int64), weightings.uniforms(field.open_answers, rows)
    for weights in islice(weightings.blocks(rows), draws // rows):
        counts += np.bincount(scorer.scores(weights, next(uniforms)).argmax(axis=1), minlength=len(counts))
    shares = counts / draws
    return FirstShares(draws=draws, half_width=_half_width(shares, draws), shares=shares[field.of])


def _power_of_two(number: int) -> int:
    """Return the greatest power of two that is not above a number.

    Examples
    --------
    >>> _power_of_two(4096), _power_of_two(4095), _power_of_two(1)
    (4096, 2048, 1)
    """
    return 1 << (number.bit_length() - 1)


def _draws_wanted(counts: NDArray[np.int64], draws: int, target: float) -> int:
    """Return how many draws bring the widest half-width to the target, by what was drawn so far."""
    needed = draws * (_half_width(counts / draws, draws) / target) ** 2
    return min(-int(-needed // MOST_AT_ONCE) * MOST_AT_ONCE, MOST_DRAWS)


def _half_width(shares: Floats, draws: int) -> float:
    """Return the widest 95 % half-width of shares found in so many draws, by the normal approximation."""
    return float(1.96 * np.sqrt((shares * (1 - shares)).max() / draws))


def _field(low: Floats, high: Floats, counted: NDArray[np.intp]) -> _Field:
    """Return the makers without the doubles of those whose answers are all known."""
    base, width = low[:, counted], (high - low)[:, counted]
    first, of, sizes = np.unique(_first_alike(base, width), return_inverse=True, return_counts=True)
    open_cells = tuple(np.flatnonzero(column > 0) for column in width[first].T)
    return _Field(base=base[first], width=width[first], of=of, sizes=sizes, open_cells=open_cells)


def _first_alike(base: Floats, width: Floats) -> NDArray[np.intp]:
    """Return for each maker the position of the first one identical to it, which is its own where an answer is open.

    Sums of points find the few makers that may have a double, so that only these need comparing in full.
    """
    labels, closed = np.arange(len(base)), np.flatnonzero((width <= 0).all(axis=1))
    sums = base[closed] @ np.sqrt(2 + np.arange(base.shape[1]))
    order = np.argsort(sums)
    close = np.diff(sums[order], prepend=-np.inf, append=np.inf) <= 1000 * TIE
    suspects = np.sort(closed[order[close[1:] | close[:-1]]])
    if len(suspects):
        alike = np.round(base[suspects], ALIKE_DECIMALS)
        _, first, group = np.unique(alike, axis=0, return_index=True, return_inverse=True)
        labels[suspects] = suspects[first[group.reshape(-1)]]
    return labels


class _Tally:
    """How often each different maker took each rank so far, and how many draws that still needs."""

    def __init__(self, field: _Field, ranks: int, target: float) -> None:
        self._of, self._target = field.of, target
        self._counts = np.zeros((ranks, len(field.base)), dtype=np.int64)
        self._draws, self._wanted = 0, FIRST_DRAWS

    def wants_more(self) -> bool:
        """Return whether more draws are wanted, by what the shares are so far."""
        if self._draws == self._wanted:
            self._wanted = _draws_wanted(self._counts, self._draws, self._target)
        return self._draws < self._wanted

    def add(self, counts: NDArray[np.int64], draws: int) -> None:
        """Add what a block of draws came to, (ranks · different makers,)."""
        self._counts.ravel()[:] += counts
        self._draws += draws

    def shares(self) -> RankShares:
        """Return the shares of all makers."""
        shares = self._counts.T / self._draws
        return RankShares(draws=self._draws, half_width=_half_width(shares, self._draws), shares=shares[self._of])


class _Scorer:
    """What turns weightings into scores times a scale, in its precision, with room that is used again for each block.

    An open answer is worth its weight times what it may be beyond its least points, of which a uniform number is drawn.
    Where these answers are few they are columns beside the weights, and one product gives the scores.
    """

    def __init__(self, field: _Field, scale: np.floating) -> None:
        self._field, self._scale, rows = field, scale, field.rows_at_once()
        self._at_once = field.open_answers * len(field.base) <= SPREAD_AT_MOST
        criteria, spread = _spread(field)
        self._criteria = criteria[: len(criteria) * self._at_once]
        points = np.vstack([field.base.T, spread[: len(self._criteria)]]) * scale
        self._points = np.ascontiguousarray(points, dtype=scale.dtype)
        self._weights = np.empty((rows, len(points)), dtype=scale.dtype)
        self._opened = np.empty((rows, len(self._criteria)))
        self._scores = np.empty((rows, len(field.base)), dtype=scale.dtype)

    def scores(self, weights: Floats, drawn: Floats) -> NDArray[np.floating]:
        """Return the scores, (weightings, different makers), good until the next are asked for.

        Parameters
        ----------
        weights : (weightings, criteria)
        drawn : (weightings, open answers), 0 to 1
        """
        known = weights.shape[1]
        self._weights[:, :known] = weights
        if self._at_once:
            np.take(weights, self._criteria, axis=1, out=self._opened, mode="clip")
            np.multiply(self._opened, drawn, out=self._weights[:, known:])
        np.matmul(self._weights, self._points, out=self._scores)
        if not self._at_once:
            _add_one_by_one(self._field, drawn, self._scores, weights * self._scale)
        return self._scores


def _add_one_by_one(field: _Field, uniforms: Floats, scores: NDArray[np.floating], weights: Floats) -> None:
    """Add what the open answers, drawn, are worth, a criterion at a time."""
    start = 0
    for criterion, makers in enumerate(field.open_cells):
        drawn = uniforms[:, start : start + len(makers)] * field.width[makers, criterion]
        scores[:, makers] += drawn * weights[:, [criterion]]
        start += len(makers)


def _spread(field: _Field) -> tuple[NDArray[np.intp], Floats]:
    """Return the criterion of each open answer, and its width in the column of its maker: (open answers, makers)."""
    makers = np.concatenate(field.open_cells)
    criteria = np.repeat(np.arange(len(field.open_cells)), [len(cells) for cells in field.open_cells])
    spread = np.zeros((len(makers), len(field.base)))
    spread[np.arange(len(makers)), makers] = field.width[makers, criteria]
    return criteria, spread


def _bits_of_place(field: _Field) -> int:
    """Return how many bits of a key a maker's position takes."""
    return (len(field.base) - 1).bit_length()


def _scale(field: _Field) -> np.float64:
    """Return what scores are multiplied by to fill the bits of a key that are left for them."""
    return np.float64(2.0 ** (KEY_BITS - WHOLE_BITS - _bits_of_place(field)))


class _Counter:
    """What counts the ranks in a block of scores, with room for its work that is used again for each block.

    A score and its maker's position are packed into one whole number, the score in the upper bits and turned round.
    Sorting a row of these puts the makers in order; it takes less time than sorting positions by scores.
    """

    def __init__(self, field: _Field, ranks: int) -> None:
        self._makers, self._ranks, self._sizes = len(field.base), ranks, field.sizes
        self._bits = _bits_of_place(field)
        self._tie = int(TIE * _scale(field)) << self._bits
        self._keys, self._gaps, self._order = np.empty((3, field.rows_at_once(), self._makers), dtype=np.int64)
        self._places = np.tile(np.arange(self._makers), (field.rows_at_once(), 1))  # in full: quicker than by row
        self._lines = self._places * self._makers

    def counts(self, scores: NDArray[np.floating]) -> NDArray[np.int64]:
        """Return how often each rank was taken by each different maker, (ranks · makers,), in a block of scores.

        The scores are those times minus ``_scale``.
        """
        keys, order = self._keys, self._order
        np.copyto(keys, scores, casting="unsafe")
        np.left_shift(keys, self._bits, out=keys)
        np.bitwise_or(keys, self._places, out=keys)
        keys.sort(axis=1)
        np.bitwise_and(keys, (1 << self._bits) - 1, out=order)
        np.add(order, self._lines_in_order(), out=order)
        return np.bincount(order.ravel(), minlength=self._ranks * self._makers)

    def _lines_in_order(self) -> NDArray[np.intp]:
        """Return how far the place, from 0, of each maker in order lies in a table of ranks by makers, line by line."""
        doubled = len(self._sizes) < self._sizes.sum()
        places = _after_doubles(self._sizes[self._order]) if doubled else self._places
        gaps = self._gaps_between()
        if gaps.min() <= self._tie:
            tied = (gaps <= self._tie).any(axis=1)
            places = places.copy()
            places[tied] = _shared(self._keys[tied], places[tied], self._tie)
        return self._lines if places is self._places else places * self._makers

    def _gaps_between(self) -> NDArray[np.int64]:
        """Return how far each key lies above the one before it, the first of a row far: (weightings, makers).

        Taken over the block as one line and then put right where rows begin, which takes less time than row by row.
        """
        np.subtract(self._keys.reshape(-1)[1:], self._keys.reshape(-1)[:-1], out=self._gaps.reshape(-1)[1:])
        self._gaps[:, 0] = self._tie + 1
        return self._gaps


def _after_doubles(sizes: NDArray[np.intp]) -> NDArray[np.intp]:
    """Return the places, from 0, of makers that each stand for so many, (weightings, makers) in the order of rank."""
    places = np.cumsum(sizes, axis=1)
    places -= sizes
    return places


def _shared(keys: NDArray[np.int64], places: NDArray[np.intp], tie: int) -> NDArray[np.intp]:
    """Return the places with those within a tie of the best of their group made the same as its place."""
    best = keys[:, 0].copy()
    for column in range(1, keys.shape[1]):
        apart = keys[:, column] - best > tie
        best = np.where(apart, keys[:, column], best)
        places[:, column] = np.where(apart, places[:, column], places[:, column - 1])
    return places
