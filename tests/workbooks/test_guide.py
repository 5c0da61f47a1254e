"""The Guide names every column of every sheet."""

from io import BytesIO

import openpyxl
import pytest

from scorecard.brief import Brief
from scorecard.criteria import Criterion
from scorecard.value_functions import Choices
from scorecard.workbooks.entry import entry_workbook
from scorecard.workbooks.entry_makers import entry_sheets

BRIEF = Brief(item="enamel mug", quantity=200, designs=4)
CRITERIA = [
    Criterion(
        key="method",
        title="Print method",
        weight=1,
        column="Print method",
        value=Choices((("kiln-fired transfer", 100), ("art, not logos", 50))),
    )
]


@pytest.fixture(scope="module")
def rows():
    page = openpyxl.load_workbook(BytesIO(entry_workbook(CRITERIA, BRIEF)))["Guide"]
    return [["" if value is None else value for value in row] for row in page.iter_rows(values_only=True)]


def table(rows):
    return rows[[row[0] for row in rows].index("Sheet") + 1 :]


def test_every_column_of_every_sheet_stands_in_the_guide(rows):
    expected = [column.heading for sheet in entry_sheets(CRITERIA, BRIEF) for column in sheet.columns]

    assert expected == [row[1] for row in table(rows)]


def test_every_sheet_is_named_where_its_columns_begin(rows):
    expected = [sheet.name for sheet in entry_sheets(CRITERIA, BRIEF)]

    assert expected == [row[0] for row in table(rows) if row[0]]


def test_every_line_says_what_where_and_what_a_cell_may_hold(rows):
    assert [] == [row[1] for row in table(rows) if not (row[2] and row[4] and row[5])]


def test_choices_are_listed_so_that_a_comma_in_one_does_not_part_it(rows):
    (line,) = (row for row in table(rows) if row[1] == "Print method")

    assert "One of these, or nothing while you do not know: kiln-fired transfer; art, not logos." == line[5]


def test_the_guide_begins_with_how_little_is_enough(rows):
    begins = [row[0] for row in rows[:3]]

    assert "Guide to this workbook" == begins[0]
    assert "For: enamel mug, 200 pieces in 4 designs." == begins[1]
    assert "two makers and 2 columns are enough for a first ranking (Maker and Print method)" in begins[2]
