"""How many to order: max(wanted, minimum) in each unit."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.brief import Brief
from scorecard.costing.amounts import Span
from scorecard.costing.entries import Gap
from scorecard.costing.inputs import MakerFacts
from scorecard.costing.quantities import even_split, minimum_gaps, order_quantities, ordered, possible_units, why_more

MUGS = Brief(item="mug", quantity=200, designs=4)


def quantities(minimum, unit, brief=MUGS, least=None):
    return order_quantities(brief, MakerFacts(maker="Fernhill", minimum=minimum, minimum_per=unit), least)


@pytest.mark.parametrize(
    ("minimum", "unit", "expected"),
    [
        (Span.of(250), "order", (250,)),
        (Span.of(100), "order", (200,)),
        (Span.of(100), "design", (400,)),  # 4 designs of at least 100
        (Span.of(50), "design", (200,)),
        (Span.of(100), None, (200, 400)),  # per order, or per design
        (Span.of(150), None, (200, 600)),
        (Span.of(60, 80), "design", (240, 320)),
        (Span(Decimal(300), None), "order", (300,)),
        (None, None, (200,)),
    ],
)
def test_the_minimum_counts_in_its_own_unit(minimum, unit, expected):
    assert expected == quantities(minimum, unit)


def test_a_minimum_per_design_counts_for_each_part_of_an_uneven_split():
    # 67, 67, 66 pieces, at least 67 each: 201
    assert (201,) == quantities(Span.of(67), "design", Brief(item="mug", quantity=200, designs=3))


def test_where_the_brief_names_no_colours_one_is_counted_and_their_number_is_a_gap():
    facts = MakerFacts(maker="Fernhill", minimum=Span.of(60), minimum_per="colour")
    words = "minimum order of 60 per colour: how many colours? Add colours = … under [brief] of the criteria file"

    assert (1,) == possible_units(MUGS, "colour")
    assert [Gap("how many colours", f"{words}; until then one is counted")] == minimum_gaps(MUGS, facts)


@pytest.mark.parametrize(
    ("minimum", "unit", "brief"),
    [
        (None, "colour", MUGS),
        (Span.of(1), "size", MUGS),  # every size has a piece
        (Span.of(60), "design", MUGS),
        (Span.of(60), None, MUGS),
        (Span.of(60), "size", Brief(item="mug", quantity=200, sizes=3)),
    ],
)
def test_a_number_of_units_that_is_known_or_changes_nothing_is_no_gap(minimum, unit, brief):
    assert [] == minimum_gaps(brief, MakerFacts(maker="A", minimum=minimum, minimum_per=unit))


@pytest.mark.parametrize("minimum", [Span.of(2), Span.of(1, 2), Span(Decimal(1), None)])
def test_a_minimum_that_may_be_above_a_piece_of_unknown_units_is_a_gap(minimum):
    facts = MakerFacts(maker="A", minimum=minimum, minimum_per="size")

    assert ["how many sizes"] == [gap.name for gap in minimum_gaps(MUGS, facts)]


def test_where_no_minimum_is_known_a_design_need_not_have_a_piece():
    assert (3,) == quantities(None, None, Brief(item="mug", quantity=3, designs=4))


def test_no_less_is_ordered_than_was_quoted():
    assert (250,) == quantities(Span.of(100), "order", least=250)


def test_why_more_is_ordered_names_the_minimum_and_the_surplus():
    facts = MakerFacts(maker="Fernhill", minimum=Span.of(100), minimum_per="design")

    assert "400 pieces, 200 more than wanted: the minimum order is 100 per design" == why_more(MUGS, facts, 400)


def test_why_more_is_ordered_names_a_minimum_that_may_be_per_order_or_per_design():
    facts = MakerFacts(maker="Fernhill", minimum=Span.of(100))
    words = "400 pieces, 200 more than wanted: the minimum order is 100 per order or per design"

    assert words == why_more(MUGS, facts, 400)


def test_why_more_is_ordered_names_the_least_quantity_quoted():
    assert "250 pieces, 50 more than wanted: the least quantity quoted" == why_more(MUGS, MakerFacts(maker="A"), 250)


def test_a_minimum_per_order_is_not_blamed_for_what_was_quoted():
    facts = MakerFacts(maker="Fernhill", minimum=Span.of(100), minimum_per="order")

    assert "250 pieces, 50 more than wanted: the least quantity quoted" == why_more(MUGS, facts, 250)


def test_nothing_is_said_where_no_more_is_ordered():
    assert "" == why_more(MUGS, MakerFacts(maker="A"), 200)


@given(st.integers(1, 5000), st.integers(1, 40))
def test_an_even_split_keeps_every_piece_and_differs_by_one_at_most(quantity, units):
    parts = even_split(quantity, units)

    assert (quantity, units) == (sum(parts), len(parts))
    assert max(parts) - min(parts) <= 1


@given(st.integers(1, 5000), st.integers(1, 40), st.integers(0, 500))
def test_no_fewer_are_ordered_than_wanted_or_than_each_minimum(quantity, units, minimum):
    assert ordered(quantity, units, minimum) >= max(quantity, units * minimum)


def test_why_more_is_ordered_names_an_open_minimum_as_at_least():
    facts = MakerFacts(maker="A", minimum=Span(Decimal(300), None), minimum_per="order")

    assert "300 pieces, 100 more than wanted: the minimum order is at least 300 per order" == why_more(MUGS, facts, 300)


def test_why_more_is_ordered_names_both_ends_of_a_minimum():
    facts = MakerFacts(maker="A", minimum=Span.of(60, 80), minimum_per="design")

    assert "320 pieces, 120 more than wanted: the minimum order is 60 to 80 per design" == why_more(MUGS, facts, 320)
