"""The heading row: where it stands, which columns the tool knows, and what is missing, doubled or misspelt.

Enters: the first rows of a sheet, and the criteria. Leaves: the place of every known column.
"""

from collections.abc import Iterator, Sequence
from dataclasses import field

from scorecard.criteria import Criterion
from scorecard.frozen import dataclass
from scorecard.reading.cells import (
    COLUMN_LIMIT,
    HEADING_ROWS,
    Fault,
    SheetRow,
    as_text,
    column_letter,
    is_blank,
    quoted,
)
from scorecard.reading.findings import Findings
from scorecard.words import nearest

MAKER = "Maker"
MINIMUM_ORDER = "Minimum order"
MINIMUM_PER = "Minimum is per"
SAMPLE = "Sample"
ASKED_ON = "Asked on"
ANSWERED_ON = "Answered on"
SEEN_ON = "Seen on"
TEXT_COLUMNS = ("Country", "Web page", "Contact", "Care", "Notes")
TYPED_MEASURES = {
    "response_days": "Response days",
    "landed_cost_per_piece": "Landed cost per piece",
    "days_to_door": "Days to door",
    "sample_marks": "Sample marks",
    "on_time_share": "On-time share",
    "faulty_share": "Faulty share",
}
FIXED_COLUMNS = (MAKER, MINIMUM_ORDER, MINIMUM_PER, ASKED_ON, ANSWERED_ON, SEEN_ON, *TEXT_COLUMNS)


def folded(heading: str) -> str:
    """Return a heading for comparing: no case, no outer space, single spaces for line breaks and runs of space."""
    return " ".join(heading.casefold().split())


def heading_of(criterion: Criterion) -> str | None:
    """Return the heading of the column that a criterion's answers stand under, where it has one."""
    return criterion.column if criterion.column is not None else TYPED_MEASURES.get(criterion.measure or "")


@dataclass(frozen=True, slots=True, kw_only=True)
class Headings:
    """The heading row.

    Parameters
    ----------
    row : its number
    columns : position from 1, by folded heading, of the columns that the tool knows
    """

    row: int
    columns: dict[str, int] = field(default_factory=dict)

    def column(self, heading: str | None) -> int | None:
        """Return the position of a known column from 1, or None where it is not there."""
        return None if heading is None else self.columns.get(folded(heading))


def find_heading_row(rows: Sequence[SheetRow]) -> SheetRow | None:
    """Return the first of the first ten rows with a heading "Maker", or None."""
    for row in rows:
        if row[0] <= HEADING_ROWS and any(folded(as_text(value)) == folded(MAKER) for value in row[1]):
            return row
    return None


def read_headings(rows: Sequence[SheetRow], criteria: Sequence[Criterion], findings: Findings) -> Headings | None:
    """Return the headings among a sheet's first rows; what is missing, doubled or misspelt goes to the findings."""
    row = find_heading_row(rows)
    if row is None:
        _refuse_no_maker_column(rows, findings)
        return None
    refuse_many_columns(row, findings)
    known = known_titles(criteria)
    titles = [as_text(value) for value in row[1][:COLUMN_LIMIT]]
    columns = _columns((row[0], titles), known, _may_stand_twice(criteria), findings)
    headings = Headings(row=row[0], columns=columns)
    strangers = {title: at for at, title in enumerate(titles, 1) if title.strip() and folded(title) not in known}
    _refuse_missing(headings, criteria, strangers, findings)
    _warn_of_missing_counts(headings, criteria, strangers, findings)
    _warn_of_a_missing_day(headings, criteria, strangers, findings)
    if criteria:  # without the criteria file's headings every column that it names would look misspelt
        _warn_of_misspelt(headings, strangers, list(known_headings(criteria)), findings)
    return headings


def refuse_many_columns(row: SheetRow, findings: Findings) -> None:
    """Note a heading row that goes on beyond the most columns, at the first heading too many."""
    beyond = next((at for at, value in enumerate(row[1], 1) if at > COLUMN_LIMIT and not is_blank(value)), None)
    if beyond is not None:
        found = f"something is typed to the right of the {COLUMN_LIMIT} columns that are read"
        fault = Fault("too-many-columns", found, f"Keep the columns that matter, {COLUMN_LIMIT} at most")
        findings.refuse(f"{column_letter(beyond)}{row[0]}", fault)


def known_titles(criteria: Sequence[Criterion]) -> dict[str, str]:
    """Return each folded title that the tool knows, with its heading.

    What a measure stands for may also be typed under the measure's name or its criterion's title, unless that is the
    heading of something else.
    """
    known = {folded(heading): heading for heading in known_headings(criteria)}
    for criterion in criteria:
        heading = TYPED_MEASURES.get(criterion.measure or "")
        for title in (criterion.measure, criterion.title) if heading else ():
            known.setdefault(folded(title or ""), heading or "")
    return known


def known_headings(criteria: Sequence[Criterion]) -> Iterator[str]:
    """Yield every heading that the tool knows, those of the criteria first."""
    for criterion in criteria:
        heading = heading_of(criterion)
        if heading is not None:
            yield heading
        if criterion.steady:
            yield criterion.steady.count_column
    yield from FIXED_COLUMNS


def _refuse_no_maker_column(rows: Sequence[SheetRow], findings: Findings) -> None:
    """Note that a sheet has no heading "Maker", at the heading that may be meant for it."""
    row, first = rows[0] if rows else (1, [])
    titles = {as_text(value): at for at, value in enumerate(first, 1) if not is_blank(value)}
    cell, wanted = _renamed(MAKER, titles, row)
    found = f"no column is headed {MAKER} in the first {HEADING_ROWS} rows"
    if findings.sheet is None and "|" in "".join(titles):
        wanted = "Save it again with commas or semicolons between the cells, where | stands now"
    findings.refuse(cell, Fault("no-maker-column", found, wanted or f"Head the column of names {MAKER}, in row 1"))


