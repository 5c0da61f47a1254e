"""One maker at one order size, at every demand."""

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st
from quoted import MAKER, TODAY, inputs, quote
from sized import ALL_PAID, minimum, option, planned, prices, selling, wanting, with_settings

from scorecard.costing.amounts import Span
from scorecard.ordering.options import held_from, least_order, middle
from scorecard.ordering.plan import plan_of

MORE = Span(Decimal(5), None)  # 5.00 or more


def at(pieces, *rows, **more):
    return option(planned(*rows, **more), pieces)


def test_a_minimum_that_is_not_wanted_makes_the_piece_that_sells_dear():
    # 120 needed, minimum 300 at 2.10: 5.25 for each of the 120 unless the rest sells [computed]
    one = at(300, *prices(p1="2.10"), wanted=120, makers=minimum(300))

    assert (Decimal("630.00"), Decimal("2.1000"), Decimal("5.2500")) == (
        one.total[0],
        one.per_good[0],
        one.per_likely[0],
    )


def test_pieces_that_sell_are_no_more_than_are_likely_to():
    one = at(250, *prices(p250="4.00"), sold=selling(demand=(50, 80, 120)))

    assert (Decimal(80), Decimal("12.5000")) == (one.likely, one.per_likely[0])


def test_all_the_money_is_back_once_price_after_fees_covers_it():
    # 200 × 5.00 + 150 = 1150; 18.00 less 0.90 is 17.10; 67.3
    one = at(200, *prices(p1="5.00"), sold=selling("18.00", channel_fee_percent="5", fixed="150"))

    assert (68, 68) == one.break_even


def test_a_range_of_the_price_is_carried_through():
    # 5 to 6 each at 200: 1000 to 1200; kept 18
    one = at(200, quote((5, 6), pieces=1, covers="to my door, duty and tax paid"), sold=selling("18.00"))

    assert ((Decimal(1000), Decimal(1200)), (56, 67)) == (one.total, one.break_even)
    assert (Decimal("66.7"), Decimal("72.2")) == tuple(round(end, 1) for end in one.margin)


def test_what_is_left_at_each_demand():
    # 200 at 5.00; 18.00 each, 2.00 for one left over: 100 sell: 1800 + 200 − 1000 = 1000; all sell: 2600
    one = at(200, *prices(p1="5.00"), sold=selling("18.00", (100, 180, 260), unsold_worth="2.00"))
    left = {case: outcome.left[0] for case, outcome in one.outcomes.items()}

    assert {"low": Decimal(1000), "likely": Decimal(2280), "high": Decimal(2600)} == left


def test_money_left_in_unsold_stock_is_what_those_pieces_cost():
    one = at(200, *prices(p1="5.00"), sold=selling("18.00", (100, 180, 260)))

    assert [Decimal(500), Decimal(100), Decimal(0)] == [each.tied_up[0] for each in one.outcomes.values()]


def test_faulty_pieces_are_not_sold():
    read = with_settings(inputs(*prices(p1="5.00")), faulty_percent=Decimal(3))
    one = option(plan_of(read, selling("18.00", 500), ["Fernhill"]), 200)

    assert (Decimal(194), Decimal("5.1546")) == (one.good, one.per_likely[0])


def test_without_a_demand_what_is_wanted_is_likely_to_sell():
    one = at(250, *prices(p250="4.00"))

    assert (["likely"], Decimal(200)) == (list(one.outcomes), one.likely)


def test_an_order_of_which_nothing_is_likely_to_sell_has_no_cost_by_the_piece():
    one = at(200, *prices(p1="5.00"), sold=selling(demand=0))

    assert not one.per_likely[0].is_finite()


def test_a_missing_cost_or_one_without_an_end_leaves_an_option_incomplete():
    rows = [quote(price, pieces=1, covers=covers) for price, covers in ((5, ALL_PAID), (5, "goods"), (MORE, ALL_PAID))]

    assert [True, False, False] == [at(200, row).is_complete for row in rows]


