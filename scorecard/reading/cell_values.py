"""A cell's value as an answer: a number, a range, a choice or unknown, or else the fault that says what to write.

Enters: a common cell and what its column takes. Leaves: a reading. Never a guess: what can be read in two ways, or only
roughly, is a fault.
"""

import re
from datetime import date, time, timedelta
from decimal import Decimal as Exact
from math import inf, isfinite, nan
from typing import NamedTuple

from scorecard.reading.cells import CellError, Fault, NoResult, PercentNumber, Value, as_text, quoted
from scorecard.reading.number_text import (
    AS_TEXT,
    COUNT_YEARS,
    WRITE_A_NUMBER,
    NumberRule,
    is_year,
    not_a_number,
    read_amount,
    tidy,
)
from scorecard.reading.patterns import pattern
from scorecard.words import listed, nearest, nearest_first, printable, shortest

OR_EMPTY = ", or leave the cell empty"
UNKNOWN_WORDS = frozenset({"", "-", "–", "—", "−", "?", "n/a", "unknown"})
LONGEST_NUMBER = 100  # so that no text is beyond what arithmetic can hold
DASHES = pattern(r"[-–—‐‑−]")
NO_MATTER = pattern(r"[-–—‐‑−\s.,;'’]+")  # signs that tell no two choices apart, unless there are digits
AT_LEAST = pattern(r"(?:at least|more than|over|>=|≥|>)\s*(.+)", re.IGNORECASE)
AT_MOST = pattern(r"(?:up to|at most|less than|under|<=|≤|<)\s*(.+)", re.IGNORECASE)
PLUS = pattern(r"(.*\d)\s*\+(\s*[^\d+]*)|(.*\d\s*[^\d+]*)\+")
FROM = pattern(r"from\s+(.+)", re.IGNORECASE)
SHEET_ERROR = pattern(r"#(?:N/A|REF!|DIV/0!|VALUE!|NAME\?|NUM!|NULL!|SPILL!|CALC!|GETTING_DATA)", re.IGNORECASE)


class Reading(NamedTuple):
    """What a cell says: both ends of a range, infinite where open, NaN for unknown.

    ``read_as`` says in words how a text was read that is not a plain number, ``warning`` what is odd about the reading.
    """

    low: float
    high: float
    read_as: str | None = None
    warning: Fault | None = None


UNKNOWN = Reading(nan, nan)


def no_value(value: Value) -> Fault | None:
    """Return the fault of a cell without a value: a spreadsheet error, or a formula whose result was never stored."""
    if isinstance(value, NoResult):
        wanted = "Open and save the file once in your spreadsheet program"
        return Fault("formula-without-result", "a formula has no stored result", wanted)
    if isinstance(value, CellError) or (isinstance(value, str) and SHEET_ERROR.fullmatch(value.strip())):
        found = f"{quoted(value)} is an error of the spreadsheet"
        return Fault("spreadsheet-error", found, f"Correct its formula{OR_EMPTY}")
    return None


def _no_number(value: Value) -> Fault | None:
    """Return the fault of a cell that cannot be a number whatever its column is."""
    if isinstance(value, bool):
        return Fault("true-or-false", f"{quoted(value)} is not a number", WRITE_A_NUMBER)
    if isinstance(value, date | time | timedelta):
        found = f"{quoted(value)} is a date or time, where a number is due"
        return Fault("date-for-number", found, f"{WRITE_A_NUMBER}; {AS_TEXT}")
    return no_value(value)


def read_number(value: Value, rule: NumberRule) -> Reading | Fault:
    """Return the number, the range or the unknown that a cell holds.

    Parameters
    ----------
    value : the common cell
    rule : what the column takes

    Returns
    -------
    The reading, in the column's unit; or the fault.
    """
    reading = _read(value, rule)
    bounded = reading if isinstance(reading, Fault) else _bounded(value, reading, rule)
    return bounded if isinstance(bounded, Fault) else bounded._replace(warning=_not_whole(value, bounded, rule))


def _read(value: Value, rule: NumberRule) -> Reading | Fault:
    """Return what a cell says, before its bounds are looked at."""
    if value is None:
        return UNKNOWN
    fault = _no_number(value)
    if fault:
        return fault
    if isinstance(value, str):
        return read_text(value, rule)
    if not isinstance(value, int | float) or not _is_finite(value):
        return Fault("not-finite", f"{quoted(value)} is not a number that can be counted with", WRITE_A_NUMBER)
    if isinstance(value, PercentNumber) and rule.unit.is_percent:
        number = float(Exact(repr(float(value))) * 100)
        return Reading(number, number, shortest(number))
    return Reading(float(value), float(value))


