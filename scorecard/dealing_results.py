"""Samples, own orders and checks, as part of the machine-readable result."""

from datetime import date
from math import isinf
from typing import Any

from scorecard.calculation import Calculation
from scorecard.case import Case
from scorecard.checks import Checked, checked, sign_of
from scorecard.figures import figure
from scorecard.remembered import totals_of
from scorecard.samples import SampleRound

Json = dict[str, Any]


def dealings_result(calculation: Calculation) -> Json:
    """Return what the result tells of samples, own orders and checks; nothing where nothing was written down."""
    case = calculation.case
    told = {one.maker for one in case.checks}
    found = {
        "samples": [_sample(one) for one in case.samples],
        "own_orders": own_orders_result(case, calculation.as_of),
        "checks": [_checked(maker, checked(case.checks, maker)) for maker in case.table.makers if maker in told],
    }
    return {key: value for key, value in found.items() if value}


def own_orders_result(case: Case, as_of: date) -> list[Json]:
    """Return what own orders come to, by maker in sheet order; none while there is none."""
    found = totals_of(case, as_of)
    if not found:
        return []
    from scorecard.memory_json import totals_json

    return [{"maker": maker, **totals_json(one)} for maker, one in found.items()]


def _sample(one: SampleRound) -> Json:
    return {
        "maker": one.maker,
        "row": one.row,
        "round": one.kind,
        "received_on": one.received_on.isoformat() if one.received_on else None,
        "mark": _ends(one.mark),
        "decision": one.decision,
    }


def _ends(ends: tuple[float, float] | None) -> Json | None:
    if ends is None:
        return None
    return {"low": figure(ends[0]), "high": None if isinf(ends[1]) else figure(ends[1])}


def _checked(maker: str, found: Checked) -> Json:
    return {
        "maker": maker,
        "done": [one.name for one in found.done],
        "open": list(found.open),
        "warning_signs": [sign_of(one) for one in found.signs],
    }
