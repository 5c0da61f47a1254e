"""The heading row: where it stands, which columns the tool knows, and what is missing, doubled or misspelt.

Enters: the first rows of a sheet, and the criteria. Leaves: the place of every known column.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from scorecard.criteria import Criterion
from scorecard.reading.cells import HEADING_ROWS, Fault, SheetRow, as_text, column_letter, is_blank, quoted
from scorecard.reading.findings import Findings
from scorecard.words import nearest

MAKER = "Maker"
MINIMUM_PER = "Minimum is per"
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
FIXED_COLUMNS = (MAKER, MINIMUM_PER, ASKED_ON, ANSWERED_ON, SEEN_ON, *TEXT_COLUMNS)


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
    known = known_titles(criteria)
    titles = [as_text(value) for value in row[1]]
    headings = Headings(row=row[0], columns=_columns(row[0], titles, known, findings))
    strangers = {title: at for at, title in enumerate(titles, 1) if title.strip() and folded(title) not in known}
    _refuse_missing(headings, criteria, strangers, findings)
    _warn_of_missing_counts(headings, criteria, strangers, findings)
    _warn_of_a_missing_day(headings, criteria, strangers, findings)
    if criteria:  # without the criteria file's headings every column that it names would look misspelt
        _warn_of_misspelt(headings, strangers, list(known_headings(criteria)), findings)
    return headings


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
    findings.refuse(cell, Fault("no-maker-column", found, wanted or f"Head the column of names {MAKER}, in row 1"))


def _renamed(heading: str, strangers: dict[str, int], row: int) -> tuple[str, str]:
    """Return the cell of the unknown heading that is nearest to a missing one, taking it off, and that it be renamed.

    Where none is near: the row's first cell, and "".
    """
    close = nearest(heading, list(strangers))
    if close is None:
        return f"A{row}", ""
    return f"{column_letter(strangers.pop(close))}{row}", f"Rename the heading {quoted(close)} to {quoted(heading)}"


def _columns(row: int, titles: Sequence[str], known: dict[str, str], findings: Findings) -> dict[str, int]:
    """Return the position of each known heading; the heading's own title goes before others that mean the same."""
    there: dict[str, list[int]] = {}
    for at, title in enumerate(titles, 1):
        heading = known.get(folded(title))
        if heading is not None:
            there.setdefault(folded(heading), []).append(at)
    columns = {}
    for key, places in there.items():
        columns[key], *others = sorted(places, key=lambda at: (folded(titles[at - 1]) != key, at))
        for at in others:
            _note_second(columns[key], at, titles, (row, findings))
    return columns


def _note_second(first: int, at: int, titles: Sequence[str], noted: tuple[int, Findings]) -> None:
    """Note a second column of one heading: a problem where the two are titled alike, else a warning."""
    row, findings = noted
    title, taken, cell = titles[at - 1], titles[first - 1], f"{column_letter(first)}{row}"
    if folded(title) == folded(taken):
        fault = Fault("doubled-heading", f"{quoted(title)} is the heading of {cell} too", "Rename one of the two")
        findings.refuse(f"{column_letter(at)}{row}", fault)
        return
    found = f"{quoted(title)} says the same as {quoted(taken)} in {cell}, which is read in its place"
    findings.warn(f"{column_letter(at)}{row}", Fault("second-heading", found, "Keep one of the two columns"))


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
