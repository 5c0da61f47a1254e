"""What changed since the run before: leader, ranks and scores, and to what each change of score is due.

Enters: the result of an earlier run, and a calculation with its own result. Leaves: the changes, ready for the result.
A change of score is split exactly: Σ Δshare · mean points is due to weights, Σ mean share · Δpoints to answers, or to
value functions and brief where the answer is as it was.
"""

from collections.abc import Mapping, Sequence
from math import fsum
from typing import Any

import numpy as np

from scorecard.answers import Answers
from scorecard.criteria import Criterion
from scorecard.figures import figure
from scorecard.points import counted_points, least_and_greatest

Json = dict[str, Any]

MOST = 60  # makers whose change is split: those that are, or were, so high in the ranking
LEAST = 5e-7  # changes of score below this are none
OWN_KEYS = frozenset({"as_of", "since_last_time"})


def is_same_run(before: Json, now: Json) -> bool:
    """Return whether two results are the same but for the day and what they were compared with."""
    return _without(before) == _without(now)


def _without(result: Json) -> Json:
    return {key: value for key, value in result.items() if key not in OWN_KEYS}


def since(before: Json, now: Json, criteria: Sequence[Criterion]) -> Json:
    """Return what changed from an earlier result to this one.

    Parameters
    ----------
    before, now : results of schema ``scorecard/1``
    criteria : those of this run, in the order of the file

    Returns
    -------
    ready for the result's key ``since_last_time``
    """
    old, new = _by_name(before), _by_name(now)
    both = [name for name in new if name in old]
    near = [name for name in both if _is_near(old[name]) or _is_near(new[name])]
    changes = [_change(old[name], new[name], (before, now), criteria) for name in near]
    return {
        "compared_with": before["as_of"],
        "leaders_before": before["leaders"],
        "leaders_now": now["leaders"],
        "makers": [one for one in changes if _is_change(one)],
        "new": [name for name in new if name not in old],
        "gone": [name for name in old if name not in new],
    }


def _by_name(result: Json) -> dict[str, Json]:
    return {one["maker"]: one for one in result["makers"]}


def _is_near(maker: Json) -> bool:
    return maker["rank"] is None or maker["rank"] <= MOST


def _is_change(one: Json) -> bool:
    return bool(one["rank_before"] != one["rank"] or abs(one["score"] - one["score_before"]) > LEAST)


def _change(old: Json, new: Json, runs: tuple[Json, Json], criteria: Sequence[Criterion]) -> Json:
    """Return one maker's change of rank and score, and what each part of it is due to."""
    parts = split(old["criteria"], new["criteria"], runs, {one.key: one for one in criteria})
    return {
        "maker": new["maker"],
        "rank_before": old["rank"],
        "rank": new["rank"],
        "score_before": old["score"],
        "score": new["score"],
        "due_to": {what: figure(part) for what, part in parts.items()},
    }


def split(
    old: Mapping[str, Json], new: Mapping[str, Json], runs: tuple[Json, Json], criteria: Mapping[str, Criterion]
) -> dict[str, float]:
    """Return the parts of one maker's change of score; they add up to it.

    Parameters
    ----------
    old, new : its criteria in either result
    runs : both results, for shares and for what answers were worth
    criteria : those of the later run, by key

    Returns
    -------
    in points of score, by "weights", "answers", "value_functions_and_brief"
    """
    before, now = runs
    weights, answers, functions = [], [], []
    for key in dict.fromkeys((*old, *new)):
        share, later = before["shares"].get(key, 0.0), now["shares"].get(key, 0.0)
        worth, then = _worths(old.get(key), new.get(key))
        weights.append((later - share) * (worth + then) / 2)
        of_function = _of_function(old.get(key), new.get(key), runs, criteria.get(key))
        functions.append((share + later) / 2 * of_function)
        answers.append((share + later) / 2 * (then - worth - of_function))
    return {"weights": fsum(weights), "answers": fsum(answers), "value_functions_and_brief": fsum(functions)}


def _worths(old: Json | None, new: Json | None) -> tuple[float, float]:
    """Return the points before and now; a criterion that is new or gone is taken to have had those of the other run."""
    if old is None or new is None:
        only = float((old or new or {"points": 0.0})["points"])
        return only, only
    return float(old["points"]), float(new["points"])


def _of_function(old: Json | None, new: Json | None, runs: tuple[Json, Json], criterion: Criterion | None) -> float:
    """Return the part of a change of points that is due to the value function or the brief."""
    if old is None or new is None or criterion is None or not _is_worth_otherwise(criterion, runs):
        return 0.0
    if old["answer"] == new["answer"]:
        return float(new["points"]) - float(old["points"])
    worth = worth_now(criterion, old["counts_as"])
    return 0.0 if worth is None else worth - float(old["points"])


def _is_worth_otherwise(criterion: Criterion, runs: tuple[Json, Json]) -> bool:
    """Return whether what an answer is worth changed between two runs."""
    before, now = (run["value_functions"].get(criterion.key) for run in runs)
    return before != now or (criterion.per_quantity and runs[0]["brief"] != runs[1]["brief"])


def worth_now(criterion: Criterion, counts_as: Any) -> float | None:
    """Return the points of what an answer counted as, by the value function of this run.

    None for an unknown answer, and for a choice that is no longer one.
    """
    ends = _ends(criterion, counts_as)
    if ends is None:
        return None
    low, high = least_and_greatest(criterion, Answers(np.array([ends[0]]), np.array([ends[1]])))
    return float(counted_points(low, high, criterion.unknown)[0])


def _ends(criterion: Criterion, counts_as: Any) -> tuple[float, float] | None:
    match counts_as, criterion.choices:
        case str(), choices if choices is not None and counts_as in choices:
            at = float(choices.index(counts_as))
            return at, at
        case {"low": low, "high": high}, None:
            return -np.inf if low is None else float(low), np.inf if high is None else float(high)
        case (int() | float()) as number, None:
            return float(number), float(number)
    return None
