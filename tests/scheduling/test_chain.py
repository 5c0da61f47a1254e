"""The chain of steps of one maker and way."""

from dataclasses import replace

from planned import inputs, maker, way

from scorecard.scheduling.chain import Chain
from scorecard.scheduling.settings import ScheduleSettings


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
