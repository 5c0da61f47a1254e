"""What freight and border add, and the rate at which another maker becomes the cheapest."""

from decimal import Decimal

import pytest
from quoted import MAKER, dollars, inputs, landed, published, quote

from scorecard.costing.amounts import Span
from scorecard.costing.comparing import cheapest_maker, currency_changes, shares
from scorecard.costing.landed import landed_costs

ALL_PAID = "to my door, duty and tax paid"


def test_the_shares_of_the_composite_example():
    # 441.84 in all: maker 240.00, freight 36.00 + 47.12 + 4.00, border 18.00 + 13.08 + 71.64, bank 12.00
    (cost,) = landed_costs(published())

    assert {
        "maker": Decimal("54.3"),
        "freight": Decimal("19.7"),
        "border": Decimal("23.2"),
        "extra": Decimal("0.0"),
        "payment": Decimal("2.7"),
    } == shares(cost)


def test_what_the_price_has_inside_has_no_share():
    (cost,) = landed(quote(5, covers=ALL_PAID))

    assert (None, None) == (shares(cost)["freight"], shares(cost)["border"])


def test_an_open_total_has_no_shares():
    (cost,) = landed(quote(Span(Decimal(2), None), covers=ALL_PAID))

    assert {None} == set(shares(cost).values())


def rivals(here="4.00", there="4.50", **more):
    """One maker in GBP, one in USD at 1.25 for one GBP, both with all paid."""
    return inputs(
        quote(here, covers=ALL_PAID),
        quote(there, maker="Oxlip", row=3, currency="USD", covers=ALL_PAID),
        rates=dollars(),
        **more,
    )


def test_the_cheapest_maker_is_that_of_the_cheapest_good_piece():
    found = [cheapest_maker(rivals()), cheapest_maker(rivals(there="5.50"))]

    assert [("Oxlip", True), (MAKER, True)] == [(one.piece.maker, one.is_sure) for one in found]


def test_the_cheapest_maker_changes_where_both_cost_the_same():
    # 4.50 USD are 4.00 GBP at 1.125 USD for one GBP
    (change,) = currency_changes(rivals())
    rate, maker = change.below

    assert (MAKER, None) == (maker, change.above)
    assert pytest.approx(1.125, rel=1e-3) == float(rate)


def test_a_dearer_maker_becomes_the_cheapest_as_its_currency_falls():
    # 5.50 USD are 4.00 GBP at 1.375
    (change,) = currency_changes(rivals(there="5.50"))
    rate, maker = change.above

    assert (MAKER, "Oxlip", None) == (change.cheapest, maker, change.below)
    assert pytest.approx(1.375, rel=1e-3) == float(rate)


def test_a_rate_at_which_nothing_changes_within_half_and_twice_is_not_named():
    (change,) = currency_changes(rivals(there="20.00"))

    assert (None, None) == (change.below, change.above)


def test_one_maker_alone_has_nobody_to_change_with():
    assert () == currency_changes(inputs(quote(4, covers=ALL_PAID, currency="USD"), rates=dollars()))


def test_a_sum_with_a_gap_is_not_compared():
    assert cheapest_maker(inputs(quote(4, covers=ALL_PAID), quote(1, maker="Oxlip", row=3))) is None


def test_a_rate_that_no_quote_uses_changes_nothing():
    both = inputs(quote(4, covers=ALL_PAID), quote(5, maker="Oxlip", row=3, covers=ALL_PAID), rates=dollars())

    assert () == currency_changes(both)


def test_who_may_be_cheaper_already_is_told_with_the_change():
    # 4.00 to 5.00 GBP has the middle 4.50, above 3.60; but a third asks 3.00 or more
    rows = (quote(Span(Decimal(3), None), maker="Tansy", row=4, covers=ALL_PAID), quote("4.00", covers=ALL_PAID))
    there = quote("4.50", maker="Oxlip", row=3, currency="USD", covers=ALL_PAID)
    (change,) = currency_changes(inputs(*rows, there, rates=dollars()))

    assert ("Oxlip", ("Tansy",)) == (change.cheapest, change.rivals)


def test_who_may_be_cheaper_at_half_or_twice_the_rate_is_told_too():
    # 3.60 GBP today and 7.20 at twice the dollar: a third lacks its freight and more, and costs at least 4.80 GBP
    lacks = quote("4.00", maker="Tansy", row=4, covers="goods")
    there = quote("4.50", maker="Oxlip", row=3, currency="USD", covers=ALL_PAID)
    (change,) = currency_changes(inputs(quote("9.00", covers=ALL_PAID), there, lacks, rates=dollars()))

    assert (None, None, ("Tansy",)) == (change.below, change.above, change.rivals)