def _is_finite(value: float) -> bool:
    """Say whether a number is one that arithmetic can hold."""
    try:
        return isfinite(value)
    except OverflowError:
        return False


def read_text(text: str, rule: NumberRule) -> Reading | Fault:
    """Return the number, the range or the unknown that a text says."""
    plain = tidy(text)
    if plain.casefold() in UNKNOWN_WORDS:
        return UNKNOWN
    if len(plain) > LONGEST_NUMBER:
        return not_a_number(plain, rule)
    number = read_amount(plain, rule)
    if not isinstance(number, Fault):
        return Reading(number, number, None if rule.is_plain(plain) else shortest(number))
    if number.code == "rough-number":
        return number
    return _open_range(plain, rule) or _closed_range(plain, rule) or number


def _open_range(text: str, rule: NumberRule) -> Reading | Fault | None:
    """Return the reading of "50+", "at least 50", "<24", "from 100" and the like; None for another text."""
    for start, is_low in ((AT_LEAST, True), (AT_MOST, False)):
        match = start.fullmatch(text)
        if match:
            return _opened(_end_of(text, match[1], rule), is_low, rule)
    match = PLUS.fullmatch(text)
    if match:
        return _opened(_end_of(text, match[3] or match[1] + match[2], rule), True, rule)
    match = FROM.fullmatch(text)
    return _from(text, _end_of(text, match[1], rule), rule) if match else None


def _end_of(text: str, part: str, rule: NumberRule) -> float | Fault:
    """Return the one number of an open range, or its fault, which names the whole range."""
    end = read_amount(part, rule)
    return _told_whole(text, part, end) if isinstance(end, Fault) else end


def _opened(end: float | Fault, is_low: bool, rule: NumberRule) -> Reading | Fault:
    """Return a range that is open at one end; of a minimum order, which seldom is, how to write the number itself."""
    if isinstance(end, Fault):
        return end
    if is_low:
        itself = f"; if {shortest(end)} is the minimum itself, write {shortest(end)}" if rule.is_minimum else ""
        return Reading(end, inf, f"{shortest(end)} or more{itself}")
    return Reading(-inf, end, f"{shortest(end)} or less")


def _from(text: str, number: float | Fault, rule: NumberRule) -> Reading | Fault:
    """Return the number of "from 100" where it is a minimum order; elsewhere it may mean one of two things."""
    if isinstance(number, Fault):
        return number
    if rule.is_minimum:
        return Reading(number, number, shortest(number))
    found = f"{quoted(text)} does not say whether more is meant"
    return Fault("from-number", found, f'Write "at least {shortest(number)}", or {shortest(number)} alone')


def _closed_range(text: str, rule: NumberRule) -> Reading | Fault | None:
    """Return the reading of "3-5" and "20 to 25"; None where no pair of numbers stands on either side."""
    for halves in _halves(text):
        low, high = (read_amount(half, rule) for half in halves)
        if not isinstance(low, Fault) and not isinstance(high, Fault):
            return _ordered(text, low, high)
        faults = [(half, end) for half, end in zip(halves, (low, high), strict=True) if isinstance(end, Fault)]
        if all(fault.code != "not-a-number" for _, fault in faults):
            return _told_whole(text, *faults[0])
    return None


def _halves(text: str) -> list[tuple[str, str]]:
    """Return each way to part a text in two at a dash or the word "to"."""
    cuts = [match.span() for match in re.finditer(r"\s(?:to)\s", text, re.IGNORECASE)]
    cuts += [match.span() for match in DASHES.finditer(text)]
    parts = ((text[:start].strip(), text[end:].strip()) for start, end in cuts)
    return [(left, right) for left, right in parts if left and right]


def _told_whole(text: str, half: str, fault: Fault) -> Fault:
    """Return the fault of one end of a range, naming the whole range as typed."""
    if fault.code == "ambiguous-number":
        return fault._replace(found=f"in {quoted(text)} {fault.found}")
    wanted = fault.wanted.partition(": ")[0] if fault.code == "other-unit" else fault.wanted  # not one end as days
    return fault._replace(found=fault.found.replace(quoted(half), quoted(text)), wanted=wanted)


