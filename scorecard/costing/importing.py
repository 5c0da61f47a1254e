"""Import rules of a destination: the bases of duty and import tax, the user's rates, relief, what the buyer supplies.

The rates are always the user's: they stand in the tariff of the destination, under the goods' own code and origin.
"""

from collections.abc import Mapping
from dataclasses import field
from decimal import Decimal
from typing import Literal, get_args

from scorecard.costing.amounts import Cut, Money, Span
from scorecard.costing.charges import Charge
from scorecard.costing.quotes import Way
from scorecard.errors import Place
from scorecard.frozen import dataclass

DutyBase = Literal["price", "price to the export border", "price, freight and insurance"]
TaxBase = Literal["none", "duty base and duty", "and freight and insurance", "and all costs to the door"]

DUTY_BASES: tuple[DutyBase, ...] = get_args(DutyBase)
TAX_BASES: tuple[TaxBase, ...] = get_args(TaxBase)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cutting:
    """How an authority cuts one figure: to a step (None: the minor unit of the currency), and which way."""

    step: Decimal | None = None
    cut: Cut = "half up"


@dataclass(frozen=True, slots=True, kw_only=True)
class Relief:
    """A threshold under which something is not charged; off by default, since a trader seldom may use it.

    Parameters
    ----------
    up_to : customs value, in ``currency``
    of : what is not charged up to it
    dated, source : when and where it was seen
    """

    up_to: Decimal
    currency: str
    of: Literal["duty", "duty and tax"] = "duty"
    dated: str = ""
    source: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Supplied:
    """Something that the buyer gives the maker free, or paid somebody else for: ``[[import.supplied]]``.

    As TOML::

        [[import.supplied]]
        name = "Lighthouse drawings"
        what = "artwork"          # or "tools or materials"
        value = 400
        currency = "EUR"          # default: the brief's
        made_in = "IE"            # where the work was done

    Artwork counts into the duty base unless it was made in the importing country; tools and materials always count.
    It is no cost of this order itself: only duty and tax are charged on it.
    """

    name: str
    what: Literal["artwork", "tools or materials"]
    value: Money
    made_in: str | None = None
    place: Place = field(default_factory=Place)


@dataclass(frozen=True, slots=True, kw_only=True)
class ImportRules:
    """The table ``[import]``: a preset of ``import_presets``, changed by what the user gives.

    As TOML::

        [import]
        duty_percent = 4                  # a number, or a text with a range ("0-12"); yours, from the tariff
        duty_by_country = { CN = 12 }     # where the rate hangs on where the goods are made
        tax_percent = 20
        tax = "cost"                      # or "recoverable": cash, not cost
        price_has_tax = true              # only where no border lies between maker and buyer
        # what follows is preset by the brief's destination
        duty_base = "price, freight and insurance"
        tax_base = "and all costs to the door"
        currency = "GBP"
        freight_in_base_percent = { air = 70 }
        use_relief = false
        on = 2026-11-20
        source = "…"

    The reader begins with ``import_presets.preset_for(destination)``; None (no preset for that country) needs
    ``duty_base`` and ``tax_base`` from the user, else leave ``imports`` None: duty and tax then are gaps. It refuses a
    rate below 0 or above 1000, an unknown base or key, a currency without a rate.

    Parameters
    ----------
    destination : ISO 3166-1 alpha-2
    preset : its name, such as "UK"; "" where the user gave the bases
    currency : that the authority reckons in
    duty_percent, tax_percent : None where not given, which is a gap
    duty_by_country : by the maker's country, before ``duty_percent``
    tax_is : "cost", or "recoverable"; None where not said, which is costed both ways
    price_has_tax : of a maker with no border between; None is costed both ways
    without_border : countries from which the goods cross no customs border
    freight_in_base_percent : the part of the freight that counts in the duty base, by way; 100 where not given
    duty_base_cutting, duty_cutting, tax_base_cutting, tax_cutting : how the authority cuts these
    local_part_of_tax : the part of import tax that is a second, local tax reckoned from the first; else 0
    charges : further charges at the border
    supplied : what the buyer gives the maker
    relief, use_relief : the threshold, and whether the user says that it holds for them
    legal : the legal source of the bases
    seen : when that was looked up, or that it is from memory
    dated, source : of the user's rates
    """

    destination: str
    preset: str = ""
    currency: str
    duty_base: DutyBase
    tax_base: TaxBase
    duty_percent: Span | None = None
    duty_by_country: Mapping[str, Span] = field(default_factory=dict)
    tax_percent: Span | None = None
    tax_is: Literal["cost", "recoverable"] | None = None
    price_has_tax: bool | None = None
    without_border: frozenset[str] = frozenset()
    freight_in_base_percent: Mapping[Way, Decimal] = field(default_factory=dict)
    duty_base_cutting: Cutting = field(default_factory=Cutting)
    duty_cutting: Cutting = field(default_factory=Cutting)
    tax_base_cutting: Cutting = field(default_factory=Cutting)
    tax_cutting: Cutting = field(default_factory=Cutting)
    local_part_of_tax: Decimal = Decimal(0)
    charges: tuple[Charge, ...] = ()
    supplied: tuple[Supplied, ...] = ()
    relief: Relief | None = None
    use_relief: bool = False
    legal: str = ""
    seen: str = ""
    dated: str = ""
    source: str = ""
    place: Place = field(default_factory=Place)
