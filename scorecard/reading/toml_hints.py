"""What to write instead of a line that is no TOML, told from how the line looks."""

import re
from collections.abc import Callable

from scorecard.reading.toml_scan import Statement

_SHOWN = 60
MONTHS_OF_A_YEAR = 12
_GENERAL = 'Write key = value: text between straight double quotes ("), a number with a point, true or false'
_DATE = re.compile(r"\d{1,4}\s*[./-]\s*\d{1,2}\s*[./-]\s*\d{1,4}|\d{1,2}\.?\s+[A-Za-z]{3,}\.?\s+\d{4}")
_NUMBER_AND_WORDS = re.compile(r"([+-]?\d[\d_]*(?:\.\d+)?)\s*[^\W\d_].*")


def shown(text: str, length: int = _SHOWN) -> str:
    r"""Return a text for a message: on one line, in printable characters, cut where it is long.

    Examples
    --------
    >>> shown("a\tb" + "c" * 90, 8)
    'a bcccc…'
    """
    words = " ".join(text[: 4 * length].split())
    plain = "".join(letter if letter.isprintable() else "\N{REPLACEMENT CHARACTER}" for letter in words)
    return plain if len(plain) <= length else plain[: length - 1] + "…"


def shown_line(text: str) -> str:
    """Return the first line of a statement for a message."""
    return shown(text.strip().partition("\n")[0])


def hint(text: str, statement: Statement) -> str:
    """Return what to write instead of a statement that cannot be read."""
    if statement.is_header:
        return "Write a table's name between square brackets, alone on its line: [criteria.years_trading]"
    if not statement.is_balanced:
        return "Close every bracket with its own kind: each [ with a ], each { with a }"
    key, equals, value = text.strip().partition("=")
    if not equals:
        return "Write it as key = value, or put a # before a remark" if text.strip() else _GENERAL
    return _value_hint(key.strip(), re.sub(r"\s#.*$", "", value).strip())


def _value_hint(key: str, value: str) -> str:
    """Return what to write instead of a value."""
    first = shown(key, 30)
    rules: tuple[tuple[Callable[[], object], str], ...] = (
        (lambda: not value, f"Write a value after the equals sign, or delete the line: {first} ="),
        (lambda: _DATE.fullmatch(value), _date_hint(value)),
        (lambda: _NUMBER_AND_WORDS.fullmatch(value), "Write the number alone, without a unit"),
        (lambda: value[0].isalpha(), f'Put text between straight double quotes: {first} = "{shown(value, 40)}"'),
        (lambda: "\\" in value, "Write every backslash in a text twice, or put the text between single quotes (')"),
        (lambda: value[0] in "\"'" and value.count(value[0]) % 2, "Close the text with the quote that opened it"),
    )
    return next((wanted for applies, wanted in rules if applies()), _GENERAL)


def _date_hint(value: str) -> str:
    """Return how to write a date; of one in the right form, which part of it there is not.

    Examples
    --------
    >>> _date_hint("2027-24-04"), _date_hint("2027-02-30")
    ('There is no month 24: write year-month-day, perhaps 2027-04-24', 'There is no day 30 in month 2 of 2027')
    """
    form = re.fullmatch(r"(\d{4})-(\d{2})-(\d{2})", value)
    if form is None:
        return "Write a date as year-month-day, without quotes: 2027-05-14"
    year, month, day = form.groups()
    if not 1 <= int(month) <= MONTHS_OF_A_YEAR:
        turned = f", perhaps {year}-{day}-{month}" if 1 <= int(day) <= MONTHS_OF_A_YEAR else ""
        return f"There is no month {int(month)}: write year-month-day{turned}"
    return f"There is no day {int(day)} in month {int(month)} of {int(year)}"
