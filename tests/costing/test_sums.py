"""One reading as a sum: good pieces, gaps, days."""

from decimal import Decimal

import pytest
from quoted import MAKER, charge, inputs, landed, offer, quote

from scorecard.brief import Brief
from scorecard.costing.amounts import Span
from scorecard.costing.freight import SHIPPING_RULES, ShippingRule
from scorecard.costing.inputs import CostSettings, MakerFacts
from scorecard.costing.landed import landed_costs
from scorecard.costing.sums import good_pieces

ALL_PAID = "to my door, duty and tax paid"


@pytest.mark.parametrize(
    ("faulty", "minimum", "good"), [(None, 1, 200), (3, 1, 194), (3, 204, Decimal("197.88")), (3, 300, 200)]
)
def test_good_pieces_are_those_wanted_at_most(faulty, minimum, good):
    facts = {MAKER: MakerFacts(maker=MAKER, minimum=Span.of(minimum), minimum_per="order")}
    settings = CostSettings(faulty_percent=None if faulty is None else Decimal(faulty))
    (cost,) = landed(quote(5, covers=ALL_PAID), makers=facts, settings=settings)

    assert good == good_pieces(cost.readings[0].situation)


def test_a_piece_is_given_to_two_digits_beyond_the_minor_unit():
    three = Brief(item="mug", quantity=3, destination="GB", currency="GBP")
    (cost,) = landed(quote(10, price_is_for="all", covers=ALL_PAID), brief=three)

    assert Decimal("3.3333") == cost.per_good_piece[0]


def test_a_price_in_proportion_is_a_gap():
    (cost,) = landed(quote(480, price_is_for="all", pieces=100, covers=ALL_PAID))

    assert (Decimal(960), ["price"]) == (cost.low, [gap.name for gap in cost.gaps])


def test_one_charge_may_pay_for_several_parts():
    journey = charge(
        "Forwarder",
        300,
        "loading",
        "collection",
        "export clearance",
        "origin charges",
        "loading on board",
        "freight",
        "arrival charges",
        "clearance",
        "delivery",
        group="freight",
    )
    (cost,) = landed(quote(5), shipping_charges=(journey,))

    assert () == cost.gaps


def test_what_nobody_pays_for_is_a_gap_in_the_order_of_the_journey_after_freight():
    (cost,) = landed(quote(5))

    assert [
        "freight",
        "loading",
        "collection",
        "export clearance",
        "origin charges",
        "loading on board",
        "arrival charges",
        "clearance",
        "delivery",
    ] == [gap.name for gap in cost.gaps]
    assert {f"{gap.name}: no figure; the total is too low by that" for gap in cost.gaps} == {
        gap.words for gap in cost.gaps
    }


def test_lines_stand_by_where_their_money_goes_and_then_along_the_journey():
    (cost,) = landed(
        quote(5, setup=60, setup_per="order"),
        offers=(offer("sea", 90),),
        shipping_charges=(
            charge("Pallet hire", 20, group="freight"),  # pays for no part, so it comes last of its group
            charge("At arrival", 40, "delivery", "arrival charges", group="freight"),
            charge("Insurance", 5, "insurance", group="freight"),
            charge("Papers", 15, "clearance", "export clearance", group="freight"),  # by the first of its parts
            charge("To the port", 45, "origin charges", "loading", group="freight"),
        ),
        settings=CostSettings(charges=(charge("Bank fee", 12, group="payment"), charge("Labels", 8))),
    )

    assert [
        *("Goods", "Set-up"),
        *("To the port", "Papers", "Freight by sea", "Insurance", "At arrival", "Pallet hire"),
        *("Duty", "Import tax"),
        "Labels",
        "Bank fee",
    ] == [line.name for line in cost.readings[0].lines]


def test_a_line_says_how_both_its_ends_were_worked_out_where_they_differ():
    (cost,) = landed(quote((5, 6), setup=60, setup_per="order"))
    goods, setup, *_ = cost.readings[0].lines

    assert (True, True) == (goods.working.startswith("least: "), "; most: " in goods.working)
    assert (Decimal(1000), Decimal(1200)) == (goods.low, goods.high)
    assert "least" not in setup.working


@pytest.mark.parametrize(
    ("first", "words"), [((50, None), "50"), ((50, 80), "50 to 80"), ((50, 50), "50"), ((None, None), "60")]
)
def test_missed_offers_are_named_with_their_pieces(first, words):
    minimum = {MAKER: MakerFacts(maker=MAKER, minimum=Span.of(200), minimum_per="order", country="CN")}
    missed = offer("sea", 90, from_pieces=first[0], to_pieces=first[1]), offer("sea", 95, row=3, to_pieces=100)
    wanted = Brief(item="mug", quantity=60, destination="GB", currency="GBP")
    (cost,) = landed(quote(5), offers=missed, makers=minimum, brief=wanted)

    assert cost.gaps[0].words.startswith(f"freight: offered for {words} and 100 pieces, not for 200")


@pytest.mark.parametrize(
    ("ready", "journey", "covers", "days"),
    [
        (20, (30, 35), "goods", Span.of(50, 55)),
        (20, None, "goods", None),
        (None, 30, "goods", None),
        (20, 30, "goods and freight", Span.of(20)),  # the price names the days to the door itself
        (None, 30, "goods and freight", None),
    ],
)
def test_days_to_the_door_are_those_of_maker_and_journey(ready, journey, covers, days):
    (cost,) = landed(quote(5, days=ready, covers=covers, way="sea"), offers=(offer("sea", 90, days=journey),))

    assert days == cost.days


def test_without_an_offer_or_a_way_the_journey_s_days_are_not_known():
    assert None is landed(quote(5, days=20))[0].days


def test_the_journey_s_days_come_from_the_way_where_the_offer_has_none():
    slow = dict(SHIPPING_RULES) | {"sea": ShippingRule(way="sea", days=Span.of(30, 35))}
    (cost,) = landed_costs(inputs(quote(5, days=20), offers=(offer("sea", 90),), shipping=slow))

    assert Span.of(50, 55) == cost.days
