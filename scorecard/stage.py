"""The stage of the choice: whom to write to, or, once two makers are costed, whom to order from.

Enters: a calculation. Leaves: the makers whose landed cost is known, score beside cost, who is both dearer and lower,
and the sentences about it.
"""

from collections.abc import Sequence
from decimal import Decimal
from math import inf, isfinite, isnan
from typing import TYPE_CHECKING, Literal

from scorecard.answers import Answers
from scorecard.calculation import Calculation
from scorecard.codes import amount_range, money
from scorecard.frozen import dataclass
from scorecard.measures import measured
from scorecard.ranking import TIE
from scorecard.scale_doubts import beyond_points, is_price
from scorecard.sentences import listed_apart, of_hundred
from scorecard.words import counted, listed, rounded

if TYPE_CHECKING:
    from scorecard.costing.cheapest import Cheapest, Piece
    from scorecard.costing.landed import LandedCost

MEASURE = "landed_cost_per_piece"
WRITE = "Whom to write to, not yet whom to order from"
ORDER = "Whom to order from"
NOT_RANKED = "price and freight are not in this ranking"
DEARER_NAMED = 8  # makers named as both dearer and lower
HAIR = 1e-9  # more than a sum of money is off, less than any minor unit

Stage = Literal["write", "order"]


@dataclass(frozen=True, slots=True, kw_only=True)
class CostedMaker:
    """A ranked maker whose landed cost is known.

    Parameters
    ----------
    maker : its position
    low, high : what a good piece costs at the door, in the brief's currency; infinite at an open end
    cost : the way that stands for it; None where its landed cost was typed and nothing is quoted
    is_typed : whether the figure is the user's own rather than the sum
    """

    maker: int
    low: float
    high: float
    cost: "LandedCost | None"
    is_typed: bool = False


def costed_makers(calculation: Calculation) -> list[CostedMaker]:
    """Return the ranked makers whose landed cost is known, no cost missing, in the order of rank.

    Parameters
    ----------
    calculation : with the names as they were read
    """
    names, costed = calculation.case.table.makers, calculation.case.costed
    known, typed = _landed_answers(calculation), _typed_makers(calculation)
    chosen = costed.chosen if costed else {}
    return [
        CostedMaker(
            maker=maker,
            low=float(known.low[maker]),
            high=float(known.high[maker]),
            cost=chosen.get(names[maker]),
            is_typed=maker in typed,
        )
        for maker in calculation.ranking.order
        if not isnan(known.low[maker])
    ]


def _of_landed_cost(calculation: Calculation) -> int | None:
    """Return the position of the criterion that draws on landed cost; None where none does."""
    measures = [criterion.measure for criterion in calculation.case.criteria]
    return measures.index(MEASURE) if MEASURE in measures else None


def _landed_answers(calculation: Calculation) -> Answers:
    at = _of_landed_cost(calculation)
    if at is None:
        return measured(MEASURE, calculation.case, calculation.as_of)
    return calculation.countings[at].typed


def _typed_makers(calculation: Calculation) -> frozenset[int]:
    at = _of_landed_cost(calculation)
    answers = None if at is None else calculation.case.table.answers.get(calculation.case.criteria.keys[at])
    return frozenset() if answers is None else frozenset(answers.known.nonzero()[0].tolist())


def open_makers(calculation: Calculation) -> list[CostedMaker]:
    """Return the ranked makers that are quoted and lack a cost, in the order of rank.

    Parameters
    ----------
    calculation : with the names as they were read
    """
    names, costed = calculation.case.table.makers, calculation.case.costed
    known, chosen = _landed_answers(calculation), costed.chosen if costed else {}
    return [
        CostedMaker(maker=maker, low=float(cost.per_good_piece[0]), high=inf, cost=cost)
        for maker in calculation.ranking.order
        if isnan(known.low[maker]) and (cost := chosen.get(names[maker])) is not None
    ]


def stage_of(costed: Sequence[CostedMaker]) -> Stage:
    """Return the stage: an order can be thought of once two ranked makers are costed."""
    return "order" if len(costed) > 1 else "write"


def stage_sentences(
    calculation: Calculation, costed: Sequence[CostedMaker], lacking: Sequence[CostedMaker] = ()
) -> list[str]:
    """Return what the ranking is for so far, as sentences without their full stops; none where nobody is ranked.

    Parameters
    ----------
    calculation : of a case on a day
    costed : its ``costed_makers``
    lacking : its ``open_makers``
    """
    if not calculation.ranking.order:
        return []
    if stage_of(costed) == "write":
        return [_write_sentence(calculation, costed), *_loss_sentences(calculation, costed)]
    return [_order_sentence(calculation), *_beside(calculation, costed, lacking)]


