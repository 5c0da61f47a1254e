"""Open answers in words: whose answer on what, which answer would put whom first, and which cells to write it into.

Enters: a calculation and one of its questions. Leaves: phrases without a full stop.
"""

from collections.abc import Callable
from math import isinf, isnan

from scorecard.answers import MakerTable
from scorecard.calculation import Calculation
from scorecard.codes import CURRENCY_DECIMALS
from scorecard.criteria import Criterion
from scorecard.questions import Ends, Question, Turn
from scorecard.reasons import DECIMALS, answer_words, decimals_of, range_words, stepped, tidy, with_unit
from scorecard.value_functions import Stretches
from scorecard.words import listed, shortest

OF_QUOTES = frozenset({"landed_cost_per_piece", "days_to_door"})  # measures that quotes and freight answer
PRICE_HAS_TAX = "price_has_tax under [import] of the criteria file"
MINIMUM_PER, ASKED_ON, ANSWERED_ON = "Minimum is per", "Asked on", "Answered on"


def question_phrase(calculation: Calculation, question: Question) -> str:
    """Return a question as a phrase: whose answer on what, and which answer would put whom first."""
    name = calculation.case.table.makers[question.maker]
    subject = f"{name} on “{calculation.case.criteria.criteria[question.criterion].title}”"
    return f"{subject} ({consequence_phrase(calculation, question)})" if question.turns else subject


def consequence_phrase(calculation: Calculation, question: Question) -> str:
    """Return which answers to a question would put whom first; "" where none would."""
    if len(question.turns) > 1 and not any(turn.answers for turn in question.turns):
        leaders = (calculation.case.table.makers[turn.leader_then] for turn in question.turns)
        return f"{_given(calculation, question, question.turns[0])}, {listed(leaders, 'or')} leads"
    return "; ".join(_turn_phrase(calculation, question, turn) for turn in question.turns)


def _turn_phrase(calculation: Calculation, question: Question, turn: Turn) -> str:
    names = calculation.case.table.makers
    out = f"{names[question.maker]} is ruled out and " if turn.by == "limit" else ""
    return f"{_given(calculation, question, turn)}, {out}{names[turn.leader_then]} leads"


def _given(calculation: Calculation, question: Question, turn: Turn) -> str:
    criterion, maker = calculation.case.criteria.criteria[question.criterion], question.maker
    if turn.answers:
        return f"if it is {answers_phrase(criterion, turn.answers, turn.holds, per=_unit(calculation, question))}"
    counting = calculation.countings[question.criterion]
    if counting.typed.low[maker] != counting.typed.high[maker]:
        return "with the right answer"
    return "depending on what it is per" if criterion.per_quantity else "depending on how many ratings it rests on"


def _unit(calculation: Calculation, question: Question) -> str | None:
    per = calculation.countings[question.criterion].per
    return per[question.maker] if per else None


def answers_phrase(criterion: Criterion, stretches: Stretches, holds: Ends = (), *, per: str | None = None) -> str:
    """Return stretches of answers in words, such as "259 pieces or less"; "" without any.

    Parameters
    ----------
    criterion : whose answers they are
    stretches, holds : as in ``Turn``; without ``holds`` no end is among the answers
    per : unit that they are per
    """
    if criterion.choices is not None:
        return listed((f"“{answer_words(criterion, *one)}”" for one in stretches), "or") if stretches else ""
    ends = tuple(zip(stretches, holds or [(False, False)] * len(stretches), strict=True))

    def said(words: str) -> str:
        return with_unit(words, criterion.unit) + (f" per {per}" if per else "")

    if decimals_of(criterion) == 0 and criterion.unit not in CURRENCY_DECIMALS:
        whole = [(low, high) for one, held in ends for low, high in [_whole(one, held)] if low <= high]
        if whole:
            return listed((_whole_words(*one, said) for one in whole), "or")
    decimals = decimals_of(criterion) if criterion.unit in CURRENCY_DECIMALS else DECIMALS
    told = (_stretch(low, high, said, decimals, criterion.unit) for low, high in stretches)
    return listed(told, "or") if stretches else ""


