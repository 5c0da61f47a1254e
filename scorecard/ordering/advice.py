"""The newsvendor's order for one maker: a sale missed weighed against a piece left over, with price breaks."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil, inf, isinf

from scorecard.ordering.demands import critical_ratio
from scorecard.ordering.options import Option, held_from, middle
from scorecard.ordering.selling import Selling


@dataclass(frozen=True, slots=True, kw_only=True)
class Newsvendor:
    """How many a newsvendor would order of one maker.

    Parameters
    ----------
    pieces : whole pieces to order, of which the faulty ones fall away; None where a piece left over loses nothing, so
        that there is no end to it
    missed : what a sale that is missed loses
    left_over : what a piece left over loses
    ratio : the chance of having enough at that order, were it not raised or cut to a size
    priced_at : the option whose cost of a good piece it is reckoned with
    is_raised : whether it is raised to the least order at that cost
    nearest : of the real order sizes with every cost known, the one that leaves most on average
    """

    pieces: int | None
    missed: float
    left_over: float
    ratio: float
    priced_at: Option
    is_raised: bool
    nearest: Option


def newsvendor(options: Sequence[Option], selling: Selling) -> Newsvendor | None:
    """Return how many a newsvendor would order.

    Parameters
    ----------
    options : of one maker, least first
    selling : with a low and a high demand

    Returns
    -------
    None without these, or where no size has every cost known. For each size's cost of a good piece the fractile is
    raised to that size where it is below, and left out where it lies beyond the next size, as with price breaks; of
    these the order that leaves most on average

    Notes
    -----
    The cost of a piece is that of a good piece at the size, set-up and all: a piece more costs less than that, so that
    the order is rather too small than too large.
    """
    known = [option for option in options if option.is_complete]
    demand = selling.demand
    if demand is None or not demand.is_spread or not known:
        return None
    best = max(known, key=lambda option: option.promise)
    floors = [held_from(known[0]), *(option.pieces for option in known[1:])]
    tiers = zip(known, floors, _ends(known), strict=True)
    found = [one for option, floor, end in tiers if (one := _at(option, floor, end, best)) is not None]
    return max(found, key=lambda one: _promise(one), default=None)


def _ends(options: Sequence[Option]) -> list[float]:
    """Return where each size's cost of a piece ends: at the next size."""
    return [*(float(following.pieces) for _, following in pairwise(options)), inf]


def _at(option: Option, floor: int, end: float, best: Option) -> Newsvendor | None:
    """Return the order at one size's cost of a piece, from a floor on; None where it lies beyond the next size."""
    selling, demand = option.selling, option.selling.demand
    assert demand is not None, "asked for only where there is a demand"  # noqa: S101
    cost = float(middle(option.per_good))
    missed, left_over = float(selling.kept) - cost, cost - float(selling.unsold_worth)
    ratio = critical_ratio(missed, left_over)
    enough = demand.enough_in(ratio) * option.pieces / float(option.good)
    if enough >= end and not isinf(end):
        return None
    return Newsvendor(
        pieces=None if isinf(enough) else max(ceil(enough - 1e-9), floor),
        missed=missed,
        left_over=left_over,
        ratio=ratio,
        priced_at=option,
        is_raised=enough <= floor - 1,
        nearest=best,
    )


def _promise(one: Newsvendor) -> float:
    """Return what an order leaves on average, at its cost of a piece."""
    if one.pieces is None:
        return inf
    option = one.priced_at
    demand, selling = option.selling.demand, option.selling
    assert demand is not None, "asked for only where there is a demand"  # noqa: S101
    good = one.pieces * float(option.good) / option.pieces
    sold = demand.expected_sold(good)
    worth = float(selling.unsold_worth) * (good - sold)
    return float(selling.kept) * sold + worth - good * float(middle(option.per_good))
