"""The sheet "From last time": its lines as they are, typed text never a formula."""

from datetime import date, datetime
from io import BytesIO

import openpyxl
from cases import numbers

from scorecard.brief import Brief
from scorecard.carrying import FromLastTime
from scorecard.workbooks.entry import entry_workbook
from scorecard.workbooks.from_last_time import HEADINGS, NAME, LastTime

AS_OF = date(2027, 9, 1)


def book(*lines):
    made = entry_workbook(
        [numbers("years", 1)], Brief(item="mug", quantity=9), last_time=LastTime(lines=lines, as_of=AS_OF)
    )
    return openpyxl.load_workbook(BytesIO(made))


def line(**changes):
    known = {"maker": "Fernhill", "what": "set-up", "figure": "30.00 EUR", "as_of": date(2026, 11, 13)}
    return FromLastTime(**known | {"state": "to confirm", "where": "Set-up, sheet Quotes"} | changes)


def test_a_line_stands_with_its_day_and_age():
    rows = list(book(line())[NAME].iter_rows(min_row=3, values_only=True))

    # from 13 November 2026 to 1 September 2027: 292 days
    assert HEADINGS == rows[0]
    assert ("Fernhill", "set-up", "30.00 EUR", datetime(2026, 11, 13), 292, "to confirm", "Set-up, sheet Quotes") == (
        rows[1]
    )


def test_a_day_that_nobody_noted_leaves_day_and_age_empty():
    (row,) = book(line(as_of=None))[NAME].iter_rows(min_row=4, values_only=True)

    assert (None, None) == row[3:5]


def test_what_looks_like_a_formula_stays_text():
    (row,) = book(line(maker="=1+1", figure="=2+2"))[NAME].iter_rows(min_row=4)

    assert [("=1+1", "s"), ("=2+2", "s")] == [(cell.value, cell.data_type) for cell in (row[0], row[2])]


def test_without_a_line_there_is_no_such_sheet():
    assert NAME not in book().sheetnames
