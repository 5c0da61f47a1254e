"""Which of a workbook's cell formats show a number as a day, a length of time or a percentage; the rest is not read.

Enters: the open part of the styles. Leaves: positions of formats, as the cells name them.
"""

import re
from dataclasses import field
from typing import IO, Any
from xml.etree.ElementTree import iterparse

from openpyxl.styles.numbers import BUILTIN_FORMATS, is_date_format, is_timedelta_format
from openpyxl.xml.constants import SHEET_MAIN_NS

from scorecard.frozen import dataclass

ROOT, FORMAT, CELLS, CELL = (f"{{{SHEET_MAIN_NS}}}{name}" for name in ("styleSheet", "numFmt", "cellXfs", "xf"))
LITERAL = re.compile(r'"[^"]*"|\\.')


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberFormats:
    """The formats that change what a number means.

    Parameters
    ----------
    dates : those that show it as a day or a time
    lengths : of these, those that show it as a length of time
    percentages : those that show it as a percentage
    """

    dates: frozenset[int] = field(default_factory=frozenset)
    lengths: frozenset[int] = field(default_factory=frozenset)
    percentages: frozenset[int] = field(default_factory=frozenset)


def read_number_formats(part: IO[bytes]) -> NumberFormats:
    """Return what the styles of a workbook say of numbers.

    Parameters
    ----------
    part : guarded against entities

    Raises
    ------
    ValueError
        If it is another document.
    """
    texts, cells = _formats(part)
    of_cells = {number: texts.get(number) or BUILTIN_FORMATS.get(number) or "" for number in set(cells)}

    def where(holds: Any) -> frozenset[int]:
        chosen = {number for number, text in of_cells.items() if holds(text)}
        return frozenset(at for at, number in enumerate(cells) if number in chosen)

    return NumberFormats(
        dates=where(is_date_format),
        lengths=where(is_timedelta_format),
        percentages=where(lambda text: "%" in LITERAL.sub("", text)),
    )


def _formats(part: IO[bytes]) -> tuple[dict[int, str], list[int]]:
    """Return the workbook's own formats by number, and the number of each cell format."""
    texts, cells = dict[int, str](), list[int]()
    parts: Any = iterparse(part, ("start", "end"))  # noqa: S314 - the guard lets no entity through
    is_of_cells = False
    for event, element in parts:
        if element.tag == CELLS:
            is_of_cells = event == "start"
        elif event == "end":
            if element.tag == CELL and is_of_cells:
                cells.append(int(element.get("numFmtId", 0)))
            elif element.tag == FORMAT:
                texts[int(element.get("numFmtId", 0))] = element.get("formatCode", "")
            element.clear()
    if parts.root.tag != ROOT:
        raise ValueError(parts.root.tag)
    return texts, cells
