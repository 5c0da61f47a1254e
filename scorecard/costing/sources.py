"""Where the figures at the border come from: the legal source of the bases, the day and source of the user's own.

Enters: all that was read. Leaves: sentences without the full stop, and the same as plain dictionaries.
"""

from collections.abc import Iterable
from datetime import date
from typing import Any

from scorecard.costing.charges import Charge
from scorecard.costing.customs import tax_base_words
from scorecard.costing.freight import SHIPPING_RULES, ShippingRule
from scorecard.costing.import_presets import preset_for
from scorecard.costing.importing import ImportRules
from scorecard.costing.inputs import CostInputs
from scorecard.costing.landed import LandedCost
from scorecard.words import day_words


def source_words(inputs: CostInputs, costs: Iterable[LandedCost]) -> list[str]:
    """Return where bases, rates and charges come from; nothing of the border where none of these costs pays there.

    Parameters
    ----------
    inputs : all that was read
    costs : those that are shown
    """
    rules = inputs.imports
    situations = [reading.situation for cost in costs for reading in cost.readings]
    pays = any(each.crosses_border and "duty" not in each.coverage.parts for each in situations)
    said = _rules_words(rules) if rules and pays else []
    ways = {each.way for each in situations}
    said += [
        f"Your figures of shipping by {rule.way}: {_seen_of(rule)}" for rule in _own_rules(inputs) if rule.way in ways
    ]
    return said + [f"{charge.name}: {seen_words(charge.dated, charge.source)}" for charge in _sourced(inputs)]


def _rules_words(rules: ImportRules) -> list[str]:
    bases = f"{rules.duty_base}; import tax on {tax_base_words(rules)}"
    legal = _legal(rules)
    from_where = "as you give them" if legal is None else f"{rules.preset}; {legal}; {rules.seen}"
    said = [f"Bases at the border: duty on {bases} ({from_where})"]
    own = seen_words(rules.dated, rules.source)
    return [*said, f"Your rates of duty and tax: {own}"] if own else said


def _legal(rules: ImportRules) -> str | None:
    """Return the legal source of the bases; None where the user gave other ones."""
    preset = preset_for(rules.destination)
    same = preset is not None and (preset.duty_base, preset.tax_base) == (rules.duty_base, rules.tax_base)
    return rules.legal if same else None


def seen_words(dated: str, source: str) -> str:
    """Return when and where a figure was seen, as far as it is said: its day, which comes as in the file, in words."""
    day = day_words(date.fromisoformat(dated)) if dated else ""
    return ", ".join(part for part in (day, source) if part)


def _sourced(inputs: CostInputs) -> list[Charge]:
    at_border = inputs.imports.charges if inputs.imports else ()
    everything = (*inputs.shipping_charges, *at_border, *inputs.settings.charges)
    return [charge for charge in everything if charge.dated or charge.source]


def _own_rules(inputs: CostInputs) -> list[ShippingRule]:
    """Return the rules of ways of shipping of which the user has said when or where they were seen."""
    return [rule for rule in inputs.shipping.values() if _seen_of(rule)]


def _seen_of(rule: ShippingRule) -> str:
    return seen_words(rule.dated, _own_source(rule))


def _own_source(rule: ShippingRule) -> str:
    """Return the source that the user names for a way; "" where it is the preset's."""
    return "" if rule.source == SHIPPING_RULES[rule.way].source else rule.source


def sources_json(inputs: CostInputs) -> dict[str, Any]:
    """Return the rules at the border with their sources (null without any), the charges and ways that name theirs."""
    rules = inputs.imports
    return {
        "import": None
        if rules is None
        else {
            "destination": rules.destination,
            "duty_base": rules.duty_base,
            "tax_base": rules.tax_base,
            "legal": _legal(rules),
            "seen": rules.seen if _legal(rules) is not None else None,
            "rates_on": rules.dated or None,
            "rates_source": rules.source or None,
        },
        "charges": [
            {"name": charge.name, "on": charge.dated or None, "source": charge.source or None}
            for charge in _sourced(inputs)
        ],
        "shipping": [
            {"way": rule.way, "on": rule.dated or None, "source": _own_source(rule) or None}
            for rule in _own_rules(inputs)
        ],
    }
