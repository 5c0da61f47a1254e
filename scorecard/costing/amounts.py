"""Amounts: numbers that may be a range, money in its currency, and rounding to the last minor unit.

A reader gives decimals made from the text of a cell, or from ``str`` of its number, never from a float itself.
"""

from collections.abc import Iterable
from decimal import ROUND_DOWN, ROUND_HALF_UP, Context, Decimal
from functools import reduce
from math import isinf
from typing import Literal

from scorecard.codes import CURRENCY_DECIMALS
from scorecard.frozen import dataclass
from scorecard.words import shortest

ZERO = Decimal(0)
HUNDRED = Decimal(100)
OPEN = Decimal("Infinity")
EXACT = Context(prec=60)
MOST = 1e12  # the largest amount that is read, in any currency or unit: beyond, it is a slip

_FINEST_SHOWN = Decimal("0.000001")
_FINEST_PRICE = Decimal("0.0001")

End = Literal["low", "high"]
Cut = Literal["half up", "down"]
ENDS: tuple[End, End] = ("low", "high")


def exact(number: float) -> Decimal:
    """Return a number as the decimal that its user typed.

    Examples
    --------
    >>> exact(0.1), exact(12.0)
    (Decimal('0.1'), Decimal('12'))
    """
    return Decimal(shortest(number))


@dataclass(frozen=True, slots=True)
class Span:
    """A number, 0 or more, that may be a range: both ends are the same where it is known.

    Parameters
    ----------
    low : the least that it may be; 0 for "up to 24"
    high : the most; None where the range is open ("50+")

    Raises
    ------
    ValueError
        If an end is not a number of 0 or more, or low is above high.
    """

    low: Decimal
    high: Decimal | None

    def __post_init__(self) -> None:
        ends = (self.low,) if self.high is None else (self.low, self.high)
        if any(not isinstance(end, Decimal) or not end.is_finite() or end < 0 for end in ends):
            raise ValueError("an end of a span is a decimal number, 0 or more")
        if self.high is not None and self.low > self.high:
            raise ValueError("low must be at most high")

    def at(self, end: End) -> Decimal:
        """Return one end; infinite where it is open."""
        return self.low if end == "low" else OPEN if self.high is None else self.high

    @property
    def is_known(self) -> bool:
        """Whether it is one number."""
        return self.low == self.high

    def __add__(self, other: "Span") -> "Span":
        high = None if self.high is None or other.high is None else self.high + other.high
        return Span(self.low + other.low, high)

    @classmethod
    def between(cls, low: float, high: float) -> "Span":
        """Return the span between two ends as typed, either of them infinite where it is open.

        Examples
        --------
        >>> Span.between(0.1, 3.0), Span.between(float("-inf"), float("inf"))
        (Span(low=Decimal('0.1'), high=Decimal('3')), Span(low=Decimal('0'), high=None))
        """
        return cls(ZERO if isinf(low) else exact(low), None if isinf(high) else exact(high))

    @classmethod
    def of(cls, low: Decimal | int | str, high: Decimal | int | str | None = None) -> "Span":
        """Return one number, or a range of two.

        Examples
        --------
        >>> Span.of("1.20"), Span.of(3, 5)
        (Span(low=Decimal('1.20'), high=Decimal('1.20')), Span(low=Decimal('3'), high=Decimal('5')))
        """
        return cls(Decimal(low), Decimal(low if high is None else high))


@dataclass(frozen=True, slots=True)
class Money:
    """An amount that may be a range, in a currency (ISO 4217)."""

    amount: Span
    currency: str


def times(amount: Decimal, factor: Decimal) -> Decimal:
    """Return a product, exactly; nothing times an open end is nothing.

    Examples
    --------
    >>> times(ZERO, OPEN), times(Decimal("1.10"), Decimal("3"))
    (Decimal('0'), Decimal('3.30'))
    """
    return ZERO if not amount or not factor else EXACT.multiply(amount, factor)


def over(amount: Decimal, divisor: Decimal) -> Decimal:
    """Return a quotient, to 60 digits."""
    return EXACT.divide(amount, divisor)


def added(amounts: Iterable[Decimal]) -> Decimal:
    """Return a sum, exactly."""
    return reduce(EXACT.add, amounts, ZERO)


def percent_of(percent: Decimal, amount: Decimal) -> Decimal:
    """Return so many hundredths of an amount, exactly."""
    return over(times(percent, amount), HUNDRED)


def to_step(amount: Decimal, step: Decimal, cut: Cut = "half up") -> Decimal:
    """Return an amount as a multiple of a step: the nearest with halves up, or the one below.

    Examples
    --------
    >>> to_step(Decimal("13.125"), Decimal("0.01")), to_step(Decimal("4.025"), Decimal("0.01"), "down")
    (Decimal('13.13'), Decimal('4.02'))
    """
    if not amount.is_finite():
        return amount
    way = ROUND_HALF_UP if cut == "half up" else ROUND_DOWN
    return EXACT.multiply(over(amount, step).quantize(Decimal(1), rounding=way, context=EXACT), step)


def minor_unit(currency: str) -> Decimal:
    """Return the smallest amount of a currency.

    Examples
    --------
    >>> minor_unit("GBP"), minor_unit("JPY"), minor_unit("KWD")
    (Decimal('0.01'), Decimal('1'), Decimal('0.001'))
    """
    return Decimal(1).scaleb(-CURRENCY_DECIMALS.get(currency, 2))


def to_minor(amount: Decimal, currency: str) -> Decimal:
    """Return an amount to the last minor unit of its currency, halves up."""
    return amount.quantize(minor_unit(currency), ROUND_HALF_UP, EXACT) if amount.is_finite() else amount


def shown(number: Decimal) -> str:
    """Return a number as a person would write it: every digit, no exponent, no needless zeros; at most 6 decimals.

    Examples
    --------
    >>> shown(Decimal("1.20")), shown(Decimal("8221.500")), shown(Decimal(1) / 3), shown(OPEN)
    ('1.2', '8221.5', '0.333333', 'no known amount')
    """
    if not number.is_finite():
        return "no known amount"
    text = format(number.quantize(_FINEST_SHOWN, ROUND_HALF_UP, EXACT), "f")
    return text.rstrip("0").rstrip(".") if "." in text else text


def priced(amount: Decimal, currency: str) -> str:
    """Return an amount with its currency, to the last minor unit.

    Examples
    --------
    >>> priced(Decimal("1.2"), "EUR"), priced(Decimal("0.125"), "EUR"), priced(Decimal(480), "JPY")
    ('1.20 EUR', '0.13 EUR', '480 JPY')
    """
    return f"{to_minor(amount, currency):f} {currency}" if amount.is_finite() else f"{shown(amount)} {currency}"


def unit_priced(amount: Decimal, currency: str) -> str:
    """Return what one piece, kg or set-up costs, with its currency: see ``unit_figure``."""
    return f"{unit_figure(amount, currency)} {currency}"


def unit_figure(amount: Decimal, currency: str) -> str:
    """Return what one of many costs: to the last minor unit, and where it is finer to 4 decimals at most.

    Examples
    --------
    >>> unit_figure(Decimal("1.2"), "EUR"), unit_figure(Decimal(5) / 6, "EUR"), unit_figure(Decimal("2.5"), "JPY")
    ('1.20', '0.8333', '2.5')
    """
    if not amount.is_finite():
        return shown(amount)
    fine = amount.quantize(_FINEST_PRICE, ROUND_HALF_UP, EXACT)
    minor = to_minor(fine, currency)
    return format(minor, "f") if minor == fine else shown(fine)
