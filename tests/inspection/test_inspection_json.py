"""The machine-readable result of an inspection, part by part."""

from decimal import Decimal

import pytest
from inspection_cases import LINES, arrival, outcome

from scorecard.inspection.drawing import Spot
from scorecard.inspection.inspection_json import arrival_json, lines_json, outcome_json, plan_json
from scorecard.inspection.outcome import PiecePrice
from scorecard.inspection.plans import sampling_plan
from scorecard.inspection.settings import USUAL_LIMITS

PRICE = PiecePrice(low=Decimal(5), high=Decimal("6.5"), currency="EUR", source="the quote")


def test_what_is_not_known_of_an_arrival_is_null():
    told = arrival_json(arrival())
    assert {"accepted", "per_carton", "cartons", "ordered_on", "arrived_on", "complain_until", "piece_cost"} == {
        key for key, value in told.items() if value is None
    }


def test_a_cost_has_its_ends_its_currency_and_its_source():
    expected = {"low": 5.0, "high": 6.5, "currency": "EUR", "source": "the quote"}
    assert expected == arrival_json(arrival(price=PRICE))["piece_cost"]


def test_a_line_has_code_kind_and_fault():
    assert [{"code": "B1", "kind": "major", "fault": "wrong design, colour or size"}] == lines_json([LINES["B1"]])


def test_a_plan_tells_each_kind_and_each_piece():
    told = plan_json(sampling_plan(200, "II", USUAL_LIMITS), 3, [Spot(carton=2, piece=5)])
    assert (32, 3, [{"carton": 2, "piece": 5}]) == (told["to_open"], told["seed"], told["pieces"])
    assert [(0, 1), (2, 3), (3, 4)] == [(one["accept"], one["reject"]) for one in told["kinds"]]


def test_each_kind_tells_how_likely_lots_slip_through_its_own_limit():
    critical, major, minor = (
        one["slips_through"] for one in plan_json(sampling_plan(200, "II", USUAL_LIMITS), 3, [])["kinds"]
    )
    none_of_4 = 168 * 167 * 166 * 165 / (200 * 199 * 198 * 197)  # all four are among the 168 that stay shut

    assert {"faulty": 4, "chance": pytest.approx(none_of_4)} == critical[0]
    assert [4, 10, 20, 40] == [slip["faulty"] for slip in major]
    assert critical[0]["chance"] < major[0]["chance"] < minor[0]["chance"] < 1


def test_an_outcome_tells_money_where_it_is_known():
    told = outcome_json(outcome(200, came=arrival(price=PRICE), B1=2, C1=1))
    assert ({"low": 10.0, "high": 13.0}, {"low": 5.0, "high": 6.5}) == (told["lost_cost"], told["minor_cost"])


def test_an_outcome_without_a_price_has_no_money():
    assert outcome_json(outcome(200, B1=2))["lost_cost"] is None


def test_a_count_has_its_photographs():
    (count,) = outcome_json(outcome(200, major=7))["counts"]
    assert {"code": "major", "kind": "major", "fault": None, "pieces": 7, "photographs": [1, 7]} == count


def test_an_outcome_tells_how_a_sample_is_judged():
    plan = sampling_plan(200, "II", USUAL_LIMITS)
    judged = outcome_json(outcome(32, plan=plan, B1=3))["judged"]

    assert [("critical", 0), ("major", 3), ("minor", 0)] == [(one["kind"], one["found"]) for one in judged]
    assert ["not over its limit", "over its limit", "not over its limit"] == [one["verdict"] for one in judged]
