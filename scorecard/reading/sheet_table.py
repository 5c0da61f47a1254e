"""A further sheet as a table: rows below a heading row, each cell read by its heading and with its place.

Enters: an open sheet and the headings that the tool knows. Leaves: rows whose cells are read
on demand; every fault goes to the findings at its cell, and the cell then counts as unknown.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import field
from datetime import date
from itertools import chain, islice
from math import isinf, isnan
from typing import TypeVar

from scorecard.costing.amounts import MOST, Span
from scorecard.errors import Place
from scorecard.frozen import dataclass
from scorecard.reading import cells
from scorecard.reading.cell_values import UNKNOWN_WORDS, Reading, no_value, read_choice, read_number
from scorecard.reading.cells import (
    COLUMN_LIMIT,
    HEADING_ROWS,
    Fault,
    SheetRow,
    SheetRows,
    Value,
    as_text,
    column_letter,
    is_blank,
    quoted,
)
from scorecard.reading.date_values import read_day
from scorecard.reading.findings import Findings
from scorecard.reading.headings import MAKER, find_heading_row, folded, refuse_many_columns
from scorecard.reading.names import same
from scorecard.reading.number_text import NumberRule
from scorecard.reading.units import ColumnUnit
from scorecard.words import nearest

Word = TypeVar("Word", bound=str)
Wanted = Callable[[str], str | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class TableContext:
    """What the cells of a table are read against.

    Parameters
    ----------
    makers : the names on the sheet Makers; None where they could not be read, and then any name will do
    decimal : the decimal mark, where the brief settles it
    as_of : today; days after it are problems where a column says so. None: no day is too late
    """

    makers: Sequence[str] | None = None
    decimal: cells.Decimal | None = None
    as_of: date | None = None
    spelt: Mapping[str, str] = field(init=False, repr=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "spelt", {same(name): name for name in reversed(self.makers or ())})

    def named(self, typed: str) -> str | None:
        """Return a maker's name as the sheet Makers spells it, or None where it is not there."""
        return typed if self.makers is None else self.spelt.get(same(typed))


