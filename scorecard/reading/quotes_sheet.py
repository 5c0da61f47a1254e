"""The sheet Quotes: replies as they came, one row a price.

Enters: rows of the sheet. Leaves: quotes, in sheet order; a row with a problem that matters is left out.
"""

import re
from collections.abc import Container, Sequence
from dataclasses import replace
from datetime import date
from decimal import Decimal
from math import isnan

from scorecard.brief import UNITS
from scorecard.codes import CURRENCY_DECIMALS, currency_offered
from scorecard.costing.amounts import Span
from scorecard.costing.quotes import COVERS, TERMS, WAYS, YES_NO, Covers, DaysCounted, PriceIsFor, QuoteRow
from scorecard.costing.replies import same_pieces
from scorecard.frozen import dataclass
from scorecard.reading.cells import Fault, quoted
from scorecard.reading.date_values import read_day
from scorecard.reading.names import same
from scorecard.reading.reply_text import where_parts_go
from scorecard.reading.sheet_table import TableRow
from scorecard.reading.units import ANY_MONEY, days_named
from scorecard.reading.units import currencies as currencies_of

QUOTES_SHEET = "Quotes"
QUOTE_HEADINGS = (
    "Maker",
    "Quoted on",
    "Pieces",
    "Price",
    "Price is for",
    "Currency",
    "Price covers",
    "Way",
    "Days",
    "Delivery term",
    "Place",
    "Set-up",
    "Set-up is per",
    "Set-up again on reorder",
    "Sample price",
    "Sample postage",
    "Credited from",
    "Deposit %",
    "Valid until",
)
EACH_OR_ALL: tuple[PriceIsFor, ...] = ("each", "all")
PER_PIECE = re.compile(r"(?:per|each|/)\s*(?:piece|pc|pcs|unit|item)\.?", re.IGNORECASE)
DONT_KNOW = "don't know"
CHARGED = {
    "setup": "Set-up",
    "sample_price": "Sample price",
    "sample_postage": "Sample postage",
    "deposit_percent": "Deposit %",
}
TERM_HEADINGS = ("Price covers", "Way", "Delivery term", "Place")
DAYS_COUNTED: dict[str, DaysCounted] = {"working days": "working days", "calendar days": "days"}
SIGNS_OF_ONE = {"€": "EUR", "US$": "USD"}  # other signs are those of several currencies, and are asked about


def read_quotes(rows: Sequence[TableRow], home: str | None, currencies: Container[str]) -> tuple[QuoteRow, ...]:
    """Return the quotes of the rows.

    Parameters
    ----------
    rows : of the sheet
    home : the brief's currency, which a blank cell means; of a row that continues a reply, that reply's is meant
    currencies : in which amounts can be given: the brief's, and those with a rate
    """
    found: list[QuoteRow] = []
    whole: list[QuoteRow] = []
    heads: dict[str, QuoteRow] = {}
    unsure: set[str] = set()
    for row in rows:
        above = heads.get(same(row.text("Maker"))) if row.says("Maker") else None
        quote, is_whole = _read(row, _meant(row, above, home), currencies)
        if quote is None:
            continue
        found.append(quote)
        if not _says_terms(row, quote):
            unsure.add(quote.maker)
        if is_whole:
            whole.append(quote)
        if (is_whole or quote.currency not in currencies) and (above is None or not _continues(row, above)):
            heads[same(quote.maker)] = quote
    if rows:
        unread = {quote.row for quote in found if quote.pieces is None} & _typed(rows, "Pieces")
        told = [quote for quote in found if quote.maker not in unsure]
        rows[0].findings.problems.extend(same_pieces(told, unread))
    return tuple(whole)


def _typed(rows: Sequence[TableRow], heading: str) -> set[int]:
    """Return the rows in which something is typed under a heading."""
    return {row.number_in_sheet for row in rows if row.says(heading)}


def _says_terms(row: TableRow, quote: QuoteRow) -> bool:
    """Say whether all that tells replies apart could be read; of others nobody can say that two are the same."""
    covers = quote.covers or row.text("Price covers").casefold() == DONT_KNOW
    read = {"Price covers": covers, "Way": quote.way, "Delivery term": quote.term, "Quoted on": quote.quoted_on}
    return quote.currency in CURRENCY_DECIMALS and all(one or not row.says(heading) for heading, one in read.items())


@dataclass(frozen=True, slots=True)
class Meant:
    """The currency that a blank cell means, and whose it is, in words."""

    currency: str | None
    whose: str = "the brief's"


def _meant(row: TableRow, above: QuoteRow | None, home: str | None) -> Meant:
    """Return what a blank currency means: that of the reply above which the row continues, else the brief's."""
    if above is None or not _continues(row, above):
        return Meant(home)
    return Meant(above.currency, f"as in row {above.row}, whose reply this row continues")


def _continues(row: TableRow, head: QuoteRow) -> bool:
    """Say whether a row names no terms of its own, nor another day or currency than the reply above it."""
    if any(row.says(heading) and row.text(heading).casefold() != DONT_KNOW for heading in TERM_HEADINGS):
        return False
    day = row.values.get("Quoted on")
    read = None if day is None else read_day(day)
    other_day = isinstance(read, float | int) and not isnan(read) and date.fromordinal(int(read)) != head.quoted_on
    return not other_day and (not row.says("Currency") or row.text("Currency").upper() == head.currency)


