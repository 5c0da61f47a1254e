"""Numbers and lists in words."""

from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.words import counted, day_words, listed, nearest, rounded, shortest


@pytest.mark.parametrize(
    ("number", "text"),
    [(12.0, "12"), (0.1, "0.1"), (-3, "-3"), (0.00002, "0.00002"), (-0.00002, "-0.00002"), (-0.0, "0"), (12.5, "12.5")],
)
def test_the_shortest_text_is_what_a_person_would_type(number, text):
    assert text == shortest(number)


@given(st.floats(-1e16, 1e16, exclude_min=True, exclude_max=True))
def test_the_shortest_text_has_no_exponent_below_1e16(number):
    assert "e" not in shortest(number)


@given(st.floats(-1e15, 1e15))
def test_the_shortest_text_reads_back_as_the_number(number):
    assert number == float(Decimal(shortest(number)))


@pytest.mark.parametrize(
    ("number", "decimals", "text"), [(78.26, 1, "78.3"), (-0.04, 1, "0.0"), (4, 0, "4"), (-0.06, 1, "-0.1")]
)
def test_a_rounded_number_has_no_minus_sign_before_nil(number, decimals, text):
    assert text == rounded(number, decimals)


@pytest.mark.parametrize(
    ("words", "link", "text"),
    [(["a", "b", "c"], "and", "a, b and c"), (["a", "b"], "or", "a or b"), (["a"], "and", "a"), ([], "and", "")],
)
def test_a_list_reads_as_in_a_sentence(words, link, text):
    assert text == listed(words, link)


@pytest.mark.parametrize(
    ("number", "words", "text"),
    [(1, ["maker"], "1 maker"), (0, ["maker"], "0 makers"), (2, ["reply", "replies"], "2 replies")],
)
def test_a_count_takes_its_plural(number, words, text):
    assert text == counted(number, *words)


def test_the_nearest_known_word_ignores_case():
    assert "Minimum order" == nearest(" minimun ORDER", ["Rating", "Minimum order"])


def test_of_words_that_fold_alike_the_first_is_given():
    assert "Rating" == nearest("ratin", ["Rating", "rating"])


def test_a_word_that_looks_like_nothing_has_no_nearest():
    assert nearest("zzz", ["Rating", "Minimum order"]) is None


def test_months_are_written_out():
    assert ["3 April 2027", "4 March 2027"] == [day_words(date(2027, 4, 3)), day_words(date(2027, 3, 4))]
