import pytest
from builders import numbers

from scorecard.criteria import Steady
from scorecard.reading.cell_values import read_number
from scorecard.reading.findings import Findings
from scorecard.reading.headings import Headings
from scorecard.reading.maker_columns import MakerColumns, number_rule
from scorecard.reading.number_text import NumberRule


def columns_of(*headings, criteria=()):
    """Lay out the columns of some folded headings, from A."""
    known = Headings(row=1, columns={heading: at for at, heading in enumerate(headings, 1)})
    columns = MakerColumns(known, Findings(file="makers.csv"))
    columns.lay_out(criteria, NumberRule())
    return columns


def test_every_column_that_is_there_has_its_letter():
    rated = numbers("r", "Rating", steady=Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20))
    columns = columns_of("maker", "rating", "ratings counted", "asked on", "notes", criteria=[rated])

    assert {"maker": "A", "r": "B", "Ratings counted": "C", "Asked on": "D", "Notes": "E"} == columns.letters


def test_a_column_that_is_not_there_has_none():
    assert {} == columns_of("maker", criteria=[numbers("r", "Rating")]).answers


def test_two_criteria_may_draw_on_one_column():
    assert [2, 2] == [
        at
        for at, _ in columns_of(
            "maker", "rating", criteria=[numbers("a", "Rating"), numbers("b", "Rating")]
        ).by_position
    ]


def test_a_minimum_order_is_known_by_its_heading_or_by_being_divided():
    assert number_rule(numbers("m", "Minimum Order"), "Minimum Order", NumberRule()).is_minimum
    assert number_rule(numbers("m", "Least", per_quantity=True), "Least", NumberRule()).is_minimum
    assert not number_rule(numbers("m", "Price"), "Price", NumberRule()).is_minimum


def test_typed_response_days_are_in_days():
    assert "days" == number_rule(numbers("m", measure="response_days"), "Response days", NumberRule()).unit.unit


def test_typed_response_days_may_be_called_working_days():
    rule = number_rule(numbers("m", measure="response_days", unit="days"), "Response days", NumberRule())

    assert (3, 3, "3") == read_number("3 working days", rule)[:3]


@pytest.mark.parametrize("criterion", [numbers("m", "Lead days", unit="days"), numbers("m", measure="days_to_door")])
def test_working_days_are_another_unit_in_any_other_column(criterion):
    assert "other-unit" == read_number("3 working days", number_rule(criterion, "x", NumberRule())).code


def test_a_minimum_order_without_a_unit_is_in_pieces():
    assert "pieces" == number_rule(numbers("m", "Minimum order"), "Minimum order", NumberRule()).unit.unit


def test_a_typed_landed_cost_is_in_the_briefs_currency():
    cost = numbers("m", measure="landed_cost_per_piece")

    assert number_rule(cost, "Landed cost per piece", NumberRule(), "EUR").unit.has_currency("€")


def test_a_criterion_whose_key_is_maker_does_not_move_the_makers():
    assert "A" == columns_of("maker", "rating", criteria=[numbers("maker", "Rating")]).letters["maker"]


def test_a_steadied_rating_knows_where_its_count_is_written():
    steady = Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20)

    assert "Ratings counted" == number_rule(numbers("r", "Rating", steady=steady), "Rating", NumberRule()).counted_under
