"""What was computed, in the sentences that screens and pages share: the verdict, what moves it, what to ask.

Enters: a calculation. Leaves: plain sentences, numbers with one decimal, makers and criteria by their names.
"""

from collections.abc import Sequence
from itertools import groupby
from math import inf, isinf

from scorecard.asks import question_phrase
from scorecard.calculation import Calculation
from scorecard.words import listed, rounded


def verdict_sentence(calculation: Calculation) -> str:
    """Return the verdict as one sentence, without its full stop."""
    verdict, names = calculation.verdict, calculation.case.table.makers
    if verdict.leader is None:
        return "No maker passes every limit"
    leader = names[verdict.leader]
    match verdict.kind:
        case "close":
            return f"Too close to call between {_level_names(calculation)}: {_decides(verdict.moved or 0.0)} decides it"
        case "one answer" if verdict.question is not None:
            return f"{leader} leads, but one answer could change it: {question_phrase(calculation, verdict.question)}"
        case "several answers":
            return f"{leader} leads; no one open answer could change that, but several together could"
        case "alone":
            return f"{leader} is the only maker that passes every limit{_yet(calculation)}"
        case _:
            return f"{leader} leads whatever the open answers turn out to be"


def _yet(calculation: Calculation) -> str:
    first = calculation.ranking.order[0]
    return ", and it may yet fail one" if calculation.screening.may_fail[first].any() else ""


def _level_names(calculation: Calculation) -> str:
    names, leaders = calculation.case.table.makers, calculation.ranking.leaders
    if len(leaders) > 1:
        return listed(names[maker] for maker in leaders)
    pair = (calculation.verdict.leader, calculation.verdict.rival)
    return listed(names[maker] for maker in pair if maker is not None)


def _decides(moved: float) -> str:
    if moved == 0:
        return "moving any weight at all"
    return f"moving {of_hundred(moved)} of weight"


def of_hundred(part: float) -> str:
    """Return a part of 1 as so many of 100, never rounding something to nothing.

    Examples
    --------
    >>> of_hundred(0.042), of_hundred(0.0001)
    ('4.2 of 100', 'less than 0.1 of 100')
    """
    return f"{rounded(part * 100)} of 100" if part == 0 or part >= 0.0005 else "less than 0.1 of 100"


def change_sentence(calculation: Calculation, rival: int) -> str:
    """Return what the smallest change against one rival is, as a sentence without its full stop."""
    name = calculation.case.table.makers[rival]
    change = calculation.firmness.change_against(rival)
    if change.weights is None or change.moved is None:
        return f"no weighting brings {name} level"
    if change.moved == 0:
        return f"{name} is level already"
    titles = [criterion.title for criterion in calculation.case.criteria]
    moves = change.weights - calculation.shares
    taken = [(titles[at], -by) for at, by in enumerate(moves.tolist()) if by < -1e-12]
    given = [titles[at] for at, by in enumerate(moves.tolist()) if by > 1e-12]
    return f"moving {of_hundred(change.moved)} from {_sources(taken)} to {listed(given)} brings {name} level"


def _sources(taken: Sequence[tuple[str, float]]) -> str:
    if len(taken) == 1:
        return taken[0][0]
    return listed(f"{title} ({rounded(part * 100)})" for title, part in taken)


def range_sentence(calculation: Calculation, criterion: int) -> str:
    """Return how far one weight can move, in weights as typed, as a sentence without its full stop."""
    found = calculation.firmness.weight_ranges[criterion]
    leader = calculation.case.table.makers[calculation.ranking.order[0]]
    if found is None:
        return "it has all the weight, so there is nothing to move it against"
    low, high = calculation.firmness.typed_ends(criterion, calculation.case.criteria)
    if found.overtaken_below is None and found.overtaken_above is None:
        return f"{leader} stays first whatever this weight is"
    names = calculation.case.table.makers
    below = "" if found.overtaken_below is None else f"; below that, {names[found.overtaken_below]}"
    above = "" if found.overtaken_above is None else f", then {names[found.overtaken_above]}"
    upto = "upwards" if high is None or isinf(high) else f"to {rounded(high)}"
    return f"{leader} stays first from {rounded(low or 0.0)} {upto}{above}{below}"


def spread_of_points(calculation: Calculation, criterion: int) -> float:
    """Return by how many points of score a criterion moves the ranked makers apart, at most."""
    ranked = list(calculation.ranking.order)
    if not ranked:
        return 0.0
    points = calculation.points.counted[ranked, criterion]
    return float(calculation.shares[criterion] * (points.max(initial=-inf) - points.min(initial=inf)))


def rule_sentence(calculation: Calculation) -> str | None:
    """Return who leads as the open answers turn out worst, middling or best, where these differ; else None."""
    names = calculation.case.table.makers
    by_rule = calculation.firmness.leaders_by_rule
    if len(set(by_rule.values())) < 2:
        return None
    words = {"worst": "at their worst", "middle": "in the middle", "best": "at their best"}
    said = [
        f"{listed((words[rule] for rule in rules), 'or')}, {listed(names[one] for one in leaders)}"
        for leaders, rules in groupby(by_rule, key=lambda rule: by_rule[rule])
    ]
    return f"With the open answers {'; '.join(said)} would lead"
