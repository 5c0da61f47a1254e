"""What was computed, in the sentences that screens and pages share: the verdict, what moves it, what to ask.

Enters: a calculation. Leaves: plain sentences, numbers with one decimal, makers and criteria by their names.
"""

from collections.abc import Callable, Container, Iterator, Sequence
from itertools import groupby
from math import inf, isinf

import numpy as np

from scorecard.asks import question_phrase
from scorecard.calculation import Calculation
from scorecard.ranking import TIE
from scorecard.sensitivity.rank_shares import ALIKE_DECIMALS
from scorecard.words import counted, drawn, known_words, listed, rounded

TOGETHER = "no one open answer could put another first by itself, but the open answers could change that"
NAMED = 10  # names in one list
DRAWN = {  # each by what has to be sure of the weights for it to be the one to believe
    "any": "If you are sure of no weight",
    "ordered": "If you are sure of the order of your weights alone",
    "near": "Even if each weight is about right",
}


def verdict_sentence(calculation: Calculation) -> str:
    """Return the verdict as one sentence, without its full stop."""
    verdict, names = calculation.verdict, calculation.case.table.makers
    if verdict.leader is None:
        return "No maker passes every limit"
    leader = names[verdict.leader]
    match verdict.kind:
        case "close":
            return f"Too close to call between {_level_names(calculation)}: {_decides(calculation)}"
        case "one answer" if verdict.question is not None:
            return f"{leader} leads, but one answer could change it: {question_phrase(calculation, verdict.question)}"
        case "several answers":
            return f"{leader} leads; {TOGETHER}"
        case "alone":
            return f"{leader} is {only_words(calculation)}{_yet(calculation)}"
        case _:
            return f"{leader} leads whatever the open answers turn out to be"


def reservation(calculation: Calculation) -> str:
    """Return what the verdict adds to who leads, as one sentence without its full stop."""
    verdict = calculation.verdict
    match verdict.kind:
        case "one answer" if verdict.question is not None:
            return f"One answer could change it: {question_phrase(calculation, verdict.question)}"
        case "several answers":
            return f"N{TOGETHER[1:]}"
        case "alone":
            return f"It is {only_words(calculation)}{_yet(calculation)}"
        case "sure" if any_open(calculation):
            return "It leads whatever the open answers turn out to be"
        case "sure":
            return "No answer is open that could change that"
        case _:
            return verdict_sentence(calculation)


def any_open(calculation: Calculation) -> bool:
    """Return whether any answer of a ranked maker could still change its score, or rule it out."""
    ranked = list(calculation.ranking.order)
    counts = calculation.points.open[ranked] & (calculation.shares > 0)
    return bool((counts | calculation.screening.may_fail[ranked]).any())


def only_words(calculation: Calculation) -> str:
    """Return what a maker is that is ranked by itself; of limits only where there are any."""
    limited = any(criterion.limit is not None for criterion in calculation.case.criteria)
    return "the only maker that passes every limit" if limited else "the only maker so far"


def _yet(calculation: Calculation) -> str:
    first = calculation.ranking.order[0]
    return ", and it may yet fail one" if calculation.screening.may_fail[first].any() else ""


def _level_names(calculation: Calculation) -> str:
    names, leaders = calculation.case.table.makers, calculation.ranking.leaders
    pair = (calculation.verdict.leader, calculation.verdict.rival)
    return some([names[maker] for maker in (leaders if len(leaders) > 1 else pair) if maker is not None])


def _decides(calculation: Calculation) -> str:
    moved, names = calculation.verdict.moved or 0.0, calculation.case.table.makers
    if moved > 0:
        return f"moving {of_hundred(moved)} of weight decides it"
    if told_apart_by_none(calculation):
        return "no weighting tells them apart"
    doubles = [some([names[maker] for maker in group]) for group in _alike(calculation) if len(group) > 1]
    though = f", though none tells {listed(doubles, 'or')} apart" if doubles else ""
    return f"the least change of weights decides it{though}"


def told_apart_by_none(calculation: Calculation) -> bool:
    """Return whether several share first place under every weighting."""
    return len(calculation.ranking.leaders) > 1 and len(_alike(calculation)) == 1


def _alike(calculation: Calculation) -> list[list[int]]:
    """Return the joint leaders in groups of those with the same points on every criterion that counts."""
    groups: dict[bytes, list[int]] = {}
    points = (calculation.points.counted[:, calculation.shares > 0] + 0.0).round(ALIKE_DECIMALS)
    for maker in calculation.ranking.leaders:
        groups.setdefault(points[maker].tobytes(), []).append(maker)
    return list(groups.values())


def some(names: Sequence[str], link: str = "and") -> str:
    """Return names as a list in a sentence, the first of them where there are many.

    Examples
    --------
    >>> some(["a", "b"]), some([str(at) for at in range(12)])[-14:]
    ('a and b', '9 and 2 others')
    """
    more = len(names) - NAMED
    return listed(names if more <= 0 else [*names[:NAMED], counted(more, "other")], link)


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
        first = calculation.ranking.order[0]
        alike = any(first in group and rival in group for group in _alike(calculation))
        return f"{name} is level under every weighting" if alike else f"{name} is level already"
    titles = [criterion.title for criterion in calculation.case.criteria]
    moves = change.weights - calculation.shares
    taken = [(titles[at], -by) for at, by in enumerate(moves.tolist()) if by < -1e-12]
    given = [titles[at] for at, by in enumerate(moves.tolist()) if by > 1e-12]
    joins = "; it can at best share first place" if calculation.firmness.at_best_level(rival) else ""
    return f"moving {of_hundred(change.moved)} from {_sources(taken)} to {listed(given)} brings {name} level{joins}"


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


