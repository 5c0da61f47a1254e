"""The columns of the entry workbook, each said once: what it means, its unit, where a buyer finds it, what it may hold.

Leaves: tables that the workbook's headings, notes, drop-downs and Guide are all made from.
"""

from typing import Literal

from scorecard.brief import UNITS
from scorecard.checks import STATES, USUAL_CHECKS
from scorecard.costing.freight import FREIGHT_COVERS
from scorecard.costing.quotes import TERMS, WAYS, YES_NO
from scorecard.frozen import dataclass
from scorecard.samples import DECISIONS, KINDS

Kind = Literal["name", "text", "number", "money", "percent", "date", "choice"]

MAY_HOLD: dict[Kind, str] = {
    "name": "Any text; it is kept exactly as typed",
    "text": "Any text, or nothing",
    "number": "A number, a range such as 3-5 or 4+, or nothing while you do not know",
    "money": "An amount such as 4.20, a range, or nothing while you do not know",
    "percent": "30 for 30 %, a range, or nothing while you do not know",
    "date": "A date such as 2026-11-25, or nothing",
    "choice": "A line of the list, or nothing while you do not know",
}
WIDTHS: dict[Kind, float] = {
    "name": 24,
    "text": 20,
    "number": 12,
    "money": 12,
    "percent": 12,
    "date": 13,
    "choice": 14,
}

FIRST = "First of all, while you browse"
BROWSING = "While you browse"
ASKING = "When you write to the maker"
REPLYING = "After they reply"
SHOWN_OR_ASKED = "While you browse, where it is shown; else after they reply"
ANY_TIME = "At any time"

PRICE_IS_FOR = ("each", "all")
PRICE_COVERS = ("goods", "goods and freight", "to my door, duty and tax paid", "don't know")
CHECK_NAMES = tuple(check.name for check in USUAL_CHECKS)


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """One column of a sheet.

    Parameters
    ----------
    heading : as it stands in row 1
    meaning : one sentence, without the full stop
    where : where a buyer finds it, likewise
    unit : such as "days"; "" where there is none
    kind : what its cells hold
    options : the lines of its drop-down; empty where it has none
    when : when it is filled in, one sentence without the full stop; "" for what a first ranking needs
    wide : whether its texts are long
    """

    heading: str
    meaning: str
    where: str
    unit: str = ""
    kind: Kind = "text"
    options: tuple[str, ...] = ()
    when: str = ""
    wide: bool = False

    @property
    def is_first(self) -> bool:
        """Whether a first ranking needs it."""
        return not self.when

    @property
    def width(self) -> float:
        """The width in characters of the workbook's font."""
        longest = max((len(option) for option in self.options), default=0)
        return 36 if self.wide else min(max(WIDTHS[self.kind], longest + 3), 30)


@dataclass(frozen=True, slots=True, kw_only=True)
class EntrySheet:
    """One sheet of the entry workbook.

    Parameters
    ----------
    about : what a row is, in one sentence without the full stop
    until_quotes : whether it is left empty until quotes come
    """

    name: str
    about: str
    columns: tuple[Column, ...]
    until_quotes: bool = True


def _column(heading: str, meaning: str, where: str, kind: Kind = "text", unit: str = "") -> Column:
    return Column(heading=heading, meaning=meaning, where=where, kind=kind, unit=unit)


def _choice(heading: str, meaning: str, where: str, options: tuple[str, ...]) -> Column:
    return Column(heading=heading, meaning=meaning, where=where, kind="choice", options=options)


MAKER = _column(
    "Maker",
    "The maker's name, one row a maker",
    "Its shop window or page; give it one spelling on every sheet",
    "name",
)
_SAME_MAKER = _column("Maker", "Whose it is, spelt as on the sheet Makers", "The sheet Makers", "name")
_NOTES = Column(heading="Notes", meaning="Anything worth remembering", where="You", wide=True)
_QUOTE = "The maker's reply"
_QUOTE_MONEY = "the quote's currency"
_CARTON = "The packing line of the quote; else ask how the pieces are packed"

