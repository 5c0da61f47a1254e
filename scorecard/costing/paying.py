"""Money at risk: what will have been paid before anything can be checked, and what sampling makers costs in all."""

from collections.abc import Iterable, Sequence
from decimal import Decimal

from scorecard.costing.amounts import ENDS, HUNDRED, OPEN, ZERO, Span, added, percent_of, to_minor
from scorecard.costing.inputs import CostInputs
from scorecard.costing.landed import LandedCost
from scorecard.costing.replies import Reply, standing
from scorecard.costing.sums import Line, Reading
from scorecard.frozen import dataclass

BILL = ("goods", "set-up", "sample credited", "sales tax")
_OF_A_SAMPLE = {"sample_price": "sample price", "sample_postage": "sample postage"}


@dataclass(frozen=True, slots=True, kw_only=True)
class PaidBefore:
    """What will have been paid to have the goods at the door, before any of them can be checked there.

    Parameters
    ----------
    low, high : in the brief's currency, with what is already paid, and tax that comes back; infinite where there is no
        telling; too low by the gaps of the cost
    deposit_low, deposit_high : with the order; from nothing to the whole bill where the deposit is not known
    is_deposit_known : whether the reply says how much is paid with the order, at every quantity that is open
    words : a sentence without the full stop
    """

    low: Decimal
    high: Decimal
    deposit_low: Decimal
    deposit_high: Decimal
    is_deposit_known: bool
    words: str


def paid_before_checking(cost: LandedCost) -> PaidBefore:
    """Return what will have been paid before the pieces can be checked at the door.

    Parameters
    ----------
    cost : one maker by one way; of several readings, from the least to the most

    Notes
    -----
    The rest of the price is due before shipment unless ``[cost] balance`` says otherwise: common practice, no source.
    Packaging and the like (group "extra") are not counted: they are not paid for these pieces to come. Sales tax where
    no border is crossed is paid with the maker's bill, and a deposit is a part of both: common practice, no source.
    """
    each = [_of_reading(reading, cost.spent) for reading in cost.readings]
    known = None not in [_deposit(reading) for reading in cost.readings]
    return PaidBefore(
        low=min(low for low, _, _, _ in each),
        high=max(high for _, high, _, _ in each),
        deposit_low=min(low for _, _, low, _ in each),
        deposit_high=max(high for _, _, _, high in each),
        is_deposit_known=known,
        words=_words(cost.inputs.settings.balance, known),
    )


def _of_reading(reading: Reading, spent: Sequence[Line]) -> tuple[Decimal, Decimal, Decimal, Decimal]:
    """Return what is paid, least and most, and the deposit, least and most."""
    bill = [line for line in reading.lines if line.key in BILL]
    rest = [line for line in reading.lines if line.key not in BILL and line.group != "extra"]
    deposit = _deposit(reading) or Span(ZERO, HUNDRED)
    home = reading.situation.inputs.rates.home
    low_bill, high_bill = added(line.paid_low for line in bill), added(line.paid_high for line in bill)
    deposit_low = to_minor(percent_of(deposit.low, low_bill), home)
    deposit_high = to_minor(percent_of(HUNDRED if deposit.high is None else deposit.high, high_bill), home)
    waits = reading.situation.inputs.settings.balance == "after checking"
    others_low, others_high = (
        [line.paid_low for line in (*rest, *spent)],
        [line.paid_high for line in (*rest, *spent)],
    )
    return (
        added([deposit_low if waits else low_bill, *others_low]),
        added([deposit_high if waits else high_bill, *others_high]),
        deposit_low,
        deposit_high,
    )


def _deposit(reading: Reading) -> Span | None:
    row = reading.situation.reply.saying("deposit_percent", reading.situation.price.row)
    return row.deposit_percent if row else None


def _words(balance: str, is_deposit_known: bool) -> str:
    ends = {
        "before shipment": "The whole price is taken to be paid before the goods are sent, so before you see them",
        "on arrival": "The rest of the price is paid when the goods arrive, before you can open them",
        "after checking": "The rest of the price waits until you have checked the goods",
    }
    return ends[balance] + ("" if is_deposit_known else "; the deposit is not known: ask")


@dataclass(frozen=True, slots=True, kw_only=True)
class SampledMaker:
    """What a sample of one maker costs, postage with it.

    Parameters
    ----------
    low, high : as far as it is known, in the brief's currency; infinite where there is no telling
    missing : of price and postage, what is not known; the sum is too low by that
    """

    maker: str
    low: Decimal
    high: Decimal
    missing: tuple[str, ...] = ()

    @property
    def is_known_of(self) -> bool:
        """Whether any of it is known."""
        return len(self.missing) < len(_OF_A_SAMPLE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sampling:
    """What it costs to have samples of some makers before any order.

    Parameters
    ----------
    makers : whose sample is still to be paid for
    already_paid : makers whose sample is paid for, which are not in the sum
    """

    makers: tuple[SampledMaker, ...] = ()
    already_paid: tuple[str, ...] = ()

    @property
    def low(self) -> Decimal:
        """The least in all; too low by what is missing."""
        return added(one.low for one in self.makers)

    @property
    def high(self) -> Decimal:
        """The most in all; infinite where a part of it is not known."""
        return added(one.high for one in self.makers)

    @property
    def unknown(self) -> tuple[str, ...]:
        """Makers of which the sample price or its postage is not known."""
        return tuple(one.maker for one in self.makers if one.missing)


def sampling_cost(inputs: CostInputs, makers: Iterable[str]) -> Sampling:
    """Return what a sample of each of these makers costs, postage with it.

    Parameters
    ----------
    inputs : all that was read
    makers : their names, such as the first three of the ranking
    """
    named = list(makers)
    paid = tuple(maker for maker in named if maker in inputs.settings.sampled)
    replies = standing(inputs.quotes)
    return Sampling(
        makers=tuple(_sample(inputs, maker, replies.get(maker, ())) for maker in named if maker not in paid),
        already_paid=paid,
    )


def _sample(inputs: CostInputs, maker: str, replies: Sequence[Reply]) -> SampledMaker:
    """Return a sample with postage, by the first reply that says it; what is not known of it is never taken as 0."""
    rows = {field: replies[0].saying(field) if replies else None for field in _OF_A_SAMPLE}
    spans = [(getattr(row, field), row.currency) for field, row in rows.items() if row is not None]
    facts = inputs.makers.get(maker)
    is_free = facts is not None and facts.sample == "free" and not (replies and replies[0].unsure("sample_price"))
    known = {"sample_price"} if is_free else set()
    missing = tuple(_OF_A_SAMPLE[field] for field, row in rows.items() if row is None and field not in known)
    low, high = (
        added(to_minor(inputs.rates.to_home(span.at(end), currency), inputs.rates.home) for span, currency in spans)
        for end in ENDS
    )
    return SampledMaker(maker=maker, low=low, high=OPEN if missing else high, missing=missing)
