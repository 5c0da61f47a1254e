"""The schedule, whole."""

from datetime import date

from planned import AS_OF, NO_SAMPLE, inputs, maker, order, way

from scorecard.scheduling.calendars import Calendar
from scorecard.scheduling.schedule import WayOut, schedule_of
from scorecard.scheduling.settings import ScheduleSettings

ROAD = way("road", production=(15, 15), transit=(5, 5))
AIR = way("air", transit=(15, 15))
FAR = maker("Fernhill", way(), AIR)
NEAR = maker("Brightholm", ROAD, reach="no border")


def test_every_maker_has_a_plan_for_every_way():
    found = schedule_of(inputs(FAR, NEAR))

    assert [("Fernhill", "sea"), ("Fernhill", "air"), ("Brightholm", "road")] == [
        (plan.maker.maker, plan.way) for plan in found.plans
    ]


def test_by_sea_it_may_be_too_late_and_by_air_not():
    found = schedule_of(inputs(FAR, settings=NO_SAMPLE, as_of=date(2027, 2, 20)))

    assert ["too late", "in time"] == [plan.status for plan in found.plans]


def test_a_maker_that_fails_a_limit_has_no_plan():
    found = schedule_of(inputs(FAR, NEAR), ruled_out=["Fernhill"])

    assert ({"Brightholm"}, ("Fernhill",)) == ({plan.maker.maker for plan in found.plans}, found.ruled_out)


def test_makers_alike_in_every_day_share_the_work_and_keep_their_names():
    calendar = Calendar()
    makers = [maker(name, calendar=calendar) for name in ("Fernhill", "Brightholm")]
    found = schedule_of(inputs(*makers))

    assert (["Fernhill", "Brightholm"], True) == (
        [plan.maker.maker for plan in found.plans],
        found.plans[0].steps is found.plans[1].steps,
    )


def test_without_a_need_by_date_there_are_orders_and_no_plans():
    found = schedule_of(inputs(FAR, need_by=None, orders=[order(ordered=AS_OF)]))

    assert (0, 1, {}) == (len(found.plans), len(found.orders), found.ways_out)


def test_the_last_day_to_complain_that_comes_first_stands_first():
    days = [None, date(2027, 2, 1), date(2026, 12, 1)]
    orders = [order(row=2 + at, complain_until=day) for at, day in enumerate(days)]

    assert [4, 3, 2] == [one.order.row for one in schedule_of(inputs(FAR, orders=orders)).orders]


def test_orders_of_which_nothing_is_to_come_are_left_out():
    done = order(arrived=AS_OF, balance_paid=AS_OF)

    assert () == schedule_of(inputs(FAR, orders=[done])).orders


def test_one_can_turn_to_the_nearby_maker_until_its_own_last_day():
    found = schedule_of(inputs(FAR, NEAR))
    near = found.plans_of("Brightholm")[0]

    assert (
        WayOut(day=near.order_by, days_left=near.order_slack_days, maker="Brightholm", way="road")
        == found.ways_out["Fernhill"]
    )


def test_a_nearby_maker_is_no_way_out_of_itself():
    assert found_out(FAR, NEAR)["Brightholm"].maker is None


def found_out(*makers):
    return schedule_of(inputs(*makers)).ways_out


def test_without_a_nearby_maker_the_usual_days_stand_in():
    """By hand: 25 and 3 working days back from Friday 14 May 2027 begin on 7 April; the order is due the day before."""
    assert WayOut(day=date(2027, 4, 6), days_left=132) == found_out(FAR)["Fernhill"]


def test_usual_days_nearby_can_be_set():
    found = schedule_of(inputs(FAR, settings=ScheduleSettings(nearby_days=0, receiving_days=1)))

    assert date(2027, 5, 13) == found.ways_out["Fernhill"].day


def test_of_nearby_makers_the_one_that_takes_an_order_the_latest_is_the_way_out_of_all_others():
    quick = maker("Kelmarsh", way("road", production=(5, 5), transit=(5, 5)), reach="own country")

    for near in ((NEAR, quick), (quick, NEAR)):
        assert {"Fernhill": "Kelmarsh", "Brightholm": "Kelmarsh", "Kelmarsh": "Brightholm"} == {
            name: one.maker for name, one in found_out(FAR, *near).items()
        }


def test_orders_of_one_last_day_to_complain_or_of_none_stand_as_on_the_sheet():
    days = (None, date(2026, 11, 20), AS_OF, None, date(2026, 11, 20), AS_OF)
    orders = [order(row=7 - at, complain_until=day) for at, day in enumerate(days)]

    assert [2, 5, 4, 7, 3, 6] == [one.order.row for one in schedule_of(inputs(FAR, orders=orders)).orders]


def test_a_last_day_to_complain_that_is_over_stands_behind_those_to_come():
    days = (date(2026, 11, 20), None, date(2026, 12, 9), AS_OF)
    orders = [order(row=2 + at, complain_until=day) for at, day in enumerate(days)]

    assert [5, 4, 3, 2] == [one.order.row for one in schedule_of(inputs(FAR, orders=orders)).orders]
