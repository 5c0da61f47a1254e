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


def test_missed_offers_are_named_with_their_pieces():
    (cost,) = landed(quote(5), offers=(offer("sea", 90, from_pieces=50), offer("sea", 95, row=3, to_pieces=100)))

    assert cost.gaps[0].words.startswith("freight: offered for 50 and 100 pieces, not for 200")


def test_the_journey_s_days_come_from_the_way_where_the_offer_has_none():
    slow = dict(SHIPPING_RULES) | {"sea": ShippingRule(way="sea", days=Span.of(30, 35))}
    (cost,) = landed_costs(inputs(quote(5, days=20), offers=(offer("sea", 90),), shipping=slow))

    assert Span.of(50, 55) == cost.days
