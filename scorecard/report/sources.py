"""What was read: files, day, time, version, cells read as something, warnings; and what the page does not say."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from scorecard import __version__
from scorecard.calculation import Calculation
from scorecard.errors import Problem
from scorecard.report.opening import day_words
from scorecard.report.texts import isolate

MOST_TOLD = 100  # warnings of one kind on one page
DIGITS = 16  # of a file's SHA-256; the whole stands in no place where it would be compared by eye

CAUTIONS = (
    "This page ranks the answers that were written down. It does not vouch for any maker, nor for what a maker says.",
    "Product safety, rules for goods that touch food, customs, tax and ways of paying follow local rules: ask the "
    "authority, or somebody licensed to advise, before money is at stake.",
)


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
    cautions: tuple[str, ...]


def sources_of(calculation: Calculation, made: datetime) -> Sources:
    """Return what was read, when and by which version.

    Parameters
    ----------
    calculation : of a case on a day
    made : when the page is made
    """
    case = calculation.case
    return Sources(
        files=tuple((isolate(one.name), one.digest[:DIGITS]) for one in case.sources),
        as_of=day_words(calculation.as_of),
        made=f"{day_words(made.date())}, {made:%H:%M} {made.tzname() or ''}".strip(),
        version=__version__,
        set_aside=_notes(case.set_aside),
        readings=_notes([one for one in case.warnings if one.code == "read-as"]),
        warnings=_notes([one for one in case.warnings if one.code != "read-as"]),
        cautions=CAUTIONS,
    )


def _notes(found: Sequence[Problem]) -> Notes:
    shown = tuple(_note(one) for one in found[:MOST_TOLD])
    more = len(found) - len(shown)
    return Notes(shown=shown, more=f"{more} more: scorecard check lists them all." if more else None)


def _note(one: Problem) -> Note:
    return Note(place=isolate(str(one.place)), words=isolate(f"{one.found}. {one.wanted}.", 400))