@dataclass(frozen=True, slots=True, kw_only=True)
class TableRow:
    """One row of a further sheet; its cells are read when they are asked for.

    Parameters
    ----------
    number_in_sheet : from 1
    values : by heading, as the tool spells it; blank cells are not there
    letters : of every column that is there, by heading
    """

    number_in_sheet: int
    values: Mapping[str, Value]
    letters: Mapping[str, str]
    findings: Findings
    context: TableContext = field(default_factory=TableContext)

    def cell(self, heading: str) -> str:
        """Return where one column's cell of this row is; the maker's where the column is not there."""
        return f"{self.letters.get(heading) or self.letters[MAKER]}{self.number_in_sheet}"

    def places(self) -> dict[str, Place]:
        """Return the place of every column's cell of this row."""
        file, sheet = self.findings.file, self.findings.sheet
        return {
            heading: Place(file=file, sheet=sheet, cell=f"{at}{self.number_in_sheet}")
            for heading, at in self.letters.items()
        }

    def refuse_answer(self, heading: str, fault: Fault) -> None:
        """Note what cannot be read, which --set-aside takes as not there."""
        self.findings.refuse_answer(self.cell(heading), fault)

    def refuse(self, heading: str, fault: Fault) -> None:
        """Note what is wrong with one cell, whatever may be set aside."""
        self.findings.refuse(self.cell(heading), fault)

    def warn(self, heading: str, fault: Fault) -> None:
        """Note what the user should know of one cell."""
        self.findings.warn(self.cell(heading), fault)

    def says(self, heading: str) -> bool:
        """Say whether a cell holds anything that does not mean unknown."""
        value = self.values.get(heading)
        return not (value is None or (isinstance(value, str) and value.strip().casefold() in UNKNOWN_WORDS))

    def text(self, heading: str) -> str:
        """Return a cell's text on one line; "" where there is none."""
        value = self.values.get(heading)
        fault = no_value(value)
        if fault:
            self.findings.refuse_answer(self.cell(heading), fault)
            return ""
        return " ".join(as_text(value).split())

    def maker(self) -> str | None:
        """Return the maker as the sheet Makers spells it, or None once its problem is noted."""
        if not self.says(MAKER):
            self.refuse(
                MAKER, Fault("missing-maker", "no maker is named", "Write whose row this is, as on the sheet Makers")
            )
            return None
        typed = self.text(MAKER)
        name = self.context.named(typed)
        if name is None:
            close = nearest(typed, self.context.makers or ())
            wanted = (
                f"Write {quoted(close)}, if that is meant" if close else "Write a name that stands on the sheet Makers"
            )
            self.refuse(MAKER, Fault("unknown-maker", f"{quoted(typed)} is no maker of the sheet Makers", wanted))
        return name

    def number(
        self, heading: str, unit: str = "", *, positive: bool = False, whole_reply: Wanted | None = None, said: str = ""
    ) -> Span | None:
        """Return a number or a range, 0 or more; None where it is unknown, or once its problem is noted.

        Parameters
        ----------
        heading : of its column
        unit : that may stand beside it: "pieces", "days", a currency's code
        positive : whether 0 is a problem too
        whole_reply : what to write instead of a text that says more than a number; None where it has nothing to say
        said : the unit that the cell names, where more than one may stand there, to be told with what was read
        """
        reading = self._reading(heading, unit, positive=positive, whole_reply=whole_reply)
        if reading is None:
            return None
        self._tell(heading, reading, f" {said}" if said else "")
        return Span.between(reading.low, reading.high)

    def _reading(self, heading: str, unit: str, *, positive: bool, whole_reply: Wanted | None = None) -> Reading | None:
        """Return a number or a range as read; None where it is unknown, or once its problem is noted."""
        rule = NumberRule(unit=ColumnUnit(unit), decimal=self.context.decimal)
        reading = read_number(self.values.get(heading), rule)
        if isinstance(reading, Fault):
            wanted = whole_reply(as_text(self.values[heading])) if whole_reply else None
            told = reading._replace(wanted=wanted) if wanted else self._of_row(reading, heading, unit)
            self.findings.refuse_answer(self.cell(heading), told)
            return None
        if isnan(reading.low):
            return None
        if self._is_refused(heading, reading, positive=positive):
            return None
        return reading

    def whole(self, heading: str, unit: str = "pieces") -> int | None:
        """Return a whole number of at least 1; None where it is unknown, or once its problem is noted."""
        reading = self._reading(heading, unit, positive=True)
        if reading is None:
            return None
        span = Span.between(reading.low, reading.high)
        if not span.is_known or span.low != span.low.to_integral_value():
            found = f"{quoted(self.values.get(heading))} is not one whole number"
            self.findings.refuse_answer(
                self.cell(heading), Fault("not-whole", found, "Write a whole number, 1 or more")
            )
            return None
        self._tell(heading, reading)
        return int(span.low)

    def choice(self, heading: str, options: Sequence[Word]) -> Word | None:
        """Return one of the words, spelt as they are; None where it is unknown, or once its problem is noted."""
        value = self.values.get(heading)
        if is_blank(value):
            return None
        reading = read_choice(value, tuple(options))
        if isinstance(reading, Fault):
            self.findings.refuse_answer(self.cell(heading), reading)
            return None
        self._tell(heading, reading)
        return None if isnan(reading.low) else options[int(reading.low)]

    def day(self, heading: str, *, may_come: bool = True) -> date | None:
        """Return a day; None where it is unknown, or once its problem is noted.

        Parameters
        ----------
        heading : of its column
        may_come : whether it may lie after today
        """
        read = read_day(self.values.get(heading))
        if isinstance(read, Fault):
            self.findings.refuse_answer(self.cell(heading), read)
            return None
        if isnan(read):
            return None
        day, as_of = date.fromordinal(int(read)), self.context.as_of
        if not may_come and as_of is not None and day > as_of:
            found = f"{day.isoformat()} is after {as_of.isoformat()}, which stands for today"
            wanted = "Write the day on which it happened; today is the clock's day, or that of --as-of"
            self.findings.refuse_answer(self.cell(heading), Fault("day-to-come", found, wanted))
            return None
        return day

    def _of_row(self, fault: Fault, heading: str, unit: str) -> Fault:
        """Return a number's fault as it is told where the currency is the row's."""
        if fault.code != "other-currency" or "Currency" not in self.letters:
            return fault
        found = f"{quoted(self.values[heading])} is in another currency than its row, which is in {unit}"
        wanted = f"Write its currency under Currency, or the amount in {unit} as a number alone"
        return fault._replace(found=found, wanted=wanted)

    def _is_refused(self, heading: str, reading: Reading, *, positive: bool) -> bool:
        """Say whether a number is not within what it may be, once that is noted."""
        ends = [end for end in (reading.low, reading.high) if not isinf(end)]
        if any(end < 0 for end in ends):
            wanted = "Write a number above 0, or nothing" if positive else "Write 0 or more, or nothing"
            fault = Fault("below-zero", f"{quoted(self.values[heading])} is below 0", wanted)
        elif positive and any(end == 0 for end in ends):
            found = f"{quoted(self.values[heading])} is not above 0"
            fault = Fault(
                "not-above-zero", found, "Write a number above 0, or leave the cell empty while you do not know"
            )
        elif any(end > MOST for end in ends):
            found = f"{quoted(self.values[heading])} is above {MOST:,.0f}"
            fault = Fault("too-high", found, "Look for a digit or a unit too many: nothing of a small run is so large")
        else:
            return False
        self.findings.refuse_answer(self.cell(heading), fault)
        return True

    def _tell(self, heading: str, reading: Reading, said: str = "") -> None:
        """Note how a text was read, and what is odd about it."""
        if reading.read_as:
            self.warn(heading, Fault("read-as", quoted(self.values[heading]), f"read as {reading.read_as}{said}"))
        if reading.warning:
            self.warn(heading, reading.warning)


