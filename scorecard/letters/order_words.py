"""An order sheet in words: each part as lines of name and value, "" where something is not settled yet.

Enters: an order sheet. Leaves: what its page and the screen show. Texts of the user's are cut to one line.
"""

from collections.abc import Iterator
from decimal import Decimal

from scorecard.checks import MONEY_CAUTION, sign_of
from scorecard.codes import COUNTRIES, amount_range
from scorecard.cost_words import days_words
from scorecard.costing.amounts import shown
from scorecard.costing.bill import Bill
from scorecard.costing.cautions import cautions as cost_cautions
from scorecard.costing.inputs import Balance
from scorecard.costing.paying import paid_before_checking
from scorecard.costing.timing import begin_words, standing_words
from scorecard.frozen import dataclass
from scorecard.inspection.faults import KINDS, OTHER
from scorecard.inspection.plan_words import limit_sentence
from scorecard.inspection.plans import sampling_plan
from scorecard.inspection.settings import InspectionSettings
from scorecard.letters.plain import one_line
from scorecard.letters.sales_tax_words import sales_tax_words, tax_notes
from scorecard.order_sheet import OrderedDesign, OrderSheet
from scorecard.order_terms import Whose
from scorecard.orders import OrderRow
from scorecard.words import counted, day_words, listed, shortest

OPEN_ALL_UP_TO = 500  # pieces, as the check on arrival does
LONGEST = 500
BALANCES: dict[Balance, str] = {
    "before shipment": "before the goods are sent, once photographs of the finished goods have been seen",
    "on arrival": "when the goods arrive",
    "after checking": "once the goods have been checked on arrival",
}
SAFETY = (
    "Safety rules hold for what you sell, whoever made it: have the test report for these very goods, decoration and "
    "all, before you order; ask your local authority or an accredited laboratory what these goods need"
)
FOOD = "Goods that touch food or drink need a recent report on what passes into it, under the rules of your market"
CHILDREN = (
    "Goods for children, or that children will use, need tests, marks and warnings of their own nearly everywhere"
)
OWN_BRAND = (
    "Under your own name or brand you mostly answer for the goods as their manufacturer does, and as importer too "
    "where they come from abroad: ask your local authority or a licensed adviser what that asks of you, and whether "
    "your insurance covers it"
)
NO_ADVICE = (
    "This sheet puts down what you agree on; it is no legal advice, and the terms of the marketplace or of the law may "
    "go before it"
)
PRIVATE_FILES = "Send the print files with the order, not before; they stay yours only if that is in writing"


@dataclass(frozen=True, slots=True)
class Fact:
    """One line of the sheet; "" where its value is not settled yet."""

    name: str
    value: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DesignRow:
    """One design as a row."""

    number: int
    name: str
    pieces: str
    size: str
    position: str
    tolerance: str
    colours: str


@dataclass(frozen=True, slots=True)
class PriceRow:
    """One line of the bill."""

    name: str
    working: str
    amount: str


def _text(text: str) -> str:
    return one_line(text, LONGEST)


def head_facts(sheet: OrderSheet) -> list[Fact]:
    """Return who orders what from whom, on which day."""
    brief, terms = sheet.case.brief, sheet.terms
    facts = [
        Fact("Ordered by", _text(terms.buyer)),
        Fact("From", _text(sheet.maker)),
        Fact("Day", day_words(sheet.as_of)),
        Fact("Goods", _text(brief.item)),
    ]
    return [Fact("Our reference", _text(terms.number)), *facts] if terms.number else facts


def design_rows(sheet: OrderSheet) -> list[DesignRow]:
    """Return the designs, one row each."""
    return [_design(number, one) for number, one in enumerate(sheet.designs, 1)]


def _design(number: int, one: OrderedDesign) -> DesignRow:
    named = ", ".join(filter(None, (_text(one.name), f"file {_text(one.file)}")))
    sides = [f"{shortest(side)} mm {word}" for side, word in ((one.width_mm, "wide"), (one.height_mm, "high")) if side]
    off = [
        f"{what} ± {shown(by)} mm"
        for what, by in (("place", one.position_tolerance_mm), ("size", one.size_tolerance_mm))
        if by is not None
    ]
    return DesignRow(
        number=number,
        name=named if one.file else "",
        pieces="" if one.pieces is None else str(one.pieces),
        size=", ".join(sides) if len(sides) == 2 else "",
        position=_text(one.position),
        tolerance=", ".join(off) if len(off) == 2 else "",
        colours=_text(one.colours),
    )


