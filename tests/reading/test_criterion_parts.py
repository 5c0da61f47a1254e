import pytest

from scorecard.criteria import Limit, Steady
from scorecard.reading.criterion_parts import kind_of, read_limit, read_steady, read_value, read_within, stand_in
from scorecard.reading.toml_tables import Notes, Table
from scorecard.value_functions import Choices, PiecewiseLinear

POINTS = {"points": [[0, 0], [10, 100]]}
CHOICES = {"choices": {"Free": 100, "paid": 60}}


def reading(read, values):
    """Return what a part is read as, and its problems as (code, key within the criterion)."""
    notes = Notes("criteria.toml")
    result = read(Table(values, ("criteria", "a"), notes))
    return result, [
        (problem.code, problem.place.key.removeprefix("criteria.a").lstrip(".")) for problem in notes.problems
    ]


def value(**values):
    return reading(read_value, values)


def limit(kind, **values):
    given = {"numbers": POINTS, "choices": CHOICES}[kind]
    return reading(lambda table: read_limit(table, kind), given | {"limit": values})


def within(bounds, kind="numbers"):
    return reading(lambda table: read_within(table, kind), {"within": bounds})


def steady(values, kind="numbers", bounds=None):
    return reading(lambda table: read_steady(table, kind, bounds), {"steady": values})


@pytest.mark.parametrize(
    ("values", "kind"), [(POINTS, "numbers"), (CHOICES, "choices"), ({}, None), (POINTS | CHOICES, None)]
)
def test_points_are_for_numbers_and_choices_for_words(values, kind):
    assert kind == kind_of(Table(values, (), Notes("criteria.toml")))


def test_points_become_straight_lines():
    assert (PiecewiseLinear(((0.0, 0.0), (3.0, 50.0))), []) == value(points=[[0, 0], [3, 50]])


def test_choices_become_a_table_in_their_order():
    assert (Choices((("Free", 100.0), ("paid", 60.0))), []) == value(**CHOICES)


@pytest.mark.parametrize(
    ("values", "problems"),
    [
        ({}, [("no-points", "")]),
        (POINTS | CHOICES, [("points-and-choices", "")]),
        ({"points": []}, [("not-a-list", "points")]),
        ({"points": 5}, [("not-a-list", "points")]),
        ({"points": [[0, 0]]}, [("too-few-points", "points")]),
        ({"points": [[0, 0], [1]]}, [("not-a-pair", "points")]),
        ({"points": [[0, 0], 1]}, [("not-a-pair", "points")]),
        ({"points": [0, 0]}, [("not-a-pair", "points")] * 2),
        ({"points": [[0, 0], ["3", 50]]}, [("number-in-quotes", "points")]),
        ({"points": [[0, 0], [3, 101]]}, [("points-outside-scale", "points")]),
        ({"points": [[0, -1], [3, 101]]}, [("points-outside-scale", "points")] * 2),
        ({"points": [[3, 0], [3, 100]]}, [("points-not-increasing", "points")]),
        ({"points": [[3, 0], [0, 100]]}, [("points-not-increasing", "points")]),
        (
            {"points": [[5, 0], [3, 120], [2, "x"]]},
            [
                ("points-outside-scale", "points"),
                ("number-in-quotes", "points"),
                ("points-not-increasing", "points"),
                ("points-not-increasing", "points"),
            ],
        ),
        ({"points": [[0, 0], [float("inf"), 100]]}, [("not-finite", "points")]),
        ({"choices": {}}, [("no-choices", "choices")]),
        ({"choices": ["free"]}, [("not-a-table", "choices")]),
        ({"choices": {"free": 101}}, [("points-outside-scale", "choices")]),
        ({"choices": {"free": True}}, [("true-false-as-number", "choices")]),
        ({"choices": {"free": 100, " FREE ": 50}}, [("choice-twice", "choices")]),
    ],
)
def test_each_kind_of_mistake_leaves_no_value_function(values, problems):
    assert (None, problems) == value(**values)


@pytest.mark.parametrize("word", ["", " ", "-", "?", "n/a", "N/A", "Unknown"])
def test_a_choice_cannot_be_a_word_that_means_unknown(word):
    assert (None, [("choice-means-unknown", "choices")]) == value(choices={word: 0, "free": 100})


def test_none_is_a_choice_like_any_other():
    assert [] == value(choices={"none": 0, "free": 100})[1]


def test_within_is_two_increasing_numbers():
    assert ((0.0, 5.0), []) == within([0, 5])


@pytest.mark.parametrize("bounds", [[5, 0], [0, 0], [0], [0, 1, 2]])
def test_other_bounds_are_noted(bounds):
    assert (None, [("not-two-bounds", "within")]) == within(bounds)


@pytest.mark.parametrize(("bounds", "code"), [(5, "not-a-list"), ([], "not-a-list"), (["0", 5], "number-in-quotes")])
def test_bounds_that_are_no_numbers_are_noted(bounds, code):
    assert (None, [(code, "within")]) == within(bounds)


