"""Editing a criteria file with comments and order kept: weights written into it, or what the next order begins with.

Where a file is written to, it stays as it was beside itself.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from datetime import date
from functools import reduce
from pathlib import Path
from typing import Any

import tomlkit
from tomlkit.exceptions import ParseError
from tomlkit.items import Table

from scorecard.costing.quotes import STALE_DAYS
from scorecard.errors import WriteError
from scorecard.frozen import dataclass
from scorecard.locks import alone_in
from scorecard.whole_files import keep_beside, read_whole, write_whole
from scorecard.words import listed

CHARGED = ("import", "shipping", "cost")  # tables that hold charges

RATES = (("currencies",), ("currencies", "for_one"))  # where they stand, by what one costs and by what one buys
SUMS = ("amount", "minimum", "maximum")  # of a charge: in its currency
BOUNDS = (("minimum", "at least"), ("maximum", "at most"))

CODE = re.compile(r"[A-Za-z]{3}$")  # of a currency: a key of [currencies] that is a rate
_CHARGE = re.compile(r"\s*\[\[\s*(import|shipping|cost)\s*\.\s*charges\s*\]\]")
_KEY = re.compile(r"\s*[\w\"'-]+\s*=")


def save_weights(path: Path, weights: Mapping[str, float]) -> Path:
    """Write weights into a criteria file that was read without problems.

    Parameters
    ----------
    path : of the criteria file
    weights : as typed, by criterion key

    Returns
    -------
    where the file as it was is kept

    Raises
    ------
    WriteError
        If it has changed so that these weights have no place in it any more, or cannot be written.
    """
    with alone_in(path.parent):
        try:
            text = _with_weights(read_whole(path).decode("utf-8"), weights)
        except (OSError, ValueError, KeyError, TypeError) as error:
            changed = f"{path} has changed since it was read. Nothing was written: run the same command again."
            raise WriteError(changed) from error
        kept = keep_beside(path)
        write_whole(path, text.encode("utf-8"))
    return kept


def _with_weights(text: str, weights: Mapping[str, float]) -> str:
    mark = "\N{ZERO WIDTH NO-BREAK SPACE}" if text.startswith("\N{ZERO WIDTH NO-BREAK SPACE}") else ""
    document = tomlkit.parse(text.removeprefix(mark))
    for key, weight in weights.items():
        _set(document["criteria"][key], weight)
    return mark + tomlkit.dumps(document)


def _set(table: Table, weight: float) -> None:
    table["weight"] = int(weight) if float(weight).is_integer() else weight


@dataclass(frozen=True, slots=True)
class TakenOut:
    """A figure that was taken out of a criteria file: what it was, as it stood, at which key, and of which day."""

    what: str
    figure: str
    key: str
    on: date | None = None


def for_next_order(text: str, as_of: date) -> tuple[str, tuple[TakenOut, ...]]:
    """Return a criteria file for the next order of the same goods, comments kept, and what was taken out of it.

    Charges and days of ways come out, since they are prices and lead times of last time; so do rates of duty, import
    tax and currencies that are old, days that are over, the order's own number, and whose sample was paid.

    Parameters
    ----------
    text : of a file that was read without problems
    as_of : the day that stands for today
    """
    text = text.removeprefix("\N{ZERO WIDTH NO-BREAK SPACE}")
    before = tomlkit.parse(text)
    charges, days = tuple(_charges(before)), tuple(_old_days(before, as_of))
    for name, key, _ in days:
        text = _with_key_as_comment(text, name, key)
    document = tomlkit.parse(_with_charges_as_comments(text))
    for name in CHARGED:
        _pop(document, (name,), "charges")
    for name, key, _ in days:
        _pop(document, (name,), key)
    taken = [*charges, *_without_days(document), *_without_old_rates(document, as_of)]
    taken += [TakenOut(f"{key} of last time", day.isoformat(), f"{key} of [{name}]") for name, key, day in days]
    taken += _without_duty(document, as_of)
    _pop(document, ("order",), "number")
    _pop(document, ("cost",), "sampled")
    return tomlkit.dumps(document), tuple(taken)


def _at(document: tomlkit.TOMLDocument, path: Iterable[str]) -> Any:
    """Return the table at a path; an empty one where there is none."""
    return reduce(lambda table, name: table.get(name, {}), path, document)


def _pop(document: tomlkit.TOMLDocument, path: Iterable[str], key: str) -> Any:
    """Take a key out of a table and return what it said.

    The table is looked up anew each time: of one that is written in several places, the library's view is wrong once
    one of them is empty.
    """
    return _at(document, path).pop(key, None)


def _charges(document: tomlkit.TOMLDocument) -> Iterator[TakenOut]:
    home = document.get("brief", {}).get("currency", "")
    for name in CHARGED:
        for charge in document.get(name, {}).get("charges", ()):
            figure = _charge_words({"currency": home, "per": "order", "of": "the goods"} | charge)
            yield TakenOut(
                f"charge: {charge.get('name', 'without a name')}", figure, f"[[{name}.charges]]", _day_of(charge)
            )


def _charge_words(charge: Mapping[str, Any]) -> str:
    """Return all that makes the sum of a charge."""
    sums = {key: f"{charge[key]} {charge['currency']}".rstrip() for key in SUMS if key in charge}
    figures = [f"{sums['amount']} per {charge['per']}"] if "amount" in sums else []
    figures += [f"{charge['percent']} % of {charge['of']}"] if "percent" in charge else []
    bounds = "".join(f", {words} {sums[key]}" for key, words in BOUNDS if key in sums)
    ways = charge.get("ways", ())
    by = f", by {listed([ways] if isinstance(ways, str) else ways)}" if ways else ""
    return f"{' and '.join(figures)}{bounds}{by}"


def _day_of(table: Mapping[str, Any]) -> date | None:
    """Return the day that a table of figures is of."""
    dated = table.get("on")
    return dated if isinstance(dated, date) else None


def _with_charges_as_comments(text: str) -> str:
    """Return a text whose charges in double brackets are comments; as it was where more or less than these would be.

    They would take the comments below them along, were they cut out.
    """
    lines, is_charge = [], False
    for line in text.splitlines(keepends=True):
        is_charge = bool(_CHARGE.match(line)) or (is_charge and bool(_KEY.match(line)))
        lines.append(f"# {line}" if is_charge else line)
    commented = "".join(lines)
    try:
        return commented if tomlkit.parse(commented).unwrap() == _without_blocks(text) else text
    except ParseError:
        return text


def _without_blocks(text: str) -> dict[str, object]:
    """Return what a text says but for its charges in double brackets; a table that held nothing else is gone too."""
    values = tomlkit.parse(text).unwrap()
    blocks = {found[1] for found in map(_CHARGE.match, text.splitlines()) if found}
    for name in blocks:
        values[name].pop("charges", None)
        if not values[name] and not re.search(rf"^\s*\[\s*{name}\s*\]", text, re.MULTILINE):
            del values[name]
    return dict(values)


def _without_days(document: tomlkit.TOMLDocument) -> Iterator[TakenOut]:
    for way, rule in list(_at(document, ("shipping",)).items()):
        if isinstance(rule, dict) and "days" in rule:
            path, day, is_last = ("shipping", way), _day_of(rule), set(rule) <= {"days", "on", "source"}
            yield TakenOut(
                f"journey by {way}", f"{_pop(document, path, 'days')} days", f"days of [shipping.{way}]", day
            )
            if is_last:
                _pop(document, path, "on")


def _without_old_rates(document: tomlkit.TOMLDocument, as_of: date) -> Iterator[TakenOut]:
    """Take out rates without a day or an old one, but for those of currencies that something else is given in."""
    dated = _day_of(_at(document, RATES[0]))
    if _is_recent(dated, as_of):
        return
    home = _at(document, ("brief",)).get("currency", "")
    for path in RATES:
        for code in [key for key in _at(document, path) if CODE.match(key) and not _is_given_in(document, key)]:
            one, other = (code, home) if path == RATES[0] else (home, code)
            figure = f"{_pop(document, path, code)} {other} for 1 {one}"
            yield TakenOut(f"rate of {code}", figure, f"{code} of [{'.'.join(path)}]", dated)
    if not any(CODE.match(key) for path in RATES for key in _at(document, path)):
        _pop(document, RATES[0], "on")  # the day of the rates that came out, not of those to come


def _is_recent(dated: date | None, as_of: date) -> bool:
    return dated is not None and (as_of - dated).days <= STALE_DAYS


def _is_given_in(document: tomlkit.TOMLDocument, code: str) -> bool:
    """Say whether any other figure of the file is in a currency."""
    return bool(re.search(rf"""=\s*["']{code}["']""", tomlkit.dumps(document), re.IGNORECASE))


def _old_days(document: tomlkit.TOMLDocument, as_of: date) -> Iterator[tuple[str, str, date]]:
    """Yield the table, the key and the day of every day that is over."""
    for name, key in (("brief", "need_by"), ("order", "deliver_by")):
        day = document.get(name, {}).get(key)
        if isinstance(day, date) and day < as_of:
            yield name, key, day


def _with_key_as_comment(text: str, name: str, key: str) -> str:
    """Return a text with the line of a key as a comment, to be written anew; as it was where no such line stands."""
    lines, is_within = text.splitlines(keepends=True), False
    for at, line in enumerate(lines):
        if line.lstrip().startswith("["):
            is_within = bool(re.match(rf"\s*\[\s*{name}\s*\]", line))
        elif is_within and re.match(rf"\s*{key}\s*=", line):
            return "".join([*lines[:at], f"# {line}", *lines[at + 1 :]])
    return text


def _without_duty(document: tomlkit.TOMLDocument, as_of: date) -> Iterator[TakenOut]:
    """Take out rates of duty and import tax without a day or with an old one: they are to be looked up anew."""
    path = ("import",)
    dated = _day_of(_at(document, path))
    if _is_recent(dated, as_of):
        return
    for key, what in (("duty_percent", "duty"), ("tax_percent", "import tax")):
        if key in _at(document, path):
            yield TakenOut(what, f"{_pop(document, path, key)} %", f"{key} of [import]", dated)
    for code, percent in (_pop(document, path, "duty_by_country") or {}).items():
        yield TakenOut(f"duty on goods from {code}", f"{percent} %", "duty_by_country of [import]", dated)
    if "freight_in_base_percent" not in _at(document, path):
        _pop(document, path, "on")
