"""One order size in words, and the step to the next: sentences without the full stop.

Enters: an option, or two of them. Leaves: what it comes to, how it turns out, what is paid when.
"""

from collections.abc import Mapping
from datetime import date
from decimal import ROUND_HALF_UP, Decimal
from math import isfinite

from scorecard.codes import amount_range, money, money_range
from scorecard.costing.timing import rests_words
from scorecard.ordering.cash import Cash, Payment, When, cash_of
from scorecard.ordering.demands import Case
from scorecard.ordering.options import Ends, Option, Outcome
from scorecard.ordering.steps import Step
from scorecard.words import counted, listed, rounded, shortest

MARGIN_IS = "The margin is what a good piece of the order leaves, in percent of its price without sales tax"
PAID_FOR = {
    "samples": "samples",
    "deposit": "deposit",
    "balance": "balance",
    "freight": "freight",
    "border": "duty, tax and clearance",
    "other": "payment and packaging",
    "own": "your own costs",
}


def how_reckoned(option: Option) -> str:
    """Return at which demand something is reckoned."""
    demand = option.selling.demand
    if demand is None:
        return f"if all {option.wanted} that are wanted sell"
    if not demand.is_spread:
        return f"if {demand.likely} are asked for"
    return "on average"


def average_words(option: Option) -> str:
    """Return the sum of an average, amount by amount; "" where only one demand is given."""
    parts = option.promised
    if len(parts) < 2:
        return ""
    home = home_of(option)
    terms = [f"{'−' if amount < 0 else '+'} {shortest(float(weight))} × {money(abs(amount), home)}"
             for weight, amount in parts]  # fmt: skip
    return " ".join(terms).removeprefix("+ ")


def bears(option: Option) -> bool | None:
    """Return whether an option bears the wanted margin at its dearest; None where none is wanted or a cost missing."""
    bearable = option.selling.bearable
    return None if bearable is None or not option.is_complete else option.per_good[1] <= bearable


def option_words(option: Option) -> str:
    """Return what one size comes to."""
    home = home_of(option)
    total, each = amount_range(*option.total, home), money_range(*option.per_good, home)
    said = f"{counted(option.pieces, 'piece')}: {total} in all, {each} a good piece of the order"
    if option.cost.gaps:
        return f"{said}, and more: {listed(dict.fromkeys(gap.name for gap in option.cost.gaps))} missing"
    if not option.is_complete:
        return f"{said}: a cost has no upper end, so nothing can be weighed: ask for one"
    if option.likely < option.good and option.likely:
        said += f", {money_range(*option.per_likely, home)} a piece that is likely to sell"
    return f"{said}; {break_even_words(option)}; {margin_words(option)}{_sure_words(option)}"


def at_least_words(option: Option, ends: Ends) -> str:
    """Return an amount of a size from least to most, and that it is more where a cost is missing."""
    said = money_range(*ends, home_of(option))
    return said if option.is_complete or not ends[1].is_finite() else f"at least {said}"


def left_cells(option: Option) -> tuple[str, ...]:
    """Return what is left at each demand, then on average where of several; "–" each while a cost has no end."""
    several = len(option.promised) > 1
    if not option.is_complete:
        return ("–",) * (len(option.outcomes) + several)
    home = home_of(option)
    left = [left_words(outcome, home) for outcome in option.outcomes.values()]
    return (*left, *([signed(option.promise, home)] if several else []))


def home_of(option: Option) -> str:
    """Return the currency that a cost is in."""
    return option.cost.readings[0].situation.inputs.rates.home


def _sure_words(option: Option) -> str:
    return "" if option.is_sure else "; it is not known whether the maker takes so few: ask"


def break_even_words(option: Option) -> str:
    """Return how many must sell before all the money is back."""
    low, high = option.break_even
    if high is None or low is None:
        return "the money never comes back at this price"
    needed = str(high) if low == high else f"{low} to {high}"
    if high > option.good:
        return f"the money would be back after {needed} sold, more than there are"
    return f"the money is back once {needed} are sold"


def margin_words(option: Option) -> str:
    """Return the margin on a piece."""
    low, high = option.margin
    if low is None or high is None:
        return "margin not known"
    ends = [rounded(float(end), 0).replace("-", "−") for end in (low, high)]
    return f"margin {ends[0] if ends[0] == ends[1] else ' to '.join(ends)} %"


def outcome_words(option: Option) -> list[str]:
    """Return how one size turns out at each demand."""
    return [_outcome(option, case, outcome) for case, outcome in option.outcomes.items()]


def _outcome(option: Option, case: Case, outcome: Outcome) -> str:
    home = home_of(option)
    after = left_words(outcome, home)
    tied_up = money_range(*outcome.tied_up, home)
    left = f"left over {_pieces(outcome.unsold)}, with {tied_up} in them" if outcome.unsold else "none left over"
    return f"{option.pieces} at the {case} demand, {outcome.demand}: {left}; {after} {home} after everything"


