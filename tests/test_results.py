"""The machine-readable result: how answers are written, in which order, and what is null when."""

import json
from dataclasses import replace

import numpy as np
import pytest
from cases import AS_OF, choices, make_case, maker_of, numbers, rated
from hypothesis import given, settings
from trying import cases

from scorecard.answers import Answers
from scorecard.assessment import assess
from scorecard.brief import Brief
from scorecard.criteria import CriteriaSet, Limit, Steady, WeightsNote
from scorecard.errors import Place, Problem
from scorecard.results import answer, result_of

INF, NAN = np.inf, np.nan
METHOD = choices("method", 1, {"Kiln-fired transfer": 100, "sticker": 0})
NOTE = Problem(code="read-as", place=Place(file="makers.xlsx", cell="D7"), found="a", wanted="b")


def result_on(case):
    return result_of(assess(case, as_of=AS_OF))


def names(result):
    return [maker["maker"] for maker in result["makers"]]


def cell(result, maker, criterion):
    return maker_of(result, maker)["criteria"][criterion]


@pytest.mark.parametrize(
    ("low", "high", "written"),
    [
        (7.0, 7.0, 7),
        (2.5, 2.5, 2.5),
        (3.0, 5.0, {"low": 3, "high": 5}),
        (50.0, INF, {"low": 50, "high": None}),
        (-INF, 24.0, {"low": None, "high": 24}),
        (NAN, NAN, None),
    ],
)
def test_an_answer_is_a_number_a_range_or_null(low, high, written):
    assert written == answer(numbers("a", 1), low, high)


def test_a_whole_answer_is_written_without_a_point():
    assert "7" == json.dumps(answer(numbers("a", 1), 7.0, 7.0))


def test_a_choice_is_spelt_as_in_the_criteria_file():
    assert "Kiln-fired transfer" == answer(METHOD, 0.0, 0.0)


def test_an_unknown_choice_is_null():
    assert answer(METHOD, NAN, NAN) is None


def test_what_an_answer_counts_as_stands_beside_it():
    criterion = numbers("minimum", 1, (1, 100), (2, 0), per_quantity=True)
    brief = Brief(item="enamel mug", quantity=200, designs=4)
    result = result_on(make_case([criterion], {"Fernhill": [400]}, brief=brief, minimum_per=(None,)))
    found = cell(result, "Fernhill", "minimum")
    assert (400, {"low": 2, "high": 8}) == (found["answer"], found["counts_as"])


def test_an_unknown_rating_from_no_buyers_counts_as_the_usual_one():
    steady = Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20)
    criterion = numbers("rating", 1, (4, 0), (5, 100), steady=steady)
    counts = {"rating": Answers(np.zeros(1), np.zeros(1))}
    found = cell(result_on(make_case([criterion], {"Fernhill": [None]}, counts=counts)), "Fernhill", "rating")
    assert (None, 4.5, 50.0) == (found["answer"], found["counts_as"], found["points"])


def test_figures_have_12_significant_digits():
    # 100/3 points of a weight of 1 in 3
    result = result_on(rated((1, 2), {"Fernhill": [(100 / 3), 0]}))
    found = cell(result, "Fernhill", "c1")
    assert (33.3333333333, 11.1111111111, 0.333333333333) == (
        found["points"],
        found["contribution"],
        result["shares"]["c1"],
    )


def test_makers_come_in_the_order_of_rank_and_ruled_out_last_in_sheet_order():
    rows = {"Dale": [3], "Fernhill": [50], "Cold Quay": [1], "Brightholm": [70]}
    assert ["Brightholm", "Fernhill", "Dale", "Cold Quay"] == names(
        result_on(rated((1,), rows, limit=Limit(at_least=9)))
    )


def test_criteria_come_in_the_order_of_the_file():
    result = result_on(make_case([numbers("b", 1), numbers("a", 2)], {"Fernhill": [1, 2]}))
    written = list(result["shares"]), list(result["makers"][0]["criteria"]), list(result["weight_ranges"])
    assert (["b", "a"],) * 3 == written


def test_a_maker_keeps_its_row():
    rows = {"Fernhill": [1], "Brightholm": [2]}
    assert [("Brightholm", 3), ("Fernhill", 2)] == [
        (one["maker"], one["row"]) for one in result_on(rated((1,), rows))["makers"]
    ]


def test_a_ruled_out_maker_has_a_score_a_reason_and_no_rank():
    result = result_on(rated((1,), {"Fernhill": [50], "Dale": [3]}, limit=Limit(at_least=9)))
    found = maker_of(result, "Dale")
    assert ("ruled out", None, 3.0, ["C1: 3 is below the limit of 9"]) == (
        found["status"],
        found["rank"],
        found["score"],
        found["reasons"],
    )


def test_every_failed_limit_has_its_reason():
    result = result_on(rated((1, 1), {"Dale": [3, 4]}, limit=Limit(at_least=9)))
    assert 2 == len(maker_of(result, "Dale")["reasons"])


