"""From one order size to the next of the same maker: what more costs, what it must sell, whether it is worth taking."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Literal

from scorecard.costing.amounts import EXACT, times
from scorecard.frozen import dataclass
from scorecard.ordering.demands import Case
from scorecard.ordering.margins import break_even
from scorecard.ordering.options import Option, middle

Verdict = Literal["costs less in all", "worth taking", "not worth taking", "not known"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """Ordering the next size up instead.

    Parameters
    ----------
    smaller, larger : of one maker
    less_from : the least order, smaller than the larger size, from which the larger costs no more in all; None where
        there is none
    """

    smaller: Option
    larger: Option
    less_from: int | None = None

    @property
    def is_known(self) -> bool:
        """Whether every cost of both is known."""
        return self.smaller.is_complete and self.larger.is_complete

    @property
    def more_money(self) -> Decimal:
        """What the further pieces cost in all, by the middle of the ranges; below 0 where more costs less."""
        return EXACT.subtract(middle(self.larger.total), middle(self.smaller.total))

    @property
    def more_good(self) -> Decimal:
        """The further good pieces."""
        return EXACT.subtract(self.larger.good, self.smaller.good)

    @property
    def must_sell(self) -> int | None:
        """How many of the further pieces must sell to pay for all of them; None where no number of them does."""
        selling = self.larger.selling
        once = EXACT.subtract(self.more_money, times(selling.unsold_worth, self.more_good))
        if once <= 0:
            return 0
        needed = break_even(once, EXACT.subtract(selling.kept, selling.unsold_worth))
        return needed if needed is not None and needed <= self.more_good else None

    @property
    def gain(self) -> Decimal:
        """What is left more than with the smaller size: on average over the demand, or at the likely one."""
        return EXACT.subtract(self.larger.promise, self.smaller.promise)

    @property
    def gains(self) -> Mapping[Case, Decimal]:
        """The same at the low, the likely and the high demand, by the middle of the ranges."""
        before, after = self.smaller.outcomes, self.larger.outcomes
        return {case: EXACT.subtract(middle(after[case].left), middle(before[case].left)) for case in before}

    @property
    def verdict(self) -> Verdict:
        """Whether the larger size is worth taking."""
        if not self.is_known:
            return "not known"
        if self.more_money <= 0:
            return "costs less in all"
        return "worth taking" if self.gain > 0 else "not worth taking"
