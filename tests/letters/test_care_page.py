"""Care cards: where they are cut, and what stands on them."""

import re
from datetime import UTC, datetime

import pytest

from scorecard.care import CareFacts, care_card
from scorecard.letters.care_page import SHAPES, care_page, cut_marks, grid_of

MADE = datetime(2026, 11, 25, 10, tzinfo=UTC)
FACTS = CareFacts(touches_food=True, for_children=False, flame="neither", sender="Ann Example, 1 Quay Street")


def page(answer="wash by hand; not for the microwave", item="enamel mug", per_page=8, pieces=200):
    return care_page(care_card(item, answer, FACTS), ["Mind this"], per_page=per_page, pieces=pieces, made=MADE)


def test_eight_cards_of_90_by_66_mm_stand_on_an_a4_page():
    grid = grid_of(8)
    assert ((15, 105, 195), (16.5, 82.5, 148.5, 214.5, 280.5)) == (grid.across, grid.down)


@pytest.mark.parametrize("per_page", SHAPES)
def test_every_cut_has_a_tick_at_both_ends_and_a_cross_where_cuts_meet_within(per_page):
    columns, rows = SHAPES[per_page]
    ticks, crosses = 2 * (columns + 1) + 2 * (rows + 1), (columns - 1) * (rows - 1)
    assert ticks + 2 * crosses == cut_marks(grid_of(per_page)).count("M")


@pytest.mark.parametrize("per_page", SHAPES)
def test_marks_stay_on_the_paper_and_ticks_off_the_cards(per_page):
    grid = grid_of(per_page)
    numbers = re.findall(r"[ML]([\d.]+) ([\d.]+)", cut_marks(grid))
    points = [(float(x), float(y)) for x, y in numbers]
    assert all(3 <= x <= 207 and 3 <= y <= 294 for x, y in points)
    inside = [(x, y) for x, y in points if grid.across[0] < x < grid.across[-1] and grid.down[0] < y < grid.down[-1]]
    columns, rows = SHAPES[per_page]
    assert 4 * (columns - 1) * (rows - 1) == len(inside)  # the four arms of each cross


@pytest.mark.parametrize("per_page", SHAPES)
def test_so_many_cards_hold_the_same_words(per_page):
    html = page(per_page=per_page)
    assert [per_page] * 4 == [
        html.count(words)
        for words in ("<li><bdi>Wash by hand", "Wash before first use", "Not a toy", "<footer><bdi>Ann Example")
    ]


def test_the_page_says_how_often_to_print_it():
    assert "for 200 pieces print it 25 times" in page()


def test_words_are_escaped():
    assert "&lt;script&gt;" in page("<script>alert(1)</script>")


def test_the_same_card_and_time_give_the_same_bytes():
    assert page() == page()


def test_no_care_symbol_is_drawn():
    assert 1 == page().count("<path")  # the cut marks
