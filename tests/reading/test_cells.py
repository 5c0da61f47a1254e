from datetime import date, datetime, time

import pytest

from scorecard.reading.cells import (
    CellError,
    NoResult,
    PercentNumber,
    as_text,
    column_letter,
    column_number,
    is_blank,
    quoted,
    row_and_column,
)


@pytest.mark.parametrize("column", [1, 26, 27, 52, 702, 703, 16_384])
def test_a_columns_letters_count_back_to_the_column(column):
    assert column == column_number(column_letter(column))


def test_cells_sort_by_row_then_column():
    assert ["B2", "AA2", "A10"] == sorted(["A10", "AA2", "B2"], key=row_and_column)


def test_no_cell_sorts_first():
    assert (0, 0) == row_and_column(None)


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (None, ""),
        (12.0, "12"),
        (PercentNumber(0.25), "0.25"),
        (10**20, "100000000000000000000"),
        (True, "TRUE"),
        (False, "FALSE"),
        (datetime(2026, 11, 25), "2026-11-25"),
        (datetime(2026, 11, 25, 8, 30), "2026-11-25T08:30:00"),
        (date(2026, 11, 25), "2026-11-25"),
        (time(8, 30), "08:30:00"),
        (CellError("#N/A"), "#N/A"),
        (NoResult(), "a formula without a result"),
        ("as typed ", "as typed "),
    ],
)
def test_a_cell_reads_as_its_user_sees_it(value, text):
    assert text == as_text(value)


def test_a_quoted_cell_stands_on_one_line():
    assert "'two lines'" == quoted("two\nlines")


def test_a_long_cell_is_cut_when_quoted():
    assert "'" + "x" * 60 + "…'" == quoted("x" * 61)


def test_a_cell_of_spaces_is_blank():
    assert is_blank(" \u00a0\t")


@pytest.mark.parametrize("value", [0, False, "-", CellError("#N/A"), NoResult()])
def test_whatever_was_put_in_a_cell_is_not_blank(value):
    assert not is_blank(value)
