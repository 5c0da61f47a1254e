"""At which quantity another maker becomes the cheapest."""

from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from quoted import MAKER, charge, inputs, offer, quote
from sized import ALL_PAID, minimum, prices, wanting, with_settings

from scorecard.costing.freight import Carton
from scorecard.ordering.changes import bends, breaks_of, cartons_of, cheapest_by_quantity
from scorecard.ordering.pricing import Pricing
from scorecard.ordering.sizes import settled


def stretches(start, end, *rows, **more):
    pricing = Pricing(inputs=settled(inputs(*rows, brief=wanting(200), **more)))
    return [(one.start, one.end, one.maker) for one in cheapest_by_quantity(pricing, start, end)]


def test_a_set_up_that_spreads_over_more_pieces_hands_over_at_the_piece():
    # 100 + 4.00 q against 4.50 q: level at 200, cheaper from 201 on; level goes to the first in sheet order
    rows = [
        *prices("Oxlip", 2, p1="4.50"),
        quote("4.00", row=9, pieces=1, covers="to my door, duty and tax paid", setup=100),
    ]

    assert [(100, 200, "Oxlip"), (201, 300, MAKER)] == stretches(100, 300, *rows)


def test_a_price_break_hands_over_at_its_first_piece():
    rows = [*prices(p1="5.00", p250="4.00"), *prices("Oxlip", 9, p1="4.50")]

    assert [(100, 249, "Oxlip"), (250, 300, MAKER)] == stretches(100, 300, *rows)


def test_one_maker_alone_is_the_cheapest_throughout():
    assert [(100, 300, MAKER)] == stretches(100, 300, *prices(p1="5.00", p250="4.00"))


def test_where_no_maker_has_every_cost_there_is_none():
    assert [(100, 300, None)] == stretches(100, 300, quote(5, covers="goods"))


def test_one_quantity_is_a_stretch():
    assert [(200, 200, MAKER)] == stretches(200, 200, *prices(p1="5.00"))


def rated(maker, row, pieces, kg, rate):
    carton = Carton(pieces=pieces, length_cm=1, width_cm=1, height_cm=1, kg=kg)
    return offer("express", maker=maker, row=row, rate_per_kg=rate, carton=carton, covers="door to door")


def brute(pricing, start, end):
    found = []
    for pieces in range(start, end + 1):
        maker = pricing.cheapest(pieces)
        if found and found[-1][2] == maker:
            found[-1] = (found[-1][0], pieces, maker)
        else:
            found.append((pieces, pieces, maker))
    return found


MONEY = st.decimals("1", 9, places=2)
PIECES = st.integers(20, 90)


@settings(max_examples=25, deadline=None)
@given(st.lists(MONEY, min_size=6, max_size=6), st.lists(PIECES, min_size=5, max_size=5), st.integers(0, 300))
def test_it_is_what_trying_every_quantity_finds(money, pieces, setup):
    first, second, third, fourth, kg, rate = money
    rows = [
        *prices(**{"p1": str(first), f"p{pieces[0]}": str(min(first, second))}),
        quote(third, maker="Oxlip", row=9, pieces=1, covers="goods", setup=setup),
        quote(fourth, maker="Oxlip", row=10, pieces=pieces[1]),
    ]
    made = inputs(
        *rows,
        brief=wanting(60, 3),
        makers=minimum(pieces[2], "order"),
        offers=(rated("Oxlip", 2, 7, kg, rate),),
        imports=None,
        shipping_charges=(charge("Duty", 20, "clearance", "duty"),),
    )
    pricing = Pricing(inputs=settled(made))
    found = [(one.start, one.end, one.maker) for one in cheapest_by_quantity(pricing, 20, 100)]

    assert brute(pricing, 20, 100) == found


def in_cartons(*pieces):
    return settled(
        inputs(quote(5, pieces=1), offers=[rated(MAKER, 2 + at, one, 4, 3) for at, one in enumerate(pieces)])
    )


BY_FIFTY = [100, 101, 150, 151, 200, 201, 250, 251, 300]


