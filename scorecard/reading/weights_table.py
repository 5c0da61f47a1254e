"""The table [weights] of the criteria file: weights from an order of importance, or from comparisons by pairs.

Enters: the table and the names of all criteria. Leaves: a weight for each, and how it came about.
"""

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import combinations
from typing import Literal

import numpy as np

from scorecard.criteria import WeightsNote
from scorecard.frozen import dataclass
from scorecard.reading.toml_tables import LONGEST_WORD, Table, checked_number, shown_value
from scorecard.weighting import (
    MOST_PAIRED,
    RANK_RULES,
    USUAL_RATIO_LIMIT,
    PairwiseWeights,
    pairwise_weights,
    tied_rank_weights,
)
from scorecard.words import listed, nearest, rounded

WEIGHTS_KEYS = ("method", "ranks", "rule", "pairs")

_METHODS: tuple[Literal["ranks", "pairs"], ...] = ("ranks", "pairs")
_KEYS_OF = {"ranks": ("method", "ranks", "rule"), "pairs": ("method", "pairs")}
_FRACTION = re.compile(r"\s*(\d{1,3}(?:\.\d{1,9})?)\s*/\s*(\d{1,3}(?:\.\d{1,9})?)\s*", re.ASCII)
_MOST = 9.0
_ROUNDING = 1e-9
_TRIPLE = 3

Pair = tuple[int, int]


@dataclass(frozen=True, slots=True)
class DerivedWeights:
    """Weights by criterion, adding up to 1, and how they came about."""

    weights: Mapping[str, float]
    note: WeightsNote


def read_weights(table: Table, names: Sequence[str]) -> DerivedWeights | None:
    """Return the weights, or None once their problems are noted.

    Parameters
    ----------
    table : the table [weights]
    names : the keys of all criteria of the file, sound or not
    """
    table.known_keys(WEIGHTS_KEYS, "[weights]")
    table.required(("method",), "[weights]")
    method = table.one_of("method", _METHODS)
    if method is None:
        _check_listings(table, names)
        return None
    for key in WEIGHTS_KEYS:
        if key in table and key not in _KEYS_OF[method]:
            found = f"'{key}' does not go with the method \"{method}\""
            table.problem("not-with-this-method", key, found, "Delete the line, or change the method")
    table.required((method,), "[weights]")
    if not names:
        return None
    return _by_ranks(table, names) if method == "ranks" else _by_pairs(table, names)


def _check_listings(table: Table, names: Sequence[str]) -> None:
    """Note what is wrong with either listing, whichever the method is meant to be."""
    if names and ("ranks" in table or "rule" in table):
        _by_ranks(table, names)
    if names and "pairs" in table:
        _by_pairs(table, names)


def _by_ranks(table: Table, names: Sequence[str]) -> DerivedWeights | None:
    """Return the weights by an order of importance."""
    rule = table.one_of("rule", RANK_RULES)
    places = table.list_of("ranks")
    if places is None:
        return None
    groups = [place if isinstance(place, list) else [place] for place in places]
    if [] in groups:
        table.problem(
            "empty-tie", "ranks", "an inner list is empty", "Name the criteria that share a place, or delete it"
        )
    named = _ranked_names(table, [item for group in groups for item in group], names)
    if named is None or [] in groups or ("rule" in table and rule is None):
        return None
    weights = tied_rank_weights([len(group) for group in groups], rule or "centroid")
    by_name = dict(zip(named, weights.tolist(), strict=True))
    return DerivedWeights({name: by_name[name] for name in names}, WeightsNote(method="ranks"))


def _ranked_names(table: Table, items: Sequence[object], names: Sequence[str]) -> list[str] | None:
    """Return the names in their order, or None unless each stands there once."""
    sound = [name for item in items if (name := _as_name(table, "ranks", item, names)) is not None]
    times = Counter(sound)
    for name in names:
        if times[name] != 1:
            code, found = ("ranked-twice", "stands more than once") if times[name] else ("not-ranked", "is missing")
            table.problem(code, "ranks", f"{shown_value(name)} {found}", "Name every criterion once")
    return sound if len(items) == len(names) == len(times) else None


def _as_name(table: Table, key: str, item: object, names: Sequence[str]) -> str | None:
    """Return an item that names a criterion."""
    if isinstance(item, str) and item in names:
        return item
    close = nearest(item, names) if isinstance(item, str) and len(item) < LONGEST_WORD else None
    wanted = f'Write "{close}" if that is meant' if close else f"The criteria are {listed(map(shown_value, names))}"
    table.problem("unknown-criterion", key, f"{shown_value(item)} is not the name of a criterion", wanted)
    return None