def read_table(
    rows: Iterable[SheetRow], known: Sequence[str], findings: Findings, context: TableContext, row_limit: int
) -> list[TableRow]:
    """Return the rows of a sheet that hold anything under a known heading.

    Parameters
    ----------
    rows : of an open sheet
    known : the headings that the tool reads, as it spells them
    findings : where a missing or doubled heading, and too many rows, are noted
    context : what cells are read against
    row_limit : the most rows below the headings
    """
    rows = iter(rows)
    head = list(islice(rows, HEADING_ROWS))
    heading_row = find_heading_row(head)
    if heading_row is None:
        if head:
            fault = Fault(
                "no-maker-column", f"no column is headed {MAKER}", f"Head the column of names {MAKER}, in row 1"
            )
            findings.refuse(f"A{head[0][0]}", fault)
        return []
    refuse_many_columns(heading_row, findings)
    columns = _columns(heading_row[1][:COLUMN_LIMIT], heading_row[0], known, findings)
    letters = {heading: column_letter(at + 1) for heading, at in columns.items()}
    body = chain((row for row in head if row[0] > heading_row[0]), rows)
    found: list[TableRow] = []
    for number, values in body:
        held = {heading: values[at] for heading, at in columns.items() if at < len(values) and not is_blank(values[at])}
        if not held:
            continue
        if len(found) == row_limit:
            fault = Fault("too-many-rows", f"more than {row_limit} rows", "Keep the rows that matter")
            findings.refuse(f"A{number}", fault)
            break
        found.append(TableRow(number_in_sheet=number, values=held, letters=letters, findings=findings, context=context))
    return found


def _columns(titles: Sequence[Value], row: int, known: Sequence[str], findings: Findings) -> dict[str, int]:
    """Return the position from 0 of every known heading; one that stands twice, or nearly matches, is noted."""
    spelt = {folded(heading): heading for heading in known}
    columns: dict[str, int] = {}
    strangers: dict[str, int] = {}
    for at, value in enumerate(titles):
        title = as_text(value)
        heading = spelt.get(folded(title))
        if heading is None:
            strangers.setdefault(title, at)
        elif heading in columns:
            found = f"{quoted(title)} is the heading of {column_letter(columns[heading] + 1)}{row} too"
            findings.refuse(f"{column_letter(at + 1)}{row}", Fault("doubled-heading", found, "Rename one of the two"))
        else:
            columns[heading] = at
    for title, at in strangers.items():
        close = nearest(" ".join(title.split()), known) if title.strip() else None
        if close and close not in columns:
            found = f"{quoted(title)} is not a heading that the tool knows, so its column is not read"
            fault = Fault("near-heading", found, f"Did you mean {quoted(close)}? If so, rename it")
            findings.warn(f"{column_letter(at + 1)}{row}", fault)
    return columns


def warn_of_hidden_rows(sheet: SheetRows, rows: Sequence[TableRow], findings: Findings) -> None:
    """Note rows that are hidden and yet count; to be asked once all rows have been read."""
    hidden = set(sheet.hidden_rows) & {row.number_in_sheet for row in rows}
    for number in sorted(hidden):
        fault = Fault("hidden-row", "the row is hidden and is read all the same", "Delete it if it should not count")
        findings.warn(f"A{number}", fault)
