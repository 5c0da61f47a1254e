"""Digests of what a measure draws on: the same while the maker's own cells are."""

from dataclasses import replace

from cases import make_case, numbers

from scorecard.costing.amounts import Span
from scorecard.drawn_from import SEEN, drawn_from
from scorecard.measures import MEASURES
from scorecard.orders import OrderRow

MEASURED = replace(numbers("late", 1, (0, 0), (10, 100)), column=None, measure="on_time_share")


def digests(*orders):
    case = make_case([MEASURED], {"Fernhill": [None], "Dale": [None]})
    return drawn_from(replace(case, orders=orders), MEASURED, [0, 1])


def test_every_measure_has_what_it_draws_on():
    assert set(MEASURES) == set(SEEN)


def test_a_column_has_none():
    case = make_case([numbers("a", 1, (0, 0), (10, 100))], {"Fernhill": [3]})

    assert drawn_from(case, case.criteria.criteria[0], [0]) is None


def test_only_the_maker_whose_cells_changed_has_another():
    before, now = digests(), digests(OrderRow(maker="Dale", row=4, pieces=200, paid=Span.of(90)))

    assert (True, False) == (before[0] == now[0], before[1] == now[1])


def test_a_row_that_only_moved_is_nothing_new():
    assert digests(OrderRow(maker="Dale", row=4, pieces=200)) == digests(OrderRow(maker="Dale", row=9, pieces=200))
