"""Duty and import tax of one situation, and sales tax where no border lies between maker and buyer."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from decimal import Decimal

from scorecard.costing.amounts import HUNDRED, ZERO, End, Span, added, over, percent_of, priced, shown, times, to_minor
from scorecard.costing.charges import ORIGIN_PARTS, Part
from scorecard.costing.customs import Border, Shipment, at_the_border, customs_value, duty_words, is_relieved, tax_words
from scorecard.costing.entries import DUTY, IMPORT_TAX, SALES_TAX, Entry, Gap, Situation, entry, no_figure, paid
from scorecard.costing.importing import Cutting, ImportRules
from scorecard.frozen import dataclass

_AFTER: frozenset[Part] = frozenset({"arrival charges", "clearance", "delivery"})


@dataclass(frozen=True, slots=True, kw_only=True)
class AtTheBorder:
    """What the border adds: entries and gaps."""

    entries: tuple[Entry, ...] = ()
    gaps: tuple[Gap, ...] = ()


def border_entries(situation: Situation, before: Sequence[Entry], end: End, fees: Sequence[Entry] = ()) -> AtTheBorder:
    """Return duty and import tax on the entries before, or sales tax where no border is crossed.

    Parameters
    ----------
    fees : what charges on customs value come to, and those on duty and tax at least: in the tax base as other charges
    """
    if "duty" in situation.coverage.parts:
        return AtTheBorder()
    if not situation.crosses_border:
        return _sales_tax(situation, before, end)
    rules = rules_in_use(situation)
    if rules is None:
        return AtTheBorder(gaps=(no_figure("duty"), no_figure("import tax")))
    duty, tax = duty_percent(situation), rules.tax_percent
    made = at_the_border(rules, shipment(situation, before, rules, fees), _rate(duty, end), _rate(tax, end))
    entries = [*_duty_entries(situation, rules, made, end), *_tax_entries(situation, rules, made, end)]
    return AtTheBorder(entries=tuple(entries), gaps=_gaps(duty, rules))


def value_at_the_border(situation: Situation, before: Sequence[Entry]) -> Decimal | None:
    """Return the customs value in the brief's currency; None where no border is crossed or the price pays duty."""
    rules = rules_in_use(situation)
    if rules is None or "duty" in situation.coverage.parts or not situation.crosses_border:
        return None
    return situation.inputs.rates.to_home(customs_value(rules, shipment(situation, before, rules)), rules.currency)


def rules_in_use(situation: Situation) -> ImportRules | None:
    """Return the destination's rules; in the brief's currency, halves up, where the authority's own has no rate."""
    rules, rates = situation.inputs.imports, situation.inputs.rates
    if rules is None or rules.currency in rates:
        return rules
    plain = Cutting()
    return replace(
        rules,
        currency=rates.home,
        duty_base_cutting=plain,
        duty_cutting=plain,
        tax_base_cutting=plain,
        tax_cutting=plain,
        use_relief=False,
    )


def duty_percent(situation: Situation) -> Span | None:
    """Return the duty rate for the country that the goods are made in; None where the user gives none."""
    rules = situation.inputs.imports
    if rules is None:
        return None
    return rules.duty_by_country.get(situation.facts.country or "", rules.duty_percent)


def _rate(percent: Span | None, end: End) -> Decimal:
    return percent.at(end) if percent else ZERO


def _gaps(duty: Span | None, rules: ImportRules) -> tuple[Gap, ...]:
    gaps = [Gap("duty", "duty: no rate; the total is too low by that, and by the tax on it")] if duty is None else []
    taxed = rules.tax_base != "none" and rules.tax_is != "recoverable"
    if rules.tax_percent is None and taxed:
        gaps.append(Gap("import tax", "import tax: no rate; the total is too low by that"))
    return tuple(gaps)


