"""Who was asked, and who is due a reminder."""

from datetime import date

import numpy as np
import pytest
from cases import make_case, numbers

from scorecard.calculation import Calculation
from scorecard.criteria import Limit
from scorecard.letters.asked import asked_of

WEDNESDAY = date(2026, 11, 25)


def calculated(rows, as_of=WEDNESDAY):
    """Return a calculation of makers with (asked, answered), each a day or None; a third entry rules one out."""
    makers = {f"M{at}": [0 if len(row) > 2 else 50] for at, row in enumerate(rows)}
    days = [[np.nan if day is None else float(day.toordinal()) for day in row[:2]] for row in rows]
    asked, answered = np.array(days).T
    criteria = [numbers("a", 1, limit=Limit(at_least=1))]
    return Calculation.of(make_case(criteria, makers, asked_on=asked, answered_on=answered), as_of)


def nov(day):
    return date(2026, 11, day)


@pytest.mark.parametrize(
    ("day", "working_days", "is_due"),
    [(25, 0, False), (24, 1, False), (20, 3, False), (19, 4, True), (21, 2, False), (13, 8, True)],
)
def test_a_reminder_is_due_after_more_than_three_working_days(day, working_days, is_due):
    # 25 November 2026 is a Wednesday; Friday 20 to Wednesday 25: Friday, Monday, Tuesday
    (one,) = asked_of(calculated([(nov(day), None)]))

    assert (working_days, is_due) == (one.working_days, one.is_due)


def test_how_long_to_wait_can_be_set():
    assert [True, False] == [asked_of(calculated([(nov(24), None)]), days)[0].is_due for days in (0, 1)]


def test_an_answer_is_counted_in_working_days_and_is_never_due():
    (one,) = asked_of(calculated([(nov(13), nov(17))]))

    assert (nov(13), nov(17), 2, False) == (one.asked_on, one.answered_on, one.working_days, one.is_due)


def test_who_is_due_stands_first_the_longest_wait_before_the_others():
    rows = [(nov(12), nov(13)), (nov(24), None), (nov(18), None), (nov(11), None), (None, None)]

    assert [3, 2, 1, 0] == [one.maker for one in asked_of(calculated(rows))]


def test_a_ruled_out_maker_is_not_reminded():
    assert [False] == [one.is_due for one in asked_of(calculated([(nov(2), None, False)]))]


def test_a_ruled_out_maker_that_is_named_is_reminded():
    one = calculated([(nov(2), None, False), (nov(2), None, False)])

    assert {0: False, 1: True} == {asked.maker: asked.is_due for asked in asked_of(one, named=1)}


def test_without_the_columns_nobody_was_asked():
    case = make_case([numbers("a", 1)], {"Oxlip": [1]})

    assert () == asked_of(Calculation.of(case, WEDNESDAY))


def test_without_a_column_for_answers_nobody_has_answered():
    case = make_case([numbers("a", 1)], {"Oxlip": [1]}, asked_on=np.array([float(nov(13).toordinal())]))

    assert [True] == [one.is_due for one in asked_of(Calculation.of(case, WEDNESDAY))]
