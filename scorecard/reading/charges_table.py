"""Charges that the user gives: the arrays [[shipping.charges]], [[import.charges]] and [[cost.charges]].

Enters: the table that holds the array. Leaves: the charges; one with a problem is left out.
"""

from collections.abc import Container
from decimal import Decimal
from typing import Literal

from scorecard.costing.charges import CHARGE_OF, PARTS, Charge, Part
from scorecard.costing.quotes import WAYS
from scorecard.reading.toml_amounts import (
    MOST_PERCENT,
    amount_at,
    place_of,
    rated_currency_at,
    span_at,
    tables_at,
    truth_at,
    words_at,
)
from scorecard.reading.toml_tables import Table, shown_value
from scorecard.words import listed

CHARGE_KEYS = (
    "name",
    "pays_for",
    "amount",
    "per",
    "currency",
    "percent",
    "of",
    "minimum",
    "maximum",
    "ways",
    "in_tax_base",
    "group",
    "on",
    "source",
)
PER: tuple[Literal["order", "piece"], ...] = ("order", "piece")


def read_charges(table: Table, home: str | None, currencies: Container[str], *, group: str) -> tuple[Charge, ...]:
    """Return the charges of one table; those with a problem are left out."""
    found: dict[str, Charge] = {}
    for one in tables_at(table, "charges"):
        charge = _charge(one, home, currencies, group)
        if charge is not None and charge.name.casefold() in found:
            wanted = "Give each charge its own name"
            one.problem("charge-twice", "name", f"'{charge.name}' is the name of another charge too", wanted)
        elif charge is not None:
            found[charge.name.casefold()] = charge
    return tuple(found.values())


def _charge(one: Table, home: str | None, currencies: Container[str], group: str) -> Charge | None:
    one.known_keys(CHARGE_KEYS, "a charge")
    before = len(one.notes.problems)
    one.required(("name",), "a charge")
    name, currency = one.text("name"), rated_currency_at(one, "currency", currencies) or home
    amount, percent, of = (
        span_at(one, "amount", ""),
        amount_at(one, "percent", most=MOST_PERCENT),
        one.one_of("of", CHARGE_OF),
    )
    minimum, maximum = amount_at(one, "minimum"), amount_at(one, "maximum")
    _check_charge(one, minimum, maximum)
    charge = Charge(
        name=name or "",
        pays_for=_pays_for(one, name or "", group),
        amount=amount,
        per=one.one_of("per", PER) or "order",
        currency=currency or "",
        percent=percent,
        of=of,
        minimum=minimum,
        maximum=maximum,
        ways=frozenset(words_at(one, "ways", WAYS)),
        in_tax_base=truth_at(one, "in_tax_base"),
        group=_group(one, group, of),  # type: ignore[arg-type]  # one of the four
        dated=day.isoformat() if (day := one.day("on")) else "",
        source=one.text("source") or "",
        place=place_of(one, None),
    )
    if currency is None and "currency" not in one:
        one.problem(
            "missing-currency", "currency", "no currency is named here, nor in the brief", 'Add: currency = "EUR"'
        )
    return charge if len(one.notes.problems) == before else None


def _check_charge(one: Table, minimum: Decimal | None, maximum: Decimal | None) -> None:
    if "amount" not in one and "percent" not in one:
        one.problem("charge-without-figure", None, "a charge has neither amount nor percent", "Add one of the two")
    if "percent" in one and "of" not in one:
        wanted = f"Add a line: of = {listed((shown_value(base) for base in CHARGE_OF), 'or')}"
        one.problem("missing-key", "of", "a percentage is of something", wanted)
    if minimum is not None and maximum is not None and minimum > maximum:
        found = f"the minimum {minimum} is above the maximum {maximum}"
        one.problem("reversed-range", "maximum", found, "Exchange the two")


def _pays_for(one: Table, name: str, group: str) -> tuple[Part, ...]:
    """Return the parts that a charge pays for; as its name says where that is not given."""
    allowed = tuple(part for part in PARTS if part not in ("duty", "import tax"))
    if "pays_for" in one:
        return tuple(words_at(one, "pays_for", allowed))
    said = name.casefold()
    if group == "border":
        return ("clearance",) if said == "clearance" else ()
    return tuple(part for part in allowed if group == "freight" and part == said)


def _group(one: Table, group: str, of: str | None) -> str:
    said = one.one_of("group", ("payment", "extra"))
    if group != "extra":
        return group
    return said or ("payment" if of in ("paid to the maker", "paid in another currency") else "extra")
