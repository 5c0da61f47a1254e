"""Which order is meant where none is named."""

from datetime import date

from scorecard.errors import Place
from scorecard.orders import OrderRow, latest, to_inspect

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
