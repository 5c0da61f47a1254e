"""The order sheet of one maker: what is ordered, on which terms, and what is still missing.

Enters: a case with its costs, a maker, a day. Leaves: the sheet as values, not yet in words. It is complete once
nothing is missing, and nothing is guessed to make it so.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from datetime import date
from decimal import Decimal

from scorecard.case import Case
from scorecard.checks import Checked, checked
from scorecard.costed import Costed, costed_on
from scorecard.costing.bill import Bill, bill_of
from scorecard.costing.choosing import chosen_way
from scorecard.costing.entries import SALES_TAX
from scorecard.costing.landed import LandedCost
from scorecard.costing.quotes import FOR_ANY_WAY, STALE_DAYS, QuoteRow, Way
from scorecard.design_minimums import below_minimum
from scorecard.frozen import dataclass
from scorecard.order_lacks import Missing, of_sales_tax
from scorecard.order_terms import DesignTerms, OrderTerms
from scorecard.orders import OrderRow, under_way
from scorecard.samples import SampleRound
from scorecard.scheduled import arrive_by
from scorecard.words import counted, day_words, listed

TABLE = "[order] of the criteria file"
METHOD_COLUMN = "print method"
_ASKED_APART = frozenset({"price", SALES_TAX.key})  # gaps that are missing under names of their own


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderedDesign:
    """One design as it is ordered; None and "" stand for what is not settled yet."""

    name: str
    file: str
    pieces: int | None
    width_mm: float | None
    height_mm: float | None
    position: str
    position_tolerance_mm: Decimal | None
    size_tolerance_mm: Decimal | None
    colours: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class OrderSheet:
    """The order sheet.

    Parameters
    ----------
    row : of the maker, in the sheet Makers
    as_of : the day of the order
    cost : the quote by the way that is ordered; None while nothing is quoted
    quantity : fewest and most pieces that must be ordered; the same once it is settled
    bill : None while nothing is quoted
    method : how it is printed; "" where nobody has said
    ruled_out : why the limits rule the maker out, in sentences; none where they do not
    unapproved : the last round of samples, where it was refused or is to be made again
    arrive_by : the last day to be at the door for the brief's need-by date; None where it names none
    approved : rounds of samples that were approved
    checks : what was looked into before money moves
    placed : the order that was placed, of which this is the sheet; None where it is still to be placed
    """

    case: Case
    maker: str
    row: int
    as_of: date
    terms: OrderTerms
    quantity: tuple[int, int]
    designs: tuple[OrderedDesign, ...]
    cost: LandedCost | None
    bill: Bill | None
    arrive_by: date | None
    approved: tuple[SampleRound, ...]
    checks: Checked
    placed: OrderRow | None = None
    missing: tuple[Missing, ...] = ()
    method: str = ""
    ruled_out: tuple[str, ...] = ()
    unapproved: SampleRound | None = None

    @property
    def is_complete(self) -> bool:
        """Whether nothing is missing."""
        return not self.missing

    @property
    def quote(self) -> QuoteRow | None:
        """The row of the sheet Quotes that settles price and terms."""
        return self.cost.reply.head if self.cost else None

    @property
    def deliver_by(self) -> date | None:
        """The day by which the pieces are to be at the door."""
        return self.terms.deliver_by or self.arrive_by

    @property
    def bounds(self) -> tuple[int, int] | None:
        """The fewest and the most pieces that are accepted; None where it is not settled."""
        under, over = self.terms.under_percent, self.terms.over_percent
        fewest, most = self.quantity
        if under is None or over is None or fewest != most:
            return None
        return self.terms.accepted(fewest)


def placed_order(case: Case, maker: str, way: Way | None = None) -> OrderRow | None:
    """Return the order that was placed with a maker for this brief; None where none was, or by another way."""
    order = under_way(case.orders, maker, case.costs.quotes if case.costs else ())
    return order if order is not None and way in (None, order.way) else None


def order_sheet(case: Case, maker: int, as_of: date, way: Way | None = None) -> OrderSheet:
    """Return the order sheet of one maker; of an order that was placed, as of the day on which it was.

    Parameters
    ----------
    case : what was read
    maker : its position
    as_of : the day that stands for today, and for the order
    way : of shipping; None for the one that stands for the maker in the ranking

    Returns
    -------
    the sheet, with everything that is missing, in the order of the page
    """
    name, terms = case.table.makers[maker], case.order or OrderTerms()
    placed = placed_order(case, name, way)
    if placed is not None:
        as_of, way = placed.began or as_of, way or placed.way
    cost = _cost(costed_on(case, as_of), name, way, case.brief.need_by)
    quantity = cost.quantities if cost else (case.brief.quantity, case.brief.quantity)
    sheet = OrderSheet(
        case=case,
        maker=name,
        row=case.table.rows[maker],
        as_of=as_of,
        terms=terms,
        quantity=quantity,
        designs=_designs(case, terms, quantity),
        cost=cost,
        bill=bill_of(cost.readings[0]) if cost else None,
        arrive_by=arrive_by(case, name),
        approved=tuple(
            one for one in case.samples if one.maker == name and (one.decision or "").startswith("approved")
        ),
        checks=checked(case.checks, name),
        placed=placed,
        method=terms.method or _method(case, maker),
        unapproved=_unapproved(case, name),
    )
    return replace(sheet, missing=tuple(_missing(sheet, way)))


def _method(case: Case, maker: int) -> str:
    """Return how a maker prints, as it answered in the column Print method; "" where it is not known."""
    for criterion in case.criteria:
        answers = case.table.answers.get(criterion.key)
        if (criterion.column or "").strip().casefold() != METHOD_COLUMN or answers is None or criterion.choices is None:
            continue
        return criterion.choices[int(answers.low[maker])] if answers.known[maker] else ""
    return ""


def _unapproved(case: Case, maker: str) -> SampleRound | None:
    """Return a maker's last round that was decided on, where the decision was no approval."""
    decided = [one for one in case.samples if one.maker == maker and one.decision]
    last = max(decided, key=lambda one: (one.received_on or one.asked_on or date.min, one.row), default=None)
    return None if last is None or (last.decision or "").startswith("approved") else last


