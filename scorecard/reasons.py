"""Answers and limits in words: what an answer says, why a maker is ruled out, what would let it in.

Enters: a criterion, what its answers count as, and a maker's position. Leaves: short phrases for screens and pages.
"""

from math import isinf, isnan

from scorecard.counting import Counting
from scorecard.criteria import Criterion, Limit
from scorecard.screening import allows
from scorecard.words import listed, shortest


def answer_words(criterion: Criterion, low: float, high: float) -> str:
    """Return an answer in words, with its unit.

    Parameters
    ----------
    criterion : whose answer it is
    low, high : as in ``Answers``: NaN where unknown, infinite where open; a choice is its position
    """
    if isnan(low):
        return "unknown"
    if criterion.choices is not None:
        return criterion.choices[int(low)]
    return with_unit(range_words(low, high), criterion.unit)


def range_words(low: float, high: float) -> str:
    """Return a number or a range in words.

    Examples
    --------
    >>> range_words(3, 3), range_words(3, 5), range_words(50, float("inf")), range_words(float("-inf"), 24)
    ('3', '3 to 5', 'at least 50', 'up to 24')
    """
    if low == high:
        return tidy(low)
    if isinf(low):
        return "anything" if isinf(high) else f"up to {tidy(high)}"
    return f"at least {tidy(low)}" if isinf(high) else f"{tidy(low)} to {tidy(high)}"


def tidy(number: float) -> str:
    """Return a number at its shortest, with at most four decimals."""
    return shortest(round(number, 4))


def with_unit(words: str, unit: str) -> str:
    """Return words with their unit, if there is one."""
    if not unit:
        return words
    return f"{words}%" if unit == "%" else f"{words} {unit}"


def why_ruled_out(criterion: Criterion, counting: Counting, maker: int) -> str:
    """Return the reason for which a limit rules a maker out, as a phrase that begins with the criterion's title."""
    limit = criterion.limit or Limit()
    said = answer_words(criterion, float(counting.typed.low[maker]), float(counting.typed.high[maker]))
    if criterion.choices is not None:
        return f"{criterion.title}: “{said}” is not accepted"
    tested = range_words(float(counting.tested.low[maker]), float(counting.tested.high[maker]))
    counts = f" counts as {tested}, which" if criterion.per_quantity else ""
    return f"{criterion.title}: {said}{counts} is {_beyond(limit, float(counting.tested.low[maker]))}"


def _beyond(limit: Limit, low: float) -> str:
    if limit.at_most is not None and low > limit.at_most:
        return f"above the limit of {tidy(limit.at_most)}"
    return f"below the limit of {tidy(limit.at_least or 0.0)}"


def what_lets_in(criterion: Criterion, counting: Counting, maker: int) -> str:
    """Return the answers with which a maker would pass a limit, as a phrase that begins with the criterion's title."""
    limit = criterion.limit or Limit()
    if criterion.choices is not None:
        fitting = [choice for choice in criterion.choices if allows(limit, choice)]
        return f"{criterion.title}: {listed(fitting, 'or') or 'none of the choices passes'}"
    fewest, most = (float(pieces[maker]) for pieces in counting.pieces)
    least = None if limit.at_least is None else limit.at_least * fewest
    greatest = None if limit.at_most is None else limit.at_most * most
    return f"{criterion.title}: {with_unit(_window(least, greatest), criterion.unit)}"


def _window(least: float | None, greatest: float | None) -> str:
    if least is None:
        return f"at most {tidy(greatest or 0.0)}"
    return f"at least {tidy(least)}" if greatest is None else f"{tidy(least)} to {tidy(greatest)}"
