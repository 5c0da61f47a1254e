"""Text stays text, whatever it looks like; the same input is the same bytes."""

from datetime import date, datetime
from io import BytesIO

import openpyxl
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.workbooks.safe import LONGEST_TEXT, clean_text, new_workbook, put


def written(*values):
    """Return the cells of a sheet into which these values were put, one below the other, and the bytes."""
    buffer = BytesIO()
    workbook = new_workbook(buffer, "=1+1")
    sheet = workbook.add_worksheet("One")
    for row, value in enumerate(values):
        put(sheet, (row, 0), value)
    workbook.close()
    page = openpyxl.load_workbook(BytesIO(buffer.getvalue()))["One"]
    return [page.cell(row, 1) for row in range(1, len(values) + 1)], buffer.getvalue()


@pytest.mark.parametrize(
    "text",
    [
        "=1+1",
        "+1",
        "-1",
        "@SUM(A1)",
        "{=1+1}",
        '=HYPERLINK("x")',
        "＝1+1",
        "\t=1+1",
        " =1+1",
        "https://x.example",
        "12",
    ],
)
def test_text_is_stored_as_text_whatever_it_looks_like(text):
    (cell,), _ = written(text)

    assert ("s", text, None) == (cell.data_type, cell.value, cell.hyperlink)


@given(st.text(st.characters(codec=None, exclude_categories=()), max_size=40))
def test_no_text_becomes_anything_but_text(text):
    (cell,), _ = written(text)

    assert cell.data_type in ("s", "n")  # "n" with no value is an empty cell
    assert cell.value is None or isinstance(cell.value, str)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a\x00b\x07c\x0bd\x1fe\x7ff", "abcdef"),
        ("lone \ud800 half", "lone  half"),
        ("one\r\ntwo\rthree", "one\ntwo\nthree"),
        ("left\u202eright\u2066", "leftright"),
        ("x" * (LONGEST_TEXT + 5), "x" * LONGEST_TEXT),
        ("Žluť 陶器 😀\tok", "Žluť 陶器 😀\tok"),
        ("_x0041_", "_x0041_"),
    ],
)
def test_text_is_cleaned_of_what_a_workbook_cannot_hold(text, expected):
    assert expected == clean_text(text)


def test_numbers_and_days_keep_their_types():
    cells, _ = written(4.2, 7, date(2026, 11, 25), None, "")

    assert [4.2, 7, datetime(2026, 11, 25), None, None] == [cell.value for cell in cells]


@pytest.mark.parametrize("number", [float("nan"), float("inf"), float("-inf")])
def test_a_number_that_no_cell_can_hold_is_refused(number):
    with pytest.raises(ValueError, match="is not a number that a cell can hold"):
        written(number)


def test_the_same_values_are_the_same_bytes():
    assert written("a", 1, date(2026, 1, 1))[1] == written("a", 1, date(2026, 1, 1))[1]


@pytest.mark.office
def test_text_stays_text_in_libreoffice(recalc):
    hostile = ["=1+1", "+1+1", "-1+1", "@SUM(1)", "_x0041_", "two\nlines", "12"]
    page = recalc(written(*hostile)[1])["One"]

    assert hostile == [page.cell(row, 1).value for row in range(1, 8)]


@pytest.mark.office
def test_recalculating_does_not_believe_a_planted_result(recalc):
    buffer = BytesIO()
    workbook = new_workbook(buffer, "planted")
    workbook.add_worksheet("One").write_formula(0, 0, "=2*3", None, 999)
    workbook.close()

    assert 6 == recalc(buffer.getvalue())["One"]["A1"].value
