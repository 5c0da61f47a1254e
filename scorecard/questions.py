"""What to ask next: of every open answer, whether it alone could change the leader, at which, and what it carries.

Enters: points, limits and ranking of the ranked makers. Leaves: questions, those that could change the leader first.
One answer changes the leader by lifting its own maker strictly above all others, or by sinking the leader below a
maker that is strictly best of the others, be it by points or by a limit that rules the leader out.
"""

from collections.abc import Iterator, Sequence
from itertools import takewhile

import numpy as np

from scorecard.counting import Counting
from scorecard.criteria import Criterion, Limit
from scorecard.frozen import dataclass
from scorecard.points import PointsTable
from scorecard.ranking import TIE, Ranking
from scorecard.screening import Booleans, Screening, allows
from scorecard.value_functions import Floats, Stretches, joined

Ends = tuple[tuple[bool, bool], ...]

EVERYTHING = (-np.inf, np.inf)


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """One way in which an answer alone could change the leader.

    Parameters
    ----------
    by : "points", or "limit" where it could do so only by ruling the leader out
    leader_then : position of the maker that it could put strictly first
    answers : stretches of answers as typed that would do it, infinite where open; a choice is its position. Empty where
        they cannot be told: a steadied rating from an unknown number of ratings, a minimum per an unknown unit
    holds : of each stretch of numbers, whether its low and its high end would do it too; else they are only level
    """

    by: str
    leader_then: int
    answers: Stretches = ()
    holds: Ends = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One open answer.

    Parameters
    ----------
    maker, criterion : positions
    carries : share times (high - low), in points of score
    turns : the ways in which it alone could change the leader: two for a joint leader that could rise and could fall
    """

    maker: int
    criterion: int
    carries: float
    turns: tuple[Turn, ...] = ()

    @property
    def could_change_leader(self) -> bool:
        """Whether it alone could change the leader."""
        return bool(self.turns)

    @property
    def by(self) -> str | None:
        """The first turn's; None where it could not."""
        return self.turns[0].by if self.turns else None

    @property
    def leader_then(self) -> int | None:
        """The first turn's; None where it could not."""
        return self.turns[0].leader_then if self.turns else None

    @property
    def answers(self) -> Stretches:
        """The first turn's; none where it could not."""
        return self.turns[0].answers if self.turns else ()


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

    def best_of_others(self, without: int) -> tuple[float, int | None]:
        """Return the best score of the other ranked makers, and whose it is where it is strictly the best."""
        falling = sorted((self.ranking.scores[one], one) for one in self._front() if one != without)[::-1]
        if not falling:
            return -np.inf, None
        strictly = len(falling) == 1 or falling[0][0] - falling[1][0] > TIE
        return float(falling[0][0]), falling[0][1] if strictly else None

    def _front(self) -> tuple[int, ...]:
        """Return the three best, and all who share the rank of the third."""
        last = self.ranking.ranks[self.ranking.order[min(2, len(self.ranking.order) - 1)]]
        return tuple(takewhile(lambda one: self.ranking.ranks[one] <= last, self.ranking.order))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Effects:
    """What each answer alone could do, all of (makers, criteria).

    Parameters
    ----------
    rises : it could put its own maker strictly first
    sinks : by points, or ``out``, by a limit: it could put its own maker, a leader, behind another, or out
    """

    rises: Booleans
    sinks: Booleans
    out: Booleans


def questions(standing: Standing) -> tuple[Question, ...]:
    """Return every open answer of the ranked makers, those that could change the leader first, then by what they carry.

    Parameters
    ----------
    standing : points, limits and ranking of all makers

    Returns
    -------
    questions; equal ones in the order of rank and of the criteria file
    """
    if not standing.ranking.order:
        return ()
    effects = _effects(standing)
    carries = (standing.shares * (standing.points.high - standing.points.low)).tolist()
    asked = [_question(standing, effects, cell, carries[cell[0]][cell[1]]) for cell in _open_cells(standing)]
    return tuple(sorted(asked, key=lambda one: (not one.could_change_leader, -one.carries)))


