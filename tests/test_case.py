"""The case: a value that is changed by making another."""

from cases import make_case, numbers

CASE = make_case([numbers("a", 1), numbers("b", 3)], {"Fernhill": [1, 2]})


def test_other_criteria_leave_the_case_as_it_was():
    CASE.with_criteria(CASE.criteria.with_weights({"a": 9}))
    assert 1 == CASE.criteria["a"].weight


def test_other_criteria_keep_the_makers():
    other = CASE.with_criteria(CASE.criteria.with_weights({"a": 9}))
    assert (9, CASE.table) == (other.criteria["a"].weight, other.table)
