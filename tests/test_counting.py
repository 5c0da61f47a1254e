"""From answers as typed to what counts, in order: within, per, the limit's test, steady.

The Bayesian average is checked with two published examples [stored]: a forum's rating of ratings (8, 8, 10, 5, 7, 8;
usual 8 counting as 0.8) and two restaurants (usual 4.2 counting as 40). A third print gives 3 for a case whose right
value is 3.775 [stored]; that 3 must stay wrong.
"""

from fractions import Fraction

import numpy as np
import pytest
from cases import AS_OF, choices, make_case, numbers
from hypothesis import given
from hypothesis import strategies as st

from scorecard.answers import Answers
from scorecard.brief import Brief
from scorecard.counting import count, divided, steadied, typed_answers
from scorecard.criteria import Criterion, Limit, Steady
from scorecard.screening import screen

NAN, INF = np.nan, np.inf
MUGS = Brief(item="enamel mug", quantity=200, designs=4)
RATING_KNOTS = ((4.0, 0.0), (5.0, 100.0))


def span(answers):
    return answers.low[0], answers.high[0]


def pair(typed):
    low, high = typed if isinstance(typed, tuple) else (typed, typed)
    return Answers(np.array([float(low)]), np.array([float(high)]))


def drawn(rating, ratings, usual, counts_as):
    rule = Steady(count_column="Ratings counted", usual=usual, usual_counts_as=counts_as)
    return span(steadied(pair(rating), pair(ratings), rule))


def counted_rating(typed, ratings, **more):
    """Count one rating (4.5 is usual and counts as 20) with its number of ratings; None where unknown."""
    steady = Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20)
    criterion = numbers("rating", 1, *RATING_KNOTS, steady=steady, **more)
    counts = {} if ratings == "no column" else {"rating": pair((NAN, NAN) if ratings is None else ratings)}
    return count(criterion, make_case([criterion], {"Fernhill": [typed]}, counts=counts), AS_OF)


def counted_minimum(typed, unit, brief=MUGS, **more):
    criterion = numbers("minimum", 1, (1, 100), (2, 0), per_quantity=True, **more)
    case = make_case([criterion], {"Fernhill": [typed]}, brief=brief, minimum_per=(unit,))
    return count(criterion, case, AS_OF)


# steady


def test_the_forums_six_ratings_count_as_7_70588():
    assert pytest.approx(7.70588, abs=5e-6) == drawn(46 / 6, 6, usual=8, counts_as=0.8)[0]


def test_the_restaurant_with_100_opinions_counts_as_4_41429():
    assert pytest.approx(4.41429, abs=5e-6) == drawn(4.5, 100, usual=4.2, counts_as=40)[0]


def test_the_restaurant_with_one_glowing_opinion_counts_as_4_21951():
    assert pytest.approx(4.21951, abs=5e-6) == drawn(5, 1, usual=4.2, counts_as=40)[0]


def test_the_post_that_prints_3_is_wrong():
    assert pytest.approx(3.775, abs=1e-12) == drawn(4, 6, usual=3.7, counts_as=18)[0]


@given(st.integers(0, 500), st.integers(0, 5000), st.integers(0, 500), st.integers(1, 1000))
def test_a_steadied_rating_is_that_of_exact_fractions(hundredths, ratings, usual, counts_as):
    rating, u, m = Fraction(hundredths, 100), Fraction(usual, 100), Fraction(counts_as, 10)
    expected = (ratings * rating + m * u) / (ratings + m)
    assert pytest.approx(float(expected), abs=1e-12) == drawn(float(rating), ratings, float(u), float(m))[0]


def test_no_ratings_at_all_count_as_exactly_the_usual_one():
    assert (4.3, 4.3) == drawn(4.9, 0, usual=4.3, counts_as=0.7)


def test_of_an_unknown_number_of_ratings_anything_from_usual_to_the_rating_counts():
    assert (4.5, 4.9) == drawn(4.9, (0, INF), usual=4.5, counts_as=20)


def test_a_rating_below_the_usual_one_is_lifted_at_most_to_it():
    assert (4.1, 4.5) == drawn(4.1, (0, INF), usual=4.5, counts_as=20)


