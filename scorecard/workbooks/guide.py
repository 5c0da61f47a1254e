"""The sheet Guide: how to begin, what a cell may hold, and every column with its meaning, unit and where to find it."""

from collections.abc import Iterator, Sequence
from textwrap import wrap

from xlsxwriter import Workbook
from xlsxwriter.format import Format
from xlsxwriter.worksheet import Worksheet

from scorecard.brief import Brief
from scorecard.words import counted, listed
from scorecard.workbooks.entry_columns import MAY_HOLD, Column, EntrySheet
from scorecard.workbooks.safe import put

GUIDE = "Guide"
HEADINGS = ("Sheet", "Column", "What it means", "Unit", "When, and where to find it", "What a cell may hold")
WIDTHS = (11, 24, 46, 15, 42, 40)


def write_guide(workbook: Workbook, sheets: Sequence[EntrySheet], brief: Brief, score: str) -> None:
    """Write the guide: a few lines on how to begin, then a table with every column of every sheet."""
    page = workbook.add_worksheet(GUIDE)
    for at, width in enumerate(WIDTHS):
        page.set_column(at, at, width)
    row = _write_beginning(page, workbook, _beginning(sheets, brief, score))
    bold = workbook.add_format(
        {"bold": True, "bottom": 1, "valign": "top", "text_wrap": True, "align": "left", "indent": 1}
    )
    for at, heading in enumerate(HEADINGS):
        put(page, (row, at), heading, bold)
    page.set_row(row, 20)
    for number, line in enumerate(_table(sheets), row + 1):
        starts = line[0] != "" and number > row + 1
        look = workbook.add_format(
            {"valign": "top", "text_wrap": True, "top": 1 if starts else 0, "align": "left", "indent": 1}
        )
        _write_line(page, number, line, look)
    page.hide_gridlines(2)
    page.repeat_rows(row)
    page.set_landscape()
    page.set_paper(9)
    page.fit_to_pages(1, 0)
    page.set_footer("&L&A&RPage &P of &N")


def _write_beginning(page: Worksheet, workbook: Workbook, lines: Sequence[str]) -> int:
    """Write the first lines, each across the table, and return the row below them."""
    title = workbook.add_format({"bold": True, "font_size": 14, "valign": "top", "align": "left", "indent": 1})
    plain = workbook.add_format({"valign": "top", "text_wrap": True, "align": "left", "indent": 1})
    put(page, (0, 0), "Guide to this workbook", title)
    page.set_row(0, 24)
    for number, line in enumerate(lines, 1):
        page.merge_range(number, 0, number, len(WIDTHS) - 1, "", plain)
        put(page, (number, 0), line, plain)
        page.set_row(number, _height([line], [sum(WIDTHS)]))
    return len(lines) + 2


def _write_line(page: Worksheet, row: int, line: Sequence[str], look: Format) -> None:
    """Write one line of the table, tall enough for its longest text."""
    for at, text in enumerate(line):
        put(page, (row, at), text, look)
    page.set_row(row, _height(line, WIDTHS))


def _height(texts: Sequence[str], widths: Sequence[float]) -> float:
    """Return a row's height in points: spreadsheets do not size rows of written files by themselves."""
    lines = max(len(wrap(text, int(width))) for text, width in zip(texts, widths, strict=True))
    return min(15 * max(lines, 1) + 4, 400)


def _beginning(sheets: Sequence[EntrySheet], brief: Brief, score: str) -> list[str]:
    """Return the lines on how to begin; ``score`` is the command that scores the folder."""
    makers, *later = sheets
    first = [column.heading for column in makers.columns if column.is_first]
    wanted = f"{brief.quantity} pieces" + (f" in {brief.designs} designs" if brief.designs > 1 else "")
    return [
        f"For: {brief.item}, {wanted}.",
        f"Begin on the sheet {makers.name}: two makers and {counted(len(first), 'column')} are enough for a first "
        f"ranking ({listed(first)}). The other columns can wait: each says when it is filled in.",
        f"Leave the sheets {listed(sheet.name for sheet in later)} empty until quotes come.",
        "An empty cell, -, ?, n/a and unknown all mean that you do not know. Unknown is never taken for zero.",
        "Where you know only roughly, write a range: 3-5, 20 to 25, 4+, up to 24. Many spreadsheets make a date "
        "of 3-5; 3 to 5 is safe. A minimum order is the number itself: 50 rather than 50+.",
        "A drop-down only helps with spelling: its lines stand on the sheet Lists, and other words are told to you.",
        "Columns and sheets may stand in any order, and you may add your own. Keep the headings in row 1.",
        f"Save the file, then type in the terminal: {score}",
        "The command reads this file and never writes to it.",
    ]


def _table(sheets: Sequence[EntrySheet]) -> Iterator[tuple[str, ...]]:
    """Yield the lines of the table; a sheet is named, and said what for, where its columns begin."""
    for sheet in sheets:
        for at, column in enumerate(sheet.columns):
            meaning = f"{sheet.about}. {column.meaning}." if at == 0 else f"{column.meaning}."
            name = sheet.name if at == 0 else ""
            where = f"{column.when}. {column.where}." if column.when else f"{column.where}."
            yield name, column.heading, meaning, column.unit, where, f"{_may_hold(column)}."


def _may_hold(column: Column) -> str:
    """Return what a cell may hold, with the lines of its drop-down."""
    if not column.options:
        return MAY_HOLD[column.kind]
    return f"One of these, or nothing while you do not know: {'; '.join(column.options)}"
