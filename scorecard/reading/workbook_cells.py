"""A workbook's sheet as rows of common cells, read as a stream by openpyxl's own parts.

Only the sheet that is asked for is parsed, row by row, and never by its declared size: a stray value in the last cell
costs nothing. openpyxl's parser is asked for values; whether a formula has no stored result is seen in the same pass.
"""

import re
import warnings
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from io import BytesIO
from typing import Any
from xml.etree.ElementTree import iterparse

from openpyxl.reader.excel import ExcelReader
from openpyxl.styles.numbers import BUILTIN_FORMATS
from openpyxl.styles.stylesheet import apply_stylesheet
from openpyxl.workbook import Workbook
from openpyxl.worksheet._reader import CELL_TAG, COL_TAG, FORMULA_TAG, MERGE_TAG, ROW_TAG, VALUE_TAG, WorkSheetParser

from scorecard.errors import InputError, Problem
from scorecard.reading.cells import COLUMN_LIMIT, CellError, Decimal, Fault, NoResult, PercentNumber, SheetRow, Value
from scorecard.reading.findings import Findings
from scorecard.reading.gatekeeper import Admitted, damaged, refusal
from scorecard.reading.guarded_archive import GuardedArchive
from scorecard.words import listed, nearest

FIRST_CUSTOM_FORMAT = 164
STRICT = b"http://purl.oclc.org/ooxml/spreadsheetml/main"
LITERAL = re.compile(r'"[^"]*"|\\.')


class SheetParser(WorkSheetParser):
    """openpyxl's parser of a sheet, asked for nothing but values, hidden rows and columns, and merged ranges."""

    percent_styles: frozenset[int] = frozenset()

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.hidden_rows: list[int] = []
        self.hidden_columns: set[int] = set()
        self.merged: list[str] = []

    def rows(self) -> Iterator[SheetRow]:
        """Yield each row that holds a value."""
        parts: Any = iterparse(self.source)  # noqa: S314 - the guard lets no entity through, and this is twice as quick
        for _, element in parts:
            if element.tag == ROW_TAG:
                row = self._row(element)
                element.clear()
                if row[1]:
                    yield row
            elif element.tag == COL_TAG and _is_true(element.get("hidden")):
                last = min(int(element.get("max")), COLUMN_LIMIT)
                self.hidden_columns.update(range(int(element.get("min")), last + 1))
            elif element.tag == MERGE_TAG:
                self.merged += [merge.get("ref", "") for merge in element]

    def _row(self, element: Any) -> SheetRow:
        """Return a row's number and its values from column A to its last, none of them if all are empty."""
        number = element.get("r")
        self.row_counter = int(float(number)) if number else self.row_counter + 1
        self.col_counter = 0
        cells = [self._cell(child) for child in element if child.tag == CELL_TAG]
        filled: dict[int, Value] = {column: value for column, value in cells if value is not None}
        if filled and _is_true(element.get("hidden")):
            self.hidden_rows.append(self.row_counter)
        return self.row_counter, _spread(filled)

    def _cell(self, element: Any) -> tuple[int, Value]:
        """Return a cell's column and its value, with its errors, empty formulas and percentages marked."""
        cell: dict[str, Any] = self.parse_cell(element)
        value = cell["value"]
        if value is None:
            value = _without_result(element)
        elif cell["data_type"] == "e":
            value = CellError(str(value))
        elif cell["style_id"] in self.percent_styles and type(value) in (int, float):
            value = PercentNumber(value)
        return cell["column"], value


def _spread(filled: dict[int, Value]) -> list[Value]:
    """Return the values from column A to the last filled one."""
    values: list[Value] = [None] * max(filled, default=0)
    for column, value in filled.items():
        values[column - 1] = value
    return values


def _is_true(flag: str | None) -> bool:
    """Say whether an XML flag is set."""
    return flag in {"1", "true"}


def _without_result(element: Any) -> NoResult | None:
    """Return the mark of a formula without a stored result; a formula whose stored result is an empty text is empty."""
    if element.find(FORMULA_TAG) is None:
        return None
    gives_empty_text = element.get("t") == "str" and element.find(VALUE_TAG) is not None
    return None if gives_empty_text else NoResult()


def _percent_styles(workbook: Workbook) -> frozenset[int]:
    """Return the cell styles that show a number as a percentage."""
    custom: Any = workbook._number_formats  # type: ignore[attr-defined]  # no public name for it
    styles: Any = workbook._cell_styles  # type: ignore[attr-defined]
    formats = {FIRST_CUSTOM_FORMAT + at: text for at, text in enumerate(custom)} | BUILTIN_FORMATS
    percent = {at for at, text in formats.items() if "%" in LITERAL.sub("", str(text))}
    return frozenset(at for at, style in enumerate(styles) if style.numFmtId in percent)


