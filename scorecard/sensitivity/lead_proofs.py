"""Whether one maker can lead under some weighting, with the proof.

Enters: points on the criteria that count, and one maker. Leaves: a weighting under which nobody beats it, or a mix of
rivals that beats it on every criterion. One of the two is always there: the maker chooses weights, its rivals a mix,
and the best that either can do is the value of a game.
"""

from collections.abc import Mapping
from fractions import Fraction
from typing import Any, Literal

import numpy as np
from numpy.typing import NDArray

from scorecard.frozen import dataclass
from scorecard.ranking import TIE
from scorecard.sensitivity.dual_simplex import EndlessPivotsError, Programme
from scorecard.sensitivity.smallest_change import without_dust
from scorecard.value_functions import Floats

SCALE = 100
"""Points are taken as parts of this in a programme."""

SHIFT = 2
"""Added to all leads, as parts of the scale, so that the value of the game is positive."""

NO_PART = 1e-12
"""A part of a mix no greater than this is left out."""

Verdict = Literal["leads", "level", "beaten", "unproven"]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Outcome:
    """How a maker fares when it chooses the weights.

    Parameters
    ----------
    weights : (criteria,), a weighting
    margin : the maker's least lead, under these weights, over all others: points, computed from the weights
    mix : parts of rivals, adding up to 1, by position
    bound : what no weighting can better, because of the mix: points, computed from the mix
    """

    weights: Floats
    margin: float
    mix: Mapping[int, float]
    bound: float

    @property
    def verdict(self) -> Verdict:
        """What the outcome proves; within twice ``TIE`` of nil, that the maker can be level with the best."""
        if self.bound < -TIE:
            return "beaten"
        if self.margin > TIE:
            return "leads"
        return "level" if self.margin >= -2 * TIE and self.bound <= 2 * TIE else "unproven"


def prove(points: Floats, maker: int, likely: NDArray[np.intp]) -> Outcome:
    """Return an outcome that proves whether a maker can lead.

    Parameters
    ----------
    points : (makers, criteria), 0 to 100, on criteria that count; at least two makers
    maker : its position
    likely : positions of some makers that often lead, looked at first; what is proven does not depend on them

    Raises
    ------
    ArithmeticError
        If even fractions prove nothing, which they cannot but do.
    """
    try:
        outcome = _play(points, maker, likely, exact=False)
    except EndlessPivotsError:
        outcome = None
    if outcome is None or outcome.verdict == "unproven":
        outcome = _play(points, maker, likely, exact=True)
    if outcome.verdict == "unproven":
        raise ArithmeticError(f"no proof for the maker at position {maker}")
    return outcome


def margin_over(points: Floats, maker: int, weights: Floats) -> float:
    """Return a maker's least lead over all others, in points."""
    return _strongest(points, maker, weights)[1]


def fractions(points: Floats) -> NDArray[Any]:
    """Return numbers as exact fractions."""
    return np.asarray(np.vectorize(Fraction, otypes=[object])(points))


def _play(points: Floats, maker: int, likely: NDArray[np.intp], *, exact: bool) -> Outcome:
    """Solve the game, a rival at a time, or as much of it as the proof needs.

    The least Σx with (lead over r + shift)·x ≥ 1 for all r is 1 / (value + shift), at the best weights over their sum.
    It is enough once rivals beat the maker by so much that rounding cannot hide it.
    """
    programme = Programme(np.ones(points.shape[1]), exact=exact)
    weights = np.full(points.shape[1], 1 / points.shape[1])
    few = points[likely]
    taken: set[int] = set()
    bound = np.inf
    while bound >= -2 * TIE:
        rival = int(likely[(few @ weights).argmax()])
        if rival == maker or rival in taken:
            rival, margin = _strongest(points, maker, weights)
            if margin > TIE or rival in taken:
                break
        taken.add(rival)
        programme.require(rival, -1, SHIFT + _leads(points, maker, rival, exact))
        weights = (programme.x / programme.x.sum()).astype(float)
        bound = float(1 / programme.least - SHIFT) * SCALE
    return _outcome(points, maker, weights, _prices(programme, taken))


def _strongest(points: Floats, maker: int, weights: Floats) -> tuple[int, float]:
    """Return the position of the best other maker under a weighting, and the maker's lead over it."""
    scores = points @ weights
    own, scores[maker] = scores[maker], -np.inf
    best = int(scores.argmax())
    return best, float(own - scores[best])


def _leads(points: Floats, maker: int, rival: int, exact: bool) -> NDArray[Any]:
    """Return the maker's leads over a rival by criterion, as parts of the scale."""
    one, other = points[maker], points[rival]
    return np.asarray(fractions(one) - fractions(other) if exact else one - other) / SCALE


def _prices(programme: Programme, taken: set[int]) -> dict[int, float]:
    """Return the multipliers of the rivals taken in, in sheet order."""
    found = programme.multipliers
    return {rival: float(found[rival]) for rival in sorted(taken & found.keys())}


def _outcome(points: Floats, maker: int, weights: Floats, prices: Mapping[int, float]) -> Outcome:
    """Return the outcome with its figures computed anew from the weights and the mix."""
    weights = without_dust(weights)
    parts = {rival: price / sum(prices.values()) for rival, price in prices.items()}
    kept = {rival: part for rival, part in parts.items() if part > NO_PART}
    mix = {rival: part / sum(kept.values()) for rival, part in kept.items()}
    mixed = sum((part * points[rival] for rival, part in mix.items()), np.zeros(points.shape[1]))
    bound = float((points[maker] - mixed).max()) if mix else np.inf
    return Outcome(weights=weights, margin=margin_over(points, maker, weights), mix=mix, bound=bound)
