"""What changed since the run before: by hand, and the split adds up on random pairs of runs."""

from dataclasses import replace
from datetime import timedelta

import numpy as np
import pytest
from cases import AS_OF, choices, make_case, numbers, rated
from hypothesis import given, settings
from hypothesis import strategies as st

from scorecard.assessment import assess
from scorecard.brief import Brief
from scorecard.criteria import Limit
from scorecard.since import is_same_run, since, split, worth_now

NAMES = ("Fernhill", "Brightholm", "Cold Quay")


def result_of(case):
    return assess(case, as_of=AS_OF).as_json()


def since_of(before, now):
    return since(result_of(before), result_of(now), now.criteria.criteria)


def due(found, maker):
    (one,) = [one for one in found["makers"] if one["maker"] == maker]
    return one["due_to"]


def test_the_same_run_on_another_day_is_the_same():
    before, now = result_of(rated((1,), {"Fernhill": [3]})), result_of(rated((1,), {"Fernhill": [3]}))

    assert is_same_run(before | {"as_of": "2026-01-01", "since_last_time": {}}, now)


def test_a_new_answer_is_told_with_what_it_brought():
    # half the weight on 30 points more
    before = rated((1, 1), {"Fernhill": [20, 50], "Brightholm": [40, 50]})
    now = rated((1, 1), {"Fernhill": [50, 50], "Brightholm": [40, 50]})
    found = since_of(before, now)

    assert {"weights": 0.0, "answers": 15.0, "value_functions_and_brief": 0.0} == due(found, "Fernhill")
    assert (["Brightholm"], ["Fernhill"]) == (found["leaders_before"], found["leaders_now"])


def test_other_weights_are_told_with_what_they_brought():
    # shares from 1/2, 1/2 to 3/4, 1/4 with points 20 and 60: a quarter of -40
    before, now = rated((1, 1), {"Fernhill": [20, 60]}), rated((3, 1), {"Fernhill": [20, 60]})

    assert {"weights": -10.0, "answers": 0.0, "value_functions_and_brief": 0.0} == due(
        since_of(before, now), "Fernhill"
    )


def test_another_value_function_is_told_apart_from_a_new_answer():
    # the old answer 5 was worth 50 and is now worth 100; the new answer 2 is worth 40
    before = make_case([numbers("a", 1, (0, 0), (10, 100))], {"Fernhill": [5]})
    now = make_case([numbers("a", 1, (0, 0), (5, 100))], {"Fernhill": [2]})

    assert {"weights": 0.0, "answers": -60.0, "value_functions_and_brief": 50.0} == due(
        since_of(before, now), "Fernhill"
    )


def test_another_brief_is_told_as_such():
    criteria = [numbers("minimum", 1, (1, 100), (2, 0), per_quantity=True)]
    makers, units = {"Fernhill": [300]}, ("order",)
    before = make_case(criteria, makers, brief=Brief(item="mug", quantity=200), minimum_per=units)
    now = make_case(criteria, makers, brief=Brief(item="mug", quantity=300), minimum_per=units)

    assert {"weights": 0.0, "answers": 0.0, "value_functions_and_brief": 50.0} == due(since_of(before, now), "Fernhill")


def test_makers_that_came_and_went_are_named():
    found = since_of(rated((1,), {"Fernhill": [3], "Dale": [1]}), rated((1,), {"Fernhill": [3], "Oxlip": [1]}))

    assert (["Oxlip"], ["Dale"], []) == (found["new"], found["gone"], found["makers"])


def test_a_rank_that_changed_is_told_even_where_the_score_did_not():
    found = since_of(
        rated((1,), {"Fernhill": [3], "Brightholm": [1]}), rated((1,), {"Fernhill": [3], "Brightholm": [4]})
    )

    assert [("Brightholm", 2, 1), ("Fernhill", 1, 2)] == [
        (one["maker"], one["rank_before"], one["rank"]) for one in found["makers"]
    ]


@pytest.mark.parametrize(
    ("counts_as", "points"), [("b", 40.0), ("gone", None), (None, None), ({"low": 1, "high": 2}, None), (3, None)]
)
def test_a_choice_is_worth_what_it_is_worth_now(counts_as, points):
    assert points == worth_now(choices("a", 1, {"a": 100, "b": 40}), counts_as)


ANSWERS = st.one_of(st.none(), st.integers(-2, 12), st.tuples(st.integers(0, 4), st.integers(5, 11)))
KNOTS = st.sampled_from([((0, 0), (10, 100)), ((0, 100), (5, 30), (10, 0)), ((2, 0), (4, 80))])


