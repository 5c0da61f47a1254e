"""Chargeable weight, with published worked examples.

One box of 0.45 m³ (a forwarder's glossary); a case and eight boxes by air (a freight agent's page); 50 packages by sea
(a forwarder's page); eight boxes by courier [derived]: the same boxes at 5000, to the half kg.
"""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.costing.amounts import Span
from scorecard.costing.chargeable import carton_count, chargeable_kg, fits, freight_at, volume_cm3, volume_kg
from scorecard.costing.freight import SHIPPING_RULES, Carton, FreightOffer, ShippingRule

AIR, EXPRESS, SEA = (SHIPPING_RULES[way] for way in ("air", "express", "sea"))
BOX = Carton(pieces=25, length_cm=Decimal(60), width_cm=Decimal(40), height_cm=Decimal(20), kg=Decimal("5.625"))
PACKAGE = Carton(pieces=10, length_cm=Decimal(63), width_cm=Decimal(45), height_cm=Decimal(58), kg=Decimal(10))
NO_STEP = ShippingRule(way="air", divisor=Decimal(6000))


def offer(**more):
    return FreightOffer(maker="Fernhill", row=2, **({"way": "air", "currency": "USD"} | more))


def test_a_box_of_0_45_cubic_metres_at_167_counts_as_75_15_kg():
    rule = ShippingRule(way="air", kg_per_m3=Decimal(167))

    assert Decimal("75.15") == chargeable_kg(Decimal(25), Decimal(450_000), rule)


def test_the_same_box_at_6000_counts_as_75_kg():
    assert Decimal(75) == chargeable_kg(Decimal(25), Decimal(450_000), NO_STEP)


def test_a_heavy_case_counts_by_its_80_kg():
    assert Decimal(80) == chargeable_kg(Decimal(80), Decimal(50 * 50 * 50), AIR)


def test_eight_boxes_by_air_count_as_64_kg():
    assert Decimal(64) == chargeable_kg(Decimal(45), 8 * volume_cm3(BOX, AIR), AIR)


def test_fifty_packages_by_sea_cost_822_15_at_100_a_revenue_ton():
    packed = offer(way="sea", rate_per_revenue_ton=Span.of(100), carton=PACKAGE)

    assert Decimal("822.15") == freight_at(packed, SEA, 500, "low")[0]


def test_a_rate_per_kg_by_sea_is_a_thousandth_of_that_per_revenue_ton():
    packed = offer(way="sea", rate_per_kg=Span.of("0.10"), carton=PACKAGE)

    assert Decimal("822.15") == freight_at(packed, SEA, 500, "low")[0]


def test_eight_boxes_by_courier_count_as_77_kg():
    assert Decimal("77.0") == chargeable_kg(Decimal(45), 8 * volume_cm3(BOX, EXPRESS), EXPRESS)


def test_where_no_rule_says_so_a_revenue_ton_is_1000_kg():
    # by rail a kg is 2000 cm³: 8,221,500 cm³ are 4110.75 kg, up to the next whole kg
    packed = offer(way="rail", rate_per_revenue_ton=Span.of(100), carton=PACKAGE)

    assert Decimal("411.10") == freight_at(packed, SHIPPING_RULES["rail"], 500, "low")[0]


def test_a_small_parcel_counts_by_its_weight_where_size_does_not_count():
    post = SHIPPING_RULES["post"]

    assert 0 == volume_kg(Decimal(9000), post)
    assert Decimal("0.3") == chargeable_kg(Decimal("0.3"), Decimal(9000), post)


def test_where_a_cubic_metre_counts_as_500_kg_a_revenue_ton_is_500_kg():
    # Singapore's local consolidators, by a forwarder's page
    packed = offer(way="sea", rate_per_revenue_ton=Span.of(100), carton=replace(PACKAGE, kg=Decimal(100)))
    local = replace(SEA, kg_per_m3=Decimal(500), minimum_kg=Decimal(500))

    # 5,000 kg count as 10 revenue tons, more than the 8.2215 m³
    assert Decimal(1000) == freight_at(packed, local, 500, "low")[0]


def test_the_working_names_cartons_size_and_weight():
    words = freight_at(offer(rate_per_kg=Span.of(3), carton=BOX), AIR, 200, "low")[1]

    assert "8 cartons, 45 kg, by size 384000 cm³ ÷ 6000 = 64 kg: 64 kg × 3.00 USD" == words


def test_by_sea_the_working_speaks_of_revenue_tons():
    packed = offer(way="sea", rate_per_revenue_ton=Span.of(100), carton=PACKAGE)

    assert (
        "by size 8.2215 m³ × 1000 kg = 8221.5 kg: 8.2215 revenue tons × 100.00 USD"
        in freight_at(packed, SEA, 500, "low")[1]
    )


def test_where_size_does_not_count_the_working_leaves_it_out():
    post = freight_at(offer(way="post", rate_per_kg=Span.of(9), carton=BOX), SHIPPING_RULES["post"], 25, "low")[1]

    assert "1 carton, 5.625 kg, up to the next 0.1 kg: 5.7 kg × 9.00 USD" == post


