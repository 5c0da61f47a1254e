"""Days per step where nobody has said."""

import pytest

from scorecard.costing.amounts import Span
from scorecard.costing.quotes import WAYS
from scorecard.scheduling.settings import (
    NEAR_TRANSIT,
    TRANSIT_SOURCES,
    USUAL_SPARE,
    USUAL_TRANSIT,
    Days,
    ScheduleSettings,
)


def test_every_way_has_usual_days_with_a_source():
    assert [set(WAYS)] * 3 == [set(table) for table in (USUAL_TRANSIT, TRANSIT_SOURCES, USUAL_SPARE)]


@pytest.mark.parametrize(
    ("way", "least", "most"),
    [("express", 2, 7), ("air", 3, 15), ("sea", 25, 40), ("rail", 18, 40)],
)
def test_usual_transit_is_that_of_carriers_pages(way, least, most):
    """China to Europe, door-ish, rail with its delays.

    climbtheladder.com, topshipping.co, 56ok.com, yunsongfreight.com, seen in November 2026; none of them official.
    """
    assert (least, most) == (USUAL_TRANSIT[way].low, USUAL_TRANSIT[way].high)


@pytest.mark.parametrize(
    ("table", "days"),
    [
        (USUAL_TRANSIT, {"road": (3, 10), "post": (7, 30)}),
        (
            NEAR_TRANSIT["own country"],
            {"sea": (3, 10), "air": (1, 4), "express": (1, 3), "rail": (2, 7), "road": (1, 5), "post": (1, 5)},
        ),
        (
            NEAR_TRANSIT["no border"],
            {"sea": (5, 21), "air": (2, 7), "express": (1, 4), "rail": (4, 14), "road": (3, 10), "post": (3, 12)},
        ),
    ],
)
def test_other_usual_days_of_transit_are_those_promised(table, days):
    """Common practice, no source."""
    assert days == {way: (table[way].low, table[way].high) for way in days}


def test_from_nearer_no_way_takes_longer():
    """Common practice, no source."""
    late = [[table[way].late for way in WAYS] for table in (*NEAR_TRANSIT.values(), USUAL_TRANSIT)]

    assert all(own <= near <= far for own, near, far in zip(*late, strict=True))


def test_plans_take_the_late_end_and_the_low_end_of_an_open_range():
    assert [5, 30] == [Days(1, 5).late, Days(30, None).late]


def test_days_kept_spare_are_those_set_for_a_way_or_the_usual():
    """Common practice, no source: more for what goes by ship or train."""
    usual = {"sea": 10, "rail": 10, "post": 5, "air": 3, "road": 3, "express": 3}
    some = ScheduleSettings(spare={"sea": 4})

    assert usual == {way: ScheduleSettings().spare_days(way) for way in WAYS}
    assert (4, 3) == (some.spare_days("sea"), some.spare_days("air"))


@pytest.mark.parametrize(
    ("key", "figure"),
    [
        ("receiving_days", 3),
        ("clearance_days", Days(1, 5)),
        ("production_days", Days(15, 25)),
        ("proof_days", Days(2, 2)),
        ("approval_days", 2),
        ("sample_rounds", 1),
        ("sample_days", Days(10, 10)),
        ("sample_post_days", Days(3, 7)),
        ("long_holiday_days", 6),
        ("stop_before_days", 5),
        ("stop_after_days", 7),
        ("nearby_days", 25),
    ],
)
def test_a_key_that_is_not_given_has_the_figure_that_the_list_of_keys_names(key, figure):
    """Common practice, no source."""
    assert figure == getattr(ScheduleSettings(), key)


def test_part_days_count_as_whole():
    assert Days(3, None) == Days.of(Span(Span.of("2.5").low, None))


@pytest.mark.parametrize(("low", "high"), [(-1, 2), (3, 2)])
def test_days_are_at_least_0_and_in_order(low, high):
    with pytest.raises(ValueError, match="0 or more"):
        Days(low, high)


def test_no_day_at_all_is_a_number_of_days():
    assert [0, 0, 3] == [Days(0, 0).late, Days(0, None).late, Days(0, 3).late]


def test_a_key_that_is_given_is_named_and_any_other_is_assumed():
    settings = ScheduleSettings(given=frozenset({"proof_days"}), source="my last two orders")

    assert ["[schedule] proof_days (my last two orders)", "assumed: common practice, no source"] == [
        settings.origin("proof_days"),
        settings.origin("sample_days"),
    ]