def with_artwork(sheet: OrderSheet, lack_of: Callable[[OrderedDesign], str]) -> OrderSheet:
    """Return a sheet on which artwork that cannot be printed as ordered is missing, too.

    Parameters
    ----------
    sheet : of an order that is still to be placed
    lack_of : what is missing of the file of a design, in words; "" where nothing is
    """
    lacks = dict.fromkeys(filter(None, (lack_of(one) for one in sheet.designs if one.file)))
    found = [Missing(what=what, where="file of each [[order.designs]]") for what in lacks]
    return replace(sheet, missing=(*sheet.missing, *found))


def _cost(costed: Costed | None, maker: str, way: Way | None, need_by: date | None) -> LandedCost | None:
    if costed is None:
        return None
    if way is None:
        return costed.chosen.get(maker)
    of_way = [cost for cost in costed.costs if cost.maker == maker and cost.way == way]
    return chosen_way(of_way, costed.inputs.as_of, need_by)


def _designs(case: Case, terms: OrderTerms, quantity: tuple[int, int]) -> tuple[OrderedDesign, ...]:
    brief = case.brief
    each, left = divmod(quantity[0], brief.designs)
    even = each if quantity[0] == quantity[1] and not left else None
    typed = terms.designs or (DesignTerms(),) * brief.designs
    return tuple(
        OrderedDesign(
            name=one.name,
            file=one.file,
            pieces=one.pieces or (None if any(other.pieces for other in typed) else even),
            width_mm=one.width_mm or brief.print_width_mm,
            height_mm=one.height_mm or brief.print_height_mm,
            position=one.position or terms.position,
            position_tolerance_mm=_first(one.position_tolerance_mm, terms.position_tolerance_mm),
            size_tolerance_mm=_first(one.size_tolerance_mm, terms.size_tolerance_mm),
            colours=one.colours or terms.colours,
        )
        for one in typed
    )


