"""Answers and limits in words: what an answer says, why a maker is ruled out, what would let it in.

Enters: a criterion, what its answers count as, and a maker's position. Leaves: short phrases for screens and pages.
"""

from datetime import date
from math import ceil, floor, isinf, isnan

from scorecard.case import Case
from scorecard.codes import CURRENCY_DECIMALS, money
from scorecard.counting import Counting, count
from scorecard.criteria import Criterion, Limit
from scorecard.screening import HAIR, allows, screen
from scorecard.words import listed, shortest

PLURALS = frozenset(
    {"pieces", "years", "months", "weeks", "days", "hours", "minutes", "designs", "colours", "sizes", "orders"}
    | {"ratings", "stars", "marks", "points", "samples", "cartons", "sheets"}
)
"""The units that a sheet is likely to hold, whose singular lacks the last letter."""

WHOLE_THINGS = frozenset({"piece", "colour", "design", "size", "item", "order", "rating", "buyer"})
DECIMALS = 4  # that a tidy number has at most
LEVEL = 1e-9  # an end that is nearer to a round number than this is that number


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
    return with_unit(range_words(low, high, criterion.unit), criterion.unit)


def range_words(low: float, high: float, unit: str = "") -> str:
    """Return a number or a range in words; of money to the last minor unit.

    Examples
    --------
    >>> range_words(3, 3), range_words(3, 5), range_words(50, float("inf")), range_words(float("-inf"), 24)
    ('3', '3 to 5', 'at least 50', 'up to 24')
    >>> range_words(2.6, 8.733, "GBP")
    '2.60 to 8.73'
    """
    if isinf(low) and isinf(high):
        return "anything"
    least, most = tidy(low, unit), tidy(high, unit)
    if least == most:
        return least
    if isinf(low):
        return f"up to {most}"
    return f"at least {least}" if isinf(high) else f"{least} to {most}"


def tidy(number: float, unit: str = "") -> str:
    """Return a number at its shortest, with at most four decimals; money to the last minor unit of its currency."""
    return money(number, unit) if unit in CURRENCY_DECIMALS else shortest(round(number, DECIMALS))


def decimals_of(criterion: Criterion) -> int:
    """Return how many decimals an answer has at most where one is named: none for pieces and other whole things."""
    *_, last = criterion.unit.casefold().split() or [""]
    if criterion.unit in CURRENCY_DECIMALS:
        return CURRENCY_DECIMALS[criterion.unit]
    return 0 if criterion.per_quantity or last.removesuffix("s") in WHOLE_THINGS else DECIMALS


def stepped(number: float, decimals: int, *, up: bool, beyond: bool = False) -> float:
    """Return a number rounded up or down, so that what is said of it stays true.

    Parameters
    ----------
    number : finite
    decimals : of the result
    up : rather than down
    beyond : whether the result must lie beyond the number itself

    Examples
    --------
    >>> stepped(66.6667, 0, up=False), stepped(66.66666, 4, up=False), stepped(260, 0, up=False, beyond=True)
    (66.0, 66.6666, 259.0)
    """
    scale = 10**decimals
    scaled, step = number * scale, (1 if up else -1) if beyond else 0
    near = round(scaled)
    if abs(scaled - near) <= (LEVEL if beyond else HAIR) * abs(near):
        return float((near + step) / scale)
    return float((ceil(scaled) if up else floor(scaled)) / scale)


def with_unit(words: str, unit: str) -> str:
    """Return words with their unit, if there is one; one of a well-known unit is singular.

    Examples
    --------
    >>> with_unit("3", "days"), with_unit("at least 1", "working days"), with_unit("5", "%"), with_unit("5", "")
    ('3 days', 'at least 1 working day', '5%', '5')
    """
    if not unit:
        return words
    if unit == "%":
        return f"{words}%"
    *_, last = unit.split() or [""]
    is_one = words in ("1", "at least 1", "up to 1")
    return f"{words} {unit[:-1] if is_one and last.casefold() in PLURALS else unit}"


