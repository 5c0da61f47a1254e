"""Very long lists: the best of them are assessed, and the rest is counted.

Enters: a case of more makers than a page, a workbook or a person can take in. Leaves: a case of the best, saying how
many were left out. How firm first place is, is then asked among the best alone.
"""

from dataclasses import replace
from datetime import date

import numpy as np
from numpy.typing import NDArray

from scorecard.case import Case
from scorecard.counting import count
from scorecard.errors import Place, Problem
from scorecard.points import table_of_counted
from scorecard.screening import screen
from scorecard.value_functions import Floats

LONGEST = 20_000  # a list of up to so many makers is assessed whole
BEST = 200  # of a longer one, so many ranked makers, and as many of those that are ruled out


def shortened(case: Case, as_of: date) -> Case:
    """Return the case, or that of the best of a very long list, level ones in sheet order.

    Parameters
    ----------
    case : what was read
    as_of : the day that stands for today
    """
    if len(case.table) <= LONGEST:
        return case
    countings = tuple(count(criterion, case, as_of) for criterion in case.criteria)
    out = screen(case.criteria.criteria, countings).ruled_out
    scores = table_of_counted(case.criteria.criteria, countings) @ np.array(list(case.criteria.shares.values()))
    falling = _best(np.where(out, -np.inf, scores), min(BEST, int((~out).sum())))
    chosen = np.sort(np.concatenate([falling, np.flatnonzero(out)[:BEST]])).tolist()
    left_out = len(case.table) - len(chosen)
    warning = Problem(
        code="long-list",
        place=Place(file=case.table.file, sheet=case.table.sheet),
        found=f"the list holds {len(case.table)} makers",
        wanted=f"The {len(falling)} best are assessed, among themselves; {left_out} makers are left out",
    )
    return replace(case, table=case.table.only(chosen), left_out=left_out, warnings=(*case.warnings, warning))


def _best(scores: Floats, number: int) -> NDArray[np.intp]:
    """Return the positions of so many of the greatest, those first, level ones in their order."""
    if not number:
        return np.empty(0, dtype=np.intp)
    among = np.flatnonzero(scores >= np.partition(scores, -number)[-number])
    return among[np.argsort(-scores[among], kind="stable")[:number]]
