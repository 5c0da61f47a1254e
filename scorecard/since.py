"""What changed since the run before: leader, ranks and scores, and to what each change of score is due.

Enters: the result of an earlier run, and a calculation with its own result. Leaves: the changes, ready for the result.
A change of score is split exactly: Σ Δshare · mean points is due to weights, Σ mean share · Δpoints to answers, or to
value functions and brief where the answer is as it was, or where a measure moved though the maker's own cells did not.
A change of rank is due to makers that came, went, were ruled out or let in, or that passed one another.
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
    makers = [
        one | {"rank_due_to": _rank_due_to(one["maker"], old, new, (before, now))}
        for one in filter(_is_change, changes)
    ]
    return {
        "compared_with": before["as_of"],
        "leaders_before": before["leaders"],
        "leaders_now": now["leaders"],
        "makers": makers,
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
    if old is None or new is None or criterion is None:
        return 0.0
    if _is_same_cells(old, new):
        return float(new["points"]) - float(old["points"])
    if not _is_worth_otherwise(criterion, runs):
        return 0.0
    if old["answer"] == new["answer"]:
        return float(new["points"]) - float(old["points"])
    worth = worth_now(criterion, old["counts_as"])
    return 0.0 if worth is None else worth - float(old["points"])


def _is_same_cells(old: Json, new: Json) -> bool:
    """Return whether a measure was worked out from the same cells of the maker; not known of runs that did not say."""
    return "drawn_from" in old and old["drawn_from"] == new.get("drawn_from")


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


def _rank_due_to(maker: str, old: Mapping[str, Json], new: Mapping[str, Json], runs: tuple[Json, Json]) -> Json:
    """Return what changed a rank: why it is in the ranking or out of it now, else which other makers moved it."""
    due: Json = {key: [] for key in ("causes", "new", "gone", "ruled_out", "let_in", "passed", "passed_by")}
    rank, later = old[maker]["rank"], new[maker]["rank"]
    if (rank is None) != (later is None):
        due["causes"] = _causes(old[maker], new[maker], runs)
    elif rank is not None and rank != later:
        for rival in dict.fromkeys((*old, *new)):
            then, now = _is_ahead(old.get(rival), rank), _is_ahead(new.get(rival), later)
            if then != now:
                due[_movement(old.get(rival), new.get(rival), is_ahead=now)].append(rival)
    return due


def _is_ahead(rival: Json | None, rank: int) -> bool:
    return rival is not None and rival["rank"] is not None and rival["rank"] < rank


def _movement(old: Json | None, new: Json | None, *, is_ahead: bool) -> str:
    """Return how a rival that was, or is, ahead of a maker moved it."""
    if old is None or new is None:
        return "new" if old is None else "gone"
    if old["rank"] is None or new["rank"] is None:
        return "let_in" if old["rank"] is None else "ruled_out"
    return "passed_by" if is_ahead else "passed"


def _causes(old: Json, new: Json, runs: tuple[Json, Json]) -> list[str]:
    """Return why a maker is ruled out now, or no longer: of every limit that it fails in the one run alone."""
    failing, passing = (old, new) if old["rank"] is None else (new, old)
    limits = [run.get("limits") for run in runs]
    then, now = (found if isinstance(found, dict) else None for found in limits)
    keys = [key for key in _failed(failing) if key not in _failed(passing)]
    causes = [_cause(key, old["criteria"].get(key), new["criteria"].get(key), (then, now), runs) for key in keys]
    return list(dict.fromkeys(causes)) or ["limits"]


def _failed(maker: Json) -> list[str]:
    found = maker.get("failed_limits")
    return [key for key in found if isinstance(key, str)] if isinstance(found, list) else []


def _cause(
    key: str, old: Json | None, new: Json | None, limits: tuple[Json | None, Json | None], runs: tuple[Json, Json]
) -> str:
    then, now = limits
    if old is None or new is None or then is None or now is None or then.get(key) != now.get(key):
        return "limits"
    if _is_same_cells(old, new) or (old["answer"] == new["answer"] and runs[0]["brief"] != runs[1]["brief"]):
        return "value_functions_and_brief"
    return "answers"
