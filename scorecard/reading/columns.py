"""Columns of the Makers sheet while they are being read: each takes blocks of cells and gathers what they say.

Enters: row numbers and common cells, block by block. Leaves: arrays of (makers,). Whole blocks of plain numbers are
taken at once; a block with anything else is halved until the odd cells stand alone and are read with care.
"""

from collections.abc import Iterator, Mapping, Sequence
from itertools import product
from math import inf, isfinite, nan
from typing import Protocol, TypeVar, cast

import numpy as np
from numpy.typing import NDArray

from scorecard.answers import Answers
from scorecard.brief import UNITS, Unit
from scorecard.reading.cell_values import UNKNOWN, UNKNOWN_WORDS, Reading, no_value, read_choice, read_number
from scorecard.reading.cells import Fault, Value, as_text, quoted
from scorecard.reading.csv_spans import Spans, joined
from scorecard.reading.date_values import read_day
from scorecard.reading.findings import Findings
from scorecard.reading.names import LONGEST_NAME, read_name
from scorecard.reading.number_text import THOUSANDS, YEARS_OF_THE_CALENDAR, NumberRule
from scorecard.value_functions import Floats
from scorecard.words import listed, nearest_first

T = TypeVar("T")
S = TypeVar("S", bound=np.generic)

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
    framed = f"\n{joined}\n"
    if any(bare in framed for bare in (f"{mark}\n", f"\n{mark}", f"-{mark}")):
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
    if not (isfinite(low) and isfinite(high)):
        return False
    least, greatest = rule.within or (-inf, inf)
    if rule.counts:
        least = max(least, 0.0)
    if rule.unit.is_of_whole_things and (known % 1).any():
        return False
    if rule.unit.is_of_years and high >= YEARS_OF_THE_CALENDAR[0]:
        return False
    return least <= low and high <= greatest


def all_known(values: Sequence[Value], known: Mapping[str, T]) -> list[T] | None:
    """Return what each text of a block was read as before, or None if one of them is new or no text."""
    if set(map(type, values)) != {str}:
        return None
    try:
        return [known[text] for text in cast(Sequence[str], values)]
    except KeyError:
        return None


class Block:
    """The cells of some rows, of which each text is read once where that is known to be quicker.

    Parameters
    ----------
    rows : their numbers in the sheet
    values : (rows,), the cells
    """

    def __init__(self, rows: Sequence[int], values: Sequence[Value]) -> None:
        self._rows = rows
        self.values: Sequence[Value]
        self._places: NDArray[np.intp] | None
        self.values, self._places = values, None
        if isinstance(values, Spans):
            self.values, self._places = values.distinct()

    def positions(self, at: int) -> Sequence[int]:
        """Return the positions from 0 of the rows that hold a value."""
        return [at] if self._places is None else np.flatnonzero(self._places == at).tolist()

    def rows(self, at: int) -> Sequence[int]:
        """Return the numbers of the rows that hold a value."""
        return [self._rows[position] for position in self.positions(at)]

    def spread(self, read: NDArray[S]) -> NDArray[S]:
        """Return for every row what was read of its value, from what was read of every value."""
        return read if self._places is None else read[self._places]


class NumberColumn:
    """Numbers, ranges and unknowns."""

    def __init__(self, letter: str, rule: NumberRule, findings: Findings) -> None:
        self._letter, self._rule, self._findings = letter, rule, findings
        self._lows: list[Floats] = []
        self._highs: list[Floats] = []
        self._seen: dict[tuple[type, Value], Reading | Fault] = {}

    def add(self, rows: Sequence[int], values: Sequence[Value]) -> None:
        """Take a block."""
        block = Block(rows, values)
        low, high = (np.concatenate(parts) for parts in zip(*self._readings(block, 0, len(block.values)), strict=True))
        self._lows.append(block.spread(low))
        self._highs.append(block.spread(high))

    def _readings(self, block: Block, start: int, end: int) -> Iterator[tuple[Floats, Floats]]:
        """Yield what values say, both ends: at once where they are plain, else in halves, the smallest with care."""
        numbers = quick_numbers(block.values[start:end], self._rule)
        if numbers is not None:
            yield numbers, numbers
        elif end - start <= SMALLEST_BLOCK:
            readings = [self._read(block.rows(at), block.values[at]) for at in range(start, end)]
            yield np.array([reading.low for reading in readings]), np.array([reading.high for reading in readings])
        else:
            half = (start + end) // 2
            yield from self._readings(block, start, half)
            yield from self._readings(block, half, end)

    def _read(self, rows: Sequence[int], value: Value) -> Reading:
        """Return what a cell says, noting a fault or a reading that its user should see, in each of its rows."""
        key = (type(value), value)
        reading = self._seen.get(key)
        if reading is None:
            reading = read_number(value, self._rule)
            if len(self._seen) < CACHE_LIMIT:
                self._seen[key] = reading
        cells = [f"{self._letter}{row}" for row in rows]
        if isinstance(reading, Fault):
            for cell in cells:
                self._findings.refuse_answer(cell, reading)
            return UNKNOWN
        read_as = Fault("read-as", quoted(value), f"read as {reading.read_as}") if reading.read_as else None
        for cell, warning in product(cells, filter(None, (read_as, reading.warning))):
            self._findings.warn(cell, warning)
        return reading

    def answers(self) -> Answers:
        """Return all that was taken."""
        nothing = [np.empty(0)]
        return Answers(np.concatenate(self._lows or nothing), np.concatenate(self._highs or nothing))


