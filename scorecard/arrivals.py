"""From what was read to what arrived: the order that is meant, its pieces and cartons, and what a piece cost.

Enters: a case, the maker that is meant, and what the user says of the arrival. Leaves: the arrival, or what is wrong.
"""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from scorecard.case import Case
from scorecard.costed import costed_on
from scorecard.costing.amounts import OPEN, over
from scorecard.costing.choosing import chosen_way
from scorecard.costing.landed import LandedCost
from scorecard.errors import InputError, Place, Problem
from scorecard.inspection.outcome import Arrival, PiecePrice
from scorecard.orders import OrderRow, latest


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What the user says of an arrival, in place of what the sheets say.

    Parameters
    ----------
    maker : as the sheet Makers spells it; None for the latest order of all
    arrived : pieces; None for as many as were ordered
    per_carton : pieces in a full carton; None for what the sheet Freight says
    """

    maker: str | None = None
    arrived: int | None = None
    per_carton: int | None = None


def order_of(case: Case, maker: str | None) -> OrderRow | None:
    """Return the order that is meant: the latest, of one maker where it is named; None where no order is noted at all.

    Raises
    ------
    InputError
        If a maker is named that no order names.
    """
    order = latest(case.orders, maker)
    if maker is not None and order is None:
        place = Place(file=case.table.file, sheet=None if case.table.sheet is None else "Orders")
        shown = "".join(sign if sign.isprintable() else " " for sign in maker)
        wanted = "Write the order into the sheet Orders: the maker, the day, the pieces"
        raise InputError(
            [Problem(code="no-order", place=place, found=f"no order names '{shown}'", wanted=wanted)],
            case.warnings,
            case.set_aside,
        )
    return order


def arrival_of(case: Case, order: OrderRow | None, told: Told, as_of: date) -> Arrival:
    """Return what arrived.

    Parameters
    ----------
    case : what was read
    order : the one that is meant; None where none is noted, and then the brief stands for it
    told : what the user says
    as_of : the day that stands for today
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
        per_carton=told.per_carton or _per_carton(case, order),
        price=None if order is None else _paid(case, order) or _landed(case, order, as_of),
        counted_among=order.opened or order.pieces if order else None,
        complain_at=_cell(order, "Complain until"),
        paid_at=_cell(order, "Paid in all"),
        faulty_at=_cell(order, "Faulty pieces"),
        opened_at=_cell(order, "Pieces opened"),
    )


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


def _landed(case: Case, order: OrderRow, as_of: date) -> PiecePrice | None:
    """Return what a piece costs by the landed cost of its maker; None where any cost is missing."""
    costed = costed_on(case, as_of)
    if costed is None:
        return None
    costs = [cost for cost in costed.costs if cost.maker == order.maker and order.way in (None, cost.way)]
    cost = chosen_way(costs, as_of, case.brief.need_by)
    if cost is None or not cost.is_complete or cost.high == OPEN:
        return None
    low, high = _each(cost)
    source = "the landed cost of its quote" + (f" by {cost.way}" if cost.way else "")
    return PiecePrice(low=low, high=high, currency=costed.inputs.rates.home, source=source)


def _each(cost: LandedCost) -> tuple[Decimal, Decimal]:
    """Return the least and the greatest cost of a piece that is ordered."""
    readings = [(reading.low, reading.high, Decimal(reading.situation.quantity)) for reading in cost.readings]
    return min(over(low, pieces) for low, _, pieces in readings), max(
        over(high, pieces) for _, high, pieces in readings
    )
