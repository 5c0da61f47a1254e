"""What the schedule says of quoted makers and ways: the same as its plans."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st
from planned import AS_OF, NEED_BY, inputs, maker, way

from scorecard.scheduling.calendars import Calendar
from scorecard.scheduling.plans import plan_of
from scorecard.scheduling.timed import timings

SPRING = Calendar(country="CN", holidays={date(2027, 2, day): "Spring Festival" for day in range(5, 11)})
BOTH = maker("Fernhill", way(), way("air", transit=(15, 15)), calendar=SPRING)


@given(st.dates(date(2026, 11, 1), date(2027, 5, 20)), st.integers(0, 60), st.integers(0, 60))
def test_what_it_says_of_a_way_is_what_its_plan_says(as_of, least, more):
    of_maker = maker("Fernhill", way(production=(least, least + more)), calendar=SPRING)
    read = inputs(of_maker, as_of=as_of)
    plan, found = plan_of(read, of_maker, of_maker.ways[0], NEED_BY), timings(read, ["Fernhill"])["Fernhill", "sea"]

    assert (plan.status, plan.begin_by, plan.order_by, plan.order_by_quickly, plan.act_by) == (
        found.status,
        found.begin_by,
        found.order_by,
        found.quickly_by,
        found.act_by,
    )


def test_makers_of_which_nothing_is_known_have_none():
    assert {("Fernhill", "sea"), ("Fernhill", "air"), ("Fernhill", None)} == set(
        timings(inputs(BOTH, maker("Brightholm")), ["Fernhill", "Nobody"])
    )


def test_a_quote_that_names_no_way_stands_as_the_slowest():
    found = timings(inputs(BOTH), ["Fernhill"])

    assert found["Fernhill", "sea"] is found["Fernhill", None]


def test_without_a_need_by_date_there_is_nothing_to_say():
    assert {} == timings(inputs(need_by=None), ["Fernhill"])


def test_makers_alike_in_every_day_share_the_work():
    calendar = Calendar()
    found = timings(inputs(*(maker(name, calendar=calendar) for name in ("Ash", "Birch"))), ["Ash", "Birch"])

    assert found["Ash", "sea"] is found["Birch", "sea"]


def test_begun_today_it_takes_the_days_of_the_chain():
    """By hand from Wednesday 25 November 2026, weekends alone free.

    Sample made over 10 working days, 9 December; 7 days in the post, 16 December; looked at on Thursday and Friday, 18
    December. Proof drawn 21 and 22, approved 23 and 24 December. 25 working days, 25 December to 28 January; 40 days,
    9 March; 5 working days of clearance, 16 March; 10 days spare, 26 March; 3 working days from Monday, 31 March.
    """
    course = timings(inputs(maker()), ["Fernhill"])["Fernhill", "sea"].course

    assert (True, date(2026, 12, 18), date(2027, 1, 28), date(2027, 3, 16), date(2027, 3, 31)) == (
        course.with_sample,
        course.ordered_on,
        course.sent_on,
        course.door_on,
        course.ready_on,
    )


@given(st.dates(date(2026, 11, 1), date(2027, 1, 11)))
def test_while_it_is_in_time_it_is_ready_by_the_need_by_date(as_of):
    read = inputs(maker(), as_of=as_of)
    plan = plan_of(read, maker(), maker().ways[0], NEED_BY)

    assert NEED_BY >= timings(read, ["Fernhill"])["Fernhill", "sea"].course.ready_on == plan.ready_if_begun_now


def test_without_time_for_a_sample_the_order_goes_out_today():
    late = date(2027, 1, 12)
    course = timings(inputs(maker(), as_of=late), ["Fernhill"])["Fernhill", "sea"].course

    assert (False, late) == (course.with_sample, course.ordered_on)


def test_where_the_days_hold_the_journey_nobody_knows_when_it_is_sent():
    to_the_door = way(transit=None, up_to="at the door", counts="days")

    assert timings(inputs(maker("Ash", to_the_door)), ["Ash"])["Ash", "sea"].course.sent_on is None


@pytest.mark.parametrize(
    ("part", "rests_on"), [("production", "usual days"), ("transit", "usual days"), (None, "")], ids=str
)
def test_days_that_nobody_has_said_are_named_as_what_it_rests_on(part, rests_on):
    times = way() if part is None else replace(way(), **{part: replace(getattr(way(), part), assumed=True)})

    assert rests_on == timings(inputs(maker("Ash", times), as_of=AS_OF), ["Ash"])["Ash", "sea"].rests_on
