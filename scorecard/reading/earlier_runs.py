"""Earlier runs: what changed since the last result in a folder's history that is another than this one.

Enters: the folder's history, and this run's result. Leaves: what changed, or None; a file that is no result of this
kind, or is not built as one, is passed over, since nothing is lost by it.
"""

import json
from collections.abc import Sequence
from datetime import date, datetime
from pathlib import Path
from typing import Any

from scorecard.criteria import Criterion
from scorecard.writing import history_name

MOST_BYTES = 3_000_000  # about 2,500 makers; a longer list would take longer to compare than to score
MOST_FILES = 5  # looked at, the newest first, until one can be read
LARGEST = 1_000  # no share, points, score or change of one is beyond it
LARGEST_ANSWER = 1e300


def _is_number(value: Any, largest: float = LARGEST) -> bool:
    is_number = isinstance(value, int | float) and not isinstance(value, bool)
    return is_number and bool(abs(value) <= largest)


def _is_text(value: Any) -> bool:
    """Say whether a value is a text that can be written: half of a sign of two halves cannot."""
    return isinstance(value, str) and not any("\ud800" <= sign <= "\udfff" for sign in value)


def _is_day(value: Any) -> bool:
    try:
        return bool(date.fromisoformat(value).isoformat() == value)
    except (TypeError, ValueError):
        return False


def _is_rank(value: Any) -> bool:
    return value is None or (isinstance(value, int) and not isinstance(value, bool) and value >= 1)


def _is_answer(value: Any) -> bool:
    """Say whether a value is what an answer can count as: a number, a choice, a range or unknown."""
    if isinstance(value, dict):
        ends = [value.get(key) for key in ("low", "high")]
        known = [end for end in ends if end is not None]
        return all(_is_number(end, LARGEST_ANSWER) for end in known) and known == sorted(known)
    return value is None or _is_text(value) or _is_number(value, LARGEST_ANSWER)


# a shape: a test of one value, [the shape of each], {key: its shape}, or {EACH: the shape under every key}
EACH = "*"
CRITERION = {"answer": _is_answer, "counts_as": _is_answer, "points": _is_number}
MAKER = {"maker": _is_text, "rank": _is_rank, "score": _is_number, "criteria": {EACH: CRITERION}}
NEEDED: dict[str, Any] = {
    "as_of": _is_day,
    "leaders": [_is_text],
    "makers": [MAKER],
    "shares": {EACH: _is_number},
    "value_functions": {EACH: lambda _: True},
    "brief": {},
}
PARTS = {"weights": _is_number, "answers": _is_number, "value_functions_and_brief": _is_number}
MOVED_BY = {key: [_is_text] for key in ("causes", "new", "gone", "ruled_out", "let_in", "passed", "passed_by")}
CHANGE = {
    "rank_before": _is_rank,
    "rank": _is_rank,
    "score_before": _is_number,
    "score": _is_number,
    "due_to": PARTS,
    "rank_due_to": MOVED_BY,
}
SINCE = {
    "compared_with": _is_day,
    "leaders_before": [_is_text],
    "leaders_now": [_is_text],
    "makers": [{"maker": _is_text, **CHANGE}],
    "new": [_is_text],
    "gone": [_is_text],
}


def _is_built(value: Any, shape: Any) -> bool:
    """Say whether a value of a JSON file is built as a shape is; further keys do no harm."""
    if isinstance(shape, list):
        return isinstance(value, list) and all(_is_built(one, shape[0]) for one in value)
    if not isinstance(shape, dict):
        return bool(shape(value))
    if not isinstance(value, dict):
        return False
    if EACH in shape:
        return all(_is_built(one, shape[EACH]) for one in value.values())
    return all(key in value and _is_built(value[key], one) for key, one in shape.items())


def since_last_time(
    history: Path, now: dict[str, Any], criteria: Sequence[Criterion], *, made: datetime | None = None
) -> dict[str, Any] | None:
    """Return what changed since the newest result that differs from this one; None where there is none.

    Parameters
    ----------
    history : the folder in which every run's result stays; it need not be there
    now : this run's result
    criteria : those of this run, in the order of the file
    made : the time of this run; results that a wrong clock dated after it come last
    """
    for path in _newest_first(history, made)[:MOST_FILES]:
        found = _result_in(path)
        if found is None:
            continue
        from scorecard.since import is_same_run, since

        if not is_same_run(found, now):
            return since(found, now, criteria)
        if "since_last_time" not in found:
            return None
        if _is_built(found["since_last_time"], SINCE):
            return dict(found["since_last_time"])
    return None


def _newest_first(history: Path, made: datetime | None) -> list[Path]:
    """Return the results in a history; of those of one second the one with the highest number is the newest."""
    now = None if made is None else history_name(made)

    def order(path: Path) -> tuple[bool, str, int]:
        second, _, number = path.stem.partition("Z-")
        second = f"{second.removesuffix('Z')}Z"
        return now is None or second <= now, second, int(number) if number.isdecimal() else 1

    return sorted(history.glob("*.json"), key=order, reverse=True)


def _result_in(path: Path) -> dict[str, Any] | None:
    """Return the result in a file, or None where there is none that can be compared."""
    try:
        if not path.is_file() or path.stat().st_size > MOST_BYTES:
            return None
        found = json.loads(path.read_bytes())
    except (OSError, ValueError, RecursionError):
        return None
    is_result = isinstance(found, dict) and found.get("schema") == "scorecard/1"
    return found if is_result and _is_built(found, NEEDED) else None
