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
from openpyxl.worksheet._reader import (
    CELL_TAG,
    COL_TAG,
    FORMULA_TAG,
    MERGE_TAG,
    ROW_TAG,
    VALUE_TAG,
    WorkSheetParser,
)
from openpyxl.xml.constants import ARC_STYLE, SHARED_STRINGS, SHEET_MAIN_NS

from scorecard.errors import InputError, Problem
from scorecard.reading.cells import (
    COLUMN_LIMIT,
    CellError,
    Decimal,
    Fault,
    NoResult,
    PercentNumber,
    SheetRow,
    Value,
    column_number,
)
from scorecard.reading.findings import Findings
from scorecard.reading.gatekeeper import Admitted, damaged, refusal
from scorecard.reading.guarded_archive import TEXTS_LIMIT, VALUES_ONLY, GuardedArchive
from scorecard.reading.number_formats import NumberFormats, read_number_formats
from scorecard.reading.shared_texts import read_shared_texts
from scorecard.words import listed, nearest

LAST_ROW, LAST_COLUMN = 1_048_576, 16_384
BLANKS_LIMIT = 1_000_000  # cells in rows without a value, one that seems to hold something counting fivefold
LETTERS = re.compile(r"[A-Z]{1,3}")
WORKSHEET = f"{{{SHEET_MAIN_NS}}}worksheet"
STRICT = b"http://purl.oclc.org/ooxml/spreadsheetml/main"


class SheetParser(WorkSheetParser):
    """openpyxl's parser of a sheet, asked for nothing but values, hidden rows and columns, and merged ranges."""

    formats = NumberFormats()
    file = ""

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.hidden_rows: list[int] = []
        self.hidden_columns: set[int] = set()
        self.merged: list[str] = []
        self._blanks = self._letters = 0
        self._row_text = ""
        self._columns: dict[str, int] = {}

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
                self._hide(int(element.get("min")), int(element.get("max")))
            elif element.tag == MERGE_TAG:
                self.merged += [merge.get("ref", "") for merge in element]
        if parts.root.tag != WORKSHEET:
            raise ValueError(parts.root.tag)

    def _hide(self, first: int, last: int) -> None:
        """Note hidden columns, however often they are told."""
        known = max(self.hidden_columns, default=0)
        self.hidden_columns.update(range(first if first > known else known + 1, min(last, COLUMN_LIMIT) + 1))

    def _row(self, element: Any) -> SheetRow:
        """Return a row's number and its values from column A to its last, none of them if all are empty."""
        self._number_row(element.get("r"))
        self.col_counter = 0
        held = [child for child in element if len(child)]
        if any(child.get("r") is None for child in held):
            held = list(element)  # cells without addresses are counted from the left, empty ones too
        cells = [self._cell(child) for child in held if child.tag == CELL_TAG]
        by_column = dict(cells)
        if len(by_column) < len(cells):
            raise ValueError("one cell twice")
        filled: dict[int, Value] = {column: value for column, value in cells if value is not None}
        if not filled:
            self._pass_over(len(element) + 4 * len(cells))
        elif _is_true(element.get("hidden")):
            self.hidden_rows.append(self.row_counter)
        return self.row_counter, _spread(filled)

    def _number_row(self, told: str | None) -> None:
        """Go to the next row, or to that of the number told, which must stand further down."""
        number = float(told) if told else self.row_counter + 1
        if not self.row_counter < number <= LAST_ROW or number != int(number):
            raise ValueError(f"row {told}")
        self.row_counter = int(number)
        self._row_text = str(self.row_counter)

    def _pass_over(self, cells: int) -> None:
        """Count an empty row, of which there may be many, but not without end."""
        self._blanks += 1 + cells
        if self._blanks > BLANKS_LIMIT:
            found = f"the file has more than {BLANKS_LIMIT:,} cells that are formatted and empty"
            raise refusal(self.file, "file-unpacks-too-big", found, VALUES_ONLY)

    def _cell(self, element: Any) -> tuple[int, Value]:
        """Return a cell's column and its value, with its errors, empty formulas and percentages marked."""
        column = self._column_of(element.get("r"))
        kind, style = element.get("t", "n"), int(element.get("s", 0))
        if kind == "s":
            value: Value = self._shared(element.findtext(VALUE_TAG))
        elif kind == "n" and style not in self.formats.dates:
            text = element.findtext(VALUE_TAG)
            value = _number(text) if text else None
            if value is not None and style in self.formats.percentages:
                value = PercentNumber(value)
        else:
            self.col_counter = column - 1  # openpyxl counts on, where there is no address
            cell: dict[str, Any] = self.parse_cell(element)
            value = cell["value"]
            if value is not None and cell["data_type"] == "e":
                value = CellError(str(value))
            elif isinstance(value, str):
                self._count_letters(len(value))
        return column, _without_result(element) if value is None else value

    def _count_letters(self, letters: int) -> None:
        """Count the letters of texts that stand in the sheet itself, and are held."""
        self._letters += letters
        if self._letters > TEXTS_LIMIT:
            found = f"the texts of the file have more than {TEXTS_LIMIT // 2**20} million letters"
            raise refusal(self.file, "file-unpacks-too-big", found, VALUES_ONLY)

    def _column_of(self, address: str | None) -> int:
        """Return the column of a cell, the next one where the cell does not say."""
        if address is None:
            self.col_counter += 1
            return self.col_counter
        letters = address.removesuffix(self._row_text)
        column = self._columns.get(letters)
        if column is None:
            if not LETTERS.fullmatch(letters) or column_number(letters) > LAST_COLUMN:
                raise ValueError(f"the cell {address} in row {self._row_text}")
            column = self._columns[letters] = column_number(letters)
        self.col_counter = column
        return column

    def _shared(self, position: str | None) -> str | None:
        """Return a text that cells share, by its position from 0."""
        if not position:
            return None
        at = int(position)
        if at < 0:
            raise IndexError(at)
        return str(self.shared_strings[at])


