"""Orders under way in sentences."""

from datetime import date

import pytest
from planned import AS_OF, NEED_BY, NO_SAMPLE, inputs, maker, order

from scorecard.scheduling.order_words import order_sentences
from scorecard.scheduling.progress import progress_of
from scorecard.scheduling.schedule import WayOut
from scorecard.words import day_words

OUT = WayOut(day=date(2027, 3, 17), days_left=112, maker="Brightholm", way="road")


def told(way_out=None, need_by=NEED_BY, as_of=AS_OF, **days):
    of_maker = maker()
    read = inputs(of_maker, settings=NO_SAMPLE, need_by=need_by, as_of=as_of)
    return order_sentences(progress_of(read, order(**days), of_maker), way_out)


@pytest.mark.parametrize(
    ("days", "first"),
    [
        ({}, "No last day to complain is written down: look it up, and write it under Complain until"),
        ({"complain_days": 14}, "Complaints are taken until 14 days after arrival"),
        ({"complain_until": date(2026, 11, 20)}, "The last day to complain was 20 November 2026"),
        ({"complain_until": date(2026, 11, 24)}, "The last day to complain was 24 November 2026"),
        (
            {"arrived": AS_OF, "complain_until": AS_OF, "complain_days": 0},
            "Last day to complain: 25 November 2026 (today); check the pieces before that",
        ),
        (
            {"shipped": date(2026, 11, 20), "complain_until": date(2027, 6, 1)},
            "Last day to complain: 1 June 2027 (188 days from today)",
        ),
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


@pytest.mark.parametrize(
    ("promised", "doubt"),
    [
        (AS_OF, ", which is earlier than the steps to come allow"),
        (date(2026, 12, 1), ", which is earlier than the steps to come allow"),
        (date(2027, 1, 5), ", which is earlier than the steps to come allow"),
        (date(2027, 1, 6), ""),  # the day of the door, by hand in test_progress.py
        (date(2027, 2, 1), ""),
    ],
)
def test_a_promise_that_the_steps_do_not_allow_is_doubted(promised, doubt):
    sentences = told(shipped=date(2026, 11, 20), promised=promised)

    assert f"The maker promised {day_words(promised)}{doubt}" in sentences


def test_a_promised_day_that_is_over_is_late():
    promised = date(2026, 11, 16)  # AS_OF is 25 November

    assert "The maker promised 16 November 2026: 9 days late" in told(shipped=date(2026, 11, 10), promised=promised)


@pytest.mark.parametrize(
    ("need_by", "words"),
    [
        (NEED_BY, "They must be at your door by 11 May 2027: 125 days of slack from the likely day"),
        (
            date(2026, 12, 24),
            "They must be at your door by 21 December 2026: 16 days too late by the likely day, as things stand",
        ),
        # at the door by Wednesday 6 January 2027, as are they that are needed three working days later, on the 11th
        (date(2027, 1, 11), "They must be at your door by 6 January 2027: 0 days of slack from the likely day"),
        (
            date(2027, 1, 8),
            "They must be at your door by 5 January 2027: 1 day too late by the likely day, as things stand",
        ),
    ],
)
def test_slack_and_lateness_are_told(need_by, words):
    assert words in told(need_by=need_by, shipped=date(2026, 11, 20))


@pytest.mark.parametrize(
    ("promised", "words"),
    [
        (date(2027, 1, 5), "125 days of slack from the likely day"),  # from 6 January, the later, to 11 May
        (date(2027, 1, 6), "125 days of slack from the likely day"),
        (date(2027, 2, 10), "90 days of slack from the promised day"),  # 18 of February, 31, 30 and 11
        (date(2027, 5, 12), "1 day too late by the promised day, as things stand"),
    ],
)
def test_slack_says_from_which_day_it_runs(promised, words):
    sentences = told(shipped=date(2026, 11, 20), promised=promised)

    assert f"They must be at your door by 11 May 2027: {words}" in sentences


@pytest.mark.parametrize(
    ("need_by", "arrived", "words"),
    [
        (NEED_BY, 20, "11 May 2027: 172 days to spare"),
        (date(2026, 11, 24), 19, "19 November 2026: 0 days to spare"),
        (date(2026, 11, 24), 20, "19 November 2026: 1 day late"),
        (date(2026, 11, 20), 20, "17 November 2026: 3 days late"),
    ],
)
def test_what_has_arrived_says_whether_it_was_in_time(need_by, arrived, words):
    """Receiving takes three working days: the day before them is 11 May 2027, Thursday 19 and Tuesday 17 November."""
    found = told(need_by=need_by, arrived=date(2026, 11, arrived))

    assert f"They were to be at your door by {words}" == found[2]


def test_without_a_day_in_the_brief_no_need_is_told():
    found = told(need_by=None, shipped=date(2026, 11, 20))

    assert 2 == len(found)
    assert not [one for one in found if "must be at your door" in one or "must leave" in one]


def test_an_order_in_time_needs_no_way_out():
    assert not [one for one in told(OUT, ordered=AS_OF) if "cancel" in one]


@pytest.mark.parametrize(
    ("need_by", "promised", "is_told"),
    [
        (date(2027, 2, 1), None, True),
        (
            date(2027, 2, 24),
            date(2027, 2, 21),
            False,
        ),  # Wednesday; at the door by Sunday the 21st, with nothing to spare
        (date(2027, 2, 24), date(2027, 2, 22), True),
        (None, None, True),
    ],
)
def test_an_order_that_is_too_late_or_needed_on_no_day_has_its_way_out(need_by, promised, is_told):
    """At the door by our count on 19 February 2027, or when the maker has promised if that is later."""
    sentences = told(OUT, need_by=need_by, ordered=AS_OF, promised=promised)

    assert is_told == ("cancel and order from Brightholm by road" in sentences[-1])


@pytest.mark.parametrize(("day", "gone"), [(16, ""), (17, " (too late by 1 day)"), (19, " (too late by 3 days)")])
def test_a_day_of_leaving_that_is_over_says_by_how_much(day, gone):
    """The last day of leaving is worked out by hand in test_plans.py."""
    found = told(as_of=date(2027, 3, day), ordered=AS_OF)

    assert f"They must leave the maker by sea by 16 March 2027{gone}" in found


def test_pieces_on_their_way_have_no_way_out():
    assert not [one for one in told(OUT, need_by=date(2026, 12, 1), shipped=date(2026, 11, 20)) if "cancel" in one]


def test_the_day_of_leaving_is_told_until_they_have_left():
    assert "They must leave the maker by sea by 16 March 2027" in told(ordered=AS_OF)


def test_once_the_pieces_are_there_no_promise_is_told():
    sentences = told(shipped=date(2026, 11, 1), promised=date(2026, 11, 20), arrived=AS_OF)

    assert not any("promised" in sentence for sentence in sentences)


def test_an_order_without_any_day_is_not_said_to_be_placed_today():
    found = progress_of(inputs(), order(), maker())
    words = order_sentences(found, None)

    assert any("the order is placed, on a day that is not written down" in one for one in words)
