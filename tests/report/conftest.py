"""Fields of invented makers for the page's tests, of any size, with every kind of answer and limit."""

import random
from collections.abc import Callable
from datetime import UTC, date, datetime

import numpy as np
import pytest
from cases import AS_OF, choices, make_case, numbers, one_answer

from scorecard.answers import Answers
from scorecard.assessment import Assessment, assess
from scorecard.brief import Brief
from scorecard.case import Case
from scorecard.criteria import Limit, Steady
from scorecard.report.page import page
from scorecard.report.texts import presentable

NAMES = ("Brightholm", "Cressel & Daughters", "Dunmorrow", "Ellerby", "Fennick", "Garrow", "Hollin", "Inver", "Jessamy")
WORK = {"same method, art like mine": 100, "other goods, art like mine": 60, "plain logos only": 20}
BRIEF = Brief(
    item="350 ml enamel mug", quantity=200, designs=4, destination="IE", currency="EUR", need_by=date(2027, 5, 14)
)


def criteria():
    rating = {"within": (0, 5), "limit": Limit(at_least=4.0)}
    steady = Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20)
    order = {"unit": "pieces", "per_quantity": True, "limit": Limit(at_most=2.5)}
    return [
        numbers("years_trading", 15, (0, 0), (3, 50), (10, 100), unit="years"),
        numbers("performance_rating", 20, (4.0, 0), (4.6, 60), (5.0, 100), steady=steady, **rating),
        numbers("minimum_order_fit", 20, (1, 100), (2, 0), **order),
        choices("earlier_work", 15, WORK),
        choices("sample", 10, {"free": 100, "paid": 60, "none": 0}, unknown="worst"),
        choices("method", 10, {"transfer": 100, "screen": 80, "sticker": 0}, limit=Limit(none_of=("sticker",))),
        numbers("response_time", 10, (1, 100), (2, 80), (5, 0), unit="days", unknown=40.0),
        numbers("postcards", 0, unit="%"),
    ]


def answers_of(draw: random.Random):
    return [
        draw.choice([1, 4, 7, 12, (3, 6), None]),
        draw.choice([4.2, 4.6, 4.9, 5.0, None, 3.9]),
        draw.choice([50, 100, 200, 300, (100, 300), 700]),
        draw.choice([*WORK, None]),
        draw.choice(["free", "paid", "none", None]),
        draw.choice(["transfer", "screen", "transfer", None, "sticker"]),
        draw.choice([1, 2, 3, (2, None), None]),
        draw.choice([None, 50]),
    ]


def make_field(makers: int = 9, names: tuple[str, ...] = NAMES, seed: int = 2) -> Case:
    """Return a case with so many makers."""
    draw = random.Random(seed)
    told = [names[at] if at < len(names) else f"{names[at % len(names)]} {at}" for at in range(makers)]
    rows = {name: answers_of(draw) for name in told}
    counts = np.array([one_answer(criteria()[0], draw.choice([4, 20, 300, None])) for _ in told]).reshape(-1, 2)
    ratings = {"performance_rating": Answers(counts[:, 0], counts[:, 1])}
    units = tuple(draw.choice(["order", "order", "design", None]) for _ in told)
    return make_case(criteria(), rows, brief=BRIEF, counts=ratings, minimum_per=units)


@pytest.fixture(scope="session")
def field() -> Callable[..., Case]:
    """Return a function from a number of makers, names and a seed to a case."""
    return make_field


@pytest.fixture(scope="session")
def assessed() -> Callable[[Case], Assessment]:
    """Return a function from a case to its assessment."""
    return lambda case: assess(case, as_of=AS_OF)


@pytest.fixture(scope="session")
def shown() -> Callable[[Case], Assessment]:
    """Return a function from a case to its assessment, made fit for a page."""
    return lambda case: presentable(assess(case, as_of=AS_OF))


@pytest.fixture(scope="session")
def render() -> Callable[..., str]:
    """Return a function from a case to its page."""

    def run(case: Case, **options: bool) -> str:
        assessment = assess(case, as_of=AS_OF)
        return page(assessment, assessment.as_json(), made=datetime(2026, 11, 25, 10, tzinfo=UTC), **options)

    return run
