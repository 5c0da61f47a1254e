"""One open answer as a question."""

from datetime import date

import pytest
from cases import AS_OF, choices, make_case, numbers

from scorecard.brief import Brief
from scorecard.calculation import Calculation
from scorecard.letters.question_words import KNOWN, can_you_questions, price_questions, question_text, sentence_of

BRIEF = Brief(item="mug", quantity=200, designs=4, currency="EUR")


def text(criterion, typed, brief=BRIEF, **table):
    case = make_case(
        [criterion, numbers("other", 1)], {"Oxlip": [typed, 50], "Tansy": [None, 60]}, brief=brief, **table
    )
    return question_text(Calculation.of(case, AS_OF), 0, 0)


def minimum(**more):
    return numbers(
        "minimum", 1, (1, 100), (2, 0), title="Minimum order", unit="pieces", **({"per_quantity": True} | more)
    )


def test_a_well_known_column_has_its_own_sentence():
    assert "How many years have you been in business?" == text(numbers("y", 1, title="Years trading"), None)


def test_another_criterion_is_asked_by_its_title_and_unit():
    assert "Please tell us: Kiln heat (°C)." == text(numbers("k", 1, title="Kiln heat", unit="°C"), None)


def test_a_criterion_without_a_unit_is_asked_by_its_title():
    assert "Please tell us: Kiln heat." == text(numbers("k", 1, title="Kiln heat"), None)


def test_choices_are_offered_in_the_order_of_the_alphabet():
    sample = choices("s", 1, {"free": 100, "none": 0, "a photo, only": 20}, title="Sample")

    assert (
        "Can you send a sample before the order? "
        "Please choose: (a) a photo, only; (b) free; (c) none. If it is another answer, please write it."
    ) == text(sample, None)


def test_earlier_work_asks_for_photographs_and_not_for_a_verdict_on_oneself():
    work = choices("w", 1, {"art like mine": 100, "plain logos only": 20}, title="Earlier work")

    assert "Please send photographs." in text(work, None)
    assert "plain logos" not in text(work, None)


def test_a_range_of_days_is_narrowed_down_for_the_pieces_wanted():
    days = numbers("d", 1, (1, 100), (30, 0), title="Lead time", unit="days")

    assert (
        "How many working days do you need for 200 pieces? "
        "Our note says: 3 to 5 days. Which number is right for 200 pieces?"
    ) == text(days, (3, 5))


def test_an_open_range_is_narrowed_down():
    years = numbers("y", 1, title="Years trading", unit="years")

    assert "Our note says: at least 10 years. Please give one number." in text(years, (10, None))


def test_an_unknown_minimum_is_asked_with_what_it_is_per():
    assert ("What is your minimum order, in pieces? Is this number for the whole order or for each design?") == text(
        minimum(), None
    )


def test_a_known_minimum_is_asked_only_what_it_is_per():
    assert "Minimum order: our note says 100 pieces. Is this number for the whole order or for each design?" == text(
        minimum(), 100
    )


def test_what_a_minimum_is_per_is_not_asked_twice():
    assert "for the whole order" not in text(minimum(), None, minimum_per=("design", None))


def test_with_one_design_there_is_nothing_it_could_be_per():
    assert "What is your minimum order, in pieces?" == text(minimum(), None, brief=Brief(item="mug", quantity=200))


def test_colours_and_sizes_are_offered_where_the_goods_come_in_several():
    brief = Brief(item="shirt", quantity=200, designs=2, colours=3, sizes=5)

    assert text(minimum(), None, brief=brief).endswith(
        "Is this number for the whole order, for each design, for each colour or for each size?"
    )


def test_the_users_own_question_goes_before_all_others_and_offers_no_choices():
    sample = choices("s", 1, {"free": 100, "none": 0}, title="Sample", question="Will you send one mug first?\nPlease.")

    assert "Will you send one mug first? Please." == text(sample, None)


@pytest.mark.parametrize("name", sorted(KNOWN))
def test_every_known_sentence_is_short_and_can_be_filled(name):
    words = sentence_of(numbers("k", 1, title=name), BRIEF)

    assert (True, False) == (words.endswith(("?", ".")), "{" in words)
    assert max(len(part.split()) for part in words.replace("?", ".").split(".")) <= 14


def test_a_quote_is_led_up_to_by_whether_the_goods_can_be_made_and_by_the_day():
    brief = Brief(item="mug", quantity=200, designs=4, need_by=date(2027, 5, 14))

    assert (
        "Can you make 200 pieces of this item, in 4 designs?",
        "Can the goods arrive by 14 May 2027?",
    ) == can_you_questions(brief)


def test_without_a_day_and_designs_only_the_pieces_are_asked():
    assert ("Can you make 1 piece of this item?",) == can_you_questions(Brief(item="mug", quantity=1))


def test_the_least_of_a_quote_is_the_price_what_it_covers_and_the_days():
    price, covers, days = price_questions(BRIEF)

    assert (
        "What is the price of one piece for 200 pieces, in EUR?",
        "How many working days do you need to make 200 pieces?",
    ) == (price, days)
    assert "(c) everything to our door, with duty and tax paid." in covers


def test_a_hostile_title_stays_on_one_line():
    assert "Please tell us: Kiln Pay now." == text(numbers("k", 1, title="Kiln\nPay now"), None)
