"""A TOML table read key by key: each value is checked for what it must be, and each problem goes to the notes.

Enters: tables as ``tomllib`` gives them. Leaves: values, or None for one that is absent or has a problem noted.
"""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import field
from datetime import date, datetime, time
from math import isfinite
from typing import TypeVar

from scorecard.errors import Place, Problem
from scorecard.frozen import dataclass
from scorecard.reading.toml_hints import shown
from scorecard.reading.toml_scan import Path
from scorecard.words import listed, nearest, shortest

Word = TypeVar("Word", bound=str)

LARGEST = 1e15
LONGEST_WORD = 100

_BARE = re.compile(r"[A-Za-z0-9_-]+(?:\[\d+\])?")  # with the place in an array of tables


def dotted(path: Path) -> str:
    """Return a path as one writes it in TOML.

    Examples
    --------
    >>> dotted(("criteria", "years_trading")), dotted(("criteria", "years trading"))
    ('criteria.years_trading', 'criteria."years trading"')
    """
    return ".".join(part if _BARE.fullmatch(part) else f'"{part}"' for part in path)


def shown_value(value: object) -> str:
    """Return a TOML value for a message."""
    match value:
        case bool():
            words = "true" if value else "false"
        case int() | float():
            words = "a number beyond all measure" if abs(value) > LARGEST else shortest(value)
        case str():
            words = f'"{shown(value)}"'
        case date() | time():
            words = value.isoformat()
        case _:
            words = "a list" if isinstance(value, list) else "a table"
    return words


@dataclass(slots=True)
class Notes:
    """The problems and warnings noticed so far in one file.

    Parameters
    ----------
    file : its name, without its folder
    paths : of the places noted, by their keys
    lost : paths of lines that could not be read
    """

    file: str
    problems: list[Problem] = field(default_factory=list)
    warnings: list[Problem] = field(default_factory=list)
    paths: dict[str | None, Path] = field(default_factory=dict)
    lost: frozenset[Path] = frozenset()

    def is_told_of(self, path: Path) -> bool:
        """Return whether a problem of this key was noted, so that it is there and but cannot be read."""
        return path in self.lost or any(problem.place.key == dotted(path) for problem in self.problems)

    def problem(self, code: str, path: Path, found: str, wanted: str) -> None:
        """Note what must be put right."""
        self.problems.append(self._note(code, path, found, wanted))

    def warn(self, code: str, path: Path, found: str, wanted: str) -> None:
        """Note what should be known."""
        self.warnings.append(self._note(code, path, found, wanted))

    def take_back(self, code: str) -> None:
        """Forget the problems of one kind."""
        self.problems = [problem for problem in self.problems if problem.code != code]

    def _note(self, code: str, path: Path, found: str, wanted: str) -> Problem:
        place = Place(file=self.file, key=dotted(path) if path else None)
        self.paths[place.key] = path
        return Problem(code=code, place=place, found=found, wanted=wanted)


def checked_number(value: object, path: Path, notes: Notes) -> float | None:
    """Return a number, or None once its problem is noted."""
    match value:
        case bool():
            notes.problem("true-false-as-number", path, f"{shown_value(value)} is not a number", "Write a number")
        case int() | float() if abs(value) <= LARGEST:
            return float(value)
        case float() if not isfinite(value):
            notes.problem("not-finite", path, f"{value} is not a number to reckon with", "Write a finite number")
        case int() | float():
            notes.problem("number-too-large", path, "the number is too large", "Write a number below 1000000000000000")
        case str():
            wanted = "Write the number without quotes, with a point for decimals and no unit"
            notes.problem("number-in-quotes", path, f"{shown_value(value)} is in quotes, which makes it text", wanted)
        case _:
            notes.problem("not-a-number", path, f"{shown_value(value)} is not a number", "Write a number")
    return None


def checked_text(value: object, path: Path, notes: Notes) -> str | None:
    """Return a text without outer or doubled spaces, or None once its problem is noted."""
    if not isinstance(value, str):
        notes.problem("not-a-text", path, f"{shown_value(value)} is not text", "Write text between straight quotes")
    elif not value.strip():
        notes.problem("empty-text", path, "the text is empty", "Write something between the quotes, or delete the line")
    else:
        return " ".join(value.split())
    return None