def _first(own: Decimal | None, shared: Decimal | None) -> Decimal | None:
    return shared if own is None else own


def _missing(sheet: OrderSheet, way: Way | None) -> Iterator[Missing]:
    yield from _of_parties(sheet)
    yield from _of_designs(sheet)
    if not sheet.method:
        where = f"Print method in row {sheet.row} of the sheet Makers, or method in {TABLE}"
        yield Missing(what="how it is printed", where=where)
    yield from _of_quantity(sheet)
    if sheet.cost is None or sheet.bill is None:
        by = f" by {way}" if way else ""
        yield Missing(what=f"a quote{by}", where="the sheets Quotes and Freight")
    else:
        yield from _of_price(sheet, sheet.cost, sheet.bill)
    yield from _of_terms(sheet)


def _of_parties(sheet: OrderSheet) -> Iterator[Missing]:
    if not sheet.terms.buyer:
        yield _in_table("who orders: your name and address", "buyer")


def _in_table(what: str, *keys: str) -> Missing:
    return Missing(what=what, where=f"{listed(keys)} in {TABLE}")


def _of_designs(sheet: OrderSheet) -> Iterator[Missing]:
    """Yield what is not settled of the designs: each thing once, with the designs that lack it."""
    lacks: tuple[tuple[str, str, Callable[[OrderedDesign], object]], ...] = (
        ("the artwork's file", "file of each [[order.designs]]", lambda one: one.file),
        ("the printed width", "print_width_mm in [brief]", lambda one: one.width_mm),
        ("the printed height", "print_height_mm in [brief]", lambda one: one.height_mm),
        ("where the print sits", f"position in {TABLE}", lambda one: one.position),
        (
            "how far the print may sit from its place",
            f"position_tolerance_mm in {TABLE}",
            lambda one: one.position_tolerance_mm is not None,
        ),
        (
            "how far its size may be off",
            f"size_tolerance_mm in {TABLE}",
            lambda one: one.size_tolerance_mm is not None,
        ),
        ("what the colours are judged by", f"colours in {TABLE}", lambda one: one.colours),
    )
    for what, where, has in lacks:
        without = [number for number, one in enumerate(sheet.designs, 1) if not has(one)]
        yield from [Missing(what=f"{what}{_on(without, len(sheet.designs))}", where=where)] if without else []


def _on(without: Sequence[int], designs: int) -> str:
    """Return on which designs something is missing; "" where on all."""
    if len(without) == designs:
        return ""
    return f" of design{'s' if len(without) > 1 else ''} {listed(map(str, without))}"


def _of_quantity(sheet: OrderSheet) -> Iterator[Missing]:
    fewest, most = sheet.quantity
    if fewest != most:
        yield Missing(
            what=f"how many must be ordered: {fewest} to {most} pieces, as the minimum is not known exactly",
            where=f"Minimum order and Minimum is per in row {sheet.row} of the sheet Makers",
        )
    pieces = [one.pieces for one in sheet.designs]
    known = [number for number in pieces if number is not None]
    if fewest == most and (len(known) < len(pieces) or sum(known) != fewest):
        told = f", which make {sum(known)} of {fewest}" if len(known) == len(pieces) else ""
        yield Missing(what=f"the pieces of each design{told}", where="pieces of each [[order.designs]]")
    table = sheet.case.table
    if small := below_minimum(sheet.terms, table, table.rows.index(sheet.row)):
        where = f"pieces of each [[order.designs]], or Minimum order in row {sheet.row} of the sheet Makers"
        yield Missing(what=small, where=where)
    if sheet.terms.over_percent is None or sheet.terms.under_percent is None:
        yield _in_table("the accepted over- and under-run", "over_percent", "under_percent")
    if sheet.terms.over_percent and sheet.terms.overs is None:
        yield _in_table("who pays for pieces beyond the order", "overs")


