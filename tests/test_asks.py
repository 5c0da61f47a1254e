"""Open answers in words: whose, on what, who leads then, and where to write it."""

import re
from dataclasses import replace
from math import inf

import numpy as np
import pytest
from cases import AS_OF, choices, make_case, numbers, rated, standing_of
from hypothesis import assume, given
from hypothesis import strategies as st
from ordered import case_of
from quoted import quote, uk

from scorecard.answers import Answers
from scorecard.asks import answers_phrase, cells_to_write, consequence_phrase, question_phrase, where_to_write
from scorecard.assessment import assess
from scorecard.brief import Brief
from scorecard.costing.inputs import MakerFacts
from scorecard.criteria import Limit, Steady
from scorecard.questions import questions

MUGS = Brief(item="enamel mug", quantity=200, designs=4)


def assessed(case):
    return assess(case, as_of=AS_OF)


def asked_first(case):
    found = assessed(case)
    return question_phrase(found, found.questions[0])


def test_a_question_that_changes_nothing_is_whose_answer_on_what():
    assert "Brightholm on “C1”" == asked_first(rated((1,), {"Fernhill": [90], "Brightholm": [(1, 2)]}))


def test_a_question_that_changes_nothing_has_no_consequence():
    found = assessed(rated((1,), {"Fernhill": [90], "Brightholm": [(1, 2)]}))
    assert "" == consequence_phrase(found, found.questions[0])


def test_a_limit_that_rules_the_leader_out_is_told():
    criteria = [numbers("rating", 1, unknown="best", limit=Limit(at_least=40)), numbers("price", 1)]
    case = make_case(criteria, {"Fernhill": [(30, 60), 80], "Brightholm": [50, 50]})
    expected = "Fernhill on “Rating” (if it is between 30 and 40, Fernhill is ruled out and Brightholm leads)"
    assert expected == asked_first(case)


def test_where_only_the_unit_is_open_the_leader_depends_on_it():
    criterion = numbers("minimum", 1, (1, 100), (2, 0), per_quantity=True, unknown="worst")
    rows = {"Fernhill": [60], "Brightholm": [150]}
    units = ("design", None)
    case = make_case([criterion], rows, minimum_per=units, brief=MUGS)
    assert "Brightholm on “Minimum” (depending on what it is per, Brightholm leads)" == asked_first(case)


PIECES = numbers("minimum", 1, unit="pieces")
DAYS = numbers("lead_time", 1, unit="days")
METHOD = choices("method", 1, {"kiln": 100, "print": 50, "none": 0})


@pytest.mark.parametrize(
    ("criterion", "stretches", "phrase"),
    [
        (PIECES, (), ""),
        (PIECES, ((-inf, 260),), "259 pieces or less"),
        (PIECES, ((-inf, 2), (9, inf)), "1 piece or less or 10 pieces or more"),
        (PIECES, ((-inf, 42.8889),), "42 pieces or less"),
        (PIECES, ((3, 6),), "4 to 5 pieces"),
        (PIECES, ((3, 5),), "4 pieces"),
        (PIECES, ((3.2, 3.8),), "between 3.2 and 3.8 pieces"),
        (PIECES, ((3.2, 3.8), (9, inf)), "10 pieces or more"),
        (DAYS, ((-inf, 42.88888),), "less than 42.8888 days"),
        (DAYS, ((42.88888, inf),), "more than 42.8889 days"),
        (DAYS, ((1.11111, 2.22222),), "between 1.1112 and 2.2222 days"),
        (DAYS, ((1.11111, 1.11112),), "between 1.11111 and 1.11112 days"),
        (METHOD, ((0, 0), (1, 1)), "“kiln” or “print”"),
        (METHOD, (), ""),
    ],
)
def test_answers_read_as_a_person_would_say_them(criterion, stretches, phrase):
    assert phrase == answers_phrase(criterion, stretches)


