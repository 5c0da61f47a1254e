"""What an order lacks, and where to settle it; of the sales tax, what is open where no border lies between.

Enters: one reading of a landed cost. Leaves: what is missing, in words.
"""

from collections.abc import Iterator

from scorecard.costing.amounts import Span
from scorecard.costing.border_entries import bears_sales_tax
from scorecard.costing.entries import Situation
from scorecard.frozen import dataclass

IMPORT_TABLE = "[import] of the criteria file"


@dataclass(frozen=True, slots=True, kw_only=True)
class Missing:
    """What is not settled yet, and where to settle it; sentences without the full stop."""

    what: str
    where: str


def of_sales_tax(situation: Situation) -> Iterator[Missing]:
    """Yield what is not settled of the sales tax, where no border lies between maker and buyer."""
    rules = situation.inputs.imports
    has_tax, percent, tax_is = (rules.price_has_tax, rules.tax_percent, rules.tax_is) if rules else (None, None, None)
    if not bears_sales_tax(situation) or percent == Span.of(0):
        return
    if has_tax is None:
        yield Missing(what="whether the price has sales tax inside", where=f"price_has_tax in {IMPORT_TABLE}")
    elif has_tax is False and (percent is None or not percent.is_known):
        what = "one exact rate of the sales tax that comes on top of the price"
        yield Missing(what=what, where=f"tax_percent in {IMPORT_TABLE}")
    elif percent is None and tax_is != "cost":
        what = "the rate of the sales tax inside the price, of which a part may come back"
        yield Missing(what=what, where=f"tax_percent in {IMPORT_TABLE}")
