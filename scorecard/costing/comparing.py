"""Comparing landed costs: what part of the total freight and border make, and the rate at which the cheapest changes.

Enters: costs, or what they are reckoned from. Leaves: shares of a total; for each currency the nearest rates at which
another maker comes out cheapest, and those from which one may be.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from decimal import Context, Decimal

from scorecard.costing.amounts import HUNDRED, added, over, times, to_step
from scorecard.costing.cheapest import Cheapest, Piece, cheapest_of
from scorecard.costing.choosing import chosen_ways, middle
from scorecard.costing.delivery_terms import Coverage
from scorecard.costing.entries import Group
from scorecard.costing.inputs import CostInputs
from scorecard.costing.landed import LandedCost, landed_costs
from scorecard.costing.pieces import bare_piece, piece_of
from scorecard.frozen import dataclass

_FURTHEST = Decimal(2)
_RATES = Context(prec=4)  # rates of 4 significant digits

Lead = tuple[Decimal, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class CurrencyChange:
    """The nearest rates of one currency at which another maker is the cheapest, between half and twice today's.

    Parameters
    ----------
    currency : whose rate moves, the others staying
    figure : today's, in its own direction
    cheapest : the maker that comes out cheapest today
    below, above : the rate, of 4 significant digits, and the maker that is then the cheapest or level with it, by the
        middle of what each may cost; None where none is
    unsure_below, unsure_above : the nearer rate from which it may change, for a cost is a range or lacks a part, and
        the maker that may be cheaper then; None where that is no other rate, and where it is not sure today
    rivals : makers that may be cheaper all the same, for want of what is not known: today, from a rate on, or at half
        or twice the rate where nobody else comes out cheapest up to there
    is_sure : whether nobody may be cheaper today
    """

    currency: str
    figure: Decimal
    cheapest: str
    below: tuple[Decimal, str] | None
    above: tuple[Decimal, str] | None
    unsure_below: tuple[Decimal, str] | None
    unsure_above: tuple[Decimal, str] | None
    rivals: tuple[str, ...]
    is_sure: bool


def shares(cost: LandedCost) -> Mapping[Group, Decimal | None]:
    """Return what part of the total each group of lines makes, in percent to one decimal.

    Returns
    -------
    by group; None for freight and border where the price has them inside, and for all where the total is open or
    nothing. Of several readings, the dearest
    """
    dearest = max(cost.readings, key=lambda reading: reading.high)
    total = added([dearest.low, dearest.high])
    groups: tuple[Group, ...] = ("maker", "freight", "border", "extra", "payment")
    if not total.is_finite() or total <= 0:
        return dict.fromkeys(groups)
    found: dict[Group, Decimal | None] = {}
    for group in groups:
        part = added(end for line in dearest.lines if line.group == group for end in (line.low, line.high))
        found[group] = to_step(over(times(part, HUNDRED), total), Decimal("0.1"))
    for group in inside_the_price(dearest.situation.coverage):
        found[group] = found[group] or None
    return found


def known_shares(cost: LandedCost) -> Mapping[Group, Decimal | None]:
    """Return the same, None for all where a cost is missing: nobody knows of what these would be parts."""
    found = shares(cost)
    return found if cost.is_complete else dict.fromkeys(found)


def inside_the_price(coverage: Coverage) -> list[Group]:
    """Return which of freight and border the price has inside."""
    inside: dict[Group, bool] = {"freight": coverage.pays_freight, "border": "duty" in coverage.parts}
    return [group for group, is_inside in inside.items() if is_inside]


def comparable(inputs: CostInputs) -> dict[str, Decimal]:
    """Return the cost of a good piece, the middle of a range, of every maker whose costs are known from end to end."""
    return {maker: middle(cost) for maker, cost in _chosen(inputs).items() if cost.is_complete and not cost.is_open}


def _chosen(inputs: CostInputs) -> Mapping[str, LandedCost]:
    return chosen_ways(landed_costs(inputs), inputs.as_of, inputs.brief.need_by, inputs.ordered)


def cheapest_maker(inputs: CostInputs) -> Cheapest | None:
    """Return whose good piece comes out cheapest by its chosen way, and who may be cheaper; None below two makers."""
    pieces = [piece_of(cost) for cost in _chosen(inputs).values()]
    return cheapest_of(pieces) if sum(not piece.missing and piece.high.is_finite() for piece in pieces) > 1 else None


def currency_changes(inputs: CostInputs) -> tuple[CurrencyChange, ...]:
    """Return, for every currency with a rate in use, at about which rate another maker becomes the cheapest.

    Parameters
    ----------
    inputs : all that was read

    Returns
    -------
    in the order of the rates; none where fewer than two makers have every cost known

    Notes
    -----
    Found between today's rate and half or twice of it: where the cheapest changes and changes back within these, one of
    the changes is named, or none.
    """
    today = cheapest_maker(inputs)
    if today is None:
        return ()
    in_use = {row.currency for row in inputs.quotes} | {offer.currency for offer in inputs.offers}
    return tuple(_change(inputs, currency, today) for currency in inputs.rates.rates if currency in in_use)


def _change(inputs: CostInputs, currency: str, found: Cheapest) -> CurrencyChange:
    figure, today = inputs.rates.rates[currency].figure, found.piece.maker

    def lead_at(other: Decimal) -> Lead:
        pieces = comparable(replace(inputs, rates=inputs.rates.with_figure(currency, other)))
        rival = min((maker for maker in pieces if maker != today), key=lambda maker: pieces[maker])
        return pieces[rival] - pieces[today], rival

    ends = over(figure, _FURTHEST), times(figure, _FURTHEST)
    below, above = (where_it_changes(lead_at, figure, end) for end in ends)
    doubts = [_doubt(inputs, currency, found, end) for end in ends]
    unsure = [
        None if doubt and turn and doubt[0] == turn[0] else doubt
        for doubt, turn in zip(doubts, (below, above), strict=True)
    ]
    unchanged = [end for end, turn in zip(ends, (below, above), strict=True) if turn is None]
    rivals = [piece.maker for piece in found.rivals] + [doubt[1] for doubt in unsure if doubt]
    rivals += [maker for end in unchanged for maker in _rivals_at(inputs, currency, end, today)]
    return CurrencyChange(
        currency=currency,
        figure=figure,
        cheapest=today,
        below=below,
        above=above,
        unsure_below=unsure[0],
        unsure_above=unsure[1],
        rivals=tuple(dict.fromkeys(rivals)),
        is_sure=found.is_sure,
    )


def _doubt(inputs: CostInputs, currency: str, found: Cheapest, end: Decimal) -> tuple[Decimal, str] | None:
    """Return the first rate on the way to an end from which another may be cheaper; None where it may be today."""

    def lead_at(other: Decimal) -> Lead:
        own, others = _pieces_at(inputs, currency, other, found.piece.maker)
        return min((piece.surely_above(own), piece.maker) for piece in others)

    return where_it_changes(lead_at, inputs.rates.rates[currency].figure, end)


def _rivals_at(inputs: CostInputs, currency: str, figure: Decimal, today: str) -> list[str]:
    """Return who may be cheaper than today's cheapest at another rate."""
    own, others = _pieces_at(inputs, currency, figure, today)
    return [piece.maker for piece in others if piece.may_be_below(own)]


