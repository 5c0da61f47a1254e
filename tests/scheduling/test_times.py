"""Days of each maker and way, from quotes and freight offers."""

from datetime import date
from decimal import Decimal

import pytest

from scorecard.costing.amounts import Span
from scorecard.costing.freight import SHIPPING_RULES, FreightOffer, ShippingRule
from scorecard.costing.quotes import QuoteRow
from scorecard.errors import Place
from scorecard.scheduling.settings import Days, ScheduleSettings
from scorecard.scheduling.times import Offered, reach_of, way_times


def quote(days=None, row=2, **more):
    places = {"Maker": Place(sheet="Quotes", cell=f"A{row}"), "Days": Place(sheet="Quotes", cell=f"I{row}")}
    span = None if days is None else Span.of(*days) if isinstance(days, tuple) else Span.of(days)
    return QuoteRow(
        **{"maker": "Fernhill", "row": row, "price": Span.of(1), "price_is_for": "each", "currency": "EUR"}
        | {"days": span, "places": places}
        | more
    )


def offer(way="sea", days=30, **more):
    places = {"Maker": Place(sheet="Freight", cell="A2"), "Days": Place(sheet="Freight", cell="H2")}
    span = None if days is None else Span.of(days)
    return FreightOffer(maker="Fernhill", row=2, way=way, currency="EUR", days=span, places=places, **more)


COST = Span.of(Decimal(90))


def times(quotes=(), offers=(), settings=None, reach="border", shipping=None):
    offered = Offered(quantity=200, quotes=tuple(quotes), offers=tuple(offers), shipping=shipping or SHIPPING_RULES)
    return way_times(offered, settings or ScheduleSettings(), reach)


def test_a_maker_that_has_said_nothing_ships_by_sea_and_air_from_afar_and_by_road_from_nearby():
    ways = [[one.way for one in times(reach=reach)] for reach in ("border", "no border", "own country")]

    assert [["sea", "air"], ["road"], ["road"]] == ways


@pytest.mark.parametrize(("reach", "most"), [("border", 30), ("no border", 12), ("own country", 5)])
def test_the_usual_journey_is_shorter_the_nearer_the_maker_is(reach, most):
    (post,) = times([quote(20, way="post", covers="goods")], reach=reach)

    assert (most, True) == (post.transit.days.high, post.transit.assumed)


def test_a_journey_from_nearby_can_be_set_and_the_other_stands_in_for_it():
    settings = ScheduleSettings(
        transit={"post": Days(9, 9), "road": Days(8, 8)},
        near_transit={"post": Days(2, 2)},
        given=frozenset({"transit", "near_transit"}),
    )
    rows = [quote(20, way="post", covers="goods"), quote(20, row=3, way="road", covers="goods")]
    found = {reach: times(rows, settings=settings, reach=reach) for reach in ("border", "own country")}

    assert {"border": [8, 9], "own country": [8, 2]} == {
        reach: sorted((one.transit.days.high for one in ways), reverse=reach != "border")
        for reach, ways in found.items()
    }


def test_such_a_way_and_its_days_are_assumed():
    (road,) = times(reach="no border")

    assert (True, True, True) == (road.way_assumed, road.production.assumed, road.transit.assumed)


def test_ways_of_the_criteria_file_come_before_the_usual_ones():
    (rail,) = times(settings=ScheduleSettings(ways=("rail",)))

    assert ("rail", False) == (rail.way, rail.way_assumed)


def test_ways_are_those_that_quotes_and_offers_name():
    found = times([quote(20), quote(20, way="express")], [offer("air")])

    assert ["express", "air"] == [one.way for one in found]


def test_days_of_a_quote_are_production_where_its_price_covers_goods():
    (sea,) = times([quote((20, 25), covers="goods")], [offer()])

    assert (Days(20, 25), "Quotes!I2", "ready", Days(30, 30), "Freight!H2") == (
        sea.production.days,
        sea.production.source,
        sea.up_to,
        sea.transit.days,
        sea.transit.source,
    )


