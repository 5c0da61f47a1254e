"""Cases built in code, for tests that need no files: makers as rows of answers, criteria in one line each."""

from collections.abc import Mapping, Sequence
from datetime import date

import numpy as np

from scorecard.answers import Answers, MakerTable
from scorecard.brief import Brief
from scorecard.case import Case
from scorecard.counting import count
from scorecard.criteria import CriteriaSet, Criterion
from scorecard.points import table_of_points
from scorecard.questions import Standing
from scorecard.ranking import rank_makers
from scorecard.screening import screen
from scorecard.value_functions import Choices, PiecewiseLinear

AS_OF = date(2026, 11, 25)

Typed = float | int | None | tuple[float | None, float | None] | str


def numbers(key: str, weight: float, *knots: tuple[float, float], **more) -> Criterion:
    """Return a criterion on numbers, by default worth what is typed: 0 to 100."""
    value = PiecewiseLinear(knots or ((0.0, 0.0), (100.0, 100.0)))
    title = more.pop("title", key.replace("_", " ").capitalize())
    return Criterion(key=key, title=title, weight=weight, value=value, column=title, **more)


def choices(key: str, weight: float, table: Mapping[str, float], **more) -> Criterion:
    """Return a criterion on choices."""
    title = more.pop("title", key.replace("_", " ").capitalize())
    return Criterion(key=key, title=title, weight=weight, value=Choices(tuple(table.items())), column=title, **more)


def one_answer(criterion: Criterion, typed: Typed) -> tuple[float, float]:
    """Return the two ends of an answer: a number, None, (low, high) with None where open, or a choice."""
    if typed is None:
        return np.nan, np.nan
    if isinstance(typed, str):
        at = float((criterion.choices or ()).index(typed))
        return at, at
    if isinstance(typed, tuple):
        low, high = typed
        return (-np.inf if low is None else low), (np.inf if high is None else high)
    return float(typed), float(typed)


def make_case(
    criteria: Sequence[Criterion], makers: Mapping[str, Sequence[Typed]], *, brief: Brief | None = None, **table
) -> Case:
    """Return a case: each maker's answers in the order of the criteria."""
    answers = {}
    for at, criterion in enumerate(criteria):
        ends = np.array([one_answer(criterion, row[at]) for row in makers.values()], dtype=float).reshape(-1, 2)
        answers[criterion.key] = Answers(ends[:, 0], ends[:, 1])
    letters = {"maker": "A"} | {criterion.key: chr(ord("B") + at) for at, criterion in enumerate(criteria)}
    rows = tuple(range(2, 2 + len(makers)))
    made = MakerTable(
        makers=tuple(makers), rows=rows, file="makers.xlsx", sheet="Makers", letters=letters, answers=answers, **table
    )
    return Case(
        title="Lighthouse mugs",
        brief=brief or Brief(item="enamel mug", quantity=200),
        criteria=CriteriaSet(tuple(criteria)),
        table=made,
    )


def rated(weights: Sequence[float], rows: Mapping[str, Sequence[Typed]], **more) -> Case:
    """Return a case whose criteria (c1, c2, …) are worth what is typed: the plain weighted sum of the rows."""
    return make_case([numbers(f"c{at}", weight, **more) for at, weight in enumerate(weights, start=1)], rows)


def scores_of(result: Mapping) -> dict[str, float]:
    """Return the scores of a result by maker."""
    return {maker["maker"]: maker["score"] for maker in result["makers"]}


def maker_of(result: Mapping, name: str) -> Mapping:
    """Return what a result says of one maker."""
    return next(maker for maker in result["makers"] if maker["maker"] == name)


def standing_of(case: Case) -> Standing:
    """Return points, limits and ranking of a case: what comes before any question of firmness."""
    criteria = case.criteria.criteria
    shares = np.array(list(case.criteria.shares.values()), dtype=float)
    countings = tuple(count(criterion, case, AS_OF) for criterion in criteria)
    screening, points = screen(criteria, countings), table_of_points(criteria, countings)
    return Standing(
        criteria=criteria,
        countings=countings,
        shares=shares,
        points=points,
        screening=screening,
        ranking=rank_makers(points, shares, screening.ruled_out),
    )
