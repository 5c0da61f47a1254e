"""How many to order, in words, shared by screen, page and result: sentences without the full stop.

Enters: a plan. Leaves: what is left of a price, who is the cheapest at which quantity, what each size means.
"""

from collections.abc import Callable, Sequence
from decimal import Decimal
from math import ceil

from scorecard.codes import money
from scorecard.costing.amounts import HUNDRED, over, shown, times
from scorecard.costing.timing import Status, begin_words, late_words, standing_words
from scorecard.costing.validity import expired_words
from scorecard.ordering.advice import Newsvendor
from scorecard.ordering.changes import Stretch
from scorecard.ordering.options import Option
from scorecard.ordering.plan import MakerPlan, Plan
from scorecard.size_words import (
    average_words,
    bears,
    cash_words,
    home_of,
    how_reckoned,
    option_words,
    outcome_words,
    plain_number,
    step_words,
)
from scorecard.words import counted, day_words, listed, rounded

FEW = 5  # makers named of those left out
CAUTION = (
    "These sums rest on your guess of what will sell. No forecast is a promise: order what you can bear to be left with"
)
ON_AVERAGE = (
    "On average counts your low demand for 3 seasons of 10, the likely for 4 and the high for 3, which fits if fewer "
    "than the low are asked for in 1 season of 10, and more than the high in 1"
)
ONCE_LEFT_OUT = "for the price, freight and border, what is paid once left out"
LATE: dict[Status, str] = {
    "no time for a sample": "No time for a sample before {day}",
    "only if all goes quickly": "There by {day} only if all goes quickly",
    "too late": "Too late for {day} if ordered today",
}
NOT_GIVEN = {
    "sales_tax_percent": "sales tax inside the price",
    "channel_fee_percent": "a channel fee",
    "payment_fee_percent": "a payment fee",
    "packing": "packing",
    "postage": "postage that you bear",
    "unsold_worth": "what a piece left over still brings",
}


def plan_words(plan: Plan) -> list[str]:
    """Return what holds of all makers together, the most useful first."""
    said = [
        *_best_words(plan),
        *over_words(plan),
        *_average_words(plan),
        *cheapest_words(plan),
        kept_words(plan),
        *_bearable_words(plan),
        *_given_words(plan),
    ]
    said += _left_out_words(plan)
    return [*said, CAUTION] if plan.makers else said


def _home(plan: Plan) -> str:
    return plan.inputs.rates.home


def _left_out_words(plan: Plan) -> list[str]:
    """Return which makers with a quote are not weighed."""
    if not plan.left_out:
        return []
    first, more = plan.left_out[:FEW], len(plan.left_out) - FEW
    names = listed([*first, f"{more} more"] if more > 0 else first)
    return [f"Not weighed here, being ruled out or not among the first {len(plan.makers)} with a quote: {names}"]


def _best_words(plan: Plan) -> list[str]:
    best = plan.best
    if best is None:
        return (
            ["No maker has every cost known, so no quantity can be weighed: see what is missing"] if plan.makers else []
        )
    amount = money(abs(best.promise), _home(plan))
    left = f"leaves most, {amount}" if best.promise >= 0 else f"loses least, {amount}"
    what = f"{best.maker}, {counted(best.pieces, 'piece')}, {left} {_home(plan)} {how_reckoned(best)}"
    late = _late(plan, best)
    working = average_words(best)
    average = f" ({working})" if working else ""
    but = f"; but {late}" if late else ""
    later = _later(plan, best)
    whose = ("of those in time" if not late else "of those least late") if later else "of the sizes weighed"
    return [
        f"By money alone, {whose}: {what}, after everything{average}{but}",
        *_later_words(plan, later),
        *_between_words(plan, best),
    ]


def over_words(plan: Plan) -> list[str]:
    """Return whose quotes have expired, at which sizes where not at all; the maker that is named first in front."""
    best = plan.best.maker if plan.best else ""
    costs = sorted((option.cost for one in plan.makers for option in one.options), key=lambda cost: cost.maker != best)
    return expired_words(costs, lambda cost: f"for {counted(cost.quantities[0], 'piece')}")


