"""Weights to try: what the page's script needs to rank the makers again, as one block of data, and the script itself.

Enters: a calculation, and which makers the page holds. Leaves: JSON that may stand in a script element. Points are
those that the calculation found, to the last bit: the script only weighs them. For an open answer there is besides
what turns another answer into points: pieces, number of ratings, knots or choices, limits.
"""

import json
from collections.abc import Sequence
from math import isfinite
from pathlib import Path
from typing import Any

import numpy as np
from markupsafe import Markup

from scorecard.brief import UNITS, Brief
from scorecard.calculation import Calculation
from scorecard.criteria import CriteriaSet, Criterion, Limit
from scorecard.reasons import with_unit
from scorecard.report.answers import typed_in_words
from scorecard.report.extent import Extent
from scorecard.report.texts import BREAKS, without_needless_marks
from scorecard.screening import allows, window
from scorecard.value_functions import Choices
from scorecard.words import TURNING

HERE = Path(__file__).parent
PLAIN = frozenset("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-")

Json = dict[str, Any]

_TOML = {ord(sign): f"\\u{ord(sign):04x}" for sign in ("\x7f", *sorted(TURNING | BREAKS))}
_HIDDEN = {ord(sign): f"\\u{ord(sign):04x}" for sign in (*"<>&\x7f", *sorted(TURNING | BREAKS))}


def script() -> str:
    """Return the script that stands at the end of every page; ``scripts/`` holds it as it is written."""
    return (HERE / "trying.js").read_text(encoding="utf-8")


def data_of(calculation: Calculation, extent: Extent) -> Markup | None:
    """Return the data that weights are tried with, as JSON safe between script tags; None where no two are ranked.

    Parameters
    ----------
    calculation : of a case on a day, made fit for a page
    extent : which makers travel with the page, and for which of them answers in words and open answers do
    """
    if len(calculation.ranking.order) < 2:
        return None
    criteria = calculation.case.criteria
    words: dict[str, int] = {}
    detailed = set(extent.detailed)
    makers = [_maker(calculation, maker) for maker in sorted(extent.tried)]
    for maker, told in zip(sorted(extent.tried), makers, strict=True):
        if maker in detailed:
            told |= _answers(calculation, maker, words)
    return _embedded(
        {
            "criteria": [_criterion(one, calculation.case.brief) for one in criteria],
            "makers": makers,
            "words": list(words),
            "left_out": len(calculation.ranking.order) - len(makers),
            "lines": _where_lines_go(criteria),
        }
    )


def _embedded(content: Json) -> Markup:
    """Return JSON in which nothing ends a script element, and nothing is hidden from a reader of the page's source."""
    text = json.dumps(content, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    return Markup(without_needless_marks(text).translate(_HIDDEN))  # noqa: S704 - all that could be markup was written otherwise


def _maker(calculation: Calculation, maker: int) -> Json:
    points, screening = calculation.points, calculation.screening
    ends = np.stack([points.low[maker], points.high[maker], points.reach[maker]], axis=1).tolist()
    return {
        "name": calculation.case.table.makers[maker],
        "points": [_number(low) if low == high == reach else _numbers((low, high, reach)) for low, high, reach in ends],
        "unknown": np.flatnonzero(~points.known[maker]).tolist(),
        "may_fail": np.flatnonzero(screening.may_fail[maker]).tolist(),
    }


def _answers(calculation: Calculation, maker: int, words: dict[str, int]) -> Json:
    """Return a maker's answers in words, as places in the list of words, and those that are open in figures."""
    told = [typed_in_words(calculation, maker, at) for at in range(len(calculation.case.criteria))]
    asked = [one.criterion for one in calculation.questions if one.maker == maker]
    return {
        "words": [words.setdefault(one, len(words)) for one in told],
        "open": {str(at): _open(calculation, maker, at) for at in sorted(asked)},
    }


def _open(calculation: Calculation, maker: int, at: int) -> Json:
    counting, criterion = calculation.countings[at], calculation.case.criteria.criteria[at]
    typed = (float(counting.typed.low[maker]), float(counting.typed.high[maker]))
    answer: Json = {"typed": _numbers(typed) if counting.typed.known[maker] else None}
    if criterion.per_quantity:
        answer["pieces"] = _numbers([float(pieces[maker]) for pieces in counting.pieces])
    if counting.ratings is not None:
        answer["ratings"] = _numbers((float(counting.ratings.low[maker]), float(counting.ratings.high[maker])))
    return answer


def _criterion(criterion: Criterion, brief: Brief) -> Json:
    told: Json = {
        "key": criterion.key,
        "title": criterion.title,
        "weight": _number(criterion.weight),
        "unknown": criterion.unknown,
        "heading": f"[criteria.{_quoted(criterion.key)}]",
        "unit": criterion.unit,
        "one": with_unit("1", criterion.unit),
    }
    if criterion.choices is not None:
        return told | {"choices": _choices(criterion)}
    return told | _about_numbers(criterion, brief)


def _choices(criterion: Criterion) -> list[Json]:
    limit, table = criterion.limit or Limit(), criterion.value.table if isinstance(criterion.value, Choices) else ()
    return [{"name": name, "points": _number(worth), "passes": allows(limit, name)} for name, worth in table]


def _about_numbers(criterion: Criterion, brief: Brief) -> Json:
    told: Json = {"knots": [_numbers(knot) for knot in getattr(criterion.value, "knots", ())]}
    if criterion.within is not None:
        told["within"] = _numbers(criterion.within)
    if criterion.limit is not None:
        told["window"] = _numbers(window(criterion.limit))
    if criterion.steady is not None:
        told["steady"] = _numbers((criterion.steady.usual, criterion.steady.usual_counts_as))
    if criterion.per_quantity:
        told["units"] = {unit: _number(pieces) for unit in UNITS if (pieces := brief.pieces_per(unit)) is not None}
    return told


def _where_lines_go(criteria: CriteriaSet) -> Json:
    """Return what has to be said above lines for the criteria file, and whether all of them are needed."""
    table = {"ranks": "an order of importance", "pairs": "comparisons by pairs"}.get(criteria.note.method)
    if table is None:
        return {"all": False, "above": "In criteria.toml, change the line “weight = …” under each of these headings."}
    above = (
        f"The saved weights come from {table}. In criteria.toml, delete the table [weights] and what belongs to it, "
    )
    return {"all": True, "above": f"{above}then write under each of these headings the line below it."}


def _quoted(key: str) -> str:
    """Return a key as TOML writes it."""
    return key if key and PLAIN.issuperset(key) else json.dumps(key, ensure_ascii=False).translate(_TOML)


def _number(number: float) -> int | float | None:
    """Return a number as JSON has it, None where it is infinite."""
    if not isfinite(number):
        return None
    return int(number) if float(number).is_integer() else float(number)


def _numbers(numbers: Sequence[float]) -> list[int | float | None]:
    return [_number(one) for one in numbers]
