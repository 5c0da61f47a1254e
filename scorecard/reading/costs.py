"""What a folder says of costs: the sheets Quotes and Freight, with the criteria file's tables, as one value.

Enters: the makers' workbook, and the criteria file. Leaves: the inputs of a landed cost, or None while nothing is
quoted; every problem at its cell or key. Nothing of costs is loaded before there is a row to read.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from scorecard.errors import InputError, Problem
from scorecard.reading.criteria_file import CriteriaReading
from scorecard.reading.filled_sheets import filled_sheets
from scorecard.reading.makers import MakersReading, ReadingOptions

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


def read_costs(makers: MakersReading, criteria: CriteriaReading, options: ReadingOptions) -> CostsReading:
    """Return what the workbook's sheets and the criteria file say of costs.

    Parameters
    ----------
    makers : as read, with the workbook
    criteria : as read
    options : what to set aside, today, and the most rows
    """
    try:
        filled = filled_sheets(makers, COST_SHEETS)
        if not filled:
            return CostsReading()
        from scorecard.reading.cost_inputs import gathered

        return gathered(filled, makers, criteria, options)
    except InputError as refused:
        return CostsReading(problems=refused.problems)