def _of_price(sheet: OrderSheet, cost: LandedCost, bill: Bill) -> Iterator[Missing]:
    row = cost.readings[0].situation.price.row
    reply = cost.reply
    if len({reading.situation.coverage.words for reading in cost.readings}) > 1:
        yield _in_quote("what the price covers", row, "Price covers")
    elif names := list(dict.fromkeys(gap.name for gap in cost.gaps if gap.name not in _ASKED_APART)):
        yield Missing(what=f"what these cost you: {listed(names)}", where="the sheets Quotes and Freight")
    yield from of_sales_tax(cost.readings[0].situation)
    open_lines = [line.name for line in bill.lines if line.low != line.high and line.name != SALES_TAX.name]
    if open_lines:
        yield _in_quote(f"one exact figure for: {listed(name.lower() for name in open_lines)}", row, "Price")
    if bill.currency is None:
        yield _in_quote("one currency for the whole bill", row, "Currency")
    if reply.saying("setup", row) is None:
        yield _in_quote("what set-up costs, 0 if nothing", row, "Set-up")
    yield from _of_age(sheet, row, reply.quoted_on)
    if any(gap.name == "price" for gap in cost.gaps):
        yield _in_quote(f"a price for just {counted(bill.quantity, 'piece')}", row, "Price")
    if bill.deposit_percent is None or not bill.deposit_percent.is_known:
        yield _in_quote("the deposit", row, "Deposit %")
    if bill.balance is None and (bill.deposit_percent is None or bill.deposit_percent.low < 100):
        yield Missing(
            what="when the rest is paid: before shipment, on arrival or after checking",
            where="balance in [cost] of the criteria file",
        )
    if reply.head.term is None or not reply.head.term_place.strip():
        yield _in_quote("the delivery term and its place", reply.head, "Delivery term", "Place")
    elif reply.head.term in FOR_ANY_WAY and cost.way not in (None, "sea"):
        what = (
            f"a delivery term for any way, such as {FOR_ANY_WAY[reply.head.term]}: {reply.head.term} is for ships "
            f"alone, and this goes by {cost.way}"
        )
        yield _in_quote(what, reply.head, "Delivery term")


def _of_age(sheet: OrderSheet, row: QuoteRow, quoted_on: date | None) -> Iterator[Missing]:
    """Yield that a price may no longer hold: its last day is over, or nobody named one and it is old."""
    if row.valid_until is not None:
        if row.valid_until < sheet.as_of:
            yield _in_quote(f"a price that holds: this one held until {day_words(row.valid_until)}", row, "Valid until")
    elif quoted_on is None:
        yield _in_quote("on which day the price was quoted", row, "Quoted on")
    elif (sheet.as_of - quoted_on).days > STALE_DAYS:
        days = counted((sheet.as_of - quoted_on).days, "day")
        yield _in_quote(f"whether the price still holds: it is {days} old", row, "Valid until")


def _in_quote(what: str, row: QuoteRow, *headings: str) -> Missing:
    cells = [f"{heading} ({row.places[heading].cell})" if heading in row.places else heading for heading in headings]
    return Missing(what=what, where=f"{listed(cells)} in the sheet Quotes")


def _of_terms(sheet: OrderSheet) -> Iterator[Missing]:
    terms = sheet.terms
    wanted: tuple[tuple[object, str, str], ...] = (
        (terms.pay_by, "how it is paid", "pay_by"),
        (terms.packing, "how pieces and cartons are packed", "packing"),
        (terms.labels, "what stands on cartons and pieces", "labels"),
        (terms.address, "where they go", "address"),
        (terms.complain_days, "until how many days after arrival you may complain", "complain_days"),
        (terms.remedy, "what the maker does about faulty pieces", "remedy"),
        (terms.artwork, "whose the artwork is", "artwork"),
        (terms.tooling, "whose tools, screens and files are", "tooling"),
    )
    yield from (_in_table(what, key) for value, what, key in wanted if not value)
    if sheet.deliver_by is None:
        yield _in_table("the day by which they are to be there", "deliver_by")
    elif sheet.deliver_by < sheet.as_of:
        yield _in_table(f"a day of delivery that is still to come: {day_words(sheet.deliver_by)} is over", "deliver_by")
