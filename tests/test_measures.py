"""Working days, against numpy's own count and a walk through the calendar."""

from dataclasses import replace
from datetime import date, timedelta

import numpy as np
import pytest
from cases import AS_OF, make_case, numbers
from hypothesis import given
from hypothesis import strategies as st
from ordered import case_of
from quoted import quote

from scorecard.measures import measured, working_days
from scorecard.orders import OrderRow
from scorecard.samples import SampleRound

DAYS = st.dates(date(1990, 1, 1), date(2060, 12, 31))
WEDNESDAY = AS_OF


def ordinals(*days):
    return np.array([np.nan if day is None else float(day.toordinal()) for day in days])


def walked(start, end):
    """Count the days from start up to, and without, end that are Monday to Friday."""
    return sum((start + timedelta(days=at)).weekday() < 5 for at in range((end - start).days))


def response_days(asked, answered, as_of=AS_OF):
    names = {f"maker {at}": [None] for at in range(len(asked))}
    case = make_case([numbers("a", 1)], names, asked_on=ordinals(*asked), answered_on=ordinals(*answered))
    return measured("response_days", case, as_of)


def ends(answers):
    return list(zip(answers.low.tolist(), answers.high.tolist(), strict=True))


@pytest.mark.parametrize(
    ("start", "end", "days"),
    [
        (date(2026, 11, 20), date(2026, 11, 23), 1),  # Friday to Monday
        (date(2026, 11, 21), date(2026, 11, 22), 0),  # Saturday to Sunday
        (date(2026, 11, 21), date(2026, 11, 24), 1),  # Saturday to Tuesday: Monday
        (date(2026, 11, 25), date(2026, 11, 25), 0),  # the same day
        (date(2026, 11, 2), date(2026, 11, 30), 20),  # four weeks
    ],
)
def test_working_days_leave_out_the_weekend(start, end, days):
    assert days == working_days(ordinals(start), ordinals(end))[0]


@given(DAYS, st.integers(0, 400))
def test_working_days_are_those_of_a_walk_through_the_calendar(start, length):
    end = start + timedelta(days=length)
    assert walked(start, end) == working_days(ordinals(start), ordinals(end))[0]


@given(DAYS, DAYS)
def test_working_days_are_those_of_numpy(start, end):
    assert np.busday_count(start, end) == working_days(ordinals(start), ordinals(end))[0]


def test_an_answered_maker_has_its_working_days():
    assert [(3.0, 3.0)] == ends(response_days([date(2026, 11, 19)], [date(2026, 11, 24)]))


def test_a_maker_asked_and_silent_has_at_least_the_days_so_far():
    # Thursday 19 to Wednesday 25 November: Thursday, Friday, Monday, Tuesday
    assert [(4.0, np.inf)] == ends(response_days([date(2026, 11, 19)], [None]))


def test_a_maker_that_was_not_asked_is_unknown():
    assert [False] == response_days([None], [None]).known.tolist()


def test_an_answer_without_a_day_of_asking_is_unknown():
    assert [False] == response_days([None], [date(2026, 11, 24)]).known.tolist()


def test_a_maker_asked_after_the_day_that_stands_for_today_has_at_least_no_days():
    assert [(0.0, np.inf)] == ends(response_days([date(2026, 12, 24)], [None]))


def test_each_maker_has_its_own():
    found = response_days([date(2026, 11, 23), None, date(2026, 11, 24)], [date(2026, 11, 25), None, None])
    assert [2.0, 1.0] == found.low[[0, 2]].tolist()


@pytest.mark.parametrize("there", ["asked_on", "answered_on", None])
def test_a_measure_whose_columns_are_missing_is_unknown_for_all(there):
    columns = {} if there is None else {there: ordinals(WEDNESDAY, WEDNESDAY)}
    case = make_case([numbers("a", 1)], {"Fernhill": [1], "Brightholm": [2]}, **columns)
    assert [False, False] == measured("response_days", case, AS_OF).known.tolist()


def test_a_measure_that_nothing_can_compute_yet_is_unknown_for_all():
    case = make_case([numbers("a", 1)], {"Fernhill": [1]})
    assert [False] == measured("landed_cost_per_piece", case, AS_OF).known.tolist()


# landed cost and days to the door


def quoted_case():
    sea = quote("4.00", maker="Ash", row=2, covers="to my door, duty and tax paid", way="sea", days=200)
    air = quote("9.00", maker="Ash", row=3, covers="to my door, duty and tax paid", way="air", days=(20, 25))
    goods = quote(3, maker="Cedar", row=4, covers="goods", way="road", days=30)
    return case_of({"Ash": 1, "Birch": 2, "Cedar": 3}, {"Ash": sea, "Ash by air": air, "Cedar": goods})


def test_one_way_of_a_maker_answers_both_measures():
    # by sea a piece costs 4.00 and comes in 200 days, after the need-by date: air, in time, stands for both
    case = quoted_case()
    cost, days = measured("landed_cost_per_piece", case, AS_OF), measured("days_to_door", case, AS_OF)

    assert ((9.0, 9.0), (20.0, 25.0)) == (ends(cost)[0], ends(days)[0])


def test_without_a_quote_or_with_a_gap_a_landed_cost_is_unknown():
    assert [True, False, False] == measured("landed_cost_per_piece", quoted_case(), AS_OF).known.tolist()


def test_while_nothing_is_quoted_both_are_unknown():
    case = make_case([numbers("a", 1)], {"Ash": [1]})

    for name in ("landed_cost_per_piece", "days_to_door"):
        assert not measured(name, case, AS_OF).known.any()


def test_the_day_that_stands_for_today_chooses_the_way():
    case = quoted_case()
    cost = [ends(measured("landed_cost_per_piece", case, day))[0][0] for day in (date(2026, 10, 1), AS_OF)]

    assert [4.0, 9.0] == cost


# sample marks


def with_samples(*rounds):
    case = make_case([numbers("a", 1)], {"Ash": [1], "Birch": [2]})
    return measured("sample_marks", replace(case, samples=rounds), AS_OF)


def test_sample_marks_are_the_mean_of_a_makers_marks():
    marks = {"Print": (8.0, 8.0), "Colour": (5.0, 7.0)}
    found = with_samples(SampleRound(maker="Birch", row=2, kind="sample", marks=marks))

    assert ([False, True], (6.5, 7.5)) == (found.known.tolist(), ends(found)[1])


def test_while_no_sample_is_marked_all_marks_are_unknown():
    assert [False, False] == with_samples().known.tolist()


# own orders


def with_orders(name, *orders):
    case = make_case([numbers("a", 1)], {"Ash": [1], "Birch": [2]})
    return measured(name, replace(case, orders=orders), AS_OF)


def came(row, arrived, **more):
    days = {"ordered": date(2026, row, 1), "promised": date(2026, row, 20), "arrived": date(2026, row, arrived)}
    return OrderRow(maker="Birch", row=row, pieces=100, **days, **more)


def test_the_on_time_share_counts_own_orders():
    found = with_orders("on_time_share", came(2, 20), came(3, 19), came(4, 21), came(5, 20))

    assert ([False, True], (75.0, 75.0)) == (found.known.tolist(), ends(found)[1])


def test_the_faulty_share_counts_pieces():
    found = with_orders("faulty_share", came(2, 20, faulty=3), came(3, 20, faulty=6))

    assert ([False, True], (4.5, 4.5)) == (found.known.tolist(), ends(found)[1])