def supporting(calculation: Calculation) -> list[str]:
    """Return what else to know beside the verdict, as sentences without their full stops."""
    said = [rule_sentence(calculation), weightings_sentence(calculation)]
    verdict, asked = calculation.verdict, calculation.questions
    if verdict.kind == "close" and asked and asked[0].could_change_leader:
        said.insert(0, f"One open answer could decide it, too: {question_phrase(calculation, asked[0])}")
    return [one for one in said if one is not None]


def rule_sentence(calculation: Calculation) -> str | None:
    """Return who leads as the open answers turn out worst, middling or best, where these differ; else None."""
    by_rule = calculation.firmness.leaders_by_rule
    if len(set(by_rule.values())) < 2:
        return None
    words = {"worst": "at their worst", "middle": "in the middle", "best": "at their best"}
    said = [
        (_together(calculation, leaders), listed((words[rule] for rule in rules), "or"))
        for leaders, rules in groupby(by_rule, key=lambda rule: by_rule[rule])
    ]
    (first, when), *rest = said
    verb = "lead" if first.endswith(" together") else "leads"
    others = [f"{names} if {turn}" for names, turn in rest]
    return listed_apart([f"{first} {verb} if the open answers turn out {when}", *others])


def _together(calculation: Calculation, leaders: Sequence[int]) -> str:
    names = some([_with_known(calculation, maker) for maker in leaders])
    return f"{names} together" if len(leaders) > 1 else names


def _with_known(calculation: Calculation, maker: int) -> str:
    """Return a name, and where answers are unknown how much is known: who leads for want of answers shows as such."""
    name, known = calculation.case.table.makers[maker], float(calculation.ranking.known_shares[maker])
    return name if known > 1 - TIE else f"{name} (known: {known_words(known)})"


def listed_apart(phrases: Sequence[str]) -> str:
    """Return phrases as a list with a comma before its "and".

    Examples
    --------
    >>> listed_apart(["a leads at dawn", "b at noon", "c at dusk"])
    'a leads at dawn, b at noon, and c at dusk'
    """
    return f"{', '.join(phrases[:-1])}, and {phrases[-1]}" if len(phrases) > 1 else phrases[0]


def weightings_sentence(calculation: Calculation) -> str | None:
    """Return who leads most random weightings where that is clearly not a leader, and when to believe it; else None."""
    found = list(_most_often(calculation))
    said = [
        f"{DRAWN[kind]}, {calculation.case.table.makers[maker]} leads most often ({share} of 100 drawn at random)"
        for kind, maker, share in found
    ]
    if not said:
        return None
    said += [] if found[-1][0] == "near" else _leads_near(calculation)
    return "; ".join([said[0], *(f"{one[:1].lower()}{one[1:]}" for one in said[1:])])


def _leads_near(calculation: Calculation) -> list[str]:
    """Return how often the leader leads near its weights, to set against the weightings in which another does."""
    found, leaders = calculation.firmness.rank_shares.get("near"), calculation.ranking.leaders
    if found is None or len(leaders) > 1:
        return []
    share = found.shares[calculation.firmness.front.index(leaders[0]), 0]
    name = calculation.case.table.makers[leaders[0]]
    return [f"if each weight is about right, {name} leads in {drawn(float(share), found.half_width)} of 100"]


def _most_often(calculation: Calculation) -> Iterator[tuple[str, int, str]]:
    """Yield kinds of weightings with the maker that leads them most often, by more than the draws leave open."""
    front, leaders = calculation.firmness.front, set(calculation.ranking.leaders)
    weights = calculation.shares[calculation.shares > 0]
    for kind, found in calculation.firmness.rank_shares.items():
        if len(front) < 2 or (kind == "ordered" and np.allclose(weights, weights[0])):
            continue  # without an order, "ordered" is "any" again
        first = found.shares[:, 0].tolist()
        best = max(range(len(front)), key=lambda at: first[at])
        leading = max(share for maker, share in zip(front, first, strict=True) if maker in leaders)
        if first[best] - leading > 2 * found.half_width:
            yield kind, front[best], drawn(first[best], found.half_width)


def leader_change(before: Calculation, after: Calculation) -> str:
    """Return whether other weights change the leader, as a sentence without its full stop; "" where nobody is ranked.

    Where first place is shared, it says who joins it and who drops out of it.

    Parameters
    ----------
    before, after : of the same makers
    """
    old, new = set(before.ranking.leaders), set(after.ranking.leaders)
    stay, join, leave = (_named(after, makers) for makers in (old & new, new - old, old - new))
    if not new:
        return ""
    if old == new:
        return f"The leader stays {stay}" if len(new) == 1 else f"{stay} stay level in first place"
    if not stay:
        return f"The leader changes from {leave} to {join}"
    if not join:
        return f"{stay} {'leads' if len(new) == 1 else 'lead'} without {leave} now"
    joined = f"{join} now {'shares' if len(new - old) == 1 else 'share'} first place with {stay}"
    return f"{joined}; {leave} no longer {'does' if len(old - new) == 1 else 'do'}" if leave else joined


def _named(calculation: Calculation, makers: set[int]) -> str:
    return some([calculation.case.table.makers[maker] for maker in sorted(makers)])


def unquoted_words(missing: Sequence[str], unread: Container[str], named: Callable[[str], str] = str) -> list[str]:
    """Return who has not quoted, and whose price could not be read, sentences without the full stop.

    Parameters
    ----------
    missing : makers without a price
    unread : those whose price was set aside
    """
    said = {
        "Not quoted yet": [named(maker) for maker in missing if maker not in unread],
        "Quoted, but the price could not be read": [named(maker) for maker in missing if maker in unread],
    }
    return [f"{words}: {some(makers)}" for words, makers in said.items() if makers]