def _whole(stretch: tuple[float, float], holds: tuple[bool, bool]) -> tuple[float, float]:
    """Return the least and the greatest whole number of a stretch; the least is above the greatest where none is."""
    low, high = stretch
    return (
        low if isinf(low) else stepped(low, 0, up=True, beyond=not holds[0]),
        high if isinf(high) else stepped(high, 0, up=False, beyond=not holds[1]),
    )


def _whole_words(low: float, high: float, said: Callable[[str], str]) -> str:
    if low == high or isinf(low) == isinf(high):
        return said(range_words(low, high))
    return f"{said(tidy(high))} or less" if isinf(low) else f"{said(tidy(low))} or more"


def _stretch(low: float, high: float, said: Callable[[str], str], decimals: int, unit: str) -> str:
    if low == high or (isinf(low) and isinf(high)):
        return said(range_words(low, high, unit))
    least = low if isinf(low) else stepped(low, decimals, up=True)
    most = high if isinf(high) else stepped(high, decimals, up=False)
    told: Callable[[float], str] = lambda end: tidy(end, unit)  # noqa: E731 - one word for both ends
    if least >= most:
        least, most, told = low, high, shortest  # too narrow for a round number
    if isinf(low):
        return f"less than {said(told(most))}"
    if isinf(high):
        return f"more than {said(told(least))}"
    return f"between {told(least)} and {said(told(most))}"


def where_to_write(calculation: Calculation, maker: int, criterion: int) -> str:
    """Return the cells that an open answer belongs into, with their sheet and file, as ``cells_to_write``."""
    cells, table = cells_to_write(calculation, maker, criterion), calculation.case.table
    if cells == PRICE_HAS_TAX:
        return cells
    return f"{cells} of {table.file}" if cells.startswith("the sheets") else f"{cells} of {sheet_words(table)}"


def sheet_words(table: MakerTable) -> str:
    """Return which sheet of which file a table of makers is, in words."""
    return f"the sheet {table.sheet} of {table.file}" if table.sheet else table.file


def cells_to_write(calculation: Calculation, maker: int, criterion: int, name: str = "") -> str:
    """Return the cells that an open answer belongs into, listed; the row, where it has no column yet.

    Parameters
    ----------
    calculation : of a case on a day
    maker, criterion : positions
    name : of the maker as it was read, where the calculation has it made fit for a page
    """
    table, one = calculation.case.table, calculation.case.criteria.criteria[criterion]
    if one.measure in OF_QUOTES and one.key not in table.letters:
        is_of_cost = one.measure == "landed_cost_per_piece"
        is_tax = is_of_cost and _only_sales_tax_is_open(calculation, name or table.makers[maker])
        return PRICE_HAS_TAX if is_tax else "the sheets Quotes and Freight"
    columns = [column for column in _open_columns(calculation, maker, criterion) if column in table.letters]
    return listed(str(table.place(maker, column).cell) for column in columns) if columns else f"row {table.rows[maker]}"


def _only_sales_tax_is_open(calculation: Calculation, name: str) -> bool:
    """Say whether nothing of a maker's cost is open but whether its price has sales tax inside."""
    from scorecard.costing.pieces import SALES_TAX_INSIDE, open_parts

    costed = calculation.case.costed
    cost = costed.chosen.get(name) if costed else None
    return cost is not None and open_parts(cost) == (SALES_TAX_INSIDE,)


def _open_columns(calculation: Calculation, maker: int, at: int) -> list[str]:
    one, counting = calculation.case.criteria.criteria[at], calculation.countings[at]
    columns = [one.key] if counting.typed.low[maker] != counting.typed.high[maker] else []
    if one.measure == "response_days" and one.key not in calculation.case.table.letters:
        asked = calculation.case.table.asked_on
        columns = [ANSWERED_ON] if len(asked) and not isnan(asked[maker]) else [ASKED_ON, ANSWERED_ON]
    fewest, most = counting.pieces
    if fewest[maker] < most[maker] and counting.per[maker] is None:
        columns.append(MINIMUM_PER)
    if (
        one.steady is not None
        and counting.ratings is not None
        and counting.ratings.low[maker] < counting.ratings.high[maker]
    ):
        columns.append(one.steady.count_column)
    return columns
