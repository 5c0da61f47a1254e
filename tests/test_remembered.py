"""What a case remembers of own orders, from the sheet and from what is kept."""

from dataclasses import replace
from datetime import date

from cases import AS_OF, make_case, numbers

from scorecard.measures import measured
from scorecard.memory import Record
from scorecard.orders import OrderRow
from scorecard.remembered import own_orders_of, totals_of

DAY, PROMISED = date(2026, 9, 1), date(2026, 10, 1)
KEPT = Record(maker="FERNHILL", item="mug", ordered=DAY, pieces=100, promised=PROMISED, arrived=PROMISED, faulty=4)


def case(memory=(), orders=()):
    made = make_case([numbers("years", 1)], {"Fernhill": [3], "Brightholm": [4]})
    return replace(made, memory=memory, orders=orders)


def test_without_an_order_there_is_nothing():
    assert ((), {}) == (own_orders_of(case()), totals_of(case(), AS_OF))


def test_an_order_in_the_sheet_and_kept_is_one():
    row = OrderRow(maker="Fernhill", row=2, ordered=DAY, pieces=100, faulty=5)

    assert [5] == [one.faulty for one in own_orders_of(case((KEPT,), (row,)))]


def test_totals_go_by_the_spelling_of_the_sheet():
    assert ["Fernhill"] == list(totals_of(case((KEPT,)), AS_OF))


def test_what_is_kept_of_a_maker_that_is_gone_is_left_out():
    assert {} == totals_of(case((replace(KEPT, maker="Dale"),)), AS_OF)


def test_the_measures_are_shares_of_100_and_unknown_without_an_order():
    made = case((KEPT, replace(KEPT, ordered=date(2026, 3, 1), arrived=date(2026, 10, 2), faulty=None)))
    shares = [measured(name, made, AS_OF).low.tolist() for name in ("on_time_share", "faulty_share")]

    # 1 of 2 by the day; 4 of the 100 pieces that were counted
    assert (50.0, 4.0) == (shares[0][0], shares[1][0])
    assert all(share[1] != share[1] for share in shares)
