"""Numbers that a text names, in their column's unit, and the range for one that is only roughly told.

Enters: a number as written, what it is multiplied by, and how many of the column's unit are how many of its own.
Leaves: the words to write.
"""

from collections.abc import Sequence
from decimal import ROUND_CEILING, ROUND_FLOOR
from decimal import Decimal as Exact
from math import inf
from typing import NamedTuple

from scorecard.words import shortest

DECIMALS_TOLD = 6  # more are no amount that anybody means


class Named(NamedTuple):
    """A number that a text names: as written, what it is multiplied by, and the text after it."""

    number: Exact
    times: int
    rest: str

    def in_unit(self, rate: tuple[int, int]) -> float:
        """Return it in a unit of which there are so many in so many of its own."""
        many, of = rate
        return float(self.number * self.times * many / of)


def in_own_unit(named: Named, rates: Sequence[tuple[int, int]]) -> list[str]:
    """Return a number in its column's unit, once for each rate; none where it does not come out even.

    Examples
    --------
    >>> in_own_unit(Named(Exact(3), 1, "weeks"), [(7, 1), (5, 1)]), in_own_unit(Named(Exact(7), 1, "months"), [(1, 12)])
    (['21', '15'], [])
    """
    told = [shortest(named.in_unit(rate)) for rate in rates]
    is_even = all(
        of == 1 or len(one.partition(".")[2]) <= DECIMALS_TOLD for one, (_, of) in zip(told, rates, strict=True)
    )
    return told if is_even else []


def or_working(told: Sequence[str]) -> str:
    """Return what days are, and what they are if working days are meant, where there are two."""
    return ", or ".join(told) + (" if working days are meant" if len(told) > 1 else "")


def range_of(named: Sequence[Named], rate: tuple[int, int], within: tuple[float, float] | None) -> str:
    """Return the range to write: from a tenth less to a tenth more than one number, or from one number to another.

    Examples
    --------
    >>> range_of([Named(Exact("2.4"), 1000, "")], (1, 1), None), range_of([Named(Exact(3), 1, "weeks")], (7, 1), None)
    ('2100-2700', '14-28')
    """
    low, high = named[0].number, named[-1].number
    scale = named[0].times * rate[0], rate[1]
    if len(named) == 1:
        step = Exact(1).scaleb(int(low.as_tuple().exponent))
        if scale != (1, 1) and low < step * (10 if named[0].times > 1 else 2):
            step = step.scaleb(-1)  # about 2k is hardly 1000, nor about 1 week none
        low, high = (
            (low * Exact("0.9")).quantize(step, ROUND_FLOOR),
            (high * Exact("1.1")).quantize(step, ROUND_CEILING),
        )
    least, greatest = within or (-inf, inf)
    ends = _scaled(low, scale, ROUND_FLOOR), _scaled(high, scale, ROUND_CEILING)
    return f"{shortest(max(float(ends[0]), least))}-{shortest(min(float(ends[1]), greatest))}"


def _scaled(end: Exact, scale: tuple[int, int], rounding: str) -> Exact:
    """Return one end of a range in another unit, rounded outwards to whole ones, or to as many digits as it bears."""
    many, of = scale
    if scale == (1, 1):
        return end
    places = len(str(of)) - int(end.as_tuple().exponent) if of > 1 else 0
    return (end * many / of).scaleb(places).to_integral_value(rounding).scaleb(-places)
