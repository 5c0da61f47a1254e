"""What a maker's quote leaves out, as questions: its currency, the place of its term, and every cost without a figure.

Enters: a calculation and a maker. Leaves: questions with the cells that their answers go into; none where nothing is
quoted. What the buyer's own country charges is not asked of the maker, but whether its price has that inside.
"""

from collections.abc import Iterator

from scorecard.asks import PRICE_HAS_TAX
from scorecard.calculation import Calculation
from scorecard.codes import COUNTRIES
from scorecard.letters.plain import one_line
from scorecard.words import counted, listed

OF_THE_BUYER = frozenset({"duty", "import tax", "sales tax", "clearance", "unloading"})


def gap_questions(calculation: Calculation, maker: int) -> Iterator[tuple[str, str]]:
    """Yield what to ask of one maker's quote, each with where the answer goes.

    Parameters
    ----------
    calculation : of a case on a day
    maker : its position
    """
    costed, name = calculation.case.costed, calculation.case.table.makers[maker]
    cost = costed.chosen.get(name) if costed else None
    if cost is None:
        return
    from scorecard.costing.border_entries import sales_tax_unsaid

    head, brief = cost.reply.head, calculation.case.brief
    if not head.currency_named:
        yield "Your price names no currency. In which currency is it?", _cell(head.at("Currency").cell)
    if head.term and not head.term_place.strip():
        yield f"Your price is {head.term}. Which place does it name?", _cell(head.at("Place").cell)
    if any(sales_tax_unsaid(reading.situation) for reading in cost.readings):
        yield "Does your price have sales tax inside, or does it come on top?", PRICE_HAS_TAX
    pieces, country = counted(cost.quantities[1], "piece"), COUNTRIES.get(brief.destination or "", "in our country")
    names = [one for one in dict.fromkeys(one.name for one in cost.gaps) if one not in OF_THE_BUYER]
    if "price" in names:
        yield f"What is the price of one piece for {pieces}?", "the sheet Quotes"
    if "freight" in names:
        told = f"What does freight cost for {pieces} to our address ({country}), by each way that you offer?"
        yield told, "the sheet Freight"
    others = [one_line(name) for name in names if name not in ("price", "freight")]
    if others:
        told = f"Does your price or your freight cover {listed(others)}? If not, what do we pay for {pieces}?"
        yield told, "the sheets Quotes and Freight"


def _cell(cell: str | None) -> str:
    return f"{cell} of the sheet Quotes" if cell else "the sheet Quotes"
