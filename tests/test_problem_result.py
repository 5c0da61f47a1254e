"""The result of a run that the files stopped."""

from scorecard.errors import Place, Problem
from scorecard.problem_result import problems_result

ONE = Problem(code="missing", place=Place(file="makers.xlsx"), found="no sheet", wanted="Add one")
TWO = Problem(code="unused", place=Place(file="makers.xlsx"), found="a column", wanted="Leave it")


def test_a_stopped_run_lists_problems_and_warnings():
    expected = {"schema": "scorecard/1", "problems": [ONE.as_json()], "warnings": [TWO.as_json()]}
    assert expected == problems_result([ONE], [TWO])


def test_a_stopped_run_lists_what_was_set_aside_where_anything_was():
    assert [TWO.as_json()] == problems_result([ONE], [], [TWO])["set_aside"]
