"""What a sheet's looks hide from its user: hidden rows and columns, and merged cells."""

import re
from collections.abc import Sequence

from scorecard.reading.cells import Fault, SheetRows, column_letter, column_number
from scorecard.reading.findings import Findings
from scorecard.reading.headings import Headings
from scorecard.words import listed

RANGE = re.compile(r"([A-Z]{1,3})(\d{1,7}):([A-Z]{1,3})(\d{1,7})")


def warn_of_looks(sheet: SheetRows, headings: Headings, rows: Sequence[int], findings: Findings) -> None:
    """Note what is hidden or merged among the rows of makers and the known columns.

    Parameters
    ----------
    sheet : read through
    headings : where the known columns stand
    rows : those of the makers
    findings : where the warnings go
    """
    hidden = sorted(set(sheet.hidden_rows) & set(rows))
    if hidden:
        found = f"hidden rows were read too: {listed(runs(hidden))}"
        fault = Fault("hidden-rows", found, "Delete those that are not to be compared")
        findings.warn(f"A{hidden[0]}", fault)
    columns = sorted(set(sheet.hidden_columns) & set(headings.columns.values()))
    if columns:
        found = f"hidden columns were read too: {listed(column_letter(column) for column in columns)}"
        fault = Fault("hidden-columns", found, "Show them, to see what is compared")
        findings.warn(f"{column_letter(columns[0])}{headings.row}", fault)
    last = max(rows, default=headings.row)
    for merged in sheet.merged:
        _warn_of_merged(merged, headings, last, findings)


def _warn_of_merged(merged: str, headings: Headings, last: int, findings: Findings) -> None:
    """Note a merged range that reaches a known column among the headings and the makers."""
    match = RANGE.fullmatch(merged)
    if not match:
        return
    left, top, right, bottom = column_number(match[1]), int(match[2]), column_number(match[3]), int(match[4])
    reaches = any(left <= column <= right for column in headings.columns.values())
    if reaches and top <= last and bottom >= headings.row:
        first = f"{match[1]}{match[2]}"
        found = f"{merged} are merged: the value counts for {first} alone, and the other cells are empty"
        findings.warn(first, Fault("merged-cells", found, "Unmerge them, and write the value in each"))


def runs(numbers: Sequence[int]) -> list[str]:
    """Return numbers in order as words, neighbours as one run.

    Examples
    --------
    >>> runs([4, 7, 8, 9])
    ['4', '7 to 9']
    """
    parts: list[list[int]] = []
    for number in numbers:
        if parts and number == parts[-1][-1] + 1:
            parts[-1].append(number)
        else:
            parts.append([number])
    return [str(part[0]) if len(part) == 1 else f"{part[0]} to {part[-1]}" for part in parts]
