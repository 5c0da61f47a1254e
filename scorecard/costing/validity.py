"""Prices that hold no longer, in words: whose, until when, and what to ask.

Enters: landed costs. Leaves: the clause about one of them, and the sentence that names all.
"""

from collections.abc import Callable, Iterable, Sequence

from scorecard.costing.landed import LandedCost
from scorecard.words import day_words, listed

EXPIRED = "its quote has expired: ask whether the price still holds"
FEW = 5  # makers named one by one


def expired_words(
    costs: Iterable[LandedCost], part: Callable[[LandedCost], str], named: Callable[[str], str] = str
) -> list[str]:
    """Return that the quotes of makers have expired, and until when they held; none where all hold.

    Parameters
    ----------
    costs : all that are shown, those that are named first in front
    part : what tells one cost of a maker from its others, such as "by sea"; said where only some of them have expired
    """
    by_maker: dict[str, list[LandedCost]] = {}
    for cost in costs:
        by_maker.setdefault(cost.maker, []).append(cost)
    told = [said for of_one in by_maker.values() if (said := _of_maker(of_one, part, named))]
    if not told:
        return []
    names = listed([*told[:FEW], *([f"{len(told) - FEW} more"] if len(told) > FEW else [])])
    if len(told) == 1:
        return [f"The quote of {names} has expired: ask whether the price still holds"]
    return [f"The quotes of {names} have expired: ask whether the prices still hold"]


def _of_maker(costs: Sequence[LandedCost], part: Callable[[LandedCost], str], named: Callable[[str], str]) -> str:
    """Return a maker with the first day on which a price of it ended, and which of its costs; "" where all hold."""
    over = [(cost, day) for cost in costs if (day := cost.held_until) is not None]
    if not over:
        return ""
    parts = dict.fromkeys(part(cost) for cost, _ in over) if len(over) < len(costs) else ()
    which = f" {listed(parts)}" if parts else ""
    return f"{named(costs[0].maker)}{which} (until {day_words(min(day for _, day in over))})"