@given(
    st.tuples(st.integers(0, 50), st.integers(0, 50)).map(sorted),
    st.tuples(st.integers(0, 40), st.integers(0, 40)).map(sorted),
    st.integers(0, 50),
    st.integers(1, 30),
)
def test_ranges_of_both_are_steadied_as_a_sweep_of_all_pairs(rating, ratings, usual, counts_as):
    (r0, r1), (n0, n1) = rating, ratings
    every = [
        (n * r / 10 + counts_as * usual / 10) / (n + counts_as) for r in range(r0, r1 + 1) for n in range(n0, n1 + 1)
    ]
    found = drawn((r0 / 10, r1 / 10), (n0, n1), usual / 10, counts_as)
    assert pytest.approx((min(every), max(every)), abs=1e-12) == found


def test_a_rating_from_four_buyers_counts_as_four_twenty_fourths():
    # (4·5 + 20·4.5) / 24 = 110/24
    assert pytest.approx((110 / 24, 110 / 24)) == span(counted_rating(5, 4).counts_as)


@pytest.mark.parametrize("ratings", [None, "no column"])
def test_without_the_number_of_ratings_the_rating_and_the_usual_one_are_the_ends(ratings):
    assert (4.5, 5.0) == span(counted_rating(5, ratings).counts_as)


def test_an_unknown_rating_is_steadied_over_within():
    # from (4·0 + 90) / 24 to (4·5 + 90) / 24
    assert pytest.approx((90 / 24, 110 / 24)) == span(counted_rating(None, 4, within=(0, 5)).counts_as)


def test_an_unknown_rating_without_within_is_steadied_from_the_first_to_the_last_knot():
    # from (4·4 + 90) / 24 to (4·5 + 90) / 24
    assert pytest.approx((106 / 24, 110 / 24)) == span(counted_rating(None, 4).counts_as)


def test_an_unknown_rating_from_no_buyers_counts_as_exactly_the_usual_one():
    assert (4.5, 4.5) == span(counted_rating(None, 0, within=(0, 5)).counts_as)


def test_a_rating_and_a_number_both_unknown_count_as_nothing_known():
    assert np.isnan(counted_rating(None, None, within=(0, 5)).counts_as.low[0])


@pytest.mark.parametrize(("within", "expected"), [((0, 5), (0, 5)), (None, (4, 5))])
def test_a_rating_and_a_number_both_unknown_allow_everything_there_is(within, expected):
    assert expected == span(counted_rating(None, None, within=within).allowed)


def test_an_open_rating_reaches_no_further_than_an_unknown_one():
    assert pytest.approx((106 / 24, 110 / 24)) == span(counted_rating((4, None), 4).counts_as)


def test_a_rating_open_below_reaches_down_to_the_first_knot():
    assert pytest.approx((106 / 24, 110 / 24)) == span(counted_rating((None, 5), 4).counts_as)


def test_a_rating_open_from_beyond_the_last_knot_stays_where_it_is_typed():
    # (4·6 + 90) / 24
    assert pytest.approx((114 / 24, 114 / 24)) == span(counted_rating((6, None), 4).counts_as)


def test_an_open_rating_is_clipped_to_within():
    assert pytest.approx((106 / 24, 110 / 24)) == span(counted_rating((4, None), 4, within=(0, 5)).counts_as)


def test_an_open_number_of_ratings_reaches_up_to_the_rating_itself():
    # from (20·5 + 90) / 40 to 5
    assert (4.75, 5.0) == span(counted_rating(5, (20, INF)).counts_as)


def test_a_negative_number_of_ratings_is_not_possible():
    assert (4.5, 4.75) == span(counted_rating(5, (-INF, 20)).counts_as)


def test_the_limit_tests_the_rating_before_it_is_steadied():
    # typed 3.9 fails 4.0, though steadied it is (1·3.9 + 90) / 21 = 4.47
    criterion = numbers("rating", 1, *RATING_KNOTS, limit=Limit(at_least=4.0))
    assert screen([criterion], [counted_rating(3.9, 1)]).ruled_out[0]


