"""What an order lacks, and where to settle it; of the sales tax, what is open where no border lies between.

Enters: one reading of a landed cost. Leaves: what is missing, in words.
"""

from collections.abc import Iterator

from scorecard.costing.border_entries import sales_tax_of
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
    said = sales_tax_of(situation)
    if said is None:
        return
    if said.is_inside is None:
        yield Missing(what="whether the price has sales tax inside", where=f"price_has_tax in {IMPORT_TABLE}")
    elif said.is_inside is False and (said.percent is None or not said.percent.is_known):
        what = "one exact rate of the sales tax that comes on top of the price"
        yield Missing(what=what, where=f"tax_percent in {IMPORT_TABLE}")
    elif said.percent is None and said.tax_is != "cost":
        what = "the rate of the sales tax inside the price, of which a part may come back"
        yield Missing(what=what, where=f"tax_percent in {IMPORT_TABLE}")