class WorkbookSheet:
    """One sheet of a workbook, as ``SheetRows``."""

    decimal: Decimal | None = None
    blank: Value = None

    def __init__(self, sheet: str, parser: SheetParser, file: str) -> None:
        self.sheet: str | None = sheet
        self.warnings: list[Problem] = []
        self._parser, self._file = parser, file
        self.hidden_rows = parser.hidden_rows
        self.hidden_columns = parser.hidden_columns
        self.merged = parser.merged

    def __iter__(self) -> Iterator[SheetRow]:
        """Yield the rows; whatever is wrong with the XML becomes one sentence."""
        try:
            with warnings.catch_warnings():
                warnings.simplefilter("ignore")
                yield from self._parser.rows()
        except InputError:
            raise
        except Exception as error:  # a broken file can break openpyxl in any way; each is the same to the user
            raise damaged(self._file) from error


class OpenWorkbook:
    """A workbook whose sheets are opened one by one, by name, ignoring case and outer space.

    Raises
    ------
    InputError
        If the workbook cannot be read.
    """

    def __init__(self, admitted: Admitted) -> None:
        self._file = admitted.path.name
        with _told_as_damage(self._file):
            self._reader = _reader(admitted)
            _refuse_strict(self._reader, self._file)
            found = [(sheet.name, rel) for sheet, rel in self._reader.parser.find_sheets()]
            self._sheets = [(name, rel.target) for name, rel in found if "chart" not in rel.Type]
            if not self._sheets:
                raise damaged(self._file)

    def sheet(self, name: str) -> WorkbookSheet | None:
        """Return one sheet, or None where there is none of this name."""
        found = next((pair for pair in self._sheets if _folded(pair[0]) == _folded(name)), None)
        if found is None:
            return None
        with _told_as_damage(self._file):
            return WorkbookSheet(found[0], _parser(self._reader, found[1]), self._file)

    def required(self, name: str) -> WorkbookSheet:
        """Return one sheet.

        Raises
        ------
        InputError
            If there is none of this name.
        """
        found = self.sheet(name)
        if found is None:
            raise _no_such_sheet(self._file, name, [title for title, _ in self._sheets])
        return found


@contextmanager
def _told_as_damage(file: str) -> Iterator[None]:
    """Make one sentence of whatever openpyxl raises."""
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            yield
    except InputError:
        raise
    except Exception as error:  # a broken file can break openpyxl in any way; each is the same to the user
        raise damaged(file) from error


def _folded(name: str) -> str:
    """Return a sheet's name for comparing."""
    return name.strip().casefold()


def _reader(admitted: Admitted) -> ExcelReader:
    """Return openpyxl's reader with everything read but the sheets."""
    reader = ExcelReader(BytesIO(admitted.content), read_only=True, data_only=True, keep_links=False)
    archive = GuardedArchive(BytesIO(admitted.content))
    archive.workbook_name = admitted.path.name
    reader.archive = archive
    reader.read_manifest()
    reader.read_strings()
    reader.read_workbook()
    apply_stylesheet(archive, reader.wb)
    return reader


def _refuse_strict(reader: ExcelReader, file: str) -> None:
    """Turn away the strict form of a workbook, whose sheets openpyxl would take for empty ones."""
    if STRICT in reader.archive.read(reader.parser.workbook_part_name):
        found, wanted = f"{file} is saved in the strict form of .xlsx", "Save a copy in the ordinary form of .xlsx"
        raise refusal(file, "file-strict", found, wanted)


def _parser(reader: ExcelReader, part: str) -> SheetParser:
    """Return the parser of one sheet."""
    book: Any = reader.wb
    archive: Any = reader.archive  # ours, guarded
    source = archive.open_sheet(part)
    dates = {"date_formats": book._date_formats, "timedelta_formats": book._timedelta_formats}
    parser = SheetParser(source, reader.shared_strings, data_only=True, epoch=book.epoch, **dates)
    parser.percent_styles = _percent_styles(reader.wb)
    return parser


def _no_such_sheet(file: str, name: str, sheets: Iterable[str]) -> InputError:
    """Return the refusal of a workbook without the sheet, naming those that are there and the nearest."""
    titles = list(sheets)
    close = nearest(name, titles)
    wanted = f"Rename the sheet '{close}' to {name}" if close else f"Name the sheet that lists your makers {name}"
    there = listed(f"'{title}'" for title in titles)
    fault = Fault("no-such-sheet", f"{file} has no sheet {name}; its sheets: {there}", wanted)
    return InputError([Findings(file=file).problem_at(None, fault)])