def _number(text: str) -> int | float:
    """Return a number as the sheet writes it: a whole one where it has neither a point nor an exponent."""
    return float(text) if "." in text or "E" in text or "e" in text else int(text)


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
            self._formats = _formats(self._reader)
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
            return WorkbookSheet(found[0], self._parser(*found), self._file)

    def _parser(self, sheet: str, part: str) -> SheetParser:
        """Return the parser of one sheet."""
        archive: Any = self._reader.archive  # ours, guarded
        source = archive.open_sheet(part, sheet)
        dates = {"date_formats": self._formats.dates, "timedelta_formats": self._formats.lengths}
        texts, epoch = self._reader.shared_strings, self._reader.wb.epoch
        parser = SheetParser(source, texts, data_only=True, epoch=epoch, **dates)
        parser.formats, parser.file = self._formats, self._file
        return parser

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
    reader.shared_strings = _shared_texts(reader)
    reader.read_workbook()
    return reader


def _shared_texts(reader: ExcelReader) -> list[str]:
    """Return the texts that cells share; none where the workbook has no such part."""
    package: Any = reader.package
    listed_as = package.find(SHARED_STRINGS)
    if listed_as is None:
        return []
    with reader.archive.open(listed_as.PartName[1:]) as part:
        return read_shared_texts(part)


def _formats(reader: ExcelReader) -> NumberFormats:
    """Return the workbook's formats of numbers; none where it has no styles."""
    if ARC_STYLE not in reader.archive.namelist():
        return NumberFormats()
    with reader.archive.open(ARC_STYLE) as part:
        return read_number_formats(part)


def _refuse_strict(reader: ExcelReader, file: str) -> None:
    """Turn away the strict form of a workbook, whose sheets openpyxl would take for empty ones."""
    if STRICT in reader.archive.read(reader.parser.workbook_part_name):
        found, wanted = f"{file} is saved in the strict form of .xlsx", "Save a copy in the ordinary form of .xlsx"
        raise refusal(file, "file-strict", found, wanted)


def _no_such_sheet(file: str, name: str, sheets: Iterable[str]) -> InputError:
    """Return the refusal of a workbook without the sheet, naming those that are there and the nearest."""
    titles = list(sheets)
    close = nearest(name, titles)
    wanted = f"Rename the sheet '{close}' to {name}" if close else f"Name the sheet that lists your makers {name}"
    there = listed(f"'{title}'" for title in titles)
    fault = Fault("no-such-sheet", f"{file} has no sheet {name}; its sheets: {there}", wanted)
    return InputError([Findings(file=file).problem_at(None, fault)])
