"""Orders that were placed: one row each of the sheet Orders, as read."""

from collections.abc import Mapping, Sequence
from dataclasses import field, replace
from datetime import date, timedelta

from scorecard.costing.amounts import Span
from scorecard.costing.quotes import QuoteRow, Way
from scorecard.errors import Place
from scorecard.frozen import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderRow:
    """One row of the sheet Orders, as read; blank and unknown cells are None.

    The reader refuses, at its cell: an unknown maker, days that are still to come for what has happened, days out of
    order, more faulty pieces than were opened or ordered.

    Parameters
    ----------
    row : in the sheet, from 1
    way : from a column "Way" where there is one
    faulty : pieces with any fault, minor ones too, among those that were opened
    opened : pieces that were opened on arrival; None for all
    complain_until : as the sheet says, else ``complain_days`` after arrival
    complain_days : after arrival, as ``[order]`` says; None where it says nothing, or the sheet has a day of its own
    paid : everything paid, in the brief's currency
    places : the cell of every column that is there, by its heading; "Maker" always
    """

    maker: str
    row: int
    pieces: int | None = None
    way: Way | None = None
    ordered: date | None = None
    deposit_paid: date | None = None
    proof_approved: date | None = None
    promised: date | None = None
    shipped: date | None = None
    arrived: date | None = None
    complain_until: date | None = None
    complain_days: int | None = None
    balance_paid: date | None = None
    faulty: int | None = None
    opened: int | None = None
    paid: Span | None = None
    places: Mapping[str, Place] = field(default_factory=dict)

    @property
    def began(self) -> date | None:
        """The first day that is known of it."""
        return min((day for day in (self.ordered, self.deposit_paid, self.proof_approved) if day), default=None)

    def with_days(self, complain_days: int | None) -> "OrderRow":
        """Return the order with so many days after arrival to complain, where the sheet has no day of its own."""
        if self.complain_until is not None or complain_days is None:
            return self
        until = self.arrived + timedelta(days=complain_days) if self.arrived else None
        return replace(self, complain_until=until, complain_days=complain_days)

    def at(self, heading: str) -> Place:
        """Return the cell of one column; the maker's cell where the column is not there."""
        return self.places.get(heading) or self.places.get("Maker") or Place()


def latest(orders: Sequence[OrderRow], maker: str | None = None) -> OrderRow | None:
    """Return the order that began last, of one maker or of all; of several that day, or without one, the lowest row.

    Parameters
    ----------
    orders : in sheet order
    maker : whose; None for any
    """
    return max(of_maker(orders, maker), key=_began, default=None)


def to_inspect(orders: Sequence[OrderRow], maker: str | None = None) -> OrderRow | None:
    """Return the order that is to be counted: the one that arrived last of those that are not counted yet.

    Where nothing that arrived is left to count, the latest that has not arrived, since its day may not be typed yet;
    where all are counted, the latest.

    Parameters
    ----------
    orders : in sheet order
    maker : whose; None for any
    """
    own = of_maker(orders, maker)
    came = [order for order in own if order.arrived and order.faulty is None]
    if came:
        return max(came, key=lambda order: (order.arrived or date.min, *_began(order)))
    return latest([order for order in own if order.arrived is None and order.faulty is None]) or latest(own)


def of_maker(orders: Sequence[OrderRow], maker: str | None) -> list[OrderRow]:
    """Return the orders of one maker; all where none is named."""
    return [order for order in orders if maker is None or order.maker == maker]


def _began(order: OrderRow) -> tuple[date, int]:
    return order.began or date.min, order.row


def under_way(orders: Sequence[OrderRow], maker: str, quotes: Sequence[QuoteRow] = ()) -> OrderRow | None:
    """Return the order that was placed with a maker for what is wanted now; None where there is none.

    It is the maker's latest; one that has arrived is over once the maker is quoted anew.

    Parameters
    ----------
    orders : in sheet order
    maker : whose
    quotes : rows of the sheet Quotes, of any maker
    """
    last = latest(orders, maker)
    if last is None or last.began is None:
        return None
    if last.arrived is None:
        return last
    quoted = max((row.quoted_on for row in quotes if row.maker == maker and row.quoted_on), default=date.min)
    return last if last.began >= quoted else None


def ordered_ways(orders: Sequence[OrderRow], quotes: Sequence[QuoteRow]) -> dict[str, Way]:
    """Return by which way each maker's order goes, of those with an order ``under_way`` that names one."""
    makers = dict.fromkeys(order.maker for order in orders)
    found = {maker: under_way(orders, maker, quotes) for maker in makers}
    return {maker: order.way for maker, order in found.items() if order and order.way}
