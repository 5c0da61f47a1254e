"""Orders at several sizes built in code: makers with price breaks, all paid to the door, and what pieces sell for."""

from dataclasses import replace
from decimal import Decimal

from quoted import MAKER, inputs, quote

from scorecard.brief import Brief
from scorecard.costing.amounts import Span
from scorecard.costing.inputs import MakerFacts
from scorecard.ordering.demands import Demand
from scorecard.ordering.options import Option
from scorecard.ordering.plan import plan_of
from scorecard.ordering.selling import Selling

ALL_PAID = "to my door, duty and tax paid"


def selling(price="18.00", demand=None, **more):
    """Return what the pieces sell for; a demand as (low, likely, high), or the likely one alone."""
    if isinstance(demand, tuple):
        low, likely, high = demand
        demand = Demand(low=low, likely=likely, high=high)
    elif demand is not None:
        demand = Demand(likely=demand)
    kept = {key: Decimal(one) if isinstance(one, str) else one for key, one in more.items()}
    return Selling(price=Decimal(price), demand=demand, **kept)


def prices(maker=MAKER, row=2, **by_pieces):
    """Return the rows of one reply, all paid to the door: p100="5.00" is 5.00 each from 100 pieces on."""
    return [
        quote(price, maker=maker, row=row + at, pieces=int(pieces[1:]), covers=ALL_PAID)
        for at, (pieces, price) in enumerate(by_pieces.items())
    ]


def minimum(pieces, per="order", maker=MAKER):
    """Return the facts of a maker in China with a minimum order."""
    span = Span.of(*pieces) if isinstance(pieces, tuple) else Span.of(pieces)
    return {maker: MakerFacts(maker=maker, country="CN", minimum=span, minimum_per=per)}


def wanting(pieces, designs=1):
    """Return a brief for so many mugs to the UK."""
    return Brief(item="mug", quantity=pieces, designs=designs, destination="GB", currency="GBP")


def planned(*rows, sold=None, makers=None, wanted=200, **more):
    """Return the plan of some quotes, in the order of their makers."""
    read = inputs(*rows, brief=wanting(wanted), makers=makers, **more)
    return plan_of(read, sold or selling(), list(dict.fromkeys(row.maker for row in rows)))


def option(plan, pieces, maker=MAKER) -> Option:
    """Return one maker's option of a plan at one size."""
    (of_maker,) = (one for one in plan.makers if one.maker == maker)
    return next(one for one in of_maker.options if one.pieces == pieces)


def with_settings(read, **settings):
    """Return inputs with other settings of cost."""
    return replace(read, settings=replace(read.settings, **settings))
