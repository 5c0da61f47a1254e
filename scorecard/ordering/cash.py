"""Cash: what is paid when, from the sample to the border, how much is out at the most, and for how long.

Enters: one maker at one order size. Leaves: payments in their order, the peak before the first sale, and weeks.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Literal

from scorecard.costing.amounts import HUNDRED, OPEN, ZERO, Span, added, over, percent_of, times, to_minor
from scorecard.costing.inputs import Balance
from scorecard.costing.sums import Line, Reading
from scorecard.ordering.options import Ends, Option

When = Literal["samples", "deposit", "balance", "freight", "border", "other", "own"]
WHENS: tuple[When, ...] = ("samples", "deposit", "balance", "freight", "border", "other", "own")

_SAMPLES = ("sample", "sample postage")
_BILL = ("goods", "set-up", "sample credited")
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
    """One payment: what for, when in words, on which day after the order at the latest, least and most.

    Parameters
    ----------
    day : None where it is not known
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
    peak : everything that is out before the first sale, with tax that comes back later; least and most
    weeks_at_peak : from the last payment to the first sale; None where a day is not known
    weeks_out : from the order to the first sale; None where that day is not known
    weeks_until_back : from the first sale until all the money is back, at the likely demand and the dearest cost; None
        where it is not back by then, or it is not said over how many weeks that sells
    """

    payments: tuple[Payment, ...]
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
    The order is taken to go out on the day that stands for today, and days are planned on their late end. Freight is
    taken to be due with the shipment, charges of the payment and packaging by the arrival: common practice, no source.
    """
    each = [_by_moment(reading, option.selling.fixed) for reading in option.cost.readings]
    payments = tuple(
        payment for what in WHENS if (payment := _payment(option, what, [one[what] for one in each])).paid[1] != 0
    )
    sums = [added(one[what][end] for what in WHENS) for end in (0, 1) for one in each]
    arrival = _late(option.cost.days)
    as_of = option.cost.readings[0].situation.inputs.as_of
    wait = None if first_sale is None else Decimal((first_sale - as_of).days)
    return Cash(
        payments=payments,
        peak=(min(sums), max(sums)),
        weeks_at_peak=None if wait is None or arrival is None else max(ZERO, over(wait - arrival, _WEEK)),
        weeks_out=_weeks_out(wait, arrival),
        weeks_until_back=_weeks_until_back(option),
    )


def _weeks_out(wait: Decimal | None, arrival: Decimal | None) -> Decimal | None:
    """Return the weeks from the order to the first sale, which nobody makes before the goods are there."""
    if wait is None:
        return None
    return over(max(wait, arrival or ZERO, ZERO), _WEEK)


def _weeks_until_back(option: Option) -> Decimal | None:
    selling, needed = option.selling, option.break_even[1]
    if selling.selling_weeks is None or selling.demand is None or needed is None or needed > option.likely:
        return None
    return over(times(Decimal(needed), selling.selling_weeks), Decimal(selling.demand.likely))


def _by_moment(reading: Reading, fixed: Decimal) -> Mapping[When, Ends]:
    """Return what is paid for each thing, least and most."""
    lines = reading.lines
    bill = _paid(line for line in lines if line.key in _BILL)
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


def _payment(option: Option, what: When, each: Sequence[Ends]) -> Payment:
    balance = option.cost.readings[0].situation.inputs.settings.balance
    return Payment(
        what=what,
        moment=_BALANCE_MOMENTS[balance] if what == "balance" else _MOMENTS[what],
        day=_day(option, what, balance),
        paid=(min(low for low, _ in each), max(high for _, high in each)),
    )


def _day(option: Option, what: When, balance: Balance) -> Decimal | None:
    """Return so many days after the order, at the late end."""
    if what in ("samples", "deposit"):
        return ZERO
    if what == "freight" or (what == "balance" and balance == "before shipment"):
        return _ready(option)
    return None if what == "own" else _late(option.cost.days)


def _ready(option: Option) -> Decimal | None:
    """Return the days until the goods are sent; where the price goes further, its days are those to the door."""
    found = []
    for reading in option.cost.readings:
        situation = reading.situation
        days = situation.reply.days(situation.price.row)
        found.append(None if situation.coverage.pays_freight else _late(days))
    return max((day for day in found if day is not None), default=None) if None not in found else None


def _late(days: Span | None) -> Decimal | None:
    return None if days is None else days.high
