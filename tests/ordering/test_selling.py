"""What is left of one price."""

from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st
from sized import selling


def test_fees_and_packing_come_off_the_price_as_in_the_composite_example():
    # 12.00 less 2.9 % + 0.30 and 0.45 packing; the composite example of landed cost, figures invented [computed]
    sold = selling("12.00", payment_fee_percent="2.9", payment_fee="0.30", packing="0.45")

    assert (Decimal("0.648"), Decimal("10.902")) == (sold.deductions["payment fee"], sold.kept)


def test_sales_tax_is_a_part_of_the_price_by_the_rate_on_top():
    # 23 % on 10.00 make 12.30
    sold = selling("12.30", sales_tax_percent="23")

    assert (Decimal("2.3"), Decimal(10)) == (sold.sales_tax, sold.takings)


def test_a_channel_takes_its_part_of_the_whole_price():
    assert Decimal("10.80") == selling("12.00", channel_fee_percent="10").kept


def test_the_bearable_cost_leaves_just_the_wanted_margin():
    # of 10.00, 1.00 packing and 40 % wanted leave 5.00
    assert Decimal("5.00") == selling("10.00", packing="1.00", wanted_margin_percent="40").bearable


def test_without_a_wanted_margin_no_cost_is_unbearable():
    assert selling("10.00").bearable is None


@given(*(st.decimals(0, 40, places=2) for _ in range(4)))
def test_what_is_kept_and_what_is_deducted_add_up_to_the_price(tax, channel, payment, packing):
    sold = selling(
        "50.00", sales_tax_percent=tax, channel_fee_percent=channel, payment_fee_percent=payment, packing=packing
    )

    assert abs(sum(sold.deductions.values(), sold.kept) - 50) < Decimal("1e-40")
