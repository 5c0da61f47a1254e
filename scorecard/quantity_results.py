"""How many to order as the machine-readable results give it: ``quantities`` of ``score``, and what ``quantity`` prints.

Enters: a calculation, or a plan. Leaves: dictionaries and lists; amounts in the brief's currency, null where open.
"""

from decimal import Decimal
from typing import TYPE_CHECKING, Any

from scorecard.calculation import Calculation

if TYPE_CHECKING:
    from scorecard.ordering.cash import Payment
    from scorecard.ordering.options import Option, Outcome
    from scorecard.ordering.plan import MakerPlan, Plan
    from scorecard.ordering.steps import Step

Json = dict[str, Any]

SCHEMA = "scorecard-quantity/1"
WEIGHED = 12  # makers, each at every size and all of them at many quantities


def plan_for(calculation: Calculation) -> "Plan | None":
    """Return how many to order of the first ranked makers with a quote; None while there is no quote, or no price."""
    costed = calculation.case.costed  # of which the plan takes those named alone
    return None if costed is None else costed.plan(quoted_makers(calculation))


def quoted_makers(calculation: Calculation) -> list[str]:
    """Return the names of the first ranked makers with a quote, in the order of rank."""
    costed, names = calculation.case.costed, calculation.case.table.makers
    quoted = set(costed.chosen) if costed else set()
    return [names[maker] for maker in calculation.ranking.order if names[maker] in quoted][:WEIGHED]


def sizes_alone(calculation: Calculation) -> "Plan | None":
    """Return the same where nothing is said of selling, for sizes and what they cost alone; None where it is said."""
    from scorecard.ordering.plan import plan_of
    from scorecard.ordering.selling import UNPRICED

    costed = calculation.case.costed  # of which the plan takes those named alone
    if costed is None or costed.selling is not None:
        return None
    return plan_of(costed.inputs, UNPRICED, quoted_makers(calculation))


def quantity_result(calculation: Calculation) -> Json:
    """Return what ``scorecard quantity --json`` prints."""
    case, plan = calculation.case, plan_for(calculation)
    return {
        "schema": SCHEMA,
        "title": case.title,
        "as_of": calculation.as_of.isoformat(),
        "quantities": None if plan is None else quantities_json(plan),
        "set_aside": [one.as_json() for one in case.set_aside],
        "warnings": [one.as_json() for one in case.warnings],
    }


def quantities_of(calculation: Calculation) -> Json:
    """Return the key ``quantities`` of the result of ``score``; none while there is nothing to say."""
    plan = plan_for(calculation)
    return {} if plan is None else {"quantities": quantities_json(plan)}


def quantities_json(plan: "Plan") -> Json:
    """Return a plan, with every sentence that is said of it."""
    from scorecard.quantity_words import plan_words

    best = plan.best
    return {
        "currency": plan.inputs.rates.home,
        "wanted": plan.inputs.brief.quantity,
        "first_sale": plan.first_sale.isoformat() if plan.first_sale else None,
        "selling": _selling(plan),
        "makers": [_maker(plan, one) for one in plan.makers],
        "cheapest_by_quantity": [
            {"from": one.start, "to": one.end, "maker": one.maker, "may_be_cheaper": list(one.rivals)}
            for one in plan.stretches
        ],
        "best": None if best is None else {"maker": best.maker, "pieces": best.pieces, "left": _number(best.promise)},
        "words": plan_words(plan),
    }


def _selling(plan: "Plan") -> Json:
    from scorecard.costing.costs_json import number
    from scorecard.ordering.demands import WEIGHTS

    selling = plan.selling
    demand = selling.demand
    spread = demand is not None and demand.is_spread
    return {
        "price": number(selling.price),
        "takings": number(selling.takings),
        "deductions": {name: number(amount) for name, amount in selling.deductions.items()},
        "kept": number(selling.kept),
        "fixed": number(selling.fixed),
        "unsold_worth": number(selling.unsold_worth),
        "demand": None if demand is None else {"low": demand.low, "likely": demand.likely, "high": demand.high},
        "demand_counts": {case: number(weight) for case, weight in WEIGHTS.items()} if spread else None,
        "wanted_margin_percent": _number(selling.wanted_margin_percent),
        "bearable_cost": _number(selling.bearable),
        "yearly_demand": selling.yearly_demand,
    }


def _maker(plan: "Plan", one: "MakerPlan") -> Json:
    from scorecard.quantity_words import maker_words

    return {
        "maker": one.maker,
        "sizes": [_size(plan, option) for option in one.options],
        "steps": [_step(step) for step in one.steps],
        "best": one.best.pieces if one.best else None,
        "newsvendor": _newsvendor(one),
        "steady": _steady(one),
        "words": maker_words(plan, one),
    }


