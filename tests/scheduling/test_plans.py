"""Latest days to order, and what is too late."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from planned import AS_OF, NEED_BY, NO_SAMPLE, QUICK, inputs, maker, span, way

from scorecard.scheduling.calendars import Calendar, Doubt
from scorecard.scheduling.chain import Chain
from scorecard.scheduling.inputs import SampleUnderWay
from scorecard.scheduling.plans import plan_of
from scorecard.scheduling.settings import Days, ScheduleSettings
from scorecard.scheduling.steps import placed_on

SPRING = Calendar(country="CN", holidays={date(2027, 2, day): "Spring Festival" for day in range(5, 11)})


def plan(of_maker=None, settings=None, **more):
    of_maker = of_maker or maker()
    read = inputs(of_maker, settings=settings, **more)
    return plan_of(read, of_maker, of_maker.ways[0], more.get("need_by", NEED_BY))


def test_a_chain_worked_by_hand():
    """Back from Friday 14 May 2027, weekends alone free.

    Receiving 12 to 14 May; spare 1 to 11 May; clearance Monday 26 to Friday 30 April; 40 days of transit from 16 March;
    25 working days 10 February to 16 March; proof approved 8 and 9 February, drawn 4 and 5 February; ordered on
    Wednesday 3 February; sample looked at 2 and 3 February, in the post 25 January to 1 February; made 12 to 25
    January; asked for on Monday 11 January.
    """
    found = plan()

    assert (date(2027, 1, 11), date(2027, 2, 3), date(2027, 3, 16), date(2027, 5, 11)) == (
        found.begin_by,
        found.order_by,
        found.ship_by,
        found.door_by,
    )


def test_a_spring_holiday_moves_the_latest_day_to_order():
    """By hand: closed 30 January to 17 February.

    19 working days from 18 February to 16 March and 6 from 22 to 29 January are the 25 of production; proof approved 20
    and 21 January, drawn 18 and 19; ordered on Friday the 15th.
    """
    found = plan(maker("Fernhill", calendar=SPRING.with_stops(6, 5, 7)))

    assert (date(2027, 2, 3), date(2027, 1, 15)) == (found.order_by_without_holidays, found.order_by)


def test_stops_beside_a_holiday_move_it_further():
    plain = plan(maker("Fernhill", calendar=SPRING))
    stopped = plan(maker("Fernhill", calendar=SPRING.with_stops(6, 5, 7)))

    assert plain.order_by > stopped.order_by


@given(st.integers(0, 40), st.integers(0, 60), st.integers(0, 3), st.dates(date(2027, 1, 10), date(2027, 6, 30)))
def test_begun_on_its_last_day_it_is_in_time_and_a_working_day_later_it_is_not(production, transit, rounds, need_by):
    """A second computation, forwards; with the order on a day on which the maker works."""
    of_maker = maker("Fernhill", way(production=(production,), transit=(transit,)), calendar=SPRING)
    settings = ScheduleSettings(sample_rounds=rounds)
    found, read = plan(of_maker, settings, need_by=need_by), inputs(of_maker, settings=settings)
    chain = Chain(read, of_maker, of_maker.ways[0])
    next_day = SPRING.after(found.order_by, 1)

    assert placed_on(chain.from_order(), found.order_by)[1] <= need_by
    assert placed_on(chain.from_order(), next_day)[1] > need_by
    assert placed_on(chain.samples(), found.begin_by)[1] <= found.order_by


@pytest.mark.parametrize(
    ("as_of", "status"),
    [
        (date(2027, 1, 11), "in time"),
        (date(2027, 1, 12), "no time for a sample"),
        (date(2027, 2, 3), "no time for a sample"),
        (date(2027, 2, 4), "only if all goes quickly"),
        (date(2027, 4, 30), "too late"),
    ],
)
def test_what_is_too_late_follows_the_day(as_of, status):
    quickly = way(production=(5, 25), transit=(25, 40))

    assert status == plan(maker("Fernhill", quickly), as_of=as_of).status


def test_slack_is_counted_from_today_to_the_first_step():
    found = plan()

    assert [(date(2027, 1, 11) - AS_OF).days, (date(2027, 2, 3) - AS_OF).days] == [
        found.slack_days,
        found.order_slack_days,
    ]


def test_without_a_sample_the_first_step_is_the_order():
    found = plan(settings=NO_SAMPLE)

    assert found.begin_by == found.order_by


def test_the_order_falls_on_a_day_on_which_the_maker_works():
    found = plan(maker("Fernhill", way(production=(1,), transit=(1,))), QUICK, need_by=date(2026, 12, 8))

    assert date(2026, 12, 4) == found.order_by  # Tuesday 8: under way since Monday, made on Monday, ordered on Friday


def test_where_the_days_hold_the_journey_there_is_no_day_of_leaving():
    assert plan(maker("Fernhill", way(transit=None, up_to="at the door", counts="days"))).ship_by is None


def test_days_to_the_door_count_production_and_transit():
    found = plan(maker("Fernhill", way(production=(5, 10), transit=(3, 7))), QUICK)

    assert Days(7 + 3, 14 + 7) == found.days_to_door  # 5 and 10 working days are 7 and 14 days


def test_an_open_end_leaves_days_to_the_door_open():
    open_end = replace(way(), production=replace(way().production, days=Days(30, None)))

    assert plan(maker("Fernhill", open_end)).days_to_door.high is None


@given(st.integers(0, 30), st.integers(0, 30))
def test_more_days_of_production_never_give_a_later_last_day(first, more):
    shorter, longer = (
        plan(maker("Fernhill", way(production=(days,)), calendar=SPRING)) for days in (first, first + more)
    )

    assert longer.order_by <= shorter.order_by


def test_a_plan_may_be_another_makers_that_is_alike():
    other = maker("Brightholm")

    assert "Brightholm" == plan().of_maker(other).maker.maker


def test_a_need_by_date_at_the_beginning_of_all_calendars_does_no_harm():
    assert date.min == plan(need_by=date.min + timedelta(days=20)).begin_by


def test_a_plan_is_said_where_anybody_has_said_any_days():
    assumed = replace(way(), production=replace(way().production, assumed=True), transit=None)

    assert [True, False] == [plan().is_said, plan(maker("Fernhill", assumed)).is_said]
    assert span(1) == Days(1, 1)


def test_what_a_plan_rests_on_stands_beside_its_status():
    assumed = replace(way(), transit=replace(way().transit, assumed=True))
    open_end = replace(way(), production=replace(way().production, days=Days(30, None)))

    assert ["in time", "in time, by usual days", "in time, if it takes the least quoted"] == [
        plan(maker("Fernhill", one)).standing for one in (way(), assumed, open_end)
    ]


@pytest.mark.parametrize(
    ("as_of", "left", "act_by"),
    [
        (date(2027, 1, 10), 1, date(2027, 1, 11)),
        (date(2027, 1, 12), 22, date(2027, 2, 3)),
        (date(2027, 2, 4), -1, date(2027, 2, 3)),
    ],
)
def test_days_left_are_those_to_the_next_thing_that_can_be_done(as_of, left, act_by):
    found = plan(as_of=as_of)

    assert (left, act_by) == (found.days_left, found.act_by)


def test_a_sample_asked_for_is_not_asked_for_again():
    found = plan(maker("Fernhill", sample=SampleUnderWay(number=1, asked_on=date(2026, 11, 20))))

    assert ("in time", found.order_by) == (found.status, found.begin_by)


def test_a_sample_that_comes_too_late_to_be_looked_at_leaves_no_time_for_it():
    """Ordered by 3 February 2027; looked at on the 2nd and 3rd, so that it must be here on Monday the 1st."""
    here = maker("Fernhill", sample=SampleUnderWay(number=1, received_on=date(2027, 1, 29)))

    assert ["in time", "no time for a sample"] == [
        plan(here, as_of=day).status for day in (date(2027, 2, 1), date(2027, 2, 2))
    ]


def test_the_holidays_of_the_buyer_move_the_latest_day_to_order_too():
    """By hand: the proof is approved on 8 and 9 February 2027, so with the 8th closed on Friday the 5th and the 9th."""
    found = plan(buyer=Calendar(country="IE", holidays={date(2027, 2, 8): "A Monday"}))

    assert (date(2027, 2, 3), date(2027, 2, 2)) == (found.order_by_without_holidays, found.order_by)


@pytest.mark.parametrize(
    ("as_of", "status"),
    [
        (date(2027, 1, 8), "in time"),
        (date(2027, 1, 9), "no time for a sample"),
        (date(2027, 1, 10), "no time for a sample"),
    ],
)
def test_a_sample_is_asked_for_by_a_day_on_which_the_maker_works(as_of, status):
    """As worked by hand above, but the sample is made in 11 working days, from Monday 11 to 25 January 2027.

    It must be asked for by the end of Sunday the 10th, so by Friday the 8th.
    """
    found = plan(settings=ScheduleSettings(sample_days=Days(11, 11)), as_of=as_of)

    assert (date(2027, 1, 8), status) == (found.begin_by, found.status)


def test_begun_today_all_is_over_at_the_late_end_of_every_step():
    """By hand from Wednesday 25 November 2026, weekends alone free.

    Sample made by 9 December, here on the 16th, looked at by the 18th; proof drawn by the 22nd, approved by the 24th;
    25 working days to 28 January 2027; 40 days to 9 March; cleared by the 16th; spare to the 26th; packed by the 31st.
    """
    assert date(2027, 3, 31) == plan().ready_if_begun_now


@pytest.mark.parametrize(
    ("day", "is_told"),
    [
        (date(2027, 2, 7), False),
        (date(2027, 2, 8), True),  # the proof is approved on 8 and 9 February, the first of your own steps
        (NEED_BY, True),
        (date(2027, 5, 15), False),
    ],
)
def test_the_holidays_of_the_buyer_are_doubted_from_the_first_of_its_own_steps_on(day, is_told):
    doubt = Doubt(kind="estimated", country="IE", text="…", days=(day,))
    found = plan(settings=NO_SAMPLE, buyer=Calendar(country="IE", doubts=(doubt,)))

    assert ((doubt,) if is_told else ()) == found.doubts


def test_where_no_step_is_the_buyers_its_holidays_are_not_doubted():
    doubt = Doubt(kind="no data", country="IE", text="…")

    assert () == plan(settings=QUICK, buyer=Calendar(country="IE", doubts=(doubt,))).doubts


@pytest.mark.parametrize(("reach", "is_nearby"), [("border", False), ("own country", True)])
def test_a_plan_says_by_which_way_and_whether_from_nearby(reach, is_nearby):
    found = plan(maker("Fernhill", way("air"), reach=reach))

    assert ("air", is_nearby) == (found.way, found.is_nearby)
