"""A .csv as rows of common cells, with addresses as a spreadsheet would give them.

The heading line's most frequent separator is the file's; comma means decimal points, semicolon decimal commas.
"""

import csv
import re
from codecs import getincrementaldecoder
from collections.abc import Iterable, Iterator, Sequence
from io import BytesIO, TextIOWrapper
from itertools import count, islice

from scorecard.errors import InputError, Problem
from scorecard.reading.cells import HEADING_ROWS, Decimal, Fault, SheetRow, Value
from scorecard.reading.csv_spans import PlainCsv
from scorecard.reading.findings import Findings
from scorecard.reading.gatekeeper import Admitted, refusal
from scorecard.reading.patterns import pattern

SEPARATORS = ";,\t"
DECIMAL_MARKS: dict[str, Decimal | None] = {",": ".", ";": ",", "\t": None}
BYTES_AT_ONCE = 2**20
LONGEST_LINE = 1_000_000
MOST_CELLS = 16_384  # in one row of a spreadsheet
SAVE_UTF8 = 'save it again from your spreadsheet program as "CSV UTF-8"'
DECLARED = pattern(r"\ufeff?sep=([;,\t])\s*", re.IGNORECASE)
QUOTED = pattern(r'"(?!\s*maker\s*")[^"]*"', re.IGNORECASE)
MAKER_CELL = pattern(r'(?:^|[;,\t])[\s"]*maker[\s"]*(?:[;,\t]|$)', re.IGNORECASE)


