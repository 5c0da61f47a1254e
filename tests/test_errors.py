"""Places and problems in words and as JSON, and the exit status of each branch of the tree."""

import pytest

from scorecard.errors import InputError, Place, Problem, ScorecardError, UsageError, WriteError

CELL = Problem(
    code="not-a-number",
    place=Place(file="makers.xlsx", sheet="Makers", cell="D7"),
    found="'about 100' is not a number of pieces",
    wanted="Write a number, a range such as 3-5, or leave the cell empty",
)
KEY = Problem(
    code="unknown-key",
    place=Place(file="criteria.toml", key="criteria.rating.wieght"),
    found="there is no such key",
    wanted="Write weight",
)


@pytest.mark.parametrize(
    ("place", "words"),
    [
        (CELL.place, "makers.xlsx, Makers!D7"),
        (KEY.place, "criteria.toml, criteria.rating.wieght"),
        (Place(file="makers.csv", cell="B2"), "makers.csv, B2"),
        (Place(file="makers.xlsx"), "makers.xlsx"),
        (Place(), ""),
    ],
)
def test_a_place_reads_from_the_file_inwards(place, words):
    assert words == str(place)


def test_a_problem_says_where_what_was_found_and_what_to_write():
    expected = (
        "makers.xlsx, Makers!D7: 'about 100' is not a number of pieces. "
        "Write a number, a range such as 3-5, or leave the cell empty."
    )
    assert expected == str(CELL)


def test_a_problem_as_json_has_every_part_of_its_place():
    expected = {
        "code": "unknown-key",
        "file": "criteria.toml",
        "sheet": None,
        "cell": None,
        "key": "criteria.rating.wieght",
        "found": "there is no such key",
        "wanted": "Write weight",
    }
    assert expected == KEY.as_json()


def test_an_input_error_holds_every_problem_and_every_warning():
    error = InputError(iter([CELL, KEY]), [KEY])
    assert ((CELL, KEY), (KEY,)) == (error.problems, error.warnings)


def test_an_input_error_reads_one_problem_a_line():
    assert f"{CELL}\n{KEY}" == str(InputError([CELL, KEY]))


@pytest.mark.parametrize(("kind", "status"), [(ScorecardError, 1), (UsageError, 2), (InputError, 3), (WriteError, 1)])
def test_each_branch_has_its_exit_status(kind, status):
    assert status == kind.exit_status


@pytest.mark.parametrize("kind", [UsageError, InputError, WriteError])
def test_every_expected_error_is_a_scorecard_error(kind):
    assert issubclass(kind, ScorecardError)
