"""What a schedule is worked out from."""

from planned import maker, way

from scorecard.scheduling.inputs import Said, WayTimes, usual_production, usual_transit
from scorecard.scheduling.settings import Days, ScheduleSettings


def test_usual_days_are_marked_as_assumed():
    said = usual_transit(ScheduleSettings(), "sea")

    assert (True, True) == (said.assumed, said.source.startswith("assumed: carriers"))


def test_days_of_the_criteria_file_are_not_assumed():
    settings = ScheduleSettings(
        transit={"sea": Days(33, 35)}, production_days=Days(9, 9), given=frozenset({"transit", "production_days"})
    )

    assert [(Days(33, 35), False), (Days(9, 9), False)] == [
        (said.days, said.assumed) for said in (usual_transit(settings, "sea"), usual_production(settings))
    ]


def test_a_maker_has_said_something_where_one_of_its_ways_is_said():
    usual = Said(days=Days(1, 1), source="assumed", assumed=True)
    assumed = WayTimes(way="air", production=usual, transit=usual)

    assert (True, False) == (maker("Fernhill", assumed, way()).is_said, maker("Fernhill", assumed).is_said)
