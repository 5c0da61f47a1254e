"""Where the lead passes from maker to maker as one weight grows from nothing to all, the others in proportion.

Enters: points and shares. Leaves: for each criterion every maker's score with no share on it and with all of it, and
the stretches of the upper envelope of the straight lines between. Level makers count as in ``weight_ranges``.
"""

import numpy as np
from numpy.typing import NDArray

from scorecard.frozen import dataclass
from scorecard.ranking import TIE
from scorecard.sensitivity.weight_ranges import others_in_proportion
from scorecard.value_functions import Floats


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """The shares of one criterion, from ``start`` to ``end``, with which the same maker leads.

    Parameters
    ----------
    leader : its position; of makers level all along, the first
    start, end : shares from 0 to 1
    """

    leader: int
    start: float
    end: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ScoreLines:
    """Every maker's score as a straight line in the share of one criterion.

    Parameters
    ----------
    none_on, all_on : (makers,), the scores with none of the share on the criterion and with all of it, 0 to 100
    """

    none_on: Floats
    all_on: Floats

    def at(self, share: float) -> Floats:
        """Return the scores of (makers,) with a share from 0 to 1."""
        return share * self.all_on + (1 - share) * self.none_on


def score_lines(points: Floats, shares: Floats) -> tuple[ScoreLines | None, ...]:
    """Return every maker's line for each criterion; None where the criterion has all the share.

    Parameters
    ----------
    points : (makers, criteria), 0 to 100
    shares : (criteria,), summing to 1, 0 allowed

    Examples
    --------
    >>> (line, _) = score_lines(np.array([[100.0, 40.0], [50.0, 90.0]]), np.array([0.75, 0.25]))
    >>> line.none_on.tolist(), line.all_on.tolist()
    ([40.0, 90.0], [100.0, 50.0])
    """
    others = others_in_proportion(shares)
    return tuple(
        ScoreLines(none_on=without, all_on=alone) if rest.any() else None
        for without, alone, rest in zip((points @ others).T, points.T, others.T, strict=True)
    )


def lead_crossings(lines: ScoreLines) -> tuple[Stretch, ...]:
    """Return who leads from where to where as the share of one criterion grows from 0 to 1: the upper envelope.

    From the leader's line the next crossing is the nearest one at which a steeper line comes level and then passes.

    Parameters
    ----------
    lines : of at least one maker

    Returns
    -------
    stretches that follow one another from 0 to 1

    References
    ----------
    A line of value against one weight: Goodwin and Wright, Decision Analysis for Management Judgment, ch. 3.

    Examples
    --------
    >>> lead_crossings(ScoreLines(none_on=np.array([40.0, 90.0]), all_on=np.array([100.0, 50.0])))
    (Stretch(leader=1, start=0.0, end=0.5), Stretch(leader=0, start=0.5, end=1.0))
    """
    found: list[Stretch] = []
    rises = lines.all_on - lines.none_on
    start, leader = 0.0, _steepest(rises, np.flatnonzero(lines.none_on.max() - lines.none_on <= TIE))
    while (passing := _passing(lines, rises, leader)).size:
        behind = lines.none_on[leader] - lines.none_on[passing]
        crossings = behind / (rises[passing] - rises[leader])
        end = max(start, float(crossings.min()))
        if end > start:
            found.append(Stretch(leader=leader, start=start, end=end))
        level = behind - end * (rises[passing] - rises[leader]) <= TIE
        start, leader = end, _steepest(rises, passing[level])
    return (*found, Stretch(leader=leader, start=start, end=1.0))


def _passing(lines: ScoreLines, rises: Floats, leader: int) -> NDArray[np.intp]:
    """Return whose lines are steeper than the leader's and end above it."""
    return np.flatnonzero((lines.all_on - lines.all_on[leader] > TIE) & (rises > rises[leader]))


def _steepest(rises: Floats, among: NDArray[np.intp]) -> int:
    """Return the one whose line rises most, of equals the first."""
    steep = rises[among]
    return int(among[(steep >= steep.max() - TIE).argmax()])
