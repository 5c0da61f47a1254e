"""Sales tax on an order sheet in words: whether the price has it inside, and what to ask between two countries.

Enters: one reading of a landed cost. Leaves: what stands beside the bill, and notes for the buyer alone.
"""

from collections.abc import Iterator

from scorecard.costing.border_entries import sales_tax_of, sales_tax_on_top
from scorecard.costing.entries import Situation


def sales_tax_words(situation: Situation) -> str | None:
    """Return whether a price has sales tax inside; "" where that is not settled.

    None: there is none to speak of, or it comes on top, which the bill has a line for.
    """
    said = sales_tax_of(situation)
    if said is None or said.is_inside is False:
        return None
    return "any is inside these prices, and none comes on top" if said.is_inside else ""


def tax_notes(situation: Situation) -> Iterator[str]:
    """Yield that sales tax on top may not be the maker's to bill, where it is in another country without a border."""
    if sales_tax_on_top(situation) is not None and situation.facts.country != situation.inputs.brief.destination:
        yield (
            "Between two countries the maker may have to bill sales tax at its own rate, at yours, or not at all, and "
            "you may owe it at home instead: ask your tax office before you sign"
        )