@pytest.mark.parametrize(
    ("covers", "up_to"),
    [("goods and freight", "at the door"), ("to my door, duty and tax paid", "cleared"), (None, "ready")],
)
def test_days_of_a_quote_go_as_far_as_its_price(covers, up_to):
    (sea,) = times([quote(45, covers=covers, way="sea")])

    assert (up_to, up_to == "ready") == (sea.up_to, sea.transit is not None)


def test_days_that_hold_the_journey_are_plain_days():
    (sea,) = times([quote(45, covers="goods and freight", way="sea")])

    assert "days" == sea.counts


def test_the_newest_quote_counts():
    rows = [quote(20, quoted_on=date(2026, 11, 1)), quote(30, row=3, quoted_on=date(2026, 11, 9))]

    assert "Quotes!I3" == times(rows, [offer()])[0].production.source


def test_of_one_reply_the_price_for_the_wanted_quantity_counts():
    rows = [quote(20, row=at, pieces=pieces) for at, pieces in ((2, 100), (3, 200), (4, 500))]

    assert "Quotes!I3" == times(rows, [offer()])[0].production.source


def test_a_quote_for_the_way_comes_before_one_for_none():
    rows = [quote(20, row=2, quoted_on=date(2026, 11, 9)), quote(30, row=3, way="sea")]

    assert "Quotes!I3" == times(rows)[0].production.source


def test_an_offer_for_the_wanted_quantity_comes_first():
    offers = [offer(days=30, to_pieces=100), offer(days=35, from_pieces=150, to_pieces=300)]

    assert Days(35, 35) == times([], offers)[0].transit.days


def test_an_offer_without_days_takes_those_of_shipping():
    rules = {"sea": ShippingRule(way="sea", days=Span.of(28, 33))}
    (sea,) = times([], [offer(days=None, cost=Span.of(Decimal(90)))], shipping=rules)

    assert (Days(28, 33), "[shipping.sea] days") == (sea.transit.days, sea.transit.source)


def test_days_of_the_schedule_come_before_those_of_shipping():
    rules = {"sea": ShippingRule(way="sea", days=Span.of(28, 33))}
    settings = ScheduleSettings(transit={"sea": Days(40, 44)}, ways=("sea",), given=frozenset({"transit"}))

    assert Days(40, 44) == times(settings=settings, shipping=rules)[0].transit.days


@pytest.mark.parametrize(
    ("term", "up_to"), [("FOB", "ready"), ("CIF", "at the door"), ("DAP", "at the door"), ("DDP", "cleared")]
)
def test_a_delivery_term_says_how_far_the_days_go_where_nothing_else_does(term, up_to):
    assert up_to == times([quote(45, term=term, way="sea")])[0].up_to


def test_a_further_price_of_a_reply_goes_as_far_as_its_first():
    rows = [quote(45, covers="goods and freight", way="sea", pieces=100), quote(50, row=3, pieces=200)]
    (sea,) = times(rows)

    assert ("at the door", "Quotes!I3") == (sea.up_to, sea.production.source)


def test_a_price_without_days_takes_those_of_its_reply():
    rows = [quote(45, pieces=100), quote(row=3, pieces=200)]

    assert "Quotes!I2" == times(rows, [offer()])[0].production.source


@pytest.mark.parametrize(
    ("country", "destination", "reach"),
    [
        ("PL", "IE", "no border"),
        ("IE", "IE", "own country"),
        ("GB", "IE", "border"),
        ("IM", "GB", "no border"),
        (None, "IE", "border"),
        ("IE", None, "border"),
        (None, None, "border"),
    ],
)
def test_near_is_where_no_customs_border_is_crossed(country, destination, reach):
    assert reach == reach_of(country, destination)


def sources(quotes, way="sea"):
    """Return where the days of production come from; of a way of which nothing but a journey is offered."""
    return next(one.production.source for one in times(quotes, [offer(way)]) if one.way == way)


