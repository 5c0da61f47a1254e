"""Arrays of answers: what they refuse, and the cell that each came from."""

import numpy as np
import pytest
from cases import make_case, numbers

from scorecard.answers import Answers, MakerTable
from scorecard.errors import Place

NAN = np.nan


@pytest.mark.parametrize(
    ("low", "high"),
    [([2.0], [1.0]), ([1.0], [1.0, 2.0]), ([NAN], [1.0]), ([1.0], [NAN])],
)
def test_ends_that_do_not_belong_together_are_refused(low, high):
    with pytest.raises(ValueError, match=r"one shape|both ends"):
        Answers(np.array(low), np.array(high))


def test_answers_cannot_be_changed_in_place():
    with pytest.raises(ValueError, match="read-only"):
        Answers(np.array([1.0]), np.array([2.0])).low[0] = 5


def test_answers_do_not_follow_the_array_they_were_made_of():
    ends = np.array([1.0])
    answers = Answers(ends, ends)
    ends[0] = 9
    assert 1.0 == answers.low[0]


def test_a_range_is_known_and_nan_is_not():
    assert [True, False] == Answers(np.array([1.0, NAN]), np.array([np.inf, NAN])).known.tolist()


def test_of_all_unknown_answers_none_is_known():
    assert [False, False, False] == Answers.all_unknown(3).known.tolist()


def test_an_answer_has_its_cell():
    table = make_case([numbers("a", 1), numbers("b", 1)], {"Fernhill": [1, 2], "Brightholm": [3, 4]}).table
    assert Place(file="makers.xlsx", sheet="Makers", cell="C3") == table.place(1, "b")


def test_a_column_that_is_not_there_gives_the_cell_of_the_makers_name():
    table = MakerTable(makers=("Fernhill",), rows=(7,), file="makers.csv", sheet=None, letters={"maker": "B"})
    assert "B7" == table.place(0, "rating").cell


def test_the_length_of_a_table_is_its_number_of_makers():
    assert 2 == len(make_case([numbers("a", 1)], {"Fernhill": [1], "Brightholm": [3]}).table)
