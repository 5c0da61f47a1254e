"""By when to order, on the page."""

from dataclasses import replace
from datetime import UTC, date, datetime
from itertools import pairwise

import pytest
from cases import AS_OF, rated
from planned import NEED_BY, inputs, maker, order, way

from scorecard.assessment import assess
from scorecard.report.extent import ROOMS
from scorecard.report.page import page
from scorecard.report.schedule import ScheduleView, schedule_of_page
from scorecard.report.texts import bare
from scorecard.scheduling.calendars import Calendar

MADE = datetime(2026, 11, 25, 12, tzinfo=UTC)
AIR = way("air", transit=(15, 15))


def assessed(*makers, as_of=AS_OF, orders=(), need_by=NEED_BY):
    makers = makers or (maker("Fernhill", way(), AIR),)
    case = rated((1,), {one.maker: [100 - at] for at, one in enumerate(makers)})
    return assess(replace(case, schedule=inputs(*makers, orders=orders, need_by=need_by)), as_of=as_of)


def view(*makers, **more):
    return schedule_of_page(assessed(*makers, **more))


def html(assessment):
    return page(assessment, assessment.as_json(), made=MADE)


def test_without_a_schedule_nothing_stands_on_the_page():
    case = rated((1,), {"Fernhill": [1]})

    assert ScheduleView() == schedule_of_page(assess(case, as_of=AS_OF))
    assert "By when to order" not in html(assess(case, as_of=AS_OF))


def test_each_maker_and_way_has_a_row():
    first, second = view().rows

    assert (("by sea", "11 January 2027", "3 February 2027", "47", "in time"), "by air") == (
        (first.way, first.sample_by, first.order_by, first.left, first.status),
        second.way,
    )


def test_a_time_line_runs_on_without_a_gap_to_the_need_by_date():
    line = view().rows[0].line

    assert (["sample", "work", "journey", "rest"], True, "100%") == (
        [part.look for part in line],
        all(earlier.end == later.start for earlier, later in pairwise(line)),
        line[-1].end,
    )


def test_the_dot_stands_where_the_order_falls():
    row = view().rows[0]
    days = (date(2027, 2, 3) - AS_OF).days / (NEED_BY - AS_OF).days

    assert (f"{100 * days:.2f}%", row.line[1].start) == (row.order_at, row.order_at)


def test_what_is_too_late_has_no_line():
    row = view(as_of=date(2027, 3, 1)).rows[0]

    assert ((), None) == (row.line, row.order_at)


def test_days_that_hold_the_journey_have_no_stretch_for_it():
    line = view(maker("Fernhill", way(transit=None, up_to="at the door", counts="days"))).rows[0].line

    assert ["sample", "work", "rest"] == [part.look for part in line]


def test_the_chain_of_a_plan_ends_in_the_first_thing_to_do():
    chain = view().chains[0]

    assert ("Receiving and packing", "Ask for the sample by 11 January 2027.") == (
        chain.steps[0].split(",")[0],
        chain.steps[-1],
    )


def test_chains_are_those_of_makers_that_have_said_any_days():
    said = way()
    silent = replace(said, production=replace(said.production, assumed=True), transit=None)
    found = view(maker("Fernhill", silent), maker("Brightholm"))

    assert ["Brightholm"] == [bare(chain.said).split(" by ")[0] for chain in found.chains]


def test_a_page_holds_so_many_plans_and_chains():
    plans, chains = ROOMS[0].plans, ROOMS[0].chains
    found = view(*(maker(f"Maker {at}") for at in range(plans + 3)))

    assert (plans, 3, chains, plans + 3 - chains) == (
        len(found.rows),
        found.left,
        len(found.chains),
        found.chains_left,
    )


def test_the_last_day_to_complain_stands_first_on_the_page():
    orders = [order(row=2, ordered=AS_OF), order(row=3, ordered=AS_OF, complain_until=date(2026, 12, 1))]
    first, second = view(orders=orders).orders

    assert ("Last day to complain: 1 December 2026 (6 days from today)", "No last day to complain") == (
        first[0].split(";")[0],
        second[0].split(" is ")[0],
    )


@pytest.mark.parametrize("sign", ["\u2068", "\u202e", "<b>"])
def test_nothing_of_the_users_turns_the_page_around(sign):
    calendar = Calendar(holidays={}, stops={date(2027, 2, 22): f"why{sign}not"})
    whose = f"Fern{sign}hill"
    assessment = assessed(maker(whose, calendar=calendar), orders=[order(maker=whose, ordered=AS_OF)])
    made = html(assessment)

    assert made.count("<bdi>") == made.count("</bdi>")
    assert (False, True) == (f"why{sign}not" in made, "By when to order" in made)


def test_the_page_says_that_nothing_is_promised():
    assert "No date here is a promise" in html(assessed())


def test_the_steps_drawn_first_are_those_of_makers_too_late_by_one_way_alone():
    makers = [maker(f"Ash {at}", way("air", transit=(5, 5))) for at in range(ROOMS[0].chains)]
    split = maker("Tansy", way("sea", transit=(900, 900)), way("air", transit=(5, 5)))
    found = view(*makers, split)

    assert ["Tansy by sea", "Tansy by air"] == [bare(chain.said).split(":")[0] for chain in found.chains[-2:]]
    assert (ROOMS[0].chains, 2) == (len(found.chains), found.chains_left)


def test_orders_that_have_arrived_stand_apart_from_those_under_way():
    orders = [order(row=2, ordered=date(2026, 9, 1), arrived=date(2026, 11, 1)), order(row=3, ordered=AS_OF)]
    found = view(orders=orders)
    made = html(assessed(orders=orders))

    assert (1, 1) == (len(found.orders), len(found.arrived))
    assert made.index("Orders under way</h3>") < made.index("Orders that have arrived</h3>")