def with_minimum(quantity, designs, rival, limit, typed):
    """Return points, limits and ranking where the second maker's minimum per design is typed so."""
    most = None if limit is None else Limit(at_most=limit)
    minimum = numbers("minimum", 1, (0.3, 100), (3, 0), per_quantity=True, unit="pieces", limit=most, unknown="worst")
    rows = {"Fernhill": [0, rival], "Brightholm": [typed, 50]}
    brief = Brief(item="mug", quantity=quantity, designs=designs)
    return standing_of(make_case([minimum, numbers("rating", 1)], rows, brief=brief, minimum_per=("design", "design")))


@given(
    st.integers(1, 500), st.integers(1, 7), st.integers(0, 100), st.sampled_from([None, 1.1, 2, 2.5]),
)  # fmt: skip
def test_the_most_pieces_named_put_their_maker_first_and_one_more_does_not(quantity, designs, rival, limit):
    standing = with_minimum(quantity, designs, rival, limit, None)
    turns = [turn for one in questions(standing) for turn in one.turns if turn.by == "points"]
    assume(turns)
    phrase = answers_phrase(standing.criteria[0], turns[0].answers, turns[0].holds)
    named = re.fullmatch(r"(\d+) pieces? or less", phrase)
    assume(named)
    most = int(named[1])

    firsts = [with_minimum(quantity, designs, rival, limit, typed).ranking.leaders for typed in (most, most + 1)]
    assert (True, False) == (firsts[0] == (1,), firsts[1] == (1,))


def test_answers_of_a_known_unit_are_told_per_that_unit():
    # 60 of the 50 of a design is 1.2 and worth 80; fewer than 1.2 designs beat it
    criterion = numbers("minimum", 1, (1, 100), (2, 0), per_quantity=True, unknown="worst", unit="pieces")
    rows = {"Fernhill": [60], "Brightholm": [(40, 90)]}
    case = make_case([criterion], rows, minimum_per=("design", "design"), brief=MUGS)
    assert "Brightholm on “Minimum” (if it is 40 to 59 pieces per design, Brightholm leads)" == asked_first(case)


def test_where_only_the_number_of_ratings_is_open_the_leader_depends_on_it():
    steady = Steady(count_column="Ratings counted", usual=4.0, usual_counts_as=20)
    criterion = numbers("rating", 1, (4, 0), (5, 100), steady=steady, unknown="worst")
    counts = {"rating": Answers(np.array([20.0, np.nan]), np.array([20.0, np.nan]))}
    case = make_case([criterion], {"Fernhill": [4.8], "Brightholm": [5]}, counts=counts)
    expected = "Brightholm on “Rating” (depending on how many ratings it rests on, Brightholm leads)"
    assert expected == asked_first(case)


def test_an_answer_of_a_joint_leader_is_told_both_ways():
    case = rated((1,), {"Fernhill": [50], "Brightholm": [(20, 80)]}, unknown="middle")
    expected = (
        "Brightholm on “C1” (if it is between 50 and 80, Brightholm leads; if it is between 20 and 50, Fernhill leads)"
    )
    assert expected == asked_first(case)


# where to write it


def cells(case, letters=None):
    table = case.table if letters is None else replace(case.table, letters={"maker": "A", **letters})
    return cells_to_write(assessed(replace(case, table=table)), 0, 0)


def one_minimum(typed, unit, brief=MUGS):
    criterion = numbers("minimum", 1, (1, 100), (2, 0), per_quantity=True)
    return make_case([criterion], {"Fernhill": [typed]}, minimum_per=(unit,), brief=brief)


LETTERS = {"minimum": "D", "Minimum is per": "H"}


def test_an_open_answer_belongs_into_its_own_cell():
    assert "B2" == cells(rated((1,), {"Fernhill": [None]}))


@pytest.mark.parametrize(
    ("typed", "unit", "where"),
    [(100, None, "H2"), ((100, 200), None, "D2 and H2"), (None, "design", "D2"), ((100, 200), "design", "D2")],
)
def test_a_minimum_belongs_into_its_cell_and_its_unit_into_another(typed, unit, where):
    assert where == cells(one_minimum(typed, unit), LETTERS)


