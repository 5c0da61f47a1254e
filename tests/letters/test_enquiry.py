"""What to ask one maker, and what not."""

from dataclasses import replace

import numpy as np
from cases import AS_OF, choices, make_case, numbers

from scorecard.answers import Answers
from scorecard.brief import Brief
from scorecard.calculation import Calculation
from scorecard.criteria import Limit, Steady
from scorecard.letters.enquiry import enquiries_of, enquiry_of, look_ups_of

STEADY = Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20)
RATING = numbers("rating", 5, (0, 0), (5, 100), title="Rating", within=(0, 5), steady=STEADY)


def calculated(criteria, makers, **more):
    return Calculation.of(make_case(criteria, makers, **more), AS_OF)


def asked(enquiry):
    return [one.criterion for one in enquiry.questions]


def test_only_what_is_open_of_a_maker_is_asked_what_carries_most_first():
    # 0.1 x 100, 0.3 x 100 and 0.6 x 20 carry 10, 30 and 12
    one = calculated(
        [numbers("a", 10), numbers("b", 30), numbers("c", 60)],
        {"Oxlip": [90, 90, 90], "Tansy": [None, None, (0, 20)]},
    )

    assert [(1, ["b", "c", "a"])] == [(found.maker, asked(found)) for found in enquiries_of(one)]


def test_a_question_that_could_change_the_leader_goes_before_one_that_carries_more():
    # Oxlip 80; Tansy 0.3 x 50 + 0.5 x 100 + 0.2 x 50 = 75: a alone lifts it to 90, while b counts as its best already
    criteria = [numbers("a", 30), numbers("b", 50, unknown="best"), numbers("c", 20)]
    (found,) = enquiries_of(calculated(criteria, {"Oxlip": [80, 80, 80], "Tansy": [None, None, 50]}))

    assert [("a", True), ("b", False)] == [(one.criterion, one.could_change_leader) for one in found.questions]


def test_response_time_is_never_asked():
    response = numbers("response", 5, (1, 100), (5, 0), question="How fast are you?")
    response = replace(response, column=None, measure="response_days")

    assert () == enquiries_of(calculated([response, numbers("a", 1)], {"Oxlip": [None, 1], "Tansy": [None, 2]}))


def test_a_rating_is_looked_up_and_not_asked():
    one = calculated([RATING, numbers("a", 1)], {"Oxlip": [None, None], "Tansy": [4.8, 2]})

    assert [(0, ["a"])] == [(found.maker, asked(found)) for found in enquiries_of(one)]
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

    assert () == enquiries_of(calculated(criteria, {"Oxlip": [None, (20, 30), 1], "Tansy": [None, 30, 2]}))


def test_what_may_rule_a_maker_out_is_asked_whatever_it_weighs():
    criteria = [choices("print", 0, {"screen": 100, "sticker": 0}, limit=Limit(none_of=("sticker",))), numbers("a", 1)]

    assert [["print"], ["print"]] == [
        asked(one) for one in enquiries_of(calculated(criteria, {"Oxlip": [None, 1], "Tansy": [None, 2]}))
    ]


def test_a_ruled_out_maker_is_asked_only_when_it_is_named():
    criteria = [numbers("a", 1, limit=Limit(at_least=10)), numbers("b", 2), numbers("c", 3)]
    one = calculated(criteria, {"Oxlip": [5, None, None], "Tansy": [20, 1, 1]})

    assert ((), 0, ["c", "b"]) == (enquiries_of(one), one.ranking.ranks[0], asked(enquiry_of(one, 0)))


def test_a_maker_of_whom_all_is_known_has_no_questions():
    assert () == enquiry_of(calculated([numbers("a", 1)], {"Oxlip": [5], "Tansy": [None]}), 0).questions


def test_colours_that_the_brief_does_not_say_are_looked_up_and_not_asked():
    minimum = numbers("m", 1, (1, 100), (2, 0), title="Minimum order", per_quantity=True)
    brief = Brief(item="shirt", quantity=200, designs=2)
    one = calculated([minimum], {"Oxlip": [150]}, brief=brief, minimum_per=("colour",))

    assert () == enquiries_of(one)
    assert ["Oxlip: its minimum is per colour; add how many colours the goods come in to the brief"] == [
        found.text for found in look_ups_of(one)
    ]


def test_a_measure_that_the_tool_works_out_is_not_asked():
    cost = numbers("cost", 5, (1, 100), (9, 0))
    cost = replace(cost, column=None, measure="landed_cost_per_piece")

    assert () == enquiries_of(calculated([cost, numbers("a", 1)], {"Oxlip": [None, 1], "Tansy": [None, 2]}))
