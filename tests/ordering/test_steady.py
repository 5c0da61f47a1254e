"""The economic order quantity and price breaks, against published examples."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.ordering.steady import Tier, economic_order_quantity, sizes_with_breaks, yearly_cost

# Wohl's stores, as a study site prints the problem: D 5000, S 49, keeping 20 % of the price [stored; totals computed]
WOHL = (Tier(from_pieces=1, each=5.00), Tier(from_pieces=1000, each=4.80), Tier(from_pieces=2000, each=4.75))


def test_a_published_order_quantity():
    # Heizer and Render, Operations Management, the inventory example: D 1000, S 10, H 0.50 [stored]
    quantity = economic_order_quantity(1000, 10, 0.50)

    assert (200.0, 5.0) == (quantity, 1000 / quantity)


def test_its_ordering_and_keeping_cost_the_same():
    # the same: 50 + 50 = 100 a year, pieces left out [stored]
    assert pytest.approx(100.0) == yearly_cost(200, 1000, 10, Tier(from_pieces=1, each=0.0), 0.50)


def test_a_fifth_more_demand_raises_it_by_less():
    # the same, D 1200 [stored]
    assert 219 == round(economic_order_quantity(1200, 10, 0.50))


def test_the_order_quantity_of_each_published_price():
    economic = [economic_order_quantity(5000, 49, 0.2 * tier.each) for tier in WOHL]

    assert [700, 714, 718] == [round(one) for one in economic]


def test_a_published_price_break_is_worth_taking_and_the_next_is_not():
    found = sizes_with_breaks(5000, 49, 20, WOHL)

    assert [(700, 25700.00), (1000, 24725.00), (2000, 24822.50)] == [
        (round(one.quantity), round(one.cost, 2)) for one in found
    ]


def test_a_price_whose_own_quantity_lies_beyond_the_next_break_is_left_out():
    found = sizes_with_breaks(50000, 49, 20, WOHL)

    assert [2000] == [one.tier.from_pieces for one in found]


def test_a_price_that_rises_with_the_quantity_is_taken_up_to_its_last_piece():
    dearer = (Tier(from_pieces=1, each=5.0), Tier(from_pieces=100, each=6.0))

    assert 99 == sizes_with_breaks(5000, 49, 20, dearer)[0].quantity


@given(st.floats(1, 1e5), st.floats(0.1, 1e4), st.floats(0.01, 100), st.floats(0.2, 5))
def test_no_other_quantity_costs_less(demand, per_order, keeping, part):
    tier = Tier(from_pieces=1, each=3.0)
    best = economic_order_quantity(demand, per_order, keeping)
    costs = [yearly_cost(size, demand, per_order, tier, keeping) for size in (best, best * part)]

    assert costs[0] <= costs[1] * (1 + 1e-12)


@given(
    st.floats(100, 1e5), st.floats(1, 500), st.integers(1, 60), st.lists(st.integers(1, 400), max_size=4, unique=True)
)
def test_with_breaks_no_whole_quantity_costs_less(demand, per_order, holding, more):
    starts = [1, *sorted({1 + one for one in more})]
    tiers = [Tier(from_pieces=start, each=5.0 - 0.3 * at) for at, start in enumerate(starts)]
    best = min(one.cost for one in sizes_with_breaks(demand, per_order, holding, tiers))

    def cost(pieces):
        tier = [one for one in tiers if one.from_pieces <= pieces][-1]
        return yearly_cost(pieces, demand, per_order, tier, holding / 100 * tier.each)

    assert all(best <= cost(pieces) + 1e-6 for pieces in range(1, 800, 7))