def _read(row: TableRow, meant: Meant, currencies: Container[str]) -> tuple[QuoteRow | None, bool]:
    """Return what a row says, and whether it can be reckoned with; None where its maker cannot be told."""
    maker = row.maker()
    currency = read_currency(row, meant.currency, currencies, meant.whose)
    unit, typed = currency or ANY_MONEY, row.text("Currency").upper()
    price = row.number("Price", unit, positive=True, whole_reply=where_parts_go)
    is_for = _is_for(row)
    _require(row, "Price", "Write the price of this reply, or delete the row")
    _require(row, "Price is for", "Write each or all")
    _check_credit(row)
    days, days_counted = _days(row)
    quote = QuoteRow(
        maker=maker or "",
        row=row.number_in_sheet,
        price=price or Span.of(1),
        price_is_for=is_for or "each",
        currency=currency or SIGNS_OF_ONE.get(typed, typed) or meant.currency or unit,
        quoted_on=row.day("Quoted on", may_come=False),
        pieces=row.whole("Pieces"),
        covers=_covers(row),
        way=row.choice("Way", WAYS),
        days=days,
        days_counted=days_counted,
        term=row.choice("Delivery term", TERMS),
        term_place=row.text("Place"),
        setup=row.number("Set-up", unit),
        setup_per=row.choice("Set-up is per", UNITS),
        setup_again=_yes_or_no(row, "Set-up again on reorder"),
        sample_price=row.number("Sample price", unit),
        sample_postage=row.number("Sample postage", unit),
        credited_from=row.whole("Credited from"),
        deposit_percent=_deposit(row),
        valid_until=row.day("Valid until"),
        places=row.places(),
        currency_named=_names_currency(row, meant),
    )
    quote = replace(quote, unknown=_unknown(row, quote))
    return (quote if maker else None), None not in (maker, currency, price, is_for)


def _days(row: TableRow) -> tuple[Span | None, DaysCounted | None]:
    """Return the days of a reply, and which days it says that they are; "12 days" does not say."""
    typed = row.values.get("Days")
    named = days_named(typed) if isinstance(typed, str) else "days"
    days = row.number("Days", named, said="" if named == "days" else named)
    return days, DAYS_COUNTED.get(named) if days else None


def _unknown(row: TableRow, quote: QuoteRow) -> frozenset[str]:
    """Return the charges of which something is written, and no figure; what is left blank is not among them."""
    return frozenset(
        field for field, heading in CHARGED.items() if heading in row.values and getattr(quote, field) is None
    )


def _names_currency(row: TableRow, meant: Meant) -> bool:
    """Say whether a reply names its currency: in its cell, beside the price, or in the row that it continues."""
    sign = re.sub(r"[\d\s.,'’]", "", row.text("Price"))
    return row.says("Currency") or bool(currencies_of(sign)) or meant != Meant(meant.currency)


def read_currency(
    row: TableRow, home: str | None, currencies: Container[str], whose: str = "the brief's"
) -> str | None:
    """Return the currency of a row: the one named, else the one that a blank means; None once it is refused."""
    if not row.says("Currency"):
        if home is None:
            wanted = "Write its three letters, such as EUR, or give the brief a currency"
            row.refuse("Currency", Fault("missing-currency", "no currency is named here, nor in the brief", wanted))
            return None
        if home not in currencies:
            return None  # which is told of where it stands
        row.warn("Currency", Fault("read-as", "no currency is named", f"read as {home}, {whose}"))
        return home
    typed = row.text("Currency")
    code = SIGNS_OF_ONE.get(typed.upper(), typed.upper())
    if code != typed.upper():
        row.warn("Currency", Fault("read-as", quoted(typed), f"read as {code}"))
    if code not in CURRENCY_DECIMALS:
        offered = currency_offered(typed)
        wanted = f"Write {offered}, if that is meant" if offered else "Write its three letters, such as EUR or USD"
        row.refuse("Currency", Fault("not-a-currency", f"{quoted(typed)} is not the code of a currency", wanted))
        return None
    if code not in currencies:
        line = f"{code} = … (what one {code} costs in your currency)"
        wanted = f"Add a line to [currencies] of the criteria file, {line}, with the day of the rate"
        row.refuse_answer("Currency", Fault("currency-without-rate", f"{code} has no rate", wanted))
        return None
    return code


def _require(row: TableRow, heading: str, wanted: str) -> None:
    if not row.says(heading):
        row.refuse(heading, Fault("missing-value", f"{heading} is empty", wanted))


def _is_for(row: TableRow) -> PriceIsFor | None:
    """Return whether the price is for each piece or for all of them; "per piece" is for each."""
    typed = row.values.get("Price is for")
    if isinstance(typed, str) and PER_PIECE.fullmatch(typed.strip()):
        row.warn("Price is for", Fault("read-as", quoted(typed), "read as each"))
        return "each"
    return row.choice("Price is for", EACH_OR_ALL)


def _covers(row: TableRow) -> Covers | None:
    """Return how far the price takes the goods; None for "don't know"."""
    said = row.choice("Price covers", (*COVERS, DONT_KNOW))
    return next((one for one in COVERS if one == said), None)


def _yes_or_no(row: TableRow, heading: str) -> bool | None:
    said = row.choice(heading, YES_NO)
    return None if said is None else said == "yes"


def _deposit(row: TableRow) -> Span | None:
    """Return the deposit in percent; None once one above 100 is noted."""
    deposit = row.number("Deposit %", "%")
    if deposit is not None and (deposit.high is None or deposit.high > Decimal(100)):
        found = f"{quoted(row.values['Deposit %'])} is above 100 percent"
        row.refuse("Deposit %", Fault("above-hundred", found, "Write the part that is paid first, such as 30 for 30 %"))
        return None
    return deposit


def _check_credit(row: TableRow) -> None:
    if row.says("Credited from") and not row.says("Sample price"):
        found = "a sample is credited, but its price is not given"
        row.refuse(
            "Credited from", Fault("credit-without-sample", found, "Write what the sample costs under Sample price")
        )