def left_words(outcome: Outcome, home: str) -> str:
    """Return what is left after everything, from least to most, with its signs."""
    low, high = outcome.left
    return signed(low, home) if low == high else f"{signed(low, home)} to {signed(high, home)}"


def _pieces(number: Decimal, kind: str = "") -> str:
    """Return a number of good pieces, which may have a part of one on paper, as whole ones: "about 66 pieces"."""
    whole = int(number.to_integral_value(ROUND_HALF_UP))
    if not whole and number:
        return f"less than one {kind}piece"
    return f"{'' if whole == number else 'about '}{counted(whole, f'{kind}piece')}"


def plain_number(number: Decimal) -> str:
    """Return a number with at most one decimal."""
    return shortest(round(float(number), 1))


def signed(amount: Decimal | float, currency: str) -> str:
    """Return an amount with its sign; "–" where it has no end.

    Examples
    --------
    >>> signed(12, "EUR"), signed(-3.5, "EUR"), signed(0, "EUR")
    ('+12.00', '−3.50', '0.00')
    """
    if not isfinite(amount):
        return "–"
    figure = money(amount, currency)
    return f"+{figure}" if amount > 0 and float(figure) else figure


def step_words(step: Step) -> str:
    """Return what the next size up means."""
    home = home_of(step.larger)
    head = f"{step.larger.pieces} instead of {step.smaller.pieces}"
    if not step.is_known:
        return f"{head}: cannot be weighed while a cost is missing or has no upper end"
    if step.verdict == "costs less in all":
        more = f"for {_pieces(step.more_good)} more"
        if step.more_money == 0:
            return f"{head}: costs the same in all, {more}"
        return f"{head}: costs {money(abs(step.more_money), home)} {home} less in all, {more}"
    said = (
        f"{head}: {money(step.more_money, home)} {home} more, {_must_sell(step)}; {step.verdict}, {_gain(step, home)}"
    )
    less = step.less_from
    return f"{said}. From {less} pieces on, {step.larger.pieces} cost no more in all" if less else said


def _must_sell(step: Step) -> str:
    further = _pieces(step.more_good, "further ")
    further = further if further.startswith(("about", "less")) else f"the {further}"
    if step.must_sell is None:
        return f"which {further} cannot bring back"
    if step.must_sell == 0:
        return "which the pieces left over bring back by themselves"
    return f"paid for once {step.must_sell} of {further} sell"


def _gain(step: Step, home: str) -> str:
    more = "more" if step.gain > 0 else "less"
    return f"it leaves {money(abs(step.gain), home)} {more} {how_reckoned(step.larger)}"


UNNAMED: Mapping[When, str] = {"samples": "the price of a sample is", "deposit": "the deposit is"}


def cash_words(option: Option, first_sale: date | None) -> list[str]:
    """Return what is paid when, how much is out at the most, and for how long."""
    cash = cash_of(option, first_sale)
    home = home_of(option)
    steps = [payment_words(payment, home) for payment in cash.payments]
    steps += [f"{UNNAMED[what]} not known: ask" for what in cash.unknown if what in UNNAMED]
    peak = amount_range(*cash.peak, home)
    return [
        f"Cash for {option.pieces}{_begun(option)}: {'; '.join(steps)}",
        f"{peak} are out before the first sale{_weeks(cash, option)}",
    ]


def _begun(option: Option) -> str:
    """Return what the days of the payments are counted from, where the schedule gives them; "" without one."""
    timing = option.cost.timing
    if timing is None:
        return ""
    begun = "begun today with a sample" if timing.course.with_sample else "ordered today"
    return f", {begun}{rests_words(timing.rests_on)}"


def payment_words(payment: Payment, home: str) -> str:
    """Return one payment: how much, for what, when."""
    day = f" (day {plain_number(payment.day)})" if payment.day else ""
    return f"{money_range(*_ordered(payment.paid), home)} {PAID_FOR[payment.what]} {payment.moment}{day}"


def _ordered(ends: Ends) -> Ends:
    return min(ends), max(ends)


def _weeks(cash: Cash, option: Option) -> str:
    said = "" if cash.weeks_at_peak is None else f", all of it for {_week_words(cash.weeks_at_peak)}"
    if cash.weeks_out is not None:
        since = "from today" if option.cost.timing else "after an order today"
        said += f"; the first sale is {_week_words(cash.weeks_out)} {since}"
    if cash.weeks_until_back is not None:
        after = "that" if cash.weeks_out is not None else "the first sale"
        said += f"; at the likely demand the money is back {_week_words(cash.weeks_until_back)} after {after}"
    return said


def _week_words(weeks: Decimal) -> str:
    number = rounded(float(weeks))
    return f"{number.removesuffix('.0')} {'week' if number == '1.0' else 'weeks'}"
