"""Steps placed backwards and forwards."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.scheduling.calendars import Calendar
from scorecard.scheduling.settings import Days
from scorecard.scheduling.steps import Step, placed_back, placed_on, still_to_come

FREE = {date(2027, 2, day): "Spring Festival" for day in range(5, 11)}
CALENDARS = (None, Calendar(), Calendar(holidays=FREE), Calendar(weekend=frozenset({4, 5})))


@st.composite
def steps(draw):
    """Return up to five steps of up to 20 days, by several calendars."""
    found = []
    for _ in range(draw(st.integers(1, 5))):
        low = draw(st.integers(0, 10))
        days = Days(low, low + draw(st.integers(0, 10)))
        found.append(Step(name="production", days=days, counted="days", calendar=draw(st.sampled_from(CALENDARS))))
    return found


@given(steps(), st.dates(date(2027, 1, 15), date(2027, 4, 30)), st.sampled_from(["late", "early"]))
def test_going_back_gives_the_last_day_from_which_going_on_is_in_time(chain, by, end):
    """A second computation: forwards from that day it is in time, from the next day it is not."""
    start = placed_back(chain, by, end)[1]

    assert placed_on(chain, start, end)[1] <= by < placed_on(chain, start + timedelta(days=1), end)[1]


def test_a_working_day_handed_over_on_a_friday_is_over_on_monday():
    step = Step(name="proof drawn", days=Days(1, 1), counted="the maker's working days", calendar=Calendar())
    ((placed,), over) = placed_on([step], date(2026, 11, 20))

    assert (date(2026, 11, 23), date(2026, 11, 23), date(2026, 11, 23)) == (placed.first, placed.last, over)


def test_days_of_a_journey_count_from_the_day_on_which_it_sets_out():
    step = Step(name="transit", days=Days(30, 40), counted="days")
    ((placed,), sets_out) = placed_back([step], date(2027, 4, 25))

    assert (date(2027, 3, 16), date(2027, 4, 25), date(2027, 3, 16)) == (placed.first, placed.last, sets_out)


def test_steps_of_no_days_are_left_out():
    step = Step(name="clearance", days=Days(0, 0), counted="days")

    assert ((), date(2027, 1, 1)) == placed_back([step], date(2027, 1, 1))


def test_nothing_is_kept_spare_when_all_goes_quickly():
    step = Step(name="kept spare", days=Days(10, 10), counted="days")

    assert [10, 0] == [step.lasting("late"), step.lasting("early")]


def test_a_step_names_the_closures_that_it_runs_across():
    step = Step(name="production", days=Days(5, 5), counted="days", calendar=Calendar(holidays=FREE))
    ((placed,), _) = placed_on([step], date(2027, 2, 2))

    assert [(date(2027, 2, 5), date(2027, 2, 10))] == [(one.first, one.last) for one in placed.closures]


def test_closed_days_between_the_end_of_a_step_and_the_day_it_is_due_are_named():
    # due on Monday 9 March 2026, of which the week before is closed: over on Friday 27 February
    closed = {date(2026, 3, day): "a week off" for day in range(2, 10)}
    step = Step(
        name="production", days=Days(5, 5), counted="the maker's working days", calendar=Calendar(holidays=closed)
    )
    (placed,), _ = placed_back([step], date(2026, 3, 9))

    assert (date(2026, 2, 27), ["a week off"]) == (placed.last, [one.names[0] for one in placed.closures])


MADE = Step(name="sample made", days=Days(5, 10), counted="the maker's working days", calendar=Calendar())
POSTED = Step(name="sample in the post", days=Days(3, 7), counted="days")


@pytest.mark.parametrize(
    ("today", "made", "posted"),
    [
        # begun on Friday 20 November 2026: made by the 27th or 4 December, here by 30 November or 11 December
        (date(2026, 11, 19), (5, 10), (3, 7)),
        (date(2026, 11, 20), (5, 10), (3, 7)),
        (date(2026, 11, 22), (5, 10), (3, 7)),  # a Sunday
        (date(2026, 11, 25), (2, 7), (3, 7)),
        (date(2026, 11, 27), (0, 5), (3, 7)),
        (date(2026, 11, 29), (0, 5), (1, 7)),
        (date(2026, 12, 3), (0, 1), (0, 7)),
        (date(2026, 12, 9), (0, 0), (0, 2)),
        (date(2026, 12, 12), (0, 0), (0, 0)),
    ],
)
def test_of_steps_under_way_the_days_after_today_are_left(today, made, posted):
    left = still_to_come((MADE, POSTED), date(2026, 11, 20), today)

    assert (replace(MADE, days=Days(*made)), replace(POSTED, days=Days(*posted))) == left


def test_an_open_end_stays_open_while_a_step_is_under_way():
    (left,) = still_to_come((replace(POSTED, days=Days(5, None)),), date(2026, 11, 20), date(2026, 11, 22))

    assert Days(3, None) == left.days


def test_a_step_that_is_never_over_has_all_its_days_left():
    never = replace(MADE, calendar=Calendar(weekend=frozenset(range(7))))
    (left,) = still_to_come((never,), date(2026, 11, 20), date(2026, 11, 25))

    assert MADE.days == left.days


def test_days_of_a_step_are_said_unless_they_are_called_assumed():
    assert (False, "") == (MADE.assumed, MADE.source)