def _by_pairs(table: Table, names: Sequence[str]) -> DerivedWeights | None:
    """Return the weights by comparisons."""
    if len(names) > MOST_PAIRED:
        found = f"there are {len(names)} criteria, and comparing by pairs is for {MOST_PAIRED} at most"
        table.problem("too-many-for-pairs", "pairs", found, 'Take method = "ranks", or give fewer criteria')
    listing = [] if table.values.get("pairs") == [] else table.list_of("pairs")
    if listing is None:
        return None
    readings = [_judgement(table, item, names) for item in listing]
    told = [pair for pair, _ in readings if pair is not None]
    few = len(names) <= MOST_PAIRED
    is_sound = _are_once_each(table, told, names, is_all_told=few and len(told) == len(readings)) and few
    judged = {pair: value for pair, value in readings if pair is not None and value is not None}
    return _weighed(table, judged, names) if is_sound and len(judged) == len(readings) else None


def _are_once_each(table: Table, told: Sequence[Pair], names: Sequence[str], *, is_all_told: bool) -> bool:
    """Return whether every two criteria are compared once; where an entry cannot be told, none is called missing."""
    times = Counter((min(pair), max(pair)) for pair in told)
    for pair in times:
        if times[pair] > 1:
            table.problem(
                "pair-twice", "pairs", f"{_pair_named(pair, names)} are compared twice", "Keep one of the two"
            )
    missing = [pair for pair in combinations(range(len(names)), 2) if not times[pair]]
    if missing and is_all_told:
        found = f"not compared: {'; '.join(_pair_named(pair, names) for pair in missing)}"
        wanted = 'Add each as ["first", "second", 3], with how many times as important the first is'
        table.problem("pair-missing", "pairs", found, wanted)
    return not missing and len(times) == len(told)


def _pair_named(pair: Pair, names: Sequence[str]) -> str:
    """Return the names of a pair."""
    return f"{shown_value(names[pair[0]])} and {shown_value(names[pair[1]])}"


def _judgement(table: Table, item: object, names: Sequence[str]) -> tuple[Pair | None, float | None]:
    """Return one comparison: positions of the two criteria, and the value; None for what cannot be told."""
    if not isinstance(item, list) or len(item) != _TRIPLE:
        found = f"{shown_value(item)} is not two criteria and a number"
        table.problem("not-a-comparison", "pairs", found, 'Write each as ["first", "second", 3]')
        return None, None
    first, second = (_as_name(table, "pairs", name, names) for name in item[:2])
    value = _value(table, item[2])
    if first is None or second is None:
        return None, value
    if first == second:
        found = f"{shown_value(first)} is compared with itself"
        table.problem("pair-with-itself", "pairs", found, "Compare two criteria")
        return None, value
    return (names.index(first), names.index(second)), value


def _value(table: Table, typed: object) -> float | None:
    """Return how many times as important the first is as the second."""
    fraction = _FRACTION.fullmatch(typed) if isinstance(typed, str) else None
    if fraction:
        over, under = float(fraction[1]), float(fraction[2])
        value = over / under if under else 0.0
    else:
        number = checked_number(typed, table.at("pairs"), table.notes)
        if number is None:
            return None
        value = number
    if not (1 - _ROUNDING) / _MOST <= value <= _MOST * (1 + _ROUNDING):
        wanted = 'Write 1 for alike, up to 9, or "1/9" to "1/2" where the second is the more important'
        table.problem("beyond-nine", "pairs", f"{shown_value(typed)} is not between 1/9 and 9", wanted)
        return None
    return value


def _weighed(table: Table, judged: Mapping[Pair, float], names: Sequence[str]) -> DerivedWeights:
    """Return the weights of comparisons that are all there; those that disagree too much give a warning."""
    matrix = np.ones((len(names), len(names)))
    for (first, second), value in judged.items():
        matrix[first, second], matrix[second, first] = value, 1 / value
    result = pairwise_weights(matrix)
    if result.ratio > USUAL_RATIO_LIMIT:
        _warn_of_disagreement(table, judged, result, names)
    note = WeightsNote(
        method="pairs", ratio=result.ratio, lambda_max=result.lambda_max, random_index=result.random_index
    )
    return DerivedWeights(dict(zip(names, result.weights.tolist(), strict=True)), note)


def _warn_of_disagreement(
    table: Table, judged: Mapping[Pair, float], result: PairwiseWeights, names: Sequence[str]
) -> None:
    """Warn that the comparisons disagree, and name the one that fits worst as the user wrote it."""
    pair, fitting = result.worst_pair or (0, 1), result.fitting or 1.0
    if pair not in judged:
        pair, fitting = pair[::-1], 1 / fitting
    found = (
        f"the comparisons disagree with one another: consistency ratio {rounded(result.ratio, 2)}, where "
        f"{rounded(USUAL_RATIO_LIMIT, 2)} is usual at most ({result.random_index}). "
        f"{_pair_named(pair, names)} fit worst: {_as_ratio(judged[pair])}"
    )
    wanted = f"From the rest, {_as_ratio(fitting)} would fit; change it only if you agree"
    table.notes.warn("pairs-disagree", table.at("pairs"), found, wanted)


def _as_ratio(value: float) -> str:
    """Return a comparison as one writes it, within 1/9 and 9."""
    held = min(max(value, 1 / _MOST), _MOST)
    shorter = rounded(held if held >= 1 else 1 / held, 1).removesuffix(".0")
    return shorter if held >= 1 or shorter == "1" else f'"1/{shorter}"'
