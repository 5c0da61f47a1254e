"""Real results against the published schemas: what the tool prints fits, and what it must never print does not."""

import json
from datetime import date
from importlib.resources import files

import jsonschema
import numpy as np
import pytest
from cases import AS_OF, choices, make_case, numbers, rated
from hypothesis import given, settings
from process import schema_of
from trying import cases

from scorecard.answers import Answers
from scorecard.assessment import assess
from scorecard.brief import Brief
from scorecard.cli.app import app
from scorecard.cli.reweighing import reweigh_result
from scorecard.cli.scoring import check_result
from scorecard.criteria import CriteriaSet, Limit, Steady, WeightsNote
from scorecard.errors import Place, Problem
from scorecard.problem_result import problems_result

WARNING = Problem(code="seen-long-ago", place=Place(file="makers.xlsx", cell="D7"), found="a", wanted="b")


COMMANDS = sorted(path.name.removesuffix(".json") for path in files("scorecard").joinpath("schemas").iterdir())


def test_every_command_has_a_schema():
    assert sorted(command.callback.__name__ for command in app.registered_commands) == COMMANDS


def fits(command, result):
    """Return whether a result, as it would be printed, fits the schema; NaN cannot be printed at all."""
    printed = json.loads(json.dumps(result, allow_nan=False))
    return jsonschema.Draft202012Validator(schema_of(command)).is_valid(printed)


def everything():
    """A case with each kind of answer, a steadied rating, a division, open and failed limits, and a warning."""
    steady = Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20)
    criteria = [
        numbers("rating", 3, (4, 0), (5, 100), within=(0, 5), limit=Limit(at_least=4), steady=steady),
        numbers("minimum", 2, (1, 100), (2, 0), per_quantity=True, limit=Limit(at_most=2.5)),
        choices("method", 1, {"kiln": 100, "sticker": 0}, limit=Limit(none_of=("sticker",))),
        numbers("notes_kept", 0),
    ]
    makers = {
        "Fernhill": [4.8, 200, "kiln", None],
        "Brightholm": [None, (100, None), None, 7],
        "Cold Quay": [(4, 5), 300, "kiln", 1],
        "Dale": [3.1, 900, "sticker", (1, 2)],
    }
    counts = {"rating": Answers(np.array([4.0, 9, np.nan, 50]), np.array([4.0, np.inf, np.nan, 50]))}
    brief = Brief(item="enamel mug", quantity=200, designs=4)
    units = ("order", None, "design", "order")
    return make_case(criteria, makers, brief=brief, counts=counts, minimum_per=units)


def of_pairs():
    case = rated((3, 1), {"Fernhill": [1, 2], "Brightholm": [2, 1]})
    note = WeightsNote(method="pairs", ratio=0.0, lambda_max=2.0, random_index="table")
    return case.with_criteria(CriteriaSet(case.criteria.criteria, note))


def scored(case):
    return assess(case, as_of=AS_OF).as_json()


@pytest.mark.parametrize("command", COMMANDS)
def test_each_schema_is_a_schema(command):
    jsonschema.Draft202012Validator.check_schema(schema_of(command))


@pytest.mark.parametrize(
    "case",
    [
        everything(),
        of_pairs(),
        rated((1,), {"Fernhill": [1]}),
        rated((1,), {"Fernhill": [1]}, limit=Limit(at_least=5)),
        rated((1, 1), {"Fernhill": [1, 2], "Brightholm": [2, 1]}),
    ],
    ids=["everything", "pairs", "one maker", "nobody ranked", "joint leaders"],
)
def test_a_score_fits_its_schema(case):
    jsonschema.validate(json.loads(json.dumps(scored(case), allow_nan=False)), schema_of("score"))


@settings(max_examples=25, deadline=None)
@given(cases())
def test_any_score_fits_its_schema(case):
    assert fits("score", scored(case))


@pytest.mark.parametrize("command", COMMANDS)
def test_a_stopped_run_fits_the_schema_of_every_command(command):
    assert fits(command, problems_result([WARNING], [WARNING]))
    assert fits(command, problems_result([WARNING], [], [WARNING]))


def test_a_check_fits_its_schema():
    assert fits("check", check_result(everything(), date(2026, 11, 25)))


def test_both_sides_of_another_weighting_fit_their_schema():
    case = everything()
    other = case.with_criteria(case.criteria.with_weights({"minimum": 9.5}))
    assert fits("reweigh", reweigh_result(assess(case, as_of=AS_OF), assess(other, as_of=AS_OF)))


def spoilt(change):
    result = scored(everything())
    change(result)
    return result


@pytest.mark.parametrize(
    "change",
    [
        lambda result: result.update(extra=1),
        lambda result: result.pop("questions"),
        lambda result: result["makers"][0].update(score=100.5),
        lambda result: result["makers"][0].update(rank=None),
        lambda result: result["makers"][-1].update(rank=4),
        lambda result: result["makers"][0]["criteria"]["rating"].update(answer=[4, 5]),
        lambda result: result["shares"].update(rating=1.5),
        lambda result: result.update(as_of="25.11.2026"),
    ],
    ids=["a key more", "a key less", "above 100", "no rank", "ruled out and ranked", "a list", "above 1", "a date"],
)
def test_what_the_tool_must_never_print_does_not_fit(change):
    assert not fits("score", spoilt(change))


def test_a_schedule_is_the_same_in_both_of_its_schemas():
    score, dates = schema_of("score")["$defs"], schema_of("dates")["$defs"]
    parts = ("settings", "plan", "order", "steps", "way_out", "note", "way", "count", "days")

    assert [dates[part] for part in parts] == [score[part] for part in parts]


def test_nan_cannot_be_printed():
    with pytest.raises(ValueError, match="not JSON compliant"):
        fits("score", spoilt(lambda result: result["makers"][0].update(score=float("nan"))))


def test_a_stopped_run_without_a_problem_does_not_fit():
    assert not fits("score", problems_result([]))
