"""Orders under way in sentences."""

from datetime import date

import pytest
from planned import AS_OF, NEED_BY, NO_SAMPLE, inputs, maker, order

from scorecard.scheduling.order_words import order_sentences
from scorecard.scheduling.progress import progress_of
from scorecard.scheduling.schedule import WayOut

OUT = WayOut(day=date(2027, 3, 17), maker="Brightholm", way="road")


def told(way_out=None, need_by=NEED_BY, **days):
    of_maker = maker()
    read = inputs(of_maker, settings=NO_SAMPLE, need_by=need_by)
    return order_sentences(progress_of(read, order(**days), of_maker), way_out)


@pytest.mark.parametrize(
    ("days", "first"),
    [
        ({}, "No last day to complain is written down: look it up, and write it under Complain until"),
        ({"complain_until": date(2026, 11, 20)}, "The last day to complain was 20 November 2026"),
        (
            {"arrived": AS_OF, "complain_until": date(2026, 12, 1)},
            "Last day to complain: 1 December 2026 (6 days from today); check the pieces before that",
        ),
        (
            {"shipped": date(2026, 11, 20), "complain_until": date(2026, 12, 1)},
            "Last day to complain: 1 December 2026 (6 days from today); the pieces may come only after it, so ask now, "
            "in writing, for a later one",
        ),
    ],
)
def test_the_last_day_to_complain_stands_first(days, first):
    assert first == told(**days)[0]


def test_what_has_happened_and_what_is_likely_are_told():
    assert (
        "Fernhill: the pieces are on their way, 20 November 2026; by sea the pieces are likely at your door by "
        "6 January 2027"
    ) == told(shipped=date(2026, 11, 20))[1]


def test_an_overdue_step_is_told():
    assert "transit should have been over 45 days ago: ask" in told(shipped=date(2026, 9, 1))[1]


def test_a_promise_that_the_steps_do_not_allow_is_doubted():
    sentences = told(shipped=date(2026, 11, 20), promised=date(2026, 12, 1))

    assert "The maker promised 1 December 2026, which is earlier than the steps to come allow" in sentences


def test_a_promised_day_that_is_over_is_late():
    promised = date(2026, 11, 16)  # AS_OF is 25 November

    assert "The maker promised 16 November 2026: 9 days late" in told(shipped=date(2026, 11, 10), promised=promised)


@pytest.mark.parametrize(
    ("need_by", "words"),
    [
        (NEED_BY, "They must be at your door by 11 May 2027: 125 days of slack"),
        (date(2026, 12, 24), "They must be at your door by 21 December 2026: 16 days too late, as things stand"),
    ],
)
def test_slack_and_lateness_are_told(need_by, words):
    assert words in told(need_by=need_by, shipped=date(2026, 11, 20))


def test_what_has_arrived_says_whether_it_was_in_time():
    """Receiving takes three working days: 11 May for 14 May 2027, 17 November for 20 November 2026."""
    needs = {need_by: told(need_by=need_by, arrived=date(2026, 11, 20))[2] for need_by in (NEED_BY, date(2026, 11, 20))}

    assert {
        NEED_BY: "They were to be at your door by 11 May 2027: 172 days to spare",
        date(2026, 11, 20): "They were to be at your door by 17 November 2026: 3 days late",
    } == needs


def test_an_order_in_time_needs_no_way_out():
    assert not [one for one in told(OUT, ordered=AS_OF) if "cancel" in one]


def test_an_order_that_is_too_late_has_its_way_out():
    sentences = told(OUT, need_by=date(2027, 2, 1), ordered=AS_OF)

    assert "cancel and order from Brightholm by road" in sentences[-1]


def test_a_day_of_leaving_that_is_over_says_by_how_much():
    assert "They must leave the maker by sea by 4 December 2026 (too late by" not in "".join(told(ordered=AS_OF))
    late = [one for one in told(need_by=date(2027, 1, 4), ordered=AS_OF) if one.startswith("They must leave")]

    assert late == [one for one in late if "(too late by " in one] != []


def test_pieces_on_their_way_have_no_way_out():
    assert not [one for one in told(OUT, need_by=date(2026, 12, 1), shipped=date(2026, 11, 20)) if "cancel" in one]


def test_the_day_of_leaving_is_told_until_they_have_left():
    assert "They must leave the maker by sea by 16 March 2027" in told(ordered=AS_OF)


def test_a_promise_that_the_steps_allow_is_told_alone():
    assert "The maker promised 1 February 2027" in told(shipped=date(2026, 11, 20), promised=date(2027, 2, 1))


def test_once_the_pieces_are_there_no_promise_is_told():
    sentences = told(shipped=date(2026, 11, 1), promised=date(2026, 11, 20), arrived=AS_OF)

    assert not any("promised" in sentence for sentence in sentences)


def test_an_order_without_any_day_is_not_said_to_be_placed_today():
    found = progress_of(inputs(), order(), maker())
    words = order_sentences(found, None)

    assert any("the order is placed, on a day that is not written down" in one for one in words)