class ChoiceColumn:
    """Choices, as positions in the criterion's list."""

    def __init__(self, letter: str, choices: tuple[str, ...], findings: Findings) -> None:
        self._letter, self._choices, self._findings = letter, choices, findings
        self._positions: list[Floats] = []
        self._known: dict[str, float] = {}

    def add(self, rows: Sequence[int], values: Sequence[Value]) -> None:
        """Take a block."""
        block = Block(rows, values)
        known = all_known(block.values, self._known)
        read = known or [self._read(block, at, value) for at, value in enumerate(block.values)]
        self._positions.append(block.spread(np.array(read)))

    def _read(self, block: Block, at: int, value: Value) -> float:
        """Return the position of one choice."""
        reading = read_choice(value, self._choices)
        if isinstance(reading, Fault):
            for row in block.rows(at):
                self._findings.refuse_answer(f"{self._letter}{row}", reading)
            return nan
        if reading.read_as:
            for row in block.rows(at):
                fault = Fault("read-as", quoted(value), f"read as {reading.read_as}")
                self._findings.warn(f"{self._letter}{row}", fault)
        elif isinstance(value, str):
            self._known[value] = reading.low
        return reading.low

    def answers(self) -> Answers:
        """Return all that was taken."""
        positions = np.concatenate(self._positions or [np.empty(0)])
        return Answers(positions, positions)


class MinimumUnitColumn:
    """The units that minimum orders are per."""

    def __init__(self, letter: str, findings: Findings) -> None:
        self._letter, self._findings = letter, findings
        self.units: list[Unit | None] = []
        self._known: dict[str, Unit | None] = {}

    def add(self, rows: Sequence[int], values: Sequence[Value]) -> None:
        """Take a block."""
        block = Block(rows, values)
        known = all_known(block.values, self._known)
        read = known or [self._read(block, at, value) for at, value in enumerate(block.values)]
        self.units += block.spread(np.array(read, dtype=object)).tolist()

    def _read(self, block: Block, at: int, value: Value) -> Unit | None:
        """Return one unit."""
        unit = read_minimum_unit(value)
        if isinstance(unit, Fault):
            for row in block.rows(at):
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
        block = Block(rows, values)
        known = all_known(block.values, self._known)
        read = known or [self._read(block, at, value) for at, value in enumerate(block.values)]
        self.days += block.spread(np.array(read)).tolist()

    def _read(self, block: Block, at: int, value: Value) -> float:
        """Return one day."""
        day = read_day(value)
        if isinstance(day, Fault):
            for row in block.rows(at):
                self._findings.refuse_answer(f"{self.letter}{row}", day)
            self.unreadable.update(len(self.days) + position for position in block.positions(at))
            return nan
        if isinstance(value, str) and len(self._known) < CACHE_LIMIT:
            self._known[value] = day
        return day


class TextColumn:
    """Texts that are shown and never reckoned with; one that cannot be read is no more than a warning."""

    def __init__(self, letter: str, findings: Findings) -> None:
        self._letter, self._findings = letter, findings
        self._parts: list[Sequence[str]] = []

    def add(self, rows: Sequence[int], values: Sequence[Value]) -> None:
        """Take a block."""
        if isinstance(values, Spans) or set(map(type, values)) == {str}:
            self._parts.append(cast(Sequence[str], values))
            return
        self._parts.append([self._read(row, value) for row, value in zip(rows, values, strict=True)])

    def _read(self, row: int, value: Value) -> str:
        """Return one text."""
        fault = None if isinstance(value, str) else no_value(value)
        if fault:
            self._findings.warn(f"{self._letter}{row}", fault)
        return "" if fault else as_text(value)

    @property
    def texts(self) -> Sequence[str]:
        """All that was taken; what was taken as stretches of a file becomes text when it is asked for."""
        return joined(self._parts)


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
