import pytest

from scorecard.reading.toml_tables import Notes, Table
from scorecard.reading.weights_table import read_weights

NAMES = ["a", "b", "c"]


def reading(values, names=NAMES):
    """Return the weights, and the problems and warnings as (code, key)."""
    notes = Notes("criteria.toml")
    derived = read_weights(Table(values, ("weights",), notes), names)
    return derived, notes.warnings, [(problem.code, problem.place.key) for problem in notes.problems]


def ranks(ranks, names=NAMES, **values):
    return reading({"method": "ranks", "ranks": ranks} | values, names)


def pairs(pairs, names=NAMES, **values):
    return reading({"method": "pairs", "pairs": pairs} | values, names)


def weights(result):
    """Return the weights, rounded for comparison by hand."""
    return {name: round(weight, 6) for name, weight in result[0].weights.items()}


@pytest.mark.parametrize(
    ("rule", "expected"),
    [
        ({}, {"a": 5 / 18, "b": 1 / 9, "c": 11 / 18}),
        ({"rule": "centroid"}, {"a": 5 / 18, "b": 1 / 9, "c": 11 / 18}),
        ({"rule": "sum"}, {"a": 1 / 3, "b": 1 / 6, "c": 1 / 2}),
        ({"rule": "reciprocal"}, {"a": 3 / 11, "b": 2 / 11, "c": 6 / 11}),
    ],
)
def test_ranks_give_the_weights_of_the_rule_in_the_order_of_the_file(rule, expected):
    assert {name: round(weight, 6) for name, weight in expected.items()} == weights(ranks(["c", "a", "b"], **rule))


def test_tied_criteria_share_a_place():
    # Sum weights of three: 1/2, 1/3, 1/6; the last two share 1/4 each.
    assert {"a": 0.25, "b": 0.5, "c": 0.25} == weights(ranks(["b", ["c", "a"]], rule="sum"))


def test_one_criterion_weighs_all():
    assert {"a": 1.0} == weights(ranks(["a"], ["a"]))
    assert {"a": 1.0} == weights(pairs([], ["a"]))


def test_the_note_says_where_weights_come_from():
    assert ("ranks", None) == (ranks(NAMES)[0].note.method, ranks(NAMES)[0].note.ratio)
    note = pairs([["a", "b", 6], ["a", "c", 3], ["b", "c", "1/2"]])[0].note
    assert ("pairs", "Saaty 1980", 3.0) == (note.method, note.random_index, round(note.lambda_max, 9))


@pytest.mark.parametrize(
    ("listing", "problems"),
    [
        (["a", "b"], ["not-ranked"]),
        (["a"], ["not-ranked", "not-ranked"]),
        (["a", "b", "c", "a"], ["ranked-twice"]),
        (["a", "b", "c", "d"], ["unknown-criterion"]),
        (["a", "b", "d", "d"], ["unknown-criterion", "unknown-criterion", "not-ranked"]),
        (["a", "b", ["c", []]], ["unknown-criterion"]),
        (["a", "b", "c", []], ["empty-tie"]),
        (["a", "b", 3], ["unknown-criterion", "not-ranked"]),
        ([], ["not-a-list"]),
        ("a, b, c", ["not-a-list"]),
    ],
)
def test_ranks_name_every_criterion_once(listing, problems):
    derived, _, found = ranks(listing)

    assert (None, [(code, "weights.ranks") for code in problems]) == (derived, found)


def test_pairs_give_the_principal_eigenvector():
    # The consistent matrix of the R package ahp's tests: 2/3, 1/9, 2/9.
    result = pairs([["a", "b", 6], ["c", "a", "1/3"], ["b", "c", 0.5]])

    assert ({"a": 0.666667, "b": 0.111111, "c": 0.222222}, [], []) == (weights(result), result[1], result[2])


@pytest.mark.parametrize("value", ["1/9", 1 / 9, 9, "9/1", "1/2.5", " 1 / 7 "])
def test_a_comparison_lies_between_a_ninth_and_nine(value):
    assert [] == pairs([["a", "b", value]], ["a", "b"])[2]


