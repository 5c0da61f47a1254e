"""The tables of costs: rates, rules and charges, and each fault at its key."""

from datetime import date
from decimal import Decimal

import pytest
from sourcing import BRIEF, costs_of, folder_of, problems_of

from scorecard.costing.amounts import Money, Span
from scorecard.reading.criteria_file import parse_criteria
from scorecard.reading.folder import read_folder

QUOTES = {"Quotes": [["Maker", "Price", "Price is for", "Currency"], ["Fernhill", 4, "each", "EUR"]]}
RATES = "[currencies]\non = 2026-11-20\nUSD = 0.92\n"


def inputs(path, toml, **options):
    return costs_of(path, QUOTES, toml, **options)


def problems(path, toml, **options):
    return problems_of(path, QUOTES, toml, **options)


def test_rates_have_their_direction_and_day(tmp_path):
    rates = inputs(tmp_path, f"{RATES}charge_percent = 2.5\n[currencies.for_one]\nCNY = 7.8\n").rates

    assert (Decimal("92.00"), Decimal(10), date(2026, 11, 20), Decimal("2.5")) == (
        rates.to_home(Decimal(100), "USD"),
        rates.to_home(Decimal(78), "CNY"),
        rates.rates["USD"].dated,
        rates.charge_percent,
    )


def test_a_way_of_shipping_keeps_what_is_not_given(tmp_path):
    shipping = inputs(tmp_path, '[shipping.air]\ndivisor = 5000\nminimum_kg = 45\ndays = "3-15"\n').shipping

    assert (Decimal(5000), Decimal("0.5"), Decimal(45), Span.of(3, 15), Decimal(5000)) == (
        shipping["air"].divisor,
        shipping["air"].step_kg,
        shipping["air"].minimum_kg,
        shipping["air"].days,
        shipping["express"].divisor,
    )


def test_a_way_of_shipping_keeps_when_and_where_its_figures_were_seen(tmp_path):
    shipping = inputs(tmp_path, '[shipping.air]\non = 2026-11-20\nsource = "the agent"\n').shipping

    assert ("2026-11-20", "the agent", "") == (shipping["air"].dated, shipping["air"].source, shipping["sea"].dated)


def test_a_density_takes_the_place_of_a_divisor(tmp_path):
    air = inputs(tmp_path, "[shipping.air]\nkg_per_m3 = 167\n").shipping["air"]

    assert (None, Decimal(167)) == (air.divisor, air.kg_per_m3)


def test_the_border_begins_with_the_destination(tmp_path):
    rules = inputs(tmp_path, "").imports

    assert ("EU", "price, freight and insurance", None) == (rules.preset, rules.duty_base, rules.duty_percent)


def test_the_users_rates_go_on_top(tmp_path):
    toml = """[import]
duty_percent = "4-12"
duty_by_country = { CN = 12 }
tax_percent = 23
tax = "recoverable"
freight_in_base_percent = { air = 70 }
on = 2026-11-20

[[import.supplied]]
name = "Lighthouse drawings"
what = "artwork"
value = 400
made_in = "IE"

[[import.charges]]
name = "Clearance"
amount = 45
"""
    rules = inputs(tmp_path, toml).imports

    assert (
        Span.of(4, 12),
        {"CN": Span.of(12)},
        Span.of(23),
        "recoverable",
        {"air": Decimal(70)},
        Money(Span.of(400), "EUR"),
        ("clearance",),
    ) == (
        rules.duty_percent,
        rules.duty_by_country,
        rules.tax_percent,
        rules.tax_is,
        rules.freight_in_base_percent,
        rules.supplied[0].value,
        rules.charges[0].pays_for,
    )


def test_settings_and_charges_are_read(tmp_path):
    toml = """[cost]
faulty_percent = 3
reorder = true
sampled = ["fernhill"]
balance = "on arrival"

[[cost.charges]]
name = "Bank fee"
percent = 1
of = "paid to the maker"
"""
    settings = inputs(tmp_path, toml).settings

    assert (Decimal(3), True, frozenset({"Fernhill"}), "on arrival", "payment") == (
        settings.faulty_percent,
        settings.reorder,
        settings.sampled,
        settings.balance,
        settings.charges[0].group,
    )


BOX = '[[cost.charges]]\nname = "Box"\namount = 3\n'
SHARE = '[[cost.charges]]\nname = "Fee"\npercent = 3\nof = "paid to the maker"\n'
CHARGED_IN_NO_RATE = ("cost.charges[0].currency", "currency-without-rate")