def test_a_steadied_rating_that_falls_below_the_limit_passes_it_as_typed():
    # typed 4.7 passes 4.6, though steadied it is (1·4.7 + 90) / 21 = 4.51
    criterion = numbers("rating", 1, *RATING_KNOTS, limit=Limit(at_least=4.6))
    assert not screen([criterion], [counted_rating(4.7, 1)]).may_fail[0, 0]


# per


@pytest.mark.parametrize(("unit", "counts"), [("order", 2.0), ("design", 8.0)])
def test_a_minimum_is_divided_by_the_pieces_of_its_unit(unit, counts):
    # 400 for 200 in all is 2; 400 for 50 of each design is 8
    assert (counts, counts) == span(counted_minimum(400, unit).counts_as)


def test_a_minimum_per_an_unknown_unit_is_a_range():
    assert (2.0, 8.0) == span(counted_minimum(400, None).counts_as)


def test_a_minimum_per_an_unknown_unit_of_one_design_is_a_number():
    assert (2.0, 2.0) == span(counted_minimum(400, None, brief=Brief(item="mug", quantity=200)).counts_as)


def test_a_minimum_per_colour_where_the_brief_says_no_colours_is_a_range():
    # 400 for all 200 pieces in one colour, or for one piece in each of 200
    assert (2.0, 400.0) == span(counted_minimum(400, "colour").counts_as)


def test_a_minimum_per_colour_is_divided_by_the_pieces_of_one_colour():
    assert (4.0, 4.0) == span(counted_minimum(400, "colour", Brief(item="mug", quantity=200, colours=2)).counts_as)


def test_without_the_column_of_units_every_unit_is_unknown():
    criterion = numbers("minimum", 1, (1, 100), (2, 0), per_quantity=True)
    case = make_case([criterion], {"Fernhill": [400]}, brief=MUGS)
    assert (2.0, 8.0) == span(count(criterion, case, AS_OF).counts_as)


def test_a_range_per_an_unknown_unit_takes_its_farthest_corners():
    # 100 of 200 to 400 of 50
    assert (0.5, 8.0) == span(counted_minimum((100, 400), None).counts_as)


def test_an_open_minimum_stays_open():
    assert (1.0, INF) == span(counted_minimum((200, None), "order").counts_as)


def test_the_limit_tests_the_answer_after_it_is_divided():
    # 400 pieces is 2 orders, within 2.5; but 8 designs' worth
    criterion = numbers("minimum", 1, per_quantity=True, limit=Limit(at_most=2.5))
    found = [bool(screen([criterion], [counted_minimum(400, unit)]).ruled_out[0]) for unit in ("order", "design")]
    assert [False, True] == found


def test_an_unknown_minimum_is_divided_within_its_bounds():
    assert (0.0, 20.0) == span(counted_minimum(None, "design", within=(0, 1000)).tested)


def test_a_rating_that_is_divided_too_is_steadied_over_its_divided_bounds():
    steady = Steady(count_column="Ratings counted", usual=1, usual_counts_as=1)
    criterion = numbers("minimum", 1, (0, 0), (9, 100), per_quantity=True, within=(0, 400), steady=steady)
    counts = {"minimum": pair(1)}
    case = make_case([criterion], {"Fernhill": [None]}, brief=MUGS, minimum_per=("design",), counts=counts)
    # 0 to 400 of 50 is 0 to 8, drawn half way to 1
    assert (0.5, 4.5) == span(count(criterion, case, AS_OF).allowed)


@given(
    st.tuples(st.integers(-50, 50), st.integers(-50, 50)).map(sorted),
    st.tuples(st.integers(1, 9), st.integers(1, 9)).map(sorted),
)
def test_dividing_ranges_is_a_sweep_of_all_pairs(answer, pieces):
    every = [a / p for a in range(answer[0], answer[1] + 1) for p in range(pieces[0], pieces[1] + 1)]
    low, high = (np.array([float(end)]) for end in pieces)
    assert (min(every), max(every)) == span(divided(pair(tuple(answer)), (low, high)))


# within, unknown, measures


def test_an_unknown_number_is_tested_as_anything_at_all():
    criterion = numbers("a", 1)
    assert (-INF, INF) == span(count(criterion, make_case([criterion], {"Fernhill": [None]}), AS_OF).tested)


