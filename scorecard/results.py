"""The calculation as the machine-readable result: plain dictionaries, lists, texts and numbers, ready for JSON.

Enters: a calculation. Leaves: the result of schema ``scorecard/1``; 12 significant digits, and no NaN.
"""

from collections.abc import Sequence
from math import isnan
from typing import Any

import numpy as np

from scorecard.answers import Answers
from scorecard.calculation import Calculation
from scorecard.cost_results import landed_costs_of, why_out
from scorecard.criteria import Criterion, Limit, WeightsNote
from scorecard.drawn_from import drawn_from
from scorecard.figures import figure, figures, plain
from scorecard.firm_results import firm_result, shares_by_criterion
from scorecard.problem_result import SCHEMA
from scorecard.quantity_results import quantities_of
from scorecard.questions import Question, Turn
from scorecard.ranking import ranks_if_let_in
from scorecard.reasons import what_lets_in, why_ruled_out
from scorecard.stage import costed_makers, stage_of
from scorecard.value_functions import PiecewiseLinear

Json = dict[str, Any]


def answer(criterion: Criterion, low: float, high: float) -> int | float | str | Json | None:
    """Return an answer for the result: a number, a choice, a range, or None where unknown."""
    return _spelt(criterion.choices, low, high)


def _spelt(choices: Sequence[str] | None, low: float, high: float) -> int | float | str | Json | None:
    if isnan(low):
        return None
    if choices is not None:
        return choices[int(low)]
    return plain(low) if low == high else {"low": plain(low), "high": plain(high)}


def result_of(calculation: Calculation) -> Json:
    """Return the machine-readable result of a calculation.

    Parameters
    ----------
    calculation : of a case on a day

    Returns
    -------
    what ``scorecard score --json`` prints
    """
    case, ranking, names = calculation.case, calculation.ranking, calculation.case.table.makers
    leaders = [names[maker] for maker in ranking.leaders]
    return {
        "schema": SCHEMA,
        "title": case.title,
        "as_of": calculation.as_of.isoformat(),
        "stage": stage_of(costed_makers(calculation)),
        "leaders": leaders,
        "leader": leaders[0] if len(leaders) == 1 else None,
        "margin": None if ranking.margin is None else figure(ranking.margin),
        "shares": shares_by_criterion(calculation, calculation.shares.tolist()),
        "typed_weights": {key: plain(float(weight)) for key, weight in case.criteria.typed_weights.items()},
        "weights_by": case.criteria.note.method,
        "brief": {"quantity": case.brief.quantity, "designs": case.brief.designs},
        "value_functions": {criterion.key: _worth(criterion) for criterion in case.criteria},
        "limits": {one.key: _limit(one.limit) for one in case.criteria if one.limit is not None},
        "makers": _makers(calculation),
        "left_out": case.left_out,
        "let_in": _let_in(calculation),
        **firm_result(calculation),
        "questions": [_question(calculation, one) for one in calculation.questions],
        "landed_costs": landed_costs_of(case.costed, why_out(calculation)),
        **_schedule(calculation),
        **quantities_of(calculation),
        **_consistency(case.criteria.note),
        **_dealings(calculation),
        "set_aside": [one.as_json() for one in case.set_aside],
        "warnings": [one.as_json() for one in case.warnings],
    }


def _schedule(calculation: Calculation) -> Json:
    """Return by when to order, where there is anything to say of it."""
    if calculation.schedule is None:
        return {}
    from scorecard.scheduling.schedule_json import schedule_json

    return {"schedule": schedule_json(calculation.schedule)}


def _dealings(calculation: Calculation) -> Json:
    """Return samples, own orders and checks, where there are any."""
    case = calculation.case
    if not (case.samples or case.checks or case.orders or case.memory):
        return {}
    from scorecard.dealing_results import dealings_result

    return dealings_result(calculation)


def _consistency(note: WeightsNote) -> Json:
    """Return how consistent judgements by pairs are, where the weights come from these."""
    if note.ratio is None or note.lambda_max is None:
        return {}
    ratio, lambda_max = figure(note.ratio), figure(note.lambda_max)
    return {"consistency": {"ratio": ratio, "lambda_max": lambda_max, "random_index": note.random_index}}


def _worth(criterion: Criterion) -> Json:
    """Return what answers are worth on a criterion, as the criteria file says it, with what is not set left out."""
    value, steady = criterion.value, criterion.steady
    if isinstance(value, PiecewiseLinear):
        worth: Json = {"points": [[plain(answer), plain(points)] for answer, points in value.knots]}
    else:
        worth = {"choices": {choice: plain(points) for choice, points in value.table}}
    return (
        worth
        | {"unknown": criterion.unknown}
        | ({"per": "quantity"} if criterion.per_quantity else {})
        | ({"within": [plain(end) for end in criterion.within]} if criterion.within else {})
        | ({"steady": {"usual": steady.usual, "usual_counts_as": steady.usual_counts_as}} if steady else {})
    )


