"""Points by straight lines between knots, and by a table of choices, against exact fractions and brute force."""

from fractions import Fraction
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.value_functions import Choices, PiecewiseLinear, joined

YEARS = PiecewiseLinear(((0, 0), (3, 50), (10, 100)))
VALLEY = PiecewiseLinear(((0, 80), (2, 20), (4, 20), (6, 100)))
SAMPLE = Choices((("free", 100), ("paid", 60), ("none", 0)))

WHOLE_POINTS = st.integers(0, 100).map(float)


@st.composite
def value_functions(draw):
    at = sorted(draw(st.sets(st.integers(-20, 20), min_size=2, max_size=5)))
    return PiecewiseLinear(tuple((float(x), draw(WHOLE_POINTS)) for x in at))


def exact_points(knots, answer):
    answer = Fraction(answer)
    if answer <= knots[0][0]:
        return Fraction(knots[0][1])
    for (x0, y0), (x1, y1) in pairwise(knots):
        if answer <= x1:
            return Fraction(y0) + (answer - Fraction(x0)) * Fraction(y1 - y0) / Fraction(x1 - x0)
    return Fraction(knots[-1][1])


def test_seven_years_are_worth_550_sevenths():
    # 50 + 4/7 of 50 = 550/7 = 78.571
    assert pytest.approx(550 / 7, abs=1e-12) == YEARS.points(np.array([7.0]))[0]


def test_points_are_level_beyond_the_ends():
    assert [0.0, 100.0] == YEARS.points(np.array([-5.0, 40.0])).tolist()


@given(value_functions(), st.integers(-400, 400))
def test_points_are_those_of_exact_fractions(value, sixteenths):
    answer = sixteenths / 16
    assert pytest.approx(float(exact_points(value.knots, answer)), abs=1e-9) == value.points(np.array([answer]))[0]


@given(value_functions(), st.floats(-1e6, 1e6))
def test_points_stay_within_0_and_100(value, answer):
    assert 0 <= value.points(np.array([answer]))[0] <= 100


def test_the_points_of_an_unknown_answer_are_nan():
    assert np.isnan(YEARS.points(np.array([np.nan]))[0])


def test_a_range_over_a_valley_has_its_least_inside():
    least, greatest = VALLEY.least_and_greatest(np.array([0.0]), np.array([5.0]))
    assert (20.0, 80.0) == (least[0], greatest[0])


def test_an_open_range_reaches_the_level_beyond_the_last_knot():
    least, greatest = YEARS.least_and_greatest(np.array([3.0]), np.array([np.inf]))
    assert (50.0, 100.0) == (least[0], greatest[0])


@given(value_functions(), st.floats(-30, 30), st.floats(0, 30), st.floats(0, 1))
def test_points_of_any_number_inside_a_range_lie_within_its_points(value, low, width, part):
    high = low + width
    inside = min(max(low + part * width, low), high)
    least, greatest = value.least_and_greatest(np.array([low]), np.array([high]))
    assert least[0] - 1e-12 <= value.points(np.array([inside]))[0] <= greatest[0] + 1e-12


@given(value_functions(), st.integers(-30, 30), st.integers(0, 30))
def test_the_points_of_a_range_are_those_of_its_sixteenths(value, low, width):
    # knots are whole, so every extreme is among the sixteenths
    grid = np.arange(16 * low, 16 * (low + width) + 1) / 16
    points = value.points(grid)
    least, greatest = value.least_and_greatest(np.array([float(low)]), np.array([float(low + width)]))
    assert (points.min(), points.max()) == (least[0], greatest[0])


def test_the_extremes_of_a_valley_are_its_lowest_and_its_highest_knot():
    assert (20.0, 100.0) == VALLEY.extremes()


def test_extremes_within_bounds_leave_out_what_lies_beyond():
    assert (20.0, 80.0) == VALLEY.extremes((0.0, 4.0))


def test_the_ends_are_the_first_and_the_last_knot():
    assert (0, 10) == YEARS.ends()


def test_above_50_points_are_more_than_3_years():
    assert ((3.0, np.inf),) == YEARS.answers_above(50)


def test_below_50_points_are_fewer_than_3_years():
    assert ((-np.inf, 3.0),) == YEARS.answers_below(50)


def test_above_50_points_are_both_sides_of_a_valley():
    # 80 - 30·x = 50 at x = 1; 20 + 40·(x - 4) = 50 at x = 4.75
    assert ((-np.inf, 1.0), (4.75, np.inf)) == VALLEY.answers_above(50)


def test_a_level_stretch_of_just_so_many_points_is_not_above_them():
    assert ((-np.inf, 2.0), (4.0, np.inf)) == VALLEY.answers_above(20)


def test_a_level_stretch_of_just_so_many_points_is_not_below_them():
    assert () == VALLEY.answers_below(20)