def shipment(situation: Situation, before: Sequence[Entry], rules: ImportRules, fees: Sequence[Entry] = ()) -> Shipment:
    """Return the entries before the border by what customs makes of them, in the authority's currency.

    Packing that the buyer pays for counts as a part of the price: Agreement on customs valuation of 1994, article
    8.1(a), from memory.
    """
    rates = situation.inputs.rates
    percent = rules.freight_in_base_percent.get(situation.way, HUNDRED) if situation.way else HUNDRED
    taxed = [each for each in (*before, *fees) if in_tax_base(each)]

    def of(entries: Iterable[Entry]) -> Decimal:
        return rates.from_home(paid(entries), rules.currency)

    return Shipment(
        goods=of(each for each in before if each.label.key in ("goods", "set-up") or _kind(each) == "packing"),
        supplied=_supplied(situation, rules),
        origin=of(each for each in before if _kind(each) == "origin"),
        freight=of(each for each in before if _kind(each) == "freight"),
        insurance=of(each for each in before if _kind(each) == "insurance"),
        after=of(each for each in taxed if each.label.in_tax_base is None),
        taxed_besides=of(each for each in taxed if each.label.in_tax_base),
        freight_in_base_percent=percent,
    )


def in_tax_base(each: Entry) -> bool:
    """Return whether import tax is charged on a charge besides the customs value: by its parts, or as the user says."""
    kind = _kind(each)
    if each.label.in_tax_base is None:
        return kind == "after"
    return each.label.in_tax_base and kind in ("", "after")


def _kind(each: Entry) -> str:
    """Return what an entry is to customs: freight, origin, insurance, packing, after, or "" for none of these."""
    parts = set(each.label.parts)
    if "freight" in parts:
        return "freight"
    if parts & set(ORIGIN_PARTS):
        return "origin"
    if "insurance" in parts:
        return "insurance"
    if "packing" in parts:
        return "packing"
    return "after" if parts & _AFTER else ""


def _supplied(situation: Situation, rules: ImportRules) -> Decimal:
    """Return what customs adds for things supplied by the buyer; artwork made in the importing country is not added."""
    rates = situation.inputs.rates
    home = added(
        rates.to_home(
            each.value.amount.low if each.value.amount.high is None else each.value.amount.high, each.value.currency
        )
        for each in rules.supplied
        if counts(each.what, each.made_in, rules)
    )
    return rates.from_home(home, rules.currency)


def counts(what: str, made_in: str | None, rules: ImportRules) -> bool:
    """Return whether something that the buyer supplies counts into the customs value."""
    return what != "artwork" or (made_in != rules.destination and made_in not in rules.without_border)


def _duty_entries(situation: Situation, rules: ImportRules, made: Border, end: End) -> list[Entry]:
    percent = duty_percent(situation)
    if percent is None:
        return []
    words = duty_words(made, percent.at(end), rules)
    if rules.relief and is_relieved(rules, made.customs_value):
        words = f"none up to {priced(rules.relief.up_to, rules.relief.currency)}, as you say ({rules.relief.dated})"
    return [entry(DUTY, made.duty, rules.currency, words, situation.inputs.rates)]


def _tax_entries(situation: Situation, rules: ImportRules, made: Border, end: End) -> list[Entry]:
    if rules.tax_percent is None or rules.tax_base == "none":
        return []
    words = tax_words(made, rules.tax_percent.at(end), rules)
    whole = entry(IMPORT_TAX, made.tax, rules.currency, words, situation.inputs.rates)
    if rules.tax_is == "cost":
        return [whole]
    back = rules.tax_is == "recoverable" or end == "low"
    note = "; comes back" if rules.tax_is == "recoverable" else "; whether it comes back is not said"
    return [replace(whole, cost=ZERO if back else whole.paid, working=whole.working + note)]


@dataclass(frozen=True, slots=True, kw_only=True)
class SalesTax:
    """What is said of the sales tax of a price, each None where it is not said.

    Parameters
    ----------
    is_inside : whether the price has it inside; else it comes on top
    percent : of the price without it
    tax_is : "cost" or "recoverable"
    """

    is_inside: bool | None = None
    percent: Span | None = None
    tax_is: str | None = None


