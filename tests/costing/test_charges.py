"""The parts of a landed cost."""

from scorecard.costing.charges import ORIGIN_PARTS, PARTS, Charge


def test_the_parts_stand_in_the_order_of_the_journey():
    assert [*ORIGIN_PARTS] == [part for part in PARTS if part in ORIGIN_PARTS]


def test_a_charge_has_no_bounds_unless_they_are_given():
    fee = Charge(name="Fee", currency="GBP")

    assert (None, None) == (fee.minimum, fee.maximum)