def typed_words(criterion: Criterion, counting: Counting, maker: int) -> str:
    """Return an answer as typed, in words, with the unit that it is per where that is known."""
    said = answer_words(criterion, float(counting.typed.low[maker]), float(counting.typed.high[maker]))
    unit = counting.per[maker] if counting.per else None
    return f"{said} per {unit}" if unit and said != "unknown" else said


def why_ruled_out(criterion: Criterion, counting: Counting, maker: int) -> str:
    """Return the reason for which a limit rules a maker out, as a phrase that begins with the criterion's title."""
    limit, said = criterion.limit or Limit(), typed_words(criterion, counting, maker)
    if criterion.choices is not None:
        return f"{criterion.title}: “{said}” is not accepted"
    low, high = float(counting.tested.low[maker]), float(counting.tested.high[maker])
    if criterion.per_quantity:
        wanted = _times_wanted(counting, maker, low, high)
        return f"{criterion.title}: {said} is {wanted}, {_beyond(limit, low)}×"
    return f"{criterion.title}: {said} is {_beyond(limit, low)}"


def reasons_against(case: Case, maker: int, as_of: date) -> tuple[str, ...]:
    """Return why the limits rule a maker out, each as a sentence; none where they do not.

    Parameters
    ----------
    maker : its position
    """
    limited = [criterion for criterion in case.criteria if criterion.limit is not None]
    if not limited:
        return ()
    countings = [count(criterion, case, as_of) for criterion in limited]
    fails = screen(limited, countings).fails[maker].tolist()
    told = zip(limited, countings, fails, strict=True)
    return tuple(why_ruled_out(criterion, counting, maker) for criterion, counting, is_failed in told if is_failed)


def _times_wanted(counting: Counting, maker: int, low: float, high: float) -> str:
    """Return how many times the pieces wanted; where it is not known what the answer is per, either way."""
    typed, per = counting.typed, counting.per[maker] if counting.per else None
    fewest, most = (float(pieces[maker]) for pieces in counting.pieces)
    if per is None and fewest < most and typed.low[maker] == typed.high[maker]:
        whole, part = (times(tidy(round(end, 2))) for end in (low, high))
        return f"{whole} what is wanted if it is per order, {part} if per design"
    return f"{times(range_words(low, high))} what is wanted"


def times(words: str) -> str:
    """Return how many times the pieces wanted.

    Examples
    --------
    >>> times("1.25"), times("3 to 12")
    ('1.25×', '3 to 12×')
    """
    return f"{words}×"


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
    part, whole = (with_unit(window_words(criterion, pieces), criterion.unit) for pieces in (fewest, most))
    unit = counting.per[maker] if counting.per else None
    if fewest == most:
        return f"{criterion.title}: {whole} per {unit}" if unit else f"{criterion.title}: {whole}"
    if unit is None:
        return f"{criterion.title}: {whole} if per order, {part} if per design"
    return f"{criterion.title}: {whole} per {unit} with 1 {unit}, less with more {unit}s"


def window_words(criterion: Criterion, pieces: float = 1.0) -> str:
    """Return which answers pass a limit on numbers, rounded to the side that passes.

    Parameters
    ----------
    criterion : with its limit
    pieces : that the answer is divided by
    """
    limit, decimals = criterion.limit or Limit(), decimals_of(criterion)
    least, most = (None if end is None else end * pieces for end in (limit.at_least, limit.at_most))
    low = None if least is None else stepped(least, decimals, up=True)
    high = None if most is None else stepped(most, decimals, up=False)
    if low is not None and high is not None and low > high:
        low, high = least, most  # no round number passes
    if low is None:
        return f"at most {shortest(high or 0.0)}"
    return f"at least {shortest(low)}" if high is None else f"{shortest(low)} to {shortest(high)}"
