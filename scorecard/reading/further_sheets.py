"""Further sheets as tables: their rows, and what reading them brings to light, sheet by sheet.

Enters: the filled sheets, the makers and the criteria as read. Leaves: rows whose cells are read on demand; what is
wrong with them gathers in the findings as they are.
"""

from collections.abc import Iterator, Mapping, Sequence
from typing import Self

from scorecard.errors import Problem
from scorecard.frozen import dataclass
from scorecard.reading.criteria_file import CriteriaReading
from scorecard.reading.filled_sheets import FilledSheet
from scorecard.reading.findings import Findings, in_order
from scorecard.reading.makers import MakersReading, ReadingOptions
from scorecard.reading.sheet_table import TableContext, TableRow, read_table, warn_of_hidden_rows


@dataclass(frozen=True, slots=True)
class FurtherSheets:
    """Sheets read as tables, by name.

    Parameters
    ----------
    rows : of every sheet that is filled
    findings : of each; they grow while cells are read
    """

    rows: Mapping[str, Sequence[TableRow]]
    findings: Mapping[str, Findings]

    @classmethod
    def of(
        cls,
        filled: Mapping[str, FilledSheet],
        headings: Mapping[str, Sequence[str]],
        read: tuple[MakersReading, CriteriaReading],
        options: ReadingOptions,
    ) -> Self:
        """Read sheets as tables.

        Parameters
        ----------
        filled : by the sheet's name
        headings : that the tool reads, by the sheet's name
        read : the makers, whose names are looked for, and the criteria, whose brief settles numbers typed as text
        options : what to set aside, today, and the most rows
        """
        makers, brief = read[0], read[1].named
        context = TableContext(makers=makers.names, decimal=brief.decimal if brief else None, as_of=options.as_of)
        file = makers.source.name if makers.source else ""
        rows, findings = {}, {}
        for name, one in filled.items():
            found = Findings(file=file, sheet=one.sheet.sheet, takes_unreadable_as_unknown=options.set_aside)
            rows[name] = read_table(one.rows, headings[name], found, context, options.row_limit)
            warn_of_hidden_rows(one.sheet, rows[name], found)
            findings[name] = found
        return cls(rows, findings)

    def __getitem__(self, name: str) -> Sequence[TableRow]:
        return self.rows.get(name, ())

    @property
    def problems(self) -> tuple[Problem, ...]:
        """What stops the run, by sheet, row and column."""
        return tuple(self._in_order("problems"))

    @property
    def warnings(self) -> tuple[Problem, ...]:
        """What the user should know, likewise."""
        return tuple(self._in_order("warnings"))

    @property
    def set_aside(self) -> tuple[Problem, ...]:
        """What was set aside on the user's word, likewise."""
        return tuple(self._in_order("set_aside"))

    def _in_order(self, kind: str) -> Iterator[Problem]:
        for found in self.findings.values():
            yield from in_order(getattr(found, kind))