@pytest.mark.parametrize(
    ("listing", "problems"),
    [
        ([], ["pair-missing"]),
        ([["a", "b", 3]], ["pair-missing"]),
        ([["a", "b", 30]], ["beyond-nine", "pair-missing"]),
        ([["a", "b", 3], ["a", "c", 3], ["b", "c", 1], ["c", "b", 2]], ["pair-twice"]),
        ([["a", "a", 1], ["a", "b", 3], ["a", "c", 3], ["b", "c", 1]], ["pair-with-itself"]),
        ([["a", "b", 10], ["a", "c", "1/10"], ["b", "c", 0]], ["beyond-nine"] * 3),
        ([["a", "b", "1/0"], ["a", "c", 1], ["b", "c", 1]], ["beyond-nine"]),
        ([["a", "b", "3"], ["a", "c", 1], ["b", "c", 1]], ["number-in-quotes"]),
        ([["a", "b"], ["a", "c", 1], ["b", "c", 1]], ["not-a-comparison"]),
        (["a", ["a", "b", 1], ["a", "c", 1], ["b", "c", 1]], ["not-a-comparison"]),
        ([["a", "d", 2], ["a", "b", 1], ["a", "c", 1], ["b", "c", 1]], ["unknown-criterion"]),
        ([["a", ["b"], 2], ["a", "b", 1], ["a", "c", 1], ["b", "c", 1]], ["unknown-criterion"]),
        (3, ["not-a-list"]),
    ],
)
def test_pairs_compare_every_two_criteria_once(listing, problems):
    derived, _, found = pairs(listing)

    assert (None, [(code, "weights.pairs") for code in problems]) == (derived, found)


def test_all_missing_pairs_are_named():
    notes = Notes("criteria.toml")
    read_weights(Table({"method": "pairs", "pairs": [["c", "a", 2]]}, ("weights",), notes), NAMES)

    assert 'not compared: "a" and "b"; "b" and "c"' == notes.problems[0].found


def test_more_than_ten_criteria_are_too_many_for_pairs():
    names = [f"c{number}" for number in range(11)]

    assert [("too-many-for-pairs", "weights.pairs")] == pairs([["c0", "c1", 1]], names)[2]


def test_what_is_wrong_with_pairs_is_told_though_they_are_too_many():
    names = [f"c{number}" for number in range(11)]
    found = pairs([["c0", "c1", 10], ["c0", "x", 1], ["c0", "c2", 1], ["c2", "c0", 1]], names)[2]

    assert ["too-many-for-pairs", "beyond-nine", "unknown-criterion", "pair-twice"] == [code for code, _ in found]


def test_comparisons_that_disagree_give_a_warning_with_the_worst_pair_and_the_value_that_would_fit():
    # All follow from a : b : c : d = 8 : 4 : 2 : 1 but the last, which says 1/4 where 2 would fit.
    listing = [["a", "b", 2], ["a", "c", 4], ["a", "d", 8], ["b", "c", 2], ["b", "d", 4], ["d", "c", 4]]
    derived, warnings, problems = pairs(listing, [*NAMES, "d"])

    [warning] = warnings
    assert derived.note.ratio > 0.10
    assert ("pairs-disagree", "weights.pairs", []) == (warning.code, warning.place.key, problems)
    assert '"d" and "c" fit worst: 4' in warning.found
    assert '"1/2" would fit' in warning.wanted


def test_a_fitting_value_beyond_the_scale_is_named_at_its_end():
    # From a : c = 9 and c : b = 9 follows a : b = 81.
    [warning] = pairs([["a", "b", 1], ["c", "b", 9], ["a", "c", 9]])[1]

    assert "From the rest, 9 would fit" in warning.wanted


def test_comparisons_that_nearly_agree_give_no_warning():
    # Choosing a leader, the criteria's matrix: a ratio of .044 (see the tests of weighting).
    listing = [["a", "b", 4], ["a", "c", 3], ["a", "d", 7], ["b", "c", "1/3"], ["b", "d", 3], ["c", "d", 5]]

    assert [] == pairs(listing, [*NAMES, "d"])[1]


@pytest.mark.parametrize(
    ("values", "problems"),
    [
        ({}, [("missing-key", "weights.method")]),
        ({"method": "points"}, [("not-an-option", "weights.method")]),
        ({"method": "ranks"}, [("missing-key", "weights.ranks")]),
        ({"method": "pairs"}, [("missing-key", "weights.pairs")]),
        ({"method": "ranks", "ranks": NAMES, "rule": "mean"}, [("not-an-option", "weights.rule")]),
        ({"method": "ranks", "ranks": ["a", "b"], "rule": "mean"},
         [("not-an-option", "weights.rule"), ("not-ranked", "weights.ranks")]),
        ({"method": "rank", "ranks": ["a", "b"], "rule": "mean"},
         [("not-an-option", "weights.method"), ("not-an-option", "weights.rule"), ("not-ranked", "weights.ranks")]),
        ({"method": "pair", "pairs": [["a", "b", 10], ["a", "c", 1], ["b", "c", 1]]},
         [("not-an-option", "weights.method"), ("beyond-nine", "weights.pairs")]),
        ({"rule": "mean"}, [("missing-key", "weights.method"), ("not-an-option", "weights.rule")]),
        ({"method": "ranks", "ranks": NAMES, "pairs": []}, [("not-with-this-method", "weights.pairs")]),
        ({"method": "ranks", "ranks": NAMES, "rul": "sum"}, [("unknown-key", "weights.rul")]),
    ],
)  # fmt: skip
def test_each_kind_of_mistake_is_noted_at_its_key(values, problems):
    assert problems == reading(values)[2]
