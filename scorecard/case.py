"""The case: everything that was read from a sourcing folder, checked, before anything is computed."""

from dataclasses import field, replace
from datetime import date, datetime
from typing import TYPE_CHECKING

from scorecard.answers import MakerTable
from scorecard.brief import Brief
from scorecard.criteria import CriteriaSet, Firmness
from scorecard.errors import Problem
from scorecard.frozen import dataclass

if TYPE_CHECKING:
    from scorecard.care import CareFacts
    from scorecard.checks import Check
    from scorecard.costed import Costed
    from scorecard.costing.inputs import CostInputs
    from scorecard.inspection.settings import InspectionSettings
    from scorecard.memory import Record
    from scorecard.order_terms import OrderTerms
    from scorecard.ordering.selling import Selling
    from scorecard.orders import OrderRow
    from scorecard.samples import SampleRound
    from scorecard.scheduling.inputs import ScheduleInputs


def day_meant(as_of: date | None) -> date:
    """Return the day that stands for today: the one given, else the clock's where the user is.

    Raises
    ------
    TypeError
        If what is given is no plain day, such as a text.
    """
    if as_of is None:
        return datetime.now().astimezone().date()
    if isinstance(as_of, datetime) or not isinstance(as_of, date):
        raise TypeError(f"as_of is {as_of!r}, which is not a day. Give a datetime.date, such as date(2026, 11, 25).")
    return as_of


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceFile:
    """A file that was read.

    Parameters
    ----------
    name : without its folder
    digest : SHA-256 of its bytes, hexadecimal
    """

    name: str
    digest: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Case:
    """What was read.

    Parameters
    ----------
    title : of the page
    warnings : what was noticed, in the order of the files
    set_aside : unreadable cells that were taken as unknown, on the user's word
    sources : the files, in the order in which they were read
    costs : what quotes, freight and the criteria file say of costs; None while nothing is quoted
    memory : records of own orders that the folder keeps, oldest first
    samples, checks, orders : rows of the sheets Samples, Checks and Orders
    selling : what a piece sells for, and how many may; None where the criteria file says nothing
    inspection, care, order : what the criteria file says of arrival and of the order sheet; None where it says nothing
    schedule : what was read of days and orders; None where there is nothing to say
    left_out : how many makers of a very long list were left out of the calculation
    """

    title: str
    brief: Brief
    criteria: CriteriaSet
    table: MakerTable
    firmness: Firmness = field(default_factory=Firmness)
    warnings: tuple[Problem, ...] = ()
    set_aside: tuple[Problem, ...] = ()
    sources: tuple[SourceFile, ...] = ()
    costs: "CostInputs | None" = None
    costed: "Costed | None" = None
    selling: "Selling | None" = None
    samples: "tuple[SampleRound, ...]" = ()
    checks: "tuple[Check, ...]" = ()
    orders: "tuple[OrderRow, ...]" = ()
    inspection: "InspectionSettings | None" = None
    care: "CareFacts | None" = None
    order: "OrderTerms | None" = None
    memory: "tuple[Record, ...]" = ()
    schedule: "ScheduleInputs | None" = None
    left_out: int = 0

    def with_criteria(self, criteria: CriteriaSet) -> "Case":
        """Return the same case with other criteria or weights."""
        return replace(self, criteria=criteria)
