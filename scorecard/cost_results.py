"""Landed costs as the machine-readable results give them: ``landed_costs`` of ``score``, and all that ``cost`` prints.

Enters: a calculation. Leaves: plain dictionaries and lists; every amount in the brief's currency, null where open.
"""

from typing import Any

from scorecard.calculation import Calculation
from scorecard.costed import Costed

Json = dict[str, Any]

SCHEMA = "scorecard-cost/1"
SAMPLED = 3  # makers of the first ranks whose samples are added up


def landed_costs_of(costed: Costed | None) -> list[Json]:
    """Return every quoted maker by every way, the cheapest good piece first; none while nothing is quoted."""
    if costed is None:
        return []
    from scorecard.costing.costs_json import landed_costs_json

    found = landed_costs_json(costed.inputs, costed.costs)
    return [
        {**entry, "surplus": _surplus(entry), "warnings": [one.as_json() for one in costed.doubts_on(cost)]}
        for entry, cost in zip(found, costed.cheapest_first, strict=True)
    ]


def _surplus(entry: Json) -> Json:
    """Return how many pieces more are ordered than wanted."""
    return {end: pieces - entry["wanted"] for end, pieces in entry["quantity"].items()}


def cost_result(calculation: Calculation) -> Json:
    """Return what ``scorecard cost --json`` prints."""
    case, costed = calculation.case, calculation.case.costed
    return {
        "schema": SCHEMA,
        "title": case.title,
        "as_of": calculation.as_of.isoformat(),
        "currency": case.brief.currency if costed is None else costed.inputs.rates.home,
        "wanted": case.brief.quantity,
        "need_by": case.brief.need_by.isoformat() if case.brief.need_by else None,
        "landed_costs": landed_costs_of(costed),
        "not_quoted": not_quoted(calculation),
        **_beside(calculation, costed),
        "set_aside": [one.as_json() for one in case.set_aside],
        "warnings": [one.as_json() for one in case.warnings],
    }


def _beside(calculation: Calculation, costed: Costed | None) -> Json:
    """Return what stands beside the sums: rates, what would change the cheapest, what sampling costs, cautions."""
    if costed is None:
        return {"rates": [], "currency_changes": [], "sampling": None, "sources": None, "cautions": []}
    from scorecard.costing.cautions import cautions
    from scorecard.costing.costs_json import currency_changes_json, rates_json, sampling_json
    from scorecard.costing.paying import sampling_cost
    from scorecard.costing.sources import sources_json

    return {
        "rates": rates_json(costed.inputs),
        "currency_changes": currency_changes_json(costed.changes),
        "sampling": sampling_json(sampling_cost(costed.inputs, first_ranked(calculation))),
        "sources": sources_json(costed.inputs),
        "cautions": list(cautions(costed.inputs, costed.costs)),
    }


def not_quoted(calculation: Calculation) -> list[str]:
    """Return the ranked makers of which no price is written down, in the order of rank."""
    names, costed = calculation.case.table.makers, calculation.case.costed
    quoted = set(costed.chosen) if costed else set()
    return [names[maker] for maker in calculation.ranking.order if names[maker] not in quoted]


def first_ranked(calculation: Calculation, most: int = SAMPLED) -> list[str]:
    """Return the names of the first makers of the ranking."""
    return [calculation.case.table.makers[maker] for maker in calculation.ranking.order[:most]]
