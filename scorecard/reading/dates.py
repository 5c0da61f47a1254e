"""What was read of dates: orders, makers' countries, quotes and the criteria file, as the inputs of a schedule."""

from typing import TYPE_CHECKING

from scorecard.errors import Problem
from scorecard.frozen import dataclass
from scorecard.reading.costs import CostsReading
from scorecard.reading.criteria_file import CriteriaReading
from scorecard.reading.dealings import DealingsReading
from scorecard.reading.makers import MakersReading

if TYPE_CHECKING:
    from scorecard.scheduling.inputs import ScheduleInputs


@dataclass(frozen=True, slots=True, kw_only=True)
class DatesReading:
    """What was read of dates.

    Parameters
    ----------
    inputs : None where there is nothing to say, and where there are problems
    problems, warnings : by key, then by row and column
    """

    inputs: "ScheduleInputs | None" = None
    problems: tuple[Problem, ...] = ()
    warnings: tuple[Problem, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadSoFar:
    """What the criteria file and the other sheets say."""

    criteria: CriteriaReading
    makers: MakersReading
    costs: CostsReading
    dealings: DealingsReading
