"""Warnings on criteria whose points are all spent: every known answer lies beyond an end, so that none is told apart.

Enters: criteria with their countings. Leaves: a warning for each such criterion, at its key ``points``.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np

from scorecard.case import Case
from scorecard.counting import Counting
from scorecard.criteria import Criterion
from scorecard.errors import Place, Problem
from scorecard.value_functions import Floats, PiecewiseLinear
from scorecard.words import rounded, shortest

FEWEST = 2  # known answers from which there is something to tell apart
OF_PRICE = re.compile(r"\b(price|prices|cost|costs|freight)\b", re.IGNORECASE)


def with_scale_doubts(case: Case, countings: Sequence[Counting]) -> Case:
    """Return a case with these warnings among its own, each once.

    Parameters
    ----------
    case : what was read
    countings : one a criterion, in their order
    """
    found = [one for one in scale_doubts(case, countings) if one not in case.warnings]
    return replace(case, warnings=(*case.warnings, *found)) if found else case


def scale_doubts(case: Case, countings: Sequence[Counting]) -> Iterator[Problem]:
    """Yield a warning for each criterion all of whose known answers get the points of one end.

    At the better end only of prices: that all makers are good enough is no fault of a scale, but the cheaper of two
    prices is always the better.
    """
    file = case.sources[0].name if case.sources else None
    for criterion, counting in zip(case.criteria, countings, strict=True):
        if found := beyond_points(criterion, counting):
            yield Problem(
                code="beyond-points",
                place=Place(file=file, key=f"criteria.{criterion.key}.points"),
                found=f"{found}: they are not told apart",
                wanted="Stretch the points, so that these answers lie between their first and their last number",
            )


def beyond_points(criterion: Criterion, counting: Counting) -> str | None:
    """Return that all known answers are beyond one end, in words; None where they are not."""
    value = criterion.value
    if not isinstance(value, PiecewiseLinear):
        return None
    known = ~np.isnan(counting.counts_as.low)
    low, high = counting.counts_as.low[known], counting.counts_as.high[known]
    if len(low) < FEWEST:
        return None
    (first, at_first), (last, at_last) = value.knots[0], value.knots[-1]
    least, _ = value.extremes()
    ends = (((low > last).all(), "above", last, at_last), ((high < first).all(), "below", first, at_first))
    for is_beyond, side, end, points in ends:
        if is_beyond and (points == least or is_price(criterion)):
            told = f"all {len(low)} known answers ({_span(low, high)}) are {side} {shortest(end)}, where points are"
            return f"{told} {shortest(points)}"
    return None


def is_price(criterion: Criterion) -> bool:
    """Say whether a criterion draws on landed cost, or by its column's name on a price."""
    return criterion.measure == "landed_cost_per_piece" or bool(OF_PRICE.search(criterion.column or ""))


def _span(low: Floats, high: Floats) -> str:
    """Return the least and the greatest of some answers, as far as they have an end."""
    least = float(low[np.isfinite(low)].min(initial=np.inf))
    most = float(high[np.isfinite(high)].max(initial=-np.inf))
    told = dict.fromkeys(rounded(end, 2) for end in (least, most) if np.isfinite(end))
    return " to ".join(told)
