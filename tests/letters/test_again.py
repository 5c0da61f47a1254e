"""What is asked of a maker that was ordered from before."""

from datetime import date

from cases import make_case, numbers

from scorecard.letters.again import SET_UP, again_questions
from scorecard.memory import Record
from scorecard.orders import OrderRow


def case(memory=(), orders=()):
    from dataclasses import replace

    made = make_case([numbers("years", 1)], {"Fernhill": [3], "Brightholm": [4]})
    return replace(made, memory=memory, orders=orders)


def test_without_an_order_nothing_is_asked():
    assert {} == again_questions(case())


def test_blank_method_factory_and_set_up_are_asked_of_the_latest_order():
    old = Record(maker="fernhill", item="mug", ordered=date(2025, 3, 1), arrived=date(2025, 5, 1), pieces=50)
    new = Record(maker="Fernhill", item="mug", ordered=date(2026, 3, 12), arrived=date(2026, 5, 12), pieces=200)

    assert {
        "Fernhill": (
            "We ordered 200 pieces from you on 12 March 2026. Are the blank article, the print method and the factory "
            "the same now? If not, please say what is different.",
            SET_UP,
        )
    } == again_questions(case(memory=(new, old)))


def test_an_order_of_the_sheet_counts_too_whatever_is_known_of_it():
    found = again_questions(case(orders=(OrderRow(maker="Brightholm", row=2, arrived=date(2026, 5, 1)),)))

    assert found["Brightholm"][0].startswith("We ordered from you. Are the blank article")


def test_of_an_order_that_has_not_arrived_nothing_is_asked():
    assert {} == again_questions(case(orders=(OrderRow(maker="Brightholm", row=2, ordered=date(2026, 3, 1)),)))
