"""Weights to try, and how firm the choice is: what a weight moves, how far it can go, what brings rivals level."""

from dataclasses import dataclass

from scorecard.calculation import Calculation
from scorecard.criteria import CriteriaSet
from scorecard.report.charts import Scale, share_scale
from scorecard.report.texts import sentence, visible
from scorecard.sentences import change_sentence, range_sentence, spread_of_points
from scorecard.words import counted, listed, rounded, shortest

RIVALS = 10  # rivals whose smallest change is told, and names in one list


@dataclass(frozen=True, slots=True, kw_only=True)
class Weight:
    """One criterion's weight, as written.

    Parameters
    ----------
    typed, share : as typed, and as so many of 100
    moves : by how many points of score it moves the ranked makers apart, at most
    low, high : the weights as typed between which first place is unchanged; "any" or None where there is no telling
    below, above : who takes over; None where nobody does
    scale : share and range; None where there is no range
    """

    title: str
    typed: str
    share: str
    moves: str
    low: str | None
    high: str | None
    below: str | None
    above: str | None
    scale: Scale | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Firm:
    """How firm first place is, as written.

    Parameters
    ----------
    leader : whose first place it is; None where nobody is ranked
    alone : whether it has no rival
    joint : a note where first place is shared, else None
    ranges : sentences about the weights that can change the leader
    steady : sentence about those that cannot; None where there are none
    changes : sentences about the rivals that a change of weights brings level, nearest first
    more : how many such rivals are left out; None where none are
    never : sentence about the rivals that no weighting brings level; None where there are none
    """

    leader: str | None
    alone: bool
    joint: str | None
    ranges: tuple[str, ...]
    steady: str | None
    changes: tuple[str, ...]
    more: str | None
    never: str | None


def weights_of(calculation: Calculation) -> list[Weight]:
    """Return every criterion's weight, in the order of the file."""
    return [_weight(calculation, at) for at in range(len(calculation.case.criteria))]


def _weight(calculation: Calculation, at: int) -> Weight:
    criterion, ranges = calculation.case.criteria.criteria[at], calculation.firmness.weight_ranges
    found = ranges[at] if ranges else None
    low, high = calculation.firmness.typed_ends(at, calculation.case.criteria) if ranges else (None, None)
    names = calculation.case.table.makers
    share = float(calculation.shares[at])
    return Weight(
        title=criterion.title,
        typed=weight_words(criterion.weight),
        share=rounded(100 * share),
        moves=rounded(spread_of_points(calculation, at)),
        low=None if low is None else rounded(low),
        high=None if found is None else "any" if high is None else rounded(high),
        below=None if found is None or found.overtaken_below is None else names[found.overtaken_below],
        above=None if found is None or found.overtaken_above is None else names[found.overtaken_above],
        scale=None if found is None else share_scale(share, found.low, found.high),
    )


def weight_words(weight: float) -> str:
    """Return a weight as typed, or with four digits where it was computed.

    Examples
    --------
    >>> weight_words(15.0), weight_words(0.611111111)
    ('15', '0.6111')
    """
    return shortest(round(weight, 4))


def how_to_change(criteria: CriteriaSet) -> tuple[str, str]:
    """Return what to type to try other weights ("" where the command cannot), and where the weights stand."""
    if criteria.note.method == "ranks":
        return "", "These weights come from an order of importance: change ranks under [weights] in criteria.toml."
    if criteria.note.method == "pairs":
        return "", "These weights come from comparisons by pairs: change pairs under [weights] in criteria.toml."
    heaviest = max(criteria, key=lambda criterion: criterion.weight)
    word = f"{visible(heaviest.key)}={weight_words(heaviest.weight / 2)}"
    quoted = word if " " not in word else f'"{word}"'
    return (
        f"scorecard reweigh {quoted}",
        "To keep a weight, change the line weight = … of its criterion in criteria.toml.",
    )


def consistency_sentence(criteria: CriteriaSet) -> str | None:
    """Return how well comparisons by pairs agree with one another; None where weights do not come from pairs."""
    if criteria.note.ratio is None:
        return None
    ratio = rounded(criteria.note.ratio, 3)
    return f"The comparisons contradict one another by a ratio of {ratio}; up to 0.1 is usually taken as good enough."


def firm_of(calculation: Calculation) -> Firm:
    """Return how firm first place is."""
    order, names = calculation.ranking.order, calculation.case.table.makers
    if len(order) < 2:
        leader = names[order[0]] if order else None
        return Firm(leader=leader, alone=True, joint=None, ranges=(), steady=None, changes=(), more=None, never=None)
    changes, more, never = _changes(calculation)
    ranges, steady = _ranges(calculation)
    return Firm(
        leader=names[order[0]],
        alone=False,
        joint=_joint(calculation),
        ranges=ranges,
        steady=steady,
        changes=changes,
        more=more,
        never=never,
    )


def _joint(calculation: Calculation) -> str | None:
    leaders = [calculation.case.table.makers[maker] for maker in calculation.ranking.leaders]
    if len(leaders) < 2:
        return None
    level = f"{_some(leaders)} are level."
    return f"{level} What follows is told of {leaders[0]}, the first in the sheet; level counts as first."


def _ranges(calculation: Calculation) -> tuple[tuple[str, ...], str | None]:
    """Sentences about the weights that can change the leader, the nearest first, and one about the others."""
    moving: list[tuple[float, str]] = []
    steady: list[str] = []
    for at, found in enumerate(calculation.firmness.weight_ranges):
        title, share = calculation.case.criteria.criteria[at].title, float(calculation.shares[at])
        if found is not None and (found.overtaken_below, found.overtaken_above) == (None, None):
            steady.append(title)
            continue
        ends = (
            []
            if found is None
            else [(found.overtaken_below, share - found.low), (found.overtaken_above, found.high - share)]
        )
        nearest = min((gap for taker, gap in ends if taker is not None), default=1.0)
        moving.append((nearest, f"{title}: {range_sentence(calculation, at)}."))
    told = tuple(words for _, words in sorted(moving, key=lambda one: one[0]))
    leader = calculation.case.table.makers[calculation.ranking.order[0]]
    return told, f"Whatever the weight of {listed(steady, 'or')}, {leader} stays first." if steady else None


def _changes(calculation: Calculation) -> tuple[tuple[str, ...], str | None, str | None]:
    moved = calculation.firmness.moved()
    near = [maker for _, maker in sorted((part, at) for at, (_, part) in enumerate(moved) if part is not None)]
    told = tuple(sentence(change_sentence(calculation, moved[at][0])) for at in near[:RIVALS])
    never = [calculation.case.table.makers[maker] for maker, part in moved if part is None]
    more = len(near) - len(told)
    left_out = f"{counted(more, 'rival')} further off: more weight would have to move." if more > 0 else None
    return told, left_out, f"No weighting brings {_some(never, 'or')} level." if never else None


def _some(names: list[str], link: str = "and") -> str:
    more = len(names) - RIVALS
    return listed(names, link) if more <= 0 else listed([*names[:RIVALS], counted(more, "other")], link)
