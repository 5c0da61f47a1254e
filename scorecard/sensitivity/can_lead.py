"""Which makers can ever lead, under which weighting nearest to the present one, and what mix of rivals beats the rest.

Enters: points and shares. Leaves: for every maker a proof either way. Most of thousands of makers are settled together:
those that lead under some of many sample weightings, those that a leader beats on every criterion, and those that a
mix found for another maker beats too.
"""

from collections.abc import Iterator, Mapping, Sequence
from itertools import islice

import numpy as np
from numpy.typing import NDArray

from scorecard.frozen import dataclass
from scorecard.ranking import TIE
from scorecard.sensitivity.lead_proofs import Outcome, margin_over, prove
from scorecard.sensitivity.nearest_at_once import nearest_leads
from scorecard.sensitivity.weightings import Weightings
from scorecard.value_functions import Floats

SAMPLES, SAMPLES_AT_ONCE = 2048, 64
STRONG = 8  # of the makers that often lead, so many are tried as the one rival to be level with


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CanLead:
    """Whether a maker can lead, and how near.

    Parameters
    ----------
    possible : whether under some weighting no maker beats it
    level : whether it can then only be joint first
    moved : the part of all weight that must be moved for it, 0 to 1; None where it cannot lead
    shares : (criteria,), the nearest weighting under which no maker beats it; None where there is none
    beaten_by : parts, adding up to 1, of the rivals whose mix beats it on every criterion; None where it can lead
    """

    possible: bool
    level: bool
    moved: float | None
    shares: Floats | None
    beaten_by: Mapping[int, float] | None


def can_lead(points: Floats, shares: Floats, asked: Sequence[int] | None = None) -> tuple[CanLead, ...]:
    """Return whether makers can lead, with the nearest weighting under which each does.

    A maker that leads, or is level with the leader, under the present weighting has moved 0. Criteria of weight 0 stay
    at 0. Meant to be asked of some hundreds of makers among thousands.

    Parameters
    ----------
    points : (makers, criteria), 0 to 100
    shares : (criteria,), summing to 1, 0 allowed
    asked : positions of the makers in question, each against all; None for all of them

    References
    ----------
    Potential optimality: Hazen (1986), Operations Research 34, 296-310 (from memory).

    Examples
    --------
    >>> points = np.array([[100.0, 0.0], [0.0, 100.0], [40.0, 40.0]])
    >>> [(found.possible, found.moved) for found in can_lead(points, np.array([0.75, 0.25]))]
    [(True, 0.0), (True, 0.25), (False, None)]
    """
    makers = range(len(points)) if asked is None else asked
    counted = np.flatnonzero(shares > 0)
    search = _Search(np.ascontiguousarray(points[:, counted]))
    weights = shares[counted]
    likely = search.settle(weights, makers)
    proven = {maker: _proven(search.found[maker]) for maker in makers}
    able = [maker for maker, found in proven.items() if found.verdict != "beaten"]
    scores = search.points @ weights
    rivals = [int(scores.argmax()), *likely[:STRONG].tolist()]
    behind = [maker for maker in able if scores[maker] < scores.max() - TIE]
    allowances = [max(0.0, -proven[maker].margin) for maker in behind]
    nearest = zip(behind, nearest_leads(search.points, weights, behind, allowances, rivals), strict=True)
    moves = dict.fromkeys(able, (0.0, weights)) | dict(nearest)
    shares_of = {maker: _spread(move[1], counted, len(shares)) for maker, move in moves.items()}
    return tuple(
        CanLead(
            possible=maker in moves,
            level=proven[maker].verdict == "level",
            moved=moves[maker][0] if maker in moves else None,
            shares=shares_of.get(maker),
            beaten_by=None if maker in moves else proven[maker].mix,
        )
        for maker in makers
    )


def _proven(found: Outcome | None) -> Outcome:
    """Return an outcome that proves something; an error where a maker was passed over."""
    if found is None or found.verdict == "unproven":
        raise ArithmeticError("a maker was left without a proof")
    return found