def test_a_valley_that_is_just_level_parts_two_stretches():
    assert ((-np.inf, 2), (2, np.inf)) == PiecewiseLinear(((0, 80), (2, 20), (4, 60))).answers_above(20)


def test_nothing_is_above_the_highest_points():
    assert () == VALLEY.answers_above(100)


@given(value_functions(), st.integers(0, 400), st.integers(-400, 400))
def test_an_answer_lies_above_so_many_points_where_its_points_do(value, quarters, sixteenths):
    points, answer = quarters / 4, sixteenths / 16
    expected = exact_points(value.knots, answer) > Fraction(points)
    inside = any(low < answer < high for low, high in value.answers_above(points))
    at_an_end = any(abs(answer - end) < 1e-9 for stretch in value.answers_above(points) for end in stretch)
    assert inside == expected or at_an_end


@given(value_functions(), st.integers(0, 400))
def test_the_points_at_a_finite_end_of_a_stretch_are_level(value, quarters):
    points = quarters / 4
    stretches = value.answers_above(points) + value.answers_below(points)
    ends = np.array([end for stretch in stretches for end in stretch if np.isfinite(end)])
    assert pytest.approx(np.full(len(ends), points), abs=1e-9) == value.points(ends)


def test_two_lines_that_rise_on_make_one_stretch():
    assert ((1.0, np.inf),) == PiecewiseLinear(((0, 0), (3, 90), (7, 100))).answers_above(30)


def test_choices_are_worth_what_the_table_says():
    assert [60.0, 100.0] == SAMPLE.points(np.array([1.0, 0.0])).tolist()


def test_an_unknown_choice_is_worth_nan():
    assert np.isnan(SAMPLE.points(np.array([np.nan]))[0])


def test_a_choice_has_no_range():
    least, greatest = SAMPLE.least_and_greatest(np.array([1.0]), np.array([1.0]))
    assert (60.0, 60.0) == (least[0], greatest[0])


def test_the_extremes_of_choices_are_those_of_the_table():
    assert (0.0, 100.0) == SAMPLE.extremes()


def test_choices_keep_their_spelling():
    assert ("free", "paid", "none") == SAMPLE.names()


def test_the_ends_of_choices_are_their_first_and_last_position():
    assert (0.0, 2.0) == SAMPLE.ends()


def test_a_choice_that_is_just_level_is_neither_above_nor_below():
    assert (((0.0, 0.0),), ((2.0, 2.0),)) == (SAMPLE.answers_above(60), SAMPLE.answers_below(60))


def test_stretches_that_overlap_are_made_one():
    assert ((1, 5), (6, 7)) == joined([(6, 7), (1, 4), (2, 3), (3, 5)])


def test_stretches_that_only_touch_stay_two():
    assert ((1, 3), (3, 5)) == joined([(3, 5), (1, 3)])


@pytest.mark.parametrize("low", [8 - 1e-12, 8 + 1e-12])
def test_stretches_that_overlap_or_miss_by_the_last_bits_only_touch(low):
    assert ((-np.inf, 8), (max(low, 8), np.inf)) == joined([(low, np.inf), (-np.inf, 8)])


def test_a_sliver_at_the_end_of_a_stretch_is_a_part_of_it():
    assert ((1, 8),) == joined([(1, 8), (8 - 1e-12, 8 - 5e-13)])


# the edges


def test_half_a_point_more_is_clearly_more():
    assert ((50 / 50.5, np.inf),) == PiecewiseLinear(((0, 0), (1, 50.5))).answers_above(50)


def test_a_billionth_of_a_point_is_not_clearly_more():
    hair = 1e-9

    assert ((), ()) == (Choices((("a", hair),)).answers_above(0), Choices((("a", 0.0),)).answers_below(hair))
    assert () == PiecewiseLinear(((0, hair), (1, hair))).answers_above(0)
    assert ((-np.inf, 0), (0, np.inf)) == PiecewiseLinear(((-1, 5), (0, hair), (1, 5))).answers_above(0)


def test_beyond_a_peak_nothing_is_above():
    assert ((0.5, 1.5),) == PiecewiseLinear(((0, 0), (1, 100), (2, 0))).answers_above(50)


def test_the_ends_are_answers_not_points():
    assert (3, 7) == PiecewiseLinear(((3, 50), (5, 60), (7, 90))).ends()


def test_an_unknown_answer_to_a_criterion_of_one_choice_is_worth_nan():
    assert np.isnan(Choices((("free", 100),)).points(np.array([np.nan]))).all()


def test_a_stretch_is_joined_to_the_last_one_and_keeps_what_reaches_further():
    assert ((1, 2), (4, 9)) == joined([(1, 2), (4, 9), (5, 8)])
    assert ((1, 2), (4, 8)) == joined([(1, 2), (4, 6), (5, 8)])