@pytest.mark.parametrize(
    ("cartons", "end", "expected"),
    [
        ([50], 300, BY_FIFTY),
        ([1], 220, [*range(100, 221)]),  # just the 120 that are kept
        ([1], 221, [100, 221]),
        ([50, 1], 300, BY_FIFTY),
    ],
)
def test_full_cartons_are_bends_and_very_many_are_left_out(cartons, end, expected):
    assert expected == bends(in_cartons(*cartons), 100, end)


def test_freight_rises_by_the_carton_only_where_it_has_a_rate():
    at_a_price = offer("sea", 90, row=9, carton=Carton(pieces=10, length_cm=1, width_cm=1, height_cm=1, kg=4))
    read = in_cartons(50, 24, 50)

    assert [24, 50] == cartons_of(replace(read, offers=(*read.offers, at_a_price)))


def test_a_price_and_an_offer_hold_from_their_first_piece_and_a_lot_and_an_offer_end_after_their_last():
    freight = (offer("sea", 90, from_pieces=80, to_pieces=250), offer("air", 40, row=3))
    lot = quote(700, row=5, pieces=200, price_is_for="all", way="sea", covers=ALL_PAID)
    read = inputs(*prices(p20="5.00", p100="4.00"), lot, quote(5, row=6, way="air"), offers=freight)

    assert [20, 80, 100, 200, 201, 251] == sorted(breaks_of(read))


@pytest.mark.parametrize(
    ("faulty", "expected"), [(0, [50, 99, 100, 101, 150]), (10, [50, 90, 91, 99, 100, 150])], ids=["none", "one in ten"]
)
def test_a_minimum_bends_where_more_are_wanted_than_are_good_of_it_and_where_it_is_reached(faulty, expected):
    # the least order is 100 pieces; of 10 % faulty 90 are good, so that 91 wanted share the cost of 90
    read = with_settings(inputs(*prices(p1="5.00"), makers=minimum(100)), faulty_percent=Decimal(faulty))

    assert expected == bends(settled(read), 50, 150)


def test_another_way_of_the_same_maker_is_no_change():
    # by air 4.50 q, by sea 100 + 4.00 q: from 201 on the same maker is cheaper by sea
    paid = {"pieces": 1, "covers": "to my door, duty and tax paid"}
    rows = [quote("4.50", row=2, way="air", setup=0, **paid), quote("4.00", row=3, way="sea", setup=100, **paid)]

    assert [(100, 300, MAKER)] == stretches(100, 300, *rows)


def test_another_way_of_the_same_maker_between_two_others_is_no_change():
    # Oxlip by air 4.50 from 100 on, by sea 20 + 4.40 q, which is less from 201 on
    rows = [
        *prices(p1="4.60", p250="4.20"),
        quote("6.00", maker="Oxlip", row=4, pieces=1, way="air", setup=0, covers=ALL_PAID),
        quote("4.50", maker="Oxlip", row=5, pieces=100, way="air", setup=0, covers=ALL_PAID),
        quote("4.40", maker="Oxlip", row=6, pieces=1, way="sea", setup=20, covers=ALL_PAID),
    ]

    assert [(50, 99, MAKER), (100, 249, "Oxlip"), (250, 300, MAKER)] == stretches(50, 300, *rows)


def test_who_may_be_cheaper_somewhere_in_a_stretch_is_its_rival_and_in_no_other():
    # Oxlip's middle is never the least, but from 100 to 149 it may be 4.00
    rows = [
        *prices(p1="5.00"),
        *prices("Oxlip", 5, p1="6.00", p100=("4.00", "8.00"), p150="6.00"),
        *prices("Sorrel", 9, p1="7.00", p250="3.00"),
    ]
    found = cheapest_by_quantity(Pricing(inputs=settled(inputs(*rows))), 50, 300)

    assert [(50, 249, MAKER, ("Oxlip",)), (250, 300, "Sorrel", ())] == [
        (one.start, one.end, one.maker, one.rivals) for one in found
    ]
