"""The price of the goods for a quantity, from a reply's price breaks, each or all."""

from decimal import Decimal

from scorecard.costing.amounts import Span, over, times, unit_priced
from scorecard.costing.quotes import QuoteRow
from scorecard.costing.replies import Reply
from scorecard.frozen import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class GoodsPrice:
    """What the goods cost, in the quote's currency, exact.

    Parameters
    ----------
    row : the row of the reply that it comes from
    total : for the whole quantity
    doubt : what is not known of it, such as "price for 200 pieces"; "" where the reply prices just that
    """

    row: QuoteRow
    quantity: int
    total: Span
    doubt: str = ""


def least_quoted(reply: Reply) -> int | None:
    """Return the least quantity that a reply has a price for; None where a row names no quantity."""
    known = [row.pieces for row in reply.rows if row.pieces is not None]
    return min(known) if len(known) == len(reply.rows) else None


def row_for(reply: Reply, quantity: int) -> QuoteRow:
    """Return the row whose price holds for a quantity: the greatest break at or below it, else the least."""
    reached = [row for row in reply.rows if _from(row) <= quantity]
    return max(reached, key=_from) if reached else min(reply.rows, key=_from)


def _from(row: QuoteRow) -> int:
    """Return the quantity from which a price holds: one that names none holds from the first piece."""
    return row.pieces or 1


def price_for(reply: Reply, quantity: int, wanted: int) -> GoodsPrice:
    """Return what a quantity costs.

    Parameters
    ----------
    reply : with at least one price
    quantity : pieces to order
    wanted : the brief's pieces, which a price for all without a number of pieces is for

    Returns
    -------
    a price each: times the pieces. A price for all: as it stands for just those pieces; for others in proportion, with
    a doubt, since nobody quoted it
    """
    row = row_for(reply, quantity)
    if row.price_is_for == "each":
        return GoodsPrice(row=row, quantity=quantity, total=_scaled(row.price, quantity, 1))
    lot = row.pieces or wanted
    doubt = "" if lot == quantity else f"price for {quantity} pieces (quoted for {lot}, taken in proportion)"
    return GoodsPrice(row=row, quantity=quantity, total=_scaled(row.price, quantity, lot), doubt=doubt)


def _scaled(price: Span, quantity: int, lot: int) -> Span:
    ends = (price.low, price.low if price.high is None else price.high)
    low, high = (over(times(end, Decimal(quantity)), Decimal(lot)) for end in ends)
    return Span(low, None if price.high is None else high)


def price_words(price: GoodsPrice, unit_price: Span) -> str:
    """Return how a price was worked out, such as "200 × 1.20 USD"."""
    row = price.row
    amount = unit_priced(unit_price.low, row.currency)
    if row.price_is_for == "each":
        return f"{price.quantity} × {amount}"
    lot = row.pieces
    return f"{amount} for {lot or price.quantity}" + (f" × {price.quantity} ÷ {lot}" if price.doubt else "")
