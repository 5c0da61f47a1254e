"""Weights from judgements: from an order of importance, or from comparisons by pairs.

Enters: the number of criteria and a rule, or a reciprocal matrix of judgements. Leaves: weights that add up to 1, and
for pairs how well the judgements agree with one another.
"""

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from itertools import accumulate, combinations
from math import log
from typing import Literal

import numpy as np

from scorecard.frozen import dataclass
from scorecard.value_functions import Floats

RankRule = Literal["centroid", "sum", "reciprocal"]

RANK_RULES: tuple[RankRule, ...] = ("centroid", "sum", "reciprocal")

RANDOM_INDEX_NAME = "Saaty 1980"
MOST_PAIRED = 10
USUAL_RATIO_LIMIT = 0.10

_RANDOM_INDEX = {3: 0.58, 4: 0.90, 5: 1.12, 6: 1.24, 7: 1.32, 8: 1.41, 9: 1.45, 10: 1.49}
_SAME = 1e-9


def tied_rank_weights(group_sizes: Sequence[int], rule: RankRule = "centroid") -> Floats:
    """Return the weights of criteria of which some share a place: each takes the mean weight of the places shared.

    Of n places, centroid: w_i = (1/n) · Σ_{k=i..n} 1/k, the mean of all weights in that order. Sum:
    w_i = 2(n + 1 - i) / (n(n + 1)). Reciprocal: w_i = (1/i) / Σ_{k=1..n} 1/k.

    Parameters
    ----------
    group_sizes : how many criteria share each place, most important first; 1 for a criterion alone
    rule : "centroid", "sum" or "reciprocal"

    Returns
    -------
    (criteria,), group by group, most important first, adding up to 1

    Raises
    ------
    ValueError
        If there is no group, a group is empty, or there is no such rule.

    Notes
    -----
    That tied criteria take the mean of their places is a convention; the sources of the rules do not settle ties.

    References
    ----------
    Sum and reciprocal: Stillwell, Seaver and Edwards (1981), Organizational Behavior and Human Performance 28, 62-77.
    Centroid: Edwards and Barron (1994), Organizational Behavior and Human Decision Processes 60, 306-325. Both from
    memory.

    Examples
    --------
    >>> tied_rank_weights([1, 2, 1], "sum").tolist()
    [0.4, 0.25, 0.25, 0.1]
    """
    if min(group_sizes, default=0) < 1:
        raise ValueError("every place needs at least one criterion")
    weights = _exact_rank_weights(sum(group_sizes), rule)
    ends = list(accumulate(group_sizes))
    groups = [weights[end - size : end] for end, size in zip(ends, group_sizes, strict=True)]
    return np.array([float(sum(group) / len(group)) for group in groups for _ in group])


def _exact_rank_weights(n: int, rule: RankRule) -> list[Fraction]:
    """Return the weights as exact fractions."""
    formulas: dict[RankRule, Callable[[int], list[Fraction]]] = {
        "centroid": _centroid,
        "sum": lambda n: [Fraction(2 * (n + 1 - i), n * (n + 1)) for i in range(1, n + 1)],
        "reciprocal": _reciprocal,
    }
    if rule not in formulas:
        raise ValueError(f"there is no rule {rule!r} for weights by ranks")
    return formulas[rule](n)


def _centroid(n: int) -> list[Fraction]:
    """Return the rank order centroid."""
    tails = list(accumulate(Fraction(1, k) for k in range(n, 0, -1)))
    return [tail / n for tail in reversed(tails)]


def _reciprocal(n: int) -> list[Fraction]:
    """Return the weights in proportion to 1, 1/2, 1/3 and so on."""
    whole = sum(Fraction(1, k) for k in range(1, n + 1))
    return [Fraction(1, i) / whole for i in range(1, n + 1)]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PairwiseWeights:
    """Weights by comparisons, and how well the comparisons agree.

    Parameters
    ----------
    weights : (criteria,), adding up to 1
    lambda_max : the principal eigenvalue, at least the number of criteria
    ratio : the consistency ratio; 0 up to two criteria, where nothing can disagree
    random_index : the name of the table of random indices that the ratio uses
    worst_pair : positions of the two criteria whose comparison agrees least with the rest; None up to two criteria
    fitting : the value of that comparison that the rest imply; None up to two criteria
    """

    weights: Floats
    lambda_max: float
    ratio: float
    random_index: str = RANDOM_INDEX_NAME
    worst_pair: tuple[int, int] | None = None
    fitting: float | None = None


