"""Measures: answers that the tool computes itself, from other columns, on the day that stands for today.

Each measure is one frozen class with the same method; a new measure is a new class in ``MEASURES``, with its own test.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from types import MappingProxyType
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from scorecard.answers import Answers
from scorecard.case import Case
from scorecard.value_functions import Floats

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
        both = np.array(marks, dtype=float).reshape(-1, 2)
        return Answers(both[:, 0], both[:, 1])


MEASURES: Mapping[str, Measure] = MappingProxyType({"response_days": ResponseDays(), "sample_marks": SampleMarks()})


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
