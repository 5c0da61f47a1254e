"""A workbook in which what a user typed can only ever be text, and which is the same bytes for the same input."""

import re
from datetime import date, datetime
from io import BytesIO
from math import isfinite
from typing import Any

from xlsxwriter import Workbook
from xlsxwriter.format import Format
from xlsxwriter.worksheet import Worksheet

Value = str | float | date | None

LONGEST_TEXT = 32_767  # what a cell can hold
MADE_ON = datetime(2000, 1, 1)  # constant, so that the same input gives the same bytes
NOT_IN_XML = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufffe\uffff]")
TURNS_READING_ROUND = re.compile("[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]")


class QuickSheet(Worksheet):  # type: ignore[misc]  # the library has no types
    """A sheet that does not look for signs to escape in an attribute of letters and digits, as almost all are."""

    def _escape_attributes(self, attribute: Any) -> Any:
        is_plain = type(attribute) is int or (type(attribute) is str and attribute.isalnum())
        return attribute if is_plain else super()._escape_attributes(attribute)


def new_workbook(buffer: BytesIO, title: str) -> Workbook:
    """Return an empty workbook in memory, which takes no text for a formula, a link or a number.

    Parameters
    ----------
    buffer : holds the bytes once the workbook is closed
    title : of the document
    """
    taken_as_text = {"strings_to_formulas": False, "strings_to_urls": False, "strings_to_numbers": False}
    workbook = Workbook(buffer, {"in_memory": True, "default_date_format": "yyyy-mm-dd", **taken_as_text})
    workbook.worksheet_class = QuickSheet
    workbook.set_properties({"title": clean_text(title), "created": MADE_ON})
    return workbook


def clean_text(text: str) -> str:
    """Return text that a workbook can hold and shows as it is: no control characters, none that turn reading round.

    Examples
    --------
    >>> clean_text("Pots" + chr(0) + chr(0x202E) + " & Co")
    'Pots & Co'
    """
    plain = text.replace("\r\n", "\n").replace("\r", "\n")
    return TURNS_READING_ROUND.sub("", NOT_IN_XML.sub("", plain))[:LONGEST_TEXT]


def put(sheet: Worksheet, cell: tuple[int, int], value: Value, look: Format | None = None) -> None:
    """Write a value by its type, whatever it looks like.

    Parameters
    ----------
    cell : row and column, from 0
    value : a text is written as text; None and "" leave the cell empty, with its look
    look : the cell's format; None for the column's

    Raises
    ------
    ValueError
        If a number is not finite.
    """
    row, column = cell
    if value is None or value == "":
        sheet.write_blank(row, column, None, look)
    elif isinstance(value, str):
        sheet.write_string(row, column, clean_text(value), look)
    elif isinstance(value, date):
        sheet.write_datetime(row, column, value, look)
    elif isfinite(value):
        sheet.write_number(row, column, value, look)
    else:
        raise ValueError(f"{value} is not a number that a cell can hold")
