"""Codes of countries and currencies in a TOML table, as values and as keys.

Enters: a table and a key. Leaves: the code, or None where it is absent or once its problem is noted.
"""

from scorecard.codes import COUNTRIES, CURRENCY_DECIMALS, country_offered, currency_offered
from scorecard.reading.toml_tables import Table, shown_value


def country_at(table: Table, key: str) -> str | None:
    """Return a country's code."""
    typed = table.text(key)
    if typed is None or typed in COUNTRIES:
        return typed
    _refuse_country(table, key, typed, shown_value(typed))
    return None


def is_country_key(table: Table, key: str) -> bool:
    """Say whether a key is a country's code; the problem of another is noted."""
    if key not in COUNTRIES:
        _refuse_country(table, key, key, f"'{key}'")
    return key in COUNTRIES


def _refuse_country(table: Table, key: str, typed: str, shown: str) -> None:
    offered = country_offered(typed)
    wanted = f'Write "{offered}" for {COUNTRIES[offered]}' if offered else 'Write its two letters, such as "IE" or "GB"'
    table.problem("not-a-country", key, f"{shown} is not a country's code (ISO 3166-1)", wanted)


def currency_at(table: Table, key: str) -> str | None:
    """Return a currency's code, whether it has a rate or not."""
    typed = table.text(key)
    if typed is None or typed in CURRENCY_DECIMALS:
        return typed
    offered = currency_offered(typed)
    wanted = f'Write "{offered}"' if offered else 'Write its three letters, such as "EUR" or "GBP"'
    found = f"{shown_value(typed)} is not the code of a currency in use (ISO 4217)"
    table.problem("not-a-currency", key, found, wanted)
    return None
