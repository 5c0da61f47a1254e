from math import inf, nan

import numpy as np
import pytest
from builders import codes
from hypothesis import example, given
from hypothesis import strategies as st

from scorecard.reading.cell_values import Reading, read_number
from scorecard.reading.cells import CellError
from scorecard.reading.columns import (
    ChoiceColumn,
    DayColumn,
    MinimumUnitColumn,
    NameColumn,
    NumberColumn,
    TextColumn,
    quick_numbers,
    read_minimum_unit,
)
from scorecard.reading.findings import Findings
from scorecard.reading.number_text import NumberRule
from scorecard.reading.units import ColumnUnit

RULES = [
    NumberRule(),
    NumberRule(decimal="."),
    NumberRule(decimal=","),
    NumberRule(within=(0, 5)),
    NumberRule(counts="pieces", decimal="."),
    NumberRule(decimal=".", all_is_text=True),
    NumberRule(decimal=",", all_is_text=True),
    NumberRule(unit=ColumnUnit("pieces"), decimal=",", all_is_text=True),
    NumberRule(unit=ColumnUnit("years"), decimal=".", all_is_text=True),
]
TEXTS = st.text("0123456789.,- ", max_size=8) | st.floats(-1e6, 1e6).map(lambda number: f"{number:.3f}")
CELLS = st.lists(TEXTS, min_size=1, max_size=40) | st.lists(
    st.none() | st.integers() | st.floats() | TEXTS | st.booleans(), min_size=1, max_size=40
)


def findings():
    """Return empty findings of a .csv."""
    return Findings(file="makers.csv")


@given(CELLS, st.sampled_from(RULES))
@example([".5"], NumberRule(decimal=".", all_is_text=True))
@example(["1.25", "-.5"], NumberRule(decimal=".", all_is_text=True))
@example(["2", ",5"], NumberRule(decimal=",", all_is_text=True))
def test_a_block_taken_at_once_says_the_same_as_each_cell_read_with_care(values, rule):
    quick = quick_numbers(values, rule)
    careful = [read_number(value, rule) for value in values]

    if quick is not None:
        assert all(isinstance(reading, Reading) and reading[2:] == (None, None) for reading in careful)
        np.testing.assert_array_equal([reading.low for reading in careful], quick)


@given(CELLS, st.sampled_from(RULES))
def test_a_column_says_the_same_as_each_cell_read_with_care(values, rule):
    column = NumberColumn("B", rule, findings())
    column.add(range(2, len(values) + 2), values)
    careful = [read_number(value, rule) for value in values]
    expected = [reading.low if isinstance(reading, Reading) else nan for reading in careful]

    np.testing.assert_array_equal(expected, column.answers().low)


@pytest.mark.parametrize("values", [["1.5", "", "-2"], [1, None, 2.5]])
def test_plain_numbers_and_blanks_are_taken_at_once(values):
    assert quick_numbers(values, NumberRule(decimal=".", all_is_text=True)) is not None


def test_a_number_without_end_is_never_taken_at_once():
    assert quick_numbers([1.0, inf], NumberRule(unit=ColumnUnit("pieces"))) is None


@pytest.mark.parametrize("decimal", [None, ",", "."])
def test_a_number_that_could_be_thousands_is_never_taken_at_once(decimal):
    assert quick_numbers(["5", "234.567"], NumberRule(decimal=decimal, all_is_text=True)) is None


def test_one_odd_cell_among_many_is_found_at_its_cell():
    found = findings()
    column = NumberColumn("B", NumberRule(), found)
    column.add(range(2, 1002), ["7"] * 500 + ["lots"] + ["7"] * 499)

    assert [("B502", "not-a-number")] == codes(found.problems)
    assert (999 * 7.0, 1000) == (np.nansum(column.answers().low), len(column.answers().low))


def test_every_repeated_fault_has_its_own_cell():
    found = findings()
    NumberColumn("B", NumberRule(), found).add([2, 3], ["lots", "lots"])

    assert [("B2", "not-a-number"), ("B3", "not-a-number")] == codes(found.problems)


def test_a_reading_is_listed_at_its_cell():
    found = findings()
    NumberColumn("B", NumberRule(), found).add([2], ["2,5"])

    assert [("B2", "read-as", "'2,5'", "read as 2.5")] == [
        (warning.place.cell, warning.code, warning.found, warning.wanted) for warning in found.warnings
    ]


def test_true_is_no_1_where_1_was_met_before():
    found = findings()
    NumberColumn("B", NumberRule(), found).add([2, 3, 4], [1, "x", True])

    assert ["not-a-number", "true-or-false"] == [problem.code for problem in found.problems]


def test_choices_become_positions_and_unknown():
    found = findings()
    column = ChoiceColumn("B", ("free", "paid"), found)
    column.add([2, 3], ["Paid", None])
    column.add([4, 5], ["Paid", "sold"])

    np.testing.assert_array_equal([1, nan, 1, nan], column.answers().low)
    assert [("B5", "not-a-choice")] == codes(found.problems)


def test_a_choice_that_is_read_with_goodwill_is_listed_in_every_row():
    found = findings()
    column = ChoiceColumn("B", ("screen print", "none"), found)
    column.add([2, 3], ["screen-print", "none"])
    column.add([4, 5], ["screen-print", "screen print"])

    np.testing.assert_array_equal([0, 1, 0, 0], column.answers().low)
    assert [("B2", "'screen-print'", "read as 'screen print'"), ("B4", "'screen-print'", "read as 'screen print'")] == [
        (one.place.cell, one.found, one.wanted) for one in found.warnings
    ]


@pytest.mark.parametrize(
    ("value", "unit"),
    [
        ("order", "order"),
        (" Designs ", "design"),
        ("per design", "design"),
        ("Per Colour", "colour"),
        ("colors", "colour"),
        ("SIZE", "size"),
        (None, None),
        ("?", None),
    ],
)
def test_a_minimum_is_per_a_unit_however_it_is_spelt(value, unit):
    assert unit == read_minimum_unit(value)


def test_a_misspelt_unit_of_a_minimum_names_the_nearest_first():
    assert read_minimum_unit("per desing").wanted.startswith("Write design, ")


def test_a_minimum_per_another_word_is_a_fault_at_its_cell():
    found = findings()
    column = MinimumUnitColumn("C", found)
    column.add([2, 3, 4], ["box", "order", CellError("#REF!")])

    assert ([None, "order", None], [("C2", "not-a-minimum-unit"), ("C4", "spreadsheet-error")]) == (
        column.units,
        codes(found.problems),
    )


def test_a_day_that_cannot_be_read_is_told_from_a_blank_one():
    found = findings()
    column = DayColumn("D", found)
    column.add([2, 3, 4], ["", "03/04/2026", "2026-11-25"])

    assert ({1}, [("D3", "ambiguous-date")]) == (column.unreadable, codes(found.problems))


def test_a_text_that_cannot_be_read_is_no_more_than_a_warning():
    found = findings()
    column = TextColumn("E", found)
    column.add([2, 3], [CellError("#REF!"), 12.0])

    assert (["", "12"], [], [("E2", "spreadsheet-error")]) == (column.texts, found.problems, codes(found.warnings))


def test_a_name_that_cannot_be_read_stops_the_run_even_when_answers_are_set_aside():
    found = Findings(file="makers.xlsx", takes_unreadable_as_unknown=True)
    NameColumn("A", found).add([2], [CellError("#N/A")])

    assert [("A2", "spreadsheet-error")] == codes(found.problems)
