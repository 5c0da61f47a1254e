"""Numbers of the result: 12 significant digits, whole where they are whole."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.figures import figure, figures, plain


def test_a_figure_has_12_significant_digits():
    assert (0.333333333333, 12345678.9012) == (figure(1 / 3), figure(12345678.90123456))


@given(st.floats(-1e12, 1e12))
def test_a_figure_is_as_near_as_12_digits_allow(number):
    assert pytest.approx(number, rel=5.1e-12, abs=0) == figure(number)


@given(st.floats(-1e12, 1e12))
def test_a_figure_of_a_figure_is_itself(number):
    assert figure(number) == figure(figure(number))


@given(st.lists(st.lists(st.floats(-1e6, 1e6), min_size=3, max_size=3), max_size=5))
def test_figures_are_the_figure_of_each(rows):
    assert [[figure(one) for one in row] for row in rows] == figures(np.array(rows, dtype=float).reshape(-1, 3))


@pytest.mark.parametrize(
    ("number", "expected"), [(12.0, 12), (-3.0, -3), (2.5, 2.5), (0.1 + 0.2, 0.3), (np.inf, None), (-np.inf, None)]
)
def test_a_plain_number_is_what_a_person_would_write(number, expected):
    assert expected == plain(number)


def test_a_whole_number_is_an_int():
    assert isinstance(plain(7.0), int)


def test_a_huge_number_stays_a_float_that_no_reader_rounds():
    assert isinstance(plain(1e15), float)


@pytest.mark.parametrize("number", [float("nan"), float("inf"), -float("inf")])
def test_what_is_no_number_is_no_figure(number):
    with pytest.raises(ValueError, match="is no figure"):
        figure(number)
    with pytest.raises(ValueError, match="is no figure"):
        figures(np.array([[1.0, number]]))
