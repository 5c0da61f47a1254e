"""Samples and checks, as part of the machine-readable result."""

from math import isinf
from typing import Any

from scorecard.calculation import Calculation
from scorecard.checks import Checked, checked, sign_of
from scorecard.figures import figure
from scorecard.samples import SampleRound

Json = dict[str, Any]


def dealings_result(calculation: Calculation) -> Json:
    """Return the keys of the result that tell of samples and checks; none where nothing was written down."""
    case = calculation.case
    told = {one.maker for one in case.checks}
    found = {
        "samples": [_sample(one) for one in case.samples],
        "checks": [_checked(maker, checked(case.checks, maker)) for maker in case.table.makers if maker in told],
    }
    return {key: value for key, value in found.items() if value}


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
