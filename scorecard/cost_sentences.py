"""What landed costs say when they are compared, in sentences that screen and page share, without their full stops.

Enters: costs worked out. Leaves: who is cheap by the piece and dear at the door, which way stands for whom and why, at
which rate of a currency the cheapest changes, what sampling costs. ``named`` makes a name fit where it is shown.
"""

from collections.abc import Callable, Sequence
from decimal import Decimal

from scorecard.codes import amount_range, money, money_range
from scorecard.cost_words import days_words, standing
from scorecard.costed import Costed
from scorecard.costing.amounts import added, over
from scorecard.costing.cheapest import Cheapest, cheapest_of, level_words, piece_amount, rivals_words
from scorecard.costing.comparing import CurrencyChange
from scorecard.costing.currencies import Rate
from scorecard.costing.landed import LandedCost
from scorecard.costing.paying import SampledMaker, Sampling, sampling_cost
from scorecard.costing.pieces import bare_piece, piece_of
from scorecard.costing.sources import source_words
from scorecard.costing.timing import begin_words
from scorecard.costing.validity import expired_words
from scorecard.words import counted, day_words, listed, shortest

Named = Callable[[str], str]
Turn = tuple[Decimal, str] | None
MOST = 6  # makers with several ways that are told about


def compared(costed: Costed, named: Named = str) -> list[str]:
    """Return what the sums say beside one another: prices that are over, against landed cost, then way against way."""
    over = expired_words(costed.cheapest_first, way_words, named)
    return [*over, *_price_against_door(costed, named), *_ways(costed, named)]


def way_words(cost: LandedCost) -> str:
    """Return by which way a cost is."""
    return f"by {cost.way}" if cost.way else "by a way not named"


def goods_each(cost: LandedCost) -> Decimal:
    """Return the middle price of a piece ordered, goods alone, in the brief's currency."""
    lines = [(line, reading) for reading in cost.readings for line in reading.lines if line.key == "goods"]
    ends = [over(end, Decimal(reading.situation.quantity)) for line, reading in lines for end in (line.low, line.high)]
    return (min(ends) + max(ends)) / 2


def _price_against_door(costed: Costed, named: Named) -> list[str]:
    """Return who has the lowest price by the piece, where another is surely cheaper at the door."""
    whole = [cost for cost in costed.chosen.values() if cost.is_complete and not cost.is_open]
    goods_only = [cost for cost in whole if not any(each.situation.coverage.pays_freight for each in cost.readings)]
    found = cheapest_of(map(piece_of, costed.chosen.values()))
    if len(whole) < 2 or not goods_only or found is None:
        return []
    low_price = min(goods_only, key=goods_each)
    low, high = low_price.per_good_piece
    others = [cost.per_good_piece for cost in whole if cost is not low_price]
    below = sum(most < low for _, most in others)
    is_lowest = goods_each(low_price) < min(cost.per_good_piece[0] for cost in costed.chosen.values())
    if not below or not is_lowest:
        return []
    home, is_placed = costed.inputs.rates.home, all(most < low or least > high for least, most in others)
    place = f"{'' if is_placed else 'at best '}number {below + 1} of {counted(len(whole), 'maker')}"
    return [
        f"{named(low_price.maker)} asks {money(goods_each(low_price), home)} {home} a piece for the goods, less than a "
        f"piece costs at the door from anybody, but at your door a good piece costs {_piece(low_price, home)}: "
        f"{place}. {_cheapest_there(found, home, named)}"
    ]


def _cheapest_there(found: Cheapest, home: str, named: Named) -> str:
    maker, amount = named(found.piece.maker), f"{piece_amount(found.piece, home)}{level_words(found, named)}"
    if found.is_sure:
        return f"{maker} is the cheapest there, at {amount}"
    return f"{maker} comes out cheapest there, at {amount}, but {rivals_words(found, home, named)}"


def _piece(cost: LandedCost, home: str) -> str:
    return amount_range(*cost.per_good_piece, home)


