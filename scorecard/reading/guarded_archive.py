"""A workbook's archive that is looked at while it is being unpacked, so that no part of it can flood the memory.

The directory was judged at the door; here the bytes are: no document type, which could define endless entities, no text
longer than a cell can hold, and no more tags than a list of makers has. Nothing is unpacked ahead of its reading, and
rows that are formatted and empty are passed over unread.
"""

import re
from typing import IO, Any
from zipfile import ZipFile

from scorecard.errors import InputError
from scorecard.reading.cells import Fault
from scorecard.reading.findings import Findings
from scorecard.reading.gatekeeper import refusal

TAGS_LIMIT = 100_000
TAGS_IN_STYLES_LIMIT = 300_000  # the 65,000 formats that a workbook can have, at four tags each
TAGS_IN_TEXTS_LIMIT = 4_000_000  # a million texts, at four tags each
TEXTS_LIMIT = 100 * 2**20  # bytes, or letters: a million texts of a hundred letters each
LOOKED_THROUGH_FIRST = 2 * 2**20  # bytes; unpacking is a hundred times quicker than taking texts apart
TAGS_IN_ROW_LIMIT = 200_000  # the 16,384 columns that a sheet can have, at twelve tags each
LONGEST_TEXT = 400_000  # bytes; the 32,767 letters of a cell take ten each at most
BLOCK = 2**18
ROW_END = re.compile(rb"</(?:[\w.-]+:)?row[\s>]")
ADDRESS = re.compile(rb' r="([A-Z]{1,3}[1-9]\d{0,6})"')
VALUES_ONLY = "Copy the sheet Makers, values only, into a new workbook"


class GuardedPart:
    """A part of the archive that stops the reading of what no spreadsheet program writes: a document type, or a flood.

    Parameters
    ----------
    part : the open part
    file : the workbook's name
    tags_limit : the most tags, counted anew after each row of a sheet
    sheet : its name, where the part is a sheet
    """

    def __init__(self, part: IO[bytes], file: str, tags_limit: int, sheet: str | None = None) -> None:
        self._part, self._file, self._limit, self._sheet = part, file, tags_limit, sheet
        self._tags, self._tail, self._untagged, self._address = 0, b"", 0, b""

    def read(self, size: int = -1) -> bytes:
        """Return the next bytes, once they have been looked at."""
        return self._looked_at(self._part.read(size))

    def _looked_at(self, chunk: bytes) -> bytes:
        """Return bytes that hold nothing to be afraid of."""
        if b"<!" in chunk or (self._tail == b"<" and chunk.startswith(b"!")) or b"\0" in chunk:
            found = "the file declares a document type or holds XML comments, which no spreadsheet program writes"
            wanted = "Open it in your spreadsheet program and save a copy as .xlsx"
            raise refusal(self._file, "file-doctype", found, wanted)  # NUL: UTF-16, where "<!" would look otherwise
        self._tail = chunk[-1:]
        self._count_tags(chunk)
        self._measure_texts(chunk)
        return chunk

    def _count_tags(self, chunk: bytes) -> None:
        """Count the tags since the last row's end."""
        end = chunk.rfind(b"</row>")
        if end < 0:
            end = max((match.end() for match in ROW_END.finditer(chunk)), default=-1)
        self._tags = chunk.count(b"<") + self._tags if end < 0 else chunk.count(b"<", end + 1)
        if self._tags > self._limit:
            raise refusal(self._file, "file-unpacks-too-big", "the file unpacks to more than a list of makers has",
                          VALUES_ONLY)  # fmt: skip

    def _measure_texts(self, chunk: bytes) -> None:
        """Turn away a text that no cell can hold, at its cell."""
        first, last = chunk.find(b"<"), chunk.rfind(b"<")
        longest = self._untagged + (first if first >= 0 else len(chunk))
        at = 0
        while longest <= LONGEST_TEXT and 0 <= first < last - LONGEST_TEXT:
            end = chunk.rfind(b"<", first + 1, first + 1 + LONGEST_TEXT)
            longest, at, first = (LONGEST_TEXT + 1, first, first) if end < 0 else (0, 0, end)
        if longest > LONGEST_TEXT:
            raise self._too_long(chunk[:at])
        self._untagged = len(chunk) - last if last >= 0 else longest
        if last >= 0 and self._sheet:
            self._address = _last_address(chunk) or self._address

    def _too_long(self, before: bytes) -> InputError:
        """Return the refusal of a text, at its cell where it stands in a sheet."""
        cell = (_last_address(before) or self._address).decode() or None
        fault = Fault("cell-too-long", "a text has more than the 32,767 letters that a cell can hold", "Shorten it")
        return InputError([Findings(file=self._file, sheet=self._sheet).problem_at(cell, fault)])

    def close(self) -> None:
        """Close the part."""
        self._part.close()

    def __enter__(self) -> "GuardedPart":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()


