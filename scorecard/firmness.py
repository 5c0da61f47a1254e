"""How firm first place is: every question about weights and open answers, asked of the ranked makers.

Enters: points, shares, limits and ranking of all makers. Leaves: answers that speak of makers by their positions in the
sheet; the array functions of ``sensitivity`` know the ranked makers alone, and the two are matched here.
"""

from bisect import bisect_left
from collections.abc import Mapping
from dataclasses import field, replace
from math import fsum

import numpy as np

from scorecard.criteria import CriteriaSet, Firmness
from scorecard.frozen import dataclass
from scorecard.points import PointsTable
from scorecard.ranking import Ranking
from scorecard.screening import Screening
from scorecard.sensitivity.can_lead import CanLead, can_lead
from scorecard.sensitivity.dominance import beats_on_everything
from scorecard.sensitivity.duels import Duels, duels
from scorecard.sensitivity.rank_shares import FirstShares, RankShares, first_shares, rank_shares_of_each
from scorecard.sensitivity.smallest_change import SmallestChanges, smallest_changes
from scorecard.sensitivity.weight_ranges import (
    RangeOverAnswers,
    WeightRange,
    ranges_over_answers,
    typed_end,
    weight_ranges,
)
from scorecard.sensitivity.weightings import KINDS, Weightings
from scorecard.value_functions import Floats
from scorecard.verdict import leaders_by_rule

MOST_IN_FRONT = 200  # shares and duels speak of so many makers, the best by score


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Change:
    """The smallest change against one rival.

    Parameters
    ----------
    moved : the part of all weight that is moved, 0 to 1; None where no weighting brings the rival level
    weights : (criteria,), the shares with the rival level; None likewise
    """

    moved: float | None = None
    weights: Floats | None = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class HowFirm:
    """What is known of the firmness of first place; makers by their positions in the sheet.

    Parameters
    ----------
    ranked : positions of the ranked makers, in sheet order
    rivals : the ranked makers but the first, in the order of rank
    weight_ranges : (criteria,); None where a criterion has all the weight; empty where nobody is ranked
    leaders_by_rule : who leads with every open answer at its worst, middle, best
    changes : smallest change against each of the ranked makers, in the order of ``ranked``; None where nobody is ranked
    front : the ranked makers that shares and duels speak of, the 200 best by score, in the order of rank
    rank_shares : by kind of weightings ("any", "ordered", "near"), shares of (front, ranks)
    first_shares : how often each ranked maker, in the order of rank, comes first among all under any weighting, as the
        answers count; None where the front is all of them
    duels : who beats whom in what part of all weightings, (front, front); None where nobody is ranked
    can_lead : of each ranked maker in the order of rank, whether it can ever lead; rivals by their positions
    beats : pairs among the front, the first of which beats the second on everything
    over_answers : (criteria,), weight ranges that hold for every filling of the open answers, and for some; None where
        a criterion has all the weight. An answer that rules its maker out lifts nobody and keeps nobody from the lead
    """

    ranked: tuple[int, ...]
    rivals: tuple[int, ...]
    weight_ranges: tuple[WeightRange | None, ...] = ()
    leaders_by_rule: Mapping[str, tuple[int, ...]] = field(default_factory=dict)
    changes: SmallestChanges | None = None
    front: tuple[int, ...] = ()
    rank_shares: Mapping[str, RankShares] = field(default_factory=dict)
    first_shares: FirstShares | None = None
    duels: Duels | None = None
    can_lead: tuple[CanLead, ...] = ()
    beats: tuple[tuple[int, int], ...] = ()
    over_answers: tuple[RangeOverAnswers | None, ...] = ()

    def change_against(self, rival: int) -> Change:
        """Return the smallest change against a rival."""
        if self.changes is None:
            return Change()
        found = self.changes.against(bisect_left(self.ranked, rival))
        return Change() if found is None else Change(moved=found[0], weights=found[1])

    def moved(self) -> list[tuple[int, float | None]]:
        """Return every rival with the least weight, as a part of 1, that brings it level; None where nothing does."""
        return [(rival, self.change_against(rival).moved) for rival in self.rivals]

    def contenders(self) -> list[tuple[int, float | None]]:
        """Return as ``moved``, but without the rivals that the first maker beats on everything: they never overtake."""
        beaten = {worse for better, worse in self.beats if better == self.front[0]}
        return [(rival, part) for rival, part in self.moved() if rival not in beaten]

    def at_best_level(self, maker: int) -> bool:
        """Return whether a maker can lead, but under no weighting alone."""
        order = (*self.front[:1], *self.rivals)
        return maker in order and self.can_lead[order.index(maker)].level

    def typed_ends(self, criterion: int, criteria: CriteriaSet) -> tuple[float | None, float | None]:
        """Return a weight range in weights as typed, the others as they are; None where it has none, or any will do."""
        return typed_span(self.weight_ranges[criterion], criterion, criteria)