def method_facts(sheet: OrderSheet) -> list[Fact]:
    """Return how the designs are printed."""
    return [Fact("Print method", _text(sheet.method))]


def quantity_facts(sheet: OrderSheet) -> list[Fact]:
    """Return how many pieces, and how many more or fewer are accepted."""
    fewest, most = sheet.quantity
    over, under = sheet.terms.over_percent, sheet.terms.under_percent
    facts = [
        Fact("Pieces", str(fewest) if fewest == most else ""),
        Fact("Accepted", "" if over is None or under is None else _bounds(sheet, under, over)),
    ]
    if over:
        facts.append(Fact("Pieces beyond the order", sheet.terms.overs or ""))
    return facts


def _bounds(sheet: OrderSheet, under: Decimal, over: Decimal) -> str:
    words = f"up to {shown(under)} % fewer and {shown(over)} % more"
    if not under and not over:
        return "exactly as many, no fewer and no more"
    return words if sheet.bounds is None else f"{sheet.bounds[0]} to {sheet.bounds[1]} pieces ({words})"


def price_rows(sheet: OrderSheet) -> list[PriceRow]:
    """Return the lines of the bill."""
    lines = sheet.bill.lines if sheet.bill else ()
    return [PriceRow(line.name, line.working, amount_range(line.low, line.high, line.currency)) for line in lines]


def total_words(sheet: OrderSheet) -> str:
    """Return the sum of the bill; "" where it is not settled."""
    bill = sheet.bill
    if bill is None or bill.total is None or bill.currency is None:
        return ""
    return amount_range(*bill.total, bill.currency)


def tax_facts(sheet: OrderSheet) -> list[Fact]:
    """Return whether the price has sales tax inside; nothing where a line of the bill says it, or there is none."""
    words = sales_tax_words(sheet.cost.readings[0].situation) if sheet.cost else None
    return [] if words is None else [Fact("Sales tax", words)]


def payment_facts(sheet: OrderSheet) -> list[Fact]:
    """Return the payment steps."""
    bill = sheet.bill
    if bill is None or bill.currency is None or bill.deposit is None or bill.deposit_percent is None:
        steps = [Fact("With the order", ""), Fact("The rest", "")]
    else:
        percent, home = bill.deposit_percent, bill.currency
        told = f"{shown(percent.low)} %{'' if percent.is_known else ' or more'}"
        steps = [Fact("With the order", f"{amount_range(*bill.deposit, home)} ({told} of the bill)")]
        if percent.low < 100:
            steps += _rest_facts(bill, home)
    return [*steps, Fact("Paid by", _text(sheet.terms.pay_by))]


def _rest_facts(bill: Bill, home: str) -> list[Fact]:
    """Return what is paid after the deposit, and when; the latter by itself where nobody has said it yet."""
    rest = "" if bill.rest is None else amount_range(*bill.rest, home)
    if bill.balance is None:
        return [Fact("The rest", rest), Fact("The rest is due", "")]
    return [Fact("The rest", rest and f"{rest}, {BALANCES[bill.balance]}")]


def approval_lines(sheet: OrderSheet) -> list[str]:
    """Return what must be approved before the full run."""
    return [_text(one) for one in sheet.terms.approvals]


def approved_lines(sheet: OrderSheet) -> list[str]:
    """Return what was approved already."""
    return [
        f"{one.kind}{f' of {day_words(one.received_on)}' if one.received_on else ''}: {one.decision}"
        for one in sheet.approved
    ]


def packing_facts(sheet: OrderSheet) -> list[Fact]:
    """Return packing and labels."""
    return [Fact("Packing", _text(sheet.terms.packing)), Fact("Labels", _text(sheet.terms.labels))]


