"""What is paid when, the peak, and for how long."""

from dataclasses import replace
from datetime import date, timedelta
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from quoted import TODAY, inputs, published, quote, timing, uk
from sized import ALL_PAID, option, planned, prices, selling, with_settings

from scorecard.costing.amounts import Span
from scorecard.costing.inputs import MakerFacts
from scorecard.ordering.cash import cash_of
from scorecard.ordering.options import Option
from scorecard.ordering.plan import plan_of


def paid(cash):
    return {payment.what: payment.paid[0] for payment in cash.payments}


def composite(tax_is="cost", sold=None):
    # the composite example of landed cost: goods 240.00 with set-up, origin 36, freight 47.12, insurance 4, clearance
    # 18, duty 13.08, tax 71.64, bank fee 12; 441.84 in all, figures invented [computed]
    return option(plan_of(published(tax_is), sold or selling("12.00"), ["Fernhill"]), 200)


def test_the_payments_of_the_composite_example():
    cash = cash_of(composite(), None)

    assert {
        "balance": Decimal("240.00"),
        "freight": Decimal("87.12"),
        "border": Decimal("102.72"),
        "other": Decimal("12.00"),
    } == paid(cash)
    assert (Decimal("441.84"),) * 2 == cash.peak


def test_tax_that_comes_back_is_out_at_the_peak_all_the_same():
    assert (Decimal("441.84"),) * 2 == cash_of(composite("recoverable"), None).peak


def lot(*, balance="before shipment", sold=None, first_sale=None, **more):
    kept = {"deposit_percent": 30, "days": (20, 35), "sample_price": 30, "sample_postage": 15} | more
    kept = {"price": 5, "covers": ALL_PAID} | kept
    read = with_settings(inputs(quote(pieces=1, **kept)), balance=balance)
    return cash_of(option(plan_of(read, sold or selling("18.00"), ["Fernhill"]), 200), first_sale)


def test_sample_deposit_balance_and_own_costs_come_in_their_order():
    cash = lot(sold=selling("18.00", fixed="150"))

    assert [("samples", 45), ("deposit", 300), ("balance", 700), ("own", 150)] == list(paid(cash).items())


def test_an_unknown_deposit_leaves_the_whole_bill_to_the_balance():
    assert {"balance": Decimal(1000)} == paid(lot(deposit_percent=None, sample_price=None, sample_postage=None))


@pytest.mark.parametrize(("sample", "unknown"), [("free", ()), ("paid", ("samples",)), (None, ("samples",))])
def test_the_price_of_a_free_sample_is_known(sample, unknown):
    facts = {"Fernhill": MakerFacts(maker="Fernhill", country="CN", sample=sample)}
    row = quote(5, pieces=1, covers=ALL_PAID, deposit_percent=30)
    plan = plan_of(inputs(row, makers=facts), selling("18.00"), ["Fernhill"])

    assert unknown == tuple(cash_of(option(plan, 200), None).unknown)


def both_ends(cash):
    return {payment.what: payment.paid for payment in cash.payments}


def test_a_range_is_paid_from_its_least_to_its_most():
    # 800 to 1200 for the goods, of which 30 % are the deposit, and 45 for the sample
    cash = lot(price=(4, 6))

    assert {"samples": (45, 45), "deposit": (240, 360), "balance": (560, 840)} == both_ends(cash)
    assert (845, 1245) == cash.peak


@pytest.mark.parametrize(
    ("percent", "deposit", "balance"),
    [((0, 30), (0, 300), (1000, 700)), (Span(Decimal(50), None), (500, 1000), (500, 0))],
    ids=["none to 30 %", "50 % or more"],
)
def test_an_open_deposit_and_the_balance_add_up_to_the_bill_at_both_ends(percent, deposit, balance):
    found = both_ends(lot(deposit_percent=percent))

    assert (deposit, balance) == (found["deposit"], found["balance"])


def test_where_the_price_may_go_to_the_door_the_border_may_cost_nothing():
    # 1000 for the goods; else 4 % duty and 20 % tax on 1040 besides, 248
    cash = lot(covers=None, sample_price=None)

    assert ((0, 248), (1015, 1263)) == (both_ends(cash)["border"], cash.peak)


@pytest.mark.parametrize(
    ("has_tax", "deposit", "balance"),
    [(False, (360, 360), (840, 840)), (True, (300, 300), (700, 700)), (None, (300, 360), (700, 840))],
)
def test_sales_tax_without_a_border_is_due_with_the_maker_s_bill_and_nothing_at_the_border(has_tax, deposit, balance):
    # 1000 for the goods and 20 % on top; 30 % of both with the order
    facts = {"Fernhill": MakerFacts(maker="Fernhill", country="GB")}
    row = quote(5, pieces=1, covers="goods and freight", way="road", deposit_percent=30, sample_price=0)
    read = inputs(row, makers=facts, imports=uk(price_has_tax=has_tax))
    cash = cash_of(option(plan_of(read, selling("18.00"), ["Fernhill"]), 200), None)

    assert {"deposit": deposit, "balance": balance} == both_ends(cash)


