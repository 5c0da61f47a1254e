"""The sheet Lists, with the lines of every drop-down, and the names by which the drop-downs refer to them."""

import re
from collections.abc import Mapping, Sequence

from xlsxwriter import Workbook
from xlsxwriter.utility import xl_col_to_name

from scorecard.workbooks.entry_columns import Column, EntrySheet
from scorecard.workbooks.safe import put

LISTS = "Lists"


def list_names(sheets: Sequence[EntrySheet]) -> dict[tuple[str, ...], str]:
    """Return the name of each list of options, made from the first heading that uses it, each name once."""
    names: dict[tuple[str, ...], str] = {}
    for options, column in _first_users(sheets).items():
        slug = re.sub(r"[^a-z0-9]+", "_", column.heading.lower()).strip("_")[:40] or "column"
        taken = set(names.values())
        numbered = (f"list_{slug}{'' if number == 1 else f'_{number}'}" for number in range(1, len(taken) + 2))
        names[options] = next(name for name in numbered if name not in taken)
    return names


def write_lists(workbook: Workbook, names: Mapping[tuple[str, ...], str], sheets: Sequence[EntrySheet]) -> None:
    """Write one list a column, under the heading that uses it, and define its name."""
    page = workbook.add_worksheet(LISTS)
    bold = workbook.add_format({"bold": True, "bottom": 1, "text_wrap": True, "valign": "top"})
    users = _first_users(sheets)
    for at, (options, name) in enumerate(names.items()):
        put(page, (0, at), users[options].heading, bold)
        for row, option in enumerate(options, 1):
            put(page, (row, at), option)
        letter = xl_col_to_name(at)
        workbook.define_name(name, f"={LISTS}!${letter}$2:${letter}${len(options) + 1}")
        page.set_column(at, at, min(max(map(len, (*options, users[options].heading))) + 2, 40))
    page.set_row(0, 20)
    page.freeze_panes(1, 0)
    page.set_landscape()
    page.set_paper(9)
    page.fit_to_pages(1, 0)


def _first_users(sheets: Sequence[EntrySheet]) -> dict[tuple[str, ...], Column]:
    """Return each list of options with the first column that uses it."""
    users: dict[tuple[str, ...], Column] = {}
    for column in (column for sheet in sheets for column in sheet.columns if column.options):
        users.setdefault(column.options, column)
    return users