def delivery_facts(sheet: OrderSheet) -> list[Fact]:
    """Return delivery term, way, address and day."""
    head = sheet.quote
    place = _text(head.term_place) if head else ""
    country = COUNTRIES.get(sheet.case.brief.destination or "", "")
    address = _text(sheet.terms.address)
    if address and country and country.casefold() not in address.casefold():
        address = f"{address}, {country}"
    return [
        Fact("Delivery term", f"{head.term} {place} (Incoterms 2020)" if head and head.term and place else ""),
        *([Fact("Way", f"by {sheet.cost.way}")] if sheet.cost and sheet.cost.way else []),
        Fact("To", address),
        Fact("At the latest on", day_words(sheet.deliver_by) if sheet.deliver_by else ""),
    ]


def arrival_facts(sheet: OrderSheet) -> list[Fact]:
    """Return how the goods are checked on arrival, and what happens to faulty ones."""
    days = sheet.terms.complain_days
    return [
        Fact("Check", check_words(sheet)),
        *(Fact(f"{kind.capitalize()} faults", _faults(sheet, kind)) for kind in KINDS),
        Fact("Complaints", f"taken until {counted(days, 'day')} after arrival, with photographs" if days else ""),
        Fact("Faulty pieces", _text(sheet.terms.remedy)),
    ]


def check_words(sheet: OrderSheet) -> str:
    """Return how many pieces are opened, and what is too many faults."""
    pieces = sheet.quantity[1]
    if pieces <= OPEN_ALL_UP_TO:
        return "every piece is opened and compared with the approved one"
    settings = sheet.case.inspection or InspectionSettings()
    plan = sampling_plan(pieces, settings.level, settings.limits)
    limits = "; ".join(limit_sentence(one) for one in plan.plans)
    return f"{counted(plan.opened, 'piece')}, drawn at random, are opened and compared with the approved one. {limits}"


def _faults(sheet: OrderSheet, kind: str) -> str:
    lines = (sheet.case.inspection or InspectionSettings()).lines
    return _text("; ".join(line.text for line in lines if line.kind == kind and line.text != OTHER))


def owner_facts(sheet: OrderSheet) -> list[Fact]:
    """Return whose artwork and tools are."""
    return [
        Fact("Artwork", _belongs("the artwork and everything made from it", sheet.terms.artwork)),
        Fact("Tools", _belongs("tools, screens, moulds and print files", sheet.terms.tooling)),
        Fact("Overruns", "pieces beyond the order, samples and faulty pieces are not sold, given away or shown"),
    ]


def _belongs(what: str, whose: Whose | None) -> str:
    return "" if whose is None else f"{what} belong to the {'buyer' if whose == 'mine' else 'maker'}"


def missing_lines(sheet: OrderSheet) -> list[str]:
    """Return what is still missing, each with where to settle it."""
    return [f"{one.what} ({one.where})" for one in sheet.missing]


def not_complete_line(sheet: OrderSheet, most: int = 3) -> str:
    """Return the line that stands on every page of a sheet that is not complete; "" on one that is."""
    if sheet.is_complete:
        return ""
    names = [one.what for one in sheet.missing[:most]]
    more = len(sheet.missing) - most
    return f"not complete: {'; '.join([*names, *([f'{more} more'] if more > 0 else [])])}"


def own_notes(sheet: OrderSheet) -> list[str]:
    """Return what the buyer should know and the maker need not, as sentences without the full stop."""
    first = _doubt_notes(sheet)
    if sheet.placed is not None:
        return [*first, *_placed_notes(sheet, sheet.placed), *_money_notes(sheet), *_check_notes(sheet)]
    return [*first, *_money_notes(sheet), *_day_notes(sheet), *_check_notes(sheet)]


def _doubt_notes(sheet: OrderSheet) -> Iterator[str]:
    """Yield what speaks against the order as a whole: limits that the maker fails, a sample that was not approved."""
    for reason in sheet.ruled_out:
        yield f"Your own limits rule this maker out: {reason}"
    last = sheet.unapproved
    if last is not None:
        came = f" of {day_words(last.received_on)}" if last.received_on else ""
        yield f"The last {last.kind}{came} was not approved: {last.decision}. Order only once one is"


def _placed_notes(sheet: OrderSheet, placed: OrderRow) -> Iterator[str]:
    """Yield when it was ordered, and where the sheet Orders says otherwise than this sheet."""
    by = f", by {placed.way}" if placed.way else ""
    yield (
        f"It was ordered on {day_words(sheet.as_of)}{by} (row {placed.row} of the sheet Orders); this is its sheet "
        "by the quotes and terms that stand in your files now. What you sent is what you agreed on"
    )
    fewest, most = sheet.quantity
    if placed.pieces is not None and not fewest <= placed.pieces <= most:
        yield f"The sheet Orders says {counted(placed.pieces, 'piece')}, this sheet {fewest}"


