"""What an order was quoted at when it was placed: by the quotes of that day, for just its pieces."""

from dataclasses import replace
from datetime import date

from scorecard.costing.amounts import Span, added
from scorecard.costing.choosing import chosen_way
from scorecard.costing.inputs import CostInputs, MakerFacts
from scorecard.costing.landed import LandedCost, landed_costs
from scorecard.costing.quotes import Way
from scorecard.frozen import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Quoted:
    """What it came to at the door, in the brief's currency, with tax that comes back; whether no cost was missing.

    Parameters
    ----------
    way : of shipping; None where the quote names none
    """

    amount: Span
    in_full: bool
    way: Way | None = None


def quoted_then(inputs: CostInputs, maker: str, pieces: int, day: date, way: Way | None) -> Quoted | None:
    """Return what an order was quoted at.

    Parameters
    ----------
    inputs : all that was read; quotes given after the day do not count
    pieces : that were ordered, whatever the minimum
    day : of the order
    way : by which it was sent; None for the one that would have stood for the maker that day

    Returns
    -------
    None where no quote that held on that day was for so many pieces
    """
    facts = replace(inputs.makers.get(maker, MakerFacts(maker=maker)), minimum=None, minimum_per=None)
    quotes = [row for row in inputs.quotes if row.maker == maker and (row.quoted_on or day) <= day]
    brief = replace(inputs.brief, quantity=pieces)
    then = replace(inputs, brief=brief, as_of=day, quotes=tuple(quotes), makers={maker: facts})
    costs = [cost for cost in landed_costs(then) if way in (None, cost.way) and cost.quantities == (pieces, pieces)]
    chosen = chosen_way([cost for cost in costs if not cost.is_expired], day, brief.need_by)
    return None if chosen is None else Quoted(amount=_paid(chosen), in_full=chosen.is_complete, way=chosen.way)


def _paid(cost: LandedCost) -> Span:
    low = min(added(line.paid_low for line in reading.lines) for reading in cost.readings)
    high = max(added(line.paid_high for line in reading.lines) for reading in cost.readings)
    return Span(low, high if high.is_finite() else None)