def _renamed(heading: str, strangers: dict[str, int], row: int) -> tuple[str, str]:
    """Return the cell of the unknown heading that is nearest to a missing one, taking it off, and that it be renamed.

    Where none is near: the row's first cell, and "".
    """
    close = nearest(heading, list(strangers))
    if close is None:
        return f"A{row}", ""
    return f"{column_letter(strangers.pop(close))}{row}", f"Rename the heading {quoted(close)} to {quoted(heading)}"


def _may_stand_twice(criteria: Sequence[Criterion]) -> set[str]:
    """Return the folded headings of texts that no criterion draws on: of two headed so, one is the user's own."""
    drawn_on = {folded(heading_of(criterion) or "") for criterion in criteria}
    counts = {folded(criterion.steady.count_column) for criterion in criteria if criterion.steady}
    return {folded(heading) for heading in TEXT_COLUMNS} - drawn_on - counts


def _columns(
    titled: tuple[int, Sequence[str]], known: dict[str, str], may_stand_twice: set[str], findings: Findings
) -> dict[str, int]:
    """Return the position of each known heading; the heading's own title goes before others that mean the same.

    Parameters
    ----------
    titled : the row's number, and its titles
    """
    row, titles = titled
    there: dict[str, list[int]] = {}
    for at, title in enumerate(titles, 1):
        heading = known.get(folded(title))
        if heading is not None:
            there.setdefault(folded(heading), []).append(at)
    columns = {}
    for key, places in there.items():
        columns[key], *others = sorted(places, key=lambda at: (folded(titles[at - 1]) != key, at))
        for at in others:
            cell, first = f"{column_letter(at)}{row}", f"{column_letter(columns[key])}{row}"
            fault = _second(titles[at - 1], titles[columns[key] - 1], first, is_own=key in may_stand_twice)
            note = findings.refuse if fault.code == "doubled-heading" else findings.warn
            note(cell, fault)
    return columns


def _second(title: str, taken: str, cell: str, *, is_own: bool) -> Fault:
    """Return what is wrong with a second column of one heading, which may be titled otherwise, or be the user's own."""
    if folded(title) != folded(taken):
        found = f"{quoted(title)} says the same as {quoted(taken)} in {cell}, which is read in its place"
        return Fault("second-heading", found, "Keep one of the two columns")
    if is_own:
        found = f"{quoted(title)} is the heading of {cell} too, and that column is read"
        return Fault("second-heading", found, "Rename this one, or leave it as your own")
    return Fault("doubled-heading", f"{quoted(title)} is the heading of {cell} too", "Rename one of the two")


def _refuse_missing(
    headings: Headings, criteria: Sequence[Criterion], strangers: dict[str, int], findings: Findings
) -> None:
    """Note each weighted criterion whose column is missing; a heading that may be meant for it is no longer strange."""
    for criterion in criteria:
        column = criterion.column
        if column is None or criterion.weight <= 0 or headings.column(column) is not None:
            continue
        cell, wanted = _renamed(column, strangers, headings.row)
        found = f"no column is headed {quoted(column)}, which {criterion.title} draws on"
        fault = Fault("missing-column", found, wanted or f"Add a column headed {quoted(column)}")
        findings.refuse(cell, fault)


def _warn_of_missing_counts(
    headings: Headings, criteria: Sequence[Criterion], strangers: dict[str, int], findings: Findings
) -> None:
    """Note each steadied criterion whose count of ratings is nowhere."""
    for criterion in criteria:
        steady = criterion.steady
        answers_are_there = headings.column(heading_of(criterion)) is not None
        if steady and answers_are_there and headings.column(steady.count_column) is None:
            counts = quoted(steady.count_column)
            cell, wanted = _renamed(steady.count_column, strangers, headings.row)
            found = f"no column is headed {counts}, so how many ratings stand behind each is unknown"
            findings.warn(cell, Fault("missing-count-column", found, wanted or f"Add a column headed {counts}"))


def _warn_of_a_missing_day(
    headings: Headings, criteria: Sequence[Criterion], strangers: dict[str, int], findings: Findings
) -> None:
    """Note that response days cannot be worked out, where one of their two columns is there without the other."""
    missing = [heading for heading in (ASKED_ON, ANSWERED_ON) if headings.column(heading) is None]
    drawing = next((one for one in criteria if one.measure == "response_days" and one.weight > 0), None)
    if drawing is None or len(missing) != 1 or headings.column(heading_of(drawing)) is not None:
        return
    cell, wanted = _renamed(missing[0], strangers, headings.row)
    found = f"no column is headed {quoted(missing[0])}, so {drawing.title} is unknown for every maker"
    findings.warn(cell, Fault("missing-day-column", found, wanted or f"Add a column headed {quoted(missing[0])}"))


def _warn_of_misspelt(headings: Headings, strangers: dict[str, int], known: Sequence[str], findings: Findings) -> None:
    """Note each unknown heading whose nearest known one is missing."""
    for title, at in strangers.items():
        close = nearest(" ".join(title.split()), known)
        if close and headings.column(close) is None:
            found = f"{quoted(title)} is not a heading that the tool knows, so its column is not read"
            wanted = f"Did you mean {quoted(close)}? If so, rename it"
            findings.warn(f"{column_letter(at)}{headings.row}", Fault("near-heading", found, wanted))
