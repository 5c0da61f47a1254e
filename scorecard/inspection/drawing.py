"""Which pieces to open: drawn at random by a seed, and where each lies.

Every set of so many pieces is as likely as any other, which is what the odds of a sample rest on. Drawn in the order of
the pieces, each by one number between 0 and 1, so that a seed gives the same pieces everywhere.
"""

from collections.abc import Sequence

import numpy as np

from scorecard.frozen import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """Where a piece lies.

    Parameters
    ----------
    carton : from 1; None where it is not known how they are packed
    piece : from 1, within its carton, or else within the whole lot
    """

    carton: int | None
    piece: int


def drawn(lot: int, opened: int, seed: int) -> tuple[int, ...]:
    """Return the numbers of the pieces to open, from 1, in order.

    Parameters
    ----------
    lot, opened : pieces in all, and to open
    seed : 0 or more; the same one gives the same pieces

    References
    ----------
    Selection sampling: Fan, Muller and Rezucha (1962).

    Examples
    --------
    >>> drawn(5, 5, 1)
    (1, 2, 3, 4, 5)
    """
    chances = np.random.default_rng(seed).random(lot)
    wanted, chosen = opened, []
    for passed, chance in enumerate(chances.tolist()):
        if (lot - passed) * chance < wanted:
            chosen.append(passed + 1)
            wanted -= 1
    return tuple(chosen)


def spots(numbers: Sequence[int], per_carton: int | None) -> tuple[Spot, ...]:
    """Return where pieces lie, counted through carton by carton.

    Examples
    --------
    >>> spots([24, 25], 24)
    (Spot(carton=1, piece=24), Spot(carton=2, piece=1))
    """
    if per_carton is None:
        return tuple(Spot(carton=None, piece=number) for number in numbers)
    places = (divmod(number - 1, per_carton) for number in numbers)
    return tuple(Spot(carton=carton + 1, piece=piece + 1) for carton, piece in places)
