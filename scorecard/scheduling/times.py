"""How long each maker takes on each way: from its quotes and freight offers, and where it has none, as is usual.

Enters: rows as read. Leaves: days with the cell or key that they come from. Of several quotes the newest counts, then
the one for the quantity that is wanted.
"""

from collections.abc import Mapping, Sequence
from dataclasses import field, replace
from datetime import date

from scorecard.costing.amounts import Span
from scorecard.costing.chargeable import fits
from scorecard.costing.delivery_terms import covers_by_term
from scorecard.costing.freight import FreightOffer, ShippingRule
from scorecard.costing.import_presets import PRESETS
from scorecard.costing.quotes import QuoteRow, Way
from scorecard.costing.replies import Reply, standing
from scorecard.errors import Place
from scorecard.frozen import dataclass
from scorecard.scheduling.inputs import CoversUpTo, Said, WayTimes, usual_production, usual_transit
from scorecard.scheduling.settings import Counts, Days, Reach, ScheduleSettings

BY_LAND: tuple[Way, ...] = ("road",)
FROM_AFAR: tuple[Way, ...] = ("sea", "air")


@dataclass(frozen=True, slots=True, kw_only=True)
class Offered:
    """What has been read of one maker that bears on days, whoever read it.

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

    def replies(self) -> list[Reply]:
        """Return the replies that stand."""
        return [reply for of_maker in standing(self.quotes).values() for reply in of_maker]


def reach_of(country: str | None, destination: str | None) -> Reach:
    """Return where a maker's country is, seen from the buyer's; one that is not known is beyond a border.

    Examples
    --------
    >>> reach_of("PL", "IE"), reach_of("GB", "IE"), reach_of("VN", "VN"), reach_of(None, "IE")
    ('no border', 'border', 'own country', 'border')
    """
    if country is not None and country == destination:
        return "own country"
    return "no border" if any({country, destination} <= preset.countries for preset in PRESETS) else "border"


def way_times(offered: Offered, settings: ScheduleSettings, reach: Reach) -> tuple[WayTimes, ...]:
    """Return how long one maker takes, by way.

    Parameters
    ----------
    offered : of this maker
    settings : the table ``[schedule]``
    reach : where the maker is, seen from the buyer
    """
    named = dict.fromkeys(
        [reply.head.way for reply in offered.replies() if reply.head.way] + [row.way for row in offered.offers]
    )
    ways = tuple(named) or settings.ways or (FROM_AFAR if reach == "border" else BY_LAND)
    assumed = not named and not settings.ways
    return tuple(replace(times_of_way(offered, settings, way, reach), way_assumed=assumed) for way in ways)


def times_of_way(offered: Offered, settings: ScheduleSettings, way: Way, reach: Reach) -> WayTimes:
    """Return how long one maker takes on one way, whether it has offered that way or not."""
    priced = _priced(offered, way)
    production = usual_production(settings) if priced is None else priced.said()
    up_to: CoversUpTo = "ready" if priced is None else priced.up_to()
    ready, said = up_to == "ready", priced.counted() if priced else None
    is_set = ready and "production_counts" in settings.given
    return WayTimes(
        way=way,
        production=production,
        counts=said or (settings.production_counts if ready else "days"),
        counts_assumed=priced is not None and said is None and not is_set,
        up_to=up_to,
        transit=_transit(offered, settings, way, reach) if ready else None,
    )


@dataclass(frozen=True, slots=True)
class _Priced:
    """A price with days: its reply, and its row."""

    reply: Reply
    row: QuoteRow

    def said(self) -> Said:
        """Return its days, or those that its reply gives elsewhere."""
        days, row = self._told()
        return Said(days=Days.of(days), source=_cell(row.at("Days")))

    def counted(self) -> Counts | None:
        """Return which days the reply says that they are."""
        return self._told()[1].days_counted

    def _told(self) -> tuple[Span, QuoteRow]:
        """Return its days, and the row that gives them."""
        return next((row.days, row) for row in (self.row, *self.reply.rows) if row.days is not None)

    def up_to(self) -> CoversUpTo:
        """Return how far the days go: as far as the price covers, to ready where that is open."""
        head = self.reply.head
        covers = head.covers or (covers_by_term(head.term) if head.term else None)
        if covers == "goods and freight":
            return "at the door"
        return "cleared" if covers == "to my door, duty and tax paid" else "ready"

    def weight(self, quantity: int, way: Way) -> tuple[bool, date, bool, int]:
        """Return what makes one price count before another."""
        pieces = self.row.pieces or 0
        fits = pieces <= quantity
        return self.reply.head.way == way, self.reply.quoted_on or date.min, fits, pieces if fits else -pieces


def _priced(offered: Offered, way: Way) -> _Priced | None:
    """Return the price whose days count on one way: for this way or for none, the newest, for the wanted quantity."""
    found = [
        _Priced(reply, row)
        for reply in offered.replies()
        for row in reply.rows
        if reply.head.way in (way, None) and reply.days(row) is not None
    ]
    return max(found, key=lambda one: one.weight(offered.quantity, way), default=None)


def _transit(offered: Offered, settings: ScheduleSettings, way: Way, reach: Reach) -> Said:
    """Return the days of the journey: of the offer that fits, else of the way."""
    offers = [row for row in offered.offers if row.way == way and row.days is not None]
    best = _fitting(offers, offered.quantity)
    if best is not None and best.days is not None:
        return Said(days=Days.of(best.days), source=_cell(best.at("Days")))
    rule = offered.shipping.get(way)
    given = {**settings.transit, **(settings.near_transit if reach != "border" else {})}
    if way not in given and rule is not None and rule.days is not None:
        return Said(days=Days.of(rule.days), source=f"[shipping.{way}] days")
    return usual_transit(settings, way, reach)


def _fitting(offers: Sequence[FreightOffer], quantity: int) -> FreightOffer | None:
    """Return the offer for the wanted quantity, or else the first."""
    fitting = (row for row in offers if fits(row, quantity, quantity))
    return next(fitting, offers[0] if offers else None)


def _cell(place: Place) -> str:
    """Return the sheet and the cell of a place; the cell alone in a .csv."""
    return str(replace(place, file=None))
