"""Which makers pass the limits, which fail whatever the answer turns out to be, and which may fail yet.

Enters: what each limit tests (after ``per``, before ``steady``). Leaves: two tables of (makers, criteria).
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from scorecard.answers import Answers
from scorecard.counting import Counting, steadied
from scorecard.criteria import Criterion, Limit
from scorecard.frozen import dataclass

Booleans = NDArray[np.bool_]

HAIR = 1e-12  # a quotient such as 100 / (100 / 3) may miss its limit by the last bit alone


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Screening:
    """What the limits say.

    Parameters
    ----------
    fails : (makers, criteria), every value that the answer allows fails
    may_fail : (makers, criteria), some do
    """

    fails: Booleans
    may_fail: Booleans

    @property
    def ruled_out(self) -> Booleans:
        """(makers,): whether any limit is failed whatever the answer turns out to be."""
        return np.asarray(self.fails.any(axis=1))


def screen(criteria: Sequence[Criterion], countings: Sequence[Counting]) -> Screening:
    """Return what the limits say of every maker.

    Parameters
    ----------
    criteria : (criteria,)
    countings : (criteria,), each about (makers,)
    """
    verdicts = [_one(criterion, counting.tested) for criterion, counting in zip(criteria, countings, strict=True)]
    return Screening(
        fails=np.stack([fails for fails, _ in verdicts], axis=1),
        may_fail=np.stack([may for _, may in verdicts], axis=1),
    )


def _one(criterion: Criterion, tested: Answers) -> tuple[Booleans, Booleans]:
    if criterion.limit is None:
        nobody = np.zeros(len(tested.low), dtype=bool)
        return nobody, nobody
    if criterion.choices is not None:
        return choices_against(criterion.limit, criterion.choices, tested)
    return numbers_against(criterion.limit, tested)


def numbers_against(limit: Limit, tested: Answers) -> tuple[Booleans, Booleans]:
    """Return who fails a limit on numbers for every value allowed, and who for some.

    Parameters
    ----------
    limit : with ``at_least``, ``at_most`` or both
    tested : (makers,), infinite where open
    """
    least, most = window(limit)
    fails = (tested.high < least) | (tested.low > most) | (least > most)
    passes = (tested.low >= least) & (tested.high <= most)
    return fails, ~fails & ~passes


def window(limit: Limit) -> tuple[float, float]:
    """Return the least and the greatest number that a limit allows, a hair beyond what it says."""
    least = -np.inf if limit.at_least is None else limit.at_least - HAIR * abs(limit.at_least)
    most = np.inf if limit.at_most is None else limit.at_most + HAIR * abs(limit.at_most)
    return float(least), float(most)


def allowed_that_pass(criterion: Criterion, counting: Counting) -> Answers:
    """Return what the value function takes of those numbers that pass the criterion's limit.

    Parameters
    ----------
    criterion : on numbers
    counting : its answers

    Returns
    -------
    (makers,), as ``Counting.allowed``; of no meaning for a maker that fails the limit
    """
    least, most = window(criterion.limit or Limit())
    held = Answers(np.clip(counting.reached.low, least, most), np.clip(counting.reached.high, least, most))
    if criterion.steady is None or counting.ratings is None:
        return held
    return steadied(held, counting.ratings, criterion.steady)


def choices_against(limit: Limit, choices: Sequence[str], tested: Answers) -> tuple[Booleans, Booleans]:
    """Return who fails a limit on choices for every value allowed, and who for some.

    Parameters
    ----------
    limit : with ``one_of``, ``none_of`` or both
    choices : as the criteria file spells them
    tested : (makers,), positions in the choices; NaN where unknown
    """
    allowed = np.array([allows(limit, choice) for choice in choices])
    known = tested.known
    passes = allowed[np.where(known, tested.low, 0).astype(int)]
    fails = np.where(known, ~passes, not allowed.any())
    return fails, ~known & ~fails & (not allowed.all())


def allows(limit: Limit, choice: str) -> bool:
    """Return whether a limit on choices allows one of them."""
    return (limit.one_of is None or choice in limit.one_of) and choice not in (limit.none_of or ())
