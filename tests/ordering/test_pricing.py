"""Costs at any quantity."""

from decimal import Decimal

from quoted import MAKER, inputs, quote
from sized import ALL_PAID, planned, prices

from scorecard.costing.amounts import Span
from scorecard.ordering.pricing import Pricing
from scorecard.ordering.sizes import settled


def pricing(*rows, **more):
    return Pricing(inputs=settled(inputs(*rows, **more)))


def test_the_cheapest_is_that_of_the_cheapest_good_piece():
    two = pricing(*prices(p1="5.00", p300="4.00"), *prices("Oxlip", 9, p1="4.50"))

    assert ["Oxlip", MAKER] == [two.cheapest(200), two.cheapest(300)]


def test_a_maker_with_a_cost_missing_is_never_the_cheapest():
    two = pricing(*prices(p1="5.00"), quote(1, maker="Oxlip", row=9, covers="goods"))

    assert (MAKER, None) == (two.cheapest(200), two.total("Oxlip", 200))


def test_where_no_cost_has_an_end_the_least_of_them_counts():
    open_ones = [
        quote(Span(Decimal(price), None), maker=maker, row=row, covers=ALL_PAID)
        for maker, row, price in ((MAKER, 2, 5), ("Oxlip", 3, 4))
    ]

    assert ("Oxlip", (MAKER,)) == (pricing(*open_ones).cheapest(200), pricing(*open_ones).rivals(200))


def test_who_may_be_cheaper_is_told():
    ranged = [quote((5, 7), covers=ALL_PAID), quote("5.50", maker="Oxlip", row=3, covers=ALL_PAID)]
    lacks = quote(1, maker="Tansy", row=4, covers="goods")

    assert ("Oxlip", ("Tansy", MAKER)) == (pricing(*ranged).cheapest(200), pricing(*ranged, lacks).rivals(200))


def test_the_total_is_the_middle_of_a_range():
    assert Decimal(1100) == pricing(quote((5, 6), covers=ALL_PAID)).total(MAKER, 200)


def test_the_cheapest_line_names_maker_reply_and_way():
    assert (MAKER, 2, "sea") == pricing(quote(5, covers=ALL_PAID, way="sea")).line(200)


def test_without_any_cost_known_there_is_no_cheapest():
    assert pricing(quote(5, covers="goods")).line(200) is None


def test_each_quantity_is_worked_out_once():
    plan = planned(*prices(p1="5.00"))

    assert plan.pricing.at(321) is plan.pricing.at(321)
