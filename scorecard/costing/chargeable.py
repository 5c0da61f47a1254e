"""Chargeable weight and the freight of an offer, by the rule of its way of shipping."""

from dataclasses import replace
from decimal import ROUND_CEILING, Decimal

from scorecard.costing.amounts import (
    EXACT,
    End,
    Span,
    added,
    over,
    percent_of,
    priced,
    shown,
    times,
    to_step,
    unit_priced,
)
from scorecard.costing.freight import Carton, FreightOffer, ShippingRule

_CM3_PER_M3 = Decimal(1_000_000)
_KG_PER_TON = Decimal(1000)


def volume_cm3(carton: Carton, rule: ShippingRule) -> Decimal:
    """Return the volume of one carton, its sides rounded first where the rule says so (to whole cm, halves up)."""
    sides = (carton.length_cm, carton.width_cm, carton.height_cm)
    first, second, third = (to_step(side, Decimal(1)) if rule.round_cm else side for side in sides)
    return times(times(first, second), third)


def volume_kg(cm3: Decimal, rule: ShippingRule) -> Decimal:
    """Return what a volume counts as in kg: by the divisor, by the kg of a cubic metre, or nothing."""
    if rule.divisor:
        return over(cm3, rule.divisor)
    return over(times(cm3, rule.kg_per_m3), _CM3_PER_M3) if rule.kg_per_m3 else Decimal(0)


def chargeable_kg(gross_kg: Decimal, cm3: Decimal, rule: ShippingRule) -> Decimal:
    """Return the weight that is charged.

    Parameters
    ----------
    gross_kg : of the whole shipment
    cm3 : its volume
    rule : of the way of shipping

    Returns
    -------
    kg: the greater of gross and volume weight, up to the next step, and at least the minimum

    References
    ----------
    Air: volume in cm³ ÷ 6000; couriers ÷ 5000; sea by revenue ton, the greater of m³ and tonnes (carriers' pages). Air
    weights go up to the next half kg, and sides to the nearest whole cm before, halves up (forwarders' pages on the air
    carriers' rule).

    Examples
    --------
    >>> from scorecard.costing.freight import SHIPPING_RULES
    >>> chargeable_kg(Decimal(45), Decimal(384000), SHIPPING_RULES["express"])
    Decimal('77.0')
    """
    weight = max(gross_kg, volume_kg(cm3, rule))
    return max(_up(weight, rule.step_kg) if rule.step_kg else weight, rule.minimum_kg)


def _up(weight: Decimal, step: Decimal) -> Decimal:
    return EXACT.multiply(over(weight, step).to_integral_value(ROUND_CEILING), step)


def carton_count(carton: Carton, quantity: int) -> int:
    """Return how many cartons so many pieces fill; the last one counts as full."""
    return -(-quantity // carton.pieces)


def in_last_carton(carton: Carton, quantity: int) -> int | None:
    """Return how many pieces the last carton holds; None where it is full."""
    return quantity % carton.pieces or None


def fits(offer: FreightOffer, quantity: int, wanted: int) -> bool:
    """Return whether an offer was quoted for so many pieces."""
    low, high = offer.from_pieces, offer.to_pieces
    if offer.cost is not None:
        low, high = low or high or wanted, high or low or wanted
    return (low is None or low <= quantity) and (high is None or quantity <= high)


def freight_at(offer: FreightOffer, rule: ShippingRule, quantity: int, end: End) -> tuple[Decimal, str]:
    """Return what an offer costs for a quantity that it fits, in its currency and exact, and how it was worked out.

    Parameters
    ----------
    offer : a cost, or a rate with its carton
    rule : of its way of shipping
    end : which end of the offer's range
    """
    if offer.cost is not None:
        return offer.cost.at(end), f"offered: {priced(offer.cost.at(end), offer.currency)}"
    rate, unit = _rate(offer, rule)
    assert offer.carton is not None, "a rate is read with its carton"  # noqa: S101 - the reader refuses it before
    count = Decimal(carton_count(offer.carton, quantity))
    gross, cm3 = times(count, offer.carton.kg), times(count, volume_cm3(offer.carton, rule))
    weight = chargeable_kg(gross, cm3, rule)
    charged = times(over(weight, unit), rate.at(end))
    surcharge = percent_of(rule.surcharge_percent, charged)
    per = "kg" if unit == 1 else "revenue ton" if weight == unit else "revenue tons"
    cartons = _carton_words(offer.carton, int(count), quantity)
    counted_as = _raised_words(max(gross, volume_kg(cm3, rule)), weight, rule)
    words = f"{cartons}, {_weight_words(offer.carton, gross, cm3, rule)}{counted_as}"
    words += f": {shown(over(weight, unit))} {per} × "
    words += unit_priced(rate.at(end), offer.currency)
    words += f", and {shown(rule.surcharge_percent)} % surcharge" if rule.surcharge_percent else ""
    return added([charged, surcharge]), words


def _raised_words(weight: Decimal, charged: Decimal, rule: ShippingRule) -> str:
    """Return by what the charged weight is above the real one: the least that is charged, or the next step."""
    if charged == weight:
        return ""
    if charged == rule.minimum_kg:
        return f", at least {shown(rule.minimum_kg)} kg are charged"
    return f", up to the next {shown(rule.step_kg)} kg"


def _rate(offer: FreightOffer, rule: ShippingRule) -> tuple[Span, Decimal]:
    """Return the rate of an offer without a cost, and the kg that it is for."""
    if offer.rate_per_revenue_ton is not None:
        return offer.rate_per_revenue_ton, rule.kg_per_m3 or _KG_PER_TON
    assert offer.rate_per_kg is not None, "an offer has a cost or a rate"  # noqa: S101 - the reader refuses it before
    return offer.rate_per_kg, Decimal(1)


def _carton_words(carton: Carton, count: int, quantity: int) -> str:
    """Return how many cartons there are, and that the last one is counted as full where it is not."""
    held = in_last_carton(carton, quantity)
    part = f" (the last with {held} of {carton.pieces} pieces, counted as full)" if held else ""
    return f"{count} carton{'' if count == 1 else 's'}{part}"


def _weight_words(carton: Carton, gross: Decimal, cm3: Decimal, rule: ShippingRule) -> str:
    weight = f"{shown(gross)} kg"
    by = f"÷ {shown(rule.divisor)}" if rule.divisor else f"× {shown(rule.kg_per_m3)} kg" if rule.kg_per_m3 else ""
    if not by:
        return weight
    size = shown(cm3) + " cm³" if rule.divisor else shown(over(cm3, _CM3_PER_M3)) + " m³"
    rounded = (
        " (sides to whole cm)" if volume_cm3(carton, rule) != volume_cm3(carton, replace(rule, round_cm=False)) else ""
    )
    return f"{weight}, by size {size}{rounded} {by} = {shown(volume_kg(cm3, rule))} kg"
