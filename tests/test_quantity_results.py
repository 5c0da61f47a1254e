"""How many to order in the machine-readable results."""

import json
from dataclasses import replace
from datetime import UTC, datetime

import jsonschema
import pytest
from cases import AS_OF
from hypothesis import given, settings
from hypothesis import strategies as st
from ordered import PAID, case_of
from process import schema_of
from quoted import offer, quote
from sized import selling

from scorecard.assessment import assess
from scorecard.costing.amounts import Span
from scorecard.quantity_results import plan_for, quantity_result, sizes_alone
from scorecard.report.page import page
from scorecard.workbooks.results import results_workbook

ANSWERS = {"Ash": 90, "Birch": 70, "Cedar": 50}


def assessed(quotes, sold, **more):
    return assess(replace(case_of(ANSWERS, quotes, **more), selling=sold), as_of=AS_OF)


def printed(result):
    return json.loads(json.dumps(result, allow_nan=False))


MONEY = st.decimals("0.1", 30, places=2)
SPREADS = st.lists(st.integers(0, 400), min_size=3, max_size=3).map(sorted).map(tuple)


@settings(max_examples=30, deadline=None)
@given(
    price=MONEY,
    covers=st.sampled_from([None, "goods", "goods and freight", PAID]),
    demand=st.none() | st.integers(0, 300) | SPREADS,
    worth=MONEY,
    sold=MONEY,
    yearly=st.none() | st.integers(1, 5000),
)
def test_any_quantities_fit_both_schemas(price, covers, demand, worth, sold, yearly):
    row = quote(price, maker="Ash", covers=covers, way="sea", pieces=150, sample_price=20, days=(30, 40))
    year = {} if yearly is None else {"yearly_demand": yearly, "holding_percent": "20"}
    made = selling(sold, demand, unsold_worth=worth, wanted_margin_percent="40", **year)
    assessment = assessed({"Ash": row, "Birch": 4}, made)

    jsonschema.validate(printed(assessment.as_json()), schema_of("score"))
    jsonschema.validate(printed(quantity_result(assessment)), schema_of("quantity"))


OPEN = Span.between(5.0, float("inf"))
OPEN_COSTS = [
    {"price": OPEN},
    {"setup": OPEN, "setup_per": "order"},
    {"sample_price": OPEN, "sample_postage": OPEN},
    {"deposit_percent": OPEN},
    {"days": OPEN},
    {"offer": OPEN},
]
MADE = datetime(2026, 11, 25, tzinfo=UTC)


@settings(max_examples=40, deadline=None)
@given(
    opened=st.lists(st.sampled_from(OPEN_COSTS), min_size=1, max_size=3),
    demand=st.none() | st.integers(0, 300) | SPREADS,
    rival=st.booleans(),
    yearly=st.booleans(),
    pieces=st.sampled_from([1, 50, 200, 700]),
)
def test_a_cost_without_an_upper_end_is_told_everywhere_and_breaks_nothing(opened, demand, rival, yearly, pieces):
    cells = {key: value for one in opened for key, value in one.items()}
    cost = cells.pop("offer", None)
    row = quote(cells.pop("price", 5), maker="Ash", **({"covers": "goods", "way": "air", "pieces": pieces} | cells))
    offers = () if cost is None else (offer("air", cost, maker="Ash", from_pieces=1, to_pieces=5000),)
    year = {"yearly_demand": 500, "holding_percent": "20"} if yearly else {}
    made = selling("20", demand, wanted_margin_percent="40", **year)
    assessment = assessed({"Ash": row, **({"Birch": 4} if rival else {})}, made, offers=offers)
    result = printed(assessment.as_json())

    jsonschema.validate(result, schema_of("score"))
    jsonschema.validate(printed(quantity_result(assessment)), schema_of("quantity"))
    shown = page(assessment, result, made=MADE)
    book = results_workbook(assessment, made=MADE)

    assert "Infinity" not in json.dumps(result)
    assert b"PK" == book[:2]
    assert "over 1000.00 or more" not in shown


def test_makers_stand_in_the_order_of_rank():
    plan = plan_for(assessed({"Birch": 4, "Ash": 5}, selling("12")))

    assert ["Ash", "Birch"] == [one.maker for one in plan.makers]


def test_a_plan_is_worked_out_once():
    assessment = assessed({"Ash": 5}, selling("12"))

    assert plan_for(assessment) is plan_for(assessment)


def test_without_a_quote_or_a_price_there_is_no_plan():
    assert plan_for(assessed({}, selling("12"))) is None
    assert plan_for(assessed({"Ash": 5}, None)) is None


def test_sizes_alone_stand_in_where_no_price_is_given():
    assert sizes_alone(assessed({"Ash": 5}, selling("12"))) is None
    assert ["Ash"] == [one.maker for one in sizes_alone(assessed({"Ash": 5}, None)).makers]


def test_an_open_end_is_null():
    found = quantity_result(assessed({"Ash": quote((5, 6), maker="Ash", covers="goods")}, selling("12")))["quantities"]

    assert (None, None) == (found["best"], found["makers"][0]["sizes"][0]["left"])


def test_figures_have_twelve_digits_at_the_most():
    found = quantity_result(assessed({"Ash": 7}, selling("12", (100, 180, 270))))["quantities"]

    assert pytest.approx(found["best"]["left"], rel=1e-11) == found["makers"][0]["sizes"][0]["left"]
    assert len(str(found["best"]["left"]).replace(".", "").replace("-", "")) <= 12
