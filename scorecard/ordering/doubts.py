"""Warnings on what the pieces sell for, beside what they cost."""

from collections.abc import Iterable

from scorecard.codes import money
from scorecard.costing.choosing import middle
from scorecard.costing.landed import LandedCost
from scorecard.errors import Place, Problem
from scorecard.ordering.selling import Selling


def price_doubts(selling: Selling | None, chosen: Iterable[LandedCost]) -> tuple[Problem, ...]:
    """Return a warning where even the cheapest good piece costs more than is kept of its price.

    Parameters
    ----------
    selling : None where nothing is said of it
    chosen : the way that stands for each maker
    """
    known = [cost for cost in chosen if cost.is_complete and middle(cost).is_finite()]
    if selling is None or not known or selling.kept <= 0:  # of no more than nothing the reader has warned
        return ()
    cheapest = min(known, key=middle)
    if selling.kept >= middle(cheapest):
        return ()
    home = cheapest.readings[0].situation.inputs.rates.home
    price, kept, cost = (f"{money(one, home)} {home}" for one in (selling.price, selling.kept, middle(cheapest)))
    left = "," if selling.kept == selling.price else f", of which {kept} are left,"
    return (
        Problem(
            code="price-below-cost",
            place=selling.places.get("price", Place()),
            found=f"the price, {price}{left} is below what the cheapest good piece costs, {cost} ({cheapest.maker})",
            wanted="Raise the price, or find a cheaper maker, way or quantity",
        ),
    )
