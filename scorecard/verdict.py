"""The verdict: who leads, and whether the open answers or a small change of weights could make it another.

Enters: ranking, bands, questions and smallest changes. Leaves: one kind, and the makers it speaks of.
"""

from collections.abc import Sequence
from typing import Literal

import numpy as np

from scorecard.frozen import dataclass
from scorecard.points import PointsTable
from scorecard.questions import Question
from scorecard.ranking import TIE, Ranking, leaders_of
from scorecard.screening import Screening
from scorecard.value_functions import Floats

CLOSE = 0.05  # too close to call when so little weight, as a part of 1, decides it; our own choice

Kind = Literal["nobody", "alone", "close", "sure", "one answer", "several answers"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What can be said of first place.

    Parameters
    ----------
    kind : nobody is ranked; one alone is; too close to call; whatever the open answers turn out to be, at the least
        jointly; one answer could change it; no one answer could, but several together
    leader : position of the first maker; None where nobody is ranked
    rival : position of the maker that it is close to, or that could lead instead
    moved : the weight that decides it, as a part of 1, where it is close
    question : the answer that could change it, where one could
    """

    kind: Kind
    leader: int | None = None
    rival: int | None = None
    moved: float | None = None
    question: Question | None = None


def reach_verdict(
    ranking: Ranking,
    screening: Screening,
    asked: Sequence[Question],
    moved: Sequence[tuple[int, float | None]],
) -> Verdict:
    """Return the verdict.

    Parameters
    ----------
    ranking, screening : of all makers
    asked : open answers, those that could change the leader first
    moved : of every rival of the first maker, its position and the least weight, as a part of 1, that brings it level
    """
    if not ranking.order:
        return Verdict(kind="nobody")
    leader = ranking.order[0]
    near = sorted((part, place) for place, part in moved if part is not None)
    if near and near[0][0] <= CLOSE:
        return Verdict(kind="close", leader=leader, rival=near[0][1], moved=near[0][0])
    if asked and asked[0].could_change_leader:
        return Verdict(kind="one answer", leader=leader, rival=asked[0].leader_then, question=asked[0])
    if len(ranking.order) == 1:
        return Verdict(kind="alone", leader=leader)
    return Verdict(kind="sure" if leader in surely_lead(ranking, screening) else "several answers", leader=leader)


def surely_lead(ranking: Ranking, screening: Screening) -> tuple[int, ...]:
    """Return the positions of all who lead, be it jointly, for every filling of the open answers, in the order of rank.

    A maker that may yet fail a limit does not: for some filling it is out. Makers' open answers are independent of one
    another, and one that rules its maker out lifts nobody: this is exact.
    """
    reaches = sorted(((float(ranking.reach[one]), one) for one in ranking.order), reverse=True)[:2]
    return tuple(
        maker
        for maker in ranking.order
        if not screening.may_fail[maker].any()
        and all(ranking.low[maker] >= reach - TIE for reach, holder in reaches if holder != maker)
    )


def could_lead(ranking: Ranking, screening: Screening) -> tuple[int, ...]:
    """Return the positions of all who lead, be it jointly, for some filling of the open answers, in the order of rank.

    A maker that may yet fail a limit cannot keep another from leading: for some filling it is out.
    """
    surely_in = ~np.asarray(screening.may_fail.any(axis=1))
    bar = max((float(ranking.low[one]) for one in ranking.order if surely_in[one]), default=-np.inf)
    return tuple(maker for maker in ranking.order if ranking.reach[maker] >= bar - TIE)


def leaders_by_rule(
    points: PointsTable, shares: Floats, ruled_out: "np.ndarray[tuple[int, ...], np.dtype[np.bool_]]"
) -> dict[str, tuple[int, ...]]:
    """Return who leads when every open answer counts as its worst, its middle or its best.

    Parameters
    ----------
    points : of all makers, (makers, criteria)
    shares : (criteria,), adding up to 1
    ruled_out : (makers,)
    """
    middle = np.clip((points.low + points.high) / 2, points.low, points.high)
    rules = {"worst": points.low, "middle": middle, "best": points.high}
    return {rule: leaders_of(counted, shares, ~np.asarray(ruled_out)) for rule, counted in rules.items()}