def _late(plan: Plan, option: Option) -> str:
    """Return how a size misses the need-by date; "" where it does not, or where there is none."""
    need_by = plan.inputs.brief.need_by
    return late_words(option.status or "in time", day_words(need_by)) if need_by else ""


def _later(plan: Plan, best: Option) -> Option | None:
    """Return the size that would leave most, where it does not stand as well against the need-by date as the best."""
    known = [option for one in plan.makers for option in one.options if option.is_complete]
    most = max(known, key=lambda option: option.promise)
    return most if most.promise > best.promise else None


def _later_words(plan: Plan, later: Option | None) -> list[str]:
    """Return what the size that would leave most would leave, and why it does not come first."""
    if later is None:
        return []
    amount = money(abs(later.promise), _home(plan))
    would = f"would {'leave' if later.promise >= 0 else 'lose'} {amount} {_home(plan)}"
    return [f"{later.maker}, {counted(later.pieces, 'piece')}, {would}; but {_late(plan, later)}"]


def _between_words(plan: Plan, best: Option) -> list[str]:
    """Return the size between or beyond those weighed that leaves more, where the best one's maker takes it."""
    found = next((one.newsvendor for one in plan.makers if best in one.options), None)
    order = found.order if found else None
    if order is None or order.promise <= best.promise or order.worth <= best.worth or not order.is_sure:
        return []
    leaves = "leave" if order.promise >= 0 else "lose"
    said = f"{leaves} {money(abs(order.promise), _home(plan))} {_home(plan)} {how_reckoned(order)}"
    return [f"{best.maker} takes other sizes too: {counted(order.pieces, 'piece')} {said}"]


def _average_words(plan: Plan) -> list[str]:
    """Return what an average is, where one is taken."""
    demand = plan.selling.demand
    return [ON_AVERAGE] if plan.best and demand and demand.is_spread else []


def cheapest_words(plan: Plan) -> list[str]:
    """Return from which quantity to which each maker's good piece costs least; none where there is no choice."""
    stretches = plan.stretches
    if len(plan.makers) < 2 or all(one.maker is None for one in stretches):
        return []
    if len(stretches) == 1:
        one = stretches[0]
        said = f"From {one.start} to {one.end} pieces a good piece of the order costs least at {one.maker} throughout"
        if one.start == one.end:
            said = f"For {counted(one.start, 'piece')} a good piece of the order costs least at {one.maker}"
        return [f"{said}{rivals_in(one)}{_how_counted(stretches)}"]
    told = [f"{_span(one)} {one.maker or 'nobody has every cost known'}{rivals_in(one)}" for one in stretches]
    return [f"Where a good piece of the order costs least: {'; '.join(told)}{_how_counted(stretches)}"]


def rivals_in(one: Stretch, named: Callable[[str], str] = str) -> str:
    """Return who may be cheaper in a stretch all the same, such as " (B may be cheaper)"; "" where nobody may."""
    first, more = list(map(named, one.rivals[:FEW])), len(one.rivals) - FEW
    names = listed([*first, f"{more} more"] if more > 0 else first)
    return f" ({names} may be cheaper)" if names else ""


def _how_counted(stretches: Sequence[Stretch]) -> str:
    """Return how costs that are not known exactly were counted; "" where all are."""
    open_ones = any(one.rivals for one in stretches)
    return (
        "; counted by the middle of what each may cost, and only makers whose costs are all known" if open_ones else ""
    )


def _span(one: Stretch) -> str:
    return f"{one.start} pieces" if one.start == one.end else f"{one.start} to {one.end} pieces"


