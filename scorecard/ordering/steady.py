"""Steady sales, year after year: the economic order quantity, and what a year of orders costs."""

from math import inf, sqrt


def economic_order_quantity(demand: float, per_order: float, keeping: float) -> float:
    """Return the order at which ordering and keeping together cost least: √(2DS / H).

    Parameters
    ----------
    demand : pieces a year, D
    per_order : cost of one order, S; below 0 counts as 0
    keeping : cost of keeping one piece for a year, H; where it costs nothing there is no end to it

    References
    ----------
    Harris (1913), the square-root formula.

    Examples
    --------
    >>> economic_order_quantity(1000, 10, 0.50)
    200.0
    """
    return sqrt(2 * demand * max(per_order, 0.0) / keeping) if keeping > 0 else inf


def yearly_cost(quantity: float, demand: float, per_order: float, keeping: float) -> float:
    """Return what a year of orders of one size costs: the orders with their pieces, and half an order in stock.

    Parameters
    ----------
    quantity : of each order, above 0
    demand : pieces a year
    per_order : all that one order costs
    keeping : cost of keeping one piece for a year
    """
    return demand / quantity * per_order + quantity / 2 * keeping
