"""Freight offers and the presets of the ways of shipping."""

from scorecard.costing.amounts import Span
from scorecard.costing.freight import PARTS_OF_FREIGHT, SHIPPING_RULES, FreightOffer
from scorecard.costing.quotes import WAYS
from scorecard.errors import Place


def test_every_way_has_a_rule_with_its_source():
    assert set(WAYS) == {way for way, rule in SHIPPING_RULES.items() if rule.way == way and rule.source}


def test_what_goes_further_pays_for_all_that_goes_less_far():
    port, to_door, door = PARTS_OF_FREIGHT.values()

    assert port < to_door < door


def test_a_column_that_is_not_there_gives_the_maker_s_cell():
    cell = Place(sheet="Freight", cell="A2")
    offer = FreightOffer(maker="Fernhill", row=2, way="air", currency="EUR", cost=Span.of(90), places={"Maker": cell})

    assert cell == offer.at("Days")