def _ways(costed: Costed, named: Named) -> list[str]:
    """Return, for makers with several ways, what each costs and how long it takes, and which stands for the maker."""
    by_maker: dict[str, list[LandedCost]] = {}
    for cost in costed.cheapest_first:
        by_maker.setdefault(cost.maker, []).append(cost)
    several = {maker: costs for maker, costs in by_maker.items() if len({cost.way for cost in costs}) > 1}
    said = [_ways_of_one(costed, costs, named) for costs in list(several.values())[:MOST]]
    more = len(several) - len(said)
    return [*said, *([f"{counted(more, 'more maker')} can be had by several ways, too"] if more > 0 else [])]


def _ways_of_one(costed: Costed, costs: Sequence[LandedCost], named: Named) -> str:
    each = "; ".join(_one_way(costed, cost) for cost in costs)
    chosen = costed.chosen[costs[0].maker]
    why = _why(costed, chosen, costs)
    return f"{named(costs[0].maker)}: {each}. {(chosen.way or 'the way not named').capitalize()} stands for it, {why}"


def _one_way(costed: Costed, cost: LandedCost) -> str:
    inputs = costed.inputs
    least = "" if cost.is_complete else "at least "
    words = standing(costed, cost)
    time = f", {words}" if words else ""
    quoted = " as quoted" if cost.timing and cost.days else ""
    begin = f": {begin_words(cost.timing)}" if cost.timing else ""
    each = f"{way_words(cost)} {least}{_piece(cost, inputs.rates.home)} a good piece"
    return f"{each}, {days_words(cost.days)}{quoted}{time}{begin}"


def _why(costed: Costed, chosen: LandedCost, costs: Sequence[LandedCost]) -> str:
    need_by = costed.inputs.brief.need_by
    if costed.is_ordered(chosen):
        return "since it was ordered so"
    if need_by is None:
        return f"as the cheapest{_by_the_middle(chosen, costs)}"
    day, status = day_words(need_by), costed.status(chosen)
    if status == "in time":
        said, unsaid = _in_time(costed, costs)
        is_said = any(chosen is cost for cost in said)
        surely = "surely " if is_said and unsaid else ""
        return f"as the cheapest that is {surely}there by {day}{_by_the_middle(chosen, said if is_said else unsaid)}"
    if status == "no time for a sample":
        return f"as the quickest, since by none is there time for a sample before {day}"
    return f"as the quickest, since none is surely there by {day}"


def _in_time(costed: Costed, costs: Sequence[LandedCost]) -> tuple[list[LandedCost], list[LandedCost]]:
    """Return the costs that are in time by days that were said, and by days that nobody has said."""
    found = [cost for cost in costs if costed.status(cost) == "in time"]
    said = [cost for cost in found if not (cost.timing and cost.timing.rests_on)]
    return said, [cost for cost in found if cost.timing and cost.timing.rests_on]


def _by_the_middle(chosen: LandedCost, costs: Sequence[LandedCost]) -> str:
    """Return how a way came to be the cheapest where another may be cheaper; "" where it surely is."""
    one = bare_piece(chosen)
    others = [bare_piece(cost) for cost in costs if cost is not chosen]
    rivals = [other for other in others if other.may_be_below(one)]
    if one.missing:
        return ", as far as costs are known" if others else ""
    if not rivals:
        return ""
    known = all(not other.missing for other in rivals)
    return ", by the middle of what each may cost" if known else ", of those with every cost known"


def rate_words(rate: Rate, home: str, named: Named = str) -> str:
    """Return a rate with its day and source, such as "1 USD = 0.92 EUR (2026-11-20, my bank)"."""
    figure, code = shortest(float(rate.figure)), rate.currency
    told = f"1 {code} = {figure} {home}" if rate.means == "home for one" else f"1 {home} = {figure} {code}"
    day = day_words(rate.dated) if rate.dated else "no day given"
    return f"{told} ({', '.join([day, *([named(rate.source)] if rate.source else [])])})"


