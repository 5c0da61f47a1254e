from math import inf

import numpy as np
import pytest
from cases import choices, make_case, numbers

from scorecard.answers import Answers
from scorecard.brief import Brief
from scorecard.criteria import Steady
from scorecard.report.answers import answer_in_words, counts_as_in_words, typed_in_words


def case_of(criterion, typed, **more):
    return make_case([criterion], {"Brightholm": [typed]}, **more)


@pytest.mark.parametrize(
    ("rule", "words"),
    [
        ("worst", "unknown, counted as the worst"),
        ("middle", "unknown, counted as the middle"),
        ("best", "unknown, counted as the best"),
        (40.0, "unknown, counted as 40.0 points"),
    ],
)
def test_unknown_says_what_it_is_counted_as(assessed, rule, words):
    assert words == answer_in_words(assessed(case_of(numbers("a", 1, unknown=rule), None)), 0, 0)


def test_a_range_says_what_it_is_counted_as(assessed):
    case = case_of(numbers("a", 1, unit="days", unknown="worst"), (3, 5))
    assert "3 to 5 days, counted as the worst" == answer_in_words(assessed(case), 0, 0)


def test_a_range_that_makes_no_difference_is_left_alone(assessed):
    assert "200 to 300" == answer_in_words(assessed(case_of(numbers("a", 1), (200, 300))), 0, 0)


def test_a_choice_is_told_as_spelt(assessed):
    assert "paid" == answer_in_words(assessed(case_of(choices("a", 1, {"free": 100, "paid": 60}), "paid")), 0, 0)


def per_design(typed, unit):
    criterion = numbers("a", 1, (1, 100), (2, 0), per_quantity=True, unit="pieces")
    return case_of(criterion, typed, minimum_per=(unit,), brief=Brief(item="mug", quantity=200, designs=4))


def test_a_minimum_per_design_stands_beside_the_pieces_of_a_design(assessed):
    assert "100 pieces per design, for 50" == typed_in_words(assessed(per_design(100, "design")), 0, 0)


def test_a_minimum_per_order_stands_beside_all_pieces(assessed):
    assert "100 pieces for 200" == typed_in_words(assessed(per_design(100, "order")), 0, 0)


def test_with_one_design_a_minimum_of_unknown_unit_stands_beside_all_pieces(assessed):
    case = case_of(numbers("a", 1, per_quantity=True, unit="pieces"), 100, brief=Brief(item="mug", quantity=200))
    assert "100 pieces for 200" == typed_in_words(assessed(case), 0, 0)


def test_a_minimum_per_a_unit_of_unknown_number_stands_beside_what_is_possible(assessed):
    assert "100 pieces per colour, for 1 to 200" == typed_in_words(assessed(per_design(100, "colour")), 0, 0)


def test_a_minimum_of_unknown_unit_stands_beside_both(assessed):
    expected = "100 pieces, for 200 if per order or 50 if per design"
    assert expected == typed_in_words(assessed(per_design(100, None)), 0, 0)


def test_a_minimum_counts_as_so_many_times(assessed):
    assert "2×" == counts_as_in_words(assessed(per_design(100, "design")), 0, 0)


def test_an_unknown_minimum_is_unknown(assessed):
    found = assessed(per_design(None, "design"))
    assert ("unknown", "unknown") == (typed_in_words(found, 0, 0), counts_as_in_words(found, 0, 0))


@pytest.mark.parametrize(
    ("ratings", "words"),
    [
        ((4, 4), "4.9, from 4 ratings"),
        ((1, 1), "4.9, from 1 rating"),
        ((50, inf), "4.9, from at least 50 ratings"),
        ((np.nan, np.nan), "4.9, from an unknown number of ratings"),
    ],
)
def test_a_rating_says_what_it_rests_on(assessed, ratings, words):
    steady = Steady(count_column="Ratings", usual=4.5, usual_counts_as=20)
    counts = {"a": Answers(np.array([ratings[0]]), np.array([ratings[1]]))}
    case = case_of(numbers("a", 1, (4, 0), (5, 100), steady=steady), 4.9, counts=counts)
    assert words == typed_in_words(assessed(case), 0, 0)
