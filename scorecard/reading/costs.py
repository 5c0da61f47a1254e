"""What was read of costs: the sheets Quotes and Freight, with the criteria file's tables, as one value."""

from typing import TYPE_CHECKING

from scorecard.errors import Problem
from scorecard.frozen import dataclass

if TYPE_CHECKING:
    from scorecard.costing.inputs import CostInputs

COST_SHEETS = ("Quotes", "Freight")


@dataclass(frozen=True, slots=True, kw_only=True)
class CostsReading:
    """What was read of costs.

    Parameters
    ----------
    inputs : None while nothing is quoted, and where there are problems
    problems, warnings, set_aside : by sheet, row and column
    """

    inputs: "CostInputs | None" = None
    problems: tuple[Problem, ...] = ()
    warnings: tuple[Problem, ...] = ()
    set_aside: tuple[Problem, ...] = ()
