"""Amounts, words and places in a TOML table: exact decimals, ranges in quotes, currencies with a rate.

Enters: a table and a key. Leaves: the value, or None where it is absent or once its problem is noted.
"""

from collections.abc import Container, Iterator, Sequence
from decimal import Decimal
from math import inf
from typing import TypeVar

from scorecard.costing.amounts import MOST, Span, exact
from scorecard.errors import Place
from scorecard.reading.cell_values import read_text
from scorecard.reading.cells import Fault
from scorecard.reading.number_text import NumberRule
from scorecard.reading.toml_codes import currency_at
from scorecard.reading.toml_tables import Table, dotted, shown_value
from scorecard.words import listed, nearest, shortest

Word = TypeVar("Word", bound=str)

MOST_PERCENT = 1000


def tables_at(table: Table, key: str) -> Iterator[Table]:
    """Yield the tables of an array, each with its own place."""
    if key not in table:
        return
    for at, values in enumerate(table.list_of(key) or ()):
        if isinstance(values, dict):
            yield Table(values, (*table.path, f"{key}[{at}]"), table.notes)
        else:
            wanted = f"Write each as a table: [[{dotted(table.at(key))}]]"
            table.problem("not-a-table", key, f"{shown_value(values)} is not a table", wanted)


def words_at(table: Table, key: str, options: Sequence[Word]) -> list[Word]:
    """Return words of a list, or one word by itself; others are noted."""
    found = []
    for word in texts_at(table, key):
        if word in options:
            found.append(next(option for option in options if option == word))
        else:
            close = nearest(word, options)
            choice = listed((shown_value(option) for option in options), "or")
            wanted = f'Write "{close}" if that is meant' if close else f"Write {choice}"
            table.problem("not-an-option", key, f"{shown_value(word)} cannot stand here", wanted)
    return found


def texts_at(table: Table, key: str) -> list[str]:
    """Return the texts of a list, or one text by itself."""
    value = table.values.get(key)
    if key not in table:
        return []
    if isinstance(value, str):
        return [value]
    if isinstance(value, list) and all(isinstance(one, str) for one in value):
        return [str(one) for one in value]
    table.problem("not-a-list", key, f"{shown_value(value)} is not a list of texts", f'Write {key} = ["…", "…"]')
    return []


def truth_at(table: Table, key: str) -> bool | None:
    """Return true or false; None where it is absent, or once its problem is noted."""
    value = table.values.get(key)
    if key in table and not isinstance(value, bool):
        table.problem("not-true-or-false", key, f"{shown_value(value)} cannot stand here", "Write true or false")
        return None
    return value if isinstance(value, bool) else None


def amount_at(table: Table, key: str, most: float | None = None) -> Decimal | None:
    """Return a number of 0 or more, exactly as typed."""
    number = table.number(key)
    if number is None:
        return None
    if number < 0:
        table.problem("below-zero", key, f"{shortest(number)} is below 0", "Write a number that is 0 or more")
        return None
    if number > MOST:
        _note_slip(table, key, shortest(number))
        return None
    if most is not None and number > most:
        table.problem(
            "too-high", key, f"{shortest(number)} is above {shortest(most)}", "Write it in percent, such as 4 for 4 %"
        )
        return None
    return exact(number)


def span_at(table: Table, key: str, unit: str) -> Span | None:
    """Return a number, or the range that a text says."""
    value = table.values.get(key)
    if not isinstance(value, str):
        number = amount_at(table, key)
        return None if number is None else Span(number, number)
    reading = read_text(value, NumberRule(decimal="."))
    if isinstance(reading, Fault):
        table.problem(reading.code, key, reading.found, 'Write a number, or a range in quotes such as "3-15"')
        return None
    if reading.low != reading.low or reading.low < 0:
        wanted = 'Write a number, or a range in quotes such as "3-15"'
        table.problem("not-a-number", key, f"{shown_value(value)} is no number{' of ' + unit if unit else ''}", wanted)
        return None
    if any(MOST < end < inf for end in (reading.low, reading.high)):
        _note_slip(table, key, shown_value(value))
        return None
    return Span.between(reading.low, reading.high)


def _note_slip(table: Table, key: str, shown: str) -> None:
    """Note an amount beyond all measure."""
    wanted = "Look for a digit too many: nothing of a small run is so large"
    table.problem("too-high", key, f"{shown} is above {MOST:,.0f}", wanted)


def percent_at(table: Table, key: str) -> Span | None:
    """Return a percentage, or the range that a text says; None once its problem is noted."""
    span = span_at(table, key, "percent")
    if span is not None and (span.high is None or span.high > MOST_PERCENT):
        found = f"{shown_value(table.values[key])} is above {MOST_PERCENT} percent, or has no end"
        table.problem("too-high", key, found, 'Write it in percent, such as 4 or "0-12"')
        return None
    return span


def rated_currency_at(table: Table, key: str, currencies: Container[str]) -> str | None:
    """Return a currency's code that amounts can be given in; None once its problem is noted."""
    code = currency_at(table, key)
    if code is None or code in currencies:
        return code
    wanted = (
        f"Add a line to [currencies], {code} = … (what one {code} costs in your currency), with the day of the rate"
    )
    table.problem("currency-without-rate", key, f"{code} has no rate", wanted)
    return None


def place_of(table: Table, key: str | None) -> Place:
    """Return the place of a key, or of the table itself."""
    return Place(file=table.notes.file, key=dotted(table.path if key is None else table.at(key)))