QUOTES = EntrySheet(
    name="Quotes",
    about="One row per price in a reply: a reply with three price breaks takes three rows",
    columns=(
        _SAME_MAKER,
        _column("Quoted on", "The day of the reply", "The date of the message or the quote", "date"),
        _column(
            "Pieces", "The quantity from which this price holds", "The price list in the reply", "number", "pieces"
        ),
        _column("Price", "The price as the reply gives it", _QUOTE, "money", _QUOTE_MONEY),
        _choice("Price is for", "Whether the price is for each piece or for all of them", _QUOTE, PRICE_IS_FOR),
        _column("Currency", "Three letters, such as EUR", "Beside the price; ask when only a sign such as $ is given"),
        _choice(
            "Price covers", "How far the price takes the goods", f"{_QUOTE}; ask when it is not said", PRICE_COVERS
        ),
        _choice("Way", "The way of shipping that this price is for", f"{_QUOTE}; empty when it covers none", WAYS),
        _column(
            "Days",
            "How long it takes once everything is approved, as far as the price covers: ready, or at your door",
            f"{_QUOTE}, as lead time or production time; write 12 working days or 12 calendar days where it says "
            "which, and ask where it does not",
            "number",
            "days",
        ),
        _choice(
            "Delivery term",
            "The three letters that say who pays for which part of the journey (Incoterms)",
            "In the quote beside the price",
            TERMS,
        ),
        _column("Place", "The place that belongs to the delivery term", "In the quote, after the three letters"),
        _column(
            "Set-up",
            "What is charged once to get ready: plates, screens, moulds, artwork",
            f"{_QUOTE}; ask whether it is once, or for each design",
            "money",
            _QUOTE_MONEY,
        ),
        _choice(
            "Set-up is per",
            "What the set-up is charged for: once for the order, or for each design",
            "Ask the maker",
            UNITS,
        ),
        _choice("Set-up again on reorder", "Whether set-up is charged again next time", "Ask the maker", YES_NO),
        _column("Sample price", "What a sample costs, without its postage", _QUOTE, "money", _QUOTE_MONEY),
        _column("Sample postage", "What sending the sample costs", _QUOTE, "money", _QUOTE_MONEY),
        _column(
            "Credited from",
            "The order size from which the sample price comes off the bill",
            "Ask: is the sample paid back with an order, and from how many pieces",
            "number",
            "pieces",
        ),
        _column("Deposit %", "The part to be paid with the order", "The payment terms of the quote", "percent", "%"),
        _column("Valid until", "The last day on which the quote holds", "The foot of the quote", "date"),
    ),
)

FREIGHT = EntrySheet(
    name="Freight",
    about="One row per maker and way of shipping: a cost for so many pieces, or a rate with the cartons",
    columns=(
        _SAME_MAKER,
        _choice("Way", "The way of shipping", "The maker's or the carrier's offer", WAYS),
        _column("From pieces", "The least quantity that this offer is for", "The offer", "number", "pieces"),
        _column("To pieces", "The greatest quantity that this offer is for", "The offer", "number", "pieces"),
        _column(
            "Cost",
            "What the whole shipment costs; leave it empty where there is a rate",
            "The offer",
            "money",
            "the offer's currency",
        ),
        _column(
            "Rate per kg",
            "What one chargeable kg costs; leave it empty where there is a cost",
            "The carrier's price list",
            "money",
            "the offer's currency",
        ),
        _column(
            "Rate per revenue ton",
            "What a cubic metre, or 1000 kg if that is more, costs at sea; leave it empty where there is a cost",
            "The forwarder's price list, as W/M",
            "money",
            "the offer's currency",
        ),
        _column("Currency", "Three letters, such as EUR", "Beside the cost or the rate"),
        _column("Days", "How long the journey takes, door to door", "The offer", "number", "days"),
        _column("Pieces per carton", "How many pieces one carton holds", _CARTON, "number", "pieces"),
        _column("Carton length cm", "The longest side of a carton, outside", _CARTON, "number", "cm"),
        _column("Carton width cm", "The second side of a carton, outside", _CARTON, "number", "cm"),
        _column("Carton height cm", "The third side of a carton, outside", _CARTON, "number", "cm"),
        _column("Carton kg", "What a full carton weighs", _CARTON, "number", "kg"),
        _choice(
            "Freight covers",
            "Which part of the journey the freight pays for; empty is what is usual for the way",
            "The offer; ask when it is not said",
            FREIGHT_COVERS,
        ),
    ),
)


