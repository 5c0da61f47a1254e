"""Warnings on what the pieces sell for, beside what they cost."""

from collections.abc import Iterable

from scorecard.codes import money
from scorecard.costing.cheapest import cheapest_of, level_words, piece_amount, rivals_words
from scorecard.costing.landed import LandedCost
from scorecard.costing.pieces import piece_of
from scorecard.errors import Place, Problem
from scorecard.ordering.selling import Selling


def price_doubts(selling: Selling | None, chosen: Iterable[LandedCost]) -> tuple[Problem, ...]:
    """Return a warning where even the cheapest good piece costs, or may cost, more than is kept of its price.

    Parameters
    ----------
    selling : None where nothing is said of it
    chosen : the way that stands for each maker
    """
    costs = list(chosen)
    pieces = [piece_of(cost) for cost in costs]
    found = cheapest_of(pieces)
    if selling is None or found is None or selling.kept <= 0:  # of no more than nothing the reader has warned
        return ()
    if selling.kept >= min(one.high for one in pieces if not one.missing):
        return ()
    piece, home = found.piece, costs[0].readings[0].situation.inputs.rates.home
    is_sure = selling.kept < min(one.low for one in (piece, *found.rivals))
    price, kept = (f"{money(one, home)} {home}" for one in (selling.price, selling.kept))
    left = "," if selling.kept == selling.price else f", of which {kept} are left,"
    told = f"{piece_amount(piece, home)} {home} ({piece.maker}{level_words(found)})"
    but = f"; {rivals}" if (rivals := rivals_words(found, home)) else ""
    return (
        Problem(
            code="price-below-cost",
            place=selling.places.get("price", Place()),
            found=f"the price, {price}{left} {'is' if is_sure else 'may be'} below what the cheapest good piece costs, "
            f"{told}{but}",
            wanted="Raise the price, or find a cheaper maker, way or quantity",
        ),
    )
