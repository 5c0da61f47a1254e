"""The additive value model: shares times points, their sum, its band, and ranks with ties.

Enters: points of (makers, criteria) and shares adding up to 1. Leaves: scores, bands, known shares and ranks.
"""

from collections.abc import Sequence
from itertools import takewhile
from math import fsum

import numpy as np

from scorecard.frozen import dataclass
from scorecard.points import PointsTable
from scorecard.screening import Booleans
from scorecard.value_functions import Floats

TIE = 1e-9  # scores nearer than this are level
ROUGH = 1e-6  # a plain product is nearer to the exact sum than this


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Ranking:
    """Scores and ranks of all makers, in sheet order.

    Parameters
    ----------
    scores, low, high : (makers,), 0 to 100, ruled-out makers included
    known_shares : (makers,), 0 to 1
    reach : (makers,), the highest score that open answers allow without ruling the maker out
    ranks : (makers,), from 1; 0 where ruled out
    order : positions of the ranked makers, best first, level ones in sheet order
    """

    scores: Floats
    low: Floats
    high: Floats
    known_shares: Floats
    reach: Floats
    ranks: tuple[int, ...]
    order: tuple[int, ...]

    @property
    def leaders(self) -> tuple[int, ...]:
        """Positions of the joint leaders, in sheet order."""
        return tuple(takewhile(lambda maker: self.ranks[maker] == 1, self.order))

    @property
    def ruled_out(self) -> tuple[int, ...]:
        """Positions of the ruled-out makers, in sheet order."""
        return tuple(maker for maker, rank in enumerate(self.ranks) if not rank)

    @property
    def margin(self) -> float | None:
        """The first maker's score less the next one's; 0 for joint leaders, None with one ranked maker or none."""
        if len(self.order) < 2:
            return None
        first, second = self.order[:2]
        return 0.0 if self.ranks[second] == 1 else float(self.scores[first] - self.scores[second])


def weighted_sums(points: Floats, shares: Floats) -> Floats:
    """Return each maker's score: the sum of share times points, summed without rounding error.

    Parameters
    ----------
    points : (makers, criteria), 0 to 100
    shares : (criteria,), adding up to 1

    Returns
    -------
    (makers,), 0 to 100

    References
    ----------
    The additive value model: Keeney and Raiffa (1976), ch. 3 (from memory).

    Examples
    --------
    >>> weighted_sums(np.array([[80.0, 40.0]]), np.array([0.75, 0.25])).tolist()
    [70.0]
    """
    columns = (points * shares).T.tolist()
    return np.fromiter(map(fsum, zip(*columns, strict=True)), dtype=float, count=len(points))


def competition_ranks(scores: Sequence[float]) -> list[int]:
    """Return the ranks of scores sorted best first: those within a hair of the best of their group share its rank.

    Examples
    --------
    >>> competition_ranks([22.0, 22.0, 21.5])
    [1, 1, 3]
    """
    ranks: list[int] = []
    for place, score in enumerate(scores, start=1):
        level = bool(ranks) and scores[ranks[-1] - 1] - score <= TIE
        ranks.append(ranks[-1] if level else place)
    return ranks


def rank_makers(points: PointsTable, shares: Floats, ruled_out: Booleans) -> Ranking:
    """Return scores, bands, known shares and ranks.

    Parameters
    ----------
    points : of all makers, (makers, criteria)
    shares : (criteria,), adding up to 1
    ruled_out : (makers,), who is not ranked
    """
    scores = weighted_sums(points.counted, shares)
    ranks, order = _ranks(scores, ruled_out)
    varied = np.asarray((points.high > points.low).any(axis=1))
    low, high, reach = (_where_varied(ends, shares, varied, scores) for ends in (points.low, points.high, points.reach))
    return Ranking(
        scores=scores,
        low=np.minimum(low, scores),
        high=np.maximum(high, scores),
        known_shares=known_shares(points.known, shares),
        reach=reach,
        ranks=ranks,
        order=order,
    )


def _where_varied(points: Floats, shares: Floats, varied: Booleans, scores: Floats) -> Floats:
    """Return weighted sums, computed only where an answer is open; elsewhere they are the scores."""
    sums = scores.copy()
    sums[varied] = weighted_sums(points[varied], shares)
    return sums


def known_shares(known: Booleans, shares: Floats) -> Floats:
    """Return the part of each score whose answers are known, summed once for every pattern of known answers.

    Parameters
    ----------
    known : (makers, criteria)
    shares : (criteria,), adding up to 1

    Returns
    -------
    (makers,), 0 to 1
    """
    packed = np.packbits(known, axis=1)
    _, first, pattern = np.unique(packed, axis=0, return_index=True, return_inverse=True)
    return np.minimum(weighted_sums(known[first].astype(float), shares), 1.0)[pattern.reshape(-1)]


def leaders_of(points: Floats, shares: Floats, in_play: Booleans) -> tuple[int, ...]:
    """Return the positions of the joint leaders among those in play, in sheet order.

    Parameters
    ----------
    points : (makers, criteria), 0 to 100
    shares : (criteria,), adding up to 1
    in_play : (makers,)
    """
    makers = np.flatnonzero(in_play)
    rough = points[makers] @ shares
    near = makers[rough >= rough.max(initial=-np.inf) - ROUGH]
    exact = weighted_sums(points[near], shares)
    return tuple(int(maker) for maker in near[exact.max(initial=-np.inf) - exact <= TIE])


def _ranks(scores: Floats, ruled_out: Booleans) -> tuple[tuple[int, ...], tuple[int, ...]]:
    falling = [int(maker) for maker in np.argsort(-scores, kind="stable") if not ruled_out[maker]]
    places = dict(zip(falling, competition_ranks([float(scores[maker]) for maker in falling]), strict=True))
    ranks = tuple(places.get(maker, 0) for maker in range(len(scores)))
    return ranks, tuple(sorted(falling, key=lambda maker: (ranks[maker], maker)))


def ranks_if_let_in(ranking: Ranking, makers: Sequence[int]) -> list[int]:
    """Return the rank that each of some ruled-out makers would have if it alone were let in.

    Parameters
    ----------
    ranking : of the others
    makers : positions of the ruled-out makers

    Returns
    -------
    one a maker: the rank of the group before it where they are level, else the next place
    """
    falling = -np.sort(-ranking.scores[list(ranking.order)])
    ranks = [ranking.ranks[maker] for maker in ranking.order]
    scores = ranking.scores[list(makers)]
    ahead = np.searchsorted(-falling, -scores, side="right").tolist()
    return [_rank_behind(falling, ranks, place, score) for place, score in zip(ahead, scores.tolist(), strict=True)]


def _rank_behind(falling: Floats, ranks: Sequence[int], ahead: int, score: float) -> int:
    if ahead and falling[ranks[ahead - 1] - 1] - score <= TIE:
        return ranks[ahead - 1]
    return ahead + 1
