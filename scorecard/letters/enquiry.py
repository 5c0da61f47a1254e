"""What to ask one maker: its open answers as questions, the most decisive first, and what the buyer looks up instead.

Enters: a calculation. Leaves: questions per maker. A rating is looked up, not asked of the one who is rated; how fast a
maker answers is never asked; what the tool works out itself is not asked either.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from math import isnan
from typing import Literal

import numpy as np

from scorecard.asks import MINIMUM_PER, cells_to_write
from scorecard.calculation import Calculation
from scorecard.criteria import Criterion
from scorecard.frozen import dataclass
from scorecard.letters.letting_in import letting_in_text
from scorecard.letters.plain import one_line
from scorecard.letters.question_words import asks_unit, folded, question_text
from scorecard.letters.quote_gaps import gap_questions
from scorecard.questions import Question
from scorecard.words import listed

Way = Literal["ask", "look up", "leave"]  # from the maker, by the buyer, not at all

COST = "landed_cost_per_piece"
RATINGS = frozenset({"rating", "ratings", "performance rating", "reviews"})


@dataclass(frozen=True, slots=True, kw_only=True)
class ToAsk:
    """One question.

    Parameters
    ----------
    criterion : its key; of what a quote leaves out the name of the measure
    text : the words
    could_change_leader : whether the answer alone could change the leader
    cells : of the sheet, into which the answer goes, listed
    """

    criterion: str
    text: str
    could_change_leader: bool = False
    cells: str = ""


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


def writing_order(calculation: Calculation) -> tuple[int, ...]:
    """Return the ranked makers: those whose answer alone could change the leader first, then all others by rank.

    Parameters
    ----------
    calculation : of a case on a day
    """
    deciding = (
        one.maker for one in calculation.questions if one.could_change_leader and _way(calculation, one) == "ask"
    )
    return tuple(dict.fromkeys([*deciding, *calculation.ranking.order]))


def enquiries_of(calculation: Calculation, makers: Iterable[int]) -> tuple[Enquiry, ...]:
    """Return what to ask some makers, ruled out or not; no questions where nothing is open that a maker could answer.

    Parameters
    ----------
    calculation : of a case on a day
    makers : their positions
    """
    by_maker: dict[int, list[Question]] = {}
    for question in calculation.questions:
        by_maker.setdefault(question.maker, []).append(question)
    return tuple(
        Enquiry(
            maker=maker,
            questions=(*_asked(calculation, by_maker.get(maker, ())), *_of_quote(calculation, by_maker, maker)),
        )
        if calculation.ranking.ranks[maker]
        else _to_let_in(calculation, maker)
        for maker in makers
    )


def _of_quote(calculation: Calculation, by_maker: Mapping[int, Sequence[Question]], maker: int) -> Iterator[ToAsk]:
    """Yield what a maker's quote leaves out; the only thing that is missing could change who leads, if its cost can."""
    found = list(gap_questions(calculation, maker))
    criteria = calculation.case.criteria.criteria
    of_cost = [one for one in by_maker.get(maker, ()) if criteria[one.criterion].measure == COST]
    decides = len(found) == 1 and any(one.could_change_leader for one in of_cost)
    for text, cells in found:
        yield ToAsk(criterion=COST, text=text, could_change_leader=decides, cells=cells)


def look_ups_of(calculation: Calculation) -> tuple[LookUp, ...]:
    """Return what the buyer looks up, in the order of the questions.

    Parameters
    ----------
    calculation : of a case on a day
    """
    open_ones = (one for one in calculation.questions if _way(calculation, one) == "look up")
    return tuple(_look_up(calculation, one) for one in open_ones)


def _asked(calculation: Calculation, questions: Iterable[Question]) -> tuple[ToAsk, ...]:
    return tuple(_to_ask(calculation, one) for one in questions if _way(calculation, one) == "ask")


def _to_let_in(calculation: Calculation, maker: int) -> Enquiry:
    """Return what to ask a maker that is ruled out: what rules it out first."""
    fails = np.flatnonzero(calculation.screening.fails[maker]).tolist()
    known = [at for at in fails if calculation.countings[at].typed.known[maker]]
    keys, criteria = calculation.case.criteria.keys, calculation.case.criteria.criteria
    first = tuple(
        ToAsk(criterion=keys[at], text=letting_in_text(calculation, maker, at), cells=_cells(calculation, maker, at))
        for at in known
        if _who_knows(criteria[at]) == "ask"
    )
    others = [one for one in _open_answers(calculation, maker) if one.criterion not in known]
    return Enquiry(maker=maker, questions=first + _asked(calculation, others))


def _cells(calculation: Calculation, maker: int, criterion: int) -> str:
    """Return where another answer than the one that fails goes, and its unit where that is asked too."""
    table, key = calculation.case.table, calculation.case.criteria.keys[criterion]
    per = [MINIMUM_PER] if asks_unit(calculation, maker, criterion) else []
    return listed(str(table.place(maker, one).cell) for one in (key, *per) if one in table.letters)


def _to_ask(calculation: Calculation, question: Question) -> ToAsk:
    return ToAsk(
        criterion=calculation.case.criteria.keys[question.criterion],
        text=question_text(calculation, question.maker, question.criterion),
        could_change_leader=question.could_change_leader,
        cells=cells_to_write(calculation, question.maker, question.criterion),
    )


def _open_answers(calculation: Calculation, maker: int) -> list[Question]:
    """Return the open answers of a maker that is ruled out, by what they carry."""
    points, typed = calculation.points, [one.typed for one in calculation.countings]
    ranged = np.array([one.high[maker] > one.low[maker] for one in typed])
    is_open = points.open[maker] | ~points.known[maker] | ranged | calculation.screening.may_fail[maker]
    carries = (calculation.shares * (points.high[maker] - points.low[maker])).tolist()
    found = [Question(maker=maker, criterion=int(at), carries=carries[at]) for at in np.flatnonzero(is_open)]
    return sorted(found, key=lambda one: -one.carries)


def _way(calculation: Calculation, question: Question) -> Way:
    """Return how an open answer is found out; what changes nothing is left."""
    criterion = calculation.case.criteria.criteria[question.criterion]
    may_fail = bool(calculation.screening.may_fail[question.maker, question.criterion])
    if not (question.could_change_leader or may_fail or question.carries > 0):
        return "leave"
    way = _who_knows(criterion)
    is_for_the_buyer = way == "ask" and not criterion.question and _is_of_the_brief(calculation, question)
    return "look up" if is_for_the_buyer else way


def _who_knows(criterion: Criterion) -> Way:
    """Return how answers on a criterion are found out: from the maker, by the buyer, or by the tool itself."""
    if criterion.measure == "response_days":
        return "leave"
    if criterion.question:
        return "ask"
    if _is_rating(criterion):
        return "look up"
    return "leave" if criterion.measure is not None else "ask"


def _is_rating(criterion: Criterion) -> bool:
    return criterion.steady is not None or folded(criterion.column or criterion.title) in RATINGS


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
    if _is_rating(criterion) and counting.typed.low[question.maker] != counting.typed.high[question.maker]:
        yield one_line(criterion.column or criterion.title)
    if criterion.steady is not None and _count_is_open(calculation, question):
        yield one_line(criterion.steady.count_column)


def _count_is_open(calculation: Calculation, question: Question) -> bool:
    counts = calculation.case.table.counts.get(calculation.case.criteria.keys[question.criterion])
    if counts is None:
        return True
    low, high = float(counts.low[question.maker]), float(counts.high[question.maker])
    return isnan(low) or low != high
