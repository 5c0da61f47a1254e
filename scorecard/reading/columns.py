"""Columns of the Makers sheet while they are being read: each takes blocks of cells and gathers what they say.

Enters: row numbers and common cells, block by block. Leaves: arrays of (makers,). Whole blocks of plain numbers are
taken at once; a block with anything else is halved until the odd cells stand alone and are read with care.
"""

from collections.abc import Mapping, Sequence
from math import inf, isfinite, nan
from typing import Protocol, TypeVar, cast

import numpy as np

from scorecard.answers import Answers
from scorecard.brief import UNITS, Unit
from scorecard.reading.cell_values import UNKNOWN, UNKNOWN_WORDS, Reading, no_value, read_choice, read_number
from scorecard.reading.cells import Fault, Value, as_text, quoted
from scorecard.reading.date_values import read_day
from scorecard.reading.findings import Findings
from scorecard.reading.names import LONGEST_NAME, read_name
from scorecard.reading.number_text import THOUSANDS, YEARS_OF_THE_CALENDAR, NumberRule
from scorecard.value_functions import Floats
from scorecard.words import listed, nearest_first

T = TypeVar("T")

SMALLEST_BLOCK = 32
CACHE_LIMIT = 10_000
PLAIN_SIGNS = {".": frozenset("0123456789.-\n"), ",": frozenset("0123456789,-\n")}
MINIMUM_UNITS: dict[str, Unit] = {
    "order": "order",
    "design": "design",
    "colour": "colour",
    "color": "colour",
    "size": "size",
}


class Column(Protocol):
    """What every column does with a block of cells."""

    def add(self, rows: Sequence[int], values: Sequence[Value]) -> None:
        """Take the cells of these rows."""


def quick_numbers(values: Sequence[Value], rule: NumberRule) -> Floats | None:
    """Return the numbers of a block that holds nothing but plain numbers and empty cells, or None for another block."""
    kinds = set(map(type, values))
    try:
        if kinds <= {int, float, type(None)}:
            numbers = np.array([nan if value is None else float(cast(float, value)) for value in values])
        elif kinds == {str}:
            numbers = np.array(_quick_texts(cast(Sequence[str], values), rule))
        else:
            return None
    except (ValueError, OverflowError):
        return None
    return numbers if _is_within(numbers, rule) else None


def _quick_texts(texts: Sequence[str], rule: NumberRule) -> list[float]:
    """Return the numbers of plain texts; a ValueError means that one of them must be read with care."""
    mark = rule.decimal or "."
    joined = "\n".join(texts)
    is_to_be_listed = mark in joined and (not rule.all_is_text or THOUSANDS.search(joined))
    if is_to_be_listed or not PLAIN_SIGNS[mark].issuperset(joined):
        raise ValueError
    if f"{mark}\n" in joined or joined.endswith(mark):
        raise ValueError
    if mark == ",":
        texts = joined.replace(",", ".").split("\n")
    return [float(text) if text else nan for text in texts]


def _is_within(numbers: Floats, rule: NumberRule) -> bool:
    """Say whether every number is finite and lies where it may."""
    known = numbers[~np.isnan(numbers)]
    if not known.size:
        return True
    low, high = float(known.min()), float(known.max())
    least, greatest = rule.within or (-inf, inf)
    if rule.counts:
        least = max(least, 0.0)
    if rule.unit.is_of_whole_things and (known % 1).any():
        return False
    if rule.unit.is_of_years and high >= YEARS_OF_THE_CALENDAR[0]:
        return False
    return least <= low and high <= greatest and isfinite(low) and isfinite(high)


def all_known(values: Sequence[Value], known: Mapping[str, T]) -> list[T] | None:
    """Return what each text of a block was read as before, or None if one of them is new or no text."""
    if set(map(type, values)) != {str}:
        return None
    try:
        return [known[text] for text in cast(Sequence[str], values)]
    except KeyError:
        return None


class NumberColumn:
    """Numbers, ranges and unknowns."""

    def __init__(self, letter: str, rule: NumberRule, findings: Findings) -> None:
        self._letter, self._rule, self._findings = letter, rule, findings
        self._lows: list[Floats] = []
        self._highs: list[Floats] = []
        self._seen: dict[tuple[type, Value], Reading | Fault] = {}

    def add(self, rows: Sequence[int], values: Sequence[Value]) -> None:
        """Take a block: at once where it is plain, else in halves."""
        numbers = quick_numbers(values, self._rule)
        if numbers is not None:
            self._lows.append(numbers)
            self._highs.append(numbers)
        elif len(values) <= SMALLEST_BLOCK:
            self._add_with_care(rows, values)
        else:
            half = len(values) // 2
            self.add(rows[:half], values[:half])
            self.add(rows[half:], values[half:])

    def _add_with_care(self, rows: Sequence[int], values: Sequence[Value]) -> None:
        """Take a block cell by cell."""
        readings = [self._read(row, value) for row, value in zip(rows, values, strict=True)]
        self._lows.append(np.array([reading.low for reading in readings]))
        self._highs.append(np.array([reading.high for reading in readings]))

    def _read(self, row: int, value: Value) -> Reading:
        """Return what a cell says, noting a fault or a reading that its user should see."""
        key = (type(value), value)
        reading = self._seen.get(key)
        if reading is None:
            reading = read_number(value, self._rule)
            if len(self._seen) < CACHE_LIMIT:
                self._seen[key] = reading
        if isinstance(reading, Fault):
            self._findings.refuse_answer(f"{self._letter}{row}", reading)
            return UNKNOWN
        if reading.read_as:
            self._findings.warn(f"{self._letter}{row}", Fault("read-as", quoted(value), f"read as {reading.read_as}"))
        if reading.warning:
            self._findings.warn(f"{self._letter}{row}", reading.warning)
        return reading

    def answers(self) -> Answers:
        """Return all that was taken."""
        nothing = [np.empty(0)]
        return Answers(np.concatenate(self._lows or nothing), np.concatenate(self._highs or nothing))


