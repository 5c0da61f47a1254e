"""The chain of steps of one maker and way."""

from dataclasses import replace
from datetime import date

import pytest
from planned import AS_OF, NO_SAMPLE, inputs, maker, way

from scorecard.scheduling.chain import Chain
from scorecard.scheduling.inputs import SampleUnderWay
from scorecard.scheduling.settings import Days, ScheduleSettings
from scorecard.scheduling.steps import placed_on


def names(of_maker, settings=None):
    read = inputs(of_maker, settings=settings)
    return [step.name for step in Chain(read, of_maker, of_maker.ways[0]).whole()]


def test_the_chain_runs_from_the_sample_to_packing():
    expected = [
        "sample made",
        "sample in the post",
        "sample looked at",
        "proof drawn",
        "proof approved",
        "production",
        "transit",
        "clearance",
        "kept spare",
        "receiving and packing",
    ]
    assert expected == names(maker())


def test_each_round_of_samples_is_made_posted_and_looked_at():
    assert 3 == names(maker(), ScheduleSettings(sample_rounds=3)).count("sample in the post")


def test_no_sample_is_asked_for_once_one_is_approved():
    assert "sample made" not in names(maker("Fernhill", sampled=True))


def test_no_customs_is_cleared_where_no_border_is_crossed():
    assert "clearance" not in names(maker("Fernhill", reach="no border"))


def test_days_to_the_door_hold_the_journey_and_still_leave_clearance():
    door = names(maker("Fernhill", way(transit=None, up_to="at the door", counts="days")))

    assert (["production and transit", "clearance"], False) == (door[5:7], "transit" in door)


def test_days_to_the_door_duty_paid_hold_clearance_too():
    assert "clearance" not in names(maker("Fernhill", way(transit=None, up_to="cleared", counts="days")))


def test_days_of_a_quote_that_hold_the_journey_count_every_day_but_long_holidays():
    times = way(transit=None, up_to="at the door", counts="days")
    of_maker = maker("Fernhill", times)
    (step,) = Chain(inputs(of_maker), of_maker, times).production()

    assert ("days, long holidays left out", frozenset()) == (step.counted, step.calendar.weekend)


def test_each_step_says_where_its_days_come_from_and_whether_they_are_assumed():
    settings = ScheduleSettings(given=frozenset({"proof_days"}))
    of_maker = maker()
    steps = {step.name: step for step in Chain(inputs(of_maker, settings=settings), of_maker, of_maker.ways[0]).whole()}

    assert [("Quotes!I2", False), ("[schedule] proof_days", False), ("assumed: common practice, no source", True)] == [
        (steps[name].source, steps[name].assumed) for name in ("production", "proof drawn", "clearance")
    ]


def test_days_kept_spare_are_those_of_the_way():
    air = maker("Fernhill", replace(way(), way="air"))
    (spare,) = Chain(inputs(air), air, air.ways[0]).spare()

    assert (3, True) == (spare.days.late, spare.assumed)


def test_of_a_sample_that_has_come_only_looking_at_it_is_left():
    here = SampleUnderWay(number=1, asked_on=date(2026, 11, 2), received_on=date(2026, 11, 22))

    assert ["sample looked at", "proof drawn"] == names(maker("Fernhill", sample=here))[:2]


def test_of_a_sample_asked_for_what_is_left_is_counted_from_that_day():
    """Asked for on Friday 20 November 2026: of the usual 10 working days 3 are over on Wednesday the 25th."""
    asked = maker("Fernhill", sample=SampleUnderWay(number=1, asked_on=date(2026, 11, 20)))
    chain = Chain(inputs(asked), asked, asked.ways[0])
    made, posted, _ = chain.samples()

    assert (7, chain.settings.sample_post_days) == (made.days.late, posted.days)
    assert placed_on((made, posted), AS_OF)[1] == chain.sample_due()


def test_a_round_beyond_the_sample_under_way_is_still_to_come():
    here = SampleUnderWay(number=1, received_on=date(2026, 11, 22))
    found = names(maker("Fernhill", sample=here), ScheduleSettings(sample_rounds=2))

    assert ["sample looked at", "sample made"] == found[:2]


@pytest.mark.parametrize(
    ("of_maker", "settings", "asks", "due"),
    [
        (maker(), None, True, None),
        (maker(), NO_SAMPLE, False, None),
        (maker(sampled=True), None, False, None),
        # 10 working days after Friday 20 November 2026 are over on 4 December, and 7 days in the post on the 11th
        (maker(sample=SampleUnderWay(number=1, asked_on=date(2026, 11, 20))), None, False, date(2026, 12, 11)),
        (maker(sample=SampleUnderWay(number=1, asked_on=date(2026, 11, 20))), NO_SAMPLE, False, None),
        (maker(sample=SampleUnderWay(number=1, asked_on=date(2026, 11, 20)), sampled=True), None, False, None),
        (maker(sample=SampleUnderWay(number=1)), None, False, None),
        (maker(sample=SampleUnderWay(number=1, received_on=AS_OF)), None, False, None),
        (maker(sample=SampleUnderWay(number=1, asked_on=AS_OF, received_on=AS_OF)), None, False, None),
    ],
)
def test_a_sample_is_asked_for_where_none_is_under_way_and_due_once_it_was_asked_for(of_maker, settings, asks, due):
    chain = Chain(inputs(of_maker, settings=settings), of_maker, of_maker.ways[0])

    assert (asks, due) == (chain.asks_for_sample, chain.sample_due())


def test_a_sample_beyond_the_rounds_that_were_planned_adds_none():
    here = SampleUnderWay(number=3, received_on=AS_OF)

    assert ["sample looked at", "proof drawn"] == names(maker(sample=here))[:2]


def test_each_step_takes_the_days_of_its_key():
    settings = ScheduleSettings(
        sample_days=Days(8, 9),
        sample_post_days=Days(2, 4),
        approval_days=5,
        proof_days=Days(1, 3),
        clearance_days=Days(0, 6),
        receiving_days=7,
        spare={"sea": 12},
    )
    of_maker = maker()
    steps = Chain(inputs(of_maker, settings=settings), of_maker, of_maker.ways[0]).whole()

    assert [(8, 9), (2, 4), (5, 5), (1, 3), (5, 5), (25, 25), (40, 40), (0, 6), (12, 12), (7, 7)] == [
        (step.days.low, step.days.high) for step in steps
    ]


def test_days_kept_spare_are_said_for_the_ways_that_the_file_names_alone():
    settings = ScheduleSettings(spare={"sea": 12}, given=frozenset({"spare_days"}))
    of_maker = maker("Fernhill", way(), way("air"))
    (sea,), (air,) = (Chain(inputs(of_maker, settings=settings), of_maker, times).spare() for times in of_maker.ways)

    assert [("[schedule] spare_days", False), ("assumed: common practice, no source", True)] == [
        (step.source, step.assumed) for step in (sea, air)
    ]
