"""Who was asked, who answered in how many working days, and who is due a reminder.

Enters: Asked on and Answered on of the Makers sheet. Leaves: a list, who is due first, the longest wait first.
"""

from datetime import date
from math import inf

import numpy as np

from scorecard.calculation import Calculation
from scorecard.frozen import dataclass
from scorecard.measures import working_days
from scorecard.value_functions import Floats

REMIND_AFTER = 3  # working days; common practice, no source


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One maker that was asked.

    Parameters
    ----------
    maker : its position
    answered_on : None where it has not answered
    working_days : whole working days, Monday to Friday, until the answer; without one, so far
    is_due : whether it is due a reminder: ranked or named, not answered, and asked long enough ago
    """

    maker: int
    asked_on: date
    answered_on: date | None
    working_days: int
    is_due: bool


def asked_of(calculation: Calculation, remind_after: int = REMIND_AFTER, named: int | None = None) -> tuple[Asked, ...]:
    """Return who was asked: those due a reminder first, then those who have time, then those who answered.

    Parameters
    ----------
    calculation : of a case on a day
    remind_after : a reminder is due after more than so many working days without an answer
    named : position of a maker that is reminded though it is ruled out
    """
    asked_on, answered_on = calculation.case.table.asked_on, calculation.case.table.answered_on
    if not len(asked_on):
        return ()
    replies = answered_on if len(answered_on) else np.full(len(asked_on), np.nan)
    in_play = {*calculation.ranking.order, named}
    found = [
        _asked(calculation, maker, replies, remind_after if maker in in_play else inf)
        for maker in np.flatnonzero(~np.isnan(asked_on)).tolist()
    ]
    return tuple(sorted(found, key=lambda one: (not one.is_due, one.answered_on is not None, -_waiting(one))))


def _waiting(one: Asked) -> int:
    return one.working_days if one.answered_on is None else 0


def _asked(calculation: Calculation, maker: int, replies: Floats, patience: float) -> Asked:
    start, reply = calculation.case.table.asked_on[maker : maker + 1], replies[maker : maker + 1]
    has_answered = not np.isnan(reply[0])
    end = reply if has_answered else np.array([float(calculation.as_of.toordinal())])
    days = max(int(working_days(start, end)[0]), 0)
    return Asked(
        maker=maker,
        asked_on=date.fromordinal(int(start[0])),
        answered_on=date.fromordinal(int(reply[0])) if has_answered else None,
        working_days=days,
        is_due=not has_answered and days > patience,
    )
