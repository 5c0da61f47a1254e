"""One way per maker: the cheapest in time, else the quickest."""

from dataclasses import replace
from datetime import date
from decimal import Decimal
from math import inf, isnan

import pytest
from quoted import MAKER, TODAY, charge, landed, offer, quote, timing, uk

from scorecard.costing.amounts import Span
from scorecard.costing.choosing import (
    answer_of_cost,
    answer_of_days,
    cheapest_first,
    chosen_way,
    chosen_ways,
    in_time,
    middle,
    status_of,
)

CLEARED = uk(charges=(charge("Clearance", 18, "clearance", group="border"),))


def ways(sea_days=(40, 45), air_days=(8, 10)):
    """Sea at 90 and air at 150, 20 days of production, nothing missing."""
    return landed(
        quote(5, days=20),
        offers=(
            offer("sea", 90, days=sea_days, covers="door to door"),
            offer("air", 150, days=air_days, covers="door to door"),
        ),
        imports=CLEARED,
    )


def way_by(need_by, **more):
    return chosen_way(ways(**more), TODAY, need_by).way


def test_without_a_date_the_cheapest_way_is_chosen():
    assert "sea" == way_by(None)


@pytest.mark.parametrize(
    ("need_by", "way"),
    [
        (date(2027, 1, 29), "sea"),  # 65 days from today: sea takes 65 at the latest
        (date(2027, 1, 28), "air"),
        (date(2026, 12, 1), "air"),  # neither is in time: the quicker
    ],
)
def test_the_cheapest_of_those_in_time_is_chosen_else_the_quickest(need_by, way):
    assert way == way_by(need_by)


def test_a_way_without_days_is_not_counted_on_when_there_is_a_date():
    assert "air" == way_by(date(2027, 6, 1), sea_days=None)


def test_where_no_days_are_known_the_cheapest_is_chosen():
    assert "sea" == way_by(date(2027, 6, 1), sea_days=None, air_days=None)


def test_a_sum_with_a_gap_is_not_cheap():
    costs = landed(
        quote(5, days=20),
        offers=(offer("sea", 90, days=30), offer("air", 150, days=9, covers="door to door")),
        imports=CLEARED,
    )

    assert (["air", "sea"], "air") == ([cost.way for cost in cheapest_first(costs)], chosen_way(costs, TODAY, None).way)


def test_a_way_is_planned_on_its_late_end():
    sea = ways()[0]

    assert ["yes", "no", "yes"] == [in_time(sea, TODAY, day) for day in (date(2027, 1, 29), date(2027, 1, 28), None)]


NEED_BY = date(2027, 6, 1)


@pytest.mark.parametrize(
    ("status", "expected"),
    [("in time", "yes"), ("no time for a sample", "no"), ("only if all goes quickly", "no"), ("too late", "no")],
)
def test_the_verdict_of_the_schedule_comes_before_plain_days(status, expected):
    sea = replace(ways()[0], timing=timing(status))

    assert (expected, status) == (in_time(sea, TODAY, NEED_BY), status_of(sea, TODAY, NEED_BY))


def test_in_time_by_usual_days_is_not_surely_in_time():
    sea = replace(ways(sea_days=None)[0], timing=timing("in time", rests_on="usual days"))

    assert ("unknown", "in time") == (in_time(sea, TODAY, NEED_BY), status_of(sea, TODAY, NEED_BY))


def test_by_plain_days_the_words_are_those_of_the_schedule_too():
    sea, unknown = ways()[0], ways(sea_days=None)[0]
    days = (date(2027, 1, 29), date(2027, 1, 28), None)

    assert ["in time", "too late", None, None] == [
        *(status_of(sea, TODAY, day) for day in days),
        status_of(unknown, TODAY, date(2027, 6, 1)),
    ]


def scheduled_way(sea, air):
    """The way that is chosen where the schedule says so of each: status, latest order, what it rests on."""
    verdicts = {"sea": sea, "air": air}
    costs = [replace(cost, timing=timing(*verdicts[cost.way])) for cost in ways()]
    return chosen_way(costs, TODAY, NEED_BY).way


EARLY, LATE = date(2026, 12, 1), date(2026, 12, 20)