def test_bounds_are_for_numbers():
    assert (None, [("wrong-kind-of-answers", "within")]) == within([0, 5], kind="choices")


GOOD_STEADY = {"count_column": "Ratings counted", "usual": 4.5, "usual_counts_as": 20}


def test_a_rating_is_steadied_as_it_says():
    expected = Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20.0)

    assert (expected, []) == steady(GOOD_STEADY, bounds=(0.0, 5.0))


@pytest.mark.parametrize(
    ("changed", "problems"),
    [
        ({"count_column": 5}, [("not-a-text", "steady.count_column")]),
        ({"usual": "4.5"}, [("number-in-quotes", "steady.usual")]),
        ({"usual": 5.5}, [("usual-outside", "steady.usual")]),
        ({"usual_counts_as": 0}, [("not-above-zero", "steady.usual_counts_as")]),
        ({"usul": 1}, [("unknown-key", "steady.usul")]),
    ],
)
def test_each_kind_of_mistake_in_steadying_is_noted(changed, problems):
    assert problems == steady(GOOD_STEADY | changed, bounds=(0.0, 5.0))[1]


def test_steadying_needs_all_three():
    expected = [("missing-key", f"steady.{key}") for key in GOOD_STEADY]

    assert (None, expected) == steady({})


@pytest.mark.parametrize(("given", "code"), [(GOOD_STEADY, "wrong-kind-of-answers"), (20, "not-a-table")])
def test_steadying_is_a_table_for_numbers(given, code):
    assert (None, [(code, "steady")]) == steady(given, kind="choices")


def test_a_limit_on_numbers_has_one_end_or_two():
    assert (Limit(at_least=1.0, at_most=2.5), []) == limit("numbers", at_least=1, at_most=2.5)
    assert (Limit(at_most=2.5), []) == limit("numbers", at_most=2.5)


def test_a_limit_on_choices_is_kept_as_the_criteria_file_spells_them():
    assert (Limit(one_of=("Free",), none_of=("paid",)), []) == limit("choices", one_of=[" free"], none_of=["PAID "])


@pytest.mark.parametrize(
    ("kind", "values", "problems"),
    [
        ("numbers", {}, [("empty-limit", "limit")]),
        ("numbers", {"at_leat": 1}, [("unknown-key", "limit.at_leat")]),
        ("numbers", {"at_least": 2, "at_most": 1}, [("limit-allows-nothing", "limit")]),
        ("numbers", {"at_least": "2"}, [("number-in-quotes", "limit.at_least")]),
        ("numbers", {"one_of": ["free"]}, [("wrong-kind-of-answers", "limit.one_of")]),
        ("choices", {"at_least": 2}, [("wrong-kind-of-answers", "limit.at_least")]),
        ("choices", {"one_of": []}, [("not-a-list", "limit.one_of")]),
        ("choices", {"one_of": "free"}, [("not-a-list", "limit.one_of")]),
        ("choices", {"none_of": [3]}, [("not-a-text", "limit.none_of")]),
        ("choices", {"none_of": ["fre", "sold"]}, [("unknown-choice", "limit.none_of")] * 2),
        ("choices", {"none_of": ["paid", "FREE"]}, [("limit-allows-nothing", "limit.none_of")]),
        ("choices", {"one_of": ["free"], "none_of": ["free"]}, [("limit-allows-nothing", "limit.none_of")]),
    ],
)
def test_each_kind_of_mistake_in_a_limit_is_noted(kind, values, problems):
    assert problems == limit(kind, **values)[1]


def test_a_limit_is_a_table():
    assert (None, [("not-a-table", "limit")]) == reading(lambda table: read_limit(table, "numbers"), {"limit": 4})


@pytest.mark.parametrize(
    ("values", "keys"),
    [
        ({"at_least": 5.5}, ["limit.at_least"]),
        ({"at_most": -1}, ["limit.at_most"]),
        ({"at_least": 5, "at_most": 5}, []),
        ({"at_least": 0, "at_most": 9}, []),
    ],
)
def test_a_limit_beyond_all_permitted_answers_lets_nobody_in(values, keys):
    _, problems = reading(lambda table: read_limit(table, "numbers", (0.0, 5.0)), {"limit": values})

    assert [("limit-allows-nothing", key) for key in keys] == problems


@pytest.mark.parametrize(
    ("values", "kind", "names"),
    [
        ({"points": 3}, "numbers", None),
        ({"choices": {"free": 120, "paid": "60"}}, "choices", ("free", "paid")),
        ({"choices": {"free": 100, "FREE ": 50, "?": 0}}, "choices", ("FREE ",)),
        ({"choices": ["free"]}, "choices", ()),
        (POINTS | CHOICES, None, ()),
        ({}, None, ()),
    ],
)
def test_answers_can_be_checked_though_their_worth_cannot_be_told(values, kind, names):
    found = stand_in(Table(values, ("criteria", "a"), Notes("criteria.toml")), kind)

    assert names == (None if kind == "numbers" else tuple(name for name, _ in found.table))
