"""Designs that are ordered in fewer pieces than the maker's minimum per design, by the table [order].

Enters: the table, and the makers as read. Leaves: which designs these are, in words, and warnings at the makers' cells.
"""

from collections.abc import Iterator
from math import isinf
from typing import TYPE_CHECKING

from scorecard.answers import MakerTable
from scorecard.errors import Problem
from scorecard.words import listed, printable, shortest

if TYPE_CHECKING:  # a folder without the table loads nothing of orders
    from scorecard.order_terms import OrderTerms

BELOW_MINIMUM = "below-minimum"
COLUMN = "Minimum is per"


def below_minimum(terms: "OrderTerms", table: MakerTable, maker: int) -> str:
    """Return which designs have fewer pieces than a maker's minimum per design, in words; "" where none has.

    Parameters
    ----------
    terms : only pieces that are typed count, since an even split follows the minimum
    table : of the makers
    maker : its position; where it does not say what its minimum is per, that may be the design
    """
    per = table.minimum_per[maker] if table.minimum_per else None
    if table.minimum is None or not table.minimum.known[maker] or per not in ("design", None) or len(terms.designs) < 2:
        return ""
    low, high = max(0.0, float(table.minimum.low[maker])), float(table.minimum.high[maker])
    most = low if isinf(high) else high
    small = [(number, one) for number, one in enumerate(terms.designs, 1) if one.pieces and one.pieces < most]
    if not small:
        return ""
    named = listed(f"{_shown(one.name) or f'design {number}'}: {one.pieces}" for number, one in small)
    minimum = shortest(most) if low == most else f"{shortest(low)} to {shortest(most)}"
    minimum = f"at least {minimum}" if isinf(high) else minimum
    if per is None:
        return f"{named}, perhaps below the minimum of {minimum}, which may be per design"
    is_sure = all(one.pieces < low for _, one in small if one.pieces)
    return f"{named}, {'' if is_sure else 'perhaps '}below the minimum of {minimum} per design"


def _shown(name: str) -> str:
    """Return a design's name on one line, without signs that do not show."""
    return " ".join(printable(name).split())


def below_minimums(terms: "OrderTerms", table: MakerTable) -> Iterator[Problem]:
    """Yield a warning for each maker whose minimum per design is above what some design is ordered in."""
    for maker, per in enumerate(table.minimum_per):
        words = below_minimum(terms, table, maker) if per else ""
        if words:
            yield Problem(
                code=BELOW_MINIMUM,
                place=table.place(maker, COLUMN),
                found=words,
                wanted="Order more of it under [[order.designs]], or ask for a lower minimum and correct it",
            )