@pytest.mark.parametrize(
    ("quotes", "source"),
    [
        # none is for 200 pieces: the one that begins the soonest
        ([quote(20, pieces=500), quote(20, row=3, pieces=300), quote(20, row=4, pieces=900)], "Quotes!I3"),
        # one that names no pieces holds for any, and stands behind one that names them
        ([quote(20), quote(20, row=3, pieces=300)], "Quotes!I2"),
        ([quote(20), quote(20, row=3, pieces=1)], "Quotes!I3"),
        # a day comes before none, whichever is read first
        ([quote(20, covers="goods", way="sea"), quote(30, 3, way="sea", quoted_on=date(2026, 11, 1))], "Quotes!I3"),
        ([quote(30, way="sea", quoted_on=date(2026, 11, 1)), quote(20, 3, covers="goods", way="sea")], "Quotes!I2"),
        # the newest reply says nothing of days
        ([quote(20, term="FOB"), quote(row=3, term="EXW", quoted_on=date(2026, 11, 9))], "Quotes!I2"),
        # days by air are none by sea
        ([quote(20, way="air")], "assumed: common practice, no source"),
    ],
)
def test_of_several_prices_the_one_that_comes_nearest_counts(quotes, source):
    assert source == sources(quotes)


@pytest.mark.parametrize(
    ("offers", "days"),
    [
        ([offer("air", 5), offer(days=None, cost=COST), offer(days=35, cost=COST)], 35),
        ([offer(days=30, to_pieces=100, cost=COST), offer(days=35, to_pieces=150, cost=COST)], 30),  # none is for 200
        # a cost for one number of pieces is for that number alone, a rate from a number on for all above it
        ([offer(days=30, from_pieces=100, cost=COST), offer(days=35, cost=COST)], 35),
        ([offer(days=30, to_pieces=300, cost=COST), offer(days=35, to_pieces=200, cost=COST)], 35),
        ([offer(days=30, from_pieces=100, rate_per_kg=COST), offer(days=35, rate_per_kg=COST)], 30),
    ],
)
def test_the_journey_is_that_of_the_offer_for_the_wanted_quantity(offers, days):
    found = {one.way: one.transit.days for one in times([], offers)}

    assert Days(days, days) == found["sea"]


@pytest.mark.parametrize(
    ("reach", "source"), [("border", "[shipping.road] days"), ("no border", "[schedule] near_transit")]
)
def test_days_set_for_nearby_makers_come_before_those_of_shipping_for_them_alone(reach, source):
    rules = {"road": ShippingRule(way="road", days=Span.of(8))}
    settings = ScheduleSettings(near_transit={"road": Days(2, 2)}, ways=("road",), given=frozenset({"near_transit"}))
    (road,) = times(settings=settings, shipping=rules, reach=reach)

    assert source == road.transit.source


def test_in_a_csv_the_cell_says_where_days_come_from():
    places = {"Maker": Place(file="Quotes.csv", cell="A2"), "Days": Place(file="Quotes.csv", cell="I2")}

    assert "I2" == sources([quote(20, places=places)])


@pytest.mark.parametrize("covers", ["goods", "goods and freight", "to my door, duty and tax paid"])
@pytest.mark.parametrize("said", ["working days", "days"])
def test_days_are_counted_as_the_reply_says_whatever_the_price_covers_and_the_file_has(covers, said):
    settings = ScheduleSettings(
        production_counts="days" if said == "working days" else "working days", given=frozenset({"production_counts"})
    )
    (one,) = times([quote(20, way="sea", covers=covers, days_counted=said)], settings=settings)

    assert (said, False) == (one.counts, one.counts_assumed)


def test_the_row_that_gives_the_days_says_which_they_are():
    first, wanted = quote(20, way="sea", pieces=100, days_counted="days"), quote(row=3, pieces=200)

    assert [("days", False)] == [(one.counts, one.counts_assumed) for one in times([first, wanted])]


@pytest.mark.parametrize(
    ("covers", "given", "counts", "assumed"),
    [
        ("goods", (), "working days", True),
        ("goods", ("production_counts",), "working days", False),
        ("goods and freight", (), "days", True),
        ("goods and freight", ("production_counts",), "days", True),  # which speaks of days to ready
    ],
)
def test_which_days_are_meant_is_assumed_where_nobody_has_said(covers, given, counts, assumed):
    settings = ScheduleSettings(given=frozenset(given))
    (one,) = times([quote(20, way="sea", covers=covers)], settings=settings)

    assert (counts, assumed) == (one.counts, one.counts_assumed)


def test_of_usual_days_it_is_known_which_they_are():
    assert [False, False] == [one.counts_assumed for one in times()]
