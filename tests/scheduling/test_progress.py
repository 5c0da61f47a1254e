"""Orders under way."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from planned import AS_OF, NEED_BY, NO_SAMPLE, inputs, maker, order, span, way

from scorecard.scheduling.progress import is_open, progress_of
from scorecard.scheduling.settings import ScheduleSettings

AIR = way("air", transit=(15, 15))


def progress(of_maker=None, settings=NO_SAMPLE, need_by=NEED_BY, as_of=AS_OF, **days):
    of_maker = of_maker or maker()
    read = inputs(of_maker, settings=settings, need_by=need_by, as_of=as_of)
    return progress_of(read, order(**days), of_maker)


@pytest.mark.parametrize(
    ("days", "stage", "first"),
    [
        ({}, "ordered", "proof drawn"),
        ({"ordered": date(2026, 11, 20)}, "ordered", "proof drawn"),
        ({"ordered": date(2026, 11, 20), "deposit_paid": date(2026, 11, 23)}, "deposit paid", "proof drawn"),
        ({"proof_approved": date(2026, 11, 24)}, "proof approved", "production"),
        ({"shipped": date(2026, 11, 24)}, "shipped", "transit"),
        ({"arrived": date(2026, 11, 24)}, "arrived", "receiving and packing"),
    ],
)
def test_an_order_goes_on_from_the_last_thing_that_happened(days, stage, first):
    found = progress(**days)

    assert (stage, first) == (found.stage, found.steps[0].step.name)


def test_pieces_on_their_way_are_due_at_the_late_end_of_the_journey():
    """By hand: shipped on Friday 20 November 2026, 40 days to 30 December, 5 working days of clearance to 6 January."""
    found = progress(shipped=date(2026, 11, 20))

    assert (date(2027, 1, 6), date(2027, 5, 11), 125) == (found.door_on, found.door_by, found.slack_days)


def test_a_later_promise_takes_the_place_of_our_count():
    found = progress(shipped=date(2026, 11, 20), promised=date(2027, 2, 1))

    assert (date(2027, 2, 1), 99) == (found.expected_on, found.slack_days)


def test_an_earlier_promise_is_not_relied_on():
    found = progress(shipped=date(2026, 11, 20), promised=date(2026, 12, 1))

    assert date(2027, 1, 6) == found.expected_on


def test_a_step_that_is_overdue_is_over_today_at_the_earliest():
    found = progress(shipped=date(2026, 9, 1))  # due after 40 days on 11 October, 45 days ago

    assert (45, date(2026, 12, 2)) == (found.overdue_days, found.door_on)  # and 5 working days of clearance from today


@pytest.mark.parametrize(
    ("shipped", "overdue", "door_on"),
    [
        # 40 days are over on Tuesday 24, Wednesday 25 and Thursday 26 November 2026; 5 working days from the later of
        # that and Wednesday the 25th, which is today
        (date(2026, 10, 15), 1, date(2026, 12, 2)),
        (date(2026, 10, 16), 0, date(2026, 12, 2)),
        (date(2026, 10, 17), 0, date(2026, 12, 3)),
    ],
)
def test_a_step_is_overdue_from_the_day_after_its_last(shipped, overdue, door_on):
    found = progress(shipped=shipped)

    assert (overdue, door_on) == (found.overdue_days, found.door_on)


def test_steps_of_no_days_are_not_those_that_are_overdue():
    """Approval was due on Tuesday 24 November 2026; 25 working days from today are over on Wednesday 30 December."""
    settings = ScheduleSettings(sample_rounds=0, proof_days=span(0))
    found = progress(settings=settings, ordered=date(2026, 11, 20))

    assert (["proof approved", "production", "transit", "clearance", "receiving and packing"], 1) == (
        [placed.step.name for placed in found.steps],
        found.overdue_days,
    )
    assert date(2026, 12, 30) == found.steps[1].last


def test_slack_is_below_zero_where_it_comes_too_late():
    found = progress(shipped=date(2026, 11, 20), need_by=date(2026, 12, 24))

    assert (date(2026, 12, 21), -16) == (found.door_by, found.slack_days)


def test_without_a_need_by_date_there_is_no_slack():
    found = progress(shipped=date(2026, 11, 20), need_by=None)

    assert (None, None, {}) == (found.door_by, found.slack_days, found.ship_by)


def test_a_way_without_a_day_of_leaving_has_none_and_no_way_has_one_without_a_need_by_date():
    door = way("air", transit=None, up_to="at the door", counts="days")

    assert [{"sea": date(2027, 3, 16)}, {}] == [
        progress(maker("Fernhill", way(), door), ordered=date(2026, 11, 20), need_by=day).ship_by
        for day in (NEED_BY, None)
    ]


def test_before_they_leave_each_way_has_its_latest_day_of_leaving():
    found = progress(maker("Fernhill", way(), AIR), ordered=date(2026, 11, 20))

    assert {"sea": date(2027, 3, 16), "air": date(2027, 4, 16)} == found.ship_by


def test_once_they_have_left_no_day_of_leaving_is_named():
    assert {} == progress(shipped=date(2026, 11, 20)).ship_by


def test_a_way_that_nobody_has_said_is_the_slowest():
    found = progress(maker("Fernhill", AIR, way()), ordered=date(2026, 11, 20))

    assert ("sea", True) == (found.way, found.way_assumed)


@pytest.mark.parametrize(
    ("times", "named", "expected"),
    [
        (way(), None, ("sea", False)),  # the maker ships in one way alone
        (replace(way(), way_assumed=True), None, ("sea", True)),
        (way(), "express", ("sea", True)),  # whose days nobody has worked out
    ],
)
def test_a_way_is_assumed_where_neither_the_order_nor_the_maker_settles_it(times, named, expected):
    found = progress(maker("Fernhill", times), ordered=date(2026, 11, 20), way=named)

    assert expected == (found.way, found.way_assumed)


def test_a_way_that_is_said_is_taken():
    found = progress(maker("Fernhill", way(), AIR), ordered=date(2026, 11, 20), way="air")

    assert ("air", False) == (found.way, found.way_assumed)


def test_production_waits_for_the_deposit_too():
    found = progress(proof_approved=date(2026, 11, 10), deposit_paid=date(2026, 11, 23))

    assert date(2026, 11, 23) == found.since


def test_a_journey_that_the_days_of_production_hold_is_as_usual_once_it_has_begun():
    door = way(transit=None, up_to="at the door", counts="days")
    found = progress(maker("Fernhill", door), shipped=date(2026, 11, 20))

    assert ("transit", 40, True) == (found.steps[0].step.name, found.steps[0].days, found.steps[0].step.assumed)


@pytest.mark.parametrize(("until", "left"), [(AS_OF + timedelta(days=3), 3), (AS_OF, 0), (None, None)])
def test_days_left_to_complain_are_counted_from_today(until, left):
    assert left == progress(arrived=AS_OF, complain_until=until).complain_days


def test_pieces_that_come_after_the_last_day_to_complain_are_seen():
    days = {"shipped": date(2026, 11, 20), "complain_until": date(2027, 1, 6)}

    assert [True, False] == [
        progress(**one).may_come_too_late_to_complain for one in (days, days | {"complain_until": date(2027, 1, 7)})
    ]


@pytest.mark.parametrize(
    ("days", "expected"),
    [
        ({"arrived": None}, True),
        ({"arrived": AS_OF}, True),
        ({"arrived": AS_OF, "balance_paid": AS_OF}, False),
        ({"arrived": AS_OF, "balance_paid": AS_OF, "complain_until": AS_OF}, True),
        ({"arrived": AS_OF, "balance_paid": AS_OF, "complain_until": AS_OF - timedelta(days=1)}, False),
    ],
)
def test_an_order_is_open_while_anything_of_it_is_to_come(days, expected):
    assert expected == is_open(replace(order(), **days), AS_OF)


def test_a_way_that_only_the_order_names_is_taken_all_the_same():
    express = way("express", transit=(7, 7))
    found = progress(maker("Fernhill", way(), ordered_ways=(express,)), ordered=date(2026, 11, 20), way="express")

    assert ("express", False, 7) == (found.way, found.way_assumed, _days(found, "transit"))
    assert {"sea", "express"} == set(found.ship_by)


def _days(found, step):
    return next(placed.days for placed in found.steps if placed.step.name == step)


@pytest.mark.parametrize(("left", "expected"), [(3, True), (0, True), (-1, False)])
def test_pieces_that_are_here_are_to_be_checked_until_the_last_day_to_complain(left, expected):
    until = AS_OF + timedelta(days=left)

    assert expected == progress(arrived=AS_OF, complain_until=until).is_to_be_checked
    assert not progress(shipped=AS_OF, complain_until=until).is_to_be_checked
