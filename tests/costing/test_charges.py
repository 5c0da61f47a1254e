"""The parts of a landed cost."""

from scorecard.costing.charges import ORIGIN_PARTS, PARTS


def test_the_parts_stand_in_the_order_of_the_journey():
    assert [*ORIGIN_PARTS] == [part for part in PARTS if part in ORIGIN_PARTS]
