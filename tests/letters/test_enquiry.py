"""What to ask one maker, and what not."""

from dataclasses import replace

import numpy as np
import pytest
from cases import AS_OF, choices, make_case, numbers

from scorecard.answers import Answers
from scorecard.brief import Brief
from scorecard.calculation import Calculation
from scorecard.criteria import Limit, Steady
from scorecard.letters.enquiry import enquiries_of, look_ups_of, writing_order

STEADY = Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20)
RATING = numbers("rating", 5, (0, 0), (5, 100), title="Rating", within=(0, 5), steady=STEADY)


def calculated(criteria, makers, **more):
    return Calculation.of(make_case(criteria, makers, **more), AS_OF)


def every(calculation):
    """Return the makers that are asked something, each with its enquiry."""
    return [one for one in enquiries_of(calculation, writing_order(calculation)) if one.questions]


def of(calculation, maker):
    return enquiries_of(calculation, [maker])[0]


def asked(enquiry):
    return [one.criterion for one in enquiry.questions]


def test_only_what_is_open_of_a_maker_is_asked_what_carries_most_first():
    # 0.1 x 100, 0.3 x 100 and 0.6 x 20 carry 10, 30 and 12
    one = calculated(
        [numbers("a", 10), numbers("b", 30), numbers("c", 60)],
        {"Oxlip": [90, 90, 90], "Tansy": [None, None, (0, 20)]},
    )

    assert [(1, ["b", "c", "a"])] == [(found.maker, asked(found)) for found in every(one)]


def test_a_question_that_could_change_the_leader_goes_before_one_that_carries_more():
    # Oxlip 80; Tansy 0.3 x 50 + 0.5 x 100 + 0.2 x 50 = 75: a alone lifts it to 90, while b counts as its best already
    criteria = [numbers("a", 30), numbers("b", 50, unknown="best"), numbers("c", 20)]
    (found,) = every(calculated(criteria, {"Oxlip": [80, 80, 80], "Tansy": [None, None, 50]}))

    assert [("a", True), ("b", False)] == [(one.criterion, one.could_change_leader) for one in found.questions]


def test_response_time_is_never_asked():
    response = numbers("response", 5, (1, 100), (5, 0), question="How fast are you?")
    response = replace(response, column=None, measure="response_days")

    assert [] == every(calculated([response, numbers("a", 1)], {"Oxlip": [None, 1], "Tansy": [None, 2]}))


def test_a_rating_is_looked_up_and_not_asked():
    one = calculated([RATING, numbers("a", 1)], {"Oxlip": [None, None], "Tansy": [4.8, 2]})

    assert [(0, ["a"])] == [(found.maker, asked(found)) for found in every(one)]
    assert {
        (0, "Oxlip: Rating and Ratings counted, where its buyers rate it"),
        (1, "Tansy: Ratings counted, where its buyers rate it"),
    } == {(found.maker, found.text) for found in look_ups_of(one)}


def test_a_rating_whose_count_is_known_is_looked_up_alone():
    counts = {"rating": Answers(np.array([30.0]), np.array([30.0]))}

    (found,) = look_ups_of(calculated([RATING], {"Oxlip": [None]}, counts=counts))
    assert "Oxlip: Rating, where its buyers rate it" == found.text


def test_what_carries_nothing_and_rules_nobody_out_is_not_asked():
    criteria = [numbers("idle", 0), numbers("level", 5, (0, 0), (10, 100)), numbers("a", 1)]

    assert [] == every(calculated(criteria, {"Oxlip": [None, (20, 30), 1], "Tansy": [None, 30, 2]}))


def test_what_may_rule_a_maker_out_is_asked_whatever_it_weighs():
    criteria = [choices("print", 0, {"screen": 100, "sticker": 0}, limit=Limit(none_of=("sticker",))), numbers("a", 1)]

    assert [["print"], ["print"]] == [
        asked(one) for one in every(calculated(criteria, {"Oxlip": [None, 1], "Tansy": [None, 2]}))
    ]


def test_a_ruled_out_maker_is_asked_first_about_what_ruled_it_out():
    criteria = [numbers("b", 2), numbers("c", 3), numbers("a", 1, title="Kilns", limit=Limit(at_least=10))]
    one = calculated(criteria, {"Oxlip": [None, None, 5], "Tansy": [1, 1, 20]})

    assert ([1], ["a", "c", "b"]) == (list(writing_order(one)), asked(of(one, 0)))
    assert "Please tell us: Kilns. Our note says: 5. Is this right?" == of(one, 0).questions[0].text


def test_a_range_that_fails_whatever_it_is_is_asked_once():
    criteria = [numbers("a", 1, limit=Limit(at_least=10)), numbers("b", 2)]

    assert ["a", "b"] == asked(of(calculated(criteria, {"Oxlip": [(3, 5), None], "Tansy": [20, 1]}), 0))


@pytest.mark.parametrize("criterion", [replace(RATING, limit=Limit(at_least=4)), None])
def test_a_rating_or_slowness_that_rules_out_is_not_put_to_the_maker(criterion):
    slow = replace(
        numbers("response", 5, (1, 100), (5, 0), limit=Limit(at_most=2)), column=None, measure="response_days"
    )
    one = calculated([criterion or slow, numbers("a", 1)], {"Oxlip": [3, None], "Tansy": [5, 2]})

    assert (0, ["a"]) == (one.ranking.ranks[0], asked(of(one, 0)))


def test_a_maker_of_whom_all_is_known_has_no_questions():
    assert () == of(calculated([numbers("a", 1)], {"Oxlip": [5], "Tansy": [None]}), 0).questions


def test_makers_whose_answer_could_change_the_leader_come_first_then_all_others_by_rank():
    # Dunlin could pass the leader; Oxlip leads; nothing is open of Tansy; Vane is out of reach
    makers = {"Vane": [None, 0], "Oxlip": [50, 90], "Dunlin": [None, 60], "Tansy": [50, 70]}
    one = calculated([numbers("a", 50), numbers("b", 50)], makers)

    assert [2, 1, 3, 0] == list(writing_order(one))


def test_colours_that_the_brief_does_not_say_are_looked_up_and_not_asked():
    minimum = numbers("m", 1, (1, 100), (2, 0), title="Minimum order", per_quantity=True)
    brief = Brief(item="shirt", quantity=200, designs=2)
    one = calculated([minimum], {"Oxlip": [150]}, brief=brief, minimum_per=("colour",))

    assert [] == every(one)
    assert ["Oxlip: its minimum is per colour; add how many colours the goods come in to the brief"] == [
        found.text for found in look_ups_of(one)
    ]


def test_a_measure_that_the_tool_works_out_is_not_asked():
    cost = numbers("cost", 5, (1, 100), (9, 0))
    cost = replace(cost, column=None, measure="landed_cost_per_piece")

    assert [] == every(calculated([cost, numbers("a", 1)], {"Oxlip": [None, 1], "Tansy": [None, 2]}))
