"""What will have been paid before anything can be checked, and what sampling costs."""

from dataclasses import replace
from decimal import Decimal

import pytest
from quoted import MAKER, inputs, landed, published, quote, uk
from sized import wanting

from scorecard.costing.amounts import OPEN, Span
from scorecard.costing.inputs import CostSettings, MakerFacts
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


def either_200_or_400(*rows, balance="after checking"):
    """Return what is paid for four designs, with a minimum of 100 that may be per order or per design."""
    facts = {MAKER: MakerFacts(maker=MAKER, minimum=Span.of(100), country="CN")}
    rows = (replace(row, covers=ALL_PAID) for row in rows)
    (cost,) = landed(*rows, brief=wanting(200, 4), makers=facts, settings=CostSettings(balance=balance))
    return paid_before_checking(cost)


@pytest.mark.parametrize(("balance", "ends"), [("after checking", (300, 600)), ("on arrival", (1000, 2000))])
def test_a_deposit_reaches_from_that_of_the_fewest_pieces_to_that_of_the_most(balance, ends):
    paid = either_200_or_400(quote(5, deposit_percent=30), balance=balance)

    assert (300, 600) == (paid.deposit_low, paid.deposit_high)
    assert ends == (paid.low, paid.high)


@pytest.mark.parametrize("unknown_at", [200, 400])
def test_a_deposit_that_is_unknown_at_either_quantity_is_not_known(unknown_at):
    said = {pieces: {"deposit_percent": 30} for pieces in (200, 400)}
    said[unknown_at] = {"unknown": frozenset({"deposit_percent"})}
    paid = either_200_or_400(quote(5, pieces=200, **said[200]), quote(5, row=3, pieces=400, **said[400]))

    # from nothing to the whole of 1000 or 2000 where it is not known; 300 or 600 where it is
    assert (Decimal(0), {200: Decimal(1000), 400: Decimal(2000)}[unknown_at]) == (paid.low, paid.high)
    assert not paid.is_deposit_known
    assert paid.words.endswith("the deposit is not known: ask")


def test_a_deposit_of_nothing_is_nothing():
    assert (Decimal(0), Decimal(0)) == (lot(0).deposit_low, lot(0).deposit_high)


def test_a_balance_on_arrival_is_paid_before_opening():
    assert Decimal(1000) == lot(settings=CostSettings(balance="on arrival")).low


def test_tax_that_comes_back_is_paid_all_the_same():
    (cost,) = landed_costs(published(tax_is="recoverable"))

    assert Decimal("441.84") == paid_before_checking(cost).low


def test_a_deposit_is_a_part_of_the_sales_tax_too_where_no_border_is_crossed():
    # 30 % of 1000 and 20 % on top; the rest of both waits
    facts, waits = {MAKER: MakerFacts(maker=MAKER, country="GB")}, CostSettings(balance="after checking")
    row = quote(5, covers="goods and freight", way="road", deposit_percent=30)
    (cost,) = landed(row, makers=facts, settings=waits, imports=uk(price_has_tax=False))
    paid = paid_before_checking(cost)

    assert (Decimal(360),) * 4 == (paid.deposit_low, paid.deposit_high, paid.low, paid.high)


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
    assert [True, True, False] == [one.is_known_of for one in found.makers]


@pytest.mark.parametrize(
    ("unsure", "missing"), [(False, ["sample postage"]), (True, ["sample price", "sample postage"])]
)
def test_of_a_free_sample_the_price_is_known_unless_a_reply_does_not_know_it(unsure, missing):
    facts = {MAKER: MakerFacts(maker=MAKER, country="CN", sample="free")}
    row = quote(5, unknown=frozenset({"sample_price"} if unsure else ()))
    (one,) = sampling_cost(inputs(row, makers=facts), [MAKER]).makers

    assert (Decimal(0), missing) == (one.low, list(one.missing))


def test_where_the_first_reply_does_not_know_the_price_of_a_free_sample_a_later_one_does_not_settle_it():
    facts = {MAKER: MakerFacts(maker=MAKER, country="CN", sample="free")}
    rows = (
        quote(5, way="sea", sample_postage=5, unknown=frozenset({"sample_price"})),
        quote(6, row=3, way="air", sample_price=30),
    )
    (one,) = sampling_cost(inputs(*rows, makers=facts), [MAKER]).makers

    assert (("sample price",), Decimal(5), OPEN) == (one.missing, one.low, one.high)


def test_of_two_replies_the_first_that_names_a_sample_says_what_it_costs():
    replies = (
        quote(5, way="sea", sample_postage=15),
        quote(6, row=3, way="air", sample_price=30, sample_postage=18),
        quote(7, row=4, way="express", sample_price=40, sample_postage=20),
    )

    assert Decimal(45) == sampling_cost(inputs(*replies), [MAKER]).low


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
