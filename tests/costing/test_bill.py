"""What the maker bills, in the currency of its quote; each figure worked out by hand beside its test."""

from datetime import date
from decimal import Decimal

import pytest
from order_folder import FREIGHT, HEADINGS, lay_out

from scorecard.costing.bill import bill_of
from scorecard.costing.landed import landed_costs
from scorecard.reading.folder import read_folder

AS_OF = date(2026, 11, 25)


def bill(tmp_path, **changes):
    row = {
        "Maker": "Brightholm",
        "Pieces": 200,
        "Price": 2,
        "Price is for": "each",
        "Currency": "USD",
        "Price covers": "goods",
        "Days": 35,
        "Set-up": 40,
        "Set-up is per": "design",
        "Deposit %": 30,
    } | changes
    folder = lay_out(tmp_path, Quotes=[list(row), list(row.values())], Freight=FREIGHT)
    costs = landed_costs(read_folder(folder, as_of=AS_OF).costs)
    return bill_of(costs[0].readings[0])


def test_goods_and_set_up_stand_in_the_currency_of_the_quote(tmp_path):
    found = bill(tmp_path)

    # 200 × 2 USD; 40 USD for each of two designs
    assert [("Goods", 400, "USD"), ("Set-up", 80, "USD")] == [(one.name, one.low, one.currency) for one in found.lines]
    assert (Decimal(480), Decimal(480)) == found.total


def test_deposit_and_rest_add_up_to_the_bill(tmp_path):
    found = bill(tmp_path, **{"Price": 1.333, "Deposit %": 33})

    # 200 × 1.333 + 80 = 346.60; 33 % of it 114.378, so 114.38
    assert (Decimal("114.38"), Decimal("232.22")) == (found.deposit[0], found.rest[0])
    assert found.total[0] == found.deposit[0] + found.rest[0]


def test_a_range_of_the_deposit_leaves_the_rest_open_at_both_ends(tmp_path):
    found = bill(tmp_path, **{"Deposit %": "30-50"})

    # 30 % and 50 % of 480
    assert ((144, 240), (240, 336)) == (found.deposit, found.rest)


def test_a_sample_that_is_credited_comes_off_the_bill(tmp_path):
    found = bill(tmp_path, **{"Sample price": 25, "Credited from": 100})

    assert -25 == found.lines[-1].low
    assert (Decimal(455), Decimal(455)) == found.total


@pytest.mark.parametrize("deposit", [None, "?"])
def test_without_a_deposit_neither_step_is_known(tmp_path, deposit):
    found = bill(tmp_path, **{"Deposit %": deposit})

    assert (None, None) == (found.deposit, found.rest)


def test_all_with_the_order_leaves_nothing(tmp_path):
    assert (0, 0) == bill(tmp_path, **{"Deposit %": 100}).rest


def test_set_up_quoted_in_another_currency_makes_no_sum(tmp_path):
    rows = [
        HEADINGS,
        ["Brightholm", "2026-11-20", 200, 2, "each", "USD", "goods", None, 35],
        ["Brightholm", "2026-11-20", 200, 3, "each", "EUR", "goods and freight", "sea", 35, None, None, 30, "order"],
    ]
    costs = landed_costs(read_folder(lay_out(tmp_path, Quotes=rows), as_of=AS_OF).costs)
    found = next(bill_of(cost.readings[0]) for cost in costs if cost.reply.head.currency == "USD")

    assert (None, None) == (found.currency, found.total)
