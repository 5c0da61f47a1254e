"""Builders of workbooks, .csv files and criteria for the tests: small, and everything at a known cell."""

import csv
import zipfile
from io import BytesIO, StringIO

from openpyxl import Workbook
from openpyxl.utils import get_column_letter

from scorecard.criteria import Criterion
from scorecard.value_functions import Choices, PiecewiseLinear

RISING = PiecewiseLinear(((0, 0), (10, 100)))


def numbers(key, column=None, **fields):
    """Return a criterion with numbers, on the column of its key's name unless another is given."""
    settings = {"title": key, "weight": 1, "value": RISING} | fields
    if "measure" not in settings:
        settings["column"] = column or key
    return Criterion(key=key, **settings)


def choices(key, *names, column=None, **fields):
    """Return a criterion with choices, the first worth most."""
    table = tuple((name, 100 * (len(names) - at) / len(names)) for at, name in enumerate(names))
    return Criterion(
        **{"key": key, "title": key, "weight": 1, "value": Choices(table), "column": column or key} | fields
    )


def workbook_bytes(sheets, change=None):
    """Return a workbook of named sheets, each a list of rows from row 1; ``change`` may touch it before it is saved."""
    book = Workbook()
    book.remove(book.active)
    for title, rows in sheets.items():
        sheet = book.create_sheet(title)
        for row_number, row in enumerate(rows, 1):
            for column_number, value in enumerate(row, 1):
                if value is not None:
                    sheet.cell(row_number, column_number).value = value
    if change:
        change(book)
    content = BytesIO()
    book.save(content)
    return content.getvalue()


def makers_xlsx(path, headings, rows, *, sheet="Makers", above=(), change=None):
    """Write a workbook with one sheet of makers, its headings below the rows ``above``; return its path."""
    path.write_bytes(workbook_bytes({sheet: [*above, headings, *rows]}, change))
    return path


def makers_csv(path, headings, rows, *, separator=",", encoding="utf-8", before=""):
    """Write a .csv with headings and rows; return its path."""
    text = StringIO(newline="")
    text.write(before)
    writer = csv.writer(text, delimiter=separator, lineterminator="\r\n")
    writer.writerow(headings)
    writer.writerows(rows)
    path.write_bytes(text.getvalue().encode(encoding))
    return path


def with_parts(content, parts):
    """Return a workbook's bytes with some parts put in or replaced."""
    changed = BytesIO()
    with zipfile.ZipFile(BytesIO(content)) as old, zipfile.ZipFile(changed, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            if name not in parts:
                new.writestr(name, old.read(name))
        for name, value in parts.items():
            new.writestr(name, value)
    return changed.getvalue()


def part(content, name):
    """Return one part of a workbook's bytes."""
    with zipfile.ZipFile(BytesIO(content)) as archive:
        return archive.read(name)


def cell(column, row):
    """Return an address: cell(2, 5) is B5."""
    return f"{get_column_letter(column)}{row}"


def codes(problems):
    """Return (cell, code) of each problem, in order."""
    return [(problem.place.cell, problem.code) for problem in problems]
