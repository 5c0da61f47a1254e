"""Costs at any quantity."""

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

from quoted import MAKER, TODAY, inputs, quote
from sized import ALL_PAID, planned, prices, wanting

from scorecard.ordering.pricing import Pricing, is_late
from scorecard.ordering.sizes import settled


def pricing(*rows, **more):
    return Pricing(inputs=settled(inputs(*rows, **more)))


def test_the_cheapest_is_that_of_the_cheapest_good_piece():
    two = pricing(*prices(p1="5.00", p300="4.00"), *prices("Oxlip", 9, p1="4.50"))

    assert ["Oxlip", MAKER] == [two.cheapest(200), two.cheapest(300)]


def test_a_maker_with_a_cost_missing_is_never_the_cheapest():
    two = pricing(*prices(p1="5.00"), quote(1, maker="Oxlip", row=9, covers="goods"))

    assert (MAKER, None) == (two.cheapest(200), two.total("Oxlip", 200))


def test_the_total_is_the_middle_of_a_range():
    assert Decimal(1100) == pricing(quote((5, 6), covers=ALL_PAID)).total(MAKER, 200)


def test_the_cheapest_line_names_maker_reply_and_way():
    assert (MAKER, 2, "sea") == pricing(quote(5, covers=ALL_PAID, way="sea")).line(200)


def test_without_any_cost_known_there_is_no_cheapest():
    assert pricing(quote(5, covers="goods")).line(200) is None


def test_a_way_whose_late_end_is_past_the_need_by_date_is_late():
    read = replace(inputs(quote(5, covers=ALL_PAID, days=(10, 40))), brief=wanting(200))
    needed = replace(read.brief, need_by=TODAY + timedelta(days=30))
    (cost,) = Pricing(inputs=replace(read, brief=needed)).at(200)

    assert (True, False) == (is_late(cost, replace(read, brief=needed)), is_late(cost, read))


def test_each_quantity_is_worked_out_once():
    plan = planned(*prices(p1="5.00"))

    assert plan.pricing.at(321) is plan.pricing.at(321)
