"""What the maker bills, in the currency of its quote; each figure worked out by hand beside its test."""

from datetime import date
from decimal import Decimal

import pytest
from order_folder import FREIGHT, HEADINGS, lay_out
from quoted import MAKER, dollars, landed, quote, uk

from scorecard.costing.amounts import OPEN, Span
from scorecard.costing.bill import bill_of
from scorecard.costing.currencies import Rates
from scorecard.costing.inputs import CostSettings, MakerFacts
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


def quoted_bill(price, *, settings=None, **more):
    """Return the bill for 200 pieces at a price each, in the currency of the brief."""
    (cost,) = landed(quote(price, **more), settings=settings)
    return bill_of(cost.readings[0])


@pytest.mark.parametrize(
    ("price", "percent", "deposit", "rest"),
    [
        # 400 to 600 GBP, of which 30 to 50 %: least with least, and the rest the other way round
        ((2, 3), (30, 50), (120, 300), (200, 420)),
        # "30+": up to all of it
        (2, Span(Decimal(30), None), (120, 400), (0, 280)),
        # "2+": no end to the price, so none to what is left
        (Span(Decimal(2), None), 30, (120, OPEN), None),
    ],
)
def test_deposit_and_rest_reach_from_the_least_to_the_most(price, percent, deposit, rest):
    found = quoted_bill(price, deposit_percent=percent)

    assert (deposit, rest) == (found.deposit, found.rest)


def test_a_part_of_the_bill_has_the_decimals_of_its_currency():
    # 33 % of 200 × 2.4 are 158.40, and yen have no decimals
    (cost,) = landed(
        quote("2.4", currency="JPY", deposit_percent=33),
        rates=Rates(home="JPY"),
    )
    found = bill_of(cost.readings[0])

    assert ((158, 158), (322, 322)) == (found.deposit, found.rest)


def test_a_line_that_may_be_more_or_less_is_worked_out_at_both_ends():
    # a sample of 20 to 30 GBP comes off: the least of the line is the most that comes off
    goods, credit = quoted_bill((2, 3), sample_price=(20, 30), credited_from=100).lines

    assert (400, 600, -30, -20) == (goods.low, goods.high, credit.low, credit.high)
    assert "least: 200 × 2.00 GBP; most: 200 × 3.00 GBP" == goods.working


def test_a_line_that_is_known_is_worked_out_once():
    assert ["200 × 2.00 GBP"] == [line.working for line in quoted_bill(2).lines]


def test_when_the_rest_is_due_is_as_the_user_says_or_not_known():
    said = CostSettings(balance="on arrival", balance_said=True)

    assert [None, "on arrival"] == [quoted_bill(2, settings=each).balance for each in (None, said)]


def at_home(*rows, country="GB", **rules):
    """Return the bill of a maker from whom no border lies to the buyer in the UK, at 20 % of sales tax."""
    facts = {MAKER: MakerFacts(maker=MAKER, country=country)}
    (cost,) = landed(*rows or [quote("8.55", deposit_percent=50)], makers=facts, imports=uk(**rules))
    return bill_of(cost.readings[0])


def test_sales_tax_on_top_is_a_line_of_the_bill_and_raises_both_payments():
    found = at_home(price_has_tax=False)

    # 200 × 8.55 = 1710; 20 % of it 342; half of 2052
    tax = found.lines[-1]
    assert ("Sales tax", "20 % of 1710.00 GBP, on top of the price", 342, 342) == (*said(tax), tax.low, tax.high)
    assert ((2052, 2052), (1026, 1026), (1026, 1026)) == (found.total, found.deposit, found.rest)


def said(line):
    return line.name, line.working


def test_sales_tax_that_may_be_inside_leaves_the_bill_open_by_all_of_it():
    found = at_home(price_has_tax=None)

    assert ("Sales tax", "20 % of 1710.00 GBP, inside the price or on top") == said(found.lines[-1])
    assert ((1710, 2052), (855, 1026)) == (found.total, found.deposit)


def test_sales_tax_is_of_what_is_left_once_a_sample_is_credited_and_to_the_last_minor_unit():
    found = at_home(quote("8.55", setup=40, sample_price=12, credited_from=100), tax="17.5", price_has_tax=False)

    # 17.5 % of 1710 + 40 - 12 = 1738 is 304.15
    assert ("17.5 % of 1738.00 GBP, on top of the price", Decimal("304.15")) == (
        found.lines[-1].working,
        found.lines[-1].low,
    )


@pytest.mark.parametrize(
    ("rate", "has_tax", "words", "ends"),
    [
        ((10, 20), False, "10 to 20 % of 1710.00 GBP, on top of the price", (171, 342)),
        ((10, 20), None, "10 to 20 % of 1710.00 GBP, inside the price or on top", (0, 342)),
        (None, False, "no rate is given; on top of the price", (0, OPEN)),
        (None, None, "no rate is given; inside the price or on top", (0, OPEN)),
    ],
)
def test_a_rate_of_sales_tax_that_is_open_or_not_given_leaves_its_line_open(rate, has_tax, words, ends):
    tax = at_home(tax=rate, price_has_tax=has_tax).lines[-1]

    assert (words, *ends) == (tax.working, tax.low, tax.high)


@pytest.mark.parametrize(
    ("row", "country", "rules"),
    [
        (quote(5), "GB", {"price_has_tax": True}),
        (quote(5), "GB", {"price_has_tax": None, "tax": 0}),
        (quote(5), "CN", {"price_has_tax": False}),  # import tax is due at the border, and not to the maker
        (quote(5, covers="to my door, duty and tax paid"), "GB", {"price_has_tax": False}),
    ],
)
def test_where_no_sales_tax_comes_on_top_the_bill_has_no_line_of_it(row, country, rules):
    assert ["Goods"] == [line.name for line in at_home(row, country=country, **rules).lines]


def test_sales_tax_of_a_bill_in_two_currencies_stands_in_each():
    rows = [quote(2, currency="USD"), quote(3, row=3, setup=40, covers="goods and freight", way="sea")]
    facts = {MAKER: MakerFacts(maker=MAKER, country="GB")}
    cost, _ = landed(*rows, makers=facts, imports=uk(price_has_tax=False), rates=dollars())
    taxes = [(line.low, line.currency) for line in bill_of(cost.readings[0]).lines if line.name == "Sales tax"]

    # 20 % of 400 USD, and of 40 GBP
    assert [(80, "USD"), (8, "GBP")] == taxes