def _size(plan: "Plan", option: "Option") -> Json:
    from scorecard.costing.costs_json import ends, timing_json
    from scorecard.size_words import bears

    return {
        "pieces": option.pieces,
        "why": list(option.size.whys),
        "sure": option.is_sure,
        "way": option.cost.way,
        "in_time": option.in_time,
        **timing_json(option.cost, option.status),
        "complete": option.is_complete,
        "gaps": list(dict.fromkeys(gap.name for gap in option.cost.gaps)),
        "good_pieces": _number(option.good),
        "likely_to_sell": _number(option.likely),
        "total": ends(*option.total),
        "per_good_piece": ends(*option.per_good),
        "per_likely_piece": ends(*option.per_likely),
        "margin_percent": dict(zip(("low", "high"), map(_number, option.margin), strict=True)),
        "bears_wanted_margin": bears(option),
        "break_even": dict(zip(("low", "high"), option.break_even, strict=True)),
        "left": _number(option.promise) if option.is_complete else None,
        "outcomes": {case: _outcome(outcome) for case, outcome in option.outcomes.items()},
        "cash": _cash(plan, option),
        "working": working_of(option),
    }


def working_of(option: "Option") -> dict[str, str]:
    """Return how the figures of one size came about, at the dearest of its costs."""
    from scorecard.costing.amounts import priced, shown, unit_figure
    from scorecard.size_words import average_words

    home = option.cost.readings[0].situation.inputs.rates.home
    total, each = priced(option.total[1], home), unit_figure(option.per_good[1], home)
    kept, takings = (unit_figure(one, home) for one in (option.selling.kept, option.selling.takings))
    return {
        "per_good_piece": f"{total} ÷ {shown(option.good)} good pieces",
        "per_likely_piece": f"{total} ÷ {shown(option.likely)} that are likely to sell",
        "margin_percent": f"({kept} − {each}) ÷ {takings}",
        "break_even": f"({total} + {priced(option.selling.fixed, home)}) ÷ {kept}, up to a whole piece",
        **({"left": average} if (average := average_words(option)) and option.is_complete else {}),
    }


def _outcome(outcome: "Outcome") -> Json:
    from scorecard.costing.costs_json import ends

    return {
        "demand": outcome.demand,
        "sold": _number(outcome.sold),
        "unsold": _number(outcome.unsold),
        "tied_up": ends(*outcome.tied_up),
        "left": ends(*outcome.left),
    }


def _cash(plan: "Plan", option: "Option") -> Json:
    from scorecard.costing.costs_json import ends
    from scorecard.ordering.cash import cash_of

    cash, timing = cash_of(option, plan.first_sale), option.cost.timing
    return {
        "begun": None if timing is None else "with a sample" if timing.course.with_sample else "with the order",
        "payments": [_payment(payment) for payment in cash.payments],
        "not_known": list(cash.unknown),
        "peak": ends(*cash.peak),
        "weeks_out": _number(cash.weeks_out),
        "weeks_at_peak": _number(cash.weeks_at_peak),
        "weeks_until_back": _number(cash.weeks_until_back),
    }


def _payment(payment: "Payment") -> Json:
    from scorecard.costing.costs_json import ends

    return {"what": payment.what, "when": payment.moment, "day": _number(payment.day), "paid": ends(*payment.paid)}


def _step(step: "Step") -> Json:
    from scorecard.size_words import step_words

    known = step.is_known
    return {
        "from": step.smaller.pieces,
        "to": step.larger.pieces,
        "verdict": step.verdict,
        "more_money": _number(step.more_money) if known else None,
        "must_sell": step.must_sell if known else None,
        "no_dearer_from": step.less_from,
        "gain": _number(step.gain) if known else None,
        "gains": {case: _number(gain) for case, gain in step.gains.items()} if known else {},
        "words": step_words(step),
    }


def _newsvendor(one: "MakerPlan") -> Json | None:
    from scorecard.quantity_words import fractile_working

    found = one.newsvendor
    if found is None:
        return None
    tier = found.tier
    return {
        "pieces": found.pieces,
        "further_piece": _number(tier.further),
        "missed": _number(tier.missed),
        "left_over": _number(tier.left_over),
        "ratio": _figure(tier.ratio),
        "priced_at": tier.first,
        "best_size": found.nearest.pieces,
        "working": fractile_working(found),
    }


def _steady(one: "MakerPlan") -> Json | None:
    found = one.steady
    if found is None:
        return None
    return {
        "economic_order_quantity": found.economic,
        "orders": _figure(found.orders),
        "yearly_cost": _figure(found.cost),
        "sizes": [{"pieces": size.pieces, "yearly_cost": _figure(size.cost)} for size in found.sizes],
        "best_size": found.best.pieces,
    }


def _number(amount: Decimal | None) -> float | None:
    from scorecard.costing.costs_json import number

    return None if amount is None else number(amount)


def _figure(number: float) -> float:
    from scorecard.figures import figure

    return figure(number)
