"""How a way stands, in the words that everything shows."""

from dataclasses import replace
from datetime import date

import pytest
from quoted import timing

from scorecard.costing.timing import STATUSES, begin_words, late_words, next_day, standing_words, status_on

BEGIN, ORDER, QUICKLY = date(2027, 1, 11), date(2027, 2, 3), date(2027, 3, 1)


@pytest.mark.parametrize(
    ("as_of", "status"),
    [
        (BEGIN, "in time"),
        (date(2027, 1, 12), "no time for a sample"),
        (ORDER, "no time for a sample"),
        (date(2027, 2, 4), "only if all goes quickly"),
        (QUICKLY, "only if all goes quickly"),
        (date(2027, 3, 2), "too late"),
    ],
)
def test_the_first_thing_to_do_decides(as_of, status):
    assert status == status_on(as_of, BEGIN, ORDER, QUICKLY)


def test_the_next_day_is_that_of_the_sample_while_there_is_time_for_one():
    assert [BEGIN, ORDER, ORDER, ORDER] == [next_day(status, BEGIN, ORDER) for status in STATUSES]
    assert [date(2026, 11, 30), *[date(2026, 12, 20)] * 3] == [timing(status).act_by for status in STATUSES]


@pytest.mark.parametrize(
    ("rests_on", "words"),
    [("", "in time"), ("usual days", "in time, by usual days"), ("open days", "in time, if it takes the least quoted")],
)
def test_what_a_verdict_rests_on_is_said(rests_on, words):
    assert words == standing_words("in time", rests_on)


def test_by_when_to_begin_is_said_as_it_stands():
    assert [
        "ask for a sample by 30 November 2026 and order by 20 December 2026",
        "order by 20 December 2026, without a sample",
        "the order was due by 20 December 2026; if all goes quickly there is time until 30 December 2026",
        "the order was due by 20 December 2026",
    ] == [begin_words(timing(status)) for status in STATUSES]


def test_where_no_sample_is_to_be_asked_for_only_the_order_is_due():
    unsampled = replace(timing(), begin_by=timing().order_by)

    assert "order by 20 December 2026" == begin_words(unsampled)


def test_what_is_in_time_is_not_said_to_be_late():
    assert ["", "ordered today it is too late for X"] == [late_words(one, "X") for one in ("in time", "too late")]
