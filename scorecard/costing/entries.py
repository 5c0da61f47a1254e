"""One way to read a reply, and the entries of its sum: amounts in the brief's currency, with how each came about."""

from collections.abc import Iterable
from decimal import Decimal
from typing import Literal

from scorecard.costing.amounts import added, priced, shown, to_minor
from scorecard.costing.charges import PARTS, Part
from scorecard.costing.currencies import Rates
from scorecard.costing.delivery_terms import Coverage, Parts
from scorecard.costing.freight import PARTS_OF_FREIGHT, FreightOffer, ShippingRule
from scorecard.costing.inputs import CostInputs, MakerFacts
from scorecard.costing.prices import GoodsPrice
from scorecard.costing.quotes import Way
from scorecard.costing.replies import Reply
from scorecard.frozen import dataclass
from scorecard.words import day_words

Group = Literal["maker", "freight", "border", "payment", "extra"]

_PACKING: Parts = frozenset({"packing"})
_AT_A_BORDER: Parts = frozenset({"export clearance", "clearance", "duty"})
_AT_A_TERMINAL: Parts = frozenset({"origin charges", "loading on board", "arrival charges"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Situation:
    """A reply read in one way, for one quantity and one way of shipping.

    Parameters
    ----------
    price : what the goods cost for the quantity
    way : None where neither the reply nor an offer names one
    coverage : what the price is taken to cover
    offer : the freight offer that fits; None where the price pays the freight, or none fits
    offers_missed : offers of this way that are for other quantities
    """

    inputs: CostInputs
    reply: Reply
    facts: MakerFacts
    price: GoodsPrice
    way: Way | None
    coverage: Coverage
    offer: FreightOffer | None = None
    offers_missed: tuple[FreightOffer, ...] = ()

    @property
    def quantity(self) -> int:
        """The pieces to order."""
        return self.price.quantity

    @property
    def rule(self) -> ShippingRule | None:
        """How the way of shipping counts."""
        return self.inputs.shipping.get(self.way) if self.way else None

    @property
    def crosses_border(self) -> bool:
        """Whether the goods cross a customs border: taken as yes where a country is not known."""
        made_in, destination = self.facts.country, self.inputs.brief.destination
        inside = self.inputs.imports.without_border if self.inputs.imports else frozenset()
        return made_in is None or destination is None or not (made_in == destination or made_in in inside)

    @property
    def freight_parts(self) -> Parts:
        """The parts that the freight offer pays for."""
        if self.offer is None:
            return frozenset()
        return PARTS_OF_FREIGHT[self.offer.covers or (self.rule.covers if self.rule else "port to port")]

    @property
    def left_to_pay(self) -> Parts:
        """The parts of this journey that neither the price nor the freight offer pays for.

        Within one customs territory there is nothing to clear, and by road, post or express no port or terminal to pay.
        A price has the usual packing inside; what the user pays for packing besides is left to pay all the same, unless
        the price pays everything.
        """
        parts = frozenset(PARTS) - self.coverage.parts - self.freight_parts
        parts |= frozenset() if "duty" in self.coverage.parts else _PACKING
        if self.crosses_border:
            return parts
        by_terminals = self.way in ("sea", "air", "rail")
        return parts - _AT_A_BORDER if by_terminals else parts - _AT_A_BORDER - _AT_A_TERMINAL


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """What an entry is.

    Parameters
    ----------
    key : stable, such as "goods", "freight", "charge:Clearance"
    parts : of the journey that it pays for
    in_tax_base : for a charge, as the user says; None where by its parts
    """

    key: str
    name: str
    group: Group
    parts: tuple[Part, ...] = ()
    in_tax_base: bool | None = None


GOODS = Label(key="goods", name="Goods", group="maker")
SETUP = Label(key="set-up", name="Set-up", group="maker")
SAMPLE = Label(key="sample", name="Sample", group="maker")
SAMPLE_POSTAGE = Label(key="sample postage", name="Sample postage", group="maker")
SAMPLE_CREDITED = Label(key="sample credited", name="Sample credited", group="maker")
DUTY = Label(key="duty", name="Duty", group="border", parts=("duty",))
IMPORT_TAX = Label(key="import tax", name="Import tax", group="border", parts=("import tax",))
SALES_TAX = Label(key="sales tax", name="Sales tax", group="maker")
CURRENCY_CHARGE = Label(key="currency charge", name="Currency charge", group="payment")


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One line of the sum, at one end of what is possible, in the brief's currency to its last minor unit.

    Parameters
    ----------
    cost : what it adds to the total
    paid : what is paid; more than ``cost`` where it comes back
    foreign : whether it is paid in another currency than the brief's
    """

    label: Label
    cost: Decimal
    paid: Decimal
    working: str
    foreign: bool


@dataclass(frozen=True, slots=True)
class Gap:
    """A cost that is neither covered nor given: its name, and a sentence without the full stop."""

    name: str
    words: str


def no_figure(name: str) -> Gap:
    """Return the gap of a cost without a figure."""
    return Gap(name, f"{name}: no figure; the total is too low by that")


def entry(label: Label, amount: Decimal, currency: str, working: str, rates: Rates) -> Entry:
    """Return an entry of an amount in any currency.

    Parameters
    ----------
    label : what it is
    amount : exact
    working : how it was worked out, to which the exchange is added
    """
    home = to_minor(rates.to_home(amount, currency), rates.home)
    sum_words = priced(amount, currency)
    told = working if working.endswith(sum_words) or currency == rates.home else f"{working} = {sum_words}"
    words = told + exchange_words(currency, rates)
    return Entry(label=label, cost=home, paid=home, working=words, foreign=currency != rates.home)


def exchange_words(currency: str, rates: Rates) -> str:
    """Return the rate by which an amount came into the brief's currency; "" where it was in it."""
    if currency == rates.home:
        return ""
    rate = rates.rates[currency]
    dated = f" ({day_words(rate.dated)})" if rate.dated else ""
    if rate.means == "home for one":
        return f", at {shown(rate.figure)} {rates.home} for 1 {currency}{dated}"
    return f", at {shown(rate.figure)} {currency} for 1 {rates.home}{dated}"


def costs(entries: Iterable[Entry]) -> Decimal:
    """Return what entries add to the total."""
    return added(each.cost for each in entries)


def paid(entries: Iterable[Entry]) -> Decimal:
    """Return what is paid for entries."""
    return added(each.paid for each in entries)