def test_a_shipment_pays_for_its_least_weight():
    assert Decimal(1000) == chargeable_kg(Decimal(40), Decimal(200_000), SEA)


def test_sides_are_rounded_first_where_the_rule_says_so():
    carton = replace(BOX, length_cm=Decimal("60.5"), width_cm=Decimal("40.4"))

    assert Decimal(61 * 40 * 20) == volume_cm3(carton, replace(AIR, round_cm=True))


def test_by_air_sides_are_rounded_and_the_working_says_so_where_it_matters():
    # forwarders' pages on the air carriers' rule: the nearest whole cm, halves up
    carton = replace(BOX, length_cm=Decimal("60.5"), width_cm=Decimal("40.4"))
    words = freight_at(offer(rate_per_kg=Span.of(3), carton=carton), AIR, 25, "low")[1]

    assert "by size 48800 cm³ (sides to whole cm) ÷ 6000" in words


def test_by_express_sides_stay_as_they_are_since_no_source_says_otherwise():
    carton = replace(BOX, length_cm=Decimal("60.5"))

    assert Decimal("60.5") * 40 * 20 == volume_cm3(carton, EXPRESS)


def test_a_last_carton_that_is_not_full_is_said_to_count_as_full():
    words = freight_at(offer(rate_per_kg=Span.of(3), carton=BOX), AIR, 201, "low")[1]

    assert words.startswith("9 cartons (the last with 1 of 25 pieces, counted as full), 50.625 kg")


def test_a_surcharge_is_added_to_the_rate():
    cost, words = freight_at(
        offer(rate_per_kg=Span.of(3), carton=BOX), replace(AIR, surcharge_percent=Decimal(20)), 200, "low"
    )

    assert (Decimal("230.4"), True) == (cost, words.endswith("and 20 % surcharge"))


def test_the_last_carton_counts_as_full():
    assert [8, 9] == [carton_count(BOX, 200), carton_count(BOX, 201)]


@pytest.mark.parametrize(
    ("bounds", "fitting"),
    [
        ({"from_pieces": 100, "to_pieces": 200}, {100, 200}),
        ({"from_pieces": 100}, {100}),
        ({"to_pieces": 200}, {200}),
        ({}, {200}),  # what was wanted
    ],
)
def test_a_cost_counts_only_for_the_pieces_that_it_was_quoted_for(bounds, fitting):
    quoted = offer(cost=Span.of(90), **bounds)

    assert fitting == {quantity for quantity in (99, 100, 200, 201) if fits(quoted, quantity, 200)}


@pytest.mark.parametrize(("end", "cost"), [("low", 90), ("high", 120)])
def test_a_cost_that_is_offered_is_taken_as_it_is(end, cost):
    quoted = offer(cost=Span.of(90, 120))

    assert (cost, f"offered: {cost}.00 USD") == freight_at(quoted, AIR, 200, end)


@pytest.mark.parametrize(
    ("bounds", "fitting"), [({"from_pieces": 100}, {100, 200, 201}), ({"to_pieces": 200}, {99, 100, 200})]
)
def test_a_rate_counts_within_the_bound_that_is_given(bounds, fitting):
    quoted = offer(rate_per_kg=Span.of(3), carton=BOX, **bounds)

    assert fitting == {quantity for quantity in (99, 100, 200, 201) if fits(quoted, quantity, 200)}


def test_a_rate_holds_without_bounds_where_none_are_given():
    assert all(fits(offer(rate_per_kg=Span.of(3), carton=BOX), quantity, 200) for quantity in (1, 200, 5000))


@given(
    st.decimals(1, 500, places=2),
    st.decimals(1, 10**6, places=0),
    st.sampled_from([5000, 6000, 3000]),
    st.sampled_from(["0.5", "1", "0.1"]),
)
def test_chargeable_weight_is_that_of_fractions(gross, cm3, divisor, step):
    rule = ShippingRule(way="air", divisor=Decimal(divisor), step_kg=Decimal(step))
    weight = max(Fraction(gross), Fraction(cm3) / divisor)

    assert ceil(weight / Fraction(step)) * Fraction(step) == Fraction(chargeable_kg(gross, cm3, rule))


@given(st.integers(1, 5000), st.integers(1, 5000))
def test_more_pieces_never_cost_less_to_carry_at_a_rate(one, other):
    packed = offer(rate_per_kg=Span.of(3), carton=BOX)
    fewer, more = sorted((one, other))

    assert freight_at(packed, AIR, fewer, "low")[0] <= freight_at(packed, AIR, more, "low")[0]


@pytest.mark.parametrize(
    ("rule", "words"),
    [
        (replace(AIR, minimum_kg=Decimal(100)), "= 64 kg, at least 100 kg are charged: 100 kg ×"),
        (replace(AIR, divisor=Decimal(5900)), "kg, up to the next 0.5 kg: 65.5 kg ×"),
    ],
)
def test_what_raises_the_charged_weight_is_said(rule, words):
    assert words in freight_at(offer(rate_per_kg=Span.of(3), carton=BOX), rule, 200, "low")[1]