def sales_tax_of(situation: Situation) -> SalesTax | None:
    """Return what is said of the sales tax that the maker's price has inside or on top; None where it bears none.

    It bears none across a border, where it pays the duty, and where the rate is 0.
    """
    rules = situation.inputs.imports
    if situation.crosses_border or "duty" in situation.coverage.parts:
        return None
    if rules is None:
        return SalesTax()
    said = SalesTax(is_inside=rules.price_has_tax, percent=rules.tax_percent, tax_is=rules.tax_is)
    return None if said.percent == Span.of(0) else said


def sales_tax_on_top(situation: Situation) -> Span | None:
    """Return the percent of sales tax that comes on top of what the maker asks; from 0 where that may have it inside.

    None where nothing comes on top; without an upper end where there is no rate.
    """
    said = sales_tax_of(situation)
    if said is None or said.is_inside:
        return None
    percent = Span(ZERO, None) if said.percent is None else said.percent
    return Span(percent.low if said.is_inside is False else ZERO, percent.high)


def _sales_tax(situation: Situation, before: Sequence[Entry], end: End) -> AtTheBorder:
    """Return the sales tax of a maker with no border between, in every way that is not ruled out."""
    rules = situation.inputs.imports
    has_tax, tax_is = (rules.price_has_tax, rules.tax_is) if rules else (None, None)
    if rules is None or rules.tax_percent is None:
        settled = has_tax is True and tax_is == "cost"
        return AtTheBorder(gaps=() if settled else (Gap("sales tax", _SALES_TAX_GAPS[has_tax]),))
    percent, home = rules.tax_percent.at(end), situation.inputs.rates.home
    base = paid(each for each in before if each.label.group in ("maker", "freight"))
    on_top = to_minor(percent_of(percent, base), home)
    of_price = rules.tax_percent.at("high" if end == "low" else "low")  # the more may come back, the less it costs
    inside = to_minor(over(times(of_price, base), HUNDRED + of_price), home)
    readings = {
        (True, "cost"): ZERO,
        (True, "recoverable"): ZERO - inside if inside.is_finite() else ZERO,  # of a price without end, no telling
        (False, "cost"): on_top,
        (False, "recoverable"): ZERO,
    }
    open_ones = [amount for (has, is_), amount in readings.items() if has_tax in (None, has) and tax_is in (None, is_)]
    cost = min(open_ones) if end == "low" else max(open_ones)
    words = f"{shown(of_price if cost < ZERO else percent)} % of {priced(base, home)}, {_sales_words(has_tax, tax_is)}"
    if has_tax is True:
        words = f"{priced(inside, home)} at {shown(of_price)} % is in the price of {priced(base, home)} already"
        words += {"cost": "", "recoverable": ", and comes back", None: "; whether it comes back is not said"}[tax_is]
    made = entry(SALES_TAX, on_top, home, words, situation.inputs.rates)
    is_inside = has_tax or (has_tax is None and end == "low")
    cash = ZERO if is_inside else on_top
    return AtTheBorder(entries=(replace(made, cost=cost, paid=cash),))


def sales_tax_unsaid(situation: Situation) -> bool:
    """Say whether nobody has said if a price has sales tax inside, where there may be any."""
    said = sales_tax_of(situation)
    return said is not None and said.is_inside is None


_SALES_TAX_GAPS = {
    None: "sales tax: no rate, and no word whether the price has it; the total may be too low by that",
    True: "sales tax: the price has it, but no rate tells what may come back; the total may be too high by that",
    False: "sales tax: no rate, and it comes on top of the price; the total may be too low by that",
}


WHERE_SALES_TAX_IS = {True: "inside the price", False: "on top of the price", None: "inside the price or on top"}


def _sales_words(has_tax: bool | None, tax_is: str | None) -> str:
    where = WHERE_SALES_TAX_IS[has_tax] + (", as price_has_tax says" if has_tax is None else "")
    back = {"cost": "a cost", "recoverable": "comes back", None: "a cost or not"}[tax_is]
    return f"{where}; {back}"
