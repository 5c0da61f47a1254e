"""The schedule as JSON, against its published schema."""

import json
from dataclasses import replace
from datetime import date
from itertools import pairwise

import jsonschema
import pytest
from planned import AS_OF, inputs, maker, order, way
from process import schema_of

from scorecard.scheduling.calendars import Calendar, Doubt
from scorecard.scheduling.inputs import SampleUnderWay
from scorecard.scheduling.schedule import schedule_of
from scorecard.scheduling.schedule_json import schedule_json
from scorecard.scheduling.settings import ScheduleSettings

CALENDAR = Calendar(
    country="CN",
    holidays={date(2027, 2, day): "Spring Festival" for day in range(5, 11)},
    doubts=(Doubt(kind="may be thin", country="CN", text="thin", year=2027),),
)
FAR = maker("Fernhill", way(), way("air", transit=(3, 15)), country="CN", calendar=CALENDAR.with_stops(6, 5, 7))
NEAR = maker("Brightholm", way("road", transit=None, up_to="at the door", counts="days"), reach="no border")


def result(**more):
    orders = [order(ordered=AS_OF), order(row=3, arrived=AS_OF, complain_until=date(2026, 12, 1))]
    found = schedule_json(schedule_of(inputs(FAR, NEAR, orders=orders, **more), ruled_out=more.get("out", ())))
    return json.loads(json.dumps(found, allow_nan=False))


@pytest.mark.parametrize("more", [{}, {"need_by": None}, {"settings": ScheduleSettings(sample_rounds=0)}])
def test_a_schedule_fits_its_schema(more):
    head = {"schema": "scorecard-dates/1", "title": "Mugs", "as_of": "2026-11-25", "warnings": []}

    jsonschema.validate(head | result(**more), schema_of("dates"))


def test_a_schedule_fits_the_schema_of_score_too():
    schema = schema_of("score")
    of_schedule = schema["$defs"]["result"]["properties"]["schedule"] | {"$defs": schema["$defs"]}

    jsonschema.validate(result(), of_schedule)


def test_each_figure_stands_with_its_working():
    sea = result()["plans"][0]
    production = next(step for step in sea["steps"] if step["step"] == "production")

    assert ("2027-01-15", "Quotes!I2", False, "2027-01-22", "2027-03-16", "2027-01-30", "2027-02-17") == (
        sea["order_by"],
        production["source"],
        production["assumed"],
        production["from"],
        production["to"],
        production["closed"][0]["from"],
        production["closed"][0]["to"],
    )


def test_the_steps_of_a_plan_join_up():
    steps = result()["plans"][0]["steps"]

    assert all(earlier["to"] <= later["from"] for earlier, later in pairwise(steps))


def test_a_way_out_names_the_maker_nearby():
    assert {"maker": "Brightholm", "way": "road"}.items() <= result()["plans"][0]["way_out"].items()


def test_notes_and_caution_are_there():
    found = result()

    assert ("may be thin", True) == (found["notes"][0]["kind"], "promise" in found["caution"])


def test_days_are_one_number_or_a_range():
    found = result()
    sea, air, _ = found["plans"]

    assert ([40, {"low": 3, "high": 15}], {"low": 1, "high": 5}, 10) == (
        [next(step["range"] for step in plan["steps"] if step["step"] == "transit") for plan in (sea, air)],
        found["settings"]["clearance_days"],
        found["settings"]["sample_days"],
    )


def test_a_sample_under_way_stands_with_the_day_it_should_come():
    """Asked for on Friday 20 November 2026: made by 4 December, here 7 days later."""
    under_way = replace(FAR, calendar=Calendar(), sample=SampleUnderWay(number=1, asked_on=date(2026, 11, 20)))

    assert [{"asked_on": "2026-11-20", "received_on": None, "expected_on": "2026-12-11"}, None] == [
        schedule_json(schedule_of(inputs(one)))["plans"][0]["sample"] for one in (under_way, FAR)
    ]
