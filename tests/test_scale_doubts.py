"""Warnings where all known answers lie beyond one end of a criterion's points."""

from dataclasses import replace

import pytest
from cases import AS_OF, choices, make_case, numbers

from scorecard.assessment import assess

FALLING = ((5, 100), (12, 0))


def doubts(answers, *knots, **more):
    criterion = replace(numbers("a", 1, *knots), **more)
    case = make_case([criterion], {f"maker {at}": [answer] for at, answer in enumerate(answers)})
    return [one for one in assess(case, as_of=AS_OF).case.warnings if one.code == "beyond-points"]


def test_answers_all_beyond_the_end_of_no_points_warn_at_the_points():
    (one,) = doubts([13.2, 20, None, 40], *FALLING)

    assert "criteria.a.points" == one.place.key
    assert "all 3 known answers (13.20 to 40.00) are above 12, where points are 0: they are not told apart" == one.found


def test_answers_all_below_the_first_number_of_a_rising_scale_warn():
    (one,) = doubts([1, 2], (3, 0), (10, 100))

    assert "all 2 known answers (1.00 to 2.00) are below 3, where points are 0" in one.found


@pytest.mark.parametrize("answers", [[13, 12], [13, 11], [13], [13, None], [12, 12]])
def test_an_answer_on_the_scale_or_one_alone_is_no_doubt(answers):
    assert [] == doubts(answers, *FALLING)


def test_a_range_counts_whole():
    assert ([], 1) == (doubts([(11, 14), 15], *FALLING), len(doubts([(13, 14), 15], *FALLING)))


def test_all_good_enough_is_no_fault_of_a_scale():
    assert [] == doubts([1, 2], *FALLING)


def test_but_prices_all_cheaper_than_the_first_number_are():
    (one,) = doubts([1, 2], *FALLING, column="Unit price")

    assert "all 2 known answers (1.00 to 2.00) are below 5, where points are 100" in one.found


def test_choices_have_no_ends():
    case = make_case([choices("a", 1, {"fine": 100, "none": 0})], {"Ash": ["none"], "Birch": ["none"]})

    assert [] == [one for one in assess(case, as_of=AS_OF).case.warnings if one.code == "beyond-points"]
