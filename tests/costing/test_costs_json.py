"""Landed costs as JSON."""

import json
from datetime import date
from decimal import Decimal

from quoted import MAKER, dollars, inputs, offer, published, quote, timing

from scorecard.brief import Brief
from scorecard.costing.amounts import Span
from scorecard.costing.comparing import currency_changes
from scorecard.costing.costs_json import currency_changes_json, landed_costs_json, rates_json, sampling_json
from scorecard.costing.landed import landed_costs
from scorecard.costing.paying import sampling_cost

ALL_PAID = "to my door, duty and tax paid"


def as_json(case):
    return json.loads(json.dumps(landed_costs_json(case, landed_costs(case)), allow_nan=False))


def test_the_composite_example_as_json():
    (cost,) = as_json(published())

    assert (MAKER, "air", True, "GBP", True, []) == tuple(
        cost[key] for key in ("maker", "way", "chosen", "currency", "complete", "gaps")
    )
    assert {"low": 441.84, "high": 441.84} == cost["total"]
    assert {"low": 2.2775, "high": 2.2775} == cost["per_good_piece"]
    assert {"maker": 54.3, "freight": 19.7, "border": 23.2, "extra": 0.0, "payment": 2.7} == cost["shares"]


def test_each_line_has_its_name_cost_and_working():
    (cost,) = as_json(published())

    assert {
        "key": "goods",
        "name": "Goods",
        "group": "maker",
        "cost": {"low": 192.0, "high": 192.0},
        "paid": {"low": 192.0, "high": 192.0},
        "working": "200 × 1.20 USD = 240.00 USD, at 1.25 USD for 1 GBP",
    } == cost["readings"][0]["lines"][0]


def test_an_open_total_is_null_at_its_high_end():
    (cost,) = as_json(inputs(quote(Span(Decimal(2), None), covers=ALL_PAID)))

    assert {"low": 400.0, "high": None} == cost["total"]


def test_the_cheapest_stands_first_and_one_way_a_maker_is_chosen():
    case = inputs(
        quote(5),
        quote(4, maker="Oxlip", row=3, covers=ALL_PAID),
        offers=(offer("sea", 90), offer("air", 150)),
    )

    assert [("Oxlip", None, True), (MAKER, "sea", True), (MAKER, "air", False)] == [
        (cost["maker"], cost["way"], cost["chosen"]) for cost in as_json(case)
    ]


def test_whether_it_comes_in_time_is_said_where_there_is_a_date():
    brief = Brief(item="mug", quantity=200, destination="GB", currency="GBP", need_by=date(2027, 1, 29))
    quoted = quote(5, covers=ALL_PAID, days=30)

    assert [None, "yes"] == [as_json(case)[0]["in_time"] for case in (inputs(quoted), inputs(quoted, brief=brief))]


def test_what_is_ordered_is_not_judged_by_the_date_any_more():
    brief = Brief(item="mug", quantity=200, destination="GB", currency="GBP", need_by=date(2027, 1, 29))
    offers = (offer("sea", 90, days=30), offer("air", 150, days=(8, 10)))
    case = inputs(quote(5, days=(20, 25)), offers=offers, brief=brief, ordered={MAKER: "air"})

    # 65 days are left: by sea 50 to 55, by air 28 to 35
    assert {
        "sea": (False, False, "yes", "in time", {"low": 50.0, "high": 55.0}),
        "air": (True, True, None, None, {"low": 28.0, "high": 35.0}),
    } == {
        cost["way"]: (cost["chosen"], cost["ordered"], cost["in_time"], cost["status"], cost["days"])
        for cost in as_json(case)
    }


def test_what_the_schedule_says_is_given_with_what_it_rests_on():
    offers = (offer("sea", 90), offer("air", 150), offer("road", 200))
    timings = {(MAKER, "sea"): timing(), (MAKER, "air"): timing(rests_on="usual days")}

    # a sample is asked for 20 days before the order
    assert {
        "sea": (None, "2026-11-30", "2026-12-20"),
        "air": ("usual days", "2026-11-30", "2026-12-20"),
        "road": (None, None, None),
    } == {
        cost["way"]: (cost["status_rests_on"], cost["begin_by"], cost["order_by"])
        for cost in as_json(inputs(quote(5), offers=offers, timings=timings))
    }


def test_a_missing_cost_is_named_with_its_sentence():
    (cost,) = as_json(inputs(quote(5, covers="goods and freight", days=9)))
    gap = {"name": "delivery", "words": "delivery: no figure; the total is too low by that"}

    assert gap in cost["gaps"]
    assert gap in cost["readings"][0]["gaps"]
    assert {"low": 9.0, "high": 9.0} == cost["readings"][0]["days"]


def test_rates_changes_and_sampling_as_json():
    case = inputs(
        quote("4.00", covers=ALL_PAID, sample_price=30, sample_postage=15),
        quote("5.50", maker="Oxlip", row=3, currency="USD", covers=ALL_PAID),
        rates=dollars(),
    )
    (change,) = currency_changes_json(currency_changes(case))

    assert [{"currency": "USD", "rate": 1.25, "means": "USD for 1 GBP", "dated": None, "source": ""}] == rates_json(
        case
    )
    assert (MAKER, None, "Oxlip") == (change["cheapest"], change["below"], change["above"]["cheapest"])
    assert {
        "makers": [
            {"maker": MAKER, "cost": {"low": 45.0, "high": 45.0}, "missing": []},
            {
                "maker": "Oxlip",
                "cost": {"low": None, "high": None},
                "missing": ["sample price", "sample postage"],
            },
        ],
        "total": {"low": 45.0, "high": None},
        "unknown": ["Oxlip"],
        "already_paid": [],
    } == sampling_json(sampling_cost(case, [MAKER, "Oxlip"]))


def test_a_rate_from_which_another_may_be_cheaper_as_json():
    # 4.50 USD are 4.00 GBP, the low end, at 1.125 USD for one
    there = quote("4.50", maker="Oxlip", row=3, currency="USD", covers=ALL_PAID)
    case = inputs(quote(Span.of(4, 5), covers=ALL_PAID), there, rates=dollars())
    (change,) = currency_changes_json(currency_changes(case))

    assert ({"rate": 1.125, "maker": MAKER}, None) == (change["unsure_below"], change["unsure_above"])


def test_with_a_cost_missing_there_is_no_most_and_no_share():
    (cost,) = as_json(inputs(quote(2)))
    (reading,) = cost["readings"]

    assert ({400.0, None}, {None}) == (
        {cost["total"]["low"] - 99.2, cost["total"]["high"]},
        set(cost["shares"].values()),
    )
    assert [None] * 3 == [reading["total"]["high"], cost["per_good_piece"]["high"], reading["per_good_piece"]["high"]]
    assert None is cost["paid_before_checking"]["paid"]["high"]
