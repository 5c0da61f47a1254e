"""Landed costs as the machine-readable results give them: ``landed_costs`` of ``score``, and all that ``cost`` prints.

Enters: a calculation. Leaves: plain dictionaries and lists; every amount in the brief's currency, null where open.
"""

from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING, Any

from scorecard.calculation import Calculation
from scorecard.costed import Costed
from scorecard.reasons import why_ruled_out

if TYPE_CHECKING:
    from scorecard.costing.landed import LandedCost

Json = dict[str, Any]

SCHEMA = "scorecard-cost/1"
SAMPLED = 3  # makers of the first ranks whose samples are added up


def why_out(calculation: Calculation) -> dict[str, str]:
    """Return why each quoted maker that is ruled out is so, in short."""
    case, costed = calculation.case, calculation.case.costed
    quoted = costed.chosen if costed else {}
    return {
        case.table.makers[maker]: "; ".join(_limits_failed(calculation, maker))
        for maker in calculation.ranking.ruled_out
        if case.table.makers[maker] in quoted
    }


def _limits_failed(calculation: Calculation, maker: int) -> Iterator[str]:
    fails = calculation.screening.fails[maker].tolist()
    for criterion, counting, failed in zip(calculation.case.criteria, calculation.countings, fails, strict=True):
        if failed:
            yield why_ruled_out(criterion, counting, maker)


def in_order(calculation: Calculation) -> list[tuple["LandedCost", str]]:
    """Return every cost, the cheapest first, with why its maker is ruled out, or ""; those that are come last."""
    costed, out = calculation.case.costed, why_out(calculation)
    costs = [(cost, out.get(cost.maker, "")) for cost in (costed.cheapest_first if costed else ())]
    return sorted(costs, key=lambda one: one[1] != "")


def landed_costs_of(costed: Costed | None, out: Mapping[str, str] = MappingProxyType({})) -> list[Json]:
    """Return every quoted maker by every way, the cheapest good piece first; none while nothing is quoted.

    Parameters
    ----------
    costed : of a case on a day
    out : why makers are ruled out, by name: these come last
    """
    if costed is None:
        return []
    from scorecard.costing.costs_json import landed_costs_json

    found = landed_costs_json(costed.inputs, costed.costs)
    told = [
        {
            **entry,
            "ruled_out": out.get(cost.maker),
            "surplus": _surplus(entry),
            "warnings": [one.as_json() for one in costed.doubts_on(cost)],
        }
        for entry, cost in zip(found, costed.cheapest_first, strict=True)
    ]
    return sorted(told, key=lambda entry: entry["ruled_out"] is not None)


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
        "landed_costs": landed_costs_of(costed, why_out(calculation)),
        "not_quoted": not_quoted(calculation),
        **_beside(calculation, costed),
        "set_aside": [one.as_json() for one in case.set_aside],
        "warnings": [one.as_json() for one in case.warnings],
    }


def _beside(calculation: Calculation, costed: Costed | None) -> Json:
    """Return what stands beside the sums: rates, what would change the cheapest, what sampling costs, cautions."""
    ranked = calculation.ranked_costs
    if costed is None or ranked is None:
        return {"rates": [], "currency_changes": [], "sampling": None, "sources": None, "cautions": []}
    from scorecard.costing.cautions import cautions
    from scorecard.costing.costs_json import currency_changes_json, rates_json, sampling_json
    from scorecard.costing.paying import sampling_cost
    from scorecard.costing.sources import sources_json

    return {
        "rates": rates_json(costed.inputs),
        "currency_changes": currency_changes_json(ranked.changes),
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
