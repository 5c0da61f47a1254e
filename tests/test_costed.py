"""Landed costs of a case on a day: worked out once, with their warnings."""

from dataclasses import replace
from datetime import date

from cases import AS_OF, make_case, numbers
from ordered import PAID, case_of
from quoted import quote

import scorecard.costing.landed as landed
from scorecard.assessment import assess
from scorecard.costed import costed_on, with_costs

LATER = date(2027, 1, 20)


def stale():
    """One quote, valid until the end of the year."""
    row = quote(5, maker="Ash", covers=PAID, valid_until=date(2026, 12, 31))
    return case_of({"Ash": 1}, {"Ash": row}, weight=1)


def codes(case):
    return [warning.code for warning in case.warnings]


def test_while_nothing_is_quoted_there_is_nothing_to_work_out():
    case = make_case([numbers("a", 1)], {"Ash": [1]})

    assert (None, case) == (costed_on(case, AS_OF), with_costs(case, AS_OF))


def test_costs_are_those_of_the_day_that_stands_for_today():
    assert LATER == with_costs(stale(), LATER).costed.inputs.as_of


def test_what_was_worked_out_for_a_day_is_kept_for_it():
    case = with_costs(stale(), AS_OF)

    assert (case, case.costed) == (with_costs(case, AS_OF), costed_on(case, AS_OF))


def test_a_stale_quote_is_a_warning_of_its_day_alone():
    today = with_costs(stale(), AS_OF)
    later = with_costs(today, LATER)

    assert ([], ["quote-expired"], []) == (codes(today), codes(later), codes(with_costs(later, AS_OF)))


def test_an_assessment_works_costs_out_once(monkeypatch):
    calls = []
    once = landed.landed_costs
    monkeypatch.setattr(landed, "landed_costs", lambda inputs: calls.append(inputs) or once(inputs))
    case = case_of({"Ash": 1, "Birch": 2}, {"Ash": 5, "Birch": 4}, weight=1)
    days = replace(numbers("days", 1), measure="days_to_door", column=None)
    criteria = replace(case.criteria, criteria=(*case.criteria.criteria, days))
    assess(case.with_criteria(criteria), as_of=AS_OF).as_json()

    assert 1 == len(calls)


def test_the_assessment_warns_of_what_the_quotes_leave_in_doubt():
    warnings = assess(stale(), as_of=LATER).as_json()["warnings"]

    assert [("quote-expired", "R2")] == [(one["code"], one["cell"]) for one in warnings]


def test_warnings_of_one_cost_are_its_own():
    case = case_of({"Ash": 1, "Birch": 2}, {"Ash": stale().costs.quotes[0], "Birch": 4})
    costed = with_costs(case, LATER).costed

    assert [["quote-expired"], []] == [[one.code for one in costed.doubts_on(cost)] for cost in costed.costs]


def test_some_makers_alone_keep_their_costs():
    costed = costed_on(case_of({"Ash": 90, "Birch": 70}, {"Ash": 5, "Birch": 4}), AS_OF)
    part = costed.of(["Ash"])

    assert ["Ash"] == list(part.chosen)
    assert costed.chosen["Ash"] is part.chosen["Ash"]
    assert part is costed.of({"Ash"})


def test_all_makers_are_the_whole():
    costed = costed_on(case_of({"Ash": 90, "Birch": 70}, {"Ash": 5}), AS_OF)

    assert costed is costed.of(["Ash", "Birch"])
