"""Unit economics: what a piece contributes, its margin, and how many must sell before the money is back."""

from decimal import ROUND_CEILING, Decimal

from scorecard.costing.amounts import EXACT, HUNDRED, over, times


def contribution(kept: Decimal, landed: Decimal) -> Decimal:
    """Return what one piece sold leaves towards everything that is paid once.

    Parameters
    ----------
    kept : of its price, after tax, fees, packing and postage
    landed : what a good piece costs at the door

    References
    ----------
    Contribution per unit: price less the costs that go with each unit.

    Examples
    --------
    >>> contribution(Decimal("10.902"), Decimal("2.2775"))
    Decimal('8.6245')
    """
    return EXACT.subtract(kept, landed)


def break_even(once: Decimal, each: Decimal) -> int | None:
    """Return the fewest whole pieces whose sale covers what is paid once; None where no number does.

    Parameters
    ----------
    once : what is paid whatever sells, below 0 where a credit is more than that; infinite where there is no telling
    each : what one piece sold brings

    Examples
    --------
    >>> break_even(Decimal(800), Decimal(14)), break_even(Decimal(800), Decimal(0))
    (58, None)
    """
    if each <= 0 or not once.is_finite():
        return None
    return max(0, int(over(once, each).to_integral_value(ROUND_CEILING, EXACT)))


def margin_percent(kept: Decimal, landed: Decimal, takings: Decimal) -> Decimal | None:
    """Return what is left of one price after all that goes with the piece, in percent of the price without sales tax.

    Examples
    --------
    >>> margin_percent(Decimal(8), Decimal(3), Decimal(10))
    Decimal('50')
    """
    return over(times(contribution(kept, landed), HUNDRED), takings) if landed.is_finite() else None