@dataclass(frozen=True, slots=True)
class Table:
    """One table with its place in the file.

    Parameters
    ----------
    values : what it holds, by key
    path : its own key
    notes : where its problems go
    """

    values: Mapping[str, object]
    path: Path
    notes: Notes

    def __contains__(self, key: str) -> bool:
        return key in self.values

    def at(self, key: str) -> Path:
        """Return the path of one of its keys."""
        return (*self.path, key)

    def problem(self, code: str, key: str | None, found: str, wanted: str) -> None:
        """Note a problem at one of its keys, or at the table itself."""
        self.notes.problem(code, self.path if key is None else self.at(key), found, wanted)

    def known_keys(self, known: Sequence[str], thing: str) -> None:
        """Note every key that is not among those known."""
        for key in self.values:
            if key not in known:
                close = nearest(key, known) if len(key) < LONGEST_WORD else None
                wanted = f"Write '{close}' if that is meant" if close else f"{thing} can have {listed(known)}"
                self.problem("unknown-key", key, f"'{shown(key)}' is not a key of {thing}", wanted)

    def required(self, keys: Iterable[str], thing: str) -> None:
        """Note every key that is not there and must be."""
        for key in keys:
            if key not in self:
                self.problem("missing-key", key, f"{thing} has no '{key}'", f"Add a line: {key} = …")

    def text(self, key: str) -> str | None:
        """Return a text."""
        return checked_text(self.values[key], self.at(key), self.notes) if key in self else None

    def number(self, key: str) -> float | None:
        """Return a number."""
        return checked_number(self.values[key], self.at(key), self.notes) if key in self else None

    def number_above_zero(self, key: str) -> float | None:
        """Return a number above 0."""
        number = self.number(key)
        if number is not None and number <= 0:
            self.problem("not-above-zero", key, f"{shortest(number)} is not above 0", "Write a number above 0")
            return None
        return number

    def whole(self, key: str, least: int) -> int | None:
        """Return a whole number of at least so much."""
        number = self.number(key)
        if number is None or (number.is_integer() and number >= least):
            return None if number is None else int(number)
        self.problem("not-whole", key, f"{shortest(number)} is not a whole number from {least}",
                     f"Write a whole number, {least} or more")  # fmt: skip
        return None

    def day(self, key: str) -> date | None:
        """Return a day."""
        value = self.values.get(key)
        match value:
            case datetime():
                self.problem("date-with-time", key, f"{value.isoformat(' ')} has a time of day",
                             f"Write the day alone: {value.date().isoformat()}")  # fmt: skip
            case date():
                return value
            case str():
                wanted = f"Write it without quotes, as year-month-day: {_day_in(value) or '2027-05-14'}"
                self.problem("date-in-quotes", key, f"{shown_value(value)} is in quotes, which makes it text", wanted)
            case _ if key in self:
                wanted = "Write a date as year-month-day, without quotes: 2027-05-14"
                self.problem("not-a-date", key, f"{shown_value(value)} is not a date", wanted)
        return None

    def one_of(self, key: str, options: Sequence[Word]) -> Word | None:
        """Return one of these words."""
        value = self.values.get(key)
        if key in self and value not in options:
            close = nearest(value, options) if isinstance(value, str) and len(value) < LONGEST_WORD else None
            choice = listed((shown_value(option) for option in options), "or")
            wanted = f'Write "{close}" if that is meant' if close else f"Write {choice}"
            self.problem("not-an-option", key, f"{shown_value(value)} cannot stand here", wanted)
        return next((option for option in options if option == value), None)

    def list_of(self, key: str) -> list[object] | None:
        """Return a list that holds something."""
        value = self.values.get(key)
        if key not in self or (isinstance(value, list) and value):
            return value if isinstance(value, list) else None
        found = "the list is empty" if value == [] else f"{shown_value(value)} is not a list"
        self.problem("not-a-list", key, found, f"Write a list between square brackets: {key} = [ … ]")
        return None

    def table(self, key: str) -> "Table | None":
        """Return a table within this one."""
        value = self.values.get(key)
        if isinstance(value, dict):
            return Table(value, self.at(key), self.notes)
        if key in self:
            header = dotted(self.at(key))
            self.problem("not-a-table", key, f"{shown_value(value)} is not a table", f"Write it as a table: [{header}]")
        return None


def _day_in(text: str) -> str | None:
    """Return the day in a text that writes it as TOML does, or None."""
    try:
        return date.fromisoformat(text.strip()).isoformat()
    except ValueError:
        return None
