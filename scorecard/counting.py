"""From answers as typed to what counts: held within bounds, divided per unit, steadied by the number of ratings.

Enters: a criterion, the makers, the brief. Leaves, for every maker: what the limit tests (after ``per``) and what the
value function takes (after ``steady``), each as the range that the answer allows: a number is a range of one.
"""

from datetime import date

import numpy as np

from scorecard.answers import Answers, MakerTable
from scorecard.brief import UNITS, Brief, Unit
from scorecard.case import Case
from scorecard.criteria import Criterion, Steady
from scorecard.frozen import dataclass
from scorecard.measures import measured
from scorecard.value_functions import Floats


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Counting:
    """One criterion's answers on their way to points; every part is about (makers,).

    Parameters
    ----------
    typed : as read
    pieces : fewest and most pieces that the answer is divided by; (1, 1) where it is not divided
    per : unit that the answer is per, None where that is blank; empty where it is not divided
    tested : what the limit tests; where nothing is known, everything that is possible. A choice: its position, or NaN
    reached : what is steadied: as ``tested``, but an open end of a steadied rating reaches to the first or last knot
    allowed : what the value function takes; likewise
    counts_as : as ``allowed``, but NaN where nothing is known
    ratings : how many ratings a steadied answer rests on: fewest and most
    """

    typed: Answers
    pieces: tuple[Floats, Floats]
    tested: Answers
    reached: Answers
    allowed: Answers
    counts_as: Answers
    ratings: Answers | None = None
    per: tuple[Unit | None, ...] = ()


def typed_answers(criterion: Criterion, case: Case, as_of: date) -> Answers:
    """Return a criterion's answers as typed; what a measure computes where its own column is blank."""
    makers = len(case.table)
    typed = case.table.answers.get(criterion.key, Answers.all_unknown(makers))
    if criterion.measure is None or typed.known.all():
        return typed
    computed = measured(criterion.measure, case, as_of)
    return Answers(np.where(typed.known, typed.low, computed.low), np.where(typed.known, typed.high, computed.high))


def count(criterion: Criterion, case: Case, as_of: date) -> Counting:
    """Return a criterion's answers with what they count as.

    Parameters
    ----------
    criterion : one of the case's
    case : what was read
    as_of : the day that stands for today
    """
    typed = typed_answers(criterion, case, as_of)
    one = np.ones(len(typed.low))
    if criterion.choices is not None:
        return Counting(typed=typed, pieces=(one, one), tested=typed, reached=typed, allowed=typed, counts_as=typed)
    pieces = pieces_per_unit(case.table, case.brief) if criterion.per_quantity else (one, one)
    per = units_of(case.table) if criterion.per_quantity else ()
    tested = divided(_possible(typed, criterion.within), pieces)
    if criterion.steady is None:
        return Counting(
            typed=typed,
            pieces=pieces,
            tested=tested,
            reached=tested,
            allowed=tested,
            counts_as=_only(tested, typed.known),
            per=per,
        )
    counts = case.table.counts.get(criterion.key, Answers.all_unknown(len(typed.low)))
    ratings = _possible(counts, (0.0, np.inf))
    reached = _within_knots(tested, criterion.value.ends())
    allowed = steadied(reached, ratings, criterion.steady)
    return Counting(
        typed=typed,
        pieces=pieces,
        tested=tested,
        reached=reached,
        allowed=allowed,
        counts_as=_only(allowed, typed.known | counts.known),
        ratings=ratings,
        per=per,
    )


def units_of(table: MakerTable) -> tuple[Unit | None, ...]:
    """Return the unit that each maker's minimum is per; None where that is blank."""
    return table.minimum_per or (None,) * len(table)


def pieces_per_unit(table: MakerTable, brief: Brief) -> tuple[Floats, Floats]:
    """Return the fewest and the most pieces of the unit that each maker's minimum is per.

    Parameters
    ----------
    table : the makers, with the unit where it is given
    brief : how many pieces, in how many designs, colours, sizes

    Returns
    -------
    two of (makers,), pieces; they differ where the unit is blank, or the brief does not say how many of it there are
    """
    spans = np.array([brief.possible_pieces_per(unit) for unit in (None, *UNITS)])
    place = {unit: at for at, unit in enumerate((None, *UNITS))}
    both = spans[np.array([place[unit] for unit in units_of(table)], dtype=np.intp)]
    return both[:, 0], both[:, 1]


def divided(answers: Answers, pieces: tuple[Floats, Floats]) -> Answers:
    """Return answers divided by pieces: the least by the most pieces, the greatest by the fewest."""
    fewest, most = pieces
    low = answers.low / np.where(answers.low < 0, fewest, most)
    return Answers(low, answers.high / np.where(answers.high < 0, most, fewest))


def steadied(ratings: Answers, counts: Answers, rule: Steady) -> Answers:
    """Return ratings drawn to the usual one, the more so the fewer they rest on.

    Parameters
    ----------
    ratings : (makers,), r
    counts : (makers,), n, 0 or more, infinite where there is no telling
    rule : the usual rating u, and how many ratings it counts as, m

    Returns
    -------
    (makers,): (n·r + m·u) / (n + m), over the corners of both ranges; exactly u where n is 0

    References
    ----------
    The Bayesian average, a weighted mean of a rating and a prior.
    """
    low = [_drawn(ratings.low, n, rule) for n in (counts.low, counts.high)]
    high = [_drawn(ratings.high, n, rule) for n in (counts.low, counts.high)]
    return Answers(np.minimum(*low), np.maximum(*high))


def _drawn(rating: Floats, count: Floats, rule: Steady) -> Floats:
    finite = np.where(np.isinf(count), 1.0, count)
    weighed = np.where(finite == 0, 0.0, rating) * finite + rule.usual_counts_as * rule.usual
    mean = np.where(finite == 0, rule.usual, weighed / (finite + rule.usual_counts_as))
    return np.where(np.isinf(count), rating, mean)


def _possible(answers: Answers, bounds: tuple[float, float] | None) -> Answers:
    low, high = bounds or (-np.inf, np.inf)
    at_least = np.where(answers.known, np.maximum(answers.low, low), low)
    return Answers(at_least, np.where(answers.known, np.minimum(answers.high, high), high))


def _within_knots(answers: Answers, knots: tuple[float, float]) -> Answers:
    # an open end of a rating cannot be steadied: it reaches as far as the points vary
    low = np.where(np.isinf(answers.low), np.minimum(knots[0], answers.high), answers.low)
    return Answers(low, np.where(np.isinf(answers.high), np.maximum(knots[1], low), answers.high))


def _only(answers: Answers, known: "np.ndarray[tuple[int, ...], np.dtype[np.bool_]]") -> Answers:
    return Answers(np.where(known, answers.low, np.nan), np.where(known, answers.high, np.nan))
