"""The makers: one row each of the Makers sheet, or of a .csv, read in one pass with every problem at its cell.

Enters: a file, the criteria and the brief. Leaves: the table of makers, or all that is wrong with it; nothing is raised
for what a user typed.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date
from itertools import chain, islice
from math import isnan, nan
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from scorecard.answers import MakerTable
from scorecard.brief import Brief
from scorecard.case import SourceFile
from scorecard.criteria import Criterion
from scorecard.errors import InputError, Problem
from scorecard.frozen import dataclass
from scorecard.reading.cells import HEADING_ROWS, Fault, SheetRow, SheetRows
from scorecard.reading.countries import unknown_countries
from scorecard.reading.csv_cells import CsvSheet
from scorecard.reading.date_values import day_text
from scorecard.reading.findings import Findings, in_order
from scorecard.reading.gatekeeper import Admitted, admit
from scorecard.reading.headings import ANSWERED_ON, ASKED_ON, read_headings
from scorecard.reading.maker_columns import MakerColumns
from scorecard.reading.maker_rows import read_plain_rows, read_rows
from scorecard.reading.names import check_names
from scorecard.reading.number_text import NumberRule
from scorecard.reading.sheet_notes import warn_of_looks
from scorecard.reading.unit_numbers import uncounted_minimums

if TYPE_CHECKING:
    from scorecard.reading.workbook_cells import OpenWorkbook

MAKERS_SHEET = "Makers"
ROW_LIMIT = 20_000


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingOptions:
    """How a sheet of makers is read.

    Parameters
    ----------
    set_aside : whether an answer that cannot be read is taken as unknown
    as_of : today; days after it are problems. None: no day is too late
    row_limit : the most rows below the headings
    """

    set_aside: bool = False
    as_of: date | None = None
    row_limit: int = ROW_LIMIT


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MakersReading:
    """What was read of the makers.

    Parameters
    ----------
    table : None where there are problems
    names : of all makers, problems or not; None where they could not be read
    problems, warnings : by row, then by column
    set_aside : answers that could not be read and were taken as unknown
    source : None where the file was not let in
    book : the workbook, for its further sheets; None for a .csv
    """

    table: MakerTable | None = None
    names: tuple[str, ...] | None = None
    problems: tuple[Problem, ...] = ()
    warnings: tuple[Problem, ...] = ()
    set_aside: tuple[Problem, ...] = ()
    source: SourceFile | None = None
    book: "OpenWorkbook | None" = None


DEFAULTS = ReadingOptions()


def read_makers(
    path: Path, *, criteria: Sequence[Criterion], brief: Brief | None, options: ReadingOptions = DEFAULTS
) -> MakersReading:
    """Read the makers from a workbook's sheet "Makers", or from a .csv.

    Parameters
    ----------
    path : of a .xlsx or .csv file
    criteria : those that are sound; their columns are looked for
    brief : None where it could not be read; its decimal mark settles numbers typed as text
    options : what to set aside, today, and the most rows

    Returns
    -------
    The table, or every problem; never an exception for what stands in the file.
    """
    try:
        admitted = admit(path, options.row_limit)
    except InputError as refused:
        return MakersReading(problems=refused.problems)
    try:
        wanted = _Wanted(criteria=tuple(criteria), brief=brief, options=options)
        if admitted.kind == ".csv":
            return _reading(CsvSheet(admitted), admitted, wanted)
        from scorecard.reading.workbook_cells import OpenWorkbook

        book = OpenWorkbook(admitted)
        return replace(_reading(book.required(MAKERS_SHEET), admitted, wanted), book=book)
    except InputError as refused:
        return MakersReading(problems=refused.problems, warnings=admitted.warnings, source=admitted.source)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Wanted:
    """What the reader of a sheet is asked for."""

    criteria: tuple[Criterion, ...]
    brief: Brief | None
    options: ReadingOptions


def _reading(sheet: SheetRows, admitted: Admitted, wanted: _Wanted) -> MakersReading:
    """Return what stands in an open sheet."""
    findings = Findings(
        file=admitted.path.name, sheet=sheet.sheet, takes_unreadable_as_unknown=wanted.options.set_aside
    )
    table = _table(sheet, wanted, findings)
    if table is not None:
        findings.warnings += [*unknown_countries(table), *uncounted_minimums(table, wanted.brief)]
    return MakersReading(
        table=None if findings.problems else table,
        names=table.makers if table else None,
        problems=in_order(findings.problems),
        warnings=admitted.warnings + tuple(sheet.warnings) + in_order(findings.warnings),
        set_aside=in_order(findings.set_aside),
        source=admitted.source,
    )


def _table(sheet: SheetRows, wanted: _Wanted, findings: Findings) -> MakerTable | None:
    """Return the table of makers, which counts only where there were no problems."""
    rows = iter(sheet)
    head = list(islice(rows, HEADING_ROWS))
    headings = read_headings(head, wanted.criteria, findings)
    if headings is None:
        return None
    columns = MakerColumns(headings, findings)
    brief = wanted.brief
    decimal = sheet.decimal or (brief.decimal if brief else None)
    typed = NumberRule(decimal=decimal, all_is_text=sheet.sheet is None)
    columns.lay_out(wanted.criteria, typed, brief.currency if brief else None)
    limit = wanted.options.row_limit
    body: Iterator[SheetRow] = chain((row for row in head if row[0] > headings.row), rows)
    if isinstance(sheet, CsvSheet) and sheet.may_be_plain:
        body = read_plain_rows(sheet, columns, limit)
    read_rows(body, columns, sheet.blank, limit)
    names = columns.names
    check_names(names.names, lambda at: f"{names.letter}{names.rows[at]}", findings)
    _check_days(columns, wanted.options.as_of, findings)
    warn_of_looks(sheet, headings, names.rows, findings)
    if not names.names and not findings.problems:
        fault = Fault("no-makers", "no maker is listed", "Write the name of each maker under the heading Maker")
        findings.warn(f"{names.letter}{headings.row}", fault)
    return _assembled(columns, findings)


def _check_days(columns: MakerColumns, as_of: date | None, findings: Findings) -> None:
    """Note answers that came before or without their questions, and days still to come."""
    asked, answered = columns.days.get(ASKED_ON), columns.days.get(ANSWERED_ON)
    if as_of is not None:
        _refuse_future(columns, as_of, findings)
    if answered is None:
        return
    questions = asked.days if asked else [nan] * len(answered.days)
    for at, (question, reply) in enumerate(zip(questions, answered.days, strict=True)):
        if question <= reply or isnan(reply):
            continue
        cell = f"{answered.letter}{columns.names.rows[at]}"
        if reply < question:
            found = f"the answer of {day_text(reply)} came before the question of {day_text(question)}"
            fault = Fault("answered-before-asked", found, f"Correct {ASKED_ON} or {ANSWERED_ON}")
            findings.refuse_answer(cell, fault)
            answered.unreadable.add(at)
        elif not (asked and at in asked.unreadable):
            found = f"an answer of {day_text(reply)} without a day of asking"
            findings.warn(cell, Fault("answered-not-asked", found, f"Write the day of your question under {ASKED_ON}"))


def _refuse_future(columns: MakerColumns, as_of: date, findings: Findings) -> None:
    """Note each day that is still to come."""
    for column in columns.days.values():
        for at in np.flatnonzero(np.array(column.days) > as_of.toordinal()).tolist():
            cell = f"{column.letter}{columns.names.rows[at]}"
            findings.refuse_answer(cell, _future(column.days[at], as_of))
            column.unreadable.add(at)


def _future(day: float, as_of: date) -> Fault:
    """Return the fault of a day that is still to come."""
    found = f"{day_text(day)} is after {as_of.isoformat()}, which stands for today"
    wanted = "Write the day on which it happened, or leave the cell empty; today is the clock's day, or that of --as-of"
    return Fault("day-to-come", found, wanted)


def _assembled(columns: MakerColumns, findings: Findings) -> MakerTable:
    """Return the columns as a table.

    Where one of the two days of a reply was set aside, so is the other: with the question alone the maker would pass
    for one that never answered.
    """
    makers = len(columns.names.names)
    lost = columns.unreadable_days((ASKED_ON, ANSWERED_ON))
    days = {}
    for heading in (ASKED_ON, ANSWERED_ON):
        column = columns.days.get(heading)
        days[heading] = np.array(column.days if column else [])
        days[heading][sorted(lost) if column else []] = nan
    return MakerTable(
        makers=tuple(columns.names.names),
        rows=tuple(columns.names.rows),
        file=findings.file,
        sheet=findings.sheet,
        letters=columns.letters,
        answers={key: column.answers() for key, column in columns.answers.items()},
        counts={key: column.answers() for key, column in columns.counts.items()},
        minimum=columns.minimum.answers() if columns.minimum else None,
        minimum_per=tuple(columns.minimum_per.units) if columns.minimum_per else (None,) * makers,
        asked_on=days[ASKED_ON],
        answered_on=days[ANSWERED_ON],
        details=columns.details(),
    )
