"""The inputs of a schedule, gathered from a folder."""

from datetime import date

from sourcing import BRIEF, folder_of, problems_of

from scorecard.reading.folder import read_folder
from scorecard.scheduling.settings import Days

AS_OF = date(2026, 11, 25)
DATED = BRIEF.replace('currency = "EUR"', 'currency = "EUR"\nneed_by = 2027-05-14')


def read(path, sheets=None, toml="", brief=DATED):
    return read_folder(folder_of(path, sheets, toml, brief), as_of=AS_OF, dates=True)


def inputs(*args, **kwargs):
    return read(*args, **kwargs).schedule


def test_makers_have_their_countries_and_whether_they_are_nearby(tmp_path):
    makers = inputs(tmp_path).makers

    assert {"Fernhill": ("PT", True), "Brightholm": ("CN", False)} == {
        name: (one.country, one.nearby) for name, one in makers.items()
    }


def test_a_makers_calendar_has_the_stops_beside_long_holidays_and_the_buyers_has_not(tmp_path):
    found = inputs(tmp_path, brief=DATED.replace('"IE"', '"CN"'))
    stopped = date(2027, 2, 2)

    assert (True, False) == (found.buyer.is_working(stopped), found.makers["Brightholm"].calendar.is_working(stopped))


def test_stops_are_as_they_are_set(tmp_path):
    found = inputs(tmp_path, toml="[schedule]\nstop_before_days = 0\nstop_after_days = 14")
    calendar = found.makers["Brightholm"].calendar

    assert [True, False] == [calendar.is_working(day) for day in (date(2027, 2, 4), date(2027, 2, 23))]


def test_closures_are_those_of_the_country_and_of_the_maker(tmp_path):
    toml = """
[[schedule.closures]]
from = 2027-08-02
to = 2027-08-06
country = "CN"
[[schedule.closures]]
from = 2027-08-02
to = 2027-08-06
maker = "fernhill"
[[schedule.closures]]
from = 2027-09-06
to = 2027-09-06
country = "FR"
"""
    makers = inputs(tmp_path, toml=toml).makers
    august, september = date(2027, 8, 3), date(2027, 9, 6)

    assert {"Fernhill": [False, True], "Brightholm": [False, True]} == {
        name: [one.calendar.is_working(day) for day in (august, september)] for name, one in makers.items()
    }


def test_days_of_quotes_and_freight_are_taken_from_their_cells(tmp_path):
    quotes = [["Maker", "Price", "Price is for", "Price covers", "Days"], ["Brightholm", 2, "each", "goods", "20-25"]]
    freight = [["Maker", "Way", "Cost", "Days"], ["Brightholm", "sea", 90, 35]]
    (sea,) = inputs(tmp_path, {"Quotes": quotes, "Freight": freight}).makers["Brightholm"].ways

    assert (Days(20, 25), "Quotes!E2", Days(35, 35), "Freight!D2") == (
        sea.production.days,
        sea.production.source,
        sea.transit.days,
        sea.transit.source,
    )


def test_days_of_shipping_stand_in_for_offers(tmp_path):
    sea, _ = inputs(tmp_path, toml='[shipping.sea]\ndays = "31-33"').makers["Brightholm"].ways

    assert (Days(31, 33), "[shipping.sea] days") == (sea.transit.days, sea.transit.source)


def test_an_approved_sample_is_seen(tmp_path):
    samples = [["Maker", "Round", "Received on", "Decision"], ["Fernhill", "sample", date(2026, 11, 2), "approved"]]
    makers = inputs(tmp_path, {"Samples": samples}).makers

    assert {"Fernhill": True, "Brightholm": False} == {name: one.sampled for name, one in makers.items()}


def test_an_unknown_country_is_a_warning_at_its_cell(tmp_path):
    makers = [["Maker", "Minimum order", "Minimum is per", "Country"], ["Fernhill", 100, "design", "Chnq"]]
    case = read(tmp_path, {"Makers": makers})

    assert ([("D2", "not-a-country")], None) == (
        [(one.place.cell, one.code) for one in case.warnings],
        case.schedule.makers["Fernhill"].country,
    )


def test_a_part_of_a_country_that_is_none_is_a_problem_at_its_key(tmp_path):
    toml = '[schedule.regions]\nGB = "KENT"\nIE = "C"'

    assert [("schedule.regions.GB", "not-a-region"), ("schedule.regions.IE", "not-a-region")] == problems_of(
        tmp_path, None, toml, DATED
    )


def test_a_closure_of_an_unknown_maker_is_a_problem_at_its_key(tmp_path):
    toml = '[[schedule.closures]]\nfrom = 2027-01-01\nto = 2027-01-09\nmaker = "Fernhil"'

    assert [("schedule.closures[0]", "unknown-maker")] == problems_of(tmp_path, None, toml, DATED)


def test_without_a_destination_the_buyer_has_weekends_alone(tmp_path):
    found = inputs(tmp_path, brief=DATED.replace('destination = "IE"\n', ""))

    assert ({}, None) == (dict(found.buyer.holidays), found.destination)


def test_a_way_that_only_an_order_names_has_the_usual_days_or_those_of_shipping(tmp_path):
    quotes = [["Maker", "Price", "Price is for", "Way"], ["Fernhill", 2, "each", "sea"]]
    orders = [
        ["Maker", "Ordered on", "Way"],
        *(["Fernhill", date(2026, 11, 2), way] for way in ("express", "sea", "air")),
    ]
    read = inputs(tmp_path, {"Quotes": quotes, "Orders": orders}, toml='[shipping.air]\ndays = "9"')

    # express takes up to 4 days where no border is crossed
    ways = read.makers["Fernhill"].ordered_ways

    assert {"express": 4, "air": 9} == {one.way: one.transit.days.high for one in ways}