@pytest.mark.parametrize(
    ("toml", "found"),
    [
        ("[currencies]\non = 2026-11-20\nUSD = 0\n", [("currencies.USD", "not-above-zero")]),
        ("[currencies]\non = 2026-11-20\nUDS = 1\n", [("currencies.UDS", "unknown-key")]),
        ("[currencies]\non = 2026-11-20\nEUR = 1\n", [("currencies.EUR", "own-currency")]),
        (f"{RATES}[currencies.for_one]\nUSD = 1.1\n", [("currencies.USD", "currency-twice")]),
        ("[shipping.balloon]\nstep_kg = 1\n", [("shipping.balloon", "unknown-key")]),
        ("[shipping.air]\nstep_kg = -1\n", [("shipping.air.step_kg", "below-zero")]),
        ("[shipping.air]\ndivisor = 5000\nkg_per_m3 = 167\n", [("shipping.air.kg_per_m3", "two-densities")]),
        ("[import]\nduty_percent = -4\n", [("import.duty_percent", "below-zero")]),
        ("[import]\nduty_percent = 4000\n", [("import.duty_percent", "too-high")]),
        ('[import]\nduty_base = "weight"\n', [("import.duty_base", "not-an-option")]),
        ('[import]\ncurrency = "USD"\n', [("import.currency", "currency-without-rate")]),
        ('[import]\nuse_relief = "yes"\n', [("import.use_relief", "not-true-or-false")]),
        ("[import]\nduty_by_country = { China = 3 }\n", [("import.duty_by_country.China", "not-a-country")]),
        ("[cost]\nfaulty_percent = 100\n", [("cost.faulty_percent", "above-hundred")]),
        ('[cost]\nsampled = ["Nobody"]\n', [("cost.sampled", "unknown-maker")]),
        ('[[cost.charges]]\nname = "Box"\n', [("cost.charges[0]", "charge-without-figure")]),
        ('[[cost.charges]]\nname = "Box"\npercent = 3\n', [("cost.charges[0].of", "missing-key")]),
        ("[[cost.charges]]\namount = 3\n", [("cost.charges[0].name", "missing-key")]),
        ('[[cost.charges]]\nname = "Box"\namount = 3\nways = "boat"\n', [("cost.charges[0].ways", "not-an-option")]),
        ('[[cost.charges]]\nname = "Box"\namount = 3\nways = 3\n', [("cost.charges[0].ways", "not-a-list")]),
        ('[[cost.charges]]\nname = "Box"\namount = 3\ncurrency = "USD"\n', [CHARGED_IN_NO_RATE]),
        (f'{BOX}[[cost.charges]]\nname = "box"\namount = 4\n', [("cost.charges[1].name", "charge-twice")]),
        (f"{SHARE}minimum = 5\nmaximum = 4\n", [("cost.charges[0].maximum", "reversed-range")]),
        ("[cost]\ncharges = [3]\n", [("cost.charges", "not-a-table")]),
        ('[import]\nduty_percent = "0-2000"\n', [("import.duty_percent", "too-high")]),
        ('[import]\nduty_percent = "duty"\n', [("import.duty_percent", "not-a-number")]),
    ],
)
def test_each_fault_stands_at_its_key(tmp_path, toml, found):
    assert found == problems(tmp_path, toml)


def test_a_destination_without_known_bases_asks_for_them(tmp_path):
    brief = BRIEF.replace('"IE"', '"BR"')

    assert ["no-import-bases"] == [code for _, code in problems(tmp_path, "[import]\nduty_percent = 4\n", brief=brief)]


def test_a_destination_whose_bases_the_user_gives_has_rules_of_its_own(tmp_path):
    rules = inputs(
        tmp_path,
        '[import]\nduty_percent = 4\nduty_base = "price"\ntax_base = "none"\n',
        brief=BRIEF.replace('"IE"', '"BR"'),
    ).imports

    assert ("BR", "EUR", "price", "none") == (rules.destination, rules.currency, rules.duty_base, rules.tax_base)


@pytest.mark.parametrize(
    ("gone", "toml", "found"),
    [
        ('destination = "IE"\n', "[import]\nduty_percent = 4\n", ("import", "no-destination")),
        ('currency = "EUR"\n', BOX, ("cost.charges[0].currency", "missing-currency")),
    ],
)
def test_what_the_brief_must_say_for_a_table_is_asked_for_there(tmp_path, gone, toml, found):
    assert found in problems(tmp_path, toml, brief=BRIEF.replace(gone, ""))


