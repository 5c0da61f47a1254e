"""Steady sales, year after year: the economic order quantity, with price breaks."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt


@dataclass(frozen=True, slots=True, kw_only=True)
class Tier:
    """The cost of a piece from a quantity on.

    Parameters
    ----------
    from_pieces : the least order at this cost
    each : the cost of a piece
    once : what every order of this tier costs besides, such as a set-up that is charged again
    """

    from_pieces: float
    each: float
    once: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Yearly:
    """One size to order again and again.

    Parameters
    ----------
    tier : its cost
    economic : the quantity that the tier's cost alone would call for
    quantity : that, or the tier's least where it is below that
    cost : of a year: the pieces, the orders, and keeping half an order in stock
    """

    tier: Tier
    economic: float
    quantity: float
    cost: float


def economic_order_quantity(demand: float, per_order: float, keeping: float) -> float:
    """Return the order at which ordering and keeping together cost least: √(2DS / H).

    Parameters
    ----------
    demand : pieces a year, D
    per_order : cost of one order, S
    keeping : cost of keeping one piece for a year, H, above 0

    References
    ----------
    Harris (1913), the square-root formula.

    Examples
    --------
    >>> economic_order_quantity(1000, 10, 0.50)
    200.0
    """
    return sqrt(2 * demand * per_order / keeping)


def yearly_cost(quantity: float, demand: float, per_order: float, tier: Tier, keeping: float) -> float:
    """Return what a year of orders of one size costs: pieces, orders, and half an order in stock.

    Parameters
    ----------
    quantity : of each order, above 0
    demand : pieces a year
    per_order : cost of one order, beside the tier's own
    tier : cost of a piece
    keeping : cost of keeping one piece for a year
    """
    orders = demand / quantity
    return demand * tier.each + orders * (per_order + tier.once) + quantity / 2 * keeping


def sizes_with_breaks(
    demand: float, per_order: float, holding_percent: float, tiers: Sequence[Tier]
) -> tuple[Yearly, ...]:
    """Return the size of every tier that comes into question, in the order of the tiers.

    Parameters
    ----------
    demand : pieces a year
    per_order : cost of one order
    holding_percent : what keeping a piece for a year costs, of its cost; above 0
    tiers : rising by ``from_pieces``

    Returns
    -------
    for each tier its economic quantity, raised to the tier's least. A tier whose economic quantity lies beyond its end
    is left out, since the next tier is then cheaper; where that one is dearer, it is cut to the tier's last piece

    References
    ----------
    The usual procedure for price breaks on all units: compare the yearly cost, pieces included, of these sizes.
    """
    beyond = [*tiers[1:], None]
    found = []
    for tier, following in zip(tiers, beyond, strict=True):
        keeping = holding_percent / 100 * tier.each
        economic = economic_order_quantity(demand, per_order + tier.once, keeping)
        size = max(economic, float(tier.from_pieces))
        if following is not None and size >= following.from_pieces:
            if following.each <= tier.each:
                continue
            size = following.from_pieces - 1
        cost = yearly_cost(size, demand, per_order, tier, keeping)
        found.append(Yearly(tier=tier, economic=economic, quantity=size, cost=cost))
    return tuple(found)