def test_an_unknown_number_within_bounds_is_tested_as_anything_in_them():
    criterion = numbers("a", 1, within=(0, 5))
    assert (0, 5) == span(count(criterion, make_case([criterion], {"Fernhill": [None]}), AS_OF).tested)


def test_an_unknown_answer_counts_as_nothing_known():
    criterion = numbers("a", 1, within=(0, 5))
    found = count(criterion, make_case([criterion], {"Fernhill": [None]}), AS_OF)
    assert not found.counts_as.known[0]


def test_a_choice_is_counted_as_its_position():
    criterion = choices("a", 1, {"free": 100, "paid": 60})
    assert (1.0, 1.0) == span(count(criterion, make_case([criterion], {"Fernhill": ["paid"]}), AS_OF).counts_as)


def response(typed, asked=True):
    criterion = Criterion(
        key="response", title="Response", weight=1, value=numbers("a", 1).value, measure="response_days"
    )
    monday, wednesday = AS_OF.toordinal() - 2.0, float(AS_OF.toordinal())
    columns = {"asked_on": np.array([monday]), "answered_on": np.array([wednesday])} if asked else {}
    return typed_answers(criterion, make_case([criterion], {"Fernhill": [typed]}, **columns), AS_OF)


def test_a_measure_is_computed_where_nothing_is_typed():
    assert (2.0, 2.0) == span(response(None))


def test_a_typed_answer_wins_over_the_measure():
    assert (1.0, 1.0) == span(response(1))


def test_a_column_that_was_not_read_is_unknown():
    case = make_case([numbers("a", 1)], {"Fernhill": [3]})
    assert not typed_answers(numbers("b", 0), case, AS_OF).known[0]


@given(
    st.tuples(st.integers(0, 50), st.integers(0, 50)).map(sorted),
    st.tuples(st.integers(0, 50), st.integers(0, 50)).map(sorted),
    st.one_of(st.none(), st.integers(0, 40)),
)
def test_a_narrower_rating_never_allows_more(wide, inner, ratings):
    low, high = max(wide[0], inner[0]), min(wide[1], inner[1])
    if low > high:
        low, high = wide[0], wide[0]
    narrow = counted_rating((low / 10, high / 10), ratings, within=(0, 5)).allowed
    wider = counted_rating((wide[0] / 10, wide[1] / 10), ratings, within=(0, 5)).allowed
    unknown = counted_rating(None, ratings, within=(0, 5)).allowed
    assert unknown.low[0] <= wider.low[0] <= narrow.low[0] <= narrow.high[0] <= wider.high[0] <= unknown.high[0]


# the edges


def test_parts_of_one_are_divided_towards_the_right_ends():
    # half a piece is least when shared by most; half a piece below nothing when shared by fewest
    pieces = np.array([2.0]), np.array([4.0])

    assert (0.125, 0.25) == span(divided(pair(0.5), pieces))
    assert (-0.25, -0.125) == span(divided(pair(-0.5), pieces))


def test_no_ratings_count_as_the_usual_one_to_the_last_bit_whatever_the_rating():
    # 13 · 3.1 / 13 is not 3.1 in floating point, and nothing times an open end is no number
    assert 13 * 3.1 / 13 != 3.1
    assert (3.1, 3.1) == drawn((-INF, INF), 0, usual=3.1, counts_as=13)


def test_only_an_answer_that_is_divided_has_a_unit():
    plain = numbers("a", 1)

    assert ("design",) == counted_minimum(100, "design").per
    assert () == count(plain, make_case([plain], {"Fernhill": [3]}, minimum_per=("design",)), AS_OF).per


def test_a_measure_is_computed_for_those_alone_that_typed_nothing():
    criterion = Criterion(
        key="response", title="Response", weight=1, value=numbers("a", 1).value, measure="response_days"
    )
    day = float(AS_OF.toordinal())
    columns = {"asked_on": np.array([day - 2, day - 2]), "answered_on": np.array([day, day])}
    found = typed_answers(criterion, make_case([criterion], {"Fernhill": [7], "Brightholm": [None]}, **columns), AS_OF)

    assert [7, 2] == found.low.tolist() == found.high.tolist()