def typed_span(found: WeightRange | None, criterion: int, criteria: CriteriaSet) -> tuple[float | None, float | None]:
    """Return a range of one share in weights as typed, the others as they are; None where it has none, or any will do.

    Parameters
    ----------
    found : the range, in shares
    criterion : whose share it is
    criteria : with the weights as typed
    """
    if found is None:
        return None, None
    others = fsum(weight for at, weight in enumerate(criteria.typed_weights.values()) if at != criterion)
    return typed_end(found.low, others), typed_end(found.high, others)


def examine(points: PointsTable, shares: Floats, ranking: Ranking, screening: Screening, settings: Firmness) -> HowFirm:
    """Return how firm first place is.

    Parameters
    ----------
    points : of all makers, (makers, criteria)
    shares : (criteria,), adding up to 1
    ranking, screening : of all makers
    settings : how "near" weightings are drawn, and from which seed
    """
    ranked = tuple(sorted(ranking.order))
    if not ranked:
        return HowFirm(ranked=(), rivals=())
    counted = points.counted[list(ranked)]
    leader = ranked.index(ranking.order[0])
    found = weight_ranges(counted, shares, leader)
    front = ranking.order[:MOST_IN_FRONT]
    return HowFirm(
        ranked=ranked,
        rivals=ranking.order[1:],
        weight_ranges=tuple(None if one is None else _in_sheet(one, ranked) for one in found),
        leaders_by_rule=leaders_by_rule(points, shares, np.array(ranking.ranks) == 0),
        changes=smallest_changes(counted, shares, leader),
        front=front,
        rank_shares=_drawn(points, shares, front, settings),
        first_shares=None if front == ranking.order else _first(points.counted, shares, ranking.order, settings),
        duels=duels(points.counted[list(front)], shares),
        can_lead=_can_lead(counted, shares, ranked, ranking.order),
        beats=tuple((front[a], front[b]) for a, b in beats_on_everything(points.counted[list(front)], shares)),
        over_answers=_over_answers(points, shares, screening, (ranked, leader)),
    )


def _over_answers(
    points: PointsTable, shares: Floats, screening: Screening, who: tuple[tuple[int, ...], int]
) -> tuple[RangeOverAnswers | None, ...]:
    """Return the ranges over open answers; nothing is guaranteed to a leader that may be ruled out."""
    ranked, leader = who
    may_fail = np.asarray(screening.may_fail[list(ranked)].any(axis=1))
    low, reach = points.low[list(ranked)], points.reach[list(ranked)]
    low[may_fail & (np.arange(len(ranked)) != leader)] = 0  # ruled out, a rival keeps nobody from the lead
    found = ranges_over_answers(low, reach, shares, leader)
    return tuple(replace(one, guaranteed=None) for one in found) if may_fail[leader] else found


def _can_lead(counted: Floats, shares: Floats, ranked: tuple[int, ...], order: tuple[int, ...]) -> tuple[CanLead, ...]:
    places = {maker: place for place, maker in enumerate(ranked)}
    found = can_lead(counted, shares, [places[maker] for maker in order])
    return tuple(replace(one, beaten_by=_rivals_in_sheet(one.beaten_by, ranked)) for one in found)


def _rivals_in_sheet(mix: Mapping[int, float] | None, ranked: tuple[int, ...]) -> dict[int, float] | None:
    return None if mix is None else {ranked[rival]: part for rival, part in mix.items()}


def _drawn(points: PointsTable, shares: Floats, front: tuple[int, ...], settings: Firmness) -> dict[str, RankShares]:
    low, high = points.low[list(front)], points.high[list(front)]
    streams = [Weightings(kind=kind, shares=shares, seed=settings.seed, spread=settings.spread) for kind in KINDS]
    return dict(zip(KINDS, rank_shares_of_each(low, high, streams), strict=True))


def _first(counted: Floats, shares: Floats, order: tuple[int, ...], settings: Firmness) -> FirstShares:
    points = counted[list(order)]
    return first_shares(points, points, Weightings(kind="any", shares=shares, seed=settings.seed))


def _in_sheet(found: WeightRange, ranked: tuple[int, ...]) -> WeightRange:
    """Return a weight range that speaks of makers by their positions in the sheet."""
    below, above = found.overtaken_below, found.overtaken_above
    return replace(
        found,
        overtaken_below=None if below is None else ranked[below],
        overtaken_above=None if above is None else ranked[above],
    )
