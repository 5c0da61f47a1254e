"""Charges that the user gives, on the bases that are known by then, and the freight of an offer."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from decimal import Decimal

from scorecard.costing.amounts import ZERO, End, added, percent_of, priced, shown, times, unit_priced
from scorecard.costing.chargeable import freight_at
from scorecard.costing.charges import ORIGIN_PARTS, PARTS, Charge, ChargeOf
from scorecard.costing.delivery_terms import Parts
from scorecard.costing.entries import CURRENCY_CHARGE, Entry, Label, Situation, entry, paid
from scorecard.costing.freight import ShippingRule
from scorecard.costing.quotes import WAYS
from scorecard.words import listed

_LATE: tuple[ChargeOf, ...] = ("customs value", "duty and tax", "paid in another currency")


def freight_entries(situation: Situation, end: End) -> list[Entry]:
    """Return the freight of the offer that fits; none where the price pays it or nothing fits."""
    if situation.offer is None:
        return []
    offer = situation.offer
    amount, words = freight_at(offer, situation.rule or ShippingRule(way=offer.way), situation.quantity, end)
    parts = tuple(sorted(situation.freight_parts))
    label = Label(key="freight", name=f"Freight by {offer.way}", group="freight", parts=parts)
    return [entry(label, amount, offer.currency, words, situation.inputs.rates)]


def applying(situation: Situation) -> list[Charge]:
    """Return the user's charges that this journey pays, in the order of the tables."""
    return [charge for charge in charges_of(situation) if not why_not(charge, situation)]


def charges_of(situation: Situation) -> tuple[Charge, ...]:
    """Return all charges that the user gives, in the order of the tables."""
    inputs = situation.inputs
    at_border = inputs.imports.charges if inputs.imports else ()
    return (*inputs.shipping_charges, *at_border, *inputs.settings.charges)


def why_not(charge: Charge, situation: Situation) -> str:
    """Return why a charge is not counted, such as "collection is in the price (FOB)"; "" where it is counted."""
    if charge.ways and situation.way not in charge.ways:
        return f"it is for {listed((way for way in WAYS if way in charge.ways), 'or')} alone"
    parts = frozenset(charge.pays_for)
    if parts and not parts & situation.left_to_pay:
        return _paid_by(parts, situation)
    at_the_border = charge.of == "customs value" or (charge.group == "border" and not parts)
    return _nothing_at_the_border(situation) if at_the_border else ""


def _paid_by(parts: Parts, situation: Situation) -> str:
    """Return who pays for parts of which none is left to pay."""
    named = listed(part for part in PARTS if part in parts)
    verb = "is" if len(parts) == 1 else "are"
    if parts <= situation.coverage.parts:
        return f"{named} {verb} in the price ({situation.coverage.words})"
    if parts <= situation.coverage.parts | situation.freight_parts:
        return f"the freight by {situation.way} pays for {named}"
    return f"on this journey there is no {listed((part for part in PARTS if part in parts), 'or')} to pay for"


def _nothing_at_the_border(situation: Situation) -> str:
    if not situation.crosses_border:
        return "no customs border is crossed"
    if "duty" in situation.coverage.parts:
        return f"duty and tax are in the price ({situation.coverage.words})"
    return "" if situation.inputs.imports else "the destination's rules are not known"


def early_charges(situation: Situation, before: Sequence[Entry], end: End) -> list[Entry]:
    """Return the charges that need no figure of the border: those on goods and freight last, since they need both."""
    charges = [charge for charge in applying(situation) if charge.of not in _LATE]
    plain = [charge for charge in charges if charge.of != "goods and freight"]
    found = [charge_entry(charge, situation, before, end) for charge in plain]
    known = [*before, *found]
    return found + [charge_entry(charge, situation, known, end) for charge in charges if charge not in plain]


def value_charges(situation: Situation, value: Decimal | None, end: End) -> list[Entry]:
    """Return the charges on customs value.

    Parameters
    ----------
    value : the customs value in the brief's currency; None where no border is crossed or the price pays duty
    """
    charges = [charge for charge in applying(situation) if charge.of == "customs value"]
    return [] if value is None else [_made(charge, situation, value, end) for charge in charges]