class ChoiceColumn:
    """Choices, as positions in the criterion's list."""

    def __init__(self, letter: str, choices: tuple[str, ...], findings: Findings) -> None:
        self._letter, self._choices, self._findings = letter, choices, findings
        self._positions: list[float] = []
        self._known: dict[str, float] = {}

    def add(self, rows: Sequence[int], values: Sequence[Value]) -> None:
        """Take a block."""
        known = all_known(values, self._known)
        self._positions += known or [self._read(row, value) for row, value in zip(rows, values, strict=True)]

    def _read(self, row: int, value: Value) -> float:
        """Return the position of one choice."""
        reading = read_choice(value, self._choices)
        if isinstance(reading, Fault):
            self._findings.refuse_answer(f"{self._letter}{row}", reading)
            return nan
        if isinstance(value, str):
            self._known[value] = reading.low
        return reading.low

    def answers(self) -> Answers:
        """Return all that was taken."""
        positions = np.array(self._positions)
        return Answers(positions, positions)


class MinimumUnitColumn:
    """The units that minimum orders are per."""

    def __init__(self, letter: str, findings: Findings) -> None:
        self._letter, self._findings = letter, findings
        self.units: list[Unit | None] = []
        self._known: dict[str, Unit | None] = {}

    def add(self, rows: Sequence[int], values: Sequence[Value]) -> None:
        """Take a block."""
        known = all_known(values, self._known)
        self.units += known or [self._read(row, value) for row, value in zip(rows, values, strict=True)]

    def _read(self, row: int, value: Value) -> Unit | None:
        """Return one unit."""
        unit = read_minimum_unit(value)
        if isinstance(unit, Fault):
            self._findings.refuse_answer(f"{self._letter}{row}", unit)
            return None
        if isinstance(value, str):
            self._known[value] = unit
        return unit


def read_minimum_unit(value: Value) -> Unit | Fault | None:
    """Return the unit that a minimum order is per, None for unknown: "per design", "Designs" and "design" are one."""
    word = " ".join(as_text(value).casefold().split())
    if word in UNKNOWN_WORDS:
        return None
    unit = MINIMUM_UNITS.get(word.removeprefix("per ").removesuffix("s"))
    if unit:
        return unit
    units = listed(nearest_first(word.removeprefix("per "), UNITS), "or")
    wanted = f"Write {units}, or leave the cell empty"
    return no_value(value) or Fault("not-a-minimum-unit", f"{quoted(value)} is not what a minimum is per", wanted)


class DayColumn:
    """Days; which of the makers' could not be read is kept apart from which are blank."""

    def __init__(self, letter: str, findings: Findings) -> None:
        self.letter, self._findings = letter, findings
        self.days: list[float] = []
        self.unreadable: set[int] = set()
        self._known: dict[str, float] = {}

    def add(self, rows: Sequence[int], values: Sequence[Value]) -> None:
        """Take a block."""
        known = all_known(values, self._known)
        if known:
            self.days += known
            return
        for row, value in zip(rows, values, strict=True):
            day = read_day(value)
            if isinstance(day, Fault):
                self._findings.refuse_answer(f"{self.letter}{row}", day)
                self.unreadable.add(len(self.days))
                day = nan
            elif isinstance(value, str) and len(self._known) < CACHE_LIMIT:
                self._known[value] = day
            self.days.append(day)


class TextColumn:
    """Texts that are shown and never reckoned with; one that cannot be read is no more than a warning."""

    def __init__(self, letter: str, findings: Findings) -> None:
        self._letter, self._findings = letter, findings
        self.texts: list[str] = []

    def add(self, rows: Sequence[int], values: Sequence[Value]) -> None:
        """Take a block."""
        if set(map(type, values)) == {str}:
            self.texts += cast(Sequence[str], values)
            return
        for row, value in zip(rows, values, strict=True):
            fault = None if isinstance(value, str) else no_value(value)
            if fault:
                self._findings.warn(f"{self._letter}{row}", fault)
            self.texts.append("" if fault else as_text(value))


class NameColumn:
    """Makers' names, exactly as typed, with their rows."""

    def __init__(self, letter: str, findings: Findings) -> None:
        self.letter, self._findings = letter, findings
        self.names: list[str] = []
        self.rows: list[int] = []

    def add(self, rows: Sequence[int], values: Sequence[Value]) -> None:
        """Take a block; a name that cannot be read stops the run, whatever may be set aside."""
        self.rows += rows
        if set(map(type, values)) == {str} and max(map(len, cast(Sequence[str], values))) <= LONGEST_NAME:
            self.names += cast(Sequence[str], values)
            return
        for row, value in zip(rows, values, strict=True):
            name = read_name(value)
            if isinstance(name, Fault):
                self._findings.refuse(f"{self.letter}{row}", name)
                name = f"row {row}"
            self.names.append(name)