def _open_cells(standing: Standing) -> Iterator[tuple[int, int]]:
    ranged = np.stack([c.typed.high > c.typed.low for c in standing.countings], axis=1)
    is_open = standing.points.open | ~standing.points.known | ranged | standing.screening.may_fail
    ranked = np.array(standing.ranking.order)
    places, criteria = np.nonzero(is_open[ranked])
    yield from zip(ranked[places].tolist(), criteria.tolist(), strict=True)


def _effects(standing: Standing) -> _Effects:
    points, ranking = standing.points, standing.ranking
    leads = np.isin(np.arange(len(ranking.scores)), ranking.leaders)
    best = _best_others(standing)
    highest = ranking.scores[:, None] + standing.shares * (points.reach - points.counted)
    lowest = ranking.scores[:, None] + standing.shares * (points.low - points.counted)
    leads_alone = leads & (len(ranking.leaders) == 1)
    return _Effects(
        rises=(highest > best[:, None] + TIE) & ~leads_alone[:, None],
        sinks=(lowest < best[:, None] - TIE) & leads[:, None],
        out=standing.screening.may_fail & leads[:, None],
    )


def _best_others(standing: Standing) -> Floats:
    """(makers,): the best score of all others."""
    ranking = standing.ranking
    best = np.full(len(ranking.scores), ranking.scores[list(ranking.order)].max())
    for leader in ranking.leaders:
        best[leader], _ = standing.best_of_others(leader)
    return best


def _question(standing: Standing, effects: _Effects, cell: tuple[int, int], carries: float) -> Question:
    turns = [*_rise(standing, effects, cell), *_fall(standing, effects, cell)]
    return Question(maker=cell[0], criterion=cell[1], carries=carries, turns=tuple(turns))


def _rise(standing: Standing, effects: _Effects, cell: tuple[int, int]) -> Iterator[Turn]:
    if effects.rises[cell]:
        answers, holds = _answers_that_lift(standing, *cell)
        yield Turn(by="points", leader_then=cell[0], answers=answers, holds=holds)


def _fall(standing: Standing, effects: _Effects, cell: tuple[int, int]) -> Iterator[Turn]:
    if effects.sinks[cell] or effects.out[cell]:
        _, then = standing.best_of_others(cell[0])
        by = "points" if effects.sinks[cell] else "limit"
        if then is not None:
            answers, holds = _answers_that_sink(standing, *cell)
            yield Turn(by=by, leader_then=then, answers=answers, holds=holds)


def _points_level(standing: Standing, maker: int, criterion: int) -> float:
    """Return the points on one criterion with which a maker is level with the best of the others."""
    short = standing.best_of_others(maker)[0] - standing.ranking.scores[maker]
    return float(standing.points.counted[maker, criterion] + short / standing.shares[criterion])


def _answers_that_lift(standing: Standing, maker: int, criterion: int) -> tuple[Stretches, Ends]:
    one, level = standing.criteria[criterion], _points_level(standing, maker, criterion)
    lifting = one.value.answers_above(level)
    if one.choices is not None:
        return tuple((at, to) for at, to in lifting if _passes(one, at)), ()
    within = _allowed_by(one.limit or Limit())
    clear = _clear(standing, maker, criterion, lifting, within if one.steady is None else EVERYTHING)
    return _as_typed(standing, (maker, criterion), clear, within=within)


def _clear(
    standing: Standing,
    maker: int,
    criterion: int,
    stretches: Stretches,
    within: tuple[float, float] = EVERYTHING,
) -> Stretches:
    """Return the stretches that hold an answer which is more than level.

    One that ends at a bound where it is level may seem to reach over it by the last bit.
    """
    if standing.criteria[criterion].choices is not None:
        return stretches
    allowed = standing.countings[criterion].allowed
    ends = np.clip(np.array(stretches).reshape(len(stretches), 2), *within).clip(
        allowed.low[maker], allowed.high[maker]
    )
    off = np.array(standing.criteria[criterion].value.least_and_greatest(*ends.T))
    off -= _points_level(standing, maker, criterion)
    is_clear = np.abs(off).max(axis=0) * standing.shares[criterion] > TIE
    return tuple(stretch for stretch, clear in zip(stretches, is_clear, strict=True) if clear)