def test_a_number_of_ratings_belongs_into_its_own_cell():
    steady = Steady(count_column="Ratings counted", usual=4.0, usual_counts_as=20)
    case = make_case([numbers("rating", 1, steady=steady)], {"Fernhill": [5]})
    assert "F2" == cells(case, {"rating": "C", "Ratings counted": "F"})


@pytest.mark.parametrize(("asked", "where"), [(np.nan, "J2 and K2"), (738000.0, "K2")])
def test_days_to_an_answer_belong_into_the_days_they_are_counted_from(asked, where):
    criterion = replace(numbers("reply", 1), column=None, measure="response_days")
    days = {"asked_on": np.array([asked]), "answered_on": np.array([np.nan])}
    case = make_case([criterion], {"Fernhill": [None]}, **days)
    assert where == cells(case, {"Asked on": "J", "Answered on": "K"})


def test_where_to_write_names_sheet_and_file():
    assert "B2 of the sheet Makers of makers.xlsx" == where_to_write(assessed(rated((1,), {"Fernhill": [None]})), 0, 0)


def test_a_csv_has_no_sheet_to_name():
    case = rated((1,), {"Fernhill": [None]})
    table = replace(case.table, file="makers.csv", sheet=None)
    assert "B2 of makers.csv" == where_to_write(assessed(replace(case, table=table)), 0, 0)


def test_an_answer_without_a_column_belongs_into_a_row():
    assert "row 2" == cells(rated((1,), {"Fernhill": [None]}), {})


def test_a_landed_cost_is_written_into_quotes_and_freight_unless_it_has_a_column():
    case = case_of({"Ash": 1, "Birch": 2}, {"Ash": 5}, weight=1)
    letters = {key: letter for key, letter in case.table.letters.items() if key != "landed"}
    bare = replace(case, table=replace(case.table, letters=letters))

    assert ("the sheets Quotes and Freight", "C3") == (
        cells_to_write(assessed(bare), 1, 1),
        cells_to_write(assessed(case), 1, 1),
    )


@pytest.mark.parametrize(
    ("of_quote", "rules", "where"),
    [
        ({"covers": "goods and freight"}, uk(), "price_has_tax under [import] of the criteria file"),
        # other things are open too, or nothing that this key would settle
        ({"covers": "goods"}, uk(), "the sheets Quotes and Freight of {file}"),
        ({"covers": "goods and freight"}, uk(tax=(10, 20), price_has_tax=True, tax_is=None),
         "the sheets Quotes and Freight of {file}"),
    ],
)  # fmt: skip
def test_where_only_the_sales_tax_inside_a_price_is_open_it_is_written_into_the_criteria_file(of_quote, rules, where):
    near = {"Ash": MakerFacts(maker="Ash", country="GB")}
    row = quote(5, maker="Ash", way="road", days=30, **of_quote)
    case = case_of({"Ash": 1, "Birch": 2}, {"Ash": row}, weight=1, makers=near, imports=rules)
    letters = {key: letter for key, letter in case.table.letters.items() if key != "landed"}
    found = assessed(replace(case, table=replace(case.table, letters=letters)))

    assert where.format(file=case.table.file) == where_to_write(found, 0, 1)
    assert where_to_write(found, 0, 1).startswith(cells_to_write(found, 0, 1))
    assert "the sheets Quotes and Freight" == cells_to_write(found, 1, 1)


def test_a_name_that_was_made_fit_for_a_page_is_found_by_the_one_that_was_read():
    near = {"Ash": MakerFacts(maker="Ash", country="GB")}
    row = quote(5, maker="Ash", way="road", days=30, covers="goods and freight")
    case = case_of({"Ash": 1, "Birch": 2}, {"Ash": row}, weight=1, makers=near)
    letters = {key: letter for key, letter in case.table.letters.items() if key != "landed"}
    found = assessed(replace(case, table=replace(case.table, letters=letters)))
    named = replace(found, case=replace(found.case, table=replace(found.case.table, makers=("[Ash]", "[Birch]"))))

    assert ["the sheets Quotes and Freight", "price_has_tax under [import] of the criteria file"] == [
        cells_to_write(named, 0, 1), cells_to_write(named, 0, 1, "Ash")
    ]  # fmt: skip
