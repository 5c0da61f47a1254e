"""What is remembered of own orders: ordered, promised, arrived, faults, and what was quoted against what was paid.

Enters: rows of the sheet Orders, and records kept from before. Leaves: records, each order once, and what they come to
per maker: own on-time share, own faulty share, paid against quoted. Facts alone: no price that could be taken for new.
"""

import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date
from fractions import Fraction

from scorecard.costing.amounts import Span
from scorecard.costing.quotes import Way
from scorecard.frozen import dataclass
from scorecard.orders import OrderRow

Key = tuple[str, date | None, int]


def same_maker(name: str) -> str:
    """Return what is equal of two spellings of one maker; signs that are not seen do not count.

    Examples
    --------
    >>> same_maker(" Tall  Ship") == same_maker("tall ship" + chr(0x202E))
    True
    """
    folded = unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", name).casefold())
    return " ".join("".join(sign for sign in folded if unicodedata.category(sign) != "Cf").split())


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """One order, as it went; what is not known is None.

    Parameters
    ----------
    maker : as the sheet Makers spelt it
    number : among the maker's orders of this day, from 1
    ordered : the day of the order; None where it is not known, and then it is not kept
    faulty : pieces with any fault, minor ones too, among those that were opened
    opened : pieces that were opened on arrival; None for all
    paid : everything paid, in ``currency``
    quoted : what the quote of that time came to at the door for these pieces, in ``currency``, tax that comes back
        with it; None where nothing was quoted for them
    quoted_in_full : whether no cost was missing from it
    recorded_on : None while it stands in the sheet alone
    """

    maker: str
    item: str
    number: int = 1
    ordered: date | None = None
    pieces: int | None = None
    way: Way | None = None
    promised: date | None = None
    arrived: date | None = None
    faulty: int | None = None
    opened: int | None = None
    paid: Span | None = None
    quoted: Span | None = None
    quoted_in_full: bool = False
    currency: str | None = None
    recorded_on: date | None = None

    @property
    def key(self) -> Key:
        """What makes it this order and no other; of records with one key, the last holds."""
        return same_maker(self.maker), self.ordered, self.number

    @property
    def counted_among(self) -> int | None:
        """The pieces among which the faulty ones were counted: those opened, else all; None where neither is known."""
        return self.opened or self.pieces

    @property
    def opened_some(self) -> bool:
        """Whether other pieces were opened than just those that were ordered: a sample, or what came."""
        return self.opened not in (None, self.pieces)

    def days_late(self, as_of: date) -> int | None:
        """Return the days from the promised day to the arrival, below 0 where it was early.

        One that has not arrived counts up to today once the promised day is over; None where there is no telling.
        """
        if self.promised is None:
            return None
        if self.arrived is not None:
            return (self.arrived - self.promised).days
        late = (as_of - self.promised).days
        return late if late > 0 else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Totals:
    """What a maker's own orders come to.

    Parameters
    ----------
    judged : orders of which it can be told whether they came by the promised day
    pieces, faulty : opened, and among these faulty, of orders whose faulty pieces were counted
    in_part : orders among these of which not just the ordered pieces were opened: samples, as a rule
    paid, quoted : least and most, over orders with both known in full, in ``currency``
    """

    orders: int
    judged: int
    on_time: int
    pieces: int
    faulty: int
    in_part: int = 0
    paid: Span | None = None
    quoted: Span | None = None
    currency: str | None = None

    @property
    def on_time_share(self) -> Fraction | None:
        """Of 100 orders, those that came by the promised day; None where none can be judged."""
        return Fraction(100 * self.on_time, self.judged) if self.judged else None

    @property
    def faulty_share(self) -> Fraction | None:
        """Of 100 pieces opened, the faulty ones; None where none were counted."""
        return Fraction(100 * self.faulty, self.pieces) if self.pieces else None


def records_of(orders: Sequence[OrderRow], item: str, currency: str | None) -> tuple[Record, ...]:
    """Return the orders of the sheet as records, in its order.

    Parameters
    ----------
    orders : rows of the sheet
    item : the goods in words, of the brief
    currency : the brief's, that of what was paid
    """
    seen: dict[tuple[str, date | None], int] = {}
    records = []
    for order in orders:
        place = (order.maker, order.ordered)
        seen[place] = seen.get(place, 0) + 1
        records.append(
            Record(
                maker=order.maker,
                item=item,
                number=seen[place],
                ordered=order.ordered,
                pieces=order.pieces,
                way=order.way,
                promised=order.promised,
                arrived=order.arrived,
                faulty=order.faulty,
                opened=order.opened,
                paid=order.paid,
                currency=currency,
            )
        )
    return tuple(records)


def newest(records: Iterable[Record]) -> tuple[Record, ...]:
    """Return each order once: its last record, in the place of its first."""
    return tuple({record.key: record for record in records}.values())


def own_orders(kept: Sequence[Record], of_sheet: Sequence[Record]) -> tuple[Record, ...]:
    """Return every order once, the sheet's word before what was kept; what was quoted then is kept alone.

    Parameters
    ----------
    kept : records from before, oldest first
    of_sheet : ``records_of`` the sheet
    """
    known = {record.key: record for record in kept}
    return newest([*kept, *(_with_what_is_kept(record, known) for record in of_sheet)])


def _with_what_is_kept(record: Record, known: Mapping[Key, Record]) -> Record:
    before = known.get(record.key)
    if before is None:
        return record
    quoted, in_full = before.quoted, before.quoted_in_full
    return replace(record, quoted=quoted, quoted_in_full=in_full, recorded_on=before.recorded_on)


def last_of(record: Record, kept: Sequence[Record]) -> Record | None:
    """Return the last record that was kept of an order; None where there is none."""
    return {one.key: one for one in kept}.get(record.key)


def is_news(record: Record, kept: Sequence[Record]) -> bool:
    """Return whether a record says anything that the last one of its order did not."""
    before = last_of(record, kept)
    return before is None or replace(before, recorded_on=None) != replace(record, recorded_on=None)


def totals(records: Iterable[Record], as_of: date) -> Totals:
    """Return what some orders come to: those of one maker.

    Parameters
    ----------
    records : each order once
    as_of : the day that stands for today
    """
    own = list(records)
    late = [days for record in own if (days := record.days_late(as_of)) is not None]
    counted = [record for record in own if record.counted_among and record.faulty is not None]
    money = [one for one in own if one.paid and one.quoted and one.quoted_in_full]
    currencies = {one.currency for one in money}
    comparable = money if len(currencies) == 1 else []
    return Totals(
        orders=len(own),
        judged=len(late),
        on_time=sum(days <= 0 for days in late),
        pieces=sum(record.counted_among or 0 for record in counted),
        faulty=sum(record.faulty or 0 for record in counted),
        in_part=sum(record.opened_some for record in counted),
        paid=_sum(one.paid for one in comparable),
        quoted=_sum(one.quoted for one in comparable),
        currency=currencies.pop() if comparable else None,
    )


def _sum(spans: Iterable[Span | None]) -> Span | None:
    known = [span for span in spans if span is not None]
    return sum(known[1:], known[0]) if known else None
