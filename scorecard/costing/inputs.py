"""Everything that a landed cost is reckoned from, as one value."""

from collections.abc import Mapping
from dataclasses import field
from datetime import date
from decimal import Decimal
from typing import Literal, get_args

from scorecard.brief import Brief, Unit
from scorecard.costing.amounts import Span
from scorecard.costing.charges import Charge
from scorecard.costing.currencies import Rates
from scorecard.costing.freight import SHIPPING_RULES, FreightOffer, ShippingRule
from scorecard.costing.importing import ImportRules
from scorecard.costing.quotes import QuoteRow, Way
from scorecard.costing.timing import Timing
from scorecard.errors import Place
from scorecard.frozen import dataclass

Balance = Literal["before shipment", "on arrival", "after checking"]
SampleIs = Literal["free", "paid"]
BALANCES: tuple[Balance, ...] = get_args(Balance)
SAMPLES: tuple[SampleIs, ...] = get_args(SampleIs)


@dataclass(frozen=True, slots=True, kw_only=True)
class CostSettings:
    """The table ``[cost]``.

    As TOML::

        [cost]
        faulty_percent = 3             # pieces that are expected to be no good; default 0, which is said
        reorder = false                # whether this order repeats an earlier one (set-up may not be charged again)
        sampled = ["Brightholm"]       # makers whose sample is already paid for, beside those of the sheet Samples
        balance = "before shipment"    # or "on arrival", "after checking": when the rest of the price is due

    Parameters
    ----------
    faulty_percent : 0 or more, below 100; None where not given, which counts as 0 and is said
    sampled : from ``sampled``, where an unknown name is a problem, and every maker with an "Asked on" or a "Received
        on" in a row of the sheet Samples whose round is not a photograph
    balance : "before shipment" where not given: common practice, no source
    balance_said : whether the user has given it; an order sheet is not complete without
    charges : ``[[cost.charges]]``: packaging, an inspection, the bank's fee
    """

    faulty_percent: Decimal | None = None
    reorder: bool = False
    sampled: frozenset[str] = frozenset()
    balance: Balance = "before shipment"
    balance_said: bool = False
    charges: tuple[Charge, ...] = ()
    place: Place = field(default_factory=Place)


@dataclass(frozen=True, slots=True, kw_only=True)
class MakerFacts:
    """What the sheet Makers says of one maker that bears on cost.

    Parameters
    ----------
    maker : its name
    minimum : its minimum order in pieces; None where unknown
    minimum_per : the unit of that minimum; None where blank
    country : ISO 3166-1 alpha-2, where the goods are made; None where unknown
    sample : whether its samples are free or paid, where the column Sample says so in these very words, and a criterion
        draws on it; what a reply says goes before
    """

    maker: str
    minimum: Span | None = None
    minimum_per: Unit | None = None
    country: str | None = None
    sample: SampleIs | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CostInputs:
    """What was read: rows in sheet order.

    Parameters
    ----------
    brief : what is wanted
    as_of : the day that stands for today
    makers : by name, in sheet order, every maker of the sheet Makers
    imports : None where the brief names no destination, or one without bases: duty and tax are gaps
    shipping : by way, the presets changed by ``[shipping.WAY]``
    shipping_charges : ``[[shipping.charges]]``
    unread : makers whose only prices could not be read and were set aside on the user's word
    timings : by maker and way, what the schedule says; where it is not there, plain days are counted
    ordered : by maker, the way of the order that was placed with it
    """

    brief: Brief
    as_of: date
    makers: Mapping[str, MakerFacts]
    rates: Rates
    quotes: tuple[QuoteRow, ...] = ()
    offers: tuple[FreightOffer, ...] = ()
    imports: ImportRules | None = None
    shipping: Mapping[Way, ShippingRule] = field(default_factory=lambda: dict(SHIPPING_RULES))
    shipping_charges: tuple[Charge, ...] = ()
    settings: CostSettings = field(default_factory=CostSettings)
    unread: frozenset[str] = frozenset()
    timings: Mapping[tuple[str, Way | None], Timing] = field(default_factory=dict)
    ordered: Mapping[str, Way] = field(default_factory=dict)
