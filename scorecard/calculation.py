"""The whole calculation, in the order of the design, as one value.

Enters: a case and the day that stands for today. Leaves: everything that the machine-readable result and the report
are made from; nothing here reads a file, a clock or a global random state.
"""

from datetime import date
from typing import TYPE_CHECKING, Self

import numpy as np

from scorecard.case import Case
from scorecard.counting import Counting, count
from scorecard.firmness import HowFirm, examine
from scorecard.frozen import dataclass
from scorecard.points import PointsTable, table_of_points
from scorecard.questions import Question, Standing, questions
from scorecard.ranking import Ranking, rank_makers
from scorecard.scale_doubts import with_scale_doubts
from scorecard.scheduled import scheduled
from scorecard.screening import Screening, screen
from scorecard.value_functions import Floats
from scorecard.verdict import Verdict, reach_verdict

if TYPE_CHECKING:
    from scorecard.costed import Costed
    from scorecard.scheduling.schedule import Schedule


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Calculation:
    """Everything that was computed of a case.

    Parameters
    ----------
    case : what was read
    as_of : the day that stands for today
    shares : (criteria,), adding up to 1
    countings : (criteria,), answers on their way to points
    screening, points, ranking : of all makers
    questions : open answers of the ranked makers, those that could change the leader first
    firmness : how firm first place is
    verdict : what can be said of first place
    schedule : by when to order; None without a need-by date or anything to say
    """

    case: Case
    as_of: date
    shares: Floats
    countings: tuple[Counting, ...]
    screening: Screening
    points: PointsTable
    ranking: Ranking
    questions: tuple[Question, ...]
    firmness: HowFirm
    verdict: Verdict
    schedule: "Schedule | None" = None

    @property
    def ranked_costs(self) -> "Costed | None":
        """The costs of the makers that are ranked: who is ruled out has no part in who is the cheapest."""
        names, costed = self.case.table.makers, self.case.costed
        return None if costed is None else costed.of(names[maker] for maker in self.ranking.order)

    @classmethod
    def of(cls, case: Case, as_of: date) -> Self:
        """Compute everything of a case on a day."""
        criteria = case.criteria.criteria
        shares = np.array(list(case.criteria.shares.values()), dtype=float)
        countings = tuple(count(criterion, case, as_of) for criterion in criteria)
        screening = screen(criteria, countings)
        points = table_of_points(criteria, countings)
        ranking = rank_makers(points, shares, screening.ruled_out)
        standing = Standing(
            criteria=criteria,
            countings=countings,
            shares=shares,
            points=points,
            screening=screening,
            ranking=ranking,
        )
        asked = questions(standing)
        firmness = examine(points, shares, ranking, screening, case.firmness)
        return cls(
            case=with_scale_doubts(case, countings),
            as_of=as_of,
            shares=shares,
            countings=countings,
            screening=screening,
            points=points,
            ranking=ranking,
            questions=asked,
            firmness=firmness,
            verdict=reach_verdict(ranking, screening, asked, firmness.contenders()),
            schedule=scheduled(case, as_of, ranking.order, ranking.ruled_out),
        )
