import pytest

from scorecard.criteria import Criterion
from scorecard.reading.criterion_table import MEASURE_NAMES, prettified, read_criterion
from scorecard.reading.toml_tables import Notes, Table
from scorecard.value_functions import PiecewiseLinear

POINTS = [[0, 0], [10, 100]]
GOOD = {"weight": 15, "points": POINTS}


def reading(values, key="years_trading", *, has_weights_table=False):
    """Return a criterion, and its problems and warnings as (code, key within the criterion)."""
    notes = Notes("criteria.toml")
    result = read_criterion(Table(values, ("criteria", key), notes), has_weights_table=has_weights_table)
    stem = f"criteria.{key}"
    return result, [
        (note.code, note.place.key.removeprefix(stem).lstrip(".")) for note in notes.problems + notes.warnings
    ]


def test_a_criterion_needs_little():
    expected = Criterion(
        key="years_trading",
        title="Years trading",
        weight=15.0,
        value=PiecewiseLinear(((0.0, 0.0), (10.0, 100.0))),
        column="Years trading",
        unknown="middle",
    )

    assert (expected, []) == reading(GOOD)


def test_a_criterion_may_carry_its_own_question():
    assert "How hot is your kiln?" == reading(GOOD | {"question": " How hot is  your kiln? "})[0].question


def test_a_question_that_is_empty_or_no_text_is_a_problem():
    assert [("empty-text", "question")] == reading(GOOD | {"question": " "})[1]
    assert [("not-a-text", "question")] == reading(GOOD | {"question": 3})[1]


def test_without_a_column_the_title_is_the_column():
    assert "Years in trade" == reading(GOOD | {"title": "Years in trade"})[0].column


@pytest.mark.parametrize(
    ("key", "title"),
    [("years_trading", "Years trading"), ("on-time", "On time"), ("OTD", "OTD"), ("_", "_"), ("ärger", "Ärger")],
)
def test_a_key_becomes_a_title(key, title):
    assert title == prettified(key)


@pytest.mark.parametrize("name", MEASURE_NAMES)
def test_a_criterion_can_draw_on_a_measure(name):
    criterion, problems = reading(GOOD | {"measure": name})

    assert (name, None, []) == (criterion.measure, criterion.column, problems)


@pytest.mark.parametrize("rule", ["worst", "middle", "best", 0, 40.5, 100])
def test_unknown_answers_count_as_it_says(rule):
    assert rule == reading(GOOD | {"unknown": rule})[0].unknown


def test_an_answer_can_be_taken_per_quantity():
    assert reading(GOOD | {"per": "quantity"})[0].per_quantity


@pytest.mark.parametrize(
    ("changed", "code", "key"),
    [
        ({"column": "Years", "measure": "response_days"}, "column-and-measure", ""),
        ({"measure": "response_day"}, "not-an-option", "measure"),
        ({"measure": 3}, "not-an-option", "measure"),
        ({"column": ""}, "empty-text", "column"),
        ({"column": 3}, "not-a-text", "column"),
        ({"title": ""}, "empty-text", "title"),
        ({"unit": 3}, "not-a-text", "unit"),
        ({"weight": -1}, "negative-weight", "weight"),
        ({"weight": "15"}, "number-in-quotes", "weight"),
        ({"weight": True}, "true-false-as-number", "weight"),
        ({"weight": 10**400}, "number-too-large", "weight"),
        ({"weight": float("nan")}, "not-finite", "weight"),
        ({"per": "design"}, "not-an-option", "per"),
        ({"per": "quantity", "measure": "response_days"}, "per-without-numbers", "per"),
        ({"unknown": "wurst"}, "not-an-option", "unknown"),
        ({"unknown": 101}, "points-outside-scale", "unknown"),
        ({"unknown": True}, "true-false-as-number", "unknown"),
        ({"unknown": [1]}, "not-a-number", "unknown"),
        ({"wieght": 3}, "unknown-key", "wieght"),
    ],
)
def test_each_kind_of_mistake_is_noted_at_its_key(changed, code, key):
    assert [(code, key)] == reading(GOOD | changed)[1]


def test_choices_are_not_taken_per_quantity():
    assert [("per-without-numbers", "per")] == reading({"weight": 1, "choices": {"a": 0}, "per": "quantity"})[1]


def test_an_empty_unit_is_no_unit():
    criterion, problems = reading(GOOD | {"unit": ""})

    assert ("", []) == (criterion.unit, problems)


@pytest.mark.parametrize("key", ["", "  ", "a=b", "a\tb", "a\u202eb"])
def test_a_name_that_cannot_be_typed_or_seen_is_noted(key):
    notes = Notes("criteria.toml")
    criterion = read_criterion(Table(GOOD, ("criteria", key), notes), has_weights_table=False)

    assert (None, ["criterion-name"]) == (criterion, [problem.code for problem in notes.problems])


def test_a_missing_weight_counts_as_nothing_and_is_told():
    criterion, warnings = reading({"points": POINTS})

    assert (0.0, [("no-weight", "weight")]) == (criterion.weight, warnings)


def test_a_weight_beside_judgements_is_a_problem_and_none_is_not():
    assert [("weight-besides-judgements", "weight")] == reading(GOOD, has_weights_table=True)[1]
    assert [] == reading({"points": POINTS}, has_weights_table=True)[1]


def test_a_criterion_with_a_faulty_part_can_still_have_its_answers_checked():
    criterion, _ = reading(GOOD | {"within": [5, 0], "weight": "15"})

    assert (None, 0.0) == (criterion.within, criterion.weight)


def test_all_mistakes_of_a_criterion_are_noted_at_once():
    faulty = {"weight": "15", "column": 3, "points": [[0, 0]], "limit": {}, "steady": 1, "unknown": "x", "per": 1}

    codes = sorted(code for code, _ in reading(faulty)[1])
    expected = ["empty-limit", "not-a-table", "not-a-text", "not-an-option", "not-an-option", "number-in-quotes"]
    assert [*expected, "too-few-points"] == codes
