from datetime import date, datetime, time

import pytest

from scorecard.reading.toml_tables import Notes, Table, checked_number, checked_text, dotted, shown_value


def noted(read, **values):
    """Return what is read from a table, and the problems as (code, key)."""
    notes = Notes("criteria.toml")
    result = read(Table(values, ("t",), notes))
    return result, [(problem.code, problem.place.key) for problem in notes.problems]


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (True, "true"),
        (12.0, "12"),
        pytest.param(10**5000, "a number beyond all measure", id="of 5001 digits"),
        (float("inf"), "a number beyond all measure"),
        ("a\nb", '"a b"'),
        (date(2027, 5, 14), "2027-05-14"),
        (time(7, 30), "07:30:00"),
        ([1], "a list"),
        ({}, "a table"),
    ],
)
def test_any_value_can_be_shown(value, words):
    assert words == shown_value(value)


def test_a_path_is_written_as_toml_writes_it():
    assert 'a-b._1."c d"' == dotted(("a-b", "_1", "c d"))


@pytest.mark.parametrize(
    ("value", "code"),
    [
        (True, "true-false-as-number"),
        ("70", "number-in-quotes"),
        (float("nan"), "not-finite"),
        (float("-inf"), "not-finite"),
        (10**400, "number-too-large"),
        (-(10**16), "number-too-large"),
        (1e300, "number-too-large"),
        (date(2027, 5, 14), "not-a-number"),
        ([], "not-a-number"),
        ({}, "not-a-number"),
    ],
)
def test_what_is_no_number_has_a_code_of_its_own(value, code):
    notes = Notes("criteria.toml")

    assert (None, [code]) == (checked_number(value, ("a",), notes), [problem.code for problem in notes.problems])


@pytest.mark.parametrize("value", [0, -3, 0.5, 10**15])
def test_whole_and_other_numbers_are_numbers(value):
    assert float(value) == checked_number(value, ("a",), Notes("criteria.toml"))


def test_a_text_loses_outer_and_doubled_spaces():
    assert "a b" == checked_text("  a \n b ", ("a",), Notes("criteria.toml"))


def test_an_unknown_key_is_answered_with_the_nearest_or_with_all():
    notes = Notes("criteria.toml")
    Table({"wieght": 1, "zzz": 2}, (), notes).known_keys(("weight", "unit"), "a criterion")

    expected = ["Write 'weight' if that is meant", "a criterion can have weight and unit"]
    assert expected == [problem.wanted for problem in notes.problems]


@pytest.mark.parametrize(
    ("value", "day", "codes"),
    [
        (date(2027, 5, 14), date(2027, 5, 14), []),
        (datetime(2027, 5, 14, 8, 0), None, ["date-with-time"]),
        ("2027-05-14", None, ["date-in-quotes"]),
        ("soon", None, ["date-in-quotes"]),
        (time(8, 0), None, ["not-a-date"]),
        (2027, None, ["not-a-date"]),
    ],
)
def test_a_day_is_a_date_without_quotes_and_time(value, day, codes):
    assert (day, [(code, "t.d") for code in codes]) == noted(lambda table: table.day("d"), d=value)


def test_a_date_with_a_time_is_answered_with_its_day():
    notes = Notes("criteria.toml")
    Table({"d": datetime(2027, 5, 14, 8, 0)}, (), notes).day("d")

    assert "Write the day alone: 2027-05-14" == notes.problems[0].wanted


@pytest.mark.parametrize(("value", "whole"), [(3, 3), (3.0, 3), (2, None), (2.5, None), ("3", None)])
def test_a_whole_number_has_a_least_value(value, whole):
    assert whole == noted(lambda table: table.whole("n", least=3), n=value)[0]


def test_one_of_some_words_can_be_asked_for():
    assert ("sum", []) == noted(lambda table: table.one_of("r", ("sum", "mean")), r="sum")
    assert (None, [("not-an-option", "t.r")]) == noted(lambda table: table.one_of("r", ("sum", "mean")), r=["sum"])


def test_what_is_absent_is_none_and_no_problem():
    def read(table):
        return [
            table.text("a"),
            table.number("a"),
            table.whole("a", least=1),
            table.number_above_zero("a"),
            table.day("a"),
            table.one_of("a", ("b",)),
            table.list_of("a"),
            table.table("a"),
        ]

    assert ([None] * 8, []) == noted(read)


def test_problems_of_one_kind_can_be_taken_back():
    notes = Notes("criteria.toml")
    table = Table({"x": 1}, (), notes)
    table.known_keys((), "the file")
    table.required(("y",), "the file")
    notes.take_back("unknown-key")

    assert ["missing-key"] == [problem.code for problem in notes.problems]
