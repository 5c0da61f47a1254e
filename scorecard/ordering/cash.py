"""Cash: what is paid when, from the sample to the border, how much is out at the most, and for how long.

Enters: one maker at one order size. Leaves: payments in their order, the peak before the first sale, and weeks.
"""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from decimal import Decimal
from typing import Literal, get_args

from scorecard.costing.amounts import HUNDRED, OPEN, ZERO, Span, added, over, percent_of, times, to_minor
from scorecard.costing.inputs import Balance
from scorecard.costing.maker_entries import sample_as_listed
from scorecard.costing.paying import BILL
from scorecard.costing.sums import Line, Reading
from scorecard.frozen import dataclass
from scorecard.ordering.options import Ends, Option

When = Literal["samples", "deposit", "balance", "freight", "border", "other", "own"]
WHENS: tuple[When, ...] = get_args(When)

_SAMPLES = ("sample", "sample postage")
_GROUPS: Mapping[str, When] = {"freight": "freight", "border": "border", "payment": "other", "extra": "other"}
_WEEK = Decimal(7)

_MOMENTS: Mapping[When, str] = {
    "samples": "before the order",
    "deposit": "with the order",
    "freight": "when the goods are sent",
    "border": "at the border",
    "other": "by the time the goods are here",
    "own": "before the first sale",
}
_BALANCE_MOMENTS: Mapping[Balance, str] = {
    "before shipment": "before the goods are sent",
    "on arrival": "when the goods arrive",
    "after checking": "once you have checked the goods",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Payment:
    """One payment: what for, when in words, how many days from today at the latest, least and most.

    Parameters
    ----------
    day : None where it is not known
    paid : at both ends of what is open, which add up; where the deposit is open, its most leaves the least to the
        balance, whose low end is then above its high one
    """

    what: When
    moment: str
    day: Decimal | None
    paid: Ends


@dataclass(frozen=True, slots=True, kw_only=True)
class Cash:
    """What an order takes out of the till.

    Parameters
    ----------
    payments : those that are not nothing, in their order
    unknown : what the reply names no amount for, and which may be due all the same
    peak : everything that is out before the first sale, with tax that comes back later; least and most
    weeks_at_peak : from the last payment to the first sale; None where a day is not known
    weeks_out : from today to the first sale; None where that day is not known
    weeks_until_back : from the first sale until all the money is back, at the likely demand and the dearest cost; None
        where it is not back by then, or it is not said over how many weeks that sells
    """

    payments: tuple[Payment, ...]
    unknown: tuple[When, ...]
    peak: Ends
    weeks_at_peak: Decimal | None
    weeks_out: Decimal | None
    weeks_until_back: Decimal | None


def cash_of(option: Option, first_sale: date | None) -> Cash:
    """Return what one order takes out of the till, and for how long.

    Parameters
    ----------
    option : one maker at one order size
    first_sale : the day on which pieces begin to sell; None where nobody says

    Notes
    -----
    Days are planned on their late end. Where there is a schedule it gives them, begun on the day that stands for today,
    with a sample first where there is time for one; else the order is taken to go out on that day. Freight is taken to
    be due with the shipment, charges of the payment and packaging by the arrival: common practice, no source.
    """
    each = [_by_moment(reading, option.selling.fixed) for reading in option.cost.readings]
    as_of = option.cost.inputs.as_of
    days = _days_of(option, as_of)
    payments = tuple(
        payment for what in WHENS if any((payment := _payment(option, what, [one[what] for one in each], days)).paid)
    )
    sums = [added(one[what][end] for what in WHENS) for end in (0, 1) for one in each]
    wait = None if first_sale is None else max(Decimal((first_sale - as_of).days), days.ready or ZERO, ZERO)
    return Cash(
        payments=payments,
        unknown=tuple(dict.fromkeys(what for reading in option.cost.readings for what in _unknown(reading))),
        peak=(min(sums), max(sums)),
        weeks_at_peak=None if wait is None or days.door is None else over(wait - days.door, _WEEK),
        weeks_out=None if wait is None else over(wait, _WEEK),
        weeks_until_back=_weeks_until_back(option),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Days:
    """Days from today, at the late end; None where not known. Nobody sells before the goods are ready."""

    ordered: Decimal
    sent: Decimal | None
    door: Decimal | None
    ready: Decimal | None


def _days_of(option: Option, as_of: date) -> _Days:
    """Return the days of the schedule; without one, those that are quoted, ordered today."""
    timing = option.cost.timing
    if timing is None:
        door = _late(option.cost.days)
        return _Days(ordered=ZERO, sent=_ready(option), door=door, ready=door)
    course = timing.course
    ordered, door, ready = (Decimal((day - as_of).days) for day in (course.ordered_on, course.door_on, course.ready_on))
    sent = None if course.sent_on is None else Decimal((course.sent_on - as_of).days)
    return _Days(ordered=ordered, sent=sent, door=door, ready=ready)


def _weeks_until_back(option: Option) -> Decimal | None:
    selling, needed = option.selling, option.break_even[1]
    if selling.selling_weeks is None or selling.demand is None or needed is None or needed > option.likely:
        return None
    return over(times(Decimal(needed), selling.selling_weeks), Decimal(selling.demand.likely))


def _by_moment(reading: Reading, fixed: Decimal) -> Mapping[When, Ends]:
    """Return what is paid for each thing, least and most."""
    lines = reading.lines
    bill = _paid(line for line in lines if line.key in BILL)
    deposit = _deposit(reading, bill)
    found: dict[When, Ends] = {
        "samples": _paid(line for line in lines if line.key in _SAMPLES),
        "deposit": deposit,
        "balance": _rest(bill, deposit, has_known_deposit=_percent(reading) is not None),
        "own": (fixed, fixed),
    }
    for what in ("freight", "border", "other"):
        found[what] = _paid(line for line in lines if _GROUPS.get(line.group) == what)
    return found


def _paid(lines: Iterable[Line]) -> Ends:
    found = list(lines)
    return added(line.paid_low for line in found), added(line.paid_high for line in found)


def _percent(reading: Reading) -> Span | None:
    row = reading.situation.reply.saying("deposit_percent", reading.situation.price.row)
    return row.deposit_percent if row else None


def _unknown(reading: Reading) -> Iterable[When]:
    """Yield which of a sample and a deposit the reply names no amount for."""
    situation = reading.situation
    is_paid = situation.facts.maker in situation.inputs.settings.sampled
    is_free = sample_as_listed(situation) == "free"
    if not is_paid and not is_free and situation.reply.saying("sample_price", situation.price.row) is None:
        yield "samples"
    if _percent(reading) is None:
        yield "deposit"


def _deposit(reading: Reading, bill: Ends) -> Ends:
    """Return the deposit; nothing where the reply names none, for the whole bill is then due with the balance."""
    percent, home = _percent(reading), reading.situation.inputs.rates.home
    if percent is None:
        return ZERO, ZERO
    most = HUNDRED if percent.high is None else percent.high
    return to_minor(percent_of(percent.low, bill[0]), home), to_minor(percent_of(most, bill[1]), home)


def _rest(bill: Ends, deposit: Ends, *, has_known_deposit: bool) -> Ends:
    """Return the bill less the deposit, end by end, so that both ends add up to the bill."""
    if not has_known_deposit:
        return bill
    low, high = (
        added([whole, -part]) if whole.is_finite() else OPEN for whole, part in zip(bill, deposit, strict=True)
    )
    return low, high


def _payment(option: Option, what: When, each: Sequence[Ends], days: _Days) -> Payment:
    balance = option.cost.inputs.settings.balance
    return Payment(
        what=what,
        moment=_BALANCE_MOMENTS[balance] if what == "balance" else _MOMENTS[what],
        day=_day(days, what, balance),
        paid=(min(low for low, _ in each), max(high for _, high in each)),
    )


def _day(days: _Days, what: When, balance: Balance) -> Decimal | None:
    """Return so many days from today, at the late end."""
    if what in ("samples", "deposit"):
        return ZERO if what == "samples" else days.ordered
    if what == "freight" or (what == "balance" and balance == "before shipment"):
        return days.sent
    if what == "balance" and balance == "after checking":
        return days.ready
    return None if what == "own" else days.door


def _ready(option: Option) -> Decimal | None:
    """Return the days until the goods are sent; where the price may go further, its days are those to the door."""
    situations = [reading.situation for reading in option.cost.readings]
    if any(each.coverage.pays_freight for each in situations):
        return None
    return _late(situations[0].reply.days(situations[0].price.row))


def _late(days: Span | None) -> Decimal | None:
    return None if days is None else days.high
