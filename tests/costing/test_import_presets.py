"""Presets: every destination has bases and a source, and no rates."""

import pytest

from scorecard.codes import COUNTRIES, CURRENCY_DECIMALS
from scorecard.costing.import_presets import PRESETS, preset_for
from scorecard.costing.importing import DUTY_BASES, TAX_BASES


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
