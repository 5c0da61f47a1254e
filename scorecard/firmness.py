"""How firm first place is: every question about weights and open answers, asked of the ranked makers.

Enters: points, shares, limits and ranking of all makers. Leaves: answers that speak of makers by their positions in the
sheet; the array functions of ``sensitivity`` know the ranked makers alone, and the two are matched here.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from scorecard.criteria import CriteriaSet
from scorecard.points import PointsTable
from scorecard.ranking import Ranking
from scorecard.screening import Booleans
from scorecard.sensitivity.smallest_change import SmallestChanges, smallest_changes
from scorecard.sensitivity.weight_ranges import WeightRange, weight_ranges
from scorecard.value_functions import Floats
from scorecard.verdict import leaders_by_rule


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
    """

    ranked: tuple[int, ...]
    rivals: tuple[int, ...]
    weight_ranges: tuple[WeightRange | None, ...] = ()
    leaders_by_rule: Mapping[str, tuple[int, ...]] = field(default_factory=dict)
    changes: SmallestChanges | None = None

    def change_against(self, rival: int) -> Change:
        """Return the smallest change against a rival."""
        if self.changes is None:
            return Change()
        found = self.changes.against(self.ranked.index(rival))
        return Change() if found is None else Change(moved=found[0], weights=found[1])

    def moved(self) -> list[tuple[int, float | None]]:
        """Return every rival with the least weight, as a part of 1, that brings it level; None where nothing does."""
        return [(rival, self.change_against(rival).moved) for rival in self.rivals]

    def typed_ends(self, criterion: int, criteria: CriteriaSet) -> tuple[float | None, float | None]:
        """Return a weight range in weights as typed, the others as they are; None where it has none, or any will do."""
        found = self.weight_ranges[criterion]
        if found is None:
            return None, None
        others = sum(weight for at, weight in enumerate(criteria.typed_weights.values()) if at != criterion)
        low, high = (None if end >= 1 else end / (1 - end) * others for end in (found.low, found.high))
        return low, high


def examine(points: PointsTable, shares: Floats, ranking: Ranking, ruled_out: Booleans) -> HowFirm:
    """Return how firm first place is.

    Parameters
    ----------
    points : of all makers, (makers, criteria)
    shares : (criteria,), adding up to 1
    ranking : of all makers
    ruled_out : (makers,), who has no part in this
    """
    ranked = tuple(sorted(ranking.order))
    if not ranked:
        return HowFirm(ranked=(), rivals=())
    counted = points.counted[list(ranked)]
    leader = ranked.index(ranking.order[0])
    found = weight_ranges(counted, shares, leader)
    return HowFirm(
        ranked=ranked,
        rivals=ranking.order[1:],
        weight_ranges=tuple(None if one is None else _in_sheet(one, ranked) for one in found),
        leaders_by_rule=leaders_by_rule(points, shares, ruled_out),
        changes=smallest_changes(counted, shares, leader),
    )


def _in_sheet(found: WeightRange, ranked: tuple[int, ...]) -> WeightRange:
    """Return a weight range that speaks of makers by their positions in the sheet."""
    below, above = found.overtaken_below, found.overtaken_above
    return replace(
        found,
        overtaken_below=None if below is None else ranked[below],
        overtaken_above=None if above is None else ranked[above],
    )