def test_a_limit_that_may_yet_be_failed_is_open():
    result = result_on(rated((1, 1), {"Fernhill": [50, None]}, limit=Limit(at_least=9)))
    assert ("ranked", ["c2"]) == (result["makers"][0]["status"], result["makers"][0]["open_limits"])


def test_letting_one_in_says_score_rank_and_what_would():
    result = result_on(rated((1, 3), {"Fernhill": [50, 50], "Dale": [3, 90]}, limit=Limit(at_least=9)))
    assert [{"maker": "Dale", "score": 68.25, "rank": 1, "by": "C1: at least 9"}] == result["let_in"]


def test_letting_one_in_names_every_limit_it_fails():
    result = result_on(rated((1, 3), {"Fernhill": [50, 50], "Dale": [3, 4]}, limit=Limit(at_least=9)))
    assert ["C1: at least 9; C2: at least 9"] == [one["by"] for one in result["let_in"]]


def test_a_single_leader_is_named_with_its_margin():
    result = result_on(rated((1,), {"Fernhill": [50], "Dale": [30]}))
    assert (["Fernhill"], "Fernhill", 20.0) == (result["leaders"], result["leader"], result["margin"])


def test_joint_leaders_leave_the_leader_null_and_the_margin_nil():
    result = result_on(rated((1,), {"Fernhill": [50], "Dale": [50]}))
    assert (["Fernhill", "Dale"], None, 0.0) == (result["leaders"], result["leader"], result["margin"])


def test_one_ranked_maker_has_no_margin():
    result = result_on(rated((1,), {"Fernhill": [50]}))
    assert ("Fernhill", None) == (result["leader"], result["margin"])


def test_where_nobody_is_ranked_nobody_leads():
    result = result_on(rated((1,), {"Fernhill": [5]}, limit=Limit(at_least=9)))
    assert ([], None, None) == (result["leaders"], result["leader"], result["margin"])


def test_known_share_counts_ranges_as_known():
    result = result_on(rated((1, 2, 5), {"Fernhill": [50, (1, 2), None]}))
    assert 0.375 == result["makers"][0]["known_share"]


def test_weights_stand_as_typed_and_whole_where_whole():
    result = result_on(rated((15.0, 2.5), {"Fernhill": [1, 2]}))
    assert '{"c1": 15, "c2": 2.5}' == json.dumps(result["typed_weights"])


def test_a_criterion_of_weight_0_has_points_and_contributes_nothing():
    found = cell(result_on(rated((1, 0), {"Fernhill": [1, 80]})), "Fernhill", "c2")
    assert (80.0, 0.0) == (found["points"], found["contribution"])


def test_consistency_is_there_with_pairs_only():
    case = rated((3, 1), {"Fernhill": [1, 2]})
    pairs = WeightsNote(method="pairs", ratio=0.0440000000000004, lambda_max=4.1180000000004, random_index="table")
    noted = result_on(case.with_criteria(CriteriaSet(case.criteria.criteria, pairs)))
    expected = {"ratio": 0.044, "lambda_max": 4.118, "random_index": "table"}
    assert (expected, False) == (noted["consistency"], "consistency" in result_on(case))


def test_a_question_says_whose_what_and_with_which_answers():
    rows = {"Fernhill": [50], "Brightholm": [(20, 80)]}
    expected = {
        "maker": "Brightholm",
        "criterion": "c1",
        "could_change_leader": True,
        "carries": 60.0,
        "by": "points",
        "leader_then": "Brightholm",
        "answers": [{"low": 50, "high": 80}],
        "otherwise": None,
    }
    assert [expected] == result_on(rated((1,), rows, unknown="worst"))["questions"]


def test_a_question_on_a_joint_leader_says_both_ways():
    rows = {"Fernhill": [50], "Brightholm": [(20, 80)]}
    expected = {"by": "points", "leader_then": "Fernhill", "answers": [{"low": 20, "high": 50}]}
    assert expected == result_on(rated((1,), rows, unknown="middle"))["questions"][0]["otherwise"]


def test_warnings_and_cells_set_aside_are_written():
    case = replace(rated((1,), {"Fernhill": [1]}), warnings=(NOTE,), set_aside=(NOTE, NOTE))
    result = result_on(case)
    assert ([NOTE.as_json()], [NOTE.as_json()] * 2) == (result["warnings"], result["set_aside"])


@settings(max_examples=25, deadline=None)
@given(cases())
def test_a_result_never_holds_nan(case):
    json.dumps(result_on(case), allow_nan=False)


@settings(max_examples=25, deadline=None)
@given(cases())
def test_the_same_case_gives_the_same_result(case):
    assert json.dumps(result_on(case)) == json.dumps(result_on(case))


@settings(max_examples=25, deadline=None)
@given(cases())
def test_ruled_out_makers_have_no_part_in_how_firm_the_choice_is(case):
    result = result_on(case)
    out = {one["maker"] for one in result["makers"] if one["status"] == "ruled out"}
    parts = ("weight_ranges", "smallest_change", "can_lead", "rank_shares", "duels", "mean_ranks", "questions")
    told = json.dumps([result[part] for part in parts])
    assert not any(json.dumps(name) in told for name in out)
