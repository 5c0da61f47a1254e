"""Answers to points: the ends that an answer allows, and what counts between them."""

import numpy as np
import pytest
from cases import AS_OF, choices, make_case, numbers
from hypothesis import given
from hypothesis import strategies as st

from scorecard.counting import count
from scorecard.criteria import Limit
from scorecard.points import (
    PointsTable,
    counted_points,
    greatest_that_pass,
    table_of_counted,
    table_of_points,
)

KNOTS = ((0, 80), (2, 20), (4, 20), (6, 100))
SAMPLE = {"free": 100, "paid": 60, "photo only": 10}
RULES = st.one_of(st.sampled_from(["worst", "middle", "best"]), st.floats(0, 100))
ONE = np.zeros((1, 1))


def points_of(criterion, typed):
    case = make_case([criterion], {"Fernhill": [typed]})
    found = table_of_points([criterion], [count(criterion, case, AS_OF)])
    return found.low[0, 0], found.counted[0, 0], found.high[0, 0]


def reach_of(criterion, typed):
    case = make_case([criterion], {"Fernhill": [typed]})
    return table_of_points([criterion], [count(criterion, case, AS_OF)]).reach[0, 0]


@pytest.mark.parametrize(
    ("rule", "points"), [("worst", 20), ("middle", 50), ("best", 80), (70, 70), (5, 20), (95, 80), (0, 20)]
)
def test_what_counts_of_a_range_is_held_between_its_ends(rule, points):
    # from 80 at 0 over the valley of 20 to 60 at 5
    assert (20, points, 80) == points_of(numbers("a", 1, *KNOTS, unknown=rule), (0, 5))


@pytest.mark.parametrize(("rule", "points"), [("worst", 20), ("middle", 60), ("best", 100), (70, 70)])
def test_what_counts_of_an_unknown_answer_lies_between_all_that_the_criterion_can_give(rule, points):
    assert (20, points, 100) == points_of(numbers("a", 1, *KNOTS, unknown=rule), None)


def test_an_unknown_answer_within_bounds_gives_what_they_allow():
    assert (20, 20, 80) == points_of(numbers("a", 1, *KNOTS, within=(0, 4), unknown="worst"), None)


def test_an_unknown_choice_gives_the_ends_of_the_table():
    assert (10, 55, 100) == points_of(choices("a", 1, SAMPLE, unknown="middle"), None)


def test_a_known_choice_gives_its_points_three_times():
    assert (60, 60, 60) == points_of(choices("a", 1, SAMPLE), "paid")


@given(st.floats(0, 100), st.floats(0, 100), RULES)
def test_what_counts_never_leaves_the_two_ends(one, other, rule):
    low, high = np.array([min(one, other)]), np.array([max(one, other)])
    assert low[0] <= counted_points(low, high, rule)[0] <= high[0]


@given(st.integers(-2, 8), st.integers(0, 6), st.integers(0, 6), st.integers(0, 6))
def test_a_narrower_answer_never_widens_the_points(low, width, left, right):
    high = low + width
    narrow_low = min(low + left, high)
    narrow_high = max(narrow_low, high - right)
    criterion = numbers("a", 1, *KNOTS)
    wide, narrow = points_of(criterion, (low, high)), points_of(criterion, (narrow_low, narrow_high))
    unknown = points_of(criterion, None)
    assert unknown[0] <= wide[0] <= narrow[0] <= narrow[2] <= wide[2] <= unknown[2]


def test_only_ends_that_differ_are_open():
    criterion = numbers("a", 1, *KNOTS)
    case = make_case([criterion], {"Fernhill": [(2, 4)], "Brightholm": [(4, 5)], "Cold Quay": [None]})
    assert [[False], [True], [True]] == table_of_points([criterion], [count(criterion, case, AS_OF)]).open.tolist()


def test_a_range_is_known_and_no_answer_is_not():
    criterion = numbers("a", 1)
    case = make_case([criterion], {"Fernhill": [(2, 4)], "Brightholm": [None]})
    assert [[True], [False]] == table_of_points([criterion], [count(criterion, case, AS_OF)]).known.tolist()


def test_an_answer_reaches_no_higher_than_its_limit_lets_it():
    # 8 would be worth 80, but only up to 5 passes
    assert pytest.approx(50) == reach_of(numbers("a", 1, (0, 0), (10, 100), limit=Limit(at_most=5)), (2, 8))


def test_a_choice_reaches_no_higher_than_the_best_that_passes():
    assert 60 == reach_of(choices("a", 1, SAMPLE, limit=Limit(none_of=("free",))), None)


def test_a_known_choice_reaches_its_own_points():
    assert 60 == reach_of(choices("a", 1, SAMPLE, limit=Limit(none_of=("photo only",))), "paid")


def test_where_no_choice_passes_nothing_is_reached():
    assert 0 == reach_of(choices("a", 1, SAMPLE, limit=Limit(none_of=tuple(SAMPLE))), None)


def test_without_a_word_on_limits_points_reach_their_high_end():
    table = PointsTable(low=ONE, high=ONE + 9, counted=ONE + 5, known=ONE > 0)
    assert 9 == table.reach[0, 0]


def test_points_that_count_beyond_their_ends_are_refused():
    with pytest.raises(ValueError, match="between low and high"):
        PointsTable(low=ONE, high=ONE, counted=ONE + 1, known=ONE > 0)


def test_tables_of_unlike_shape_are_refused():
    with pytest.raises(ValueError, match="one shape"):
        PointsTable(low=ONE, high=ONE, counted=ONE, known=np.zeros((2, 1), dtype=bool))


def test_what_counts_alone_is_that_of_the_whole_table():
    criteria = [numbers("a", 1, *KNOTS, unknown="worst"), choices("b", 1, SAMPLE, unknown="middle")]
    case = make_case(criteria, {"Fernhill": [(0, 5), "paid"], "Brightholm": [None, None], "Cold Quay": [6, "free"]})
    countings = [count(criterion, case, AS_OF) for criterion in criteria]

    assert [[20, 60], [20, 55], [100, 100]] == table_of_counted(criteria, countings).tolist()
    assert (table_of_points(criteria, countings).counted == table_of_counted(criteria, countings)).all()


def test_without_a_limit_the_greatest_that_pass_are_the_greatest():
    criterion = numbers("a", 1, *KNOTS)
    case = make_case([criterion], {"Fernhill": [(0, 5)], "Brightholm": [3]})

    assert [80, 20] == greatest_that_pass(criterion, count(criterion, case, AS_OF)).tolist()


def test_one_maker_that_counts_beyond_its_ends_is_one_too_many():
    low, high = np.array([[10.0], [10.0]]), np.array([[20.0], [20.0]])

    with pytest.raises(ValueError, match="between low and high"):
        PointsTable(low=low, high=high, counted=np.array([[15.0], [25.0]]), known=np.ones((2, 1), dtype=bool))
