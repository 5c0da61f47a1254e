"""Demand that is not known: three figures as a distribution, what is expected to sell, and the newsvendor's order.

Enters: a low, a likely and a high demand. Leaves: how much each of the three counts in an average; quantiles and
expectations, as floats, for they rest on a guess.
"""

from collections.abc import Mapping
from decimal import Decimal
from math import inf
from statistics import NormalDist
from types import MappingProxyType
from typing import Literal, get_args

from scorecard.frozen import dataclass

Case = Literal["low", "likely", "high"]
CASES: tuple[Case, ...] = get_args(Case)
WEIGHTS: Mapping[Case, Decimal] = MappingProxyType(
    {"low": Decimal("0.3"), "likely": Decimal("0.4"), "high": Decimal("0.3")}
)
"""How much each figure counts in an average, of 1.

Three-point approximation of a distribution by the values that it passes in 9, 5 and 1 of 10 cases: the extended
Swanson-Megill rule in Keefer and Bodily (1983), Management Science 29 (the weights from memory; the tests hold them
against a normal distribution).
"""

STANDARD = NormalDist()
OUTER = STANDARD.inv_cdf(0.9)  # low and high are the ends that demand passes in one of ten cases each


@dataclass(frozen=True, slots=True, kw_only=True)
class Demand:
    """How many pieces may sell, at the price, in the time that there is.

    Parameters
    ----------
    likely : as often more as less than this sells
    low : in one of ten cases less than this sells; None where not given
    high : in one of ten cases more than this sells; None where not given

    Raises
    ------
    ValueError
        If a figure is below 0, or they do not rise.
    """

    likely: int
    low: int | None = None
    high: int | None = None

    def __post_init__(self) -> None:
        figures = [one for one in (self.low, self.likely, self.high) if one is not None]
        if figures != sorted(figures) or figures[0] < 0:
            raise ValueError("low, likely and high demand rise from 0 or more")

    @property
    def is_spread(self) -> bool:
        """Whether both ends are given, so that chances can be reckoned."""
        return self.low is not None and self.high is not None

    @property
    def spreads(self) -> tuple[float, float]:
        """The standard deviation below and above the likely demand."""
        low = self.likely if self.low is None else self.low
        high = self.likely if self.high is None else self.high
        return (self.likely - low) / OUTER, (high - self.likely) / OUTER

    def at_most(self, pieces: float) -> float:
        """Return the chance that no more than so many sell."""
        below, above = self.spreads
        spread = below if pieces < self.likely else above
        if spread == 0:
            return 0.0 if pieces < self.likely else 1.0
        return STANDARD.cdf((pieces - self.likely) / spread)

    def enough_in(self, chance: float) -> float:
        """Return the number of pieces that is enough with a chance: the quantile, not below 0.

        Two halves of a normal distribution, joined at the likely demand: with low and high equally far it is normal.

        Parameters
        ----------
        chance : 0 to 1
        """
        if chance <= 0:
            return 0.0
        if chance >= 1:
            return inf
        below, above = self.spreads
        deviations = STANDARD.inv_cdf(chance)
        return max(0.0, self.likely + deviations * (below if deviations < 0 else above))

    def part_of_the_way(self, chance: float) -> float:
        """Return how far the quantile lies from the likely demand, of the way to the high one; below 0 to the low one.

        Examples
        --------
        >>> round(Demand(low=123, likely=200, high=277).part_of_the_way(0.5), 2)
        0.0
        """
        return STANDARD.inv_cdf(min(max(chance, 1e-12), 1 - 1e-12)) / OUTER

    def expected_sold(self, pieces: float) -> float:
        """Return how many of so many pieces are expected to sell: the lesser of them and the demand, on average.

        E[min(D, q)] = q − ∫ F from 0 to q; the antiderivative of the normal F is s·(uΦ(u) + φ(u)), u = (x − m) / s.
        """
        below, above = self.spreads
        lower, upper = min(pieces, float(self.likely)), max(pieces, float(self.likely))
        missed = self._up_to(lower, below) - self._up_to(0.0, below)
        missed += self._up_to(upper, above) - self._up_to(float(self.likely), above)
        return pieces - missed

    def _up_to(self, pieces: float, spread: float) -> float:
        if spread == 0:
            return max(0.0, pieces - self.likely)
        deviations = (pieces - self.likely) / spread
        return spread * (deviations * STANDARD.cdf(deviations) + STANDARD.pdf(deviations))


def critical_ratio(missed: float, left_over: float) -> float:
    """Return the chance of having enough at which one piece more is no longer worth it.

    Parameters
    ----------
    missed : what a sale that is missed for want of a piece loses: what is kept of the price less the cost
    left_over : what a piece left over loses: the cost less what it still brings

    Returns
    -------
    0 where no sale earns anything, 1 where a piece left over loses nothing

    References
    ----------
    The newsvendor's fractile, missed / (missed + left_over).

    Examples
    --------
    >>> round(critical_ratio(600 - 120, 120 - 60), 4)
    0.8889
    """
    if missed <= 0:
        return 0.0
    return missed / (missed + max(left_over, 0.0))
