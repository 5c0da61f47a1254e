"""What was read of the sheets Samples, Checks and Orders: samples as judged, what was looked into, what was ordered."""

from typing import TYPE_CHECKING

from scorecard.errors import Problem
from scorecard.frozen import dataclass

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