class GuardedSheet(GuardedPart):
    """A sheet, without rows that are numbered, formatted and empty: there may be a million of them."""

    def __init__(self, part: IO[bytes], file: str, sheet: str) -> None:
        super().__init__(part, file, TAGS_IN_ROW_LIMIT, sheet)
        self._held = b""

    def read(self, size: int = -1) -> bytes:  # noqa: ARG002 - blocks of our own size, so that whole rows are seen
        """Return the next bytes that matter, once they have been looked at."""
        while chunk := self._part.read(BLOCK):
            chunk = self._held + chunk
            first, last = chunk.find(b"<row "), chunk.rfind(b'<row r="')
            if not 0 <= first < last or not _is_blank(chunk, first, last):
                self._held = b""
                return self._looked_at(chunk)
            self._held = chunk[last:]
            if first:
                return self._looked_at(chunk[:first])
        held, self._held = self._held, b""
        return self._looked_at(held)


def _is_blank(chunk: bytes, start: int, end: int) -> bool:
    """Say whether these bytes, from one row's start to another's, are numbered rows whose cells are empty."""
    rows = chunk.count(b'<row r="', start, end)
    cells = chunk.count(b"<c r=", start, end)
    return chunk.count(b"<", start, end) == rows + cells + chunk.count(b"</", start, end)


def _last_address(content: bytes) -> bytes:
    """Return the last cell's address in a piece of a sheet, or nothing."""
    start = max(content.rfind(b' r="'), 0)
    found = ADDRESS.match(content, start)
    return found[1] if found else b""


class GuardedArchive(ZipFile):
    """A workbook's archive, every part of which is looked at while openpyxl reads from it."""

    workbook_name = ""

    def open(self, name: Any, *_: Any, **__: Any) -> Any:
        """Open a part for reading, guarded; a big one is looked through before any of it is taken apart."""
        limit, size = _tags_limit(str(name).lower()), self.getinfo(name).file_size
        if size > TEXTS_LIMIT:
            found = f"a part of the file unpacks to {size // 2**20} MiB, more than a list of makers has"
            raise refusal(self.workbook_name, "file-unpacks-too-big", found, VALUES_ONLY)
        if size > LOOKED_THROUGH_FIRST:
            with GuardedPart(super().open(name), self.workbook_name, limit) as part:
                while part.read(BLOCK):
                    pass
        return GuardedPart(super().open(name), self.workbook_name, limit)

    def open_sheet(self, part: str, sheet: str) -> GuardedSheet:
        """Open a sheet for reading, guarded row by row."""
        return GuardedSheet(super().open(part), self.workbook_name, sheet)


def _tags_limit(part: str) -> int:
    """Return the most tags that a part can have."""
    if "sharedstrings" in part:
        return TAGS_IN_TEXTS_LIMIT
    return TAGS_IN_STYLES_LIMIT if "styles" in part else TAGS_LIMIT