def _mark(aspect: str, meaning: str) -> Column:
    return _column(
        aspect, f"Your mark for {meaning}: 10 is just as wanted", "The sample in your hand", "number", "0 to 10"
    )


SAMPLES = EntrySheet(
    name="Samples",
    about="One row per round of samples",
    columns=(
        _SAME_MAKER,
        _choice(
            "Round", "What was sent: a picture, a sample, or one made by the process of the full run", "You", KINDS
        ),
        _column("Asked on", "The day on which you asked for it", "Your messages", "date"),
        _column("Received on", "The day on which it came", "The parcel, or the message with the picture", "date"),
        _mark("Print", "how sharp and whole the print is"),
        _mark("Colour", "how near the colours are to your own print of the artwork"),
        _mark("Material", "the feel and weight of the goods"),
        _mark("Finish", "edges, seams, glaze and packing"),
        _column(
            "Position off mm", "How far the print sits from where it should", "Measure with a ruler", "number", "mm"
        ),
        _column("Size off mm", "How far the print's width is from the width asked for", "Measure", "number", "mm"),
        _choice("Decision", "What you told the maker", "You", DECISIONS),
        _column(
            "Colour wanted L*a*b*",
            "The colour that matters most, as three numbers, only if it was measured",
            "A colour meter on your own print; a photograph or a screen cannot settle a colour",
        ),
        _column("Colour measured L*a*b*", "The same colour on the sample, as measured", "The same colour meter"),
        _NOTES,
    ),
)

CHECKS = EntrySheet(
    name="Checks",
    about="One row per thing that you checked about a maker before paying",
    columns=(
        _SAME_MAKER,
        _choice("Check", "What was checked; one of the list, or your own words", "The list, or your own", CHECK_NAMES),
        _choice("State", "How it came out", "You", STATES),
        Column(heading="Evidence", meaning="What you saw, and where", where="A link, or a file name", wide=True),
        _column("Date", "The day on which you checked", "You", "date"),
    ),
)

ORDERS = EntrySheet(
    name="Orders",
    about="One row per order that you placed",
    columns=(
        _SAME_MAKER,
        _column("Ordered on", "The day of the order", "Your order", "date"),
        _column("Pieces", "How many were ordered", "Your order", "number", "pieces"),
        _choice("Way", "How it is shipped", "Your order", WAYS),
        _column("Deposit paid on", "The day on which you paid the deposit", "Your bank", "date"),
        _column("Proof approved on", "The day on which you approved the proof", "Your messages", "date"),
        _column(
            "Promised on", "The day that the maker promised for the pieces at your door", "Its confirmation", "date"
        ),
        _column("Shipped on", "The day on which the pieces left the maker", "The shipping notice", "date"),
        _column("Arrived on", "The day on which they were at your door", "The delivery note", "date"),
        _column(
            "Complain until",
            "The last day on which the maker or the payment service takes a complaint",
            "The terms of the order and of the payment service",
            "date",
        ),
        _column("Balance paid on", "The day on which you paid the rest", "Your bank", "date"),
        _column(
            "Faulty pieces",
            "How many of those opened had a fault, minor ones too",
            "Your count on arrival",
            "number",
            "pieces",
        ),
        _column(
            "Pieces opened",
            "How many you opened and looked at; nothing where you opened all",
            "Your count on arrival",
            "number",
            "pieces",
        ),
        _column(
            "Paid in all", "Everything paid for this order, to the door", "Your bank", "money", "the brief's currency"
        ),
        _NOTES,
    ),
)

LATER_SHEETS = (QUOTES, FREIGHT, SAMPLES, CHECKS, ORDERS)