def _write_sentence(calculation: Calculation, costed: Sequence[CostedMaker]) -> str:
    if draws_on_price(calculation):
        return f"{WRITE}: {'one ranked maker is' if costed else 'no ranked maker is'} costed so far"
    return f"{WRITE}: {NOT_RANKED}{'; one ranked maker is costed so far' if costed else ''}"


def draws_on_price(calculation: Calculation) -> bool:
    """Return whether a criterion that counts draws on landed cost, or by its name on a price."""
    return any(criterion.weight > 0 and is_price(criterion) for criterion in calculation.case.criteria)


def _order_sentence(calculation: Calculation) -> str:
    at = _of_landed_cost(calculation)
    share = 0.0 if at is None else float(calculation.shares[at])
    if at is not None and share > 0:
        counts = (
            f"{ORDER}: what a good piece costs at your door counts in this ranking, with {of_hundred(share)} of weight"
        )
        return f"{counts}{_told_apart(calculation, at)}"
    if draws_on_price(calculation):
        return f"{ORDER}: what a good piece costs at your door stands beside the scores"
    return f"{ORDER}: {NOT_RANKED}, so what a good piece costs at your door stands beside the scores"


def _told_apart(calculation: Calculation, at: int) -> str:
    """Return that landed cost tells no maker apart, since all that is known of it lies beyond an end of its points."""
    beyond = beyond_points(calculation.case.criteria.criteria[at], calculation.countings[at])
    return f", but tells nobody apart: {beyond}" if beyond else ""


def _beside(calculation: Calculation, costed: Sequence[CostedMaker], lacking: Sequence[CostedMaker]) -> list[str]:
    pairs = dearer_and_lower(calculation, costed)
    uncosted = len(calculation.ranking.order) - len(costed)
    said = [_cheapest_sentence(calculation, costed, lacking), *_loss_sentences(calculation, costed)]
    said += [_dearer_sentence(calculation, pairs)] if pairs else []
    said += [f"{_are_not(uncosted)} costed yet"] if uncosted else []
    return said + _if_it_counted(calculation, costed)


def _if_it_counted(calculation: Calculation, costed: Sequence[CostedMaker]) -> list[str]:
    """Return from which weight of landed cost on, or below which, another maker leads, and what the two cost."""
    at = _of_landed_cost(calculation)
    found = None if at is None else calculation.firmness.weight_ranges[at]
    if at is None or found is None:
        return []
    low, high = calculation.firmness.typed_ends(at, calculation.case.criteria)
    if calculation.shares[at] > 0:
        rival, turn = found.overtaken_below, f"Landed cost decides: below a weight of {rounded(low or 0.0)}"
    else:
        rival, turn = found.overtaken_above, f"Landed cost does not count yet: above a weight of {rounded(high or 0.0)}"
    if rival is None:
        return []
    return [f"{turn} {calculation.case.table.makers[rival]} would lead{_why(calculation, costed, rival)}"]


def _why(calculation: Calculation, costed: Sequence[CostedMaker], rival: int) -> str:
    """Return what a good piece costs from the leader and from a rival; "" where either is not costed."""
    names, home, leader = calculation.case.table.makers, currency_of(calculation), calculation.ranking.order[0]
    pieces = {one.maker: amount_range(one.low, one.high, home) for one in costed}
    if leader not in pieces or rival not in pieces:
        return ""
    return f", since a good piece costs {pieces[leader]} from {names[leader]} and {pieces[rival]} from {names[rival]}"


def _are_not(number: int) -> str:
    return f"{counted(number, 'ranked maker')} {'is' if number == 1 else 'are'} not"


def _cheapest_sentence(calculation: Calculation, costed: Sequence[CostedMaker], lacking: Sequence[CostedMaker]) -> str:
    from scorecard.costing.cheapest import level_words, piece_amount, rivals_words

    home, found = currency_of(calculation), _cheapest(calculation, costed, lacking)
    first, piece = costed[0], found.piece
    name, level = calculation.case.table.makers[first.maker], level_words(found)
    late = _late_words(calculation, [first])
    but = f", but {rivals_words(found, home)}" if found.rivals else ""
    stands = f"Of those costed {name} stands first"
    if piece.maker == name:
        how = "comes out cheapest too" if but else "is the cheapest too"
        return f"{stands} and {how}, at {piece_words(first, home)}{late}{level}{but}"
    amount = f"{piece_amount(piece, home)} a good piece"
    cheapest = f"{piece.maker} comes out cheapest" if but else f"the cheapest is {piece.maker}"
    of_cheapest = [one for one in (*costed, *lacking) if calculation.case.table.makers[one.maker] == piece.maker]
    amount += _late_words(calculation, of_cheapest[:1])
    return f"{stands}, at {piece_words(first, home)}{late}; {cheapest}, at {amount}{level}{but}"


