"""Where bases, rates and charges come from, as a user reads it."""

from dataclasses import replace
from decimal import Decimal

import pytest
from quoted import charge, inputs, offer, quote, uk

from scorecard.costing.freight import SHIPPING_RULES
from scorecard.costing.landed import landed_costs
from scorecard.costing.sources import source_words, sources_json

PRESET = uk()
OWN = replace(PRESET, tax_base="duty base and duty", dated="2026-11-20", source="the tariff")
ALL_PAID = "to my door, duty and tax paid"


def said(row, **more):
    case = inputs(row, offers=(offer("sea", 40),), **more)
    return source_words(case, landed_costs(case))


def test_the_legal_source_of_the_bases_is_shown_with_when_it_was_seen():
    (words,) = said(quote(3), imports=PRESET)

    assert (True, True) == (PRESET.legal in words, PRESET.seen in words)


def test_bases_of_the_user_s_own_have_no_legal_source():
    words, rates = said(quote(3), imports=OWN)

    assert (True, "Your rates of duty and tax: 20 November 2026, the tariff") == ("as you give them" in words, rates)
    assert None is sources_json(inputs(quote(3), imports=OWN))["import"]["legal"]


def test_charges_show_their_day_and_source():
    fee = charge("Clearance", 18, "clearance", dated="2018-05-05", source="carrier list", group="border")
    rules = replace(PRESET, charges=(fee,))

    assert "Clearance: 5 May 2018, carrier list" == said(quote(3), imports=rules)[-1]
    assert [{"name": "Clearance", "on": "2018-05-05", "source": "carrier list"}] == sources_json(
        inputs(quote(3), imports=rules)
    )["charges"]


@pytest.mark.parametrize(
    ("said_of_it", "shown", "words"),
    [
        ({"dated": "2018-05-05"}, [{"name": "Pallet", "on": "2018-05-05", "source": None}], ["Pallet: 5 May 2018"]),
        (
            {"source": "carrier list"},
            [{"name": "Pallet", "on": None, "source": "carrier list"}],
            ["Pallet: carrier list"],
        ),
        ({}, [], []),
    ],
)
def test_a_charge_shows_what_it_names_of_day_and_source(said_of_it, shown, words):
    pallet = charge("Pallet", 18, group="freight", **said_of_it)

    assert shown == sources_json(inputs(quote(3), shipping_charges=(pallet,)))["charges"]
    assert words == said(quote(3, covers=ALL_PAID), shipping_charges=(pallet,))


@pytest.mark.parametrize(
    ("rules", "shown"), [(PRESET, (PRESET.seen, None, None)), (OWN, (None, "2026-11-20", "the tariff"))]
)
def test_rules_say_when_they_were_seen_and_the_rates_theirs(rules, shown):
    found = sources_json(inputs(quote(3), imports=rules))["import"]

    assert shown == (found["seen"], found["rates_on"], found["rates_source"])


def test_the_border_is_said_where_one_of_two_makers_pays_there():
    case = inputs(quote(3, covers=ALL_PAID), quote(3, maker="Oxlip", row=3), imports=PRESET)
    (words,) = source_words(case, landed_costs(case))

    assert words.startswith("Bases at the border")


def test_nothing_is_said_of_a_border_where_nobody_pays():
    assert [] == said(quote(3, covers=ALL_PAID), imports=PRESET)


def of_ways(rules):
    return [words for words in said(quote(3), shipping=rules) if words.startswith("Your figures of shipping")]


@pytest.mark.parametrize(
    ("given", "words", "shown"),
    [
        ({"dated": "2026-11-20", "source": "the line's page"}, ["20 November 2026, the line's page"], True),
        ({"dated": "2026-11-20"}, ["20 November 2026"], True),
        ({"source": "the line's page"}, ["the line's page"], True),
        ({"minimum_kg": Decimal(500)}, [], False),
    ],
)
def test_a_way_shows_the_day_and_source_that_the_user_gives_it(given, words, shown):
    rules = {**SHIPPING_RULES, "sea": replace(SHIPPING_RULES["sea"], **given)}
    expected = {"way": "sea", "on": given.get("dated"), "source": given.get("source")}

    assert [f"Your figures of shipping by sea: {text}" for text in words] == of_ways(rules)
    assert ([expected] if shown else []) == sources_json(inputs(quote(3), shipping=rules))["shipping"]


def test_a_way_that_no_cost_takes_shows_no_source():
    rules = {**SHIPPING_RULES, "air": replace(SHIPPING_RULES["air"], source="the agent's page")}

    assert [] == of_ways(rules)
