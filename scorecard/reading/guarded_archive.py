"""A workbook's archive that is looked at while it is being unpacked, so that no part of it can flood the memory.

The directory was judged at the door; here the bytes are: no document type, which could define endless entities, and no
more tags than a list of makers has. Nothing is unpacked ahead of its reading.
"""

import re
from typing import IO, Any
from zipfile import ZipFile

from scorecard.reading.gatekeeper import refusal

TAGS_LIMIT = 300_000  # the 65,000 formats that a workbook can have, at four tags each
TAGS_IN_TEXTS_LIMIT = 4_000_000  # a million texts, at four tags each
LOOKED_THROUGH_FIRST = 2 * 2**20  # bytes; unpacking is a hundred times quicker than taking texts apart
TAGS_IN_ROW_LIMIT = 200_000  # the 16,384 columns that a sheet can have, at twelve tags each
BLOCK = 2**18
ROW_END = re.compile(rb"</(?:[\w.-]+:)?row[\s>]")


class GuardedPart:
    """A part of the archive that stops the reading of what no spreadsheet program writes: a document type, or a flood.

    Parameters
    ----------
    part : the open part
    file : the workbook's name
    tags_limit : the most tags, counted anew after each row of a sheet
    """

    def __init__(self, part: IO[bytes], file: str, tags_limit: int) -> None:
        self._part, self._file, self._limit = part, file, tags_limit
        self._tags, self._tail = 0, b""

    def read(self, size: int = -1) -> bytes:
        """Return the next bytes, once they have been looked at."""
        chunk = self._part.read(size)
        if b"<!" in self._tail + chunk or b"\0" in chunk:  # a NUL byte: UTF-16, in which "<!" would look otherwise
            found = "the file declares a document type or holds XML comments, which no spreadsheet program writes"
            wanted = "Open it in your spreadsheet program and save a copy as .xlsx"
            raise refusal(self._file, "file-doctype", found, wanted)
        self._tail = chunk[-1:]
        row_ends = [match.end() for match in ROW_END.finditer(chunk)]
        self._tags = chunk.count(b"<", row_ends[-1]) if row_ends else self._tags + chunk.count(b"<")
        if self._tags > self._limit:
            found = "the file unpacks to more than a list of makers has"
            wanted = "Copy the sheet Makers, values only, into a new workbook"
            raise refusal(self._file, "file-unpacks-too-big", found, wanted)
        return chunk

    def close(self) -> None:
        """Close the part."""
        self._part.close()

    def __enter__(self) -> "GuardedPart":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()


class GuardedArchive(ZipFile):
    """A workbook's archive, every part of which is looked at while openpyxl reads from it."""

    workbook_name = ""

    def open(self, name: Any, *_: Any, **__: Any) -> Any:
        """Open a part for reading, guarded; a big one is looked through before any of it is taken apart."""
        limit = TAGS_IN_TEXTS_LIMIT if "sharedstrings" in str(name).lower() else TAGS_LIMIT
        if self.getinfo(name).file_size > LOOKED_THROUGH_FIRST:
            with GuardedPart(super().open(name), self.workbook_name, limit) as part:
                while part.read(BLOCK):
                    pass
        return GuardedPart(super().open(name), self.workbook_name, limit)

    def open_sheet(self, name: str) -> GuardedPart:
        """Open a sheet for reading, guarded row by row."""
        return GuardedPart(super().open(name), self.workbook_name, TAGS_IN_ROW_LIMIT)
