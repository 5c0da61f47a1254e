"""Earlier runs: what changed since the last result in a folder's history that is another than this one.

Enters: the folder's history, and this run's result. Leaves: what changed, or None; a file that is no result of this
kind is passed over, since nothing is lost by it.
"""

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from scorecard.criteria import Criterion
from scorecard.since import is_same_run, since

MOST_BYTES = 3_000_000  # about 2,500 makers; a longer list would take longer to compare than to score
MOST_FILES = 5  # looked at, the newest first, until one can be read
NEEDED = ("as_of", "leaders", "makers", "shares", "value_functions", "brief")


def since_last_time(history: Path, now: dict[str, Any], criteria: Sequence[Criterion]) -> dict[str, Any] | None:
    """Return what changed since the newest result that differs from this one; None where there is none.

    Parameters
    ----------
    history : the folder in which every run's result stays; it need not be there
    now : this run's result
    criteria : those of this run, in the order of the file
    """
    for path in sorted(history.glob("*.json"), reverse=True)[:MOST_FILES]:
        found = _result_in(path)
        if found is None:
            continue
        return found.get("since_last_time") if is_same_run(found, now) else since(found, now, criteria)
    return None


def _result_in(path: Path) -> dict[str, Any] | None:
    """Return the result in a file, or None where there is none that can be compared."""
    try:
        if path.stat().st_size > MOST_BYTES:
            return None
        found = json.loads(path.read_bytes())
    except (OSError, ValueError, RecursionError):
        return None
    if not isinstance(found, dict) or found.get("schema") != "scorecard/1" or any(key not in found for key in NEEDED):
        return None
    return found
