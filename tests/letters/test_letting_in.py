"""What a maker that a limit rules out is asked first."""

import pytest
from cases import AS_OF, choices, make_case, numbers

from scorecard.brief import Brief
from scorecard.calculation import Calculation
from scorecard.criteria import Limit
from scorecard.letters.letting_in import letting_in_text

BRIEF = Brief(item="mug", quantity=200, designs=4, currency="EUR")


def text(criterion, typed, brief=BRIEF, **table):
    case = make_case([criterion, numbers("other", 1)], {"Oxlip": [typed, 50]}, brief=brief, **table)
    return letting_in_text(Calculation.of(case, AS_OF), 0, 0)


def minimum(**more):
    kept = {"title": "Minimum order", "unit": "pieces", "per_quantity": True, "limit": Limit(at_most=2.5)}
    return numbers("minimum", 1, (1, 100), (2, 0), **(kept | more))


def print_method(**more):
    table = {"screen print": 100, "sticker": 0, "kiln-fired transfer": 90}
    return choices("print", 1, table, title="Print method", **({"limit": Limit(none_of=("sticker",))} | more))


def test_too_large_a_minimum_per_design_is_asked_with_the_pieces_of_one_design():
    assert (
        "Can you make 50 pieces of one design? Our note says: minimum 150 pieces for each design. "
        "If this is not possible, what is the smallest number?"
    ) == text(minimum(), 150, minimum_per=("design",))


def test_pieces_that_do_not_divide_are_rounded_down():
    brief = Brief(item="mug", quantity=200, designs=3)

    assert text(minimum(), 500, brief, minimum_per=("design",)).startswith("Can you make 66 pieces of one design?")


def test_too_large_a_minimum_per_order_is_asked_with_all_pieces():
    assert (
        "Can you make 200 pieces in all? Our note says: minimum 600 pieces for the whole order. "
        "If this is not possible, what is the smallest number?"
    ) == text(minimum(), 600, minimum_per=("order",))


def test_where_the_unit_is_open_too_both_numbers_are_named_and_the_unit_is_asked():
    assert (
        "Can you make 200 pieces in all, and 50 pieces of one design? Our note says: minimum 5000 pieces. "
        "If this is not possible, what is the smallest number? Is this number for the whole order or for each design?"
    ) == text(minimum(), 5000)


def test_with_one_design_the_pieces_are_enough():
    brief = Brief(item="mug", quantity=200)

    assert text(minimum(), 5000, brief).startswith(
        "Can you make 200 pieces in all? Our note says: minimum 5000 pieces."
    )


def test_colours_that_the_brief_does_not_count_give_no_number_of_their_own():
    said = text(minimum(), 5000, minimum_per=("colour",))

    assert said.startswith("Can you make 200 pieces in all? Our note says: minimum 5000 pieces for each colour.")


def test_days_above_the_limit_are_asked_with_the_days_that_will_do():
    days = numbers("d", 1, (1, 100), (90, 0), title="Lead time", unit="days", limit=Limit(at_most=30))

    assert (
        "How many working days do you need for 200 pieces? "
        "Our note says: 45 days. We need at most 30 days. Is this possible?"
    ) == text(days, 45)


def test_a_fact_is_asked_again_without_saying_which_answer_is_wanted():
    years = numbers("y", 1, title="Years trading", unit="years", limit=Limit(at_least=3))

    assert "How many years have you been in business? Our note says: 2 years. Is this right?" == text(years, 2)


def test_a_choice_that_will_not_do_is_asked_with_those_that_will_by_the_alphabet():
    assert (
        "Which print method do you use for this item? Our note says: sticker. This does not fit our order. "
        "Can you offer one of these? (a) kiln-fired transfer; (b) screen print."
    ) == text(print_method(), "sticker")


def test_where_no_choice_will_do_the_answer_is_asked_again():
    limit = Limit(none_of=("sticker", "screen print", "kiln-fired transfer"))

    assert text(print_method(limit=limit), "sticker").endswith("Our note says: sticker. Is this right?")


def test_earlier_work_is_asked_for_photographs_again_and_offers_no_verdicts():
    table = {"art like mine": 100, "plain logos only": 20}
    work = choices("w", 1, table, title="Earlier work", limit=Limit(none_of=("plain logos only",)))

    assert "Have you made goods with artwork like ours? Please send photographs. Please name the method." == text(
        work, "plain logos only"
    )


@pytest.mark.parametrize(
    ("criterion", "typed", "said"),
    [(minimum(question="How few?"), 5000, "5000 pieces"), (print_method(question="How few?"), "sticker", "sticker")],
)
def test_the_users_own_question_goes_first(criterion, typed, said):
    assert f"How few? Our note says: {said}. Is this right?" == text(criterion, typed)
