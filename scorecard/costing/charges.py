"""The parts of a landed cost, and charges that the user gives for them: flat, by the piece, or a percentage.

The parts are the tool's own list of what somebody must pay between the maker's bench and the buyer's door.
"""

from dataclasses import field
from decimal import Decimal
from typing import Literal, get_args

from scorecard.costing.amounts import Span
from scorecard.costing.quotes import Way
from scorecard.errors import Place
from scorecard.frozen import dataclass

Part = Literal[
    "packing",
    "loading",
    "collection",
    "export clearance",
    "origin charges",
    "loading on board",
    "freight",
    "insurance",
    "arrival charges",
    "clearance",
    "duty",
    "import tax",
    "delivery",
    "unloading",
]
PARTS: tuple[Part, ...] = get_args(Part)
ORIGIN_PARTS: tuple[Part, ...] = ("loading", "collection", "export clearance", "origin charges", "loading on board")

ChargeOf = Literal[
    "goods",
    "goods and freight",
    "paid to the maker",
    "paid in another currency",
    "customs value",
    "duty and tax",
]
CHARGE_OF: tuple[ChargeOf, ...] = get_args(ChargeOf)


@dataclass(frozen=True, slots=True, kw_only=True)
class Charge:
    """A charge that the user gives in ``[shipping]``, ``[import]`` or ``[cost]``.

    As TOML, an entry of the arrays ``[[shipping.charges]]``, ``[[import.charges]]``, ``[[cost.charges]]``::

        [[shipping.charges]]
        name = "Collection and export"
        pays_for = ["loading", "collection", "export clearance", "origin charges"]   # one text will do for one part
        amount = 45.00
        currency = "USD"          # default: the brief's
        ways = ["air", "sea"]     # default: every way

        [[import.charges]]
        name = "Merchandise processing fee"
        percent = 0.3464
        of = "customs value"
        minimum = 33.58
        maximum = 651.50
        currency = "USD"
        on = 2025-10-01           # the day of the figures
        source = "…"

    The reader refuses, at its key: a charge with neither ``amount`` nor ``percent``, a percentage without ``of``, an
    unknown part, way or base, a negative figure, a minimum above its maximum, a currency without a rate, a name twice
    in one table, and ``pays_for`` of duty or import tax (their rates stand in ``[import]``).

    Parameters
    ----------
    name : as it is shown, such as "Clearance"
    pays_for : the parts that it pays for, which then are no gap; where the price or the freight already pays for all of
        them, it is left out. Empty: it is always paid. In ``[import]`` the default is ("clearance",) for a charge named
        so, whatever the case of the letters, else none; in ``[shipping]`` the default is the part of the same name
    amount : flat, in ``currency``
    per : what ``amount`` is for: the whole order, or each piece
    currency : ISO 4217, of amount, minimum and maximum
    percent, of : a percentage of one of the named bases, besides the amount or in its place
    minimum, maximum : of the whole charge
    ways : the ways of shipping that it belongs to; empty for all
    in_tax_base : whether import tax is charged on it; None: by the destination's tax base and by what it pays for
    group : where its money goes: "freight", "border", "payment" or "extra"; the reader gives "freight" for
        ``[shipping]``, "border" for ``[import]``; in ``[cost]`` "payment" where ``of`` is "paid to the maker" or "paid
        in another currency" or the user says ``group = "payment"``, else "extra"
    dated, source : as given
    place : its key, such as "import.charges[0]"
    """

    name: str
    pays_for: tuple[Part, ...] = ()
    amount: Span | None = None
    per: Literal["order", "piece"] = "order"
    currency: str
    percent: Decimal | None = None
    of: ChargeOf | None = None
    minimum: Decimal | None = None
    maximum: Decimal | None = None
    ways: frozenset[Way] = frozenset()
    in_tax_base: bool | None = None
    group: Literal["freight", "border", "payment", "extra"] = "extra"
    dated: str = ""
    source: str = ""
    place: Place = field(default_factory=Place)