def kept_words(plan: Plan) -> str:
    """Return what is left of one price, and what comes off it."""
    selling, home = plan.selling, _home(plan)
    off = [f"{name} {money(amount, home)}" for name, amount in selling.deductions.items() if amount]
    if not off:
        return f"All of the price, {money(selling.price, home)} {home}, is left to pay for the goods"
    kept = f"{money(selling.kept, home)} {home} {'are' if selling.kept >= 0 else 'would be'} left to pay for the goods"
    return f"Of {money(selling.price, home)} a piece {kept}: {listed(off)} {'comes' if len(off) == 1 else 'come'} off"


def _bearable_words(plan: Plan) -> list[str]:
    """Return the highest landed cost that the wanted margin bears, and who is below it at which sizes."""
    bearable, wanted = plan.selling.bearable, plan.selling.wanted_margin_percent
    if bearable is None or wanted is None:
        return []
    home = _home(plan)
    if bearable <= 0:
        return [f"A margin of {plain_number(wanted)} % cannot be had at this price, whatever a piece costs"]
    said = f"A margin of {plain_number(wanted)} % bears {money(bearable, home)} {home} for a good piece of the order"
    within = [
        f"{one.maker} from {counted(pieces[0], 'piece')}"
        for one in plan.makers
        if (pieces := [option.pieces for option in one.options if bears(option)])
    ]
    return [f"{said}: {listed(within)}" if within else f"{said}: no maker is that cheap at any size"]


def _given_words(plan: Plan) -> list[str]:
    missing = [words for key, words in NOT_GIVEN.items() if key not in plan.selling.given]
    said = [f"Not given in [selling], and taken as nothing: {listed(missing)}"] if missing else []
    if plan.selling.demand is None:
        said.append("No demand is given, so all that are wanted are taken to sell and no more")
    return said


def newsvendor_words(plan: MakerPlan) -> list[str]:
    """Return how many a newsvendor would order, and why, with its sums; none where that cannot be said."""
    found = plan.newsvendor
    if found is None:
        return _no_further_piece(plan)
    tier, home, best = found.tier, home_of(found.nearest), found.nearest.pieces
    further = (
        f"One more good piece costs {money(tier.further, home)} {home}{_from_pieces(plan, found)}, {ONCE_LEFT_OUT}"
    )
    of_sizes = f"of the sizes above, {_best_on_average(found.nearest)}"
    if tier.missed <= 0:
        return [f"{further}. A sale brings no more than that, so that no order pays; {of_sizes}"]
    if found.pieces is None:
        return [f"{further}. A piece left over loses nothing, so that no order is too large; {of_sizes}"]
    kept, worth = found.nearest.selling.kept, found.nearest.selling.unsold_worth
    loses = (
        f"a sale missed loses {money(kept, home)} − {money(tier.further, home)} = {money(tier.missed, home)}, a piece "
        f"left over {money(tier.further, home)} − {money(worth, home)} = {money(tier.left_over, home)}"
    )
    enough = f"So it pays to have enough in {rounded(100 * tier.ratio, 0)} of 100 such seasons ({_ratio(found)})"
    ends = "" if best == found.pieces else f"; {of_sizes}"
    return [f"{further}: {loses}", f"{enough}{_pieces_for_that(found)}{ends}"]


def _no_further_piece(plan: MakerPlan) -> list[str]:
    """Return that nobody has quoted what one more piece costs, where demand is spread and something can be weighed."""
    known = [option for option in plan.options if option.is_complete]
    demand = known[0].selling.demand if known else None
    if demand is None or not demand.is_spread:
        return []
    best = max(known, key=lambda option: option.promise)
    return [f"Only these sizes are quoted, not what one more piece costs; of them, {_best_on_average(best)}"]


def _best_on_average(option: Option) -> str:
    return f"{option.pieces} {'leaves most' if option.promise >= 0 else 'loses least'} on average"


def _from_pieces(plan: MakerPlan, found: Newsvendor) -> str:
    return f" from {counted(found.tier.first, 'piece')} on" if len(plan.options) > 1 else ""


