"""Real order sizes: what is wanted, each price break, the least that a maker takes; and landed costs at such a size.

Enters: the inputs of a landed cost. Leaves: sizes, and the same inputs as if another quantity were wanted.
"""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Literal, get_args

from scorecard.costing.inputs import CostInputs, MakerFacts
from scorecard.costing.prices import least_quoted
from scorecard.costing.quantities import order_quantities
from scorecard.costing.replies import Reply, standing
from scorecard.frozen import dataclass

Why = Literal["wanted", "price break", "minimum"]
WHYS: tuple[Why, ...] = get_args(Why)


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """A number of pieces that one maker takes as an order, and what makes it one to consider."""

    pieces: int
    whys: tuple[Why, ...]


def settled(inputs: CostInputs) -> CostInputs:
    """Return inputs whose quotes and offers say themselves for how many pieces they are.

    A price for all, and a freight cost, that name no pieces are for those that the brief wants. At another quantity
    they are still for those.
    """
    wanted = inputs.brief.quantity
    quotes = (
        replace(row, pieces=wanted) if row.price_is_for == "all" and row.pieces is None else row
        for row in inputs.quotes
    )
    offers = (
        replace(one, from_pieces=wanted, to_pieces=wanted)
        if one.cost is not None and one.from_pieces is None and one.to_pieces is None
        else one
        for one in inputs.offers
    )
    return replace(inputs, quotes=tuple(quotes), offers=tuple(offers))


def at_quantity(inputs: CostInputs, pieces: int) -> CostInputs:
    """Return settled inputs as if so many pieces were wanted."""
    return replace(inputs, brief=replace(inputs.brief, quantity=pieces))


def of_makers(inputs: CostInputs, makers: Iterable[str]) -> CostInputs:
    """Return inputs with the quotes and offers of some makers alone."""
    kept = frozenset(makers)
    quotes = tuple(row for row in inputs.quotes if row.maker in kept)
    return replace(inputs, quotes=quotes, offers=tuple(one for one in inputs.offers if one.maker in kept))


def order_sizes(inputs: CostInputs) -> Mapping[str, tuple[Size, ...]]:
    """Return every quoted maker's real order sizes, least first.

    Parameters
    ----------
    inputs : settled

    Returns
    -------
    by maker in sheet order; the pieces wanted are raised to what the maker takes at the least. Where its minimum is
    open, every quantity that it may come to. A price from one piece on is no minimum, and one piece of each design no
    size
    """
    return {maker: _sizes(inputs, maker, replies) for maker, replies in standing(inputs.quotes).items()}


def _sizes(inputs: CostInputs, maker: str, replies: Iterable[Reply]) -> tuple[Size, ...]:
    facts = inputs.makers.get(maker, MakerFacts(maker=maker))
    found: dict[int, set[Why]] = {}
    for reply in replies:
        least = least_quoted(reply)
        named = {row.pieces for row in reply.rows if row.pieces is not None}
        breaks = named if len(reply.rows) > 1 else set()
        asked: list[tuple[int, Why]] = [(inputs.brief.quantity, "wanted"), (inputs.brief.designs, "minimum")]
        asked += [(pieces, "price break") for pieces in breaks]
        for pieces, why in asked:
            for size in order_quantities(replace(inputs.brief, quantity=pieces), facts, least):
                if why == "wanted" or size > inputs.brief.designs:
                    found.setdefault(size, set()).add("minimum" if why == "price break" and size not in breaks else why)
    return tuple(
        Size(pieces=pieces, whys=tuple(why for why in WHYS if why in whys)) for pieces, whys in sorted(found.items())
    )