def _spread(weights: Floats, counted: NDArray[np.intp], criteria: int) -> Floats:
    """Return weights with 0 for the criteria that do not count."""
    shares = np.zeros(criteria)
    shares[counted] = weights
    return shares


class _Search:
    """The makers' outcomes as they are found."""

    def __init__(self, points: Floats) -> None:
        self.points = points
        self.found: list[Outcome | None] = [None] * len(points)
        self.open = np.ones(len(points), dtype=bool)

    def settle(self, shares: Floats, makers: Sequence[int]) -> NDArray[np.intp]:
        """Find the outcome of these makers, of many at once, then of each of the rest; return who often leads."""
        likely = self._sample(shares)
        for maker in likely:
            self._beaten_too({int(maker): 1.0})
        for maker in likely:
            self._level_too(int(maker))
        for maker in makers:
            if self.open[maker]:
                outcome = prove(self.points, maker, likely)
                self._note(maker, outcome)
                if outcome.verdict == "beaten":
                    self._beaten_too(outcome.mix)
        return likely

    def _note(self, maker: int, outcome: Outcome) -> None:
        self.found[maker] = outcome
        self.open[maker] = False

    def _sample(self, shares: Floats) -> NDArray[np.intp]:
        """Return who leads under sample weightings, most often first, and note those that are clearly ahead there."""
        samples = _samples(shares)
        leaders = np.concatenate([(block @ self.points.T).argmax(axis=1) for block in samples])
        likely, times = np.unique(leaders, return_counts=True)
        weights = np.concatenate(samples)
        for maker, sample in zip(likely, self._clearest(leaders, likely, weights), strict=True):
            margin = margin_over(self.points, int(maker), weights[sample])
            if margin > TIE:
                self._note(int(maker), Outcome(weights=weights[sample], margin=margin, mix={}, bound=np.inf))
        return likely[np.argsort(-times, kind="stable")]

    def _clearest(self, leaders: NDArray[np.intp], likely: NDArray[np.intp], weights: Floats) -> Iterator[int]:
        """Yield for each leader the sample where its lead over the other leaders, or over nil, is greatest."""
        scores = np.column_stack([np.zeros(len(weights)), weights @ self.points[likely].T])
        arranged = np.partition(scores, -2, axis=1)
        ahead = arranged[:, -1] - arranged[:, -2]
        for maker in likely:
            yield int(np.where(leaders == maker, ahead, -np.inf).argmax())

    def _beaten_too(self, mix: Mapping[int, float]) -> None:
        """Note the makers, still open, that a mix beats on every criterion."""
        mixed = sum((part * self.points[rival] for rival, part in mix.items()), np.zeros(self.points.shape[1]))
        waiting = np.flatnonzero(self.open)
        bounds = (self.points[waiting] - mixed).max(axis=1)
        for maker, bound in zip(waiting[bounds < -TIE], bounds[bounds < -TIE], strict=True):
            self._note(int(maker), Outcome(weights=np.array([]), margin=np.nan, mix=mix, bound=float(bound)))

    def _level_too(self, rival: int) -> None:
        """Note the makers, still open, that are the best on a criterion, and that a rival beats or equals on all."""
        best = self.points >= self.points.max(axis=0)
        able = self.open & best.any(axis=1)
        able[rival] = False
        waiting = np.flatnonzero(able)
        bounds = (self.points[waiting] - self.points[rival]).max(axis=1, initial=-np.inf)
        for maker, bound in zip(waiting[bounds <= TIE].tolist(), bounds[bounds <= TIE].tolist(), strict=True):
            weights = np.eye(len(best.T))[best[maker].argmax()]
            self._note(maker, Outcome(weights=weights, margin=0.0, mix={rival: 1.0}, bound=bound))


def _samples(shares: Floats) -> list[Floats]:
    """Return sample weightings: all on one criterion, the present one, and many at random."""
    stream = Weightings(kind="any", shares=shares).blocks(SAMPLES_AT_ONCE)
    return [np.vstack([shares, np.eye(len(shares))]), *islice(stream, SAMPLES // SAMPLES_AT_ONCE)]
