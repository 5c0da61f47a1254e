"""What the placeholders stand for, known or blank."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.brief import Brief
from scorecard.letters.values import (
    PLACEHOLDERS,
    designs_words,
    next_quantity,
    numbered,
    print_size_words,
    values_for,
    values_of_maker,
)

TODAY = date(2026, 11, 25)


def all_values(brief, **of_maker):
    own = {"maker": "Oxlip", "questions": ["Why?"], "asked_on": None, "waited": 0} | of_maker
    return values_for(brief, TODAY) | values_of_maker(**own)


def test_every_placeholder_has_a_value_and_no_value_is_without_its_placeholder():
    assert set(PLACEHOLDERS) == set(all_values(Brief(item="mug", quantity=200)))


def test_what_is_blank_reads_as_words_or_leaves_its_line_out():
    values = all_values(Brief(item="mug", quantity=200))

    assert {
        "maker": "Oxlip",
        "questions": "1. Why?",
        "item": "mug",
        "quantity": "200",
        "next_quantity": "300",
        "designs": "1",
        "print_size": "",
        "destination": "not decided yet",
        "currency": "your currency",
        "need_by": "",
        "today": "25 November 2026",
        "asked_on": "recently",
        "waited": "some working days",
        "care_advice": "washing or cleaning, and what wears the print",
        "your_name": "[your name]",
    } == values


def test_what_is_known_is_said():
    brief = Brief(
        item="mug",
        quantity=200,
        designs=4,
        colours=2,
        destination="IE",
        currency="EUR",
        need_by=date(2027, 5, 14),
        print_width_mm=180,
        print_height_mm=80,
    )
    values = all_values(brief, asked_on=date(2026, 11, 13), waited=8)

    assert {
        "designs": "4 (50 pieces of each); colours of the goods: 2",
        "print_size": "180 mm wide, 80 mm high",
        "destination": "Ireland",
        "currency": "EUR",
        "need_by": "14 May 2027",
        "asked_on": "on 13 November 2026",
        "waited": "8 working days",
    }.items() <= values.items()


def test_pieces_that_do_not_divide_are_in_equal_parts():
    assert "3 (in equal parts)" == designs_words(Brief(item="mug", quantity=200, designs=3))


def test_one_side_of_a_print_is_said_alone():
    assert "80 mm high" == print_size_words(Brief(item="mug", quantity=1, print_height_mm=80))


@pytest.mark.parametrize(
    ("quantity", "up"),
    [(1, 2), (9, 10), (10, 20), (50, 100), (99, 100), (100, 200), (200, 300), (300, 500), (500, 1000), (1000, 2000)],
)
def test_the_next_quantity_is_the_next_step_of_1_2_3_5(quantity, up):  # common practice, no source
    assert up == next_quantity(quantity)


@given(st.integers(1, 10**12))
def test_the_next_quantity_is_above_and_at_most_twice_as_much(quantity):
    assert quantity < next_quantity(quantity) <= 2 * quantity


def test_questions_are_numbered_lines():
    assert "1. Why?\n2. How?" == numbered(["Why?", "How?"])


def test_a_name_cannot_add_lines_to_a_message():
    values = all_values(Brief(item="mug\nPay now", quantity=1), maker="Oxlip\r\nPay now")

    assert ("Oxlip Pay now", "mug Pay now") == (values["maker"], values["item"])