def _money_notes(sheet: OrderSheet) -> Iterator[str]:
    cost = sheet.cost
    if cost is None:
        return
    inputs = cost.readings[0].situation.inputs
    home, at_least = inputs.rates.home, "" if cost.is_complete else "at least "
    total, piece = amount_range(cost.low, cost.high, home), amount_range(*cost.per_good_piece, home)
    yield f"At your door: {at_least}{total} in all, {at_least}{piece} a good piece"
    paid = paid_before_checking(cost)
    yield f"Before you can check anything you will have paid {at_least}{amount_range(paid.low, paid.high, home)}"
    yield from tax_notes(cost.readings[0].situation)
    if not inputs.settings.balance_said:
        yield (
            "You have not said when the rest is due, so it is counted as paid before shipment: ask for payment after "
            "checking (balance under [cost] of the criteria file)"
        )
    elif inputs.settings.balance == "before shipment":
        yield (
            "The rest is put down as due before shipment: it is worth asking for payment after checking (balance under "
            "[cost] of the criteria file)"
        )


def _day_notes(sheet: OrderSheet) -> Iterator[str]:
    yield from _arrival_notes(sheet)
    if sheet.cost is None or sheet.deliver_by is None:
        return
    need_by = sheet.case.brief.need_by
    timing = sheet.cost.timing if need_by and sheet.terms.deliver_by in (None, need_by) else None
    if timing is not None and need_by:
        if timing.status != "in time":
            standing = standing_words(timing.status, timing.rests_on)
            yield f"To have the pieces by {day_words(need_by)}: {standing}; {begin_words(timing)}"
        return
    if sheet.cost.days is None:
        return
    left = (sheet.deliver_by - sheet.as_of).days
    if sheet.cost.days.high is None or sheet.cost.days.high > left:
        yield (
            f"Quoted are {days_words(sheet.cost.days)} of production and transit alone, and {counted(left, 'day')} are "
            f"left until {day_words(sheet.deliver_by)}: it may come too late"
        )


def _arrival_notes(sheet: OrderSheet) -> Iterator[str]:
    """Yield where the day of delivery comes from, or that the one which was typed leaves too little time."""
    need_by, schedule = sheet.case.brief.need_by, sheet.case.schedule
    if need_by is None or sheet.arrive_by is None or sheet.arrive_by == need_by or schedule is None:
        return
    settings = schedule.settings
    days = counted(settings.receiving_days, "working day")
    assumed = "" if "receiving_days" in settings.given else ", assumed"
    why = (
        f"you need them by {day_words(need_by)}, and receiving and packing take {days} of yours (receiving_days of "
        f"[schedule]{assumed})"
    )
    if sheet.terms.deliver_by is None:
        yield f"They are to be at your door by {day_words(sheet.arrive_by)}: {why}"
    elif sheet.terms.deliver_by > sheet.arrive_by:
        yield (
            f"The day of delivery, {day_words(sheet.terms.deliver_by)}, is later than {day_words(sheet.arrive_by)}: "
            f"{why}"
        )


def _check_notes(sheet: OrderSheet) -> Iterator[str]:
    if sheet.checks.signs:
        yield f"Warning signs: {'; '.join(sign_of(one) for one in sheet.checks.signs)}"
    if sheet.checks.open:
        yield f"Not looked into yet: {listed(sheet.checks.open)}"


def cautions(sheet: OrderSheet) -> list[str]:
    """Return the cautions on payment, safety, customs and responsibility, sentences without the full stop."""
    care = sheet.case.care
    inputs = sheet.cost.readings[0].situation.inputs if sheet.cost else None
    return [
        *MONEY_CAUTION.rstrip(".").split(". "),
        PRIVATE_FILES,
        SAFETY,
        *((FOOD,) if care and care.touches_food else ()),
        *((CHILDREN,) if care and care.for_children else ()),
        OWN_BRAND,
        *(cost_cautions(inputs, [sheet.cost]) if inputs and sheet.cost else ()),
        NO_ADVICE,
    ]
