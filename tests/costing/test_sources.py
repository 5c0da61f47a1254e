"""Where bases, rates and charges come from, as a user reads it."""

from dataclasses import replace

from quoted import charge, inputs, offer, quote, uk

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

    assert (True, "Your rates of duty and tax: 2026-11-20, the tariff") == ("as you give them" in words, rates)
    assert None is sources_json(inputs(quote(3), imports=OWN))["import"]["legal"]


def test_charges_show_their_day_and_source():
    fee = charge("Clearance", 18, "clearance", dated="2018-05-05", source="carrier list", group="border")
    rules = replace(PRESET, charges=(fee,))

    assert "Clearance: 2018-05-05, carrier list" == said(quote(3), imports=rules)[-1]
    assert [{"name": "Clearance", "on": "2018-05-05", "source": "carrier list"}] == sources_json(
        inputs(quote(3), imports=rules)
    )["charges"]


def test_nothing_is_said_of_a_border_where_nobody_pays():
    assert [] == said(quote(3, covers=ALL_PAID), imports=PRESET)
