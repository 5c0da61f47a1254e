"""One way to read a reply, and its entries."""

from datetime import date
from decimal import Decimal

import pytest
from quoted import MAKER, dollars, landed, offer, quote

from scorecard.costing.charges import ORIGIN_PARTS
from scorecard.costing.currencies import Rate, Rates
from scorecard.costing.entries import GOODS, costs, entry, exchange_words, no_figure, paid
from scorecard.costing.freight import SHIPPING_RULES
from scorecard.costing.inputs import MakerFacts


def situation(country="CN", **more):
    costs = landed(quote(5), makers={MAKER: MakerFacts(maker=MAKER, country=country)}, **more)
    return costs[0].readings[0].situation


def test_an_amount_comes_into_the_brief_s_currency_to_its_minor_unit():
    made = entry(GOODS, Decimal("10.01"), "USD", "quoted", dollars("3"))

    assert (Decimal("3.34"), True) == (made.cost, made.foreign)


def test_a_sum_in_another_currency_is_said_once():
    works = [
        entry(GOODS, Decimal(10), "USD", told, dollars()).working for told in ("2 × 5.00 USD", "quoted: 10.00 USD")
    ]

    assert [
        "2 × 5.00 USD = 10.00 USD, at 1.25 USD for 1 GBP",
        "quoted: 10.00 USD, at 1.25 USD for 1 GBP",
    ] == works


def test_the_exchange_is_said_with_its_direction_and_day():
    there = Rate(currency="USD", figure=Decimal("0.8"), dated=date(2026, 11, 20))

    assert [", at 1.25 USD for 1 GBP", ", at 0.8 GBP for 1 USD (20 November 2026)", ""] == [
        exchange_words("USD", dollars()),
        exchange_words("USD", Rates(home="GBP", rates={"USD": there})),
        exchange_words("GBP", dollars()),
    ]


def test_costs_and_payments_are_added_apart():
    made = [entry(GOODS, Decimal(10), "GBP", "", dollars()), entry(GOODS, Decimal(5), "GBP", "", dollars())]

    assert (Decimal(15), Decimal(15)) == (costs(made), paid(made))


@pytest.mark.parametrize(("country", "crosses"), [("CN", True), ("GB", False), ("IM", False), (None, True)])
def test_a_border_is_taken_to_be_crossed_unless_both_countries_are_known_to_share_it(country, crosses):
    assert crosses == situation(country).crosses_border


def test_without_a_border_there_is_nothing_to_clear():
    assert not {"export clearance", "clearance", "duty"} & situation("GB").left_to_pay


@pytest.mark.parametrize(("way", "terminals"), [("sea", True), ("road", False), (None, False)])
def test_within_one_territory_only_ships_planes_and_trains_have_terminals_to_pay(way, terminals):
    near = {MAKER: MakerFacts(maker=MAKER, country="GB")}
    (cost,) = landed(quote(5, way=way), makers=near)

    assert terminals == ("arrival charges" in cost.readings[0].situation.left_to_pay)


def test_the_freight_offer_pays_for_what_it_covers():
    by_offer = situation(offers=(offer("sea", 90, covers="from the port to my door"),))

    assert {"freight", "arrival charges", "delivery"} == by_offer.freight_parts
    assert not by_offer.freight_parts & by_offer.left_to_pay


def test_without_a_word_an_offer_covers_what_its_way_does():
    by_sea, by_road = (situation(offers=(offer(way, 90),)) for way in ("sea", "road"))

    assert {"freight"} == by_sea.freight_parts
    assert {*ORIGIN_PARTS, "freight", "arrival charges", "delivery"} == by_road.freight_parts


def test_a_way_counts_by_its_rule_and_no_way_by_none():
    rules = [situation(offers=offers).rule for offers in ((offer("sea", 90),), ())]

    assert [SHIPPING_RULES["sea"], None] == rules


def test_packing_besides_the_usual_is_left_to_pay_unless_the_price_pays_everything():
    costs = landed(quote(5), quote(9, row=3, covers="to my door, duty and tax paid"))

    assert [True, False] == ["packing" in cost.readings[0].situation.left_to_pay for cost in costs]


def test_a_gap_names_the_cost():
    assert "delivery: no figure; the total is too low by that" == no_figure("delivery").words
