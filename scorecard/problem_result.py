"""The machine-readable result of a run that the files' problems stopped: it needs nothing of the calculation."""

from collections.abc import Sequence
from typing import Any

from scorecard.errors import Problem

SCHEMA = "scorecard/1"


def problems_result(
    problems: Sequence[Problem], warnings: Sequence[Problem] = (), set_aside: Sequence[Problem] = ()
) -> dict[str, Any]:
    """Return the result of a run that was stopped: every problem, the warnings, and what was set aside, if anything."""
    result: dict[str, Any] = {
        "schema": SCHEMA,
        "problems": [one.as_json() for one in problems],
        "warnings": [one.as_json() for one in warnings],
    }
    return result | ({"set_aside": [one.as_json() for one in set_aside]} if set_aside else {})
