"""The table [selling], and each fault at its key."""

from datetime import date
from decimal import Decimal

import pytest
from sourcing import BRIEF, folder_of, problems_of

from scorecard.ordering.demands import Demand
from scorecard.reading.folder import read_folder

WHOLE = """[selling]
price = 18.00
sales_tax_percent = 23
channel_fee_percent = 6.5
payment_fee_percent = 2.9
payment_fee = 0.30
packing = 0.45
postage = 1.20
fixed = 150
demand = { low = 120, likely = 180, high = 260 }
unsold_worth = 2.00
wanted_margin_percent = 40
sales_begin = 2027-05-29
selling_weeks = 12
yearly_demand = 600
holding_percent = 20
order_cost = 25
"""


def selling(path, toml):
    return read_folder(folder_of(path, toml=toml)).selling


def warnings(path, toml, brief=BRIEF):
    return [(one.place.key, one.code) for one in read_folder(folder_of(path, toml=toml, brief=brief)).warnings]


def test_every_key_is_read_exactly(tmp_path):
    found = selling(tmp_path, WHOLE)

    assert [
        Decimal(text) for text in ("18", "23", "6.5", "2.9", "0.3", "0.45", "1.2", "150", "2", "40", "12", "20")
    ] == [
        found.price,
        found.sales_tax_percent,
        found.channel_fee_percent,
        found.payment_fee_percent,
        found.payment_fee,
        found.packing,
        found.postage,
        found.fixed,
        found.unsold_worth,
        found.wanted_margin_percent,
        found.selling_weeks,
        found.holding_percent,
    ]
    assert (Demand(low=120, likely=180, high=260), date(2027, 5, 29), 600, Decimal(25)) == (
        found.demand,
        found.sales_begin,
        found.yearly_demand,
        found.order_cost,
    )


def test_the_price_alone_will_do(tmp_path):
    found = selling(tmp_path, "[selling]\nprice = 18\n")

    assert (Decimal(18), None, frozenset({"price"})) == (found.kept, found.demand, found.given)


def test_without_the_table_nothing_is_said_of_selling(tmp_path):
    assert selling(tmp_path, "") is None


def test_every_problem_is_told_at_once(tmp_path):
    toml = """[selling]
channel_fee_percent = 120
packing = -1
demand = { low = 300, likely = 180, high = 100 }
wanted_margin_percent = 100
selling_weeks = 0
yearly_demand = 600
prise = 18
"""

    assert {
        ("selling.price", "missing-key"),
        ("selling.channel_fee_percent", "too-high"),
        ("selling.packing", "below-zero"),
        ("selling.demand.low", "reversed-range"),
        ("selling.demand.likely", "reversed-range"),
        ("selling.wanted_margin_percent", "above-hundred"),
        ("selling.selling_weeks", "not-above-zero"),
        ("selling.holding_percent", "missing-key"),
        ("selling.prise", "unknown-key"),
    } == set(problems_of(tmp_path, toml=toml))


@pytest.mark.parametrize(
    ("demand", "key", "code"),
    [
        ("{ low = 100 }", "selling.demand.likely", "missing-key"),
        ("{ low = 300, high = 100, likely = 'x' }", "selling.demand.low", "reversed-range"),
        ("{ likely = 18.5 }", "selling.demand.likely", "not-whole"),
        ("{ likely = -1 }", "selling.demand.likely", "not-whole"),
        ("180", "selling.demand", "not-a-table"),
        ("{ likely = 180, most = 200 }", "selling.demand.most", "unknown-key"),
    ],
)
def test_a_fault_of_the_demand_stands_at_its_key(tmp_path, demand, key, code):
    assert (key, code) in problems_of(tmp_path, toml=f"[selling]\nprice = 18\ndemand = {demand}\n")


@pytest.mark.parametrize(
    ("line", "key", "code"),
    [
        ("price = 0", "selling.price", "not-above-zero"),
        ('price = "18"', "selling.price", "number-in-quotes"),
        ("price = 18\nsales_begin = '2027-05-29'", "selling.sales_begin", "date-in-quotes"),
        ("price = 18\nholding_percent = 2000", "selling.holding_percent", "too-high"),
        ("price = 18\nyearly_demand = 0\nholding_percent = 20", "selling.yearly_demand", "not-whole"),
    ],
)
def test_a_fault_stands_at_its_key(tmp_path, line, key, code):
    assert [(key, code)] == problems_of(tmp_path, toml=f"[selling]\n{line}\n")


def test_a_price_of_which_fees_leave_nothing_is_warned_of(tmp_path):
    assert ("selling.price", "price-below-fees") in warnings(tmp_path, "[selling]\nprice = 2\npostage = 2.5\n")


def test_a_piece_left_over_that_brings_more_than_one_sold_is_warned_of(tmp_path):
    assert ("selling.unsold_worth", "unsold-above-price") in warnings(
        tmp_path, "[selling]\nprice = 2\nunsold_worth = 3\n"
    )


def test_sales_that_begin_before_the_pieces_are_needed_are_warned_of(tmp_path):
    brief = BRIEF.replace("designs = 4", "designs = 4\nneed_by = 2027-05-14")
    toml = "[selling]\nprice = 18\nsales_begin = 2027-05-01\n"

    assert ("selling.sales_begin", "sales-before-need-by") in warnings(tmp_path, toml, brief)