def test_a_balance_on_arrival_is_paid_with_the_late_end_of_the_days():
    payment = lot(balance="on arrival").payments[-1]

    assert ("when the goods arrive", Decimal(35)) == (payment.moment, payment.day)


@pytest.mark.parametrize(("covers", "day"), [("goods", 35), ("goods and freight", None), (None, None)])
def test_only_a_price_for_goods_alone_says_when_they_are_sent(covers, day):
    days = {payment.what: payment.day for payment in lot(covers=covers).payments}

    assert (0, 0, day) == (days["samples"], days["deposit"], days["balance"])


def test_a_price_to_the_door_does_not_say_when_the_goods_are_sent():
    assert lot().payments[-1].day is None


def test_the_peak_lasts_from_the_arrival_to_the_first_sale():
    # 35 days to the door at the latest, 70 to the first sale
    cash = lot(first_sale=TODAY + timedelta(days=70))

    assert (Decimal(5), Decimal(10)) == (cash.weeks_at_peak, cash.weeks_out)


def test_nobody_sells_before_the_goods_are_there():
    cash = lot(first_sale=TODAY + timedelta(days=7))

    assert (Decimal(0), Decimal(5)) == (cash.weeks_at_peak, cash.weeks_out)


def scheduled(*, with_sample=True, balance="before shipment", first_sale=None):
    """Ordered on day 20, sent on day 50, at the door on day 60, ready on day 70, by the schedule."""
    days = {"ordered_on": 20, "sent_on": 50, "door_on": 60, "ready_on": 70}
    course = {name: TODAY + timedelta(day) for name, day in days.items()} | {"with_sample": with_sample}
    row = quote(
        5, pieces=1, covers=ALL_PAID, way="air", days=30, deposit_percent=30, sample_price=30, sample_postage=15
    )
    read = replace(with_settings(inputs(row), balance=balance), timings={("Fernhill", "air"): timing(**course)})
    return cash_of(option(plan_of(read, selling("18.00"), ["Fernhill"]), 200), first_sale)


@pytest.mark.parametrize(
    ("balance", "day"), [("before shipment", 50), ("on arrival", 60), ("after checking", 70)], ids=str
)
def test_where_there_is_a_schedule_it_dates_the_payments(balance, day):
    assert [("samples", 0), ("deposit", 20), ("balance", day)] == [
        (payment.what, payment.day) for payment in scheduled(balance=balance).payments
    ]


def test_the_weeks_are_those_of_the_schedule():
    cash = scheduled(first_sale=TODAY + timedelta(days=95))

    assert (Decimal(35) / 7, Decimal(95) / 7) == (round(cash.weeks_at_peak, 27), round(cash.weeks_out, 26))


def test_nobody_sells_before_the_schedule_has_the_goods_ready():
    assert Decimal(10) == scheduled(first_sale=TODAY).weeks_out


def test_without_a_day_of_the_first_sale_no_weeks_are_named():
    assert (None, None) == (lot().weeks_at_peak, lot().weeks_out)


@pytest.mark.parametrize(("price", "needed", "likely"), [(5, 59, 180), (5, 59, 59), ((4, 6), 70, 180)], ids=str)
def test_the_money_is_back_after_its_part_of_the_selling_weeks(price, needed, likely):
    # with a sample at 45, sold at 18.00 over 12 weeks: 1045 take 59 pieces, and 1245, the most of a range, 70
    cash = lot(price=price, sold=selling("18.00", likely, selling_weeks="12"))

    assert round(Decimal(needed) * 12 / likely, 20) == round(cash.weeks_until_back, 20)


def test_money_that_the_likely_demand_does_not_bring_back_has_no_week():
    assert lot(sold=selling("18.00", 50, selling_weeks="12")).weeks_until_back is None


@given(st.integers(0, 100), st.integers(1, 500), st.decimals("0.01", 50, places=2))
def test_what_is_paid_adds_up_to_the_peak(deposit, pieces, price):
    rows = [quote(price, pieces=1, covers=ALL_PAID, deposit_percent=deposit)]
    one: Option = option(planned(*rows, wanted=pieces, sold=selling("18.00", fixed="20")), pieces)
    cash = cash_of(one, date(2027, 1, 1))

    assert sum(paid(cash).values()) == cash.peak[0] == one.total[0] + 20


def test_every_break_costs_what_it_costs():
    plan = planned(*prices(p100="5.00", p250="4.00"))

    assert [500, 1000, 1000] == [cash_of(one, None).peak[0] for one in plan.makers[0].options]


def test_a_deposit_and_a_sample_that_the_reply_does_not_price_are_not_known():
    assert ("samples", "deposit") == lot(deposit_percent=None, sample_price=None, sample_postage=None).unknown
    assert () == lot().unknown
