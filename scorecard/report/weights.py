"""Weights to try: what each weight is, what it moves, how far it can go, and how to try another."""

from collections.abc import Callable

from scorecard.calculation import Calculation
from scorecard.criteria import CriteriaSet
from scorecard.frozen import dataclass
from scorecard.report.charts import Scale, share_scale
from scorecard.report.texts import visible
from scorecard.sentences import spread_of_points
from scorecard.words import plain_command, rounded, shortest


@dataclass(frozen=True, slots=True, kw_only=True)
class Weight:
    """One criterion's weight, as written.

    Parameters
    ----------
    typed, share : as typed, and as so many of 100
    moves : by how many points of score it moves the ranked makers apart, at most, in words
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
        moves=_moves(calculation, at),
        low=None if low is None else rounded(low),
        high=None if found is None else "any" if high is None else rounded(high),
        below=None if found is None or found.overtaken_below is None else names[found.overtaken_below],
        above=None if found is None or found.overtaken_above is None else names[found.overtaken_above],
        scale=None if found is None else share_scale(share, found.low, found.high),
    )


def _moves(calculation: Calculation, at: int) -> str:
    if len(calculation.ranking.order) < 2:
        return "no two makers to move apart"
    if not calculation.shares[at]:
        return "weight 0: moves nothing"
    return f"moves these makers’ scores by at most {rounded(spread_of_points(calculation, at))} points"


def weight_words(weight: float) -> str:
    """Return a weight as typed, or with four digits where it was computed.

    Examples
    --------
    >>> weight_words(15.0), weight_words(0.611111111)
    ('15', '0.6111')
    """
    return shortest(round(weight, 4))


def how_to_change(criteria: CriteriaSet, command: Callable[[str], str] = plain_command) -> tuple[str, str]:
    """Return what to type to try other weights ("" where the command cannot), and where the weights stand."""
    if criteria.note.method == "ranks":
        return "", "These weights come from an order of importance: change ranks under [weights] in criteria.toml."
    if criteria.note.method == "pairs":
        return "", "These weights come from comparisons by pairs: change pairs under [weights] in criteria.toml."
    heaviest = max(criteria, key=lambda criterion: criterion.weight)
    word = f"{visible(heaviest.key)}={weight_words(heaviest.weight / 2)}"
    quoted = word if " " not in word else f'"{word}"'
    return (
        command(f"reweigh {quoted}"),
        "The same with --save keeps it; or change “weight = …” under the criterion in criteria.toml.",
    )


def consistency_sentence(criteria: CriteriaSet) -> str | None:
    """Return how well comparisons by pairs agree with one another; None where weights do not come from pairs."""
    if criteria.note.ratio is None:
        return None
    ratio = rounded(criteria.note.ratio, 3)
    return f"The comparisons contradict one another by a ratio of {ratio}; up to 0.1 is usually taken as good enough."
