"""Freight offers and the presets of the ways of shipping."""

from decimal import Decimal

import pytest

from scorecard.costing.amounts import Span
from scorecard.costing.freight import PARTS_OF_FREIGHT, SHIPPING_RULES, FreightOffer
from scorecard.costing.quotes import WAYS
from scorecard.errors import Place


def test_every_way_has_a_rule_with_its_source():
    assert set(WAYS) == {way for way, rule in SHIPPING_RULES.items() if rule.way == way and rule.source}


@pytest.mark.parametrize(
    ("way", "divisor", "density", "step", "minimum", "is_rounded", "covers"),
    [
        ("sea", None, 1000, "0", 1000, False, "port to port"),  # forwarders' pages: a revenue ton, at least one
        ("air", 6000, None, "0.5", 0, True, "port to port"),  # forwarders' pages
        ("express", 5000, None, "0.5", 0, False, "door to door"),  # couriers' pages; the step: common practice
        ("rail", 2000, None, "1", 0, False, "port to port"),  # this and the rest: common practice, no source
        ("road", 3000, None, "1", 0, False, "door to door"),
        ("post", None, None, "0.1", 0, False, "door to door"),
    ],
)
def test_each_preset_has_the_figures_of_its_source(way, divisor, density, step, minimum, is_rounded, covers):
    rule = SHIPPING_RULES[way]

    assert (divisor, density, Decimal(step), minimum) == (rule.divisor, rule.kg_per_m3, rule.step_kg, rule.minimum_kg)
    assert (is_rounded, 0, covers) == (rule.round_cm, rule.surcharge_percent, rule.covers)


def test_what_goes_further_pays_for_all_that_goes_less_far():
    port, to_door, door = PARTS_OF_FREIGHT.values()

    assert port < to_door < door


def test_a_column_that_is_not_there_gives_the_maker_s_cell():
    cell = Place(sheet="Freight", cell="A2")
    offer = FreightOffer(maker="Fernhill", row=2, way="air", currency="EUR", cost=Span.of(90), places={"Maker": cell})

    assert cell == offer.at("Days")
