"""The blank entry workbook: where a buyer writes down makers, and later their quotes.

Enters: criteria and brief, and rows where the workbook is not to be blank. Leaves: the bytes of an .xlsx. Row 1 of
each sheet holds the headings; drop-downs, notes and colours are aids, and reading depends on none of them.
"""

from collections.abc import Iterable, Mapping, Sequence
from io import BytesIO
from math import ceil
from textwrap import wrap

from xlsxwriter import Workbook
from xlsxwriter.worksheet import Worksheet

from scorecard.brief import Brief
from scorecard.criteria import Criterion
from scorecard.words import listed
from scorecard.workbooks.entry_columns import FIRST, MAY_HOLD, Column, EntrySheet, Kind
from scorecard.workbooks.entry_makers import entry_sheets
from scorecard.workbooks.from_last_time import LastTime, write_last_time
from scorecard.workbooks.guide import write_guide
from scorecard.workbooks.lists import list_names, write_lists
from scorecard.workbooks.safe import Value, clean_text, new_workbook, put

Rows = Mapping[str, Sequence[Mapping[str, Value]]]

PAGE_WIDTH = 180  # characters across a landscape page at a size that can be read
LAST_ROW = 2000  # down to which cells have a drop-down; more makers can still be written below

INK = "#33312C"
FIRST_GROUND = "#EADFC8"  # to be filled in first
LATER_GROUND = "#DCE2E3"  # can wait
RULE = "#8C8573"
CELL_FORMATS: dict[Kind, str] = {"date": "yyyy-mm-dd"}
FILLED_FORMATS: dict[Kind, str] = {"date": "yyyy-mm-dd", "money": "0.00"}


def entry_workbook(
    criteria: Iterable[Criterion],
    brief: Brief,
    rows: Rows | None = None,
    *,
    score: str = "scorecard score",
    last_time: LastTime | None = None,
) -> bytes:
    """Return the entry workbook, blank, or filled with rows.

    Parameters
    ----------
    criteria : in the order of the criteria file
    rows : by sheet, one mapping a row from heading to value; None for a blank workbook
    score : what this user types to score the folder
    last_time : of a second brief, for a sheet of its own that is not read

    Returns
    -------
    The bytes of an .xlsx, the same for the same input.

    Raises
    ------
    ValueError
        If a sheet or a heading of the rows is not one of the workbook's, or a number is not finite.
    """
    sheets = entry_sheets(criteria, brief)
    filled = _checked(rows or {}, sheets)
    buffer = BytesIO()
    workbook = new_workbook(buffer, "Makers")
    names = list_names(sheets)
    for sheet in sheets:
        _write_sheet(workbook, sheet, names, filled.get(sheet.name, ()))
    write_guide(workbook, sheets, brief, score)
    write_lists(workbook, names, sheets)
    if last_time is not None:
        write_last_time(workbook, last_time)
    workbook.close()
    return buffer.getvalue()


def _checked(rows: Rows, sheets: Sequence[EntrySheet]) -> Rows:
    """Return the rows as they are, where each has its sheet and each value its column."""
    headings = {sheet.name: {column.heading for column in sheet.columns} for sheet in sheets}
    strange = [name for name in rows if name not in headings]
    for name in headings.keys() & rows.keys():
        strange += sorted({f"{name}: {key}" for row in rows[name] for key in row if key not in headings[name]})
    if strange:
        raise ValueError(f"the entry workbook has no place for {listed(strange)}")
    return rows


def _write_sheet(
    workbook: Workbook, sheet: EntrySheet, names: Mapping[tuple[str, ...], str], rows: Sequence[Mapping[str, Value]]
) -> None:
    """Write one sheet: headings with notes, drop-downs, and what there is to fill in."""
    page = workbook.add_worksheet(sheet.name)
    _lay_out_page(page, sheet)
    for at, column in enumerate(sheet.columns):
        look = {"valign": "top", **_side(column), "num_format": CELL_FORMATS.get(column.kind, "General")}
        page.set_column(at, at, column.width, workbook.add_format(look))
        put(page, (0, at), column.heading, workbook.add_format(_heading_look(sheet, at)))
        _write_note(page, at, _note(sheet, column, at))
        if column.options:
            page.data_validation(1, at, LAST_ROW - 1, at, _drop_down(names[column.options]))
        filled = workbook.add_format({**look, "num_format": FILLED_FORMATS.get(column.kind, "General")})
        for number, row in enumerate(rows, 1):
            if row.get(column.heading) not in (None, ""):
                put(page, (number, at), row[column.heading], filled)


def _lay_out_page(page: Worksheet, sheet: EntrySheet) -> None:
    """Set what stays in sight, and how the sheet prints."""
    page.freeze_panes(1, 1)
    page.repeat_rows(0)
    page.repeat_columns(0)
    page.set_landscape()
    page.set_paper(9)  # A4
    page.fit_to_pages(ceil(sum(column.width for column in sheet.columns) / PAGE_WIDTH), 0)
    page.set_footer("&L&A&RPage &P of &N")
    page.set_tab_color(LATER_GROUND if sheet.until_quotes else FIRST_GROUND)
    lines = max(len(wrap(column.heading, int(column.width) - 1)) for column in sheet.columns)
    page.set_row(0, 15 * max(lines, 1) + 6)


def _heading_look(sheet: EntrySheet, at: int) -> dict[str, object]:
    """Return how a heading looks; a rule parts those that can wait from the first ones."""
    later = sheet.until_quotes or not sheet.columns[at].is_first
    look = {"bold": True, "text_wrap": True, "valign": "vcenter", "font_color": INK, "bottom": 1, "border_color": RULE}
    look |= _side(sheet.columns[at])
    starts = later and not sheet.until_quotes and sheet.columns[at - 1].is_first
    return look | {"bg_color": LATER_GROUND if later else FIRST_GROUND, "left": 2 if starts else 0}


def _side(column: Column) -> dict[str, object]:
    """Return the side to which a column and its heading are set: figures right, words left."""
    is_words = column.kind in ("name", "text", "choice")
    return {"align": "left" if is_words else "right", "indent": 1}


def _note(sheet: EntrySheet, column: Column, at: int) -> str:
    """Return the note on a heading: when to fill it in, what it means, its unit, where to look, what cells may hold."""
    unit = f" ({column.unit})" if column.unit and column.unit not in column.heading else ""
    lines = [f"{column.meaning}{unit}.", f"Where: {column.where}.", f"{MAY_HOLD[column.kind]}."]
    if not sheet.until_quotes:
        lines.insert(0, f"{column.when or FIRST}.")
    if sheet.until_quotes and at == 0:
        lines.insert(0, f"Leave this sheet empty until quotes come. {sheet.about}.")
    return clean_text("\n".join(lines))[:2000]


def _write_note(page: Worksheet, at: int, text: str) -> None:
    """Put a note on a heading, large enough to be read at once."""
    lines = sum(max(1, ceil(len(line) / 40)) for line in text.split("\n"))
    size = {"width": 280, "height": min(18 * lines + 14, 400), "font_size": 10, "color": "#FBF8F0"}
    page.write_comment(0, at, text, size)


def _drop_down(name: str) -> dict[str, object]:
    """Return a drop-down that warns of other words, and takes them when the user insists."""
    return {
        "validate": "list",
        "source": f"={name}",
        "error_type": "warning",
        "error_title": "Not on the list",
        "error_message": "This is not a line of the list on the sheet Lists. Is it meant so?",
    }
