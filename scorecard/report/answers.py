"""One answer in words, as receipts, questions and the arithmetic tell it: what was typed, for what, counted as what."""

from math import inf, isnan

from scorecard.calculation import Calculation
from scorecard.counting import Counting
from scorecard.criteria import Criterion, UnknownRule
from scorecard.reasons import answer_words, range_words, tidy, times, typed_words
from scorecard.words import rounded


def answer_in_words(calculation: Calculation, maker: int, criterion: int) -> str:
    """Return an answer with what it is for and, where it is open, what it is counted as.

    Parameters
    ----------
    calculation : of a case on a day
    maker, criterion : positions
    """
    said = typed_in_words(calculation, maker, criterion)
    if not calculation.points.open[maker, criterion]:
        return said
    rule = calculation.case.criteria.criteria[criterion].unknown
    return f"{said}, counted as {rule_words(rule, float(calculation.points.counted[maker, criterion]))}"


def typed_in_words(calculation: Calculation, maker: int, criterion: int) -> str:
    """Return an answer as typed, with the pieces that it is divided by or the number of ratings it rests on."""
    one, counting = calculation.case.criteria.criteria[criterion], calculation.countings[criterion]
    said = typed_words(one, counting, maker)
    if not one.per_quantity or not counting.typed.known[maker]:
        return f"{said}{_ratings(one, counting, maker)}"
    return f"{said.removesuffix(' per order')}{_pieces(counting, maker)}"


def counts_as_in_words(calculation: Calculation, maker: int, criterion: int) -> str:
    """Return what the value function takes of an answer, without its unit where it is divided by pieces."""
    one, counting = calculation.case.criteria.criteria[criterion], calculation.countings[criterion]
    low, high = float(counting.counts_as.low[maker]), float(counting.counts_as.high[maker])
    if one.per_quantity and not isnan(low):
        return times(range_words(low, high))
    return answer_words(one, low, high)


def rule_words(rule: UnknownRule, points: float) -> str:
    """Return in words what an open answer is counted as.

    Examples
    --------
    >>> rule_words("middle", 50), rule_words(40.0, 40)
    ('the middle', '40.0 points')
    """
    if isinstance(rule, str):
        return f"the {rule}"
    return f"{rounded(points)} points"


def _pieces(counting: Counting, maker: int) -> str:
    fewest, most = (float(pieces[maker]) for pieces in counting.pieces)
    if fewest < most and counting.per[maker] is None:
        return f", for {tidy(most)} if per order or {tidy(fewest)} if per design"
    comma = "" if counting.per[maker] in (None, "order") else ","
    return f"{comma} for {range_words(fewest, most)}"


def _ratings(criterion: Criterion, counting: Counting, maker: int) -> str:
    if criterion.steady is None or counting.ratings is None:
        return ""
    fewest, most = float(counting.ratings.low[maker]), float(counting.ratings.high[maker])
    if fewest == 0 and most == inf:
        return ", from an unknown number of ratings" if counting.typed.known[maker] else ""
    return f", from {range_words(fewest, most)} {'rating' if fewest == most == 1 else 'ratings'}"
