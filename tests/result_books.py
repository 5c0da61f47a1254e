"""Results workbooks for tests: a case that holds everything, and what stands in a workbook's cells."""

import re
from collections.abc import Iterator, Mapping
from datetime import datetime
from io import BytesIO
from zipfile import ZipFile

import openpyxl
from cases import AS_OF, choices, make_case, numbers

from scorecard.assessment import assess
from scorecard.case import Case
from scorecard.criteria import Limit, Steady
from scorecard.workbooks.results import results_workbook

MADE = datetime(2026, 11, 25, 9, 30, 5)
FIRST = 8  # row of the first weight and of the first maker


def varied_case() -> Case:
    """Return a case with ties, unknown and ranged answers, limits that are failed or may be, and steadied ratings."""
    criteria = [
        numbers("years", 15, (0, 0), (3, 50), (10, 100), unit="years"),
        numbers(
            "rating",
            20,
            (4.0, 0),
            (4.6, 60),
            (5.0, 100),
            within=(0, 5),
            limit=Limit(at_least=4.0),
            steady=Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20),
        ),
        numbers("minimum", 20, (1, 100), (2, 0), per_quantity=True, limit=Limit(at_most=2.5)),
        choices("method", 10, {"kiln": 100, "screen": 80, "sticker": 0}, limit=Limit(none_of=("sticker",))),
        numbers("reply", 10, (1, 100), (2, 80), (5, 0), unknown="worst"),
        numbers("sample", 0, unknown="best"),
    ]
    makers = {
        "Ash": [12, 4.8, (100, 200), "kiln", 1, 50],
        "Birch": [7, 4.7, 200, "screen", None, None],
        "Cedar": [3, 4.9, 100, "kiln", (2, 4), 20],
        "Out by its minimum": [20, 4.9, 600, "kiln", 1, 90],
        "Twin of Cedar": [3, 4.9, 100, "kiln", (2, 4), 20],
        "Elder": [None, 4.5, None, None, 3, (10, None)],
        "Out by its method": [12, 4.8, 100, "sticker", 1, 50],
        "Fir": [9, None, 300, "kiln", 1, 0],
    }
    return make_case(criteria, makers)


def weighted(case: Case, weights: Mapping[str, float]) -> Case:
    """Return a case with other weights."""
    return case.with_criteria(case.criteria.with_weights(weights))


def written(case: Case, **more) -> bytes:
    """Return the results workbook of a case."""
    return results_workbook(assess(case, as_of=AS_OF), made=MADE, **more)


def opened(content: bytes) -> openpyxl.Workbook:
    """Return a workbook with its formulas."""
    return openpyxl.load_workbook(BytesIO(content))


def values(content: bytes) -> openpyxl.Workbook:
    """Return a workbook with what its formulas store."""
    return openpyxl.load_workbook(BytesIO(content), data_only=True)


def retyped(content: bytes, weights: list[object]) -> bytes:
    """Return a workbook with other weights typed into it, and without anything that its formulas stored."""
    book, buffer = opened(content), BytesIO()
    for row, weight in enumerate(weights, start=FIRST):
        book["Shortlist"].cell(row, 3).value = weight
    book.save(buffer)
    return buffer.getvalue()


def formulas(content: bytes) -> dict[tuple[str, str], str]:
    """Return every formula by sheet and cell."""
    cells = (cell for sheet in opened(content) for row in sheet.iter_rows() for cell in row)
    return {(cell.parent.title, cell.coordinate): cell.value for cell in cells if cell.data_type == "f"}


def differences(content: bytes, again: openpyxl.Workbook) -> list[tuple[str, str]]:
    """Return the formula cells whose stored value is not, within 1e-9, what they were worked out to be anew."""
    kept = values(content)
    return [at for at in formulas(content) if not _equal(*(book[at[0]][at[1]].value for book in (kept, again)))]


def _equal(one: object, other: object) -> bool:
    if isinstance(one, int | float) and isinstance(other, int | float):
        return abs(one - other) <= 1e-9
    return (one or "") == (other or "")


def with_wrong_value(content: bytes, sheet_number: int, cell: str, wrong: str) -> bytes:
    """Return a workbook in which one formula stores a wrong value."""
    name, buffer = f"xl/worksheets/sheet{sheet_number}.xml", BytesIO()
    with ZipFile(BytesIO(content)) as old, ZipFile(buffer, "w") as new:
        for part in old.namelist():
            text = old.read(part)
            if part == name:
                pattern = rf'(<c r="{cell}"[^>]*><f>[^<]*</f><v>)[^<]*'.encode()
                text, found = re.subn(pattern, rb"\g<1>" + wrong.encode(), text)
                assert found == 1
            new.writestr(part, text)
    return buffer.getvalue()


def lines(sheet: openpyxl.worksheet.worksheet.Worksheet, columns: str) -> Iterator[tuple[object, ...]]:
    """Yield these columns of a sheet's lines from the first maker to the last."""
    for row in range(FIRST, sheet.max_row + 1):
        found = tuple(sheet[f"{letter}{row}"].value for letter in columns)
        if found[0] is not None and found[0] != "":
            yield found
