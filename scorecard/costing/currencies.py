"""Currencies: rates with their direction and date, and amounts from one currency to another."""

from collections.abc import Mapping
from dataclasses import field, replace
from datetime import date
from decimal import Decimal
from typing import Literal

from scorecard.costing.amounts import over, times
from scorecard.errors import Place
from scorecard.frozen import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Rate:
    """What one currency is worth.

    Parameters
    ----------
    currency : ISO 4217, another than the brief's
    figure : above 0
    means : whether the figure is what one of this currency costs in the brief's ("home for one"), or how many of this
        currency one of the brief's buys ("for one home")
    dated : the day of the rate; None where it is not given, which is a warning of the reader's
    source : as given
    place : its key
    """

    currency: str
    figure: Decimal
    means: Literal["home for one", "for one home"] = "home for one"
    dated: date | None = None
    source: str = ""
    place: Place = field(default_factory=Place)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rates:
    """The table ``[currencies]``.

    As TOML::

        [currencies]
        on = 2026-11-20             # the day of the rates
        source = "my bank"
        USD = 0.92                  # what one USD costs in the brief's currency
        charge_percent = 2.5        # what the bank or card adds to a payment in another currency

        [currencies.for_one]        # the other direction: how many one of the brief's currency buys
        CNY = 7.8

    The reader refuses: a figure not above 0, an unknown code, the brief's own currency, a currency given both ways.

    Parameters
    ----------
    home : the brief's currency; where the brief names none, the one currency of all quotes, else a problem
    rates : by currency
    charge_percent : on every amount paid in another currency; None where it is not given
    place : of ``charge_percent``
    """

    home: str
    rates: Mapping[str, Rate] = field(default_factory=dict)
    charge_percent: Decimal | None = None
    place: Place = field(default_factory=Place)

    def __contains__(self, currency: str) -> bool:
        return currency == self.home or currency in self.rates

    def to_home(self, amount: Decimal, currency: str) -> Decimal:
        """Return an amount in the brief's currency, not rounded.

        Raises
        ------
        KeyError
            If the currency has no rate; a reader has refused it before.
        """
        if currency == self.home:
            return amount
        rate = self.rates[currency]
        return times(amount, rate.figure) if rate.means == "home for one" else over(amount, rate.figure)

    def from_home(self, amount: Decimal, currency: str) -> Decimal:
        """Return an amount of the brief's currency in another, not rounded."""
        if currency == self.home:
            return amount
        rate = self.rates[currency]
        return over(amount, rate.figure) if rate.means == "home for one" else times(amount, rate.figure)

    def with_figure(self, currency: str, figure: Decimal) -> "Rates":
        """Return the rates with one of them at another figure, in its own direction."""
        changed = replace(self.rates[currency], figure=figure)
        return replace(self, rates={**self.rates, currency: changed})
