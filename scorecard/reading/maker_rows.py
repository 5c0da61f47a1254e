"""The rows of the Makers sheet, block by block: which of them are makers, and what lies beyond the limits."""

from collections.abc import Iterator, Sequence
from itertools import compress, islice
from operator import itemgetter
from typing import cast

import numpy as np

from scorecard.reading.cells import COLUMN_LIMIT, Fault, SheetRow, Value, column_letter, is_blank
from scorecard.reading.csv_cells import CsvSheet
from scorecard.reading.csv_spans import Spans
from scorecard.reading.findings import Findings
from scorecard.reading.headings import MAKER
from scorecard.reading.maker_columns import MakerColumns

BLOCK_ROWS = 512


def read_rows(rows: Iterator[SheetRow], columns: MakerColumns, blank: Value, row_limit: int) -> None:
    """Read the rows below the headings into their columns, up to the limit.

    Parameters
    ----------
    rows : below the headings, from the top
    columns : what is read
    blank : what an empty cell of the file holds
    row_limit : the most rows below the headings
    """
    last = columns.headings.row + row_limit
    seen = 0
    while block := list(islice(rows, BLOCK_ROWS)):
        seen += len(block)
        inside = [row for row in block if row[0] <= last] if block[-1][0] > last else block
        _refuse_far_columns(inside, columns.findings)
        _add(inside, columns, blank)
        beyond = next((row for row in block[len(inside) :] if _first_filled(row[1])), None)
        if beyond is not None or seen > row_limit + BLOCK_ROWS:
            number, values = beyond or block[-1]
            cell = f"{column_letter(_first_filled(values) or 1)}{number}"
            columns.findings.refuse(cell, _too_many_rows(row_limit))
            return


def read_plain_rows(sheet: CsvSheet, columns: MakerColumns, row_limit: int) -> Iterator[SheetRow]:
    """Read the plain rows of a .csv below the headings into their columns, many at once; return the rows that are left.

    Parameters
    ----------
    sheet : one that may be plain
    columns : what is read
    row_limit : the most rows below the headings
    """
    start, number = sheet.start_below(columns.headings.row), columns.headings.row + 1
    for rows in sheet.plain(columns.positions, row_limit).rows(start, number):
        names, *others = rows.columns
        _add_cells(rows.numbers, [names.texts(), *others], columns)
        start, number = rows.end, rows.numbers.stop
    return sheet.rows_from(start, number)


def _first_filled(values: Sequence[Value]) -> int | None:
    """Return the position of the first filled cell from 1, or None."""
    return next((at for at, value in enumerate(values, 1) if not is_blank(value)), None)


def _too_many_rows(row_limit: int) -> Fault:
    """Return the fault of a value below the last row that is read."""
    wanted = "Delete what stands there, or keep the makers that you do not want compared in another file"
    return Fault("too-many-rows", f"something is typed below the {row_limit:,} rows that are read", wanted)


def _refuse_far_columns(block: Sequence[SheetRow], findings: Findings) -> None:
    """Note the first value of a block to the right of the last column that is read."""
    if max((len(values) for _, values in block), default=0) <= COLUMN_LIMIT:
        return
    for number, values in block:
        far = _first_filled(values[COLUMN_LIMIT:])
        if far:
            wanted = "Delete what stands there, or move it to another sheet"
            found = f"something is typed to the right of the {COLUMN_LIMIT} columns that are read"
            findings.refuse(f"{column_letter(COLUMN_LIMIT + far)}{number}", Fault("too-many-columns", found, wanted))
            return


def _add(block: Sequence[SheetRow], columns: MakerColumns, blank: Value) -> None:
    """Read a block of rows into the columns, leaving out those without a maker."""
    if not block:
        return
    cells = picked([values for _, values in block], columns.positions, blank)
    _add_cells([number for number, _ in block], cells, columns)


def _add_cells(numbers: Sequence[int], cells: Sequence[Sequence[Value]], columns: MakerColumns) -> None:
    """Read cells, by column, into the columns, leaving out the rows without a maker."""
    if not _are_all_named(cells[0]):
        named = [not is_blank(value) for value in cells[0]]  # a name of spaces is none
        _refuse_nameless(numbers, cells, columns)
        numbers = list(compress(numbers, named))
        cells = [_chosen(column, named) for column in cells]
    columns.names.add(numbers, cells[0])
    for (_, column), values in zip(columns.by_position, cells[1:], strict=True):
        column.add(numbers, values)


def _are_all_named(names: Sequence[Value]) -> bool:
    """Say whether no name is blank, quickly where all are texts."""
    if set(map(type, names)) == {str}:
        return all(map(str.strip, cast(Sequence[str], names)))
    return not any(map(is_blank, names))


def _chosen(cells: Sequence[Value], named: list[bool]) -> Sequence[Value]:
    return cells.only(np.array(named)) if isinstance(cells, Spans) else tuple(compress(cells, named))


def picked(rows: Sequence[Sequence[Value]], positions: Sequence[int], blank: Value) -> list[tuple[Value, ...]]:
    """Return the columns at some positions (from 1), a short row being filled up with empty cells."""
    take = itemgetter(*(position - 1 for position in positions), positions[0] - 1)  # two at least, so always a tuple
    width = max(positions)
    if min(map(len, rows)) < width:
        rows = [row if len(row) >= width else [*row, *[blank] * (width - len(row))] for row in rows]
    return list(zip(*map(take, rows), strict=True))[:-1]


def _refuse_nameless(numbers: Sequence[int], cells: Sequence[Sequence[Value]], columns: MakerColumns) -> None:
    """Note each row that has answers and no maker; a row without either is empty."""
    for at, number in enumerate(numbers):
        if is_blank(cells[0][at]) and any(not is_blank(column[at]) for column in cells[1:]):
            fault = Fault("no-name", f"row {number} has answers, and no maker", f"Write the name under {MAKER}")
            columns.findings.refuse(f"{columns.names.letter}{number}", fault)