def pairwise_weights(matrix: Floats) -> PairwiseWeights:
    """Return the principal eigenvector of a matrix of comparisons, scaled to add up to 1, with its consistency.

    Consistency index (λ_max - n) / (n - 1); consistency ratio = that index over the random index for n. The value that
    the rest imply for a pair is w_i / w_j of the matrix with that pair left open.

    Parameters
    ----------
    matrix : (criteria, criteria), how many times as important the row's criterion is as the column's: above 0, with
        reciprocals across the diagonal; at most 10 criteria

    Raises
    ------
    ValueError
        If the matrix is not square, not positive, not reciprocal, or has no or more than 10 criteria.

    References
    ----------
    Eigenvector and ratio: Saaty (1980), The Analytic Hierarchy Process. A pair left open: Harker (1987), Mathematical
    Modelling 9, 353-360. Both from memory.

    Examples
    --------
    >>> judged = pairwise_weights(np.array([[1, 6, 3], [1 / 6, 1, 1 / 2], [1 / 3, 2, 1]]))
    >>> judged.weights.round(4).tolist(), round(judged.ratio, 6)
    ([0.6667, 0.1111, 0.2222], 0.0)
    """
    table = _checked(matrix)
    n = len(table)
    weights, greatest = _principal(table)
    if n not in _RANDOM_INDEX:
        return PairwiseWeights(weights=weights, lambda_max=float(n), ratio=0.0)
    lambda_max = max(greatest, float(n))
    ratio = (lambda_max - n) / (n - 1) / _RANDOM_INDEX[n]
    pair, fitting = _worst_pair(table)
    return PairwiseWeights(weights=weights, lambda_max=lambda_max, ratio=ratio, worst_pair=pair, fitting=fitting)


def _checked(matrix: Floats) -> Floats:
    """Return the matrix as floats, or raise."""
    table = np.asarray(matrix, dtype=float)
    if table.ndim != 2 or table.shape[0] != table.shape[1] or not 1 <= len(table) <= MOST_PAIRED:
        raise ValueError(f"comparisons need a square matrix of 1 to {MOST_PAIRED} criteria")
    if not (table > 0).all() or not np.allclose(table * table.T, 1):
        raise ValueError("comparisons must be above 0, with reciprocals across the diagonal")
    return table


def _principal(table: Floats) -> tuple[Floats, float]:
    """Return the principal eigenvector, adding up to 1, and its eigenvalue."""
    values, vectors = np.linalg.eig(table)
    first = int(np.argmax(values.real))
    vector = np.abs(vectors[:, first].real)
    return vector / vector.sum(), float(values[first].real)


def _worst_pair(table: Floats) -> tuple[tuple[int, int], float]:
    """Return the pair that is furthest, as a ratio, from what the rest imply, and that value; of equals, the first."""
    judged = [(abs(log(table[pair] / fitting)), pair, fitting) for pair, fitting in _implied(table)]
    furthest = max(misfit for misfit, _, _ in judged)
    return next((pair, fitting) for misfit, pair, fitting in judged if misfit >= furthest - _SAME)


def _implied(table: Floats) -> Iterator[tuple[tuple[int, int], float]]:
    """Yield every pair with the value that the other comparisons imply for it."""
    for i, j in combinations(range(len(table)), 2):
        open_pair = table.copy()
        open_pair[[i, j], [j, i]] = 0
        open_pair[[i, j], [i, j]] = 2
        weights, _ = _principal(open_pair)
        yield (i, j), float(weights[i] / weights[j])
