"""Currencies: both directions of a rate."""

from decimal import Decimal

import pytest

from scorecard.costing.currencies import Rate, Rates

DOLLAR = Rate(currency="USD", figure=Decimal("1.25"), means="for one home")
LIRA = Rate(currency="TRY", figure=Decimal("0.02"))
RATES = Rates(home="GBP", rates={"USD": DOLLAR, "TRY": LIRA})


def test_the_brief_s_own_currency_needs_no_rate():
    assert [True, True, False] == [currency in RATES for currency in ("GBP", "USD", "EUR")]


@pytest.mark.parametrize(("amount", "currency", "home"), [("300", "USD", "240"), ("50", "TRY", "1"), ("7", "GBP", "7")])
def test_a_rate_is_applied_in_its_own_direction(amount, currency, home):
    assert Decimal(home) == RATES.to_home(Decimal(amount), currency)


@pytest.mark.parametrize("currency", ["USD", "TRY", "GBP"])
def test_an_amount_comes_back_as_it_went(currency):
    assert Decimal(24) == RATES.from_home(RATES.to_home(Decimal(24), currency), currency)


def test_one_rate_can_be_changed_in_its_own_direction():
    assert Decimal(150) == RATES.with_figure("USD", Decimal(2)).to_home(Decimal(300), "USD")
