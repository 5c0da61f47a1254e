"""Warnings on what the pieces sell for, beside what they cost."""

from collections.abc import Iterable, Sequence

from scorecard.codes import money
from scorecard.costing.cheapest import Piece, cheapest_of, level_words, piece_amount, rivals_words
from scorecard.costing.landed import LandedCost
from scorecard.costing.pieces import piece_of
from scorecard.errors import Place, Problem
from scorecard.ordering.selling import Selling
from scorecard.words import listed


def price_doubts(selling: Selling | None, chosen: Iterable[LandedCost]) -> tuple[Problem, ...]:
    """Return warnings: that even the cheapest good piece costs, or may cost, more than is kept of its price; and that a
    piece left over is said to bring more than it costs.

    Parameters
    ----------
    selling : None where nothing is said of it
    chosen : the way that stands for each maker
    """  # noqa: D205 - one sentence
    costs = list(chosen)
    if selling is None or not costs:
        return ()
    pieces, home = [piece_of(cost) for cost in costs], costs[0].inputs.rates.home
    return (*_below_cost(selling, pieces, home), *_worth_more(selling, pieces, home))


def _worth_more(selling: Selling, pieces: Sequence[Piece], home: str) -> tuple[Problem, ...]:
    known = [piece for piece in pieces if not piece.missing]
    cheapest = min(known, key=lambda piece: piece.low, default=None)
    if cheapest is None or selling.unsold_worth <= cheapest.low:
        return ()
    worth, cost = (f"{money(one, home)} {home}" for one in (selling.unsold_worth, cheapest.low))
    return (
        Problem(
            code="left-over-above-cost",
            place=selling.places.get("unsold_worth", Place()),
            found=f"a piece left over is said to bring {worth}, more than the {cost} that one costs "
            f"({cheapest.maker}), so that no order would be too large",
            wanted="Write what a piece that nobody asked for truly brings, fees and postage taken off",
        ),
    )


def _below_known(selling: Selling, pieces: Sequence[Piece], home: str) -> tuple[Problem, ...]:
    """Return a warning where every maker lacks a cost and the known part alone is more than is kept."""
    least = min(pieces, key=lambda piece: piece.low)
    if selling.kept >= least.low:
        return ()
    kept, low = (f"{money(one, home)} {home}" for one in (selling.kept, least.low))
    return _too_low(
        selling,
        f"of the price {kept} are left, less than what is known already of the cheapest good piece, {low} "
        f"({least.maker}), {listed(least.missing)} not counted",
    )


def _below_cost(selling: Selling, pieces: Sequence[Piece], home: str) -> tuple[Problem, ...]:
    if selling.kept <= 0:  # of no more than nothing the reader has warned
        return ()
    found = cheapest_of(pieces)
    if found is None:
        return _below_known(selling, pieces, home)
    if selling.kept >= min(one.high for one in pieces if not one.missing):
        return ()
    piece = found.piece
    is_sure = selling.kept < min(one.low for one in (piece, *found.rivals))
    price, kept = (f"{money(one, home)} {home}" for one in (selling.price, selling.kept))
    left = "," if selling.kept == selling.price else f", of which {kept} are left,"
    told = f"{piece_amount(piece, home)} ({piece.maker}{level_words(found)})"
    but = f"; {rivals}" if (rivals := rivals_words(found, home)) else ""
    return _too_low(
        selling,
        f"the price, {price}{left} {'is' if is_sure else 'may be'} below what the cheapest good piece costs, "
        f"{told}{but}",
    )


def _too_low(selling: Selling, found: str) -> tuple[Problem, ...]:
    wanted = "Raise the price, or find a cheaper maker, way or quantity"
    place = selling.places.get("price", Place())
    return (Problem(code="price-below-cost", place=place, found=found, wanted=wanted),)
