"""The table [import] of the criteria file: the destination's rules at the border, changed by what the user gives.

Enters: the table and the brief. Leaves: the rules; a part with a problem is left out.
"""

from collections.abc import Container
from dataclasses import replace
from decimal import Decimal

from scorecard.brief import Brief
from scorecard.codes import COUNTRIES
from scorecard.costing.amounts import Money, Span
from scorecard.costing.import_presets import preset_for
from scorecard.costing.importing import DUTY_BASES, TAX_BASES, ImportRules, Supplied
from scorecard.costing.quotes import WAYS, Way
from scorecard.reading.charges_table import read_charges
from scorecard.reading.toml_amounts import amount_at, percent_at, place_of, rated_currency_at, tables_at, truth_at
from scorecard.reading.toml_codes import country_at, is_country_key
from scorecard.reading.toml_tables import Table
from scorecard.words import listed

IMPORT_KEYS = (
    "duty_percent",
    "duty_by_country",
    "tax_percent",
    "tax",
    "price_has_tax",
    "duty_base",
    "tax_base",
    "currency",
    "freight_in_base_percent",
    "use_relief",
    "supplied",
    "charges",
    "on",
    "source",
)
SUPPLIED_KEYS = ("name", "what", "value", "currency", "made_in")
SUPPLIED_WHAT = ("artwork", "tools or materials")
TAX_IS = ("cost", "recoverable")


def read_import(table: Table | None, brief: Brief | None, currencies: Container[str]) -> ImportRules | None:
    """Return the rules at the border, those of the destination changed by what the user gives; None without any."""
    destination = brief.destination if brief else None
    preset = preset_for(destination) if destination else None
    if table is None:
        return preset
    table.known_keys(IMPORT_KEYS, "[import]")
    home = brief.currency if brief else None
    duty_base, tax_base = table.one_of("duty_base", DUTY_BASES), table.one_of("tax_base", TAX_BASES)
    currency = rated_currency_at(table, "currency", currencies)
    given = {
        "duty_base": duty_base,
        "tax_base": tax_base,
        "currency": currency,
        "duty_percent": percent_at(table, "duty_percent"),
        "tax_percent": percent_at(table, "tax_percent"),
        "duty_by_country": _by_country(table) or None,
        "tax_is": table.one_of("tax", TAX_IS),
        "price_has_tax": truth_at(table, "price_has_tax"),
        "freight_in_base_percent": _by_way(table) or None,
        "use_relief": truth_at(table, "use_relief"),
        "charges": read_charges(table, home, currencies, group="border") or None,
        "supplied": _supplied(table, home, currencies) or None,
        "source": table.text("source"),
        "dated": day.isoformat() if (day := table.day("on")) else None,
    }
    rules = preset or _rules_without_preset(table, destination, duty_base, tax_base, currency or home)
    if rules is None:
        return None
    if currency is None and rules.currency not in currencies and preset is not None and "currency" not in table:
        wanted = (
            f"Add its rate to [currencies], {rules.currency} = … (what one {rules.currency} costs in your currency)"
        )
        table.problem(
            "currency-without-rate", None, f"customs there reckons in {rules.currency}, which has no rate", wanted
        )
    kept = {key: value for key, value in given.items() if value is not None}
    if "tax_percent" in kept and kept.get("tax_base", rules.tax_base) == "none":
        found = f"no tax is charged at the border of {COUNTRIES.get(rules.destination, rules.destination)}"
        wanted = "Delete the line, or say what the tax is charged on, under tax_base"
        table.notes.warn("tax-not-counted", table.at("tax_percent"), f"{found}, so this rate is not counted", wanted)
    return replace(rules, **kept, place=place_of(table, None))  # type: ignore[arg-type]  # each of its own kind


def _rules_without_preset(
    table: Table, destination: str | None, duty_base: object, tax_base: object, currency: str | None
) -> ImportRules | None:
    """Return rules made of what the user gives where no preset is at hand; None once what is missing is noted."""
    if destination is None:
        if not table.notes.is_told_of(("brief", "destination")):
            wanted = 'Add it to [brief]: destination = "IE"'
            table.problem("no-destination", None, "the brief names no destination", wanted)
        return None
    if duty_base is None or tax_base is None or currency is None:
        missing = listed(key for key, value in (("duty_base", duty_base), ("tax_base", tax_base)) if value is None)
        if missing and not {"duty_base", "tax_base"} <= table.values.keys():
            found = f"for {COUNTRIES.get(destination, destination)} the bases of duty and tax are not known here"
            table.problem(
                "no-import-bases", None, found, f"Add {missing} to [import]; ask customs or a licensed broker"
            )
        return None
    duty = next(base for base in DUTY_BASES if base == duty_base)
    tax = next(base for base in TAX_BASES if base == tax_base)
    return ImportRules(destination=destination, currency=currency, duty_base=duty, tax_base=tax)


def _by_country(table: Table) -> dict[str, Span]:
    inner = table.table("duty_by_country")
    rates = {}
    for code in inner.values if inner else ():
        if inner is not None and is_country_key(inner, code) and (rate := percent_at(inner, code)) is not None:
            rates[code] = rate
    return rates


def _by_way(table: Table) -> dict[Way, Decimal]:
    inner = table.table("freight_in_base_percent")
    if inner is None:
        return {}
    inner.known_keys(WAYS, "freight_in_base_percent")
    read = ((way, amount_at(inner, way, most=100)) for way in WAYS)
    return {way: percent for way, percent in read if percent is not None}


def _supplied(table: Table, home: str | None, currencies: Container[str]) -> tuple[Supplied, ...]:
    found = []
    for one in tables_at(table, "supplied"):
        one.known_keys(SUPPLIED_KEYS, "what you supply")
        one.required(("name", "what", "value"), "what you supply")
        name, what, value = one.text("name"), one.one_of("what", SUPPLIED_WHAT), amount_at(one, "value")
        currency = rated_currency_at(one, "currency", currencies) or home
        made_in = country_at(one, "made_in")
        if name is None or what is None or value is None or currency is None:
            continue
        kind = "artwork" if what == "artwork" else "tools or materials"
        money = Money(Span(value, value), currency)
        found.append(Supplied(name=name, what=kind, value=money, made_in=made_in, place=place_of(one, None)))  # type: ignore[arg-type]  # one of the two
    return tuple(found)
