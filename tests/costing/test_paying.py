"""What will have been paid before anything can be checked, and what sampling costs."""

from dataclasses import replace
from decimal import Decimal

from quoted import MAKER, inputs, landed, published, quote

from scorecard.costing.amounts import OPEN, Span
from scorecard.costing.inputs import CostSettings
from scorecard.costing.landed import landed_costs
from scorecard.costing.paying import paid_before_checking, sampling_cost

ALL_PAID = "to my door, duty and tax paid"


def lot(deposit=30, *, settings=None, **more):
    (cost,) = landed(quote(5, covers=ALL_PAID, deposit_percent=deposit, **more), settings=settings)
    return paid_before_checking(cost)


def test_by_default_the_whole_price_is_paid_before_the_goods_are_seen():
    assert (Decimal(1000), Decimal(300)) == (lot().low, lot().deposit_low)


def test_where_the_rest_waits_only_the_deposit_is_at_risk():
    paid = lot(settings=CostSettings(balance="after checking"))

    assert (Decimal(300), Decimal(300)) == (paid.low, paid.high)


def test_an_unknown_deposit_may_be_anything():
    paid = lot(None, settings=CostSettings(balance="after checking"))

    assert (Decimal(0), Decimal(1000)) == (paid.low, paid.high)
    assert (False, True) == (paid.is_deposit_known, lot().is_deposit_known)
    assert paid.words.endswith("the deposit is not known: ask")


def test_a_deposit_of_nothing_is_nothing():
    assert (Decimal(0), Decimal(0)) == (lot(0).deposit_low, lot(0).deposit_high)


def test_a_balance_on_arrival_is_paid_before_opening():
    assert Decimal(1000) == lot(settings=CostSettings(balance="on arrival")).low


def test_tax_that_comes_back_is_paid_all_the_same():
    (cost,) = landed_costs(published(tax_is="recoverable"))

    assert Decimal("441.84") == paid_before_checking(cost).low


def test_a_sample_that_is_paid_for_counts_among_what_is_paid():
    settings = CostSettings(sampled=frozenset({MAKER}))

    assert Decimal(1045) == lot(sample_price=30, sample_postage=15, settings=settings).low


def sampled(*makers, settings=None):
    quotes = (
        quote(5, sample_price=30, sample_postage=15),
        quote(4, maker="Oxlip", row=3, sample_price=(10, 20), sample_postage=12),
        quote(3, maker="Tansy", row=4, sample_price=25),
    )
    return sampling_cost(inputs(*quotes, settings=settings), makers)


def test_sampling_two_makers_costs_price_and_postage_of_both():
    both = sampled(MAKER, "Oxlip")

    assert (Decimal(67), Decimal(77), ()) == (both.low, both.high, both.unknown)


def test_a_maker_whose_sample_is_not_priced_is_named():
    found = sampled(MAKER, "Tansy", "Nobody")

    assert (Decimal(70), OPEN, ("Tansy", "Nobody")) == (found.low, found.high, found.unknown)
    assert [(), ("sample postage",), ("sample price", "sample postage")] == [one.missing for one in found.makers]


def test_a_sample_already_paid_for_is_not_in_the_sum():
    found = sampled(MAKER, "Oxlip", settings=CostSettings(sampled=frozenset({MAKER})))

    assert ((MAKER,), Decimal(22)) == (found.already_paid, found.low)


def test_an_open_sample_price_leaves_the_sum_open():
    one = inputs(quote(5, sample_price=Span(Decimal(30), None), sample_postage=5))

    assert sampling_cost(one, [MAKER]).high == OPEN


def test_what_a_reply_with_several_readings_takes_is_given_from_least_to_most():
    open_cover = replace(published(), quotes=(replace(published().quotes[0], covers=None),))
    (cost,) = landed_costs(open_cover)
    paid = paid_before_checking(cost)

    assert paid.low < paid.high