def _limit(limit: Limit) -> Json:
    """Return a limit as the criteria file says it, with what is not set left out."""
    ends = {name: plain(end) for name in ("at_least", "at_most") if (end := getattr(limit, name)) is not None}
    return ends | {
        name: list(choices) for name in ("one_of", "none_of") if (choices := getattr(limit, name)) is not None
    }


def _makers(calculation: Calculation) -> list[Json]:
    written = [*calculation.ranking.order, *calculation.ranking.ruled_out]
    cells = _Cells(calculation, written)
    return [_maker(calculation, maker, cells.of(place)) for place, maker in enumerate(written)]


def _maker(calculation: Calculation, maker: int, cells: Json) -> Json:
    ranking, table = calculation.ranking, calculation.case.table
    return {
        "maker": table.makers[maker],
        "row": table.rows[maker],
        "status": "ranked" if ranking.ranks[maker] else "ruled out",
        "reasons": _reasons(calculation, maker),
        "rank": ranking.ranks[maker] or None,
        "score": figure(ranking.scores[maker]),
        "low": figure(ranking.low[maker]),
        "high": figure(ranking.high[maker]),
        "known_share": figure(ranking.known_shares[maker]),
        "open_limits": _where(calculation, calculation.screening.may_fail[maker].tolist()),
        "failed_limits": _where(calculation, calculation.screening.fails[maker].tolist()),
        "criteria": cells,
    }


def _where(calculation: Calculation, flags: Sequence[bool]) -> list[str]:
    if not any(flags):
        return []
    return [key for key, flag in zip(calculation.case.criteria.keys, flags, strict=True) if flag]


def _failed(calculation: Calculation, maker: int) -> list[int]:
    return [at for at, fails in enumerate(calculation.screening.fails[maker].tolist()) if fails]


def _reasons(calculation: Calculation, maker: int) -> list[str]:
    criteria, countings = calculation.case.criteria.criteria, calculation.countings
    return [why_ruled_out(criteria[at], countings[at], maker) for at in _failed(calculation, maker)]


class _Cells:
    """Answers, points and contributions of the makers written, as lists, so that thousands are quick."""

    def __init__(self, calculation: Calculation, makers: list[int]) -> None:
        criteria = calculation.case.criteria
        self.keys = criteria.keys
        pairs = list(zip(criteria, calculation.countings, strict=True))
        self.typed = [_answers(criterion, one.typed, makers) for criterion, one in pairs]
        self.counts_as = [_answers(criterion, one.counts_as, makers) for criterion, one in pairs]
        self.drawn_from = [drawn_from(calculation.case, criterion, makers) for criterion in criteria]
        points = calculation.points
        self.points, self.low, self.high = figures(np.stack([points.counted, points.low, points.high])[:, makers])
        self.contributions = figures(points.counted[makers] * calculation.shares)

    def of(self, place: int) -> Json:
        """Return the criteria of the maker in one place of the list."""
        return {key: self._cell(place, at) for at, key in enumerate(self.keys)}

    def _cell(self, place: int, at: int) -> Json:
        seen = self.drawn_from[at]
        return {
            "answer": self.typed[at][place],
            "counts_as": self.counts_as[at][place],
            "points": self.points[place][at],
            "low": self.low[place][at],
            "high": self.high[place][at],
            "contribution": self.contributions[place][at],
            **({} if seen is None else {"drawn_from": seen[place]}),
        }


def _answers(criterion: Criterion, answers: Answers, makers: list[int]) -> list[int | float | str | Json | None]:
    choices, ends = criterion.choices, zip(answers.low[makers].tolist(), answers.high[makers].tolist(), strict=True)
    return [_spelt(choices, low, high) for low, high in ends]


def _let_in(calculation: Calculation) -> list[Json]:
    names, ranking, out = calculation.case.table.makers, calculation.ranking, calculation.ranking.ruled_out
    return [
        {
            "maker": names[maker],
            "score": figure(ranking.scores[maker]),
            "rank": rank,
            "by": _what_lets_in(calculation, maker),
        }
        for maker, rank in zip(out, ranks_if_let_in(ranking, out), strict=True)
    ]


def _what_lets_in(calculation: Calculation, maker: int) -> str:
    criteria, countings = calculation.case.criteria.criteria, calculation.countings
    return "; ".join(what_lets_in(criteria[at], countings[at], maker) for at in _failed(calculation, maker))


def _question(calculation: Calculation, question: Question) -> Json:
    criterion = calculation.case.criteria.criteria[question.criterion]
    turns = [_turn(calculation, criterion, turn) for turn in question.turns]
    first = turns[0] if turns else {"by": None, "leader_then": None, "answers": []}
    return {
        "maker": calculation.case.table.makers[question.maker],
        "criterion": criterion.key,
        "could_change_leader": question.could_change_leader,
        "carries": figure(question.carries),
        **first,
        "otherwise": turns[1] if len(turns) > 1 else None,
    }


def _turn(calculation: Calculation, criterion: Criterion, turn: Turn) -> Json:
    answers = [answer(criterion, low, high) for low, high in turn.answers]
    return {"by": turn.by, "leader_then": calculation.case.table.makers[turn.leader_then], "answers": answers}
