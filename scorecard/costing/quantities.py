"""How many to order: the greater of wanted and minimum in each unit, and at least what a price was quoted for."""

from decimal import ROUND_CEILING

from scorecard.brief import Brief, Unit
from scorecard.costing.amounts import Span
from scorecard.costing.entries import Gap
from scorecard.costing.inputs import MakerFacts


def even_split(quantity: int, units: int) -> tuple[int, ...]:
    """Return whole pieces split as evenly as they can be, the larger parts first.

    Examples
    --------
    >>> even_split(200, 3)
    (67, 67, 66)
    """
    each, more = divmod(quantity, units)
    return tuple(each + (at < more) for at in range(units))


def ordered(quantity: int, units: int, minimum: int) -> int:
    """Return the pieces to order where each of so many units has a minimum.

    Examples
    --------
    >>> ordered(200, 4, 100), ordered(200, 4, 25), ordered(200, 1, 250)
    (400, 200, 250)
    """
    return sum(max(part, minimum) for part in even_split(quantity, units))


def possible_units(brief: Brief, unit: Unit | None) -> tuple[int, ...]:
    """Return how many units the order may have: one number, or the two ends where the unit is not known.

    Where it is known and the brief does not say how many of it there are, the fewest, one: see ``is_uncounted``.
    """
    if unit is None:
        return tuple(sorted({1, brief.designs}))
    return (brief.units_of(unit) or 1,)


def is_uncounted(brief: Brief, unit: Unit | None) -> bool:
    """Say whether something is per a unit of which the brief does not say how many there are."""
    return unit is not None and brief.units_of(unit) is None


def minimum_gaps(brief: Brief, facts: MakerFacts) -> list[Gap]:
    """Return that a minimum may raise the order by nobody knows how much, where the number of its units is unknown."""
    if facts.minimum is None or facts.minimum_per is None or not is_uncounted(brief, facts.minimum_per):
        return []
    if facts.minimum.high is not None and facts.minimum.high <= 1:
        return []
    return [how_many(facts.minimum_per, f"minimum order of {_in_words(facts.minimum)} per {facts.minimum_per}")]


def how_many(unit: Unit, what: str) -> Gap:
    """Return the gap of something that is per a unit whose number the brief does not say."""
    words = f"{what}: how many {unit}s? Add {unit}s = … under [brief] of the criteria file; until then one is counted"
    return Gap(f"how many {unit}s", words)


def order_quantities(brief: Brief, facts: MakerFacts, least_quoted: int | None = None) -> tuple[int, ...]:
    """Return the quantities that may have to be ordered, least first: one where nothing is open.

    Parameters
    ----------
    brief : what is wanted
    facts : the maker's minimum and the unit that it is per; an unknown minimum is taken as none, an open one as its
        low end
    least_quoted : the least quantity that the reply has a price for

    Returns
    -------
    whole pieces; several where the minimum is a range, or may be per order or per design
    """
    minimum = facts.minimum or Span.of(0)
    ends = {minimum.low, minimum.low if minimum.high is None else minimum.high}
    wholes = [int(end.to_integral_value(ROUND_CEILING)) for end in ends]
    units = possible_units(brief, facts.minimum_per)
    found = {ordered(brief.quantity, count, end) for count in units for end in wholes}
    return tuple(sorted({max(pieces, least_quoted or pieces) for pieces in found}))


def why_more(brief: Brief, facts: MakerFacts, quantity: int) -> str:
    """Return why more is ordered than wanted, in words; "" where it is not."""
    if quantity <= brief.quantity:
        return ""
    minimum = facts.minimum
    surplus = f"{quantity - brief.quantity} more than wanted"
    units = max(possible_units(brief, facts.minimum_per))
    if minimum is None or ordered(brief.quantity, units, _most(minimum)) < quantity:
        return f"{quantity} pieces, {surplus}: the least quantity quoted"
    unit = facts.minimum_per or "order or per design"
    return f"{quantity} pieces, {surplus}: the minimum order is {_in_words(minimum)} per {unit}"


def _most(minimum: Span) -> int:
    return int((minimum.low if minimum.high is None else minimum.high).to_integral_value(ROUND_CEILING))


def _in_words(minimum: Span) -> str:
    low = f"{minimum.low:f}"
    if minimum.high is None:
        return f"at least {low}"
    return low if minimum.is_known else f"{low} to {minimum.high:f}"
