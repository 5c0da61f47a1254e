"""Landed costs in the machine-readable results."""

import json
from dataclasses import replace

import jsonschema
from cases import AS_OF
from hypothesis import given, settings
from hypothesis import strategies as st
from ordered import PAID, case_of
from process import schema_of
from quoted import dollars, quote

from scorecard.assessment import assess
from scorecard.cost_results import cost_result, landed_costs_of
from scorecard.costing.inputs import CostSettings
from scorecard.criteria import Limit

ANSWERS = {"Ash": 90, "Birch": 70, "Cedar": 50}


def printed(result):
    return json.loads(json.dumps(result, allow_nan=False))


def test_while_nothing_is_quoted_there_are_no_landed_costs():
    assert [] == assess(case_of(ANSWERS, {}), as_of=AS_OF).as_json()["landed_costs"]
    assert [] == landed_costs_of(None)


@settings(max_examples=25, deadline=None)
@given(
    price=st.integers(1, 900),
    covers=st.sampled_from([None, "goods", "goods and freight", PAID]),
    faulty=st.sampled_from([None, 0, 3]),
    sampled=st.booleans(),
)
def test_any_score_with_quotes_and_any_cost_fit_their_schemas(price, covers, faulty, sampled):
    row = quote(price, maker="Ash", covers=covers, way="sea", sample_price=20, days=(30, 40))
    kept = CostSettings(faulty_percent=faulty, sampled=frozenset({"Ash"} if sampled else ()))
    assessment = assess(case_of(ANSWERS, {"Ash": row, "Birch": 4}, weight=1, settings=kept), as_of=AS_OF)

    jsonschema.validate(printed(assessment.as_json()), schema_of("score"))
    jsonschema.validate(printed(cost_result(assessment)), schema_of("cost"))


def test_score_and_cost_give_the_same_landed_costs():
    assessment = assess(case_of(ANSWERS, {"Ash": 5, "Birch": 4}), as_of=AS_OF)

    assert assessment.as_json()["landed_costs"] == cost_result(assessment)["landed_costs"]


def test_the_lines_add_up_to_the_total():
    row = quote("3.333", maker="Ash", covers="goods", way="sea", setup=17, days=30)
    (one,) = assess(case_of(ANSWERS, {"Ash": row}), as_of=AS_OF).as_json()["landed_costs"]
    (reading,) = one["readings"]

    assert round(100 * one["total"]["low"]) == sum(round(100 * line["cost"]["low"]) for line in reading["lines"])


def test_what_is_spent_is_shown_and_in_no_total():
    row = quote(5, maker="Ash", covers=PAID, sample_price=20)
    case = case_of(ANSWERS, {"Ash": row}, settings=CostSettings(sampled=frozenset({"Ash"})))
    (one,) = assess(case, as_of=AS_OF).as_json()["landed_costs"]

    assert (1000.0, [20.0]) == (one["total"]["low"], [line["cost"]["low"] for line in one["spent"]])


def test_makers_without_a_price_are_named_by_rank():
    case = case_of(ANSWERS, {"Birch": 5})

    assert ["Ash", "Cedar"] == cost_result(assess(case, as_of=AS_OF))["not_quoted"]


def test_a_measure_is_the_chosen_way_of_landed_costs():
    case = case_of(ANSWERS, {"Ash": 5, "Birch": 4}, weight=1)
    result = assess(replace(case), as_of=AS_OF).as_json()
    chosen = {one["maker"]: one["per_good_piece"]["low"] for one in result["landed_costs"] if one["chosen"]}
    answers = {one["maker"]: one["criteria"]["landed"]["answer"] for one in result["makers"]}

    assert answers == {"Ash": chosen["Ash"], "Birch": chosen["Birch"], "Cedar": None}


# who is ruled out

PASSING = Limit(at_least=60)  # Cedar, the cheapest, fails it


def ruled_out(quotes, **more):
    return assess(case_of(ANSWERS, quotes, limit=PASSING, **more), as_of=AS_OF)


def test_a_ruled_out_maker_comes_last_with_the_reason_however_cheap_it_is():
    costs = cost_result(ruled_out({"Ash": 5, "Birch": 4, "Cedar": 1}))["landed_costs"]

    assert [("Birch", None), ("Ash", None), ("Cedar", "A: 50 is below the limit of 60")] == [
        (one["maker"], one["ruled_out"]) for one in costs
    ]


def test_a_ruled_out_maker_has_no_part_in_who_is_the_cheapest_at_another_rate():
    quotes = {
        "Ash": 5,
        "Birch": 4,
        "Cedar": quote(1, maker="Cedar", row=4, covers=PAID, way="road", currency="USD"),
    }
    result = cost_result(ruled_out(quotes, rates=dollars()))

    assert [] == result["currency_changes"]


def test_a_result_with_a_ruled_out_maker_fits_its_schemas():
    assessment = ruled_out({"Ash": 5, "Birch": 4, "Cedar": 1}, weight=1)

    jsonschema.validate(printed(assessment.as_json()), schema_of("score"))
    jsonschema.validate(printed(cost_result(assessment)), schema_of("cost"))


def test_where_every_quoted_maker_is_ruled_out_all_are_told_and_nobody_is_the_cheapest():
    assessment = ruled_out({"Cedar": 1})

    assert ["Cedar"] == [one["maker"] for one in cost_result(assessment)["landed_costs"]]
    assert () == assessment.ranked_costs.costs
