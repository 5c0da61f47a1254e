"""From what was read to what arrived: the order that is meant, its pieces and cartons, and what a piece cost.

Enters: a case, the maker that is meant, and what the user says of the arrival. Leaves: the arrival, or what is wrong.
"""

from collections.abc import Sequence
from decimal import Decimal

from scorecard.case import Case
from scorecard.costing.amounts import over
from scorecard.costing.quoted_then import quoted_then
from scorecard.errors import InputError, Place, Problem, UsageError
from scorecard.frozen import dataclass
from scorecard.inspection.outcome import Arrival, PiecePrice
from scorecard.orders import OrderRow, of_maker, to_inspect
from scorecard.words import counted, day_words, listed, printable


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What the user says of an arrival, in place of what the sheets say.

    Parameters
    ----------
    maker : as the sheet Makers spells it; None for an order of any
    arrived : pieces; None for as many as were ordered
    per_carton : pieces in a full carton; None for what the sheet Freight says
    """

    maker: str | None = None
    arrived: int | None = None
    per_carton: int | None = None


def order_of(case: Case, maker: str | None, row: int | None = None) -> OrderRow | None:
    """Return the order that is meant; None where no order is noted at all.

    Parameters
    ----------
    case : what was read
    maker : whose; None for any
    row : of the sheet Orders; None for the one that is to be counted, see ``to_inspect``

    Raises
    ------
    InputError
        If a maker is named that no order names.
    UsageError
        If the row holds no such order.
    """
    order = to_inspect(case.orders, maker)
    if row is not None and (order is not None or maker is None):
        return _in_row(of_maker(case.orders, maker), maker, row)
    if maker is not None and order is None:
        place = Place(file=case.table.file, sheet=None if case.table.sheet is None else "Orders")
        wanted = "Write the order into the sheet Orders: the maker, the day, the pieces"
        raise InputError(
            [Problem(code="no-order", place=place, found=f"no order names '{printable(maker)}'", wanted=wanted)],
            case.warnings,
            case.set_aside,
        )
    return order


def _in_row(orders: Sequence[OrderRow], maker: str | None, row: int) -> OrderRow:
    """Return the order in a row."""
    for order in orders:
        if order.row == row:
            return order
    whose = "" if maker is None else f" of {printable(maker)}"
    rows = listed(str(order.row) for order in orders)
    stand = f"Say --row with one of these: {rows}" if len(orders) > 1 else f"Say --row {rows}" if rows else ""
    wanted = stand or "Write the order into the sheet Orders first"
    raise UsageError(f"--row {row}: no order{whose} stands in row {row} of the sheet Orders. {wanted}.")


def arrival_of(case: Case, order: OrderRow | None, told: Told) -> Arrival:
    """Return what arrived.

    Parameters
    ----------
    case : what was read
    order : the one that is meant; None where none is noted, and then the brief stands for it
    told : what the user says
    """
    ordered = order.pieces if order and order.pieces else case.brief.quantity
    return Arrival(
        maker=order.maker if order else None,
        item=case.brief.item,
        ordered=ordered,
        lot=ordered if told.arrived is None else told.arrived,
        ordered_on=order.began if order else None,
        arrived_on=order.arrived if order else None,
        complain_until=order.complain_until if order else None,
        accepted=_accepted(case, ordered),
        complain_days=order.complain_days if order else None,
        per_carton=told.per_carton or _per_carton(case, order),
        price=None if order is None else _paid(case, order) or _quoted(case, order),
        counted_among=order.opened or order.pieces if order else None,
        arrived_at=_cell(order, "Arrived on"),
        complain_at=_cell(order, "Complain until"),
        paid_at=_cell(order, "Paid in all"),
        faulty_at=_cell(order, "Faulty pieces"),
        opened_at=_cell(order, "Pieces opened"),
    )


def _accepted(case: Case, ordered: int) -> tuple[int, int] | None:
    """Return the fewest and the most pieces by the table [order]; None where it says neither."""
    terms = case.order
    if terms is None or (terms.under_percent is None and terms.over_percent is None):
        return None
    return terms.accepted(ordered)


def _cell(order: OrderRow | None, heading: str) -> Place | None:
    return order.places.get(heading) if order else None


def _per_carton(case: Case, order: OrderRow | None) -> int | None:
    """Return the pieces in a full carton as the sheet Freight has them; None where it says nothing, or several."""
    if order is None or case.costs is None:
        return None
    offers = [offer for offer in case.costs.offers if offer.maker == order.maker]
    packed = {offer.carton.pieces for offer in offers if offer.carton and order.way in (None, offer.way)}
    return packed.pop() if len(packed) == 1 else None


def _paid(case: Case, order: OrderRow) -> PiecePrice | None:
    """Return what a piece cost by what was paid in all; None where either is not written down."""
    if order.pieces is None or order.paid is None or order.paid.high is None or case.brief.currency is None:
        return None
    low, high = (over(end, Decimal(order.pieces)) for end in (order.paid.low, order.paid.high))
    source = f"what you paid in all ({order.at('Paid in all').cell} of the sheet Orders)"
    return PiecePrice(low=low, high=high, currency=case.brief.currency, source=source)


def _quoted(case: Case, order: OrderRow) -> PiecePrice | None:
    """Return what a piece cost by the quotes of the day of its order; None where one is missing."""
    if case.costs is None or order.pieces is None or order.ordered is None:
        return None
    found = quoted_then(case.costs, order.maker, order.pieces, order.ordered, order.way)
    if found is None or not found.in_full or found.amount.high is None:
        return None
    low, high = (over(end, Decimal(order.pieces)) for end in (found.amount.low, found.amount.high))
    by = f" by {found.way}" if found.way else ""
    then = f"for {counted(order.pieces, 'piece')} on {day_words(order.ordered)}"
    source = f"the landed cost of its quote{by}, {then}"
    return PiecePrice(low=low, high=high, currency=case.costs.rates.home, source=source)
