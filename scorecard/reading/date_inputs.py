"""Orders, countries, quotes and the table [schedule], gathered into the inputs of a schedule, with calendars.

Enters: what was read. Leaves: the inputs, with every problem at its cell or key.
"""

from collections.abc import Iterable, Iterator, Mapping
from datetime import date

from scorecard.answers import MakerTable
from scorecard.closures import calendars_for, regions_of
from scorecard.costing.freight import FreightOffer, ShippingRule
from scorecard.costing.quotes import QuoteRow, Way
from scorecard.errors import Place, Problem
from scorecard.reading.cells import quoted
from scorecard.reading.countries import countries_of
from scorecard.reading.dates import DatesReading, ReadSoFar
from scorecard.reading.makers import ReadingOptions
from scorecard.reading.names import same
from scorecard.samples import SampleRound, kept_piece, undecided_round
from scorecard.scheduling.calendars import Calendar, days_between
from scorecard.scheduling.inputs import MakerTimes, SampleUnderWay, ScheduleInputs, WayTimes
from scorecard.scheduling.settings import ScheduleSettings
from scorecard.scheduling.times import Offered, reach_of, times_of_way, way_times
from scorecard.words import listed, nearest


def gathered(read: ReadSoFar, options: ReadingOptions) -> DatesReading:
    """Return the inputs of a schedule.

    Parameters
    ----------
    read : what has been read already
    options : of them, today
    """
    problems, table = tuple(_key_problems(read)), read.makers.table
    is_sound = not (problems or read.costs.problems or read.dealings.problems)
    inputs = _inputs(read, table, options.as_of) if is_sound and table else None
    return DatesReading(inputs=inputs, problems=problems)


def _key_problems(read: ReadSoFar) -> Iterator[Problem]:
    """Yield what is wrong with [schedule], now that makers and holidays can be looked up."""
    settings = read.criteria.schedule or ScheduleSettings()
    file = read.criteria.source.name if read.criteria.source else None
    for country, region in settings.regions.items():
        parts = regions_of(country)
        if region not in parts:
            place = Place(file=file, key=f"schedule.regions.{country}")
            wanted = f"Write one of {listed(parts, 'or')}" if parts else "Delete the line: no part has its own holidays"
            yield Problem(code="not-a-region", place=place, found=f"{quoted(region)} is no part of it", wanted=wanted)
    names = {same(name): name for name in read.makers.names or ()}
    for closure in settings.closures:
        if closure.maker and read.makers.names is not None and same(closure.maker) not in names:
            close = nearest(closure.maker, list(names.values()))
            wanted = f"Write {quoted(close)}, if that is meant" if close else "Write a name of the sheet Makers"
            found = f"{quoted(closure.maker)} is no maker of the sheet Makers"
            yield Problem(code="unknown-maker", place=closure.place, found=found, wanted=wanted)


def _inputs(read: ReadSoFar, table: MakerTable, as_of: date | None) -> ScheduleInputs | None:
    brief, settings = read.criteria.brief, read.criteria.schedule or ScheduleSettings()
    if brief is None:
        return None
    day = as_of or brief.need_by or date.min
    countries = countries_of(table)
    wanted = {country for country in (*countries, brief.destination) if country}
    calendars = calendars_for(sorted(wanted), day, brief.need_by, settings.regions)
    theirs = _makers_calendars(calendars, settings)
    offered = _offered(read, brief.quantity)
    makers = {}
    for at, maker in enumerate(table.makers):
        country, reach = countries[at], reach_of(countries[at], brief.destination)
        ways = way_times(offered[maker], settings, reach)
        makers[maker] = MakerTimes(
            maker=maker,
            row=table.rows[at],
            country=country,
            reach=reach,
            sampled=kept_piece(read.dealings.samples, maker) is not None,
            sample=_sample(read.dealings.samples, maker),
            calendar=_own_calendar(maker, theirs.get(country or "", NOWHERE), settings),
            ways=ways,
            ordered_ways=tuple(
                times_of_way(offered[maker], settings, way, reach) for way in _ordered_ways(read, maker, ways)
            ),
        )
    return ScheduleInputs(
        as_of=day,
        need_by=brief.need_by,
        destination=brief.destination,
        settings=settings,
        buyer=calendars.get(brief.destination or "", NOWHERE),
        makers=makers,
        orders=read.dealings.orders,
    )


def _ordered_ways(read: ReadSoFar, maker: str, ways: Iterable[WayTimes]) -> list[Way]:
    """Return the ways that a maker's orders name and its quotes do not, each once."""
    named = {times.way for times in ways}
    ordered = (order.way for order in read.dealings.orders if order.maker == maker)
    return list(dict.fromkeys(way for way in ordered if way is not None and way not in named))


def _sample(rounds: Iterable[SampleRound], maker: str) -> SampleUnderWay | None:
    """Return the sample of a maker on which nothing is decided yet."""
    found = undecided_round(rounds, maker)
    if found is None:
        return None
    number, last = found
    return SampleUnderWay(number=number, asked_on=last.asked_on, received_on=last.received_on)


NOWHERE = Calendar()


def _makers_calendars(calendars: Mapping[str, Calendar], settings: ScheduleSettings) -> dict[str, Calendar]:
    """Return the calendars as makers keep them: with stops beside long holidays, and closures of the country."""
    found = {}
    for country, calendar in calendars.items():
        with_stops = calendar.with_stops(
            settings.long_holiday_days, settings.stop_before_days, settings.stop_after_days
        )
        closed = {
            day: one.why
            for one in settings.closures
            if one.country == country
            for day in days_between(one.first, one.last)
        }
        found[country] = with_stops.closed(closed)
    return found


def _own_calendar(maker: str, calendar: Calendar, settings: ScheduleSettings) -> Calendar:
    """Return a maker's calendar with the closures that are its own."""
    own = [one for one in settings.closures if one.maker and same(one.maker) == same(maker)]
    return calendar.closed({day: one.why for one in own for day in days_between(one.first, one.last)})


def _offered(read: ReadSoFar, quantity: int) -> dict[str, Offered]:
    """Return what each maker has said of days; with [shipping] alone where it has said nothing."""
    costs = read.costs.inputs
    shipping: Mapping[Way, ShippingRule] = read.criteria.costs.shipping if read.criteria.costs else {}
    quotes: dict[str, list[QuoteRow]] = {}
    offers: dict[str, list[FreightOffer]] = {}
    for quote in costs.quotes if costs else ():
        quotes.setdefault(quote.maker, []).append(quote)
    for offer in costs.offers if costs else ():
        offers.setdefault(offer.maker, []).append(offer)
    return {
        maker: Offered(
            quantity=quantity,
            quotes=tuple(quotes.get(maker, ())),
            offers=tuple(offers.get(maker, ())),
            shipping=shipping,
        )
        for maker in read.makers.names or ()
    }
