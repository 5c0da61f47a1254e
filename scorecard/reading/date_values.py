"""A cell's value as a day: a date cell, or text in ISO form; anything else is asked about."""

import re
from datetime import date, timedelta
from math import isnan, nan

from scorecard.reading.cell_values import UNKNOWN_WORDS, no_value
from scorecard.reading.cells import Fault, Value, quoted
from scorecard.reading.number_text import tidy
from scorecard.reading.patterns import pattern

ISO_DAY = pattern(r"(\d{4}-\d{2}-\d{2})(?:[ T]\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?)?")
THREE_NUMBERS = pattern(r"(\d{1,4})[-/. ]+(\d{1,2})[-/. ]+(\d{1,4})")
MONTHS = ("january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november",
          "december")  # fmt: skip
IN_WORDS = pattern(  # 30 Nov 2026, 30th of November 2026, Nov 30, 2026, with a weekday before
    r"(?:[a-z]{3,9}\.?,? )?(?:(?P<day>\d{1,2})(?:st|nd|rd|th)?\.?[ -]?(?:of )?)?(?P<month>[a-z]{3,9})\.?,?[ -]?"
    r"(?:(?P<after>\d{1,2})(?:st|nd|rd|th)?,? )?(?P<year>\d{4})",
    re.IGNORECASE,
)
SERIAL_START = date(1899, 12, 30)  # day 0 of a spreadsheet's day count, from 1900-03-01 on
SERIAL_DAYS = range(61, 109_575)  # 1900-03-01 to 2199-12-31
WRITE_A_DAY = "Write the day as YYYY-MM-DD, such as 2026-11-25, or leave the cell empty"


def read_day(value: Value) -> float | Fault:
    """Return the day that a cell holds.

    Parameters
    ----------
    value : the common cell

    Returns
    -------
    The day as ``date.toordinal``, NaN for unknown; or the fault.
    """
    if isinstance(value, date):
        return float(value.toordinal())
    if value is None:
        return nan
    fault = no_value(value)
    if fault:
        return fault
    if isinstance(value, str):
        return _day_of_text(value)
    if isinstance(value, int | float) and not isinstance(value, bool):
        return _day_number(value)
    return Fault("not-a-date", f"{quoted(value)} is not a day", WRITE_A_DAY)


def _day_of_text(text: str) -> float | Fault:
    """Return the day of a text in ISO form."""
    plain = tidy(text)
    if plain.casefold() in UNKNOWN_WORDS:
        return nan
    match = ISO_DAY.fullmatch(plain)
    if not match:
        return _not_iso(plain)
    try:
        return float(date.fromisoformat(match[1]).toordinal())
    except ValueError:
        return Fault("not-a-date", f"{quoted(text)} is no day of the calendar", WRITE_A_DAY)


def _not_iso(text: str) -> Fault:
    """Return the fault of a day in another form, with each day that it can mean."""
    match = THREE_NUMBERS.fullmatch(text)
    days = _meant(*(int(part) for part in match.groups())) if match else _in_words(text)
    if not days:
        return Fault("not-a-date", f"{quoted(text)} is not a day", WRITE_A_DAY)
    spelt = " or ".join(f"{day.day} {day:%B} {day.year}" for day in days)
    if len(days) == 1:
        wanted = f"If {spelt} is meant, write {days[0].isoformat()}"
        return Fault("date-in-another-form", f"{quoted(text)} is a day in another form", wanted)
    wanted = f"Write {' or '.join(day.isoformat() for day in days)}"
    return Fault("ambiguous-date", f"{quoted(text)} can be {spelt}", wanted)


def _in_words(text: str) -> list[date]:
    """Return the day of a text with the name of its month; none where it has none, or no single day.

    Examples
    --------
    >>> _in_words("30 Nov 2026"), _in_words("Nov 2026"), _in_words("30 Nov")
    ([datetime.date(2026, 11, 30)], [], [])
    """
    match = IN_WORDS.fullmatch(text)
    if not match or bool(match["day"]) == bool(match["after"]):
        return []
    word = match["month"].casefold()
    months = [at for at, name in enumerate(MONTHS, start=1) if name.startswith(word)]
    if len(months) != 1:
        return []
    return _meant(int(match["year"]), months[0], int(match["day"] or match["after"]))


def _meant(first: int, second: int, third: int) -> list[date]:
    """Return each day that three numbers can mean: day or month first, or year first."""
    orders = [(first, second, third)] if first > 31 else [(third, second, first), (third, first, second)]
    days = []
    for year, month, day in orders:
        try:
            days.append(date(year + 2000 if year < 100 else year, month, day))
        except ValueError:
            continue
    return list(dict.fromkeys(days))


def _day_number(value: float) -> Fault:
    """Return the fault of a bare number, offering the day that a spreadsheet counts so."""
    wanted = WRITE_A_DAY
    if value in SERIAL_DAYS:
        day = SERIAL_START + timedelta(days=int(value))
        wanted = f"If {day.isoformat()} is meant, format the cell as a date or write that"
    return Fault("number-for-date", f"{quoted(value)} is a number, where a day is due", wanted)


def day_text(day: float) -> str:
    """Return a day as ISO text, "" for NaN."""
    return "" if isnan(day) else date.fromordinal(int(day)).isoformat()
