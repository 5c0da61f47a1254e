"""How many to order: every quoted maker at every real order size, and what follows from them together."""

from collections.abc import Collection, Sequence
from dataclasses import replace
from datetime import date
from itertools import pairwise

from scorecard.costing.choosing import chosen_way
from scorecard.costing.inputs import CostInputs
from scorecard.costing.landed import LandedCost
from scorecard.frozen import dataclass
from scorecard.ordering.advice import Newsvendor, newsvendor
from scorecard.ordering.changes import Stretch, breaks_of, cartons_of, cheapest_by_quantity
from scorecard.ordering.options import Option, middle
from scorecard.ordering.pricing import Pricing
from scorecard.ordering.selling import Selling
from scorecard.ordering.sizes import Size, of_makers, order_sizes, settled
from scorecard.ordering.slopes import At
from scorecard.ordering.steps import Step
from scorecard.ordering.years import SteadyOrder, repeated, steady_order

FURTHEST = 4  # times the pieces wanted, or the high demand: sizes beyond are in no comparison over all quantities


@dataclass(frozen=True, slots=True, kw_only=True)
class MakerPlan:
    """One maker.

    Parameters
    ----------
    options : one a size, least first
    steps : from each size to the next
    newsvendor : how many a newsvendor would order; None where low and high demand, or a cost, are not known
    steady : which size costs least a year; None where no yearly demand is given, or a cost is not known
    """

    maker: str
    options: tuple[Option, ...]
    steps: tuple[Step, ...]
    newsvendor: Newsvendor | None = None
    steady: SteadyOrder | None = None

    @property
    def at_wanted(self) -> Option:
        """The size that covers what is wanted."""
        return next(option for option in self.options if "wanted" in option.size.whys)

    @property
    def best(self) -> Option | None:
        """The size that leaves most, in time if any is; None where no size has every cost known."""
        known = [option for option in self.options if option.is_complete]
        return max(known, key=lambda option: option.worth, default=None)

    @property
    def told(self) -> tuple[Option, ...]:
        """The sizes of which most is said: the one for what is wanted, and the one that leaves most."""
        wanted, best = self.at_wanted, self.best
        return tuple(option for option in self.options if option is wanted or option is best)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """How many to order.

    Parameters
    ----------
    inputs : settled
    makers : that come into question and are quoted, in the order given
    stretches : who is the cheapest from which quantity to which
    pricing : costs at any quantity, for a drawing
    left_out : makers with a quote that do not come into question
    """

    inputs: CostInputs
    selling: Selling
    makers: tuple[MakerPlan, ...]
    stretches: tuple[Stretch, ...]
    pricing: Pricing
    left_out: tuple[str, ...] = ()

    @property
    def first_sale(self) -> date | None:
        """The day on which pieces begin to sell."""
        return self.selling.sales_begin or self.inputs.brief.need_by

    @property
    def best(self) -> Option | None:
        """Of all makers and sizes, the one that leaves most, in time if any is."""
        found = [option for one in self.makers if (option := one.best) is not None]
        return max(found, key=lambda option: option.worth, default=None)


def plan_of(inputs: CostInputs, selling: Selling, makers: Sequence[str]) -> Plan:
    """Return how many to order.

    Parameters
    ----------
    inputs : of the landed cost
    selling : what the pieces sell for
    makers : that come into question, best first; those without a quote are left out
    """
    plain = of_makers(settled(inputs), makers)
    pricing = Pricing(inputs=plain)
    sizes = order_sizes(plain)
    plans = tuple(_maker_plan(pricing, selling, maker, sizes[maker]) for maker in makers if maker in sizes)
    return Plan(
        inputs=plain,
        selling=selling,
        makers=plans,
        stretches=_stretches(pricing, selling, [size.pieces for one in sizes.values() for size in one]),
        pricing=pricing,
        left_out=tuple(dict.fromkeys(row.maker for row in inputs.quotes if row.maker not in set(makers))),
    )


def _maker_plan(pricing: Pricing, selling: Selling, maker: str, sizes: Sequence[Size]) -> MakerPlan:
    alone = pricing.of(maker)
    options = tuple(filter(None, (_option(alone, selling, size) for size in sizes)))
    return MakerPlan(
        maker=maker,
        options=options,
        steps=tuple(
            Step(smaller=small, larger=large, less_from=_less_from(alone, small, large))
            for small, large in pairwise(options)
        ),
        newsvendor=newsvendor(options, _at(alone, selling), breaks_of(alone.inputs), cartons_of(alone.inputs)),
        steady=yearly_of(alone.inputs, selling, sizes),
    )


def yearly_of(inputs: CostInputs, selling: Selling, sizes: Sequence[Size]) -> SteadyOrder | None:
    """Return which size of one maker costs least a year, of settled inputs with its quotes and offers alone."""
    at = _at(Pricing(inputs=repeated(inputs)), selling)
    return steady_order(selling, at, [size.pieces for size in sizes], breaks_of(inputs), cartons_of(inputs))


def _at(pricing: Pricing, selling: Selling) -> At:
    """Return what gives any quantity of one maker as an option."""

    def at(pieces: int) -> Option | None:
        return _option(pricing, selling, Size(pieces=pieces, whys=()))

    return at


def _option(pricing: Pricing, selling: Selling, size: Size) -> Option | None:
    """Return a size by the way that stands for it, of the replies that come to just so many pieces."""
    inputs = pricing.inputs
    pairs = [(cost, just) for cost in pricing.at(size.pieces) if (just := _just(cost, size.pieces)) is not None]
    chosen = chosen_way([just for _, just in pairs], inputs.as_of, inputs.brief.need_by)
    if chosen is None:
        return None
    whole = next(cost for cost, just in pairs if just is chosen)
    return Option(
        size=size,
        cost=chosen,
        selling=selling,
        wanted=inputs.brief.quantity,
        is_sure=len(chosen.readings) == len(whole.readings),
    )


def _just(cost: LandedCost, pieces: int) -> LandedCost | None:
    """Return a cost with its readings of just so many pieces; None without any."""
    readings = tuple(reading for reading in cost.readings if reading.situation.quantity == pieces)
    return replace(cost, readings=readings) if readings else None


def _less_from(pricing: Pricing, smaller: Option, larger: Option) -> int | None:
    """Return the least order between two sizes from which the larger costs no more in all; None where there is none."""
    if not larger.is_complete:
        return None
    limit, found = middle(larger.total), None
    for pieces in range(larger.pieces - 1, smaller.pieces - 1, -1):
        total = pricing.total(larger.maker, pieces)
        if total is None or total < limit:
            return found
        found = pieces
    return found


def _stretches(pricing: Pricing, selling: Selling, sizes: Collection[int]) -> tuple[Stretch, ...]:
    """Return who is the cheapest over the sizes that are not far beyond what is wanted or may sell."""
    if not sizes:
        return ()
    wanted = pricing.inputs.brief.quantity
    high = selling.demand.high if selling.demand else None
    furthest = FURTHEST * max(wanted, high or wanted)
    within = [pieces for pieces in sizes if pieces <= furthest] or [min(sizes)]
    return cheapest_by_quantity(pricing, min(within), max(within))
