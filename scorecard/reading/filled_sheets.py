"""The further sheets of the makers' workbook that hold anything, opened but not yet read.

Enters: the makers as read, with the workbook, and names of sheets. Leaves: those with a row below their headings.
"""

from collections.abc import Iterator, Sequence
from itertools import chain, islice

from scorecard.frozen import dataclass
from scorecard.reading.cells import SheetRow, SheetRows
from scorecard.reading.makers import MakersReading


@dataclass(frozen=True, slots=True)
class FilledSheet:
    """A sheet with a row below its headings, and its rows from the first on."""

    sheet: SheetRows
    rows: Iterator[SheetRow]


def filled_sheets(makers: MakersReading, names: Sequence[str]) -> dict[str, FilledSheet]:
    """Return the sheets of these names that hold anything below their first row, by name."""
    found = ((name, _filled(makers, name)) for name in names)
    return {name: sheet for name, sheet in found if sheet is not None}


def _filled(makers: MakersReading, name: str) -> FilledSheet | None:
    sheet = makers.book.sheet(name) if makers.book else None
    if sheet is None:
        return None
    rows = iter(sheet)
    first = list(islice(rows, 2))
    return FilledSheet(sheet, chain(first, rows)) if len(first) == 2 else None
