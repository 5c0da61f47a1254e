"""The sheet Freight: offers for a shipment, or rates with the cartons.

Enters: rows of the sheet. Leaves: offers, in sheet order; a row with a problem that matters is left out.
"""

from collections.abc import Container, Sequence

from scorecard.costing.freight import FREIGHT_COVERS, Carton, FreightOffer
from scorecard.costing.quotes import WAYS
from scorecard.reading.cells import Fault
from scorecard.reading.quotes_sheet import read_currency
from scorecard.reading.sheet_table import TableRow
from scorecard.reading.units import ANY_MONEY
from scorecard.words import listed

FREIGHT_SHEET = "Freight"
SIDES = ("Carton length cm", "Carton width cm", "Carton height cm")
CARTON = ("Pieces per carton", *SIDES, "Carton kg")
PRICES = ("Cost", "Rate per kg", "Rate per revenue ton")
FREIGHT_HEADINGS = (
    "Maker",
    "Way",
    "From pieces",
    "To pieces",
    *PRICES,
    "Currency",
    "Days",
    *CARTON,
    "Freight covers",
)


def read_freight(rows: Sequence[TableRow], home: str | None, currencies: Container[str]) -> tuple[FreightOffer, ...]:
    """Return the offers of the rows.

    Parameters
    ----------
    rows : of the sheet
    home : the brief's currency, which a blank cell means; None where the brief names none
    currencies : in which amounts can be given: the brief's, and those with a rate
    """
    return tuple(offer for row in rows if (offer := _read(row, home, currencies)) is not None)


def _read(row: TableRow, home: str | None, currencies: Container[str]) -> FreightOffer | None:
    maker, way = row.maker(), row.choice("Way", WAYS)
    if not row.says("Way"):
        row.refuse("Way", Fault("missing-value", "Way is empty", f"Write {listed(WAYS, 'or')}"))
    currency = read_currency(row, home, currencies)
    cost, per_kg, per_ton = (row.number(heading, currency or ANY_MONEY, positive=True) for heading in PRICES)
    first, last = row.whole("From pieces"), row.whole("To pieces")
    days, covers, carton = row.number("Days", "days"), row.choice("Freight covers", FREIGHT_COVERS), _carton(row)
    is_priced, is_ordered = _has_one_price(row), _is_ordered(row, first, last)
    if maker is None or way is None or currency is None or not is_priced or not is_ordered:
        return None
    if cost is None and (carton is None or (per_kg is None and per_ton is None)):
        return None
    return FreightOffer(
        maker=maker,
        row=row.number_in_sheet,
        way=way,
        currency=currency,
        from_pieces=first,
        to_pieces=last,
        cost=cost,
        rate_per_kg=per_kg,
        rate_per_revenue_ton=per_ton,
        days=days,
        carton=carton,
        covers=covers,
        places=row.places(),
    )


def _has_one_price(row: TableRow) -> bool:
    """Say whether a row gives a cost or one rate; the fault of another is noted."""
    given = [heading for heading in PRICES if row.says(heading)]
    if not given:
        found = "there is neither a cost nor a rate"
        row.refuse(
            "Cost", Fault("no-freight-price", found, "Write what the shipment costs, or the rate and the cartons")
        )
    elif len(given) > 1:
        found = f"{listed(given)} are both given"
        row.refuse(given[1], Fault("two-freight-prices", found, "Keep one, or give each a row of its own"))
    return len(given) == 1


def _carton(row: TableRow) -> Carton | None:
    """Return the carton; None where there is none, or once what is missing of it is noted."""
    pieces = row.whole("Pieces per carton")
    measures = [
        row.number(heading, unit, positive=True)
        for heading, unit in zip(CARTON[1:], ("cm",) * 3 + ("kg",), strict=True)
    ]
    given = [heading for heading in CARTON if row.says(heading)]
    missing = [heading for heading in CARTON if heading not in given]
    has_rate = any(row.says(heading) for heading in PRICES[1:])
    if missing and (given or has_rate):
        _note_missing(row, missing, has_rate=has_rate)
        return None
    if pieces is None or any(one is None or not one.is_known for one in measures):
        _note_ranges(row, given)
        return None
    length, width, height, weight = (one.low for one in measures if one is not None)
    return Carton(pieces=pieces, length_cm=length, width_cm=width, height_cm=height, kg=weight)


def _note_missing(row: TableRow, missing: Sequence[str], *, has_rate: bool) -> None:
    """Note what is missing of a carton: a problem where a rate needs it, or where only its pieces are missing."""
    found = f"the carton lacks {listed(missing)}"
    instead = "give what the whole shipment costs in place of the rate" if has_rate else "leave all of the carton empty"
    fault = Fault("carton-not-whole", found, f"Write what is missing, or {instead}")
    if has_rate or "Pieces per carton" in missing:
        row.refuse(missing[0], fault)
    else:
        row.warn(missing[0], fault)


def _note_ranges(row: TableRow, given: Sequence[str]) -> None:
    """Note a carton's measure that is a range: a weight cannot be reckoned from it."""
    for heading, unit in zip(CARTON[1:], ("cm",) * 3 + ("kg",), strict=True):
        span = row.number(heading, unit, positive=True) if heading in given else None
        if span is not None and not span.is_known:
            row.refuse(
                heading, Fault("range-for-carton", f"{heading} is a range", "Write one number: that of a full carton")
            )


def _is_ordered(row: TableRow, first: int | None, last: int | None) -> bool:
    if first is None or last is None or first <= last:
        return True
    found = f"it is for {first} pieces and more, and for {last} and fewer"
    row.refuse("To pieces", Fault("reversed-range", found, f"Write {first} or more, or exchange the two"))
    return False