def due(price, days, *, by=60):
    """Return 200 pieces that are so many days under way, needed after 60 days."""
    row = quote(price, pieces=1, covers=ALL_PAID, days=days)
    brief = replace(wanting(200), need_by=by and TODAY + timedelta(by))
    return option(plan_of(inputs(row, brief=brief), selling("12.00"), [MAKER]), 200)


def test_how_it_stands_against_the_need_by_date():
    found = [due("5.00", days) for days in (60, 61, None)]

    assert ([MAKER] * 3, ["yes", "no", "unknown"]) == ([one.maker for one in found], [one.in_time for one in found])
    assert ["in time", "too late", None] == [one.status for one in found]


def test_without_a_need_by_date_it_does_not_stand_at_all():
    assert (None, None) == (due("5.00", 90, by=None).in_time, due("5.00", 90, by=None).status)


def test_what_comes_in_time_or_may_is_worth_more_than_what_is_late_though_it_leaves_less():
    late, open_, punctual = due("3.00", 61), due("5.00", None), due("4.00", 60)

    assert [late, open_, punctual] == sorted([punctual, late, open_], key=lambda one: one.worth)
    assert late.promise > punctual.promise > open_.promise


def test_on_average_it_leaves_three_four_and_three_tenths_of_what_each_demand_leaves():
    # 100 sold leave 800, 180 leave 2240, all 200 leave 2600: 240 + 896 + 780
    one = at(200, *prices(p1="5.00"), sold=selling("18.00", (100, 180, 260)))

    assert Decimal(1916) == one.promise


def test_with_the_likely_demand_alone_it_leaves_what_that_leaves():
    assert Decimal(2240) == at(200, *prices(p1="5.00"), sold=selling("18.00", 180)).promise


def test_the_least_order_is_of_the_maker_and_the_least_at_a_price_of_its_row():
    # (the least order, the least at the price of these pieces) of a row without pieces, of breaks, of a minimum of 40
    rows = ([quote(5, covers=ALL_PAID)], prices(p100="5.00", p250="4.00"), prices(p1="5.00"))
    found = [
        at(300, *each, wanted=300, makers=makers) for each, makers in zip(rows, (None, None, minimum(40)), strict=True)
    ]

    assert [(1, 1), (100, 250), (40, 40)] == [(least_order(one), held_from(one)) for one in found]


def test_the_least_order_is_that_of_the_reply_that_asks_for_the_fewest():
    # 200 come out cheapest as a lot by sea; by air the maker takes 30
    lot = quote(700, row=5, pieces=200, price_is_for="all", way="sea", covers=ALL_PAID)
    one = at(200, lot, quote("5.00", row=6, pieces=30, way="air", covers=ALL_PAID))

    assert (700, 30, 200) == (one.total[0], least_order(one), held_from(one))


def test_of_an_open_minimum_the_most_counts_and_no_more_than_is_ordered():
    # 100 an order or a design, of 4 designs
    plan = plan_of(inputs(*prices(p1="5"), brief=wanting(500, 4), makers=minimum(100, None)), selling(), [MAKER])

    assert {100: 100, 400: 400, 500: 400} == {one.pieces: least_order(one) for one in plan.makers[0].options}


DEMANDS = st.lists(st.integers(0, 900), min_size=3, max_size=3).map(sorted)


@given(DEMANDS, st.integers(1, 600), st.decimals("0.1", 30, places=2), st.decimals(0, 3, places=2))
def test_sold_and_unsold_add_up_and_more_demand_never_leaves_less(figures, pieces, price, worth):
    sold = selling("18.00", tuple(figures), unsold_worth=worth)
    one = at(pieces, *prices(p1=str(price)), sold=sold, wanted=pieces)
    outcomes = list(one.outcomes.values())

    assert all(each.sold + each.unsold == one.good for each in outcomes)
    assert sorted(middle(each.left) for each in outcomes) == [middle(each.left) for each in outcomes]