class CsvSheet:
    """A .csv file, as ``SheetRows``."""

    sheet: str | None = None
    blank: Value = ""

    def __init__(self, admitted: Admitted) -> None:
        self._file, self._content = admitted.path.name, admitted.content
        self.warnings: list[Problem] = []
        self.hidden_rows: list[int] = []
        self.hidden_columns: set[int] = set()
        self.merged: list[str] = []
        self._encoding = self._find_encoding()
        lines = self._open()
        head = [line for _ in range(HEADING_ROWS) if (line := lines.readline(LONGEST_LINE + 1))]
        declared = DECLARED.fullmatch(head[0]) if head else None
        self._skipped = 1 if declared else 0
        self._separator = declared[1] if declared else _separator(head)
        self.decimal: Decimal | None = DECIMAL_MARKS[self._separator]

    def _open(self, start: int = 0) -> TextIOWrapper:
        """Open the text from its start, or from another byte."""
        stream = BytesIO(self._content)
        stream.seek(start)
        encoding = "utf-8" if start and self._encoding == "utf-8-sig" else self._encoding
        return TextIOWrapper(stream, encoding=encoding, newline="")

    def _find_encoding(self) -> str:
        """Return the encoding: UTF-8, UTF-16 with its mark, or else Windows-1252 with a warning."""
        if self._content.startswith((b"\xff\xfe", b"\xfe\xff")):
            return self._fitting("utf-16")
        if self._content.isascii():
            return "ascii"
        if not self._is_in("utf-8-sig"):
            found = "the file is not in UTF-8: its letters were read as Windows-1252"
            fault = Fault("read-as-windows-1252", found, "Look whether accents came out right; if not, " + SAVE_UTF8)
            self.warnings.append(Findings(file=self._file).problem_at(None, fault))
            return self._fitting("cp1252")
        return "utf-8-sig"

    def _fitting(self, encoding: str) -> str:
        """Return an encoding, if every letter is in it."""
        if self._is_in(encoding):
            return encoding
        found = "the letters of the file are in no known encoding"
        raise refusal(self._file, "file-not-text", found, "S" + SAVE_UTF8[1:])

    def _is_in(self, encoding: str) -> bool:
        """Say whether every letter is in an encoding, without holding all of them at once."""
        decoder = getincrementaldecoder(encoding)()
        try:
            for start in range(0, len(self._content), BYTES_AT_ONCE):
                decoder.decode(self._content[start : start + BYTES_AT_ONCE])
            decoder.decode(b"", final=True)
        except UnicodeDecodeError:
            return False
        return True

    def __iter__(self) -> Iterator[SheetRow]:
        """Yield every row, one without a cell for an empty line."""
        self._refuse_endless_lines()
        if self._content.count(b'"') % 2 or self._encoding == "utf-16":
            self._check_closed()
        return self._rows(self._lines(), 1)

    @property
    def may_be_plain(self) -> bool:
        """Whether every sign below 128 is a byte, and lines end with a new line."""
        return self._encoding != "utf-16" and b"\0" not in self._content and b"\n" in self._content

    def plain(self, positions: Sequence[int], most: int) -> PlainCsv:
        """Return the file as far as it is plain: the columns at these positions, and rows at most."""
        return PlainCsv(
            content=self._content,
            encoding=self._encoding.removesuffix("-sig"),
            separator=self._separator,
            positions=positions,
            most=most,
        )

    def start_below(self, row: int) -> int:
        """Return the byte at which the row below one of the first starts, where the file may be plain."""
        reader = csv.reader(self._lines(), delimiter=self._separator)
        for _ in islice(reader, row):
            pass
        start = 0
        for _ in range(self._skipped + reader.line_num):
            start = self._content.find(b"\n", start) + 1 or len(self._content)
        return start

    def rows_from(self, start: int, number: int) -> Iterator[SheetRow]:
        """Yield every row from the byte at which that of this number starts."""
        return self._rows(self._open(start), number)

    def _rows(self, lines: Iterable[str], number: int) -> Iterator[SheetRow]:
        """Yield rows from their lines, the first one of this number."""
        reader = csv.reader(lines, delimiter=self._separator)
        rows = count(number)
        try:
            yield from zip(rows, reader, strict=False)
        except csv.Error:
            raise self._too_long(next(rows) - 1) from None

    def _lines(self, start: int = 0) -> Iterator[str]:
        """Return the lines from one of them on, counted from 0 below the separator's own."""
        return islice(self._open(), self._skipped + start, None)

    def _refuse_endless_lines(self) -> None:
        """Turn away a file with a line that no list of makers has, which would be taken apart as a whole."""
        at = 0
        while at >= 0 and len(self._content) - at > MOST_CELLS:  # from line to line in strides
            at = self._content.rfind(b"\n", at, at + MOST_CELLS) + 1 or -1
        if at >= 0:
            return
        lines = self._open()  # old files may end their lines otherwise
        while line := lines.readline(LONGEST_LINE + 1):
            if len(line) > LONGEST_LINE or line.count(self._separator) > MOST_CELLS:
                found = f"the file has a line of {len(line):,} letters or more, which no list of makers has"
                raise refusal(self._file, "line-too-long", found, "S" + SAVE_UTF8[1:])

    def _check_closed(self) -> None:
        """Turn away a file whose last row is still within quotes at the end."""
        reader = csv.reader(self._lines(), delimiter=self._separator)
        rows = start = end = 0
        try:
            for _ in reader:
                rows += 1
                start, end = end, reader.line_num
        except csv.Error:
            raise self._unclosed(rows + 1) from None
        rest = self._lines(start)
        try:
            for _ in csv.reader(rest, delimiter=self._separator, strict=True):
                pass
        except csv.Error as error:
            if "unexpected end" in str(error):
                raise self._unclosed(rows) from None

    def _unclosed(self, row: int) -> InputError:
        """Return the refusal of a quoted cell without an end."""
        fault = Fault(
            "unclosed-quote",
            f"a cell of row {row} opens with a quotation mark that is never closed",
            "Close it, or write the mark twice where it belongs to the text",
        )
        return InputError([Findings(file=self._file).problem_at(f"A{row}", fault)])

    def _too_long(self, row: int) -> InputError:
        """Return the refusal of a cell that holds more than any spreadsheet's."""
        found = f"a cell of row {row} has more than {csv.field_size_limit():,} letters"
        fault = Fault("cell-too-long", found, "Shorten it, or look for a quotation mark that is closed too late")
        return InputError([Findings(file=self._file).problem_at(f"A{row}", fault)])


def _separator(head: Sequence[str]) -> str:
    """Return the most frequent separator of the heading line: that with a cell "Maker", or else the first with any."""
    lines = [QUOTED.sub("", line) for line in head]
    with_maker = next((line for line in lines if MAKER_CELL.search(line)), None)
    heading = with_maker or next((line for line in lines if line.strip()), "")
    return max(SEPARATORS, key=lambda mark: (heading.count(mark), mark == ","))
