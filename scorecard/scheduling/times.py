"""How long each maker takes on each way: from its quotes and freight offers, and where it has none, as is usual.

Enters: rows as read. Leaves: days with the cell or key that they come from. Of several quotes the newest counts, then
the one for the quantity that is wanted.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

from scorecard.costing.freight import FreightOffer, ShippingRule
from scorecard.costing.import_presets import PRESETS
from scorecard.costing.quotes import QuoteRow, Way
from scorecard.errors import Place
from scorecard.scheduling.inputs import CoversUpTo, Said, WayTimes, usual_production, usual_transit
from scorecard.scheduling.settings import Days, ScheduleSettings

BY_LAND: tuple[Way, ...] = ("road",)
FROM_AFAR: tuple[Way, ...] = ("sea", "air")


@dataclass(frozen=True, slots=True, kw_only=True)
class Offered:
    """What has been read that bears on days, whoever read it.

    Parameters
    ----------
    quantity : of the brief
    quotes, offers : in sheet order
    shipping : by way, as the criteria file's ``[shipping.WAY]`` leaves it; their days stand in for offers without
    """

    quantity: int
    quotes: tuple[QuoteRow, ...] = ()
    offers: tuple[FreightOffer, ...] = ()
    shipping: Mapping[Way, ShippingRule] = field(default_factory=dict)

    def of_maker(self, maker: str) -> "Offered":
        """Return what is one maker's."""
        return Offered(
            quantity=self.quantity,
            quotes=tuple(row for row in self.quotes if row.maker == maker),
            offers=tuple(row for row in self.offers if row.maker == maker),
            shipping=self.shipping,
        )


def is_nearby(country: str | None, destination: str | None) -> bool:
    """Say whether goods cross no customs border between two countries; one that is not known is far.

    Examples
    --------
    >>> is_nearby("PL", "IE"), is_nearby("GB", "IE"), is_nearby("VN", "VN"), is_nearby(None, "IE")
    (True, False, True, False)
    """
    if country is None or destination is None:
        return False
    return country == destination or any({country, destination} <= preset.countries for preset in PRESETS)


def way_times(offered: Offered, settings: ScheduleSettings, *, nearby: bool) -> tuple[WayTimes, ...]:
    """Return how long one maker takes, by way.

    Parameters
    ----------
    offered : of this maker alone
    settings : the table ``[schedule]``
    nearby : whether no customs border lies between the maker and the buyer
    """
    named = dict.fromkeys(
        [row.way for row in offered.quotes if row.way] + [row.way for row in offered.offers if row.days or row.cost]
    )
    ways = tuple(named) or settings.ways or (BY_LAND if nearby else FROM_AFAR)
    return tuple(_one_way(offered, settings, way, assumed=not named and not settings.ways) for way in ways)


def _one_way(offered: Offered, settings: ScheduleSettings, way: Way, *, assumed: bool) -> WayTimes:
    quote = _quote(offered, way)
    if quote is None or quote.days is None:
        production, up_to = usual_production(settings), "ready"
    else:
        production = Said(days=Days.of(quote.days), source=_cell(quote.at("Days")))
        up_to = _up_to(quote)
    ready = up_to == "ready"
    return WayTimes(
        way=way,
        production=production,
        counts=settings.production_counts if ready else "days",
        up_to="ready" if ready else "cleared" if up_to == "cleared" else "at the door",
        transit=_transit(offered, settings, way) if ready else None,
        way_assumed=assumed,
    )


def _up_to(quote: QuoteRow) -> CoversUpTo:
    """Return how far the days of a quote go: as far as its price covers, to ready where that is open."""
    if quote.covers == "goods and freight":
        return "at the door"
    return "cleared" if quote.covers == "to my door, duty and tax paid" else "ready"


def _quote(offered: Offered, way: Way) -> QuoteRow | None:
    """Return the quote whose days count on one way: for this way or for none, the newest, for the wanted quantity."""
    rows = [row for row in offered.quotes if row.days is not None and row.way in (way, None)]
    return max(rows, key=lambda row: _weight(row, offered.quantity, way), default=None)


def _weight(row: QuoteRow, quantity: int, way: Way) -> tuple[bool, date, bool, int]:
    """Return what makes one quote count before another."""
    pieces = row.pieces or 0
    fits = pieces <= quantity
    return row.way == way, row.quoted_on or date.min, fits, pieces if fits else -pieces


def _transit(offered: Offered, settings: ScheduleSettings, way: Way) -> Said:
    """Return the days of the journey: of the offer that fits, else of the way."""
    offers = [row for row in offered.offers if row.way == way and row.days is not None]
    best = _fitting(offers, offered.quantity)
    if best is not None and best.days is not None:
        return Said(days=Days.of(best.days), source=_cell(best.at("Days")))
    rule = offered.shipping.get(way)
    if way not in settings.transit and rule is not None and rule.days is not None:
        return Said(days=Days.of(rule.days), source=f"[shipping.{way}] days")
    return usual_transit(settings, way)


def _fitting(offers: Sequence[FreightOffer], quantity: int) -> FreightOffer | None:
    """Return the offer for the wanted quantity, or else the first."""

    def fits(row: FreightOffer) -> bool:
        return (row.from_pieces or 0) <= quantity <= (row.to_pieces or quantity)

    return next((row for row in offers if fits(row)), offers[0] if offers else None)


def _cell(place: Place) -> str:
    return "!".join(part for part in (place.sheet, place.cell) if part)
