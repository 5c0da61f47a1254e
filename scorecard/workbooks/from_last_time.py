"""The sheet "From last time" of a second brief: old figures to confirm, and what own orders came to.

It is no sheet that is read: nothing on it counts before it is typed where it belongs.
"""

from collections.abc import Sequence
from datetime import date
from textwrap import wrap

from xlsxwriter import Workbook

from scorecard.carrying import FromLastTime
from scorecard.frozen import dataclass
from scorecard.workbooks.safe import put

NAME = "From last time"
HEADINGS = ("Maker", "What", "Last time", "On", "Days ago", "Now", "Where the new figure goes")
WIDTHS = (24, 38, 60, 13, 10, 30, 38)
LINE = 15  # points: spreadsheets do not size rows of written files by themselves
ABOUT = (
    "What was so last time. Nothing here counts: ask, and type the new figure where it belongs. Figures older than 180 "
    "days, or without a day, are to be confirmed."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class LastTime:
    """The lines of the sheet, and the day from which their age is counted."""

    lines: tuple[FromLastTime, ...]
    as_of: date


def write_last_time(workbook: Workbook, made: LastTime) -> None:
    """Write the sheet; none where there is nothing to say.

    Parameters
    ----------
    workbook : that is being written
    made : in the order of the makers
    """
    if not made.lines:
        return
    page = workbook.add_worksheet(NAME)
    plain = workbook.add_format({"valign": "top", "align": "left", "text_wrap": True})
    day = workbook.add_format({"valign": "top", "num_format": "yyyy-mm-dd", "align": "left"})
    bold = workbook.add_format({"bold": True, "bottom": 1, "valign": "top", "text_wrap": True})
    for at, (heading, width) in enumerate(zip(HEADINGS, WIDTHS, strict=True)):
        page.set_column(at, at, width)
        put(page, (2, at), heading, bold)
    put(page, (0, 0), ABOUT)
    for number, line in enumerate(made.lines, 3):
        for at, value in enumerate(_row(line, made.as_of)):
            if value != "":
                put(page, (number, at), value, day if isinstance(value, date) else plain)
        page.set_row(number, LINE * max(1, len(wrap(line.figure, WIDTHS[2]))))
    page.freeze_panes(3, 1)
    page.repeat_rows(2)
    page.set_landscape()
    page.set_paper(9)  # A4
    page.fit_to_pages(1, 0)
    page.set_footer("&L&A&RPage &P of &N")


def _row(line: FromLastTime, as_of: date) -> Sequence[str | float | date]:
    age: str | float = "" if line.as_of is None else float((as_of - line.as_of).days)
    return (line.maker, line.what, line.figure, line.as_of or "", age, line.state, line.where)
