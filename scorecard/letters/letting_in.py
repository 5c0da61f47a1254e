"""What to ask first of a maker that a limit rules out: whether it can do what is wanted all the same.

What a maker may be able to change, such as its minimum or its days, is asked with what is wanted. What is a plain fact,
such as its years in business, is asked again without saying which answer would do.
"""

from collections.abc import Iterator

from scorecard.brief import Brief
from scorecard.calculation import Calculation
from scorecard.criteria import Criterion, Limit
from scorecard.letters.plain import one_line
from scorecard.letters.question_words import (
    depends_on_the_order,
    known_question,
    lettered,
    of_what,
    sentence_of,
)
from scorecard.reasons import answer_words, decimals_of, stepped, with_unit
from scorecard.screening import allows
from scorecard.words import counted, shortest


def letting_in_text(calculation: Calculation, maker: int, criterion: int) -> str:
    """Return what to ask a maker about an answer that is known and fails its limit.

    Parameters
    ----------
    calculation : of a case on a day
    maker, criterion : positions
    """
    one, counting = calculation.case.criteria.criteria[criterion], calculation.countings[criterion]
    said = one_line(answer_words(one, float(counting.typed.low[maker]), float(counting.typed.high[maker])))
    if one.per_quantity and not one.question:
        return " ".join(_fewer(calculation, maker, criterion, said))
    return f"{sentence_of(one, calculation.case.brief)}{_about(one, calculation.case.brief, said)}"


def _fewer(calculation: Calculation, maker: int, criterion: int, said: str) -> Iterator[str]:
    """Yield whether the pieces that are wanted can be made, though the minimum is larger."""
    table, brief = calculation.case.table, calculation.case.brief
    unit = (table.minimum_per or (None,) * len(table))[maker]
    fewest, most = (float(pieces[maker]) for pieces in calculation.countings[criterion].pieces)
    wanted = [f"{counted(brief.quantity, 'piece')} in all"]
    if unit is None and fewest < most:
        wanted.append(f"{counted(int(fewest), 'piece')} of one design")
    elif unit not in (None, "order") and fewest == most:
        wanted = [f"{counted(int(fewest), 'piece')} of one {unit}"]
    per = "" if unit is None else " for the whole order" if unit == "order" else f" for each {unit}"
    yield f"Can you make {', and '.join(wanted)}?"
    yield f"Our note says: minimum {said}{per}."
    yield "If this is not possible, what is the smallest number?"
    if unit is None and fewest < most:
        yield of_what(brief)


def _about(criterion: Criterion, brief: Brief, said: str) -> str:
    """Return what follows the question itself: what our note says, and what would do where that may be said."""
    limit, known = criterion.limit or Limit(), known_question(criterion)
    if criterion.question or criterion.choices is not None:
        fitting = [one for one in criterion.choices or () if allows(limit, one)]
        if criterion.question or not fitting:
            return f" Our note says: {said}. Is this right?"
        if known is not None and not known.offers_choices:
            return ""
        return f" Our note says: {said}. This does not fit our order. Can you offer one of these? {lettered(fitting)}."
    if limit.at_most is not None and depends_on_the_order(criterion, brief):
        most = with_unit(
            f"at most {shortest(stepped(limit.at_most, decimals_of(criterion), up=False))}", criterion.unit
        )
        return f" Our note says: {said}. We need {most}. Is this possible?"
    return f" Our note says: {said}. Is this right?"