@st.composite
def runs(draw):
    """A case of two or three criteria, some of them shared with another run of it, and up to three makers."""
    keys = draw(st.lists(st.sampled_from("abc"), min_size=1, max_size=3, unique=True))
    rules = st.sampled_from(["worst", "middle", "best", 30.0])
    criteria = [numbers(key, draw(st.integers(1, 9)), *draw(KNOTS), unknown=draw(rules)) for key in sorted(keys)]
    makers = draw(st.lists(st.sampled_from(NAMES), min_size=1, unique=True))
    return make_case(criteria, {maker: [draw(ANSWERS) for _ in criteria] for maker in makers})


@settings(max_examples=150, deadline=None)
@given(runs(), runs())
def test_the_parts_add_up_to_the_change_of_every_score(before, now):
    old, new = result_of(before), result_of(now)
    criteria = {one.key: one for one in now.criteria}
    earlier = {one["maker"]: one for one in old["makers"]}
    for maker in new["makers"]:
        if maker["maker"] in earlier:
            parts = split(earlier[maker["maker"]]["criteria"], maker["criteria"], (old, new), criteria)

            assert maker["score"] - earlier[maker["maker"]]["score"] == pytest.approx(sum(parts.values()), abs=1e-7)


@settings(max_examples=50, deadline=None)
@given(runs())
def test_a_run_compared_with_itself_has_no_change(case):
    found = since_of(case, replace(case, title="another title"))

    assert ([], [], []) == (found["makers"], found["new"], found["gone"])


def test_a_measure_that_moves_by_the_day_alone_is_no_new_answer():
    # response_days of a maker that has not answered grows with the day; its cells are the same
    table = {"Fernhill": [None]}
    case = make_case([replace(numbers("a", 1, (0, 100), (10, 0)), column=None, measure="response_days")], table)
    asked = replace(case.table, asked_on=np.array([AS_OF.toordinal() - 7.0]), answered_on=np.array([np.nan]))
    case = replace(case, table=asked)
    before, now = (assess(case, as_of=AS_OF + timedelta(days)).as_json() for days in (0, 2))
    parts = due(since(before, now, case.criteria.criteria), "Fernhill")

    assert 0 == parts["answers"] == parts["weights"]
    assert parts["value_functions_and_brief"] < -1


def test_a_new_answer_to_a_measure_is_one():
    case = make_case(
        [replace(numbers("a", 1, (0, 100), (10, 0)), column=None, measure="response_days")], {"Fernhill": [None]}
    )
    days = [
        replace(
            case.table, asked_on=np.array([AS_OF.toordinal() - 14.0]), answered_on=np.array([AS_OF.toordinal() - ago])
        )
        for ago in (9.0, 2.0)
    ]
    parts = due(since_of(*(replace(case, table=table) for table in days)), "Fernhill")

    assert parts["answers"] < -1
    assert 0 == parts["value_functions_and_brief"] == parts["weights"]


def rank_due(found, maker):
    (one,) = [one for one in found["makers"] if one["maker"] == maker]
    return {key: value for key, value in one["rank_due_to"].items() if value}


def limited(at_most):
    limit = None if at_most is None else Limit(at_most=at_most)
    return make_case([replace(numbers("a", 1, (0, 0), (10, 100)), limit=limit)], {"Fernhill": [3], "Brightholm": [8]})


def test_a_limit_that_rules_a_maker_out_is_named_and_what_it_does_to_the_next():
    found = since_of(limited(None), limited(5))

    assert {"causes": ["limits"]} == rank_due(found, "Brightholm")
    assert {"ruled_out": ["Brightholm"]} == rank_due(found, "Fernhill")


def test_an_answer_that_lets_a_maker_in_is_named():
    before = limited(5)
    now = make_case(
        [replace(numbers("a", 1, (0, 0), (10, 100)), limit=Limit(at_most=5))], {"Fernhill": [3], "Brightholm": [4]}
    )
    found = since_of(before, now)

    assert {"causes": ["answers"]} == rank_due(found, "Brightholm")
    assert {"let_in": ["Brightholm"]} == rank_due(found, "Fernhill")


def test_makers_that_came_and_went_are_named_where_they_moved_a_rank():
    first = since_of(rated((1,), {"Fernhill": [3]}), rated((1,), {"Fernhill": [3], "Oxlip": [4]}))
    second = since_of(rated((1,), {"Fernhill": [3], "Oxlip": [4]}), rated((1,), {"Fernhill": [3]}))

    assert ({"new": ["Oxlip"]}, {"gone": ["Oxlip"]}) == (rank_due(first, "Fernhill"), rank_due(second, "Fernhill"))


def test_makers_that_passed_one_another_are_named():
    found = since_of(
        rated((1,), {"Fernhill": [3], "Brightholm": [1]}), rated((1,), {"Fernhill": [3], "Brightholm": [4]})
    )

    assert ({"passed": ["Fernhill"]}, {"passed_by": ["Brightholm"]}) == (
        rank_due(found, "Brightholm"),
        rank_due(found, "Fernhill"),
    )
