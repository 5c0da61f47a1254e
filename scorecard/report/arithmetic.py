"""All the arithmetic: what each criterion's rule is, in words, and every maker's answers down to its score."""

from collections.abc import Sequence

import numpy as np

from scorecard.brief import Brief
from scorecard.calculation import Calculation
from scorecard.criteria import Criterion, Limit, Steady
from scorecard.frozen import dataclass
from scorecard.reasons import tidy, times, with_unit
from scorecard.report import charts
from scorecard.report.answers import counts_as_in_words, rule_words, typed_in_words
from scorecard.report.texts import isolate, visible
from scorecard.report.weights import weight_words
from scorecard.value_functions import Choices
from scorecard.words import listed, rounded

MEASURED = {
    "response_days": "the whole working days from Asked on to Answered on, or so far",
    "landed_cost_per_piece": "what a good piece costs at the door by the way that stands for its maker",
    "days_to_door": "the days as quoted, production and transit, by the way that stands for its maker, as for its cost",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """How one criterion's answers become points, as sentences."""

    title: str
    sentences: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """One answer on its way to the score, as written; ``band`` is None where nothing is open."""

    title: str
    answer: str
    counts_as: str
    points: str
    band: str | None
    share: str
    contribution: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Working:
    """One maker's arithmetic, as written; ``rank`` is None where it is ruled out.

    Its cells are those that count: of a criterion with a weight, or whose limit it fails or may fail.
    """

    maker: str
    rank: str | None
    cells: tuple[Cell, ...]
    score: str
    band: str | None


def rules_of(calculation: Calculation) -> list[Rule]:
    """Return every criterion's rule in words, in the order of the file."""
    brief = calculation.case.brief
    return [
        Rule(title=criterion.title, sentences=tuple(_sentences(criterion, share, brief)))
        for criterion, share in zip(calculation.case.criteria, calculation.shares.tolist(), strict=True)
    ]


def _sentences(criterion: Criterion, share: float, brief: Brief) -> list[str]:
    said = [
        f"Weight {weight_words(criterion.weight)}, a share of {rounded(100 * share, 2)} of 100.",
        source_sentence(criterion),
    ]
    if criterion.within:
        said.append(f"Possible answers: {tidy(criterion.within[0])} to {tidy(criterion.within[1])}.")
    if criterion.per_quantity:
        said.append(per_sentence(brief))
    if criterion.limit:
        said.append(f"Limit: {limit_words(criterion.limit, criterion)}.")
    if criterion.steady:
        said.append(steady_sentence(criterion.steady))
    return [*said, points_sentence(criterion), unknown_sentence(criterion)]


def source_sentence(criterion: Criterion) -> str:
    """Return where a criterion's answers come from."""
    unit = f", in {criterion.unit}" if criterion.unit else ""
    if criterion.measure is None:
        return f"Drawn from the column “{isolate(criterion.column or criterion.title)}”{unit}."
    how = MEASURED.get(criterion.measure, f"computed by the tool as {visible(criterion.measure)}")
    return f"A typed answer, or else {how}{unit}."


def per_sentence(brief: Brief) -> str:
    """Return how a minimum becomes a number of times what is wanted of its unit."""
    whole = f"Divided by the pieces wanted: {tidy(brief.quantity)} for the order"
    parts = [
        f"{tidy(brief.quantity / number)} for a {unit}"
        for unit, number in (("design", brief.designs), ("colour", brief.colours), ("size", brief.sizes))
        if number and number > 1
    ]
    unit = "; which of these, the column “Minimum is per” says" if parts else ""
    return f"{listed([whole, *parts])}{unit}. So {times('2')} is twice what is wanted."


def limit_words(limit: Limit, criterion: Criterion) -> str:
    """Return a limit in words."""
    said = []
    if limit.at_least is not None:
        said.append(f"at least {_amount(limit.at_least, criterion)}")
    if limit.at_most is not None:
        said.append(f"at most {_amount(limit.at_most, criterion)}")
    if limit.one_of is not None:
        said.append(listed((f"“{choice}”" for choice in limit.one_of), "or"))
    if limit.none_of is not None:
        said.append(f"not {listed((f'“{choice}”' for choice in limit.none_of), 'or')}")
    return listed(said)


def _amount(number: float, criterion: Criterion) -> str:
    return times(tidy(number)) if criterion.per_quantity else with_unit(tidy(number), criterion.unit)


def steady_sentence(steady: Steady) -> str:
    """Return how a rating from few ratings is drawn to a usual one, with its formula."""
    usual, weight = tidy(steady.usual), tidy(steady.usual_counts_as)
    return (
        f"A rating r from n ratings (column “{isolate(steady.count_column)}”) counts as "
        f"(n × r + {weight} × {usual}) ÷ (n + {weight}): the fewer ratings, the nearer to the usual {usual}."
    )


def points_sentence(criterion: Criterion) -> str:
    """Return what answers are worth."""
    if isinstance(criterion.value, Choices):
        worth = listed(f"“{name}” {tidy(points)}" for name, points in criterion.value.table)
        return f"Points: {worth}."
    worth = listed(f"{tidy(points)} at {_amount(answer, criterion)}" for answer, points in criterion.value.knots)
    return f"Points: {worth}; in proportion between these, level beyond them."


def unknown_sentence(criterion: Criterion) -> str:
    """Return what an unknown answer counts as, and the points that it allows."""
    least, greatest = criterion.value.extremes()
    rule = rule_words(criterion.unknown, criterion.unknown if isinstance(criterion.unknown, float) else 0.0)
    return f"Unknown allows {tidy(least)} to {tidy(greatest)} points and counts as {rule}."


def workings_of(calculation: Calculation, shown: Sequence[int]) -> list[Working]:
    """Return the arithmetic of some makers.

    Parameters
    ----------
    calculation : of a case on a day
    shown : positions of the makers, in the order of the page
    """
    return [_working(calculation, maker) for maker in shown]


def _working(calculation: Calculation, maker: int) -> Working:
    ranking, screening = calculation.ranking, calculation.screening
    limited = (screening.fails | screening.may_fail)[maker]
    return Working(
        maker=calculation.case.table.makers[maker],
        rank=str(ranking.ranks[maker]) if ranking.ranks[maker] else None,
        cells=tuple(_cell(calculation, maker, int(at)) for at in np.flatnonzero((calculation.shares > 0) | limited)),
        score=rounded(ranking.scores[maker]),
        band=charts.band_words(ranking.low[maker], ranking.high[maker]),
    )


def _cell(calculation: Calculation, maker: int, at: int) -> Cell:
    points, share = calculation.points, float(calculation.shares[at])
    counted = float(points.counted[maker, at])
    return Cell(
        title=calculation.case.criteria.criteria[at].title,
        answer=typed_in_words(calculation, maker, at),
        counts_as=counts_as_in_words(calculation, maker, at),
        points=rounded(counted, 2),
        band=band_words(points.low[maker, at], points.high[maker, at]),
        share=rounded(100 * share, 2),
        contribution=rounded(share * counted, 2),
    )


def band_words(low: float, high: float) -> str | None:
    """Return a band with two decimals; None where nothing is open.

    Examples
    --------
    >>> band_words(20, 60), band_words(20, 20)
    ('20.00 to 60.00', None)
    """
    return f"{rounded(low, 2)} to {rounded(high, 2)}" if high > low else None
