"""Which order is meant where none is named."""

from datetime import date

from scorecard.errors import Place
from scorecard.orders import OrderRow, latest

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