def _allowed_by(limit: Limit) -> tuple[float, float]:
    # to the letter: the hair with which limits are tested would leave stretches as narrow as itself
    least = -np.inf if limit.at_least is None else limit.at_least
    return least, np.inf if limit.at_most is None else limit.at_most


def _answers_that_sink(standing: Standing, maker: int, criterion: int) -> tuple[Stretches, Ends]:
    one = standing.criteria[criterion]
    sinking: Stretches = ()
    if standing.shares[criterion] > 0:
        sinking = _clear(standing, maker, criterion, one.value.answers_below(_points_level(standing, maker, criterion)))
    return _as_typed(standing, (maker, criterion), sinking, _failing(one))


def _passes(criterion: Criterion, choice: float) -> bool:
    return criterion.limit is None or allows(criterion.limit, (criterion.choices or ())[int(choice)])


def _failing(criterion: Criterion) -> Stretches:
    """Return the stretches of answers (after ``per``) that fail a criterion's limit."""
    if criterion.choices is not None:
        return tuple((float(at), float(at)) for at in range(len(criterion.choices)) if not _passes(criterion, at))
    limit = criterion.limit or Limit()
    below = [] if limit.at_least is None else [(-np.inf, limit.at_least)]
    above = [] if limit.at_most is None else [(limit.at_most, np.inf)]
    return (*below, *above)


def _as_typed(
    standing: Standing,
    cell: tuple[int, int],
    counted: Stretches,
    tested: Stretches = (),
    within: tuple[float, float] = EVERYTHING,
) -> tuple[Stretches, Ends]:
    """Return stretches as what would have to be typed; none where that cannot be told.

    Parameters
    ----------
    cell : positions of the maker and the criterion
    counted, tested : stretches of what the value function takes, and of what limits test
    within : bounds of what limits test
    """
    maker, criterion, counting = cell[0], standing.criteria[cell[1]], standing.countings[cell[1]]
    if criterion.choices is not None:
        return joined([*counted, *tested]), ()
    fewest, most = (float(pieces[maker]) for pieces in counting.pieces)
    before = _unsteadied(criterion, counting, maker, counted)
    if before is None or fewest != most:
        return (), ()  # the number of ratings, or the unit, is at play besides
    low, high = float(counting.tested.low[maker]), float(counting.tested.high[maker])
    held = _clipped(joined([*before, *tested]), max(low, within[0]), min(high, within[1]))
    return tuple((low * fewest, high * fewest) for low, high, _ in held), tuple(ends for _, _, ends in held)


def _unsteadied(criterion: Criterion, counting: Counting, maker: int, counted: Stretches) -> Stretches | None:
    """Return stretches of what is drawn to the usual rating as ratings; None where more than the rating decides it."""
    if criterion.steady is None or counting.ratings is None:
        return counted
    number, most = float(counting.ratings.low[maker]), float(counting.ratings.high[maker])
    if number != most:
        return None
    usual, counts_as = criterion.steady.usual, criterion.steady.usual_counts_as

    def rating(drawn: float) -> float:
        # of no rating at all nothing hangs on the answer, and nobody asks here
        return (drawn * (number + counts_as) - counts_as * usual) / number

    return tuple((rating(low), rating(high)) for low, high in counted)


def _clipped(stretches: Stretches, low: float, high: float) -> list[tuple[float, float, tuple[bool, bool]]]:
    """Return what of some stretches lies within two bounds, which belong to it; at its own ends it is only level."""
    held = [(start, end, max(start, low), min(end, high)) for start, end in stretches]
    return [(at, to, (start < at, to < end)) for start, end, at, to in held if at < to or start < at == to < end]
