"""What stands on a care card."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.care import ADVICE, FLAMES, GOODS, CareFacts, care_card, care_lines, promises_dishwasher, usual_cautions

NOTHING = CareFacts(touches_food=False, for_children=None, flame="neither")


def cautions(**facts):
    return list(usual_cautions(CareFacts(**facts)))


def test_an_answer_is_parted_by_semicolons_and_line_breaks():
    assert ("Wash by hand", "Not for the microwave", "Dry at once") == care_lines(
        " wash  by hand;not for the microwave.\n;\r\ndry at once"
    )


def test_of_what_nobody_has_said_there_is_no_caution():
    assert [] == cautions()


def test_food_contact_has_its_caution():
    (told,) = cautions(touches_food=True)
    assert "Wash before first use" in told


def test_nothing_made_of_cloth_is_said_to_chip():
    assert ["Wash before first use"] == cautions(touches_food=True, goods="textiles")
    assert "chipped" in cautions(touches_food=True, goods="tableware")[0]
    assert "chipped" not in cautions(touches_food=True)[0]


def test_each_kind_of_goods_is_asked_about_in_its_own_words():
    assert {*GOODS, None} == set(ADVICE)
    assert all(word in ADVICE["textiles"] for word in ("temperature", "bleach", "tumble", "iron", "dry clean"))
    assert ["tableware"] == [goods for goods, words in ADVICE.items() if "dishwasher" in words]


@pytest.mark.parametrize(("for_children", "told"), [(True, "with an adult near"), (False, "Not a toy")])
def test_children_have_a_caution_either_way(for_children, told):
    (caution,) = cautions(for_children=for_children)
    assert told in caution


@pytest.mark.parametrize(
    ("flame", "told"), [("burns", "Keep away from fire"), ("holds a flame", "Never leave a flame")]
)
def test_what_burns_and_what_holds_a_flame_have_their_cautions(flame, told):
    (caution,) = cautions(flame=flame)
    assert told in caution


def test_what_neither_burns_nor_holds_a_flame_has_no_caution():
    assert [] == cautions(flame="neither")


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("Dishwasher safe", True),
        ("dish-washer proof", True),
        ("Dishwasher safe to 125 cycles", False),
        ("Not dishwasher safe", False),
        ("Dishwasher up to 60 degrees", True),
        ("Dishwasher safe since 2024", True),
        ("Dishwasher: 500 wash cycles", False),
        ("Dishwasher safe, 125 times", False),
        ("Dishwasher 250x", False),
        ("Hand wash, dishwasher fades it", False),
        ("Wash by hand", False),
    ],
)
def test_a_dishwasher_without_cycles_is_a_doubtful_promise(line, expected):
    assert expected == promises_dishwasher(line)


@pytest.mark.parametrize(("lines", "per_page"), [(3, 8), (9, 8), (10, 4), (23, 4), (24, None)])
def test_the_more_there_is_to_say_the_larger_the_cards(lines, per_page):
    assert per_page == care_card("mug", ";".join(["dry"] * lines), NOTHING).per_page


def test_few_long_lines_take_the_widest_cards():
    assert 2 == care_card("mug", ";".join(["dry " * 20] * 20), NOTHING).per_page  # 79 letters each


def test_wide_letters_take_twice_the_room():
    short, wide = "a" * 46 + ";", "釉" * 46 + ";"
    assert (8, 4) == (care_card("m", short * 8, NOTHING).per_page, care_card("m", wide * 8, NOTHING).per_page)


@given(st.text(), st.sampled_from(FLAMES))
def test_no_answer_breaks_a_card(answer, flame):
    card = care_card("mug", answer, CareFacts(touches_food=True, for_children=True, flame=flame))
    assert all(line == line.strip() and line for line in card.lines)
