"""Costs, dealings and dates of a folder: each read only once there is something to read.

Enters: the makers' workbook, and the criteria file. Leaves: what was read of each, every problem at its cell or key.
Nothing of costs, schedules and holidays is loaded before: a first ranking needs none of it.
"""

from scorecard.errors import InputError, Place, Problem
from scorecard.reading.costs import COST_SHEETS, CostsReading
from scorecard.reading.criteria_file import CriteriaReading
from scorecard.reading.dates import DatesReading, ReadSoFar
from scorecard.reading.dealings import DEALING_SHEETS, DealingsReading
from scorecard.reading.filled_sheets import filled_sheets
from scorecard.reading.makers import MakersReading, ReadingOptions


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


def read_dealings(makers: MakersReading, criteria: CriteriaReading, options: ReadingOptions) -> DealingsReading:
    """Return what the sheets Samples, Checks and Orders say.

    Parameters
    ----------
    makers : as read, with the workbook
    criteria : as read; the brief's decimal mark settles numbers typed as text
    options : what to set aside, today, and the most rows
    """
    try:
        filled = filled_sheets(makers, DEALING_SHEETS)
        if not filled:
            return DealingsReading()
        from scorecard.reading.dealing_rows import gathered

        return gathered(filled, makers, criteria, options)
    except InputError as refused:
        return DealingsReading(problems=refused.problems)


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
    return DatesReading(inputs=found.inputs, problems=found.problems, warnings=warnings)


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
