"""What the maker bills, in the quote's own currency: goods, set-up, credited sample, sales tax; deposit and rest.

Enters: one reading of a landed cost. Leaves: the bill; the landed cost holds the same lines in the brief's currency.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from decimal import Decimal

from scorecard.codes import amount_range
from scorecard.costing.amounts import HUNDRED, Span, added, percent_of, shown, to_minor
from scorecard.costing.border_entries import WHERE_SALES_TAX_IS, SalesTax, sales_tax_of, sales_tax_on_top
from scorecard.costing.currencies import Rates
from scorecard.costing.entries import SALES_TAX, Entry, Situation
from scorecard.costing.inputs import Balance
from scorecard.costing.maker_entries import credit_entries, goods_entry, setup_entries
from scorecard.costing.sums import Reading
from scorecard.frozen import dataclass

Ends = tuple[Decimal, Decimal]


@dataclass(frozen=True, slots=True, kw_only=True)
class BillLine:
    """One line: what it is, how it was worked out, least and most; below 0 for a credit; infinite where open."""

    name: str
    working: str
    low: Decimal
    high: Decimal
    currency: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Bill:
    """What the maker bills for an order.

    Parameters
    ----------
    quantity : pieces
    deposit_percent : of the bill, with the order; None where not known
    balance : when the rest is due; None where the user has not said
    """

    quantity: int
    lines: tuple[BillLine, ...]
    deposit_percent: Span | None
    balance: Balance | None

    @property
    def currency(self) -> str | None:
        """The one currency of all lines; None where they are in several."""
        found = {line.currency for line in self.lines}
        return found.pop() if len(found) == 1 else None

    @property
    def total(self) -> Ends | None:
        """The sum, least and most; None where lines are in several currencies."""
        if self.currency is None:
            return None
        return added(line.low for line in self.lines), added(line.high for line in self.lines)

    @property
    def deposit(self) -> Ends | None:
        """What is paid with the order, least and most; None where it is not known."""
        if self.total is None or self.deposit_percent is None:
            return None
        return self._part(self.deposit_percent.low, self.total[0]), self._part(self._most_percent, self.total[1])

    @property
    def rest(self) -> Ends | None:
        """What is left of the bill, least and most; None where it is not known, or there is no telling."""
        if self.total is None or self.deposit_percent is None or not self.total[1].is_finite():
            return None
        low, high = self.total
        return low - self._part(self._most_percent, low), high - self._part(self.deposit_percent.low, high)

    @property
    def _most_percent(self) -> Decimal:
        percent = self.deposit_percent
        return HUNDRED if percent is None or percent.high is None else percent.high

    def _part(self, percent: Decimal, amount: Decimal) -> Decimal:
        """Return so many hundredths of an amount of the bill, to the last minor unit."""
        return to_minor(percent_of(percent, amount), self.currency or "")


def bill_of(reading: Reading) -> Bill:
    """Return the bill of one reading.

    Parameters
    ----------
    reading : of a landed cost; what its price covers matters here only for sales tax, which may come on top where no
        border lies between
    """
    situation = reading.situation
    row, reply = situation.price.row, situation.reply
    deposit = reply.saying("deposit_percent", row)
    sources = (
        (lambda own, end: [goods_entry(own, end)], row),
        (setup_entries, reply.saying("setup", row)),
        (credit_entries, reply.saying("sample_price", row)),
    )
    lines = tuple(
        line
        for entries, source in sources
        if source is not None
        for line in _lines(entries, situation, source.currency)
    )
    return Bill(
        quantity=situation.quantity,
        lines=(*lines, *_sales_tax(situation, lines)),
        deposit_percent=deposit.deposit_percent if deposit else None,
        balance=situation.inputs.settings.balance if situation.inputs.settings.balance_said else None,
    )


def _sales_tax(situation: Situation, lines: Sequence[BillLine]) -> Iterator[BillLine]:
    """Yield the sales tax on top of the lines, once for each currency; from 0 where they may have it inside."""
    said, percent = sales_tax_of(situation), sales_tax_on_top(situation)
    if said is None or percent is None:
        return
    for currency in dict.fromkeys(line.currency for line in lines):
        own = [line for line in lines if line.currency == currency]
        low, high = added(line.low for line in own), added(line.high for line in own)
        yield BillLine(
            name=SALES_TAX.name,
            working=_tax_words(said, amount_range(low, high, currency)),
            low=to_minor(percent_of(percent.low, low), currency),
            high=to_minor(percent_of(percent.at("high"), high), currency),
            currency=currency,
        )


def _tax_words(said: SalesTax, base: str) -> str:
    where = WHERE_SALES_TAX_IS[said.is_inside]
    if said.percent is None:
        return f"no rate is given; {where}"
    ends = dict.fromkeys((shown(said.percent.low), shown(said.percent.at("high"))))
    return f"{' to '.join(ends)} % of {base}, {where}"


def _lines(entries: Callable[..., list[Entry]], situation: Situation, currency: str) -> list[BillLine]:
    """Return entries as they stand in the currency in which they were quoted."""
    own = replace(situation, inputs=replace(situation.inputs, rates=Rates(home=currency)))
    return [
        BillLine(
            name=low.label.name,
            working=low.working if low.working == high.working else f"least: {low.working}; most: {high.working}",
            low=min(low.paid, high.paid),
            high=max(low.paid, high.paid),
            currency=currency,
        )
        for low, high in zip(entries(own, "low"), entries(own, "high"), strict=True)
    ]