def change_words(change: CurrencyChange, costed: Costed, named: Named = str) -> str:
    """Return at which rate of a currency another maker becomes the cheapest."""
    rate, home = costed.inputs.rates.rates[change.currency], costed.inputs.rates.home
    unit = f"{home} for 1 {change.currency}" if rate.means == "home for one" else f"{change.currency} for 1 {home}"
    sides = (("down", change.below, change.unsure_below), ("up", change.above, change.unsure_above))
    turns = [words for side, turn, doubt in sides if (words := _turn_words(turn, doubt, f"{unit} {side}", named))]
    unsure = [doubt[1] for doubt in (change.unsure_below, change.unsure_above) if doubt]
    verb = "is the" if change.is_sure else "comes out"
    now = f"{named(change.cheapest)} {verb} cheapest at {shortest(float(change.figure))} {unit}"
    together = "; ".join(turns) if unsure else listed(turns)
    said = f"{now}; {together}" if turns else f"{now}, and at any rate from half to twice that"
    rivals = [maker for maker in change.rivals if maker not in unsure]
    if not rivals:
        return said
    may = f"{listed(map(named, rivals))} may be cheaper at some of these rates"
    return f"{said}. {may}, too" if change.is_sure else f"{said}. That is by the middle of what each may cost: {may}"


def _turn_words(turn: Turn, doubt: Turn, on: str, named: Named) -> str:
    """Return from which rate on another may be cheaper, and from which it comes out so; "" where neither is."""
    at = {end: f"from {shortest(float(end[0]))} {on}" for end in (turn, doubt) if end is not None}
    if turn is None:
        return f"{named(doubt[1])} may be cheaper {at[doubt]}" if doubt else ""
    if doubt is None:
        return f"{named(turn[1])} {at[turn]}"
    who = "comes out cheapest" if turn[1] == doubt[1] else f"{named(turn[1])} comes out cheapest"
    may = f"{named(doubt[1])} may be cheaper {at[doubt]}"
    return f"{may}, and by the middle of what each may cost {who} {at[turn]}"


def sampling_words(sampling: Sampling, home: str, named: Named = str) -> list[str]:
    """Return what samples of some makers cost in all, and what is not known of it; none where none is left."""
    said = []
    known = [one for one in sampling.makers if one.is_known_of]
    if known:
        each = listed(f"{named(one.maker)} {_sample_amount(one, home)}" for one in known)
        number, verb = counted(len(known), "maker"), "costs" if len(known) == 1 else "cost"
        total = amount_range(sampling.low, added(one.high for one in known), home)
        lacking = f"; not known, and in no sum: {_missing_words(sampling, named)}" if sampling.unknown else ""
        said.append(f"Before you sample: {number} sampled {verb} {total} in all ({each}){lacking}")
    elif sampling.makers:
        said.append(f"Before you sample: what it costs is not known; ask for {_missing_words(sampling, named)}")
    if sampling.already_paid:
        paid = listed(map(named, sampling.already_paid))
        said.append(f"Paid already, and left out of all sums: the sample of {paid}")
    return said


def _sample_amount(one: SampledMaker, home: str) -> str:
    if one.missing == ("sample postage",) and not one.low:
        return "nothing but its postage"
    return f"at least {money(one.low, home)}" if one.missing else money_range(one.low, one.high, home)


def _missing_words(sampling: Sampling, named: Named) -> str:
    """Return what is not known of samples, such as "the sample postage of B and C"."""
    makers: dict[tuple[str, ...], list[str]] = {}
    for one in sampling.makers:
        if one.missing:
            makers.setdefault(one.missing, []).append(named(one.maker))
    return listed(f"the {listed(missing)} of {listed(names)}" for missing, names in makers.items())


def beside(costed: Costed, first: Sequence[str], named: Named = str, *, changes: bool = True) -> list[str]:
    """Return what else stands beside the sums: the rates, what would change the cheapest, and what sampling costs.

    Parameters
    ----------
    costed : of a case on a day
    first : names of the makers that would be sampled first
    changes : whether to say at which rate the cheapest changes, for which all is worked out several times over
    """
    home = costed.inputs.rates.home
    said = [f"Rate: {rate_words(rate, home, named)}" for rate in costed.inputs.rates.rates.values()]
    said += [change_words(change, costed, named) for change in (costed.changes if changes else ())]
    said += [named(words) for words in source_words(costed.inputs, costed.costs)]
    return said + sampling_words(sampling_cost(costed.inputs, first), home, named)
