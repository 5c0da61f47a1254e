"""The sheet Orders: orders that were placed, each with the days on which things happened, and what it came to.

Enters: rows of the sheet. Leaves: orders, in sheet order; days out of order are problems at the later one's cell.
"""

from collections.abc import Sequence
from datetime import date

from scorecard.costing.quotes import WAYS
from scorecard.orders import OrderRow
from scorecard.reading.cells import Fault
from scorecard.reading.sheet_table import TableRow

FAULTY, OPENED, PAID = "Faulty pieces", "Pieces opened", "Paid in all"
HAPPENED = ("Ordered on", "Deposit paid on", "Proof approved on", "Shipped on", "Arrived on", "Balance paid on")
SAID = ("Promised on", "Complain until")
ORDER_HEADINGS = ("Maker", "Pieces", "Way", *HAPPENED, *SAID, FAULTY, OPENED, PAID)

# The first cannot come after the second. A proof may be approved before the deposit is paid, or after it.
IN_ORDER = (
    ("Ordered on", "Deposit paid on"),
    ("Ordered on", "Proof approved on"),
    ("Ordered on", "Promised on"),
    ("Ordered on", "Shipped on"),
    ("Ordered on", "Arrived on"),
    ("Ordered on", "Complain until"),
    ("Ordered on", "Balance paid on"),
    ("Deposit paid on", "Shipped on"),
    ("Deposit paid on", "Arrived on"),
    ("Deposit paid on", "Balance paid on"),
    ("Proof approved on", "Shipped on"),
    ("Proof approved on", "Arrived on"),
    ("Shipped on", "Arrived on"),
)


def read_orders(rows: Sequence[TableRow], currency: str | None) -> tuple[OrderRow, ...]:
    """Return the orders of the rows; one without a maker that is known is left out.

    Parameters
    ----------
    rows : of the sheet
    currency : the brief's, that of what was paid; None where the brief names none
    """
    return tuple(order for row in rows if (order := _order(row, currency)) is not None)


def _order(row: TableRow, currency: str | None) -> OrderRow | None:
    maker = row.maker()
    days = {heading: row.day(heading, may_come=False) for heading in HAPPENED}
    days |= {heading: row.day(heading) for heading in SAID}
    _refuse_disorder(row, days)
    _warn_of_time_past(row, days)
    order = OrderRow(
        maker=maker or "",
        row=row.number_in_sheet,
        pieces=row.whole("Pieces"),
        way=row.choice("Way", WAYS),
        ordered=days["Ordered on"],
        deposit_paid=days["Deposit paid on"],
        proof_approved=days["Proof approved on"],
        promised=days["Promised on"],
        shipped=days["Shipped on"],
        arrived=days["Arrived on"],
        complain_until=days["Complain until"],
        balance_paid=days["Balance paid on"],
        faulty=_faulty(row),
        opened=row.whole(OPENED),
        paid=row.number(PAID, currency or ""),
        places=row.places(),
    )
    _refuse_counts(row, order)
    return None if maker is None else order


def _refuse_disorder(row: TableRow, days: dict[str, date | None]) -> None:
    """Note each day that comes before one that it cannot come before; at each cell the first of them."""
    told: set[str] = set()
    for earlier, later in IN_ORDER:
        first, second = days[earlier], days[later]
        if first and second and second < first and later not in told:
            told.add(later)
            found = f"{later} {second.isoformat()} comes before {earlier} {first.isoformat()}"
            row.refuse(later, Fault("out-of-order", found, f"Correct {earlier} or {later}"))


def _warn_of_time_past(row: TableRow, days: dict[str, date | None]) -> None:
    """Warn of a last day to complain before the arrival: it may be so where it is counted from payment."""
    arrived, last = days["Arrived on"], days["Complain until"]
    if arrived and last and last < arrived:
        found = f"Complain until {last.isoformat()} comes before Arrived on {arrived.isoformat()}"
        row.warn("Complain until", Fault("complain-before-arrival", found, "If it ended before they came, leave it so"))


def _refuse_counts(row: TableRow, order: OrderRow) -> None:
    """Note more faulty pieces than there can be, and warn of more opened ones than were ordered."""
    among, heading, done = (order.opened, OPENED, "opened") if order.opened else (order.pieces, "Pieces", "ordered")
    if order.faulty is not None and among is not None and order.faulty > among:
        found = f"{order.faulty} faulty pieces of {among} {done}"
        row.refuse(FAULTY, Fault("more-faulty-than-pieces", found, f"Correct {FAULTY} or {heading}"))
    if order.opened and order.pieces and order.opened > order.pieces:
        found = f"{order.opened} pieces opened of {order.pieces} ordered"
        row.warn(OPENED, Fault("more-opened-than-ordered", found, "If no more came than you ordered, correct it"))


def _faulty(row: TableRow) -> int | None:
    """Return the faulty pieces, 0 or more; None where they are unknown, or once a problem is noted."""
    value = row.values.get(FAULTY)
    return 0 if isinstance(value, int | float) and value == 0 else row.whole(FAULTY)
