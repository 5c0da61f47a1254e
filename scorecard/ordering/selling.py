"""What a piece sells for, what selling it costs, and how many may sell: the table ``[selling]``.

Enters: nothing but what a reader has read, in the brief's currency and exact. Leaves: what is left of one price.
"""

from collections.abc import Mapping
from dataclasses import field
from datetime import date
from decimal import Decimal

from scorecard.costing.amounts import EXACT, HUNDRED, ZERO, added, over, percent_of, times
from scorecard.errors import Place
from scorecard.frozen import dataclass
from scorecard.ordering.demands import Demand


@dataclass(frozen=True, slots=True, kw_only=True)
class Selling:
    """The table ``[selling]``.

    As TOML::

        [selling]
        price = 18.00                  # required: what a customer pays for one piece
        sales_tax_percent = 23         # the part of the price that goes to the tax office; default 0, which is said
        channel_fee_percent = 6.5      # of the price, to the shop or site that it is sold by
        payment_fee_percent = 2.9      # of the price, to whom the payment runs through
        payment_fee = 0.30             # and so much a piece
        packing = 0.45                 # a piece
        postage = 0                    # a piece, as far as you bear it
        fixed = 150.00                 # paid once, whatever the quantity: photographs, design time, a stall
        demand = { low = 120, likely = 180, high = 260 }
        unsold_worth = 2.00            # what a piece left over still brings; default 0, which is said
        wanted_margin_percent = 40     # of the price without sales tax
        sales_begin = 2027-05-29       # default: the brief's need-by date
        selling_weeks = 12             # over which the likely demand sells
        yearly_demand = 600            # only for steady sales, year after year
        holding_percent = 20           # what keeping a piece for a year costs, of what it cost
        order_cost = 25.00             # your own cost of placing an order once more

    Parameters
    ----------
    price : above 0
    sales_tax_percent : of the price before tax, as rates are given
    demand : None where not given
    given : the keys that the file gives
    places : of the keys, for warnings
    """

    price: Decimal
    sales_tax_percent: Decimal = ZERO
    channel_fee_percent: Decimal = ZERO
    payment_fee_percent: Decimal = ZERO
    payment_fee: Decimal = ZERO
    packing: Decimal = ZERO
    postage: Decimal = ZERO
    fixed: Decimal = ZERO
    demand: Demand | None = None
    unsold_worth: Decimal = ZERO
    wanted_margin_percent: Decimal | None = None
    sales_begin: date | None = None
    selling_weeks: Decimal | None = None
    yearly_demand: int | None = None
    holding_percent: Decimal | None = None
    order_cost: Decimal = ZERO
    given: frozenset[str] = frozenset()
    places: Mapping[str, Place] = field(default_factory=dict)

    @property
    def sales_tax(self) -> Decimal:
        """The sales tax inside one price."""
        return over(times(self.price, self.sales_tax_percent), HUNDRED + self.sales_tax_percent)

    @property
    def takings(self) -> Decimal:
        """One price without its sales tax."""
        return EXACT.subtract(self.price, self.sales_tax)

    @property
    def deductions(self) -> Mapping[str, Decimal]:
        """What selling one piece costs, by name."""
        return {
            "sales tax": self.sales_tax,
            "channel fee": percent_of(self.channel_fee_percent, self.price),
            "payment fee": added([percent_of(self.payment_fee_percent, self.price), self.payment_fee]),
            "packing": self.packing,
            "postage": self.postage,
        }

    @property
    def kept(self) -> Decimal:
        """What is left of one price to pay for the goods: the price less tax, fees, packing and postage.

        Examples
        --------
        >>> fees = {"payment_fee_percent": Decimal("2.9"), "payment_fee": Decimal("0.30"), "packing": Decimal("0.45")}
        >>> Selling(price=Decimal("12.00"), **fees).kept
        Decimal('10.902')
        """
        return EXACT.subtract(self.price, added(self.deductions.values()))

    @property
    def bearable(self) -> Decimal | None:
        """The highest landed cost of a good piece at which the wanted margin is still reached; None without one."""
        if self.wanted_margin_percent is None:
            return None
        return EXACT.subtract(self.kept, percent_of(self.wanted_margin_percent, self.takings))


UNPRICED = Selling(price=ZERO)
"""For sizes and what they cost alone: nothing that rests on a sale may be read from it."""
