"""The assessment: a case, assessed on a day, with its result as JSON and as tables."""

from datetime import date
from typing import TYPE_CHECKING, Any

from scorecard.calculation import Calculation
from scorecard.case import Case, day_meant
from scorecard.costed import with_costs
from scorecard.long_list import shortened
from scorecard.results import result_of

if TYPE_CHECKING:
    import pandas as pd


class Assessment(Calculation):
    """Everything that was computed of a case; see ``Calculation`` for its parts."""

    __slots__ = ()

    def as_json(self) -> dict[str, Any]:
        """Return the machine-readable result of schema ``scorecard/1``, ready for ``json.dumps``."""
        return result_of(self)

    def frames(self) -> "dict[str, pd.DataFrame]":
        """Return the result as tables: makers, points, weight ranges, smallest changes, questions."""
        from scorecard.frames import frames_of

        return frames_of(self.as_json())


def assess(case: Case, *, as_of: date | None = None) -> Assessment:
    """Compute everything of a case on a day.

    Parameters
    ----------
    case : what ``read_folder`` returned
    as_of : the day that stands for today; working days since a question was asked count up to it. None: the clock's

    Raises
    ------
    TypeError
        If ``as_of`` is no day.
    """
    day = day_meant(as_of)
    return Assessment.of(shortened(with_costs(case, day), day), day)
