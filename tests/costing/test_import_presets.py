"""Presets: every destination has bases and a source, and no rates."""

from decimal import Decimal

import pytest

from scorecard.codes import COUNTRIES, CURRENCY_DECIMALS
from scorecard.costing.import_presets import PRESETS, preset_for
from scorecard.costing.importing import DUTY_BASES, TAX_BASES, Cutting


def test_the_seven_destinations_are_preset():
    assert ("UK", "EU", "Canada", "Australia", "New Zealand", "USA", "Japan") == tuple(
        preset.name for preset in PRESETS
    )


@pytest.mark.parametrize("preset", PRESETS, ids=lambda preset: preset.name)
def test_a_preset_has_known_bases_and_a_dated_source(preset):
    assert (preset.duty_base in DUTY_BASES, preset.tax_base in TAX_BASES, bool(preset.legal and preset.seen)) == (
        True,
        True,
        True,
    )


@pytest.mark.parametrize("preset", PRESETS, ids=lambda preset: preset.name)
def test_a_preset_has_no_rate_and_no_relief_in_use(preset):
    for country in preset.countries:
        rules = preset_for(country)

        assert (rules.duty_percent, rules.tax_percent, rules.use_relief) == (None, None, False)
        assert country in COUNTRIES
        assert rules.currency in CURRENCY_DECIMALS


def test_the_union_has_27_countries_without_a_border_between_them():
    assert 27 == len(preset_for("IE").without_border)


def test_a_threshold_is_dated():
    assert all(preset.relief.dated and preset.relief.source for preset in PRESETS if preset.relief)


@pytest.mark.parametrize(
    ("country", "relief"),
    [
        ("GB", ("135", "GBP", "duty")),  # a news page, seen in November 2026
        ("IE", ("150", "EUR", "duty")),  # tax and trade pages, likewise
        ("CA", ("20", "CAD", "duty and tax")),  # Canada's customs on low-value shipments, notice 20-18
        ("AU", ("1000", "AUD", "duty and tax")),  # a carrier's page
        ("NZ", ("1000", "NZD", "duty and tax")),  # New Zealand Customs, its estimator page
        ("JP", ("10000", "JPY", "duty and tax")),  # a tax page
    ],
)
def test_a_threshold_is_that_of_its_source(country, relief):
    found = preset_for(country).relief

    assert relief == (str(found.up_to), found.currency, found.of)


PLAIN, PENNY = Cutting(), Cutting(cut="down")


@pytest.mark.parametrize(
    ("country", "cuts"),
    [
        ("GB", [PLAIN, PENNY, PLAIN, PLAIN]),  # a carrier's worked example
        ("JP", [Cutting(step=Decimal(step), cut="down") for step in (1000, 100, 1000, 100)]),  # Japan Customs
        *((country, [PLAIN] * 4) for country in ("IE", "CA", "AU", "NZ", "US")),
    ],
)
def test_base_and_duty_then_base_and_tax_are_cut_as_the_authority_cuts(country, cuts):
    rules = preset_for(country)

    assert cuts == [rules.duty_base_cutting, rules.duty_cutting, rules.tax_base_cutting, rules.tax_cutting]


def test_of_japan_s_tax_2_2_parts_in_10_are_local():
    # the standard rate of 10 % is 7.8 % national and 2.2 % local: from memory
    assert Decimal("2.2") / 10 == preset_for("JP").local_part_of_tax
