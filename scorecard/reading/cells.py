"""The common cell: what a workbook's or a .csv's cell can hold, as plain values, and how a cell is named and quoted.

A value is None or a blank text, a text, a number, a true-or-false, a day or time, or one of three marks: an error of
the spreadsheet, a formula without a stored result, a number shown as a percentage.
"""

from collections.abc import Iterator, Sequence
from datetime import date, datetime, time, timedelta
from typing import Literal, NamedTuple, Protocol

from scorecard.errors import Problem
from scorecard.frozen import dataclass
from scorecard.words import printable, shortest

Decimal = Literal[".", ","]

LONGEST_QUOTE = 60
HEADING_ROWS = 10  # the headings stand within so many rows
COLUMN_LIMIT = 500  # the most columns of a sheet that is read


@dataclass(frozen=True, slots=True)
class CellError:
    """An error of the spreadsheet, such as #N/A."""

    text: str


@dataclass(frozen=True, slots=True)
class NoResult:
    """A formula whose result was never stored."""


class PercentNumber(float):
    """A number that the sheet shows as a percentage: 0.25 shown as 25%."""

    __slots__ = ()


Value = None | str | int | float | bool | datetime | date | time | timedelta | CellError | NoResult

SheetRow = tuple[int, Sequence[Value]]


class Fault(NamedTuple):
    """What is wrong with one cell: a stable code, what was found, what to write instead."""

    code: str
    found: str
    wanted: str


class SheetRows(Protocol):
    """The rows of one sheet that hold anything, from the top: each its number from 1, and its values from column A.

    ``decimal`` is the decimal mark where the file settles it, ``blank`` what an empty cell holds. The hidden rows and
    columns (from 1) and the merged ranges are complete once the rows have been read through.
    """

    sheet: str | None
    decimal: Decimal | None
    blank: Value
    warnings: list[Problem]
    hidden_rows: list[int]
    hidden_columns: set[int]
    merged: list[str]

    def __iter__(self) -> Iterator[SheetRow]: ...


def is_blank(value: Value) -> bool:
    """Say whether a cell holds nothing, or nothing but space."""
    return value is None or (isinstance(value, str) and not value.strip())


def column_letter(column: int) -> str:
    """Return the letters of a column, counted from 1.

    Examples
    --------
    >>> column_letter(1), column_letter(28), column_letter(16384)
    ('A', 'AB', 'XFD')
    """
    letters = ""
    while column:
        column, rest = divmod(column - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def column_number(letters: str) -> int:
    """Return the number of a column from 1: "AB" is 28."""
    number = 0
    for letter in letters:
        number = number * 26 + ord(letter) - ord("A") + 1
    return number


def row_and_column(cell: str | None) -> tuple[int, int]:
    """Return where a cell stands, for sorting: (row, column) from 1, and (0, 0) for none."""
    if not cell:
        return 0, 0
    letters = cell.rstrip("0123456789")
    return int(cell[len(letters) :]), column_number(letters)


def as_text(value: Value) -> str:
    """Return a cell as the text that its user sees, about: numbers at their shortest, days in ISO form, "" for none."""
    text = {type(None): "", NoResult: "a formula without a result"}.get(type(value))
    if text is not None:
        return text
    if isinstance(value, bool):
        return "TRUE" if value else "FALSE"
    if isinstance(value, float):
        return shortest(value)
    if isinstance(value, datetime):
        return (value.date() if value.time() == time(0) else value).isoformat()
    return value.text if isinstance(value, CellError) else str(value)


def quoted(value: Value) -> str:
    """Return a cell between quotes for a sentence, on one line and cut where it is long."""
    text = printable(as_text(value))
    return f"'{text if len(text) <= LONGEST_QUOTE else text[:LONGEST_QUOTE] + '…'}'"
