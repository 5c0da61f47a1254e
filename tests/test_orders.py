"""Which order is meant where none is named."""

from dataclasses import replace
from datetime import date

from scorecard.costing.quotes import QuoteRow
from scorecard.errors import Place
from scorecard.orders import OrderRow, latest, ordered_ways, to_inspect, under_way

FIRST = OrderRow(maker="Fernhill", row=2, ordered=date(2026, 3, 1))
SECOND = OrderRow(maker="Brightholm", row=3, deposit_paid=date(2026, 2, 1))
UNDATED = OrderRow(maker="Brightholm", row=4)


def test_the_latest_order_is_the_one_that_began_last():
    assert FIRST == latest([FIRST, SECOND, UNDATED])


def test_the_latest_order_of_a_maker_leaves_out_the_others():
    assert SECOND == latest([FIRST, SECOND, UNDATED], "Brightholm")


def test_of_two_orders_of_one_day_the_lower_row_is_the_latest():
    again = OrderRow(maker="Fernhill", row=7, ordered=date(2026, 3, 1))
    assert again == latest([FIRST, again])


def test_without_an_order_there_is_none():
    assert latest([FIRST], "Quillmoor") is None


def test_a_column_that_is_not_there_has_the_makers_cell():
    order = OrderRow(maker="Fernhill", row=2, places={"Maker": Place(cell="A2"), "Pieces": Place(cell="C2")})
    assert ["C2", "A2"] == [order.at("Pieces").cell, order.at("Complain until").cell]


CAME = OrderRow(maker="Brightholm", row=2, ordered=date(2026, 12, 1), arrived=date(2027, 2, 6))
UNDER_WAY = OrderRow(maker="Brightholm", row=3, ordered=date(2027, 2, 8))
COUNTED = OrderRow(maker="Brightholm", row=4, ordered=date(2026, 1, 5), arrived=date(2027, 3, 1), faulty=0)


def test_the_order_to_count_has_arrived_and_is_not_counted_though_others_were_placed_later():
    assert CAME == to_inspect([CAME, UNDER_WAY, COUNTED])


def test_where_all_that_came_is_counted_the_order_under_way_is_to_be_counted():
    assert UNDER_WAY == to_inspect([COUNTED, UNDER_WAY])


def test_where_all_is_counted_the_latest_order_is_meant():
    assert COUNTED == to_inspect([COUNTED])


def test_of_two_orders_that_came_the_one_that_came_last_is_to_be_counted():
    late = OrderRow(maker="Brightholm", row=5, ordered=date(2026, 11, 1), arrived=date(2027, 2, 9))
    assert late == to_inspect([late, CAME])


def test_the_order_to_count_is_the_makers_that_is_named():
    assert (CAME, None) == (to_inspect([CAME, FIRST], "Brightholm"), to_inspect([CAME], "Quillmoor"))


ROW = QuoteRow(maker="Fernhill", row=2, price=None, price_is_for="each", currency=None)


def quoted(day, maker="Fernhill"):
    return (replace(ROW, maker=maker, quoted_on=day),)


def test_an_order_that_has_not_arrived_is_under_way_whatever_is_quoted_since():
    assert FIRST == under_way([FIRST, SECOND], "Fernhill", quoted(date(2026, 9, 1)))


def test_an_order_that_has_arrived_is_over_once_its_maker_is_quoted_anew():
    came = replace(FIRST, arrived=date(2026, 5, 1))

    assert came == under_way([came], "Fernhill", quoted(date(2026, 3, 1)))
    assert came == under_way([came], "Fernhill", quoted(date(2026, 9, 1), maker="Brightholm"))
    assert under_way([came], "Fernhill", quoted(date(2026, 3, 2))) is None


def test_an_order_without_any_day_is_not_under_way():
    assert under_way([UNDATED], "Brightholm") is None


def test_the_ways_of_orders_are_those_of_the_latest_that_names_one():
    later = replace(FIRST, row=5, ordered=date(2026, 4, 1), way="road")

    assert {"Fernhill": "road"} == ordered_ways([replace(FIRST, way="air"), later, SECOND], ())


def test_the_last_day_to_complain_follows_from_arrival_unless_the_sheet_has_its_own():
    came = replace(FIRST, arrived=date(2027, 4, 17))
    own = replace(came, complain_until=date(2027, 4, 20))

    assert date(2027, 5, 17) == came.with_days(30).complain_until
    assert (own, came) == (own.with_days(30), came.with_days(None))
    assert (None, 30) == (FIRST.with_days(30).complain_until, FIRST.with_days(30).complain_days)
