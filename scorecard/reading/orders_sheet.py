"""The sheet Orders: orders that were placed, one row each.

Enters: rows of the sheet. Leaves: orders, in sheet order; a row without a known maker is left out.
"""

from collections.abc import Sequence
from datetime import date
from itertools import combinations

from scorecard.costing.quotes import WAYS
from scorecard.orders import OrderRow
from scorecard.reading.cells import Fault
from scorecard.reading.sheet_table import TableRow

ORDERED, SHIPPED, ARRIVED = "Ordered on", "Shipped on", "Arrived on"
PROMISED, PROOF = "Promised on", "Proof approved on"
FAULTY, PIECES = "Faulty pieces", "Pieces"
ORDER_HEADINGS = (
    "Maker",
    ORDERED,
    PIECES,
    "Way",
    "Deposit paid on",
    PROOF,
    PROMISED,
    SHIPPED,
    ARRIVED,
    "Complain until",
    "Balance paid on",
    FAULTY,
    "Paid in all",
)
IN_THIS_ORDER = ((ORDERED, SHIPPED, ARRIVED), (PROOF, SHIPPED), (ORDERED, PROMISED))  # one after the other, or that day


def read_orders(rows: Sequence[TableRow], currency: str | None) -> tuple[OrderRow, ...]:
    """Return the orders of the rows.

    Parameters
    ----------
    rows : of the sheet
    currency : the brief's, that of what was paid; None where the brief names none
    """
    return tuple(order for row in rows if (order := _read(row, currency)) is not None)


def _read(row: TableRow, currency: str | None) -> OrderRow | None:
    maker = row.maker()
    happened = ("Deposit paid on", "Balance paid on", ORDERED, PROOF, SHIPPED, ARRIVED)
    days = {
        heading: row.day(heading, may_come=heading not in happened)
        for heading in ORDER_HEADINGS
        if "on" in heading.split()
    }
    _check_days(row, days)
    order = OrderRow(
        maker=maker or "",
        row=row.number_in_sheet,
        pieces=row.whole(PIECES),
        way=row.choice("Way", WAYS),
        ordered=days[ORDERED],
        deposit_paid=days["Deposit paid on"],
        proof_approved=days[PROOF],
        promised=days[PROMISED],
        shipped=days[SHIPPED],
        arrived=days[ARRIVED],
        complain_until=row.day("Complain until"),
        balance_paid=days["Balance paid on"],
        faulty=_faulty(row),
        paid=row.number("Paid in all", currency or ""),
        places=row.places(),
    )
    _check_faulty(row, order)
    return None if maker is None else order


def _check_days(row: TableRow, days: dict[str, date | None]) -> None:
    """Note each day that comes before one that it must follow, once a day."""
    refused = set()
    for chain in IN_THIS_ORDER:
        for earlier, later in combinations(chain, 2):
            first, second = days[earlier], days[later]
            if first is None or second is None or second >= first or later in refused:
                continue
            refused.add(later)
            found = f"{later} is {second.isoformat()}, before {earlier}, {first.isoformat()}"
            row.refuse(later, Fault("days-out-of-order", found, f"Correct {later} or {earlier}"))


def _faulty(row: TableRow) -> int | None:
    """Return the faulty pieces, 0 or more; None where they are unknown, or once a problem is noted."""
    span = row.number(FAULTY, "pieces")
    return (
        int(span.low) if span is not None and span.is_known and span.low == 0 else row.whole(FAULTY) if span else None
    )


def _check_faulty(row: TableRow, order: OrderRow) -> None:
    if order.faulty is not None and order.pieces is not None and order.faulty > order.pieces:
        found = f"{order.faulty} faulty pieces of {order.pieces} ordered"
        row.refuse(FAULTY, Fault("more-faulty-than-pieces", found, f"Correct {FAULTY} or {PIECES}"))
