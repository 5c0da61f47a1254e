import pytest

from scorecard.reading.criteria_order import problems_in_order, warnings_in_order
from scorecard.reading.criteria_toml import read_tables
from scorecard.reading.toml_tables import Notes


def left(text, *noted):
    """Return the codes left, in order, of a text and of what was noted as (code, path)."""
    notes = Notes("criteria.toml")
    for code, path in noted:
        notes.problem(code, path, "found", "wanted")
    return [problem.code for problem in problems_in_order(read_tables(text), notes)]


def test_problems_come_in_the_order_of_the_lines_where_they_stand():
    noted = [("third", ("b", "x")), ("second", ("b",)), ("first", ("a",)), ("none", ("z",))]

    assert ["none", "first", "second", "third"] == left("a = 1\n[b]\nx = 1\n", *noted)


def test_a_problem_of_a_key_that_is_not_there_stands_at_its_table():
    assert ["at-b", "at-c"] == left("[b]\n[c]\n", ("at-c", ("c", "x")), ("at-b", ("b", "x")))


def test_the_same_problem_is_told_once():
    assert ["same"] == left("a = 1\n", ("same", ("a",)), ("same", ("a",)))


def test_a_lost_line_is_not_called_missing():
    assert ["not-toml"] == left("[a]\nb = c d\n", ("missing-key", ("a", "b")), ("no-points", ("a",)))


def test_a_lost_line_leaves_problems_elsewhere_standing():
    assert ["not-toml", "missing-key"] == left("[a]\nb = c d\n[e]\n", ("missing-key", ("e", "f")))


@pytest.mark.parametrize("text", ["a b c\n", "[b\n", "[a]\n[a]\n"])
def test_where_it_cannot_be_told_what_was_lost_nothing_is_called_missing(text):
    assert 1 == len(left(text, ("missing-key", ("z", "y")), ("unknown-criterion", ("weights", "ranks"))))


def test_a_value_read_by_a_guess_is_not_blamed_for_the_guess():
    assert ["comma-in-number"] == left("a = 1,000\n", ("not-whole", ("a",)))


def test_a_value_with_straightened_quotes_is_looked_at_like_any_other():
    assert ["curly-quotes", "not-a-country"] == left("a = “UK”\n", ("not-a-country", ("a",)))


def test_warnings_come_in_order_too_and_follow_no_loss():
    notes = Notes("criteria.toml")
    for key in ("b", "a", "lost"):
        notes.warn("no-weight", (key, "weight"), "found", "wanted")

    warnings = warnings_in_order(read_tables("[a]\n[b]\n[lost]\nweight = x y\n"), notes)
    assert ["a.weight", "b.weight"] == [warning.place.key for warning in warnings]


HEADER = "If it belongs to [c], take the # away from line 4, [c], too"


@pytest.mark.parametrize(
    ("text", "code", "wanted"),
    [
        ("[a]\n# [b]\nx = 1\n# [c]\nkey = 1\n", "unknown-key", HEADER),
        (
            "[a]\n# [b]\nx = 1\n\nkey = 1\n# [c]\n",
            "unknown-key",
            "If it belongs to [b], take the # away from line 2, [b], too",
        ),
        ("# [b]\n[a]\n\nx = 1\nkey = 1\n# [c]\n", "unknown-key", "wanted"),
        ("[a]\n# [b]\nx = 1\n# [c]\nkey = 1\n", "not-whole", "wanted"),
    ],
)
def test_of_an_unknown_key_the_header_above_it_that_stands_behind_a_hash_is_named(text, code, wanted):
    notes = Notes("criteria.toml")
    notes.problem(code, ("a", "key"), "found", "wanted")

    assert [wanted] == [problem.wanted for problem in problems_in_order(read_tables(text), notes)]
