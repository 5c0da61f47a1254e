"""The sheets Samples, Checks and Orders: how samples were judged, what was looked into, what was ordered.

Enters: the makers' workbook. Leaves: rounds, checks and orders, in sheet order, with every problem at its cell.
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from scorecard.errors import InputError, Problem
from scorecard.reading.criteria_file import CriteriaReading
from scorecard.reading.filled_sheets import filled_sheets
from scorecard.reading.makers import MakersReading, ReadingOptions

if TYPE_CHECKING:
    from scorecard.checks import Check
    from scorecard.orders import OrderRow
    from scorecard.samples import SampleRound

SAMPLES_SHEET, CHECKS_SHEET, ORDERS_SHEET = "Samples", "Checks", "Orders"
DEALING_SHEETS = (SAMPLES_SHEET, CHECKS_SHEET, ORDERS_SHEET)


@dataclass(frozen=True, slots=True, kw_only=True)
class DealingsReading:
    """What was read of dealings with makers.

    Parameters
    ----------
    samples, checks, orders : in sheet order; rows with a problem that matters are left out
    problems, warnings, set_aside : by sheet, row and column
    """

    samples: "tuple[SampleRound, ...]" = ()
    checks: "tuple[Check, ...]" = ()
    orders: "tuple[OrderRow, ...]" = ()
    problems: tuple[Problem, ...] = ()
    warnings: tuple[Problem, ...] = ()
    set_aside: tuple[Problem, ...] = ()


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