def _ratio(found: Newsvendor) -> str:
    missed, left_over = (money(each, home_of(found.nearest)) for each in (found.tier.missed, found.tier.left_over))
    return f"{missed} ÷ ({missed} + {left_over})" if found.tier.left_over > 0 else "a piece left over loses nothing"


def _pieces_for_that(found: Newsvendor) -> str:
    pieces = counted(ceil(found.tier.enough - 1e-9), "piece")
    said = f", which by the normal curve takes {pieces}: {_fractile(found)}"
    if found.is_raised:
        return f"{said}; {found.pieces} is the least to be had at that cost"
    return f"{said}; but {found.pieces} leaves most, since what it costs goes in steps" if found.is_moved else said


def _fractile(found: Newsvendor) -> str:
    """Return how the pieces follow from the three figures: the part of the way from the likely to the low or high."""
    option = found.nearest
    demand = option.selling.demand
    assert demand is not None, "a newsvendor has a demand"  # noqa: S101
    part = demand.part_of_the_way(found.tier.ratio)
    end = demand.low if part < 0 else demand.high
    away = abs((end or 0) - demand.likely)
    sign = "−" if part < 0 else "+"
    said = f"{demand.likely} {sign} {rounded(abs(part), 2)} × {away}"
    faulty = HUNDRED - over(times(option.good, HUNDRED), Decimal(option.pieces))
    return f"{said}, and {plain_number(faulty)} % that are faulty" if faulty else said


def fractile_working(found: Newsvendor) -> dict[str, str]:
    """Return how the figures of a newsvendor's order came about."""
    tier, selling = found.tier, found.nearest.selling
    further = shown(tier.further)
    return {
        "missed": f"{shown(selling.kept)} − {further}",
        "left_over": f"{further} − {shown(selling.unsold_worth)}",
        "ratio": _ratio(found) if tier.missed > 0 else "no sale earns anything",
        "pieces": "no end to it" if found.pieces is None else _fractile(found),
    }


def steady_words(plan: MakerPlan) -> list[str]:
    """Return which size costs least a year where sales are steady; none where no yearly demand is given."""
    found = plan.steady
    if found is None:
        return []
    option = plan.options[0]
    home, demand = home_of(option), option.selling.yearly_demand
    said = (
        f"At a steady {demand} a year orders of {found.economic} cost least, {money(found.cost, home)} {home} a year "
        f"in {rounded(found.orders)} orders, for pieces, ordering and keeping together"
    )
    if found.best.pieces == found.economic:
        return [said]
    return [f"{said}; of the sizes above, {found.best.pieces}, {money(found.best.cost, home)}"]


def maker_words(plan: Plan, one: MakerPlan) -> list[str]:
    """Return everything that is said of one maker, its sizes first."""
    said = [option_words(option) for option in one.options]
    said += [step_words(step) for step in one.steps]
    said += [words for option in one.told if option.is_complete for words in outcome_words(option)]
    said += newsvendor_words(one)
    said += [words for option in one.told for words in cash_words(option, plan.first_sale)]
    return [*said, *steady_words(one), *begin_lines(one.options), *late_lines(plan, one.options)]


def begin_lines(options: Sequence[Option]) -> list[str]:
    """Return by when to begin, way by way, as the schedule has it; none without one."""
    by_way = {option.cost.way: option.cost.timing for option in options if option.cost.timing}
    return [
        f"{f'By {way}' if way else 'By a way not named'}: {standing_words(timing.status, timing.rests_on)}, "
        f"{begin_words(timing)}"
        for way, timing in by_way.items()
    ]


def late_lines(plan: Plan, options: Sequence[Option]) -> list[str]:
    """Return which sizes are not there in time, by how they stand."""
    need_by = plan.inputs.brief.need_by
    if need_by is None:
        return []
    by_status = {status: [str(one.pieces) for one in options if one.status == status] for status in LATE}
    return [
        f"{LATE[status].format(day=day_words(need_by))}: {listed(pieces)} pieces"
        for status, pieces in by_status.items()
        if pieces
    ]
