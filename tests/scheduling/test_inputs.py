"""What a schedule is worked out from."""

from scorecard.scheduling.inputs import usual_production, usual_transit
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
