"""What a schedule is worked out from."""

import pytest
from planned import AS_OF, maker, way

from scorecard.scheduling.calendars import Calendar
from scorecard.scheduling.inputs import Said, SampleUnderWay, WayTimes, likeness, usual_production, usual_transit
from scorecard.scheduling.settings import NEAR_TRANSIT, Days, ScheduleSettings


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


@pytest.mark.parametrize(
    ("name", "reach", "expected"),
    [
        ("road", "border", (Days(9, 9), "[schedule] transit", False)),
        ("road", "no border", (Days(2, 3), "[schedule] near_transit", False)),
        ("road", "own country", (Days(2, 3), "[schedule] near_transit", False)),
        ("post", "no border", (Days(6, 8), "[schedule] transit", False)),  # nothing nearer is given
        ("air", "own country", (NEAR_TRANSIT["own country"]["air"], "assumed: common practice, no source", True)),
        ("air", "no border", (NEAR_TRANSIT["no border"]["air"], "assumed: common practice, no source", True)),
    ],
)
def test_a_journey_takes_the_days_given_for_where_the_maker_is(name, reach, expected):
    settings = ScheduleSettings(
        transit={"road": Days(9, 9), "post": Days(6, 8)},
        near_transit={"road": Days(2, 3)},
        given=frozenset({"transit", "near_transit"}),
    )
    said = usual_transit(settings, name, reach)

    assert expected == (said.days, said.source, said.assumed)


SAID = Said(days=Days(1, 1), source="Quotes!I2")
OPEN = Said(days=Days(1, None), source="Quotes!I3")
USUAL = Said(days=Days(1, 1), source="assumed", assumed=True)


@pytest.mark.parametrize(
    ("production", "transit", "is_said", "rests_on"),
    [
        (SAID, SAID, True, ""),
        (SAID, None, True, ""),
        (OPEN, SAID, True, "open days"),
        (SAID, OPEN, True, "open days"),
        (OPEN, None, True, "open days"),
        (USUAL, SAID, True, "usual days"),
        (SAID, USUAL, True, "usual days"),
        (OPEN, USUAL, True, "usual days"),
        (USUAL, USUAL, False, "usual days"),
        (USUAL, None, False, "usual days"),
    ],
)
def test_a_way_rests_on_what_nobody_has_said_of_its_production_or_its_journey(production, transit, is_said, rests_on):
    times = WayTimes(way="sea", production=production, transit=transit)

    assert (is_said, rests_on) == (times.is_said, times.rests_on)


def test_of_a_way_whose_days_are_given_nothing_else_is_taken_for_assumed():
    times = WayTimes(way="sea", production=SAID, transit=SAID)

    # else the sentence about what nobody has said would name the way, or which days are meant
    assert (False, False) == (times.way_assumed, times.counts_assumed)


CALENDAR = Calendar()
ALIKE = {"calendar": CALENDAR}


@pytest.mark.parametrize(
    ("of_other", "times", "is_alike"),
    [
        (ALIKE, way(), True),
        (ALIKE | {"sampled": False}, way(), True),
        (ALIKE, way(transit=(39, 40)), False),
        (ALIKE | {"reach": "no border"}, way(), False),
        (ALIKE | {"sampled": True}, way(), False),
        (ALIKE | {"sample": SampleUnderWay(number=1, asked_on=AS_OF)}, way(), False),
        ({"calendar": Calendar(country="CN")}, way(), False),
    ],
)
def test_makers_are_alike_in_their_days_where_all_that_bears_on_them_is(of_other, times, is_alike):
    one, other = maker(**ALIKE), maker("Brightholm", **of_other)

    assert is_alike == (likeness(one, way()) == likeness(other, times))


@pytest.mark.parametrize(("reach", "nearby"), [("border", False), ("no border", True), ("own country", True)])
def test_a_maker_is_nearby_where_no_customs_border_is_crossed(reach, nearby):
    assert nearby is maker(reach=reach).nearby


def test_a_maker_has_said_something_where_one_of_its_ways_is_said():
    assumed = WayTimes(way="air", production=USUAL, transit=USUAL)

    assert (True, False) == (maker("Fernhill", assumed, way()).is_said, maker("Fernhill", assumed).is_said)
