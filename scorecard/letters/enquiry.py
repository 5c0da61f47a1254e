"""What to ask one maker: its open answers as questions, the most decisive first, and what the buyer looks up instead.

Enters: a calculation. Leaves: questions per maker. A rating is looked up, not asked of the one who is rated; how fast a
maker answers is never asked; what the tool works out itself is not asked either.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import isnan
from typing import Literal

import numpy as np

from scorecard.calculation import Calculation
from scorecard.letters.plain import one_line
from scorecard.letters.question_words import asks_unit, folded, question_text
from scorecard.questions import Question
from scorecard.words import listed

RATINGS = frozenset({"rating", "ratings", "performance rating", "reviews"})


@dataclass(frozen=True, slots=True, kw_only=True)
class ToAsk:
    """One question: the criterion's key, the words, and whether the answer alone could change the leader."""

    criterion: str
    text: str
    could_change_leader: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Enquiry:
    """What to ask one maker, by its position; the most decisive question first."""

    maker: int
    questions: tuple[ToAsk, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LookUp:
    """What the buyer finds out without the maker: of whom (a position), on which criterion, and what to do."""

    maker: int
    criterion: str
    text: str


def enquiries_of(calculation: Calculation) -> tuple[Enquiry, ...]:
    """Return what to ask every ranked maker of whom something is open, whose answer matters most first.

    Parameters
    ----------
    calculation : of a case on a day
    """
    by_maker: dict[int, list[Question]] = {}
    for question in calculation.questions:
        by_maker.setdefault(question.maker, []).append(question)
    made = (_enquiry(calculation, maker, questions) for maker, questions in by_maker.items())
    return tuple(one for one in made if one.questions)


def enquiry_of(calculation: Calculation, maker: int) -> Enquiry:
    """Return what to ask one maker, also one that is ruled out; no questions where nothing is open.

    Parameters
    ----------
    calculation : of a case on a day
    maker : its position
    """
    if calculation.ranking.ranks[maker]:
        return _enquiry(calculation, maker, [one for one in calculation.questions if one.maker == maker])
    return _enquiry(calculation, maker, _open_answers(calculation, maker))


def look_ups_of(calculation: Calculation) -> tuple[LookUp, ...]:
    """Return what the buyer looks up, in the order of the questions.

    Parameters
    ----------
    calculation : of a case on a day
    """
    open_ones = (one for one in calculation.questions if _way(calculation, one) == "look up")
    return tuple(_look_up(calculation, one) for one in open_ones)


def _enquiry(calculation: Calculation, maker: int, questions: Iterable[Question]) -> Enquiry:
    asked = (one for one in questions if _way(calculation, one) == "ask")
    return Enquiry(maker=maker, questions=tuple(_to_ask(calculation, one) for one in asked))


def _to_ask(calculation: Calculation, question: Question) -> ToAsk:
    return ToAsk(
        criterion=calculation.case.criteria.keys[question.criterion],
        text=question_text(calculation, question.maker, question.criterion),
        could_change_leader=question.could_change_leader,
    )


def _open_answers(calculation: Calculation, maker: int) -> list[Question]:
    """Return the open answers of a maker that is ruled out, by what they carry."""
    points, typed = calculation.points, [one.typed for one in calculation.countings]
    ranged = np.array([one.high[maker] > one.low[maker] for one in typed])
    is_open = points.open[maker] | ~points.known[maker] | ranged | calculation.screening.may_fail[maker]
    carries = (calculation.shares * (points.high[maker] - points.low[maker])).tolist()
    found = [Question(maker=maker, criterion=int(at), carries=carries[at]) for at in np.flatnonzero(is_open)]
    return sorted(found, key=lambda one: -one.carries)


def _way(calculation: Calculation, question: Question) -> Literal["ask", "look up", "leave"]:
    """Return how an open answer is found out: from the maker, by the buyer, or not at all."""
    criterion = calculation.case.criteria.criteria[question.criterion]
    may_fail = bool(calculation.screening.may_fail[question.maker, question.criterion])
    matters = question.could_change_leader or may_fail or question.carries > 0
    if not matters or criterion.measure == "response_days":
        return "leave"
    if criterion.question:
        return "ask"
    if criterion.steady is not None or folded(criterion.column or criterion.title) in RATINGS:
        return "look up"
    if criterion.measure is not None:
        return "leave"
    return "look up" if _is_of_the_brief(calculation, question) else "ask"


def _is_of_the_brief(calculation: Calculation, question: Question) -> bool:
    """Return whether the maker has said all, and the brief does not say how many colours or sizes the goods have."""
    typed = calculation.countings[question.criterion].typed
    is_exact = bool(typed.low[question.maker] == typed.high[question.maker])
    return is_exact and not asks_unit(calculation, question.maker, question.criterion)


def _look_up(calculation: Calculation, question: Question) -> LookUp:
    maker, key = question.maker, calculation.case.criteria.keys[question.criterion]
    name, headings = one_line(calculation.case.table.makers[maker]), list(_ratings_missing(calculation, question))
    if headings:
        text = f"{name}: {listed(headings)}, where its buyers rate it"
    else:
        unit = (calculation.case.table.minimum_per or ("order",))[maker]
        text = f"{name}: its minimum is per {unit}; add how many {unit}s the goods come in to the brief"
    return LookUp(maker=maker, criterion=key, text=text)


def _ratings_missing(calculation: Calculation, question: Question) -> Iterator[str]:
    """Yield the headings of a rating and its count that are not known exactly."""
    criterion, counting = (
        calculation.case.criteria.criteria[question.criterion],
        calculation.countings[question.criterion],
    )
    is_rating = criterion.steady is not None or folded(criterion.column or criterion.title) in RATINGS
    if is_rating and counting.typed.low[question.maker] != counting.typed.high[question.maker]:
        yield one_line(criterion.column or criterion.title)
    if criterion.steady is not None and _count_is_open(calculation, question):
        yield one_line(criterion.steady.count_column)


def _count_is_open(calculation: Calculation, question: Question) -> bool:
    counts = calculation.case.table.counts.get(calculation.case.criteria.keys[question.criterion])
    if counts is None:
        return True
    low, high = float(counts.low[question.maker]), float(counts.high[question.maker])
    return isnan(low) or low != high
