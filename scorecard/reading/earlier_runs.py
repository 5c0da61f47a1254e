"""Earlier runs: the last result in the history of a folder that is another than this one.

Enters: the folder's history, and this run's result. Leaves: the earlier result, or None; a file that is no result of
this kind is passed over, since nothing is lost by it.
"""

import json
from pathlib import Path
from typing import Any

from scorecard.since import is_same_run

MOST_BYTES = 20_000_000
MOST_FILES = 50  # looked at, the newest first
NEEDED = ("as_of", "leaders", "makers", "shares", "value_functions", "brief")


def last_other_run(history: Path, now: dict[str, Any]) -> dict[str, Any] | None:
    """Return the newest result that differs from this one.

    Parameters
    ----------
    history : the folder in which every run's result stays; it need not be there
    now : this run's result
    """
    for path in sorted(history.glob("*.json"), reverse=True)[:MOST_FILES]:
        found = _result_in(path)
        if found is not None and not is_same_run(found, now):
            return found
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
