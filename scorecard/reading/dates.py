"""What a folder says of dates: orders, makers' countries, quotes and the criteria file, as the inputs of a schedule.

Enters: what was read. Leaves: the inputs, or None where nobody has said anything of days; every problem at its cell or
key. Neither the schedule nor the holidays are loaded before there is something to say.
"""

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from scorecard.errors import Place, Problem
from scorecard.reading.costs import CostsReading
from scorecard.reading.criteria_file import CriteriaReading
from scorecard.reading.dealings import DealingsReading
from scorecard.reading.makers import MakersReading, ReadingOptions

if TYPE_CHECKING:
    from scorecard.costing.inputs import CostInputs
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

    def on(self, costs: "CostInputs | None") -> "CostInputs | None":
        """Return the inputs of landed costs with the last day to order of each quoted maker and way."""
        if costs is None or self.inputs is None:
            return costs
        from scorecard.scheduling.plans import latest_orders

        quoted = dict.fromkeys(row.maker for row in costs.quotes)
        return replace(costs, latest_orders=latest_orders(self.inputs, quoted))


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadSoFar:
    """What the criteria file and the other sheets say."""

    criteria: CriteriaReading
    makers: MakersReading
    costs: CostsReading
    dealings: DealingsReading


def read_dates(read: ReadSoFar, options: ReadingOptions, *, asked_for: bool = False) -> DatesReading:
    """Return what a folder says of dates.

    Parameters
    ----------
    read : what has been read already
    options : of them, today
    asked_for : whether a schedule is wanted even where nobody has said anything of days
    """
    warnings = _past(read.criteria, options)
    if not (asked_for or _says_anything(read)):
        return DatesReading(warnings=warnings)
    from scorecard.reading.date_inputs import gathered

    found = gathered(read, options)
    return DatesReading(inputs=found.inputs, problems=found.problems, warnings=(*warnings, *found.warnings))


def _says_anything(read: ReadSoFar) -> bool:
    """Say whether the need-by date and anybody's days are there."""
    brief, costs = read.criteria.brief, read.costs.inputs
    if brief is None or brief.need_by is None:
        return False
    said = [row.days for row in costs.quotes] + [row.days for row in costs.offers] if costs else []
    given = read.criteria.schedule is not None or bool(read.dealings.orders)
    return given or any(days is not None for days in said)


def _past(criteria: CriteriaReading, options: ReadingOptions) -> tuple[Problem, ...]:
    """Return the warning of a need-by date that is over."""
    need_by = criteria.brief.need_by if criteria.brief else None
    if need_by is None or options.as_of is None or need_by >= options.as_of:
        return ()
    file = criteria.source.name if criteria.source else None
    found = f"{need_by.isoformat()} is before {options.as_of.isoformat()}, which stands for today"
    wanted = "Write the day by which you need the pieces; today is the clock's day, or that of --as-of"
    return (Problem(code="need-by-past", place=Place(file=file, key="brief.need_by"), found=found, wanted=wanted),)
