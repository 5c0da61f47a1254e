"""The machine-readable result of an inspection."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import Any

from scorecard.figures import figure
from scorecard.inspection.drawing import Spot
from scorecard.inspection.faults import TallyLine
from scorecard.inspection.outcome import Arrival, Judged, Outcome
from scorecard.inspection.outcome_words import claim_text
from scorecard.inspection.plan_words import slips
from scorecard.inspection.plans import Plan, SamplingPlan

Json = dict[str, Any]


def arrival_json(arrival: Arrival) -> Json:
    """Return what arrived."""
    price = arrival.price
    return {
        "maker": arrival.maker,
        "item": arrival.item,
        "ordered": arrival.ordered,
        "arrived": arrival.lot,
        "missing": arrival.missing,
        "accepted": arrival.accepted and list(arrival.accepted),
        "per_carton": arrival.per_carton,
        "cartons": arrival.cartons,
        **{
            key: day.isoformat() if day else None
            for key, day in (
                ("ordered_on", arrival.ordered_on),
                ("arrived_on", arrival.arrived_on),
                ("complain_until", arrival.complain_until),
            )
        },
        "piece_cost": price and {**_ends((price.low, price.high)), "currency": price.currency, "source": price.source},
    }


def lines_json(lines: Sequence[TallyLine]) -> list[Json]:
    """Return the lines of the sheet."""
    return [{"code": line.code, "kind": line.kind, "fault": line.text} for line in lines]


def plan_json(plan: SamplingPlan, seed: int, drawn: Sequence[Spot]) -> Json:
    """Return a sampling plan, with how likely bad lots slip through, and the pieces to open."""
    return {
        "level": plan.level,
        "to_open": plan.opened,
        "kinds": [_plan(one, list(_slips(plan, one))) for one in plan.plans],
        "seed": seed,
        "pieces": [{"carton": spot.carton, "piece": spot.piece} for spot in drawn],
    }


def _plan(one: Plan, slipping: list[Json]) -> Json:
    return {
        "kind": one.kind,
        "limit": figure(one.limit),
        "letter": one.letter,
        "opened": one.opened,
        "accept": one.accept,
        "reject": one.reject,
        "alone": one.alone,
        "slips_through": slipping,
    }


def _slips(plan: SamplingPlan, one: Plan) -> Iterator[Json]:
    for slip in slips(plan):
        if slip.plan == one:
            yield {"faulty": slip.faulty, "chance": figure(float(slip.chance))}


def outcome_json(outcome: Outcome) -> Json:
    """Return what the counts come to."""
    return {
        "opened": outcome.opened,
        "faulty": outcome.faulty,
        "share": figure(float(outcome.share)),
        "kinds": {kind: outcome.of(kind) for kind in ("critical", "major", "minor")},
        "counts": [
            {
                "code": count.line.code,
                "kind": count.line.kind,
                "fault": count.line.text or None,
                "pieces": count.pieces,
                "photographs": list(count.photographs),
            }
            for count in outcome.counts
        ],
        "judged": [_judged(one) for one in outcome.judged],
        "lost": outcome.lost,
        "lost_cost": _money(outcome.worth(outcome.lost)),
        "minor_cost": _money(outcome.worth(outcome.of("minor"))),
        "claim": claim_text(outcome),
    }


def _judged(one: Judged) -> Json:
    return {"kind": one.plan.kind, "found": one.found, "verdict": one.verdict, "lot_may_hold": one.most}


def _money(ends: tuple[Decimal, Decimal] | None) -> Json | None:
    return None if ends is None else _ends(ends)


def _ends(ends: tuple[Decimal, Decimal]) -> Json:
    return {"low": figure(float(ends[0])), "high": figure(float(ends[1]))}
