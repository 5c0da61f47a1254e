"""Which columns of the Makers sheet are read, and as what: the headings met with the criteria."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import TypeVar

from scorecard.criteria import Criterion
from scorecard.reading.cells import column_letter
from scorecard.reading.columns import (
    ChoiceColumn,
    Column,
    DayColumn,
    MinimumUnitColumn,
    NameColumn,
    NumberColumn,
    TextColumn,
)
from scorecard.reading.date_values import day_text
from scorecard.reading.findings import Findings
from scorecard.reading.headings import (
    ANSWERED_ON,
    ASKED_ON,
    MAKER,
    MINIMUM_ORDER,
    MINIMUM_PER,
    SEEN_ON,
    TEXT_COLUMNS,
    Headings,
    folded,
    heading_of,
)
from scorecard.reading.number_text import NumberRule
from scorecard.reading.units import ColumnUnit

C = TypeVar("C", bound=Column)

IN_PIECES = ("", "piece", "pieces", "pcs")  # units of a minimum order
COST_MEASURE = "landed_cost_per_piece"
MEASURE_UNITS = {"response_days": "days", "days_to_door": "days"}
ALSO_UNITS = {"response_days": "working days"}  # which is what it counts


class MakerColumns:
    """The columns that are read, each at its position; several may read one.

    Parameters
    ----------
    headings : where the known columns stand
    findings : where problems and warnings go
    """

    def __init__(self, headings: Headings, findings: Findings) -> None:
        self.headings, self.findings = headings, findings
        self.letters: dict[str, str] = {}
        self.by_position: list[tuple[int, Column]] = []
        self.answers: dict[str, NumberColumn | ChoiceColumn] = {}
        self.counts: dict[str, NumberColumn] = {}
        self.minimum: NumberColumn | None = None
        self.minimum_per: MinimumUnitColumn | None = None
        self.days: dict[str, DayColumn] = {}
        self.texts: dict[str, TextColumn] = {}
        self.maker_position = headings.columns[folded(MAKER)]
        self.letters["maker"] = column_letter(self.maker_position)
        self.names = NameColumn(self.letters["maker"], findings)

    def lay_out(self, criteria: Sequence[Criterion], typed: NumberRule, currency: str | None = None) -> None:
        """Set a column for every heading that is there.

        Parameters
        ----------
        criteria : what is compared
        typed : what settles the decimal mark of numbers typed as text
        currency : the brief's, that of costs without a unit
        """
        for criterion in criteria:
            self._lay_out_answers(criterion, typed, currency)
            self._lay_out_counts(criterion, typed)
        self.minimum = self._minimum(criteria, typed)
        self.letters["maker"] = self.names.letter  # a criterion may have that key
        letter = self._letter(MINIMUM_PER, MINIMUM_PER)
        if letter:
            self.minimum_per = self._placed(MINIMUM_PER, MinimumUnitColumn(letter, self.findings))
        for heading in (ASKED_ON, ANSWERED_ON, SEEN_ON):
            letter = self._letter(heading, heading)
            if letter:
                self.days[heading] = self._placed(heading, DayColumn(letter, self.findings))
        for heading in TEXT_COLUMNS:
            letter = self._letter(heading, heading)
            if letter:
                self.texts[heading] = self._placed(heading, TextColumn(letter, self.findings))

    def _lay_out_answers(self, criterion: Criterion, typed: NumberRule, currency: str | None) -> None:
        """Set the column of a criterion's answers, if it is there."""
        heading = heading_of(criterion) or ""
        letter = self._letter(criterion.key, heading)
        if not letter or criterion.choices == ():  # which stands for answers that cannot be told
            return
        column: NumberColumn | ChoiceColumn
        if criterion.choices is not None:
            column = ChoiceColumn(letter, criterion.choices, self.findings)
        else:
            column = NumberColumn(letter, number_rule(criterion, heading, typed, currency), self.findings)
        self.answers[criterion.key] = self._placed(heading, column)

    def _lay_out_counts(self, criterion: Criterion, typed: NumberRule) -> None:
        """Set the column that counts a steadied criterion's ratings, if it is there."""
        if criterion.steady is None:
            return
        heading = criterion.steady.count_column
        letter = self._letter(heading, heading)
        if letter:
            rule = replace(typed, unit=ColumnUnit("ratings"), counts="ratings")
            self.counts[criterion.key] = self._placed(heading, NumberColumn(letter, rule, self.findings))

    def _minimum(self, criteria: Sequence[Criterion], typed: NumberRule) -> NumberColumn | None:
        """Return the column of minimum orders in pieces: the one headed so, else that of a criterion divided by pieces.

        Costs need it whatever the criteria are, so that one of which they make nothing is read by itself.
        """
        if self.headings.column(MINIMUM_ORDER) is None:
            readers = [one for one in criteria if one.per_quantity]
        else:
            readers = [one for one in criteria if folded(heading_of(one) or "") == folded(MINIMUM_ORDER)]
            if not readers and (letter := self._letter(MINIMUM_ORDER, MINIMUM_ORDER)):
                rule = replace(typed, unit=ColumnUnit("pieces"), counts="pieces", is_minimum=True)
                return self._placed(MINIMUM_ORDER, NumberColumn(letter, rule, self.findings))
        found = (self.answers.get(one.key) for one in readers if one.unit.casefold() in IN_PIECES)
        return next((column for column in found if isinstance(column, NumberColumn)), None)

    def _letter(self, name: str, heading: str) -> str | None:
        """Note and return the letter of a column under the name that the table will have for it."""
        position = self.headings.column(heading)
        if position is not None:
            self.letters[name] = column_letter(position)
        return None if position is None else self.letters[name]

    def _placed(self, heading: str, column: C) -> C:
        """Set a column to read what stands under a heading."""
        self.by_position.append((self.headings.columns[folded(heading)], column))
        return column

    @property
    def positions(self) -> list[int]:
        """The positions of the makers' column and of those that are read, from 1."""
        return [self.maker_position, *(position for position, _ in self.by_position)]

    def unreadable_days(self, headings: Iterable[str]) -> set[int]:
        """Return the makers of whom a day under one of these headings was set aside."""
        return set().union(*(self.days[heading].unreadable for heading in headings if heading in self.days))

    def details(self) -> dict[str, Sequence[str]]:
        """Return the texts that are shown, by heading; days in ISO form."""
        details: dict[str, Sequence[str]] = {}
        for heading, column in self.texts.items():
            texts = column.texts
            details[heading] = tuple(texts) if isinstance(texts, list) else texts
        if SEEN_ON in self.days:
            details[SEEN_ON] = tuple(day_text(day) for day in self.days[SEEN_ON].days)
        return details


def number_rule(criterion: Criterion, heading: str, typed: NumberRule, currency: str | None = None) -> NumberRule:
    """Return what the column of a criterion with numbers takes, the decimal mark settled as in ``typed``."""
    is_minimum = criterion.per_quantity or folded(heading) == folded(MINIMUM_ORDER)
    usual = "pieces" if is_minimum else MEASURE_UNITS.get(criterion.measure or "", "")
    if criterion.measure == COST_MEASURE:
        usual = currency or ""
    unit = criterion.unit or usual
    return replace(
        typed,
        unit=ColumnUnit(unit, ALSO_UNITS.get(criterion.measure or "", "")),
        within=criterion.within,
        counts=unit if is_minimum else None,
        is_minimum=is_minimum,
        counted_under=criterion.steady.count_column if criterion.steady else "",
    )