def _cheapest(calculation: Calculation, costed: Sequence[CostedMaker], lacking: Sequence[CostedMaker]) -> "Cheapest":
    from scorecard.costing.cheapest import cheapest_of

    found = cheapest_of(_piece(calculation, one) for one in (*costed, *lacking))
    assert found is not None, "somebody is costed"  # noqa: S101 - told to the type checker
    return found


def _piece(calculation: Calculation, one: CostedMaker) -> "Piece":
    """Return a maker's cost as a value to compare: its sum, or the figure that the user typed."""
    from scorecard.costing.amounts import exact
    from scorecard.costing.cheapest import Piece
    from scorecard.costing.pieces import piece_of

    name = calculation.case.table.makers[one.maker]
    if one.cost is not None and not one.is_typed:
        return piece_of(one.cost, name)
    low, high = (exact(end) if isfinite(end) else Decimal(end) for end in (one.low, one.high))
    return Piece(maker=name, cases=((low, high),))


def _loss_sentences(calculation: Calculation, costed: Sequence[CostedMaker]) -> list[str]:
    """Return where the leader, or the maker that comes out cheapest, costs more than is kept of a piece's price."""
    selling = calculation.case.selling
    if selling is None or not costed:
        return []
    names, cheapest = calculation.case.table.makers, _cheapest(calculation, costed, ()).piece.maker
    told = [one for one in costed if calculation.ranking.ranks[one.maker] == 1 or names[one.maker] == cheapest]
    return [words for one in told if (words := _loss_words(calculation, one, float(selling.kept)))]


def _loss_words(calculation: Calculation, one: CostedMaker, kept: float) -> str:
    """Return what a maker's good piece loses, or may lose; "" where it surely does not."""
    name, home = calculation.case.table.makers[one.maker], currency_of(calculation)
    if one.high <= kept + HAIR:
        return ""
    left = f"of its price {money(kept, home)} {home} {'is' if kept >= 0 else 'would be'} left"
    said = f"A good piece from {name} costs {amount_range(one.low, one.high, home)}, and {left}: each one sold"
    if one.low > kept + HAIR:
        return f"{said} loses {amount_range(one.low - kept, one.high - kept, home)}"
    return f"{said} may lose {f'up to {money(one.high - kept, home)} {home}' if isfinite(one.high) else 'money'}"


def _late_words(calculation: Calculation, makers: Sequence[CostedMaker]) -> str:
    """Return how the way that stands for a maker misses the need-by date, and that its quote is over; else ""."""
    from scorecard.costing.validity import EXPIRED

    costed = calculation.case.costed
    found = [costed.status(one.cost) for one in makers if costed and one.cost]
    late = [status for status in found if status not in (None, "in time")]
    stale = [EXPIRED for one in makers if costed and one.cost and one.cost.is_expired and not one.is_typed]
    return "".join(f" ({words})" for words in [*late, *stale])


def currency_of(calculation: Calculation) -> str:
    """Return the currency of landed costs; "" where nothing names one."""
    costed = calculation.case.costed
    return (costed.inputs.rates.home if costed else calculation.case.brief.currency) or ""


def piece_words(one: CostedMaker, home: str) -> str:
    """Return the cost of a good piece in words, such as "6.42 to 7.10 EUR a good piece"."""
    return f"{amount_range(one.low, one.high, home)} a good piece"


def dearer_and_lower(calculation: Calculation, costed: Sequence[CostedMaker]) -> list[tuple[int, int]]:
    """Return the makers that are dearer than another and lower in score as well, each with the best that beats it so.

    Parameters
    ----------
    calculation : of a case on a day
    costed : its ``costed_makers``, in the order of rank

    Returns
    -------
    pairs of positions, the lower one first; dearer for every cost that a range allows
    """
    scores = calculation.ranking.scores
    pairs = []
    for place, one in enumerate(costed):
        better = (
            other.maker
            for other in costed[:place]
            if scores[other.maker] > scores[one.maker] + TIE and other.high < one.low - HAIR
        )
        if (best := next(better, None)) is not None:
            pairs.append((one.maker, best))
    return pairs


def _dearer_sentence(calculation: Calculation, pairs: Sequence[tuple[int, int]]) -> str:
    names = calculation.case.table.makers
    by_better: dict[int, list[str]] = {}
    for lower, better in pairs[:DEARER_NAMED]:
        by_better.setdefault(better, []).append(names[lower])
    said = [
        f"{listed(lower)} {'is' if len(lower) == 1 else 'are'} both dearer and lower than {names[better]}"
        for better, lower in by_better.items()
    ]
    more = len(pairs) - DEARER_NAMED
    return listed_apart([*said, *([f"{counted(more, 'more maker')} likewise than another"] if more > 0 else [])])
