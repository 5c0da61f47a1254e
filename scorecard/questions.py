"""What to ask next: of every open answer, whether it alone could change the leader, at which, and what it carries.

Enters: points, limits and ranking of the ranked makers. Leaves: questions, those that could change the leader first.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from scorecard.counting import Counting
from scorecard.criteria import Criterion
from scorecard.points import PointsTable
from scorecard.ranking import TIE, Ranking
from scorecard.screening import Booleans, Screening, allows
from scorecard.value_functions import Floats

MANY = 200  # beyond this place, only what could change the leader is asked


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One open answer.

    Parameters
    ----------
    maker, criterion : positions
    carries : share times (high - low), in points of score
    by : "points" or "limit" where it alone could change the leader, else None
    leader_then : position of the maker that it could put strictly first; None where none
    answers : stretches of answers as typed that would do it, infinite where open; a choice is its position
    """

    maker: int
    criterion: int
    carries: float
    by: str | None = None
    leader_then: int | None = None
    answers: tuple[tuple[float, float], ...] = ()

    @property
    def could_change_leader(self) -> bool:
        """Whether it alone could change the leader."""
        return self.by is not None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Standing:
    """All that the questions are asked of.

    Parameters
    ----------
    criteria, countings : (criteria,)
    shares : (criteria,), adding up to 1
    points, screening, ranking : of all makers
    """

    criteria: Sequence[Criterion]
    countings: Sequence[Counting]
    shares: Floats
    points: PointsTable
    screening: Screening
    ranking: Ranking

    def strictly_first(self, changed: int, score: float | None) -> int | None:
        """Return who is strictly first when one maker has another score, or is out; None where two are level."""
        others = [(float(self.ranking.scores[maker]), maker) for maker in self._front(changed)]
        if score is not None:
            others.append((score, changed))
        falling = sorted(others, key=lambda one: -one[0])
        if not falling or (len(falling) > 1 and falling[0][0] - falling[1][0] <= TIE):
            return None
        return falling[0][1]

    def _front(self, without: int) -> list[int]:
        return [maker for maker in self.ranking.order[:3] if maker != without][:2]


def questions(standing: Standing) -> tuple[Question, ...]:
    """Return every open answer of the ranked makers, those that could change the leader first, then by what they carry.

    Parameters
    ----------
    standing : points, limits and ranking of all makers

    Returns
    -------
    questions; equal ones in the order of rank and of the criteria file
    """
    asked = [_question(standing, maker, criterion) for maker, criterion in _open_cells(standing)]
    return tuple(sorted(asked, key=lambda one: (not one.could_change_leader, -one.carries)))


def _open_cells(standing: Standing) -> Iterator[tuple[int, int]]:
    ranged = np.stack([c.typed.high > c.typed.low for c in standing.countings], axis=1)
    is_open = standing.points.open | ~standing.points.known | ranged
    could_lead = is_open & _reaches_the_front(standing)
    for place, maker in enumerate(standing.ranking.order):
        asked = is_open[maker] if place < MANY else could_lead[maker]
        yield from ((maker, int(criterion)) for criterion in np.flatnonzero(asked))


def _reaches_the_front(standing: Standing) -> Booleans:
    """(makers, criteria): whether the best of one answer alone brings a maker near the first score."""
    best = standing.ranking.scores[list(standing.ranking.order[:1])]
    gain = standing.shares * (standing.points.high - standing.points.counted)
    return np.asarray(standing.ranking.scores[:, None] + gain >= best - TIE)


def _question(standing: Standing, maker: int, criterion: int) -> Question:
    low, high = standing.points.low[maker, criterion], standing.points.high[maker, criterion]
    plain = Question(maker=maker, criterion=criterion, carries=float(standing.shares[criterion] * (high - low)))
    return _by_points(standing, plain) or _by_limit(standing, plain) or plain


def _by_points(standing: Standing, plain: Question) -> Question | None:
    for rises in (True, False):
        score = _score_at_end(standing, plain, rises=rises)
        first = standing.strictly_first(plain.maker, score)
        if _changes(standing, first) and score != standing.ranking.scores[plain.maker]:
            answers = _answers_by_points(standing, plain, rises=rises)
            return Question(
                maker=plain.maker,
                criterion=plain.criterion,
                carries=plain.carries,
                by="points",
                leader_then=first,
                answers=answers,
            )
    return None


def _changes(standing: Standing, first: int | None) -> bool:
    return first is not None and standing.ranking.leaders != (first,)


def _score_at_end(standing: Standing, plain: Question, *, rises: bool) -> float:
    at = plain.maker, plain.criterion
    end = (standing.points.high if rises else standing.points.low)[at]
    change = standing.shares[plain.criterion] * (end - standing.points.counted[at])
    return float(standing.ranking.scores[plain.maker] + change)


def _answers_by_points(standing: Standing, plain: Question, *, rises: bool) -> tuple[tuple[float, float], ...]:
    at = plain.maker, plain.criterion
    target = max(float(standing.ranking.scores[other]) for other in standing._front(plain.maker))
    short = (target - standing.ranking.scores[plain.maker]) / standing.shares[plain.criterion]
    needed = float(standing.points.counted[at] + short)
    bounds = (needed, 100.0) if rises else (0.0, needed)
    worth = standing.criteria[plain.criterion].value.answers_worth(*bounds)
    return _as_typed(standing.criteria[plain.criterion], standing.countings[plain.criterion], plain.maker, worth)


def _as_typed(
    criterion: Criterion, counting: Counting, maker: int, stretches: tuple[tuple[float, float], ...]
) -> tuple[tuple[float, float], ...]:
    """Return stretches of counted answers as what would have to be typed; none where that cannot be told."""
    if criterion.choices is not None:
        return stretches
    if criterion.steady is not None:
        return ()  # both the rating and how many it rests on are at play
    fewest, most = (float(pieces[maker]) for pieces in counting.pieces)
    if fewest != most:
        return ()
    low, high = counting.allowed.low[maker], counting.allowed.high[maker]
    held = [(max(a, low), min(b, high)) for a, b in stretches]
    return tuple((float(a * fewest), float(b * fewest)) for a, b in held if a <= b)


def _by_limit(standing: Standing, plain: Question) -> Question | None:
    if not standing.screening.may_fail[plain.maker, plain.criterion]:
        return None
    first = standing.strictly_first(plain.maker, None)
    if plain.maker not in standing.ranking.leaders or not _changes(standing, first):
        return None
    return Question(
        maker=plain.maker,
        criterion=plain.criterion,
        carries=plain.carries,
        by="limit",
        leader_then=first,
        answers=_answers_by_limit(standing.criteria[plain.criterion], standing.countings[plain.criterion], plain.maker),
    )


def _answers_by_limit(criterion: Criterion, counting: Counting, maker: int) -> tuple[tuple[float, float], ...]:
    limit = criterion.limit
    if limit is None:
        return ()
    if criterion.choices is not None:
        return tuple((float(at), float(at)) for at, name in enumerate(criterion.choices) if not allows(limit, name))
    fewest, most = (float(pieces[maker]) for pieces in counting.pieces)
    below = [] if limit.at_least is None or fewest != most else [(-np.inf, limit.at_least * most)]
    above = [] if limit.at_most is None or fewest != most else [(limit.at_most * most, np.inf)]
    return (*below, *above)
