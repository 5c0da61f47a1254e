"""Duty and import tax: the bases, the rates on them, and the cutting, in the order in which an authority works.

Enters: the parts of a shipment's cost in the authority's currency, and the user's rates. Leaves: each figure, unrounded
where the authority does not round. Bases: ``import_presets``, with their legal sources.
"""

from collections.abc import Mapping
from decimal import Decimal
from types import MappingProxyType

from scorecard.costing.amounts import ZERO, added, minor_unit, percent_of, priced, shown, times, to_step
from scorecard.costing.importing import Cutting, ImportRules, TaxBase
from scorecard.frozen import dataclass

_TAX_BASE_WORDS: Mapping[TaxBase, str] = MappingProxyType(
    {
        "none": "nothing",
        "duty base and duty": "customs value and duty",
        "and freight and insurance": "customs value, duty, freight and insurance",
        "and all costs to the door": "customs value, duty and all costs to the door",
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shipment:
    """What a shipment's cost is made of, in the authority's currency.

    Parameters
    ----------
    goods : the price paid to the maker, with set-up and tooling
    supplied : what the buyer gave the maker and customs adds to the price
    origin : costs in the exporting country that the price does not include
    freight, insurance : to the door, as far as they are paid apart from the price
    after : costs after arrival up to the door
    taxed_besides : what the user says that import tax is charged on, whatever the base
    freight_in_base_percent : the part of the freight that counts in the duty base
    """

    goods: Decimal
    supplied: Decimal = ZERO
    origin: Decimal = ZERO
    freight: Decimal = ZERO
    insurance: Decimal = ZERO
    after: Decimal = ZERO
    taxed_besides: Decimal = ZERO
    freight_in_base_percent: Decimal = Decimal(100)


@dataclass(frozen=True, slots=True, kw_only=True)
class Border:
    """Duty and import tax, with their bases as cut, in the authority's currency.

    Parameters
    ----------
    customs_value : the duty base before cutting
    local_tax : the part of ``tax`` that is the second, local tax
    """

    customs_value: Decimal
    duty_base: Decimal
    duty: Decimal
    tax_base: Decimal
    tax: Decimal
    local_tax: Decimal = ZERO


def customs_value(rules: ImportRules, shipment: Shipment) -> Decimal:
    """Return the value that duty is charged on, before cutting."""
    value = added([shipment.goods, shipment.supplied])
    if rules.duty_base == "price":
        return value
    value = added([value, shipment.origin])
    if rules.duty_base == "price to the export border":
        return value
    in_base = percent_of(shipment.freight_in_base_percent, shipment.freight)
    return added([value, in_base, shipment.insurance])


def tax_value(rules: ImportRules, shipment: Shipment, duty: Decimal) -> Decimal:
    """Return the value that import tax is charged on, before cutting."""
    if rules.tax_base == "none":
        return ZERO
    if rules.tax_base == "duty base and duty":
        return added([customs_value(rules, shipment), duty, shipment.taxed_besides])
    carried = [shipment.goods, shipment.supplied, shipment.origin, shipment.freight, shipment.insurance]
    after = [shipment.after] if rules.tax_base == "and all costs to the door" else []
    return added([*carried, duty, *after, shipment.taxed_besides])


def at_the_border(rules: ImportRules, shipment: Shipment, duty_percent: Decimal, tax_percent: Decimal) -> Border:
    """Return duty and import tax.

    Parameters
    ----------
    rules : the destination's
    shipment : in the currency of ``rules``
    duty_percent, tax_percent : the user's rates

    References
    ----------
    ``rules.legal``. Japan: a local tax is reckoned from the national one before its own cutting, and each is cut (Japan
    Customs, frequently asked question 1111).
    """
    value = customs_value(rules, shipment)
    duty_base = _cut(value, rules.duty_base_cutting, rules)
    free = is_relieved(rules, value)
    duty = ZERO if free else _cut(percent_of(duty_percent, duty_base), rules.duty_cutting, rules)
    tax_base = _cut(tax_value(rules, shipment, duty), rules.tax_base_cutting, rules)
    if free and rules.relief and rules.relief.of == "duty and tax":
        tax_percent = ZERO
    tax, local = _taxes(rules, percent_of(tax_percent, tax_base))
    return Border(
        customs_value=value, duty_base=duty_base, duty=duty, tax_base=tax_base, tax=added([tax, local]), local_tax=local
    )


def is_relieved(rules: ImportRules, value: Decimal) -> bool:
    """Return whether the user has relief, and the value is within it."""
    return rules.use_relief and rules.relief is not None and value <= rules.relief.up_to


def _taxes(rules: ImportRules, tax: Decimal) -> tuple[Decimal, Decimal]:
    """Return the (national) tax and the local tax, both cut."""
    if not rules.local_part_of_tax:
        return _cut(tax, rules.tax_cutting, rules), ZERO
    national = times(tax, 1 - rules.local_part_of_tax)
    local = _cut(times(tax, rules.local_part_of_tax), Cutting(cut="down"), rules)
    return _cut(national, rules.tax_cutting, rules), _cut(local, rules.tax_cutting, rules)


def _cut(amount: Decimal, cutting: Cutting, rules: ImportRules) -> Decimal:
    return to_step(amount, cutting.step or minor_unit(rules.currency), cutting.cut)


def tax_base_words(rules: ImportRules) -> str:
    """Return what import tax is charged on."""
    return _TAX_BASE_WORDS[rules.tax_base]


def duty_words(border: Border, percent: Decimal, rules: ImportRules) -> str:
    """Return how the duty was worked out."""
    return f"{shown(percent)} % of {priced(border.duty_base, rules.currency)} ({rules.duty_base})"


def tax_words(border: Border, percent: Decimal, rules: ImportRules) -> str:
    """Return how the import tax was worked out."""
    local = f", of which {priced(border.local_tax, rules.currency)} local tax" if border.local_tax else ""
    return f"{shown(percent)} % of {priced(border.tax_base, rules.currency)} ({tax_base_words(rules)}){local}"