def test_a_customs_currency_without_a_rate_is_asked_for(tmp_path):
    brief = BRIEF.replace('"IE"', '"GB"')

    assert [("import", "currency-without-rate")] == problems(tmp_path, "[import]\nduty_percent = 4\n", brief=brief)


@pytest.mark.parametrize(
    ("before", "after", "found"),
    [
        ('currency = "EUR"\n', 'currency = "euro"\n', ("brief.currency", "not-a-currency")),
        ('currency = "EUR"\n', "currency = EUR\n", ("brief.currency", "not-toml")),
        ('destination = "IE"\n', 'destination = "UK"\n', ("brief.destination", "not-a-country")),
        ('destination = "IE"\n', "destination = IE\n", ("brief.destination", "not-toml")),
        ("quantity = 200\n", 'quantity = "300"\n', ("brief.quantity", "number-in-quotes")),
        ("quantity = 200\n", "quantity = 300 pieces\n", ("brief.quantity", "not-toml")),
    ],
)
def test_what_the_brief_names_is_known_though_another_key_has_a_fault(tmp_path, before, after, found):
    assert before in BRIEF
    rows = [
        ["Maker", "Price", "Price is for", "Currency"],
        ["Fernhill", 4, "each", "EUR"],
        ["Brightholm", 4, "each", ""],
    ]
    toml = f'[import]\nduty_percent = 4\n{RATES}[cost]\ncharges = [{{ name = "box", amount = 4 }}]\n'

    assert [found] == problems_of(tmp_path, {"Quotes": rows}, toml, brief=BRIEF.replace(before, after))


def test_a_tax_rate_where_none_is_charged_warns_at_its_key(tmp_path):
    american = BRIEF.replace('"IE"', '"US"').replace('"EUR"', '"USD"')
    based = '[import]\ntax_percent = 8\ntax_base = "duty base and duty"\n'
    found = [
        [(one.place.key, one.code) for one in read_folder(folder_of(tmp_path, toml=toml, brief=american)).warnings]
        for toml in ("[import]\ntax_percent = 8\n", based)
    ]

    assert [("import.tax_percent", "tax-not-counted")] == [one for one in found[0] if one not in found[1]]
    assert "tax-not-counted" not in [code for _, code in found[1]]


COST = '\n[criteria.landed]\nweight = 1\nmeasure = "landed_cost_per_piece"\npoints = [[1, 100], [9, 0]]\n'


@pytest.mark.parametrize(
    ("unit", "found"),
    [("", []), ('unit = "EUR"\n', []), ('unit = "€"\n', []), ('unit = "GBP"\n', ["other-currency"])],
)
def test_landed_cost_is_in_the_briefs_currency_and_no_other(tmp_path, unit, found):
    read = parse_criteria(f"{BRIEF}{COST}{unit}".encode(), "criteria.toml")

    assert [("criteria.landed.unit", code) for code in found] == [(one.place.key, one.code) for one in read.problems]
    assert "EUR" == read.criteria[-1].unit


@pytest.mark.parametrize("unit", ['unit = "days"\n', 'unit = "working days"\n'])
def test_days_of_an_answer_are_working_days_and_called_so(unit):
    table = f'\n[criteria.answers]\nweight = 1\nmeasure = "response_days"\npoints = [[1, 100], [9, 0]]\n{unit}'

    assert "working days" == parse_criteria(f"{BRIEF}{table}".encode(), "criteria.toml").criteria[-1].unit


def test_a_divisor_of_nothing_is_refused_and_a_density_of_nothing_is_not(tmp_path):
    assert [("shipping.air.divisor", "not-above-zero")] == problems(tmp_path, "[shipping.air]\ndivisor = 0\n")
    assert None is inputs(tmp_path, "[shipping.air]\nkg_per_m3 = 0\n").shipping["air"].divisor


def test_a_maker_whose_price_was_set_aside_is_known(tmp_path):
    rows = [["Maker", "Price", "Price is for"], ["Fernhill", "~3", "each"], ["Brightholm", 3, "each"]]

    assert {"Fernhill"} == costs_of(tmp_path, {"Quotes": rows}, set_aside=True).unread
