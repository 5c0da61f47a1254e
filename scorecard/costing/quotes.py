"""Quotes as they come: one row of the sheet Quotes, and what its words may be.

Enters: nothing but what a reader has read. A reply with three price breaks is three rows; which rows belong together is
settled in ``replies``, not by the reader.
"""

from collections.abc import Mapping
from dataclasses import field
from datetime import date
from types import MappingProxyType
from typing import Literal, get_args

from scorecard.brief import Unit
from scorecard.costing.amounts import Span
from scorecard.errors import Place
from scorecard.frozen import dataclass

Way = Literal["sea", "air", "express", "rail", "road", "post"]
Term = Literal["EXW", "FCA", "CPT", "CIP", "DAP", "DPU", "DDP", "FAS", "FOB", "CFR", "CIF"]
Covers = Literal["goods", "goods and freight", "to my door, duty and tax paid"]
PriceIsFor = Literal["each", "all"]
DaysCounted = Literal["working days", "days"]

WAYS: tuple[Way, ...] = get_args(Way)
TERMS: tuple[Term, ...] = get_args(Term)
YES_NO = ("yes", "no")
FOR_ANY_WAY: Mapping[Term, Term] = MappingProxyType({"FAS": "FCA", "FOB": "FCA", "CFR": "CPT", "CIF": "CIP"})
"""By term for sea and inland waterways only, the one that says the same for any way."""

STALE_DAYS = 180  # our own choice: figures older than this are asked for again
COVERS: tuple[Covers, ...] = get_args(Covers)


@dataclass(frozen=True, slots=True, kw_only=True)
class QuoteRow:
    """One row of the sheet Quotes, as read; blank and unknown cells are None, never 0.

    The reader refuses, at its cell: an unknown maker, a blank or zero or negative price, a blank "Price is for", a
    currency that is neither the brief's nor has a rate, "Credited from" without a sample price, a number of pieces
    below 1, a deposit above 100 %. A blank currency is that of the
    reply which the row continues, else the brief's, with a warning of code ``read-as``. Two prices for
    one number of pieces in one reply are found by ``replies.same_pieces``; the reader calls it and adds its problems.

    Parameters
    ----------
    maker : spelt as on the sheet Makers
    row : in the sheet, from 1
    price : in ``currency``, above 0
    price_is_for : each piece, or all ``pieces`` together
    currency : ISO 4217
    quoted_on : the day of the reply
    pieces : the quantity from which the price holds, at least 1; None where the reply names none
    covers : how far the price takes the goods; None for "don't know" and for blank, which is costed every way
    way : the way of shipping that the price is for
    days : until the goods are ready or at the door, as far as the price covers
    days_counted : which days the reply means; None where it does not say
    term : the delivery term (Incoterms 2020)
    term_place : its named place as typed, "" where blank
    setup : charged once, in ``currency``; a typed 0 is a set-up that costs nothing
    setup_per : what set-up is charged per, from a column "Set-up is per" where there is one; None where it is not said
    setup_again : whether set-up is charged again on a reorder
    sample_price, sample_postage : in ``currency``
    credited_from : the order size from which the sample price comes off the bill
    deposit_percent : 0 to 100
    valid_until : the last day on which the quote holds
    unknown : of the fields above, those whose cell says that nobody knows yet ("?"), or holds what cannot be read
    currency_named : whether the reply says its currency; else it is taken to be the brief's
    places : the cell of every column that is there, by its heading ("Price", "Valid until", …; "Maker" always)
    """

    maker: str
    row: int
    price: Span
    price_is_for: PriceIsFor
    currency: str
    quoted_on: date | None = None
    pieces: int | None = None
    covers: Covers | None = None
    way: Way | None = None
    days: Span | None = None
    days_counted: DaysCounted | None = None
    term: Term | None = None
    term_place: str = ""
    setup: Span | None = None
    setup_per: Unit | None = None
    setup_again: bool | None = None
    sample_price: Span | None = None
    sample_postage: Span | None = None
    credited_from: int | None = None
    deposit_percent: Span | None = None
    valid_until: date | None = None
    unknown: frozenset[str] = frozenset()
    places: Mapping[str, Place] = field(default_factory=dict)
    currency_named: bool = True

    def at(self, heading: str) -> Place:
        """Return the cell of one column; the maker's cell where the column is not there."""
        return self.places.get(heading) or self.places.get("Maker") or Place()
