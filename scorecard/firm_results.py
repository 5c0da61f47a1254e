"""How firm first place is, as part of the machine-readable result."""

from typing import Any

import numpy as np

from scorecard.calculation import Calculation
from scorecard.figures import figure, figures
from scorecard.sensitivity.rank_shares import RankShares
from scorecard.sensitivity.weight_ranges import WeightRange
from scorecard.verdict import could_lead, surely_lead

Json = dict[str, Any]


def firm_result(calculation: Calculation) -> Json:
    """Return the keys of the result that say how firm first place is.

    Parameters
    ----------
    calculation : of a case on a day
    """
    firmness, keys = calculation.firmness, calculation.case.criteria.keys
    names = calculation.case.table.makers
    by_rule = {rule: [names[one] for one in leaders] for rule, leaders in firmness.leaders_by_rule.items()}
    return {
        "guaranteed_leaders": [names[one] for one in surely_lead(calculation.ranking, calculation.screening)],
        "possible_leaders": [names[one] for one in could_lead(calculation.ranking, calculation.screening)],
        "leaders_by_rule": by_rule,
        "weight_ranges": {key: _range(calculation, at) for at, key in enumerate(keys)},
        "smallest_change": [_change(calculation, rival) for rival in firmness.rivals],
        "rank_shares": {kind: _rank_shares(calculation, found) for kind, found in firmness.rank_shares.items()},
        "first_shares": _first_shares(calculation),
        **_duels(calculation),
        "can_lead": _can_lead(calculation),
        "beats_on_everything": [{"maker": names[one], "beats": names[other]} for one, other in firmness.beats],
    }


def _can_lead(calculation: Calculation) -> Json:
    names, all_found = calculation.case.table.makers, calculation.firmness.can_lead
    able = [found.shares for found in all_found if found.shares is not None]
    shares = iter(figures(np.array(able, dtype=float)))
    keys = calculation.case.criteria.keys
    return {
        names[maker]: {
            "possible": found.possible,
            "level": found.level,
            "moved": None if found.moved is None else figure(found.moved),
            "shares": {} if found.shares is None else dict(zip(keys, next(shares), strict=True)),
            "beaten_by": found.beaten_by and {names[rival]: figure(part) for rival, part in found.beaten_by.items()},
        }
        for maker, found in zip(calculation.ranking.order, all_found, strict=True)
    }


def _front(calculation: Calculation) -> list[str]:
    return [calculation.case.table.makers[maker] for maker in calculation.firmness.front]


def _rank_shares(calculation: Calculation, found: RankShares) -> Json:
    return {
        "draws": found.draws,
        "half_width": figure(found.half_width),
        "shares": dict(zip(_front(calculation), figures(found.shares), strict=True)),
    }


def _first_shares(calculation: Calculation) -> Json | None:
    found = calculation.firmness.first_shares
    if found is None:
        return None
    names, shares = calculation.case.table.makers, found.shares.tolist()
    seen = {
        names[maker]: figure(share) for maker, share in zip(calculation.ranking.order, shares, strict=True) if share
    }
    return {"draws": found.draws, "half_width": figure(found.half_width), "shares": seen}


def _duels(calculation: Calculation) -> Json:
    found = calculation.firmness.duels
    if found is None:
        return {"duels": {}, "mean_ranks": {}}
    names = _front(calculation)
    rows = zip(names, figures(found.beats), strict=True)
    return {
        "duels": {name: _against_others(name, names, row) for name, row in rows},
        "mean_ranks": dict(zip(names, figures(found.mean_ranks), strict=True)),
    }


def _against_others(name: str, names: list[str], row: list[float]) -> Json:
    parts = dict(zip(names, row, strict=True))
    del parts[name]
    return parts


def _range(calculation: Calculation, criterion: int) -> Json:
    ranges = calculation.firmness.weight_ranges
    share = {"share": figure(calculation.shares[criterion])}
    found: WeightRange | None = ranges[criterion] if ranges else None
    over = calculation.firmness.over_answers[criterion] if ranges else None
    if found is None or over is None:
        ends = ("low", "high", "typed_low", "typed_high", "overtaken_below", "overtaken_above")
        return {**share, **dict.fromkeys((*ends, "guaranteed", "possible"))}
    low, high = calculation.firmness.typed_ends(criterion, calculation.case.criteria)
    return {
        **share,
        "low": figure(found.low),
        "high": figure(found.high),
        "typed_low": None if low is None else figure(low),
        "typed_high": None if high is None else figure(high),
        "overtaken_below": _name(calculation, found.overtaken_below),
        "overtaken_above": _name(calculation, found.overtaken_above),
        "guaranteed": _ends(over.guaranteed),
        "possible": _ends(over.possible),
    }


def _ends(found: WeightRange | None) -> Json | None:
    return None if found is None else {"low": figure(found.low), "high": figure(found.high)}


def _name(calculation: Calculation, maker: int | None) -> str | None:
    return None if maker is None else calculation.case.table.makers[maker]


def _change(calculation: Calculation, rival: int) -> Json:
    change = calculation.firmness.change_against(rival)
    return {
        "rival": _name(calculation, rival),
        "moved": None if change.moved is None else figure(change.moved),
        "shares": {} if change.weights is None else shares_by_criterion(calculation, change.weights.tolist()),
    }


def shares_by_criterion(calculation: Calculation, shares: list[float]) -> Json:
    """Return shares of (criteria,) by criterion key."""
    return {key: figure(share) for key, share in zip(calculation.case.criteria.keys, shares, strict=True)}
