"""The tables [currencies], [shipping] and [cost] of the criteria file, and with them all that it says of costs.

Enters: the tables. Leaves: rates, rules and charges, exact in decimal; a part with a problem is left out.
"""

from collections.abc import Container, Iterator, Mapping
from dataclasses import field, replace

from scorecard.brief import Brief
from scorecard.codes import CURRENCY_DECIMALS, currency_offered
from scorecard.costing.amounts import exact
from scorecard.costing.charges import Charge
from scorecard.costing.currencies import Rate, Rates
from scorecard.costing.freight import FREIGHT_COVERS, SHIPPING_RULES, ShippingRule
from scorecard.costing.importing import ImportRules
from scorecard.costing.inputs import BALANCES, CostSettings
from scorecard.costing.quotes import WAYS, Way
from scorecard.frozen import dataclass
from scorecard.reading.charges_table import read_charges
from scorecard.reading.import_table import read_import
from scorecard.reading.toml_amounts import MOST_PERCENT, amount_at, place_of, span_at, texts_at, truth_at
from scorecard.reading.toml_tables import Table, dotted
from scorecard.reading.units import ANY_MONEY
from scorecard.words import nearest

CURRENCIES_KEYS = ("on", "source", "charge_percent", "for_one")
SHIPPING_KEYS = (
    "divisor",
    "kg_per_m3",
    "step_kg",
    "minimum_kg",
    "round_cm",
    "surcharge_percent",
    "days",
    "covers",
    "on",
    "source",
)
COST_KEYS = ("faulty_percent", "reorder", "sampled", "balance", "charges")


@dataclass(frozen=True, slots=True, kw_only=True)
class CostTables:
    """What the criteria file says of costs.

    Parameters
    ----------
    rates : None where the brief names no currency
    imports : None where the brief names no destination, or one without bases
    """

    rates: Rates | None = None
    imports: ImportRules | None = None
    shipping: Mapping[Way, ShippingRule] = field(default_factory=lambda: dict(SHIPPING_RULES))
    shipping_charges: tuple[Charge, ...] = ()
    settings: CostSettings = field(default_factory=CostSettings)


def read_cost_tables(top: Table, brief: Brief | None) -> CostTables:
    """Return what the file's tables say of costs; problems go to the table's notes."""
    home = brief.currency if brief else None
    rates = read_rates(top.table("currencies"), home)
    known = (
        frozenset(CURRENCY_DECIMALS)
        if rates is None or rates.home == ANY_MONEY
        else frozenset({rates.home, *rates.rates})
    )
    shipping, charges = _read_shipping(top.table("shipping"), home, known)
    return CostTables(
        rates=rates,
        imports=read_import(top.table("import"), brief, known),
        shipping=shipping,
        shipping_charges=charges,
        settings=_read_settings(top.table("cost"), home, known),
    )


def read_rates(table: Table | None, home: str | None) -> Rates | None:
    """Return the rates of currencies; None where the brief names no currency."""
    if table is None:
        return Rates(home=home) if home else None
    dated, source = table.day("on"), table.text("source") or ""
    one_way = dict(_rates_in(table, "home for one"))
    other = table.table("for_one")
    other_way = dict(_rates_in(other, "for one home")) if other else {}
    for code in one_way.keys() & other_way.keys():
        found = f"{code} is given both ways"
        table.problem("currency-twice", code, found, "Keep one of the two lines")
    for code in (one_way.keys() | other_way.keys()) & {home or ""}:
        table.problem("own-currency", code, f"{code} is the brief's own currency", "Delete the line")
    if (one_way or other_way) and dated is None and "on" not in table:
        wanted = "Add the day of the rates, such as: on = 2026-11-20"
        table.notes.warn("rates-without-date", table.path, "the rates have no day", wanted)
    rates = {code: replace(rate, dated=dated, source=source) for code, rate in {**one_way, **other_way}.items()}
    charge = amount_at(table, "charge_percent", most=100)
    if home is None:
        return None
    return Rates(home=home, rates=rates, charge_percent=charge, place=place_of(table, "charge_percent"))


def _rates_in(table: Table, means: str) -> Iterator[tuple[str, Rate]]:
    for key in table.values:
        if key in CURRENCIES_KEYS:
            continue
        code = key.upper()
        if code not in CURRENCY_DECIMALS:
            offered = currency_offered(key)
            close = offered or nearest(key, CURRENCIES_KEYS)
            wanted = f"Write {close}, if that is meant" if close else "Write a currency's three letters, such as USD"
            table.problem("unknown-key", key, f"'{key}' is neither a key of [currencies] nor a currency's code", wanted)
            continue
        figure = table.number_above_zero(key)
        if figure is not None:
            rate = Rate(currency=code, figure=exact(figure), place=place_of(table, key))
            yield code, replace(rate, means="home for one" if means == "home for one" else "for one home")


def _read_shipping(
    table: Table | None, home: str | None, currencies: Container[str]
) -> tuple[Mapping[Way, ShippingRule], tuple[Charge, ...]]:
    rules = dict(SHIPPING_RULES)
    if table is None:
        return rules, ()
    table.known_keys((*WAYS, "charges"), "[shipping]")
    for way in WAYS:
        one = table.table(way)
        if one is not None:
            rules[way] = _shipping_rule(one, rules[way])
    return rules, read_charges(table, home, currencies, group="freight")


def _shipping_rule(table: Table, preset: ShippingRule) -> ShippingRule:
    table.known_keys(SHIPPING_KEYS, dotted(table.path))
    if "divisor" in table and "kg_per_m3" in table:
        table.problem("two-densities", "kg_per_m3", "divisor and kg_per_m3 are both given", "Keep one of the two lines")
    divisor, density = amount_at(table, "divisor"), amount_at(table, "kg_per_m3")
    if divisor == 0:
        wanted = "Write how many cm³ count as 1 kg, such as 5000; or kg_per_m3 = 0 where size does not count"
        table.problem("not-above-zero", "divisor", "0 is not above 0", wanted)
    changed = {
        "step_kg": amount_at(table, "step_kg"),
        "minimum_kg": amount_at(table, "minimum_kg"),
        "surcharge_percent": amount_at(table, "surcharge_percent", most=MOST_PERCENT),
        "round_cm": truth_at(table, "round_cm"),
        "days": span_at(table, "days", "days"),
        "covers": table.one_of("covers", FREIGHT_COVERS),
        "source": table.text("source"),
        "dated": day.isoformat() if (day := table.day("on")) else None,
    }
    if divisor is not None or density is not None:
        preset = replace(preset, divisor=divisor or None, kg_per_m3=density or None)
    given = {key: value for key, value in changed.items() if value is not None}
    return replace(preset, **given, place=place_of(table, None))  # type: ignore[arg-type]  # each of its own kind


def _read_settings(table: Table | None, home: str | None, currencies: Container[str]) -> CostSettings:
    if table is None:
        return CostSettings()
    table.known_keys(COST_KEYS, "[cost]")
    faulty = amount_at(table, "faulty_percent")
    if faulty is not None and faulty >= 100:
        found = f"{faulty} leaves no good piece"
        table.problem("above-hundred", "faulty_percent", found, "Write how many of 100 pieces are no good, such as 3")
        faulty = None
    balance = table.one_of("balance", BALANCES)
    return CostSettings(
        faulty_percent=faulty,
        reorder=bool(truth_at(table, "reorder")),
        sampled=frozenset(texts_at(table, "sampled")),
        balance=balance or "before shipment",
        balance_said=balance is not None,
        charges=read_charges(table, home, currencies, group="extra"),
        place=place_of(table, "faulty_percent"),
    )
