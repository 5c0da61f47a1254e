"""Duty and import tax, with published worked examples; the rates are those of the examples, not today's.

New Zealand: customs document released on public request 657. Canada: a text of its customs quoted on a forum.
Australia: a text of its customs quoted on a forum, 2010. USA: customs broker examination, October 2020, question 33.
UK duty: a carrier's page (its total leaves import VAT out and is not used); UK with VAT at 17.5 %: a courier's page,
duty cut to the penny. Japan: its customs' rules of cutting, figures [derived].
"""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.costing.amounts import to_minor
from scorecard.costing.customs import Shipment, at_the_border, customs_value, duty_words, tax_value, tax_words
from scorecard.costing.import_presets import preset_for
from scorecard.costing.importing import DUTY_BASES, TAX_BASES, Relief


def border(country, duty, tax, **parts):
    shipment = Shipment(**{name: Decimal(value) for name, value in parts.items()})
    return at_the_border(preset_for(country), shipment, Decimal(duty), Decimal(tax))


def test_new_zealand_without_duty_charges_165():
    assert Decimal("165.00") == border("NZ", 0, 15, goods=1000, freight=100).tax


def test_new_zealand_with_duty_charges_50_and_172_50():
    found = border("NZ", 5, 15, goods=1000, freight=100)

    assert (Decimal("50.00"), Decimal("172.50")) == (found.duty, found.tax)


def test_canada_charges_4_60_and_5_98():
    goods = to_minor(Decimal(100) * Decimal("1.15"), "CAD")
    found = border("CA", 4, 5, goods=goods, freight=30)

    assert (Decimal("4.60"), Decimal("119.60"), Decimal("5.98")) == (found.duty, found.tax_base, found.tax)


def test_australia_charges_70_and_160():
    goods, post = to_minor(Decimal(1274) / Decimal("0.91"), "AUD"), to_minor(Decimal("118.30") / Decimal("0.91"), "AUD")
    found = border("AU", 5, 10, goods=goods, freight=post)

    assert (Decimal("70.00"), Decimal("1600.00"), Decimal("160.00")) == (found.duty, found.tax_base, found.tax)


def test_the_usa_charges_1564_50_and_no_import_tax():
    found = border("US", "14.9", 0, goods=10500, freight=900)

    assert (Decimal("1564.50"), Decimal(0)) == (found.duty, found.tax)


def test_the_uk_charges_4_per_cent_of_10500():
    assert Decimal("420.00") == border("GB", 4, 0, goods=10000, freight=500).duty


def test_the_uk_cuts_a_duty_of_4_025_to_4_02_and_charges_vat_of_20_83():
    found = border("GB", "3.5", "17.5", goods=80, freight=35)

    assert (Decimal("4.02"), Decimal("119.02"), Decimal("20.83")) == (found.duty, found.tax_base, found.tax)


def test_japan_cuts_bases_to_1000_yen_and_charges_to_100():
    # 123,456 → base 123,000; 4 % = 4,920 → 4,900; 128,356 → 128,000; national 7.8 % = 9,984 → 9,900;
    # local 9,984 × 22/78 = 2,816 → 2,800
    found = border("JP", 4, 10, goods=100_000, freight=23_456)

    assert (Decimal(123_000), Decimal(4_900)) == (found.duty_base, found.duty)
    assert (Decimal(128_000), Decimal(12_700), Decimal(2_800)) == (found.tax_base, found.tax, found.local_tax)


def test_japan_s_reduced_rate_is_6_24_national():
    # 100,000 × 6.24 % = 6,240 → 6,200; × 22/78 = 1,760 → 1,700
    assert Decimal(7_900) == border("JP", 0, 8, goods=100_000).tax


@pytest.mark.parametrize(
    ("base", "value"), [*zip(DUTY_BASES, ("110", "115", "153"), strict=True)]
)  # goods 100, supplied 10, origin 5, freight 40 of which 90 % count, insurance 2
def test_each_duty_base_adds_its_own_parts(base, value):
    rules = replace(preset_for("GB"), duty_base=base)

    assert Decimal(value) == customs_value(rules, PARTS)


@pytest.mark.parametrize(("base", "value"), [*zip(TAX_BASES, ("0", "160", "164", "184"), strict=True)])
def test_each_tax_base_adds_its_own_parts(base, value):
    rules = replace(preset_for("GB"), tax_base=base)

    assert Decimal(value) == tax_value(rules, PARTS, Decimal(7))


PARTS = Shipment(
    goods=Decimal(100),
    supplied=Decimal(10),
    origin=Decimal(5),
    freight=Decimal(40),
    insurance=Decimal(2),
    after=Decimal(20),
    freight_in_base_percent=Decimal(90),
)


@pytest.mark.parametrize(("of", "tax"), [("duty", "20.00"), ("duty and tax", "0")])
def test_relief_counts_only_where_the_user_says_that_it_holds(of, tax):
    relief = Relief(up_to=Decimal(135), currency="GBP", of=of)
    rules = replace(preset_for("GB"), relief=relief)
    parts = Shipment(goods=Decimal(100))
    without = at_the_border(rules, parts, Decimal(4), Decimal(20))
    within = at_the_border(replace(rules, use_relief=True), parts, Decimal(4), Decimal(20))

    assert (Decimal("4.00"), Decimal(0), Decimal(tax)) == (without.duty, within.duty, within.tax)


@pytest.mark.parametrize(("goods", "duty"), [("135", "0"), ("135.01", "5.40"), ("136", "5.44")])
def test_relief_reaches_up_to_the_threshold_and_no_further(goods, duty):
    rules = replace(preset_for("GB"), use_relief=True)

    assert Decimal(duty) == at_the_border(rules, Shipment(goods=Decimal(goods)), Decimal(4), Decimal(20)).duty


def test_the_working_names_rate_base_and_local_tax():
    rules = preset_for("JP")
    found = border("JP", 4, 10, goods=100_000)

    assert "4 % of 100000 JPY (price, freight and insurance)" == duty_words(found, Decimal(4), rules)
    assert "10 % of 104000 JPY (customs value and duty), of which 2200 JPY local tax" == tax_words(
        found, Decimal(10), rules
    )


CENTS = st.decimals(0, 10**5, places=2)


@given(CENTS, CENTS, CENTS, st.decimals(0, 40, places=2), st.decimals(0, 30, places=2))
def test_duty_and_tax_are_those_of_fractions(goods, freight, after, duty, tax):
    found = at_the_border(preset_for("IE"), Shipment(goods=goods, freight=freight, after=after), duty, tax)
    base = Fraction(goods) + Fraction(freight)
    charged = half_up(base * Fraction(duty) / 100)

    assert charged == Fraction(found.duty)
    assert half_up((base + charged + Fraction(after)) * Fraction(tax) / 100) == Fraction(found.tax)


def half_up(amount):
    return Fraction((amount * 100 + Fraction(1, 2)).__floor__(), 100)
