"""The economic order quantity, against published examples."""

from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.ordering.steady import economic_order_quantity, yearly_cost


def test_a_published_order_quantity():
    # Heizer and Render, Operations Management, the inventory example: D 1000, S 10, H 0.50 [stored]
    quantity = economic_order_quantity(1000, 10, 0.50)

    assert (200.0, 5.0) == (quantity, 1000 / quantity)


def test_its_ordering_and_keeping_cost_the_same():
    # the same: 50 + 50 = 100 a year, pieces left out [stored]
    assert pytest.approx(100.0) == yearly_cost(200, 1000, 10, 0.50)


def test_a_fifth_more_demand_raises_it_by_less():
    # the same, D 1200 [stored]
    assert 219 == round(economic_order_quantity(1200, 10, 0.50))


def test_the_order_quantity_of_each_published_price():
    # Wohl's stores, as a study site prints the problem: D 5000, S 49, keeping 20 % of the price [stored]
    economic = [economic_order_quantity(5000, 49, 0.2 * each) for each in (5.00, 4.80, 4.75)]

    assert [700, 714, 718] == [round(one) for one in economic]


def test_what_costs_nothing_to_keep_has_no_end():
    assert inf == economic_order_quantity(1000, 10, 0)


def test_where_an_order_costs_less_than_nothing_the_least_is_best():
    assert 0.0 == economic_order_quantity(1000, -10, 0.50)


@given(st.floats(1, 1e5), st.floats(0.1, 1e4), st.floats(0.01, 100), st.floats(0.2, 5))
def test_no_other_quantity_costs_less(demand, per_order, keeping, part):
    best = economic_order_quantity(demand, per_order, keeping)
    costs = [yearly_cost(size, demand, per_order, keeping) for size in (best, best * part)]

    assert costs[0] <= costs[1] * (1 + 1e-12)
