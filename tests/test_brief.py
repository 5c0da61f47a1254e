"""The brief: pieces of one unit."""

import pytest

from scorecard.brief import UNITS, Brief

MUGS = Brief(item="enamel mug", quantity=200, designs=4, colours=2)


@pytest.mark.parametrize(("unit", "pieces"), [("order", 200), ("design", 50), ("colour", 100), ("size", None)])
def test_pieces_are_split_evenly_over_the_units(unit, pieces):
    assert pieces == MUGS.pieces_per(unit)


def test_every_unit_can_be_asked_for():
    assert [200, 50, 100, None] == [MUGS.pieces_per(unit) for unit in UNITS]


def test_an_unknown_unit_holds_one_design_or_the_whole_order():
    assert (50.0, 200.0) == MUGS.possible_pieces_per(None)


def test_of_one_design_an_unknown_unit_is_no_question():
    assert (200.0, 200.0) == Brief(item="enamel mug", quantity=200).possible_pieces_per(None)


def test_of_a_unit_whose_number_is_not_said_one_may_hold_a_piece_or_the_whole_order():
    assert (1.0, 200.0) == MUGS.possible_pieces_per("size")


def test_of_a_unit_whose_number_is_said_each_holds_its_part():
    assert (50.0, 50.0) == MUGS.possible_pieces_per("design")
