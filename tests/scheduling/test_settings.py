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


def test_from_nearer_no_way_takes_longer():
    """Common practice, no source."""
    late = [[table[way].late for way in WAYS] for table in (*NEAR_TRANSIT.values(), USUAL_TRANSIT)]

    assert all(own <= near <= far for own, near, far in zip(*late, strict=True))


def test_plans_take_the_late_end_and_the_low_end_of_an_open_range():
    assert [5, 30] == [Days(1, 5).late, Days(30, None).late]


def test_part_days_count_as_whole():
    assert Days(3, None) == Days.of(Span(Span.of("2.5").low, None))


@pytest.mark.parametrize(("low", "high"), [(-1, 2), (3, 2)])
def test_days_are_at_least_0_and_in_order(low, high):
    with pytest.raises(ValueError, match="0 or more"):
        Days(low, high)


def test_a_key_that_is_given_is_named_and_any_other_is_assumed():
    settings = ScheduleSettings(given=frozenset({"proof_days"}), source="my last two orders")

    assert ["[schedule] proof_days (my last two orders)", "assumed: common practice, no source"] == [
        settings.origin("proof_days"),
        settings.origin("sample_days"),
    ]
