"""The table [schedule], key by key."""

from datetime import date

import pytest

from scorecard.reading.criteria_file import parse_criteria
from scorecard.scheduling.settings import Days, ScheduleSettings

HEAD = '[brief]\nitem = "mug"\nquantity = 200\n[criteria.rating]\nweight = 1\npoints = [[0, 0], [5, 100]]\n'


def reading(text):
    return parse_criteria(f"{HEAD}{text}".encode(), "criteria.toml")


def settings(lines):
    read = reading(f"[schedule]\n{lines}")
    assert () == read.problems
    return read.schedule


def problems(lines):
    return [(one.place.key, one.code) for one in reading(f"[schedule]\n{lines}").problems]


def test_without_the_table_nothing_is_said():
    assert reading("").schedule is None


def test_an_empty_table_leaves_all_as_usual():
    assert ScheduleSettings() == settings("")


def test_numbers_and_ranges_are_read():
    found = settings('receiving_days = 4\nclearance_days = "2-6"\nproduction_days = 30\nsample_rounds = 0')

    assert (4, Days(2, 6), Days(30, 30), 0) == (
        found.receiving_days,
        found.clearance_days,
        found.production_days,
        found.sample_rounds,
    )


def test_keys_that_are_given_are_known_as_given():
    assert {"proof_days", "transit", "source"} == settings(
        'proof_days = 3\nsource = "my notes"\n[schedule.transit]\nsea = "30-45"'
    ).given


def test_transit_is_given_by_way():
    assert {"sea": Days(30, 45), "air": Days(9, None)} == settings(
        '[schedule.transit]\nsea = "30-45"\nair = "9+"'
    ).transit


def test_transit_from_nearby_is_given_by_way_besides():
    found = settings('[schedule.near_transit]\nroad = "1-4"')

    assert ({"road": Days(1, 4)}, {}) == (found.near_transit, found.transit)


def test_a_way_that_is_none_is_named_under_its_key():
    assert [("schedule.near_transit.raod", "unknown-key")] == problems("[schedule.near_transit]\nraod = 3")


def test_days_kept_spare_are_one_number_or_one_a_way():
    every, some = settings("spare_days = 7").spare, settings("[schedule.spare_days]\nsea = 14").spare

    assert ({7}, 6, {"sea": 14}) == (set(every.values()), len(every), some)


def test_closures_are_of_a_country_or_a_maker():
    lines = (
        '[[schedule.closures]]\nfrom = 2027-01-25\nto = 2027-02-20\ncountry = "CN"\nwhy = "longer stop"\n'
        '[[schedule.closures]]\nfrom = 2027-08-01\nto = 2027-08-21\nmaker = "Fernhill"'
    )
    first, second = settings(lines).closures

    assert [
        (date(2027, 1, 25), "CN", None, "longer stop"),
        (date(2027, 8, 1), None, "Fernhill", "closed, as you set it"),
    ] == [(one.first, one.country, one.maker, one.why) for one in (first, second)]


def test_regions_ways_and_how_days_count_are_read():
    found = settings('ways = ["rail", "air"]\nproduction_counts = "days"\n[schedule.regions]\nGB = "ENG"')

    assert (("rail", "air"), "days", {"GB": "ENG"}) == (found.ways, found.production_counts, dict(found.regions))


@pytest.mark.parametrize(
    ("lines", "key", "code"),
    [
        ("recieving_days = 3", "schedule.recieving_days", "unknown-key"),
        ("production_days = 2027-01-15", "schedule.production_days", "not-a-number"),
        ("receiving_days = 2027-01-15", "schedule.receiving_days", "not-a-number"),
        ("receiving_days = -1", "schedule.receiving_days", "not-whole"),
        ("receiving_days = 2.5", "schedule.receiving_days", "not-whole"),
        ("receiving_days = 4000", "schedule.receiving_days", "too-high"),
        ('production_days = "soon"', "schedule.production_days", "not-a-number"),
        ('production_days = "20-4000"', "schedule.production_days", "too-high"),
        ("sample_rounds = 12", "schedule.sample_rounds", "too-high"),
        ("long_holiday_days = 0", "schedule.long_holiday_days", "not-whole"),
        ('production_counts = "weeks"', "schedule.production_counts", "not-an-option"),
        ('ways = ["ship"]', "schedule.ways", "not-an-option"),
        ('[schedule.transit]\nship = "30"', "schedule.transit.ship", "unknown-key"),
        ("[schedule.transit]\nsea = 2027-01-15", "schedule.transit.sea", "not-a-number"),
        ("[schedule.spare_days]\nsea = -3", "schedule.spare_days.sea", "not-whole"),
        ('[schedule.regions]\nUK = "ENG"', "schedule.regions.UK", "not-a-country"),
        (
            '[[schedule.closures]]\nfrom = 2027-01-01\nto = 2027-01-09\ncountry = "China"',
            "schedule.closures[0].country",
            "not-a-country",
        ),
        ('[[schedule.closures]]\nfrom = 2027-01-01\ncountry = "CN"', "schedule.closures[0].to", "missing-key"),
        ("[[schedule.closures]]\nfrom = 2027-01-01\nto = 2027-01-09", "schedule.closures[0]", "closure-of-whom"),
        (
            '[[schedule.closures]]\nfrom = 2027-01-09\nto = 2027-01-01\ncountry = "CN"',
            "schedule.closures[0].to",
            "reversed-range",
        ),
        (
            '[[schedule.closures]]\nfrom = 2027-01-09\nto = 2037-01-01\ncountry = "CN"',
            "schedule.closures[0].to",
            "too-high",
        ),
        (
            '[[schedule.closures]]\nfrom = "2027-01-01"\nto = 2027-01-09\ncountry = "CN"',
            "schedule.closures[0].from",
            "date-in-quotes",
        ),
    ],
)
def test_each_problem_stands_at_its_key(lines, key, code):
    assert (key, code) in problems(lines)


def test_every_problem_is_told_at_once():
    assert 3 == len(problems('receiving_days = -1\nproduction_days = "soon"\nways = ["ship"]'))
