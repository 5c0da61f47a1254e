"""Freight: an offer for so many pieces, or a rate with the cartons, and how a way of shipping turns size into weight.

Sources of the presets: forwarders' and couriers' public pages for air (6000 cm³ to a kg, sides to whole cm), express
(5000; no source says that sides are rounded, so they are not) and sea (a revenue ton is a cubic metre or 1000 kg);
steps and the rest are common practice, no source. All can be set.
"""

from collections.abc import Mapping
from dataclasses import field
from decimal import Decimal
from types import MappingProxyType
from typing import Literal, get_args

from scorecard.costing.amounts import Span
from scorecard.costing.charges import ORIGIN_PARTS, Part
from scorecard.costing.quotes import Way
from scorecard.errors import Place
from scorecard.frozen import dataclass

FreightCovers = Literal["port to port", "from the port to my door", "door to door"]
FREIGHT_COVERS: tuple[FreightCovers, ...] = get_args(FreightCovers)

PARTS_OF_FREIGHT: Mapping[FreightCovers, frozenset[Part]] = MappingProxyType(
    {
        "port to port": frozenset({"freight"}),
        "from the port to my door": frozenset({"freight", "arrival charges", "delivery"}),
        "door to door": frozenset({*ORIGIN_PARTS, "freight", "arrival charges", "delivery"}),
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Carton:
    """A full carton: pieces in it, its outer sides in cm, its weight in kg."""

    pieces: int
    length_cm: Decimal
    width_cm: Decimal
    height_cm: Decimal
    kg: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class FreightOffer:
    """One row of the sheet Freight, as read; blank and unknown cells are None.

    The reader refuses, at its cell: an unknown maker, a blank way, neither or both of a cost and a rate, zero or
    negative figures, from above to, a currency without a rate, a rate without a whole carton (all five
    cells), a carton without pieces. A typed cost of 0 is refused too: freight that the price pays is said under "Price
    covers".

    Parameters
    ----------
    maker : spelt as on the sheet Makers
    row : in the sheet, from 1
    currency : ISO 4217; the brief's where blank, with a warning of code ``read-as``
    from_pieces, to_pieces : the quantities that it was quoted for. With a cost: one of them alone is that quantity
        only, and neither is the brief's quantity. With a rate: a blank one is no bound
    cost : of the whole shipment
    rate_per_kg : of one chargeable kg
    rate_per_revenue_ton : of one cubic metre, or of the kg that it counts as (1000 unless set), from a column of that
        name where there is one (sea, rail)
    days : the journey, door to door
    carton : how the pieces are packed
    covers : from a column "Freight covers" where there is one; None: as ``ShippingRule.covers`` of the way
    places : the cell of every column that is there, by its heading; "Maker" always
    """

    maker: str
    row: int
    way: Way
    currency: str
    from_pieces: int | None = None
    to_pieces: int | None = None
    cost: Span | None = None
    rate_per_kg: Span | None = None
    rate_per_revenue_ton: Span | None = None
    days: Span | None = None
    carton: Carton | None = None
    covers: FreightCovers | None = None
    places: Mapping[str, Place] = field(default_factory=dict)

    def at(self, heading: str) -> Place:
        """Return the cell of one column; the maker's cell where the column is not there."""
        return self.places.get(heading) or self.places.get("Maker") or Place()


@dataclass(frozen=True, slots=True, kw_only=True)
class ShippingRule:
    """How one way of shipping counts weight, and what its freight pays for: ``[shipping.WAY]``, key by key.

    As TOML::

        [shipping.air]
        divisor = 6000            # cm³ to a kg; or kg_per_m3 = 167; kg_per_m3 = 0: the size does not count
        step_kg = 0.5             # weights go up to the next step; 0: they stay
        minimum_kg = 45
        round_cm = true           # each side to the nearest whole cm, halves up; by air unless you say false
        surcharge_percent = 18    # fuel and the like, on top of the rate
        days = "3-15"             # a number, or a text with a range; for offers without days
        covers = "door to door"   # or "port to port", "from the port to my door"

    A key that is not given keeps the preset of ``SHIPPING_RULES``. The reader refuses a negative figure, a
    ``divisor`` of 0, and one beside ``kg_per_m3``; where the user gives one of the two, the other becomes None.

    Parameters
    ----------
    divisor : cm³ that count as one kg; None where ``kg_per_m3`` is given, or the size does not count
    kg_per_m3 : kg that a cubic metre counts as
    step_kg : weights go up to the next multiple; 0 for none
    minimum_kg : the least chargeable weight of a shipment
    source : of the preset, or the user's own
    dated : the user's ``on``; "" where not given
    """

    way: Way
    divisor: Decimal | None = None
    kg_per_m3: Decimal | None = None
    step_kg: Decimal = Decimal(0)
    minimum_kg: Decimal = Decimal(0)
    round_cm: bool = False
    surcharge_percent: Decimal = Decimal(0)
    days: Span | None = None
    covers: FreightCovers = "port to port"
    source: str = ""
    dated: str = ""
    place: Place = field(default_factory=Place)


_NO_SOURCE = "common practice, no source"
_RULES = (
    ShippingRule(
        way="sea",
        kg_per_m3=Decimal(1000),
        minimum_kg=Decimal(1000),
        source="forwarders' pages: a revenue ton is the greater of cubic metres and tonnes, commonly at least one",
    ),
    ShippingRule(
        way="air",
        divisor=Decimal(6000),
        step_kg=Decimal("0.5"),
        round_cm=True,
        covers="port to port",
        source="forwarders' pages: weights go up to the next half kg, sides to the nearest whole cm, as air carriers "
        "round",
    ),
    ShippingRule(
        way="express",
        divisor=Decimal(5000),
        step_kg=Decimal("0.5"),
        covers="door to door",
        source="couriers' pages; the step is common practice",
    ),
    ShippingRule(way="rail", divisor=Decimal(2000), step_kg=Decimal(1), covers="port to port", source=_NO_SOURCE),
    ShippingRule(way="road", divisor=Decimal(3000), step_kg=Decimal(1), covers="door to door", source=_NO_SOURCE),
    ShippingRule(way="post", step_kg=Decimal("0.1"), covers="door to door", source=_NO_SOURCE),
)
SHIPPING_RULES: Mapping[Way, ShippingRule] = MappingProxyType({rule.way: rule for rule in _RULES})
