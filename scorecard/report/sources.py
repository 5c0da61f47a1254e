"""What was read: files, day, time, version, cells read as something, warnings."""

from collections.abc import Callable, Sequence
from datetime import datetime

from scorecard import __version__
from scorecard.calculation import Calculation
from scorecard.errors import Problem
from scorecard.frozen import dataclass
from scorecard.report.texts import isolate
from scorecard.words import day_words, plain_command

MOST_TOLD = 100  # warnings of one kind on one page
DIGITS = 16  # of a file's SHA-256; the whole stands in no place where it would be compared by eye


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """One thing noticed while reading: where, and what."""

    place: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Notes:
    """Things noticed, and in words how many are left out; None where none are."""

    shown: tuple[Note, ...]
    more: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Sources:
    """What was read, as written."""

    files: tuple[tuple[str, str], ...]
    as_of: str
    made: str
    version: str
    set_aside: Notes
    readings: Notes
    warnings: Notes


def sources_of(calculation: Calculation, made: datetime, command: Callable[[str], str] = plain_command) -> Sources:
    """Return what was read, when and by which version.

    Parameters
    ----------
    calculation : of a case on a day
    made : when the page is made
    command : from "check" to what this user types for it
    """
    case = calculation.case
    return Sources(
        files=tuple((isolate(one.name), one.digest[:DIGITS]) for one in case.sources),
        as_of=day_words(calculation.as_of),
        made=f"{day_words(made.date())}, {made:%H:%M} {made.tzname() or ''}".strip(),
        version=__version__,
        set_aside=_notes(case.set_aside, command),
        readings=_notes([one for one in case.warnings if one.code == "read-as"], command),
        warnings=_notes([one for one in case.warnings if one.code != "read-as"], command),
    )


def _notes(found: Sequence[Problem], command: Callable[[str], str]) -> Notes:
    shown = tuple(_note(one) for one in found[:MOST_TOLD])
    more = len(found) - len(shown)
    return Notes(shown=shown, more=f"{more} more; to see them all: {command('check')}" if more else None)


def _note(one: Problem) -> Note:
    words = f"{one.found}, {one.wanted}." if one.code == "read-as" else f"{one.found}. {one.wanted}."
    return Note(place=isolate(str(one.place)), words=isolate(words, 400))
