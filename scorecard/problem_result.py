"""The machine-readable result of a run that the files' problems stopped: it needs nothing of the calculation."""

from collections.abc import Sequence
from typing import Any

from scorecard.errors import Problem

SCHEMA = "scorecard/1"


def problems_result(problems: Sequence[Problem], warnings: Sequence[Problem] = ()) -> dict[str, Any]:
    """Return the result of a run that was stopped: every problem, and the warnings found besides."""
    return {
        "schema": SCHEMA,
        "problems": [one.as_json() for one in problems],
        "warnings": [one.as_json() for one in warnings],
    }