def tax_charges(situation: Situation, before: Sequence[Entry], end: End) -> list[Entry]:
    """Return the charges on duty and tax, which are among the entries before."""
    charges = [charge for charge in applying(situation) if charge.of == "duty and tax"]
    return [charge_entry(charge, situation, before, end) for charge in charges]


def least_of_tax_charges(situation: Situation, end: End) -> list[Entry]:
    """Return what charges on duty and tax come to at least, whatever these are: what import tax can be charged on.

    What is above hangs on the tax itself, and the tax would hang on it.
    """
    charges = [charge for charge in applying(situation) if charge.of == "duty and tax"]
    return [_made(replace(charge, percent=None), situation, ZERO, end) for charge in charges]


def currency_charges(situation: Situation, before: Sequence[Entry], end: End) -> list[Entry]:
    """Return what paying in other currencies costs: the user's charges, and the percentage of ``[currencies]``."""
    base = paid(each for each in before if each.foreign)
    charges = [charge for charge in applying(situation) if charge.of == "paid in another currency"]
    found = [_made(charge, situation, base, end) for charge in charges]
    percent = situation.inputs.rates.charge_percent
    if not percent or not any(each.foreign for each in before):
        return found
    rates = situation.inputs.rates
    words = f"{shown(percent)} % of {priced(base, rates.home)} paid in another currency"
    return [*found, entry(CURRENCY_CHARGE, percent_of(percent, base), rates.home, words, rates)]


def charge_entry(charge: Charge, situation: Situation, before: Sequence[Entry], end: End) -> Entry:
    """Return one charge, on the entries before it."""
    return _made(charge, situation, base_of(charge, before), end)


def base_of(charge: Charge, before: Iterable[Entry]) -> Decimal:
    """Return what a charge's percentage is of, in the brief's currency; 0 where it has none."""
    if charge.of == "goods":
        return paid(each for each in before if each.label.key in ("goods", "set-up"))
    if charge.of == "goods and freight":
        return paid(each for each in before if each.label.key in ("goods", "set-up") or _carries(each))
    if charge.of == "paid to the maker":
        return paid(each for each in before if each.label.group == "maker")
    return paid(each for each in before if each.label.key in ("duty", "import tax")) if charge.of else ZERO


def _carries(each: Entry) -> bool:
    return bool({"freight", *ORIGIN_PARTS} & set(each.label.parts))


def _made(charge: Charge, situation: Situation, base: Decimal, end: End) -> Entry:
    rates = situation.inputs.rates
    flat = charge.amount.at(end) if charge.amount else ZERO
    count = situation.quantity if charge.per == "piece" else 1
    percent = charge.percent or ZERO
    raw = added([times(flat, Decimal(count)), percent_of(percent, rates.from_home(base, charge.currency))])
    amount = _held(raw, charge)
    words = _words(charge, flat, count, base, rates.home) + ("" if amount == raw else _bound_words(charge, amount))
    return entry(_label(charge), amount, charge.currency, words, rates)


def _label(charge: Charge) -> Label:
    return Label(
        key=f"charge:{charge.name}",
        name=charge.name,
        group=charge.group,
        parts=charge.pays_for,
        in_tax_base=charge.in_tax_base,
    )


def _held(amount: Decimal, charge: Charge) -> Decimal:
    at_least = max(amount, charge.minimum or ZERO)
    return at_least if charge.maximum is None else min(at_least, charge.maximum)


def _words(charge: Charge, flat: Decimal, count: int, base: Decimal, home: str) -> str:
    parts = []
    if charge.amount:
        one, flat_sum = unit_priced(flat, charge.currency), priced(flat, charge.currency)
        parts.append(f"{count} × {one}" if charge.per == "piece" else f"given: {flat_sum}")
    if charge.percent:
        parts.append(f"{shown(charge.percent)} % of {priced(base, home)} ({charge.of})")
    return " and ".join(parts)


def _bound_words(charge: Charge, amount: Decimal) -> str:
    bound = "least" if amount == charge.minimum else "most"
    return f", at {bound} {priced(amount, charge.currency)}"
