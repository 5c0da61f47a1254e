"""Slopes: quantities of one maker over which one more piece costs the same, and what such an order costs besides.

Enters: what any quantity costs in all. Leaves: stretches on which the total is a straight line, and the quantities of
one that come into question.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from decimal import Decimal
from itertools import pairwise
from math import ceil, floor, inf, isinf

from scorecard.costing.amounts import EXACT, over, times
from scorecard.frozen import dataclass
from scorecard.ordering.options import Option, held_from, least_order, middle

At = Callable[[int], Option | None]
LEAST_REACH = 100  # pieces beyond the last break, over which one more is priced


@dataclass(frozen=True, slots=True, kw_only=True)
class Slope:
    """Quantities over which one more piece costs the same.

    Parameters
    ----------
    first, last : the fewest pieces and the most; the most is infinite where nothing ends it
    further : what one more good piece costs: price, freight and border, nothing that is paid once
    once : what every order of them costs besides, in the middle of its costs
    good : good pieces of each that is ordered, 0 to 1
    """

    first: int
    last: float
    further: Decimal
    once: Decimal
    good: Decimal

    def has(self, pieces: int) -> bool:
        """Say whether a quantity lies in it."""
        return self.first <= pieces <= self.last

    def near(self, pieces: float, cartons: Iterable[int]) -> set[int]:
        """Return the quantities that may be best where so many would be: beside it, the ends, the full cartons."""
        held = min(max(pieces, self.first), self.last)
        held = self.last if isinf(pieces) else held
        beside = () if isinf(held) else (floor(held), ceil(held - 1e-9))
        found = {self.first, *beside, *([] if isinf(self.last) else [int(self.last)])}
        if not isinf(held):
            found |= {int(held // step + more) * step for step in cartons for more in (0, 1)}
        return {one for one in found if self.has(one)}


def edges_of(known: Sequence[Option], breaks: Iterable[int]) -> list[int]:
    """Return the first pieces of every slope: from the fewest that the maker takes.

    Parameters
    ----------
    known : real order sizes of one maker with every cost known, least first
    breaks : the first pieces at which another price or offer of freight holds
    """
    least = least_order(known[0])
    return sorted({least, held_from(known[0]), *(max(pieces, least) for pieces in breaks)})


def slopes_of(at: At, edges: Sequence[int], reach: int) -> Iterator[Slope]:
    """Yield the slopes of which it is known what one more piece costs.

    Parameters
    ----------
    at : gives what a quantity comes to; None where the maker does not take just so many
    edges : where the slopes begin, least first
    reach : pieces that may come into question beyond the last edge
    """
    for first, beyond in pairwise([*edges, inf]):
        last = int(beyond) - 1 if not isinf(beyond) else int(first + max(2 * first, reach, LEAST_REACH))
        least, most = known_at(at, int(first)), known_at(at, last)
        if least and most and last > first:
            yield _slope(least, most, beyond - 1)


def known_at(at: At, pieces: int) -> Option | None:
    """Return what a quantity comes to; None where it cannot be had, or a cost is missing."""
    option = at(pieces)
    return option if option is not None and option.is_complete else None


def _slope(least: Option, most: Option, last: float) -> Slope:
    more = EXACT.subtract(middle(most.total), middle(least.total))
    further = over(more, EXACT.subtract(most.good, least.good))
    return Slope(
        first=least.pieces,
        last=last,
        further=further,
        once=EXACT.subtract(middle(least.total), times(further, least.good)),
        good=over(least.good, Decimal(least.pieces)),
    )
