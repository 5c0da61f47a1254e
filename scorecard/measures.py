"""Measures: answers that the tool computes itself, from other columns, on the day that stands for today.

Each measure is one frozen class with the same method; a new measure is a new class in ``MEASURES``, with its own test.
"""

from collections.abc import Callable, Mapping
from datetime import date
from types import MappingProxyType
from typing import TYPE_CHECKING, Protocol

import numpy as np
from numpy.typing import NDArray

from scorecard.answers import Answers
from scorecard.case import Case
from scorecard.costed import costed_on
from scorecard.frozen import dataclass
from scorecard.remembered import totals_of
from scorecard.value_functions import Floats

if TYPE_CHECKING:
    from fractions import Fraction

    from scorecard.costing.landed import LandedCost
    from scorecard.memory import Totals

EPOCH_ORDINAL = date(1970, 1, 1).toordinal()


class Measure(Protocol):
    """What every measure answers."""

    def answers(self, case: Case, as_of: date) -> Answers:
        """Return all makers' answers, unknown where nothing is there to work them out from."""


def working_days(start: Floats, end: Floats) -> Floats:
    """Return the whole working days, Monday to Friday, from one day to another.

    Parameters
    ----------
    start, end : (makers,), days as ``date.toordinal``; the day of the start counts, the day of the end does not

    Returns
    -------
    (makers,), days

    References
    ----------
    Counted as ``numpy.busday_count`` counts.

    Examples
    --------
    >>> friday, monday = date(2026, 11, 20).toordinal(), date(2026, 11, 23).toordinal()
    >>> working_days(np.array([float(friday)]), np.array([float(monday)])).tolist()
    [1.0]
    """
    return np.busday_count(_as_days(start), _as_days(end)).astype(float)


def _as_days(ordinals: Floats) -> NDArray[np.datetime64]:
    return (ordinals - EPOCH_ORDINAL).astype("int64").astype("datetime64[D]")


@dataclass(frozen=True, slots=True)
class ResponseDays:
    """Whole working days from Asked on to Answered on; asked and not answered: at least the days so far."""

    def answers(self, case: Case, as_of: date) -> Answers:
        """Return all makers' response days; unknown where a maker was not asked, or a column is missing."""
        table = case.table
        if not len(table.asked_on) or not len(table.answered_on):
            return Answers.all_unknown(len(table))
        asked = ~np.isnan(table.asked_on)
        answered = asked & ~np.isnan(table.answered_on)
        low = np.full(len(table), np.nan)
        until = np.where(answered, table.answered_on, float(as_of.toordinal()))
        low[asked] = np.maximum(working_days(table.asked_on[asked], until[asked]), 0)
        return Answers(low, np.where(answered | ~asked, low, np.inf))


@dataclass(frozen=True, slots=True)
class SampleMarks:
    """The marks, 0 to 10, of each maker's samples, as ``samples.sample_mark`` chooses them."""

    def answers(self, case: Case, as_of: date) -> Answers:  # noqa: ARG002 - every measure is asked alike
        """Return all makers' sample marks; unknown where nothing was marked."""
        if not case.samples:
            return Answers.all_unknown(len(case.table))
        from scorecard.samples import sample_mark

        marks = [sample_mark(case.samples, maker) or (np.nan, np.nan) for maker in case.table.makers]
        both = np.array(marks, dtype=float).reshape(len(marks), 2)
        return Answers(both[:, 0], both[:, 1])


@dataclass(frozen=True, slots=True)
class LandedCostPerPiece:
    """What a good piece costs at the door by the way that stands for its maker; unknown where a cost is missing."""

    def answers(self, case: Case, as_of: date) -> Answers:
        """Return all makers' cost of a good piece, in the brief's currency."""
        if case.costs is None:
            return Answers.all_unknown(len(case.table))
        from scorecard.costing.choosing import answer_of_cost

        return _of_chosen_ways(case, as_of, answer_of_cost)


@dataclass(frozen=True, slots=True)
class DaysToDoor:
    """Days from the order to the door by the way that stands for its maker, the same as for its cost."""

    def answers(self, case: Case, as_of: date) -> Answers:
        """Return all makers' days to the door."""
        if case.costs is None:
            return Answers.all_unknown(len(case.table))
        from scorecard.costing.choosing import answer_of_days

        return _of_chosen_ways(case, as_of, answer_of_days)


def _of_chosen_ways(case: Case, as_of: date, answer: "Callable[[LandedCost | None], tuple[float, float]]") -> Answers:
    costed = costed_on(case, as_of)
    chosen = costed.chosen if costed else {}
    ends = [answer(chosen.get(maker)) for maker in case.table.makers]
    both = np.array(ends, dtype=float).reshape(len(ends), 2)
    return Answers(both[:, 0], both[:, 1])


@dataclass(frozen=True, slots=True)
class OnTimeShare:
    """Of 100 own orders, those that came by the promised day."""

    def answers(self, case: Case, as_of: date) -> Answers:
        """Return all makers' share; unknown where no own order can be judged."""
        return _of_own_orders(case, as_of, lambda totals: totals.on_time_share)


@dataclass(frozen=True, slots=True)
class FaultyShare:
    """Of 100 pieces of own orders that were opened, the faulty ones: any fault counts, minor ones too."""

    def answers(self, case: Case, as_of: date) -> Answers:
        """Return all makers' share; unknown where the faulty pieces of no own order were counted."""
        return _of_own_orders(case, as_of, lambda totals: totals.faulty_share)


def _of_own_orders(case: Case, as_of: date, share: "Callable[[Totals], Fraction | None]") -> Answers:
    found = {maker: share(totals) for maker, totals in totals_of(case, as_of).items()}
    values = [found.get(maker) for maker in case.table.makers]
    known = np.array([np.nan if value is None else float(value) for value in values])
    return Answers(known, known)


MEASURES: Mapping[str, Measure] = MappingProxyType(
    {
        "response_days": ResponseDays(),
        "sample_marks": SampleMarks(),
        "landed_cost_per_piece": LandedCostPerPiece(),
        "days_to_door": DaysToDoor(),
        "on_time_share": OnTimeShare(),
        "faulty_share": FaultyShare(),
    }
)


def measured(name: str, case: Case, as_of: date) -> Answers:
    """Return a measure's answers for all makers: unknown where its columns are missing.

    Parameters
    ----------
    name : of the measure, as a criterion names it
    case : what was read
    as_of : the day that stands for today
    """
    measure = MEASURES.get(name)
    return Answers.all_unknown(len(case.table)) if measure is None else measure.answers(case, as_of)