def _ordered(text: str, low: float, high: float) -> Reading | Fault:
    """Return a range whose ends stand in the right order."""
    if low > high:
        wanted = f"Write {shortest(high)}{'-' if high >= 0 else ' to '}{shortest(low)}"
        return Fault("reversed-range", f"{quoted(text)} begins with its greater end", wanted)
    both = f"{shortest(low)} to {shortest(high)}"
    return Reading(low, high, both if low < high else shortest(low))


def _bounded(value: Value, reading: Reading, rule: NumberRule) -> Reading | Fault:
    """Return a reading whose ends lie where the column's numbers may lie."""
    ends = [end for end in (reading.low, reading.high) if isfinite(end)]
    if rule.counts and any(end < 0 for end in ends):
        found = f"{quoted(value)} is below 0, which no number of {rule.counts} is"
        return Fault("below-zero", found, "Write a number that is 0 or more, or leave the cell empty")
    if rule.unit.is_of_years and any(map(is_year, ends)):
        found = f"{quoted(value)} looks like a year of the calendar, where a number of years is due"
        return Fault("year-for-years", found, COUNT_YEARS)
    if rule.within and any(not rule.within[0] <= end <= rule.within[1] for end in ends):
        low, high = (shortest(end) for end in rule.within)
        found = f"{quoted(value)} is outside {low} to {high}"
        return Fault("outside-within", found, f"Write a number from {low} to {high}, or leave the cell empty")
    return reading


def _not_whole(value: Value, reading: Reading, rule: NumberRule) -> Fault | None:
    """Return what is odd about a broken number of whole things, and about thousands that were taken for decimals."""
    if not rule.unit.is_of_whole_things:
        return None
    doubtful = rule.thousands_as_decimals(tidy(value)) if isinstance(value, str) and reading.read_as else None
    if doubtful:
        mark = {".": "a point", ",": "a comma"}[rule.decimal or "."]
        found = f"{quoted(value)} counts as {reading.read_as}, since the decimal mark is {mark} here"
        return Fault("not-whole", found, f"If {re.sub('[.,]', '', doubtful)} is meant, write it without a mark")
    broken = next((end for end in (reading.low, reading.high) if isfinite(end) and not end.is_integer()), None)
    if broken is None:
        return None
    thousand = broken * 1000
    hint = f"; if it was {shortest(thousand)}, write that without a mark" if thousand.is_integer() else ""
    return Fault("not-whole", f"{quoted(value)} is not a whole number{rule.of_unit}", f"Write a whole number{hint}")


def read_choice(value: Value, choices: tuple[str, ...]) -> Reading | Fault:
    """Return the position of a cell's choice among those permitted, ignoring case and outer space.

    Parameters
    ----------
    value : the common cell; a number is taken as its shortest text
    choices : as the criteria file spells them
    """
    text = as_text(value).strip().casefold()
    positions = {choice.strip().casefold(): at for at, choice in reversed(list(enumerate(choices)))}
    if not isinstance(value, CellError | NoResult | date | time | timedelta) and text in positions:
        at = float(positions[text])
        return Reading(at, at)
    if text in UNKNOWN_WORDS:
        return UNKNOWN
    return no_value(value) or _likely_choice(value, text, choices)


def _likely_choice(value: Value, text: str, choices: tuple[str, ...]) -> Reading | Fault:
    """Return the one choice that differs by hyphens, spaces and stops alone, or the fault that offers the nearest."""
    alike = [at for at, choice in enumerate(choices) if _letters(choice) == _letters(text) != ""]
    if len(alike) == 1 and isinstance(value, str):
        at = alike[0]
        return Reading(float(at), float(at), quoted(choices[at]))
    first, *others = [f"'{printable(choice)}'" for choice in nearest_first(text, choices)]
    permitted = listed([first, *others], "or")
    if others and nearest(text, choices):
        permitted = f"{first}, if that is meant, or else {listed(others, 'or')}"
    return Fault("not-a-choice", f"{quoted(value)} is not one of the choices", f"Write {permitted}")


def _letters(text: str) -> str:
    """Return what must be equal of two texts that are the same choice; "" where there are digits, which signs part."""
    return "" if any(map(str.isdigit, text)) else NO_MATTER.sub("", text.casefold())