@pytest.mark.parametrize(
    ("sea", "air", "way"),
    [
        (("in time", EARLY), ("in time", LATE), "sea"),
        (("no time for a sample", EARLY), ("in time", LATE), "air"),  # plain days say that both are in time
        (("no time for a sample", EARLY), ("no time for a sample", LATE), "air"),  # the quickest
        (("too late", LATE), ("too late", EARLY), "sea"),  # of which the schedule decides, not the days as quoted
        (("in time", EARLY, "usual days"), ("in time", LATE), "air"),  # whose days were said
        (("in time", EARLY, "usual days"), ("too late", LATE), "sea"),
        (("too late", LATE, "usual days"), ("too late", EARLY), "air"),
    ],
)
def test_the_schedule_decides_which_way_stands_for_its_maker(sea, air, way):
    assert way == scheduled_way(sea, air)


def test_days_that_were_said_come_before_usual_days_with_and_without_a_schedule():
    late = date(2026, 12, 3)  # by air 30 days from today, by the schedule of sea 2 days before the date
    sea, air = ways()
    by_usual_days = replace(sea, timing=timing("too late", date(2026, 12, 1), "usual days"))

    assert "air" == chosen_way((by_usual_days, air), TODAY, late).way


def test_an_open_late_end_is_not_known_to_be_in_time():
    (cost,) = landed(quote(5, days=Span(Span.of(20).low, None), covers="goods and freight", way="air"))

    assert "unknown" == in_time(cost, TODAY, date(2027, 6, 1))


def test_a_maker_without_costs_has_no_way():
    assert chosen_way((), TODAY, None) is None


def test_each_maker_has_one_way():
    costs = landed(quote(5), quote(4, maker="Oxlip", row=3), offers=(offer("sea", 90), offer("air", 150)))

    assert {MAKER: "sea", "Oxlip": None} == {maker: cost.way for maker, cost in chosen_ways(costs, TODAY, None).items()}


@pytest.mark.parametrize(
    ("ordered", "way"),
    [
        (None, "sea"),  # 6.9096 a piece, against 7.2840 by air and 9.00 for a price that names no way
        ({MAKER: "air"}, "air"),
        ({MAKER: "rail"}, "sea"),  # by which nothing is known
        ({"Oxlip": "air"}, "sea"),
    ],
)
def test_the_way_that_was_ordered_stands_for_its_maker(ordered, way):
    all_paid = landed(quote(9, row=3, covers="to my door, duty and tax paid"))

    assert {MAKER: way} == {
        maker: cost.way for maker, cost in chosen_ways((*all_paid, *ways()), TODAY, None, ordered).items()
    }


def test_the_same_cost_by_the_same_way_is_chosen_whatever_the_order():
    costs = ways()
    later = tuple(replace(cost) for cost in reversed(costs))

    assert chosen_way(costs, TODAY, None).way == chosen_way(later, TODAY, None).way


# the two measures


def test_the_measures_of_a_chosen_way_are_its_good_piece_and_its_days():
    sea = ways()[0]

    # goods 1000, freight 90, duty 43.60, clearance 18, VAT 230.32: 1,381.92 for 200
    assert ((6.9096, 6.9096), (60.0, 65.0)) == (answer_of_cost(sea), answer_of_days(sea))


def test_the_middle_of_a_range_is_halfway_between_its_ends():
    (cost,) = landed(quote((4, 7), covers="to my door, duty and tax paid"))

    assert Decimal("5.5") == middle(cost)


def test_a_cost_with_a_gap_is_unknown_as_a_measure_and_its_days_are_not():
    (cost,) = landed(quote(5, days=20), offers=(offer("sea", 90, days=30),))

    assert all(isnan(end) for end in answer_of_cost(cost))
    assert (50.0, 50.0) == answer_of_days(cost)


def test_an_open_cost_and_open_days_reach_without_end():
    open_span = Span(Span.of(2).low, None)
    (cost,) = landed(quote(open_span, days=open_span, covers="to my door, duty and tax paid"))

    assert ((2.0, inf), (2.0, inf)) == (answer_of_cost(cost), answer_of_days(cost))


def test_without_a_quote_both_measures_are_unknown():
    assert all(isnan(end) for end in (*answer_of_cost(None), *answer_of_days(None)))