def _pieces_at(inputs: CostInputs, currency: str, figure: Decimal, today: str) -> tuple[Piece, list[Piece]]:
    """Return what a good piece costs at another rate: at today's cheapest, and at every other maker."""
    chosen = _chosen(replace(inputs, rates=inputs.rates.with_figure(currency, figure)))
    pieces = {maker: bare_piece(cost) for maker, cost in chosen.items()}
    return pieces.pop(today), list(pieces.values())


def where_it_changes(lead_at: Callable[[Decimal], Lead], today: Decimal, end: Decimal) -> tuple[Decimal, str] | None:
    """Return the first rate of 4 digits on the way to an end at which another maker is the cheapest, and who is.

    Costs are nearly straight lines in the rate, so that the first guess between two rates is mostly right; where fees
    with a minimum bend them, halving finds the place all the same.

    Parameters
    ----------
    lead_at : by how much today's cheapest is below the cheapest other maker at a rate, and who that is; level counts
        as a change, unless somebody is level today
    today : the rate from which the search begins; where another is cheaper there already, nothing is looked for
    end : the furthest rate
    """
    near, far = today, _RATES.plus(end)
    now, at_far = lead_at(near), lead_at(far)
    at_near = now
    if now[0] < 0 or _is_ahead(at_far, now):
        return None
    while _RATES.next_toward(near, far) != far:
        for guess in _guesses(near, far, over(at_near[0], at_near[0] - at_far[0])):
            if min(near, far) < guess < max(near, far):
                found = lead_at(guess)
                if _is_ahead(found, now):
                    near, at_near = guess, found
                else:
                    far, at_far = guess, found
    return far, at_far[1]


def _is_ahead(lead: Lead, now: Lead) -> bool:
    """Return whether today's cheapest is cheaper than every other, or as level with one as it is now."""
    return lead[0] > 0 or lead[0] == now[0] == 0


def _guesses(near: Decimal, far: Decimal, part: Decimal) -> tuple[Decimal, Decimal, Decimal]:
    """Return the first rate at or beyond a part of the way, the one before it, and the middle."""
    at = near + (far - near) * part
    before = _RATES.next_toward(at, near)
    return _RATES.next_toward(before, far), before, _RATES.plus((near + far) / 2)
