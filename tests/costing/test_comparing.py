"""What part of the total freight and border make, and the rate at which another maker becomes the cheapest."""

from dataclasses import replace
from decimal import Decimal

import pytest
from quoted import MAKER, charge, dollars, inputs, landed, offer, published, quote, uk

from scorecard.costing.amounts import Span
from scorecard.costing.comparing import (
    cheapest_maker,
    currency_changes,
    inside_the_price,
    known_shares,
    shares,
    where_it_changes,
)
from scorecard.costing.delivery_terms import by_term
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


@pytest.mark.parametrize(
    ("term", "inside"),
    [("EXW", []), ("FOB", []), ("CPT", ["freight"]), ("DAP", ["freight"]), ("DDP", ["freight", "border"])],
)
def test_freight_and_border_are_inside_the_price_as_its_term_has_it(term, inside):
    assert inside == inside_the_price(by_term(term, "")[0])


def test_an_open_total_has_no_shares():
    (cost,) = landed(quote(Span(Decimal(2), None), covers=ALL_PAID))

    assert {None} == set(shares(cost).values())


def test_of_several_readings_the_dearest_is_shared_out():
    # for goods alone 1000 + freight 90 + duty 43.60 + clearance 18 + VAT 230.32 = 1,381.92; else 1000 with all inside
    (cost,) = landed(
        quote(5, covers=None),
        offers=(offer("sea", 90, covers="door to door"),),
        imports=uk(charges=(charge("Clearance", 18, "clearance", group="border"),)),
    )

    assert {
        "maker": Decimal("72.4"),
        "freight": Decimal("6.5"),
        "border": Decimal("21.1"),
        "extra": Decimal("0.0"),
        "payment": Decimal("0.0"),
    } == shares(cost)


@pytest.mark.parametrize(("price", "share"), [("0", None), ("0.002", 100)])  # 0 and 0.40 GBP in all
def test_of_nothing_there_are_no_shares_and_of_little_there_are(price, share):
    (cost,) = landed(quote(price, covers=ALL_PAID))

    assert share == shares(cost)["maker"]


def test_shares_of_a_sum_with_a_gap_are_not_known():
    (whole,), (lacking,) = landed(quote(5, covers=ALL_PAID)), landed(quote(5))

    assert (100, None) == (known_shares(whole)["maker"], known_shares(lacking)["maker"])


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

    assert ((Decimal("1.125"), MAKER), None, ()) == (change.below, change.above, change.rivals)


def test_at_the_rate_that_is_named_the_other_maker_is_the_cheapest():
    # 4.4952 USD are 4.00 GBP at 1.1238: at 1.124 they are less, at 1.123 more
    (change,) = currency_changes(rivals(there="4.4952"))

    assert (Decimal("1.123"), MAKER) == change.below


def test_a_dearer_maker_becomes_the_cheapest_as_its_currency_falls():
    # 5.50 USD are 4.00 GBP at 1.375
    (change,) = currency_changes(rivals(there="5.50"))

    assert (MAKER, (Decimal("1.375"), "Oxlip"), None) == (change.cheapest, change.above, change.below)


def test_the_first_of_two_makers_to_become_the_cheapest_is_named():
    # 7.00 USD are 4.00 GBP at 1.75 only
    tansy, both = quote("7.00", maker="Tansy", row=4, currency="USD", covers=ALL_PAID), rivals(there="5.50")
    (change,) = currency_changes(replace(both, quotes=(tansy, *both.quotes)))

    assert (Decimal("1.375"), "Oxlip") == change.above


def test_makers_that_cost_the_same_at_every_rate_do_not_change_places():
    rows = [quote("4.00", maker=maker, row=row, currency="USD", covers=ALL_PAID) for row, maker in ((2, "A"), (3, "B"))]
    third = quote("4.00", row=4, covers=ALL_PAID)
    (alone,), (beside,) = (currency_changes(inputs(*rows, *more, rates=dollars())) for more in ((), (third,)))

    # with a third at 4.00 GBP all are level at 1; where two are level today, being level is no change
    assert (None, None) == (alone.below, alone.above)
    assert ((Decimal("0.9999"), MAKER), None) == (beside.below, beside.above)


def search(lead, today, end):
    """Return the rate that is found, and at how many rates the makers were costed."""
    rates = []

    def lead_at(rate):
        rates.append(rate)
        return Decimal(lead(rate)), "Oxlip"

    found = where_it_changes(lead_at, Decimal(today), Decimal(end))
    return found and found[0], len(rates)


@pytest.mark.parametrize(
    ("today", "end", "level", "found", "times"),
    [
        # the two ends, and a rate on either side of the place
        ("1.25", "2.5", "1.3333", "1.334", 4),
        ("1.25", "2.5", "1.5", "1.500", 4),
        ("1.25", "0.625", "0.71234", "0.7123", 4),
        ("1.25", "0.625", "0.8", "0.8000", 4),
        ("0.92", "1.84", "1.2341", "1.235", 4),  # four digits on either side of 1
        # one of these is an end, or lies before today's
        ("1.25", "2.5", "1.2503", "1.251", 3),
        ("1.25", "2.5", "2.4995", "2.500", 3),
        ("1.25", "0.625", "1.2497", "1.249", 3),
        ("1.25", "0.625", "0.62505", "0.6250", 3),
        ("1.234567", "2.469134", "1.2346", "1.235", 3),
    ],
)
def test_on_a_straight_line_the_first_rate_of_four_digits_is_found_at_once(today, end, level, found, times):
    towards = 1 if Decimal(end) > Decimal(today) else -1

    assert (Decimal(found), times) == search(lambda rate: (Decimal(level) - rate) * towards, today, end)


@pytest.mark.parametrize(("ahead", "behind"), [(1, -(10**9)), (10**9, -1)])
@pytest.mark.parametrize(("end", "at"), [("2", "1.734"), ("0.5", "0.7340")])
def test_a_leap_is_found_by_halving(ahead, behind, end, at):
    towards = 1 if Decimal(end) > 1 else -1
    found, times = search(lambda rate: ahead if (Decimal(at) - rate) * towards > 0 else behind, "1", end)

    # 1,000 or 5,000 rates are halved 10 or 13 times, each time with a guess on either side
    assert (Decimal(at), True) == (found, times <= 2 + 3 * 13)


@pytest.mark.parametrize(
    ("lead", "expected"),
    [
        (lambda rate: 0, None),  # level at every rate
        (lambda rate: rate - 1, None),  # level today, and ahead from there on
        (lambda rate: Decimal("-0.5"), None),  # another is cheaper today already
        (lambda rate: Decimal("0.5"), None),
        (lambda rate: min(Decimal(0), Decimal("1.5") - rate), "1.501"),  # level up to 1.5
        (lambda rate: 2 - rate, "2.000"),  # level at the end
    ],
)
def test_level_counts_as_a_change_unless_somebody_is_level_today(lead, expected):
    assert (expected and Decimal(expected)) == search(lead, "1", "2")[0]


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


def ranged(*more):
    """Fernhill 4.00 to 5.00 GBP; Oxlip 4.50 USD, 3.60 GBP at today's 1.25 USD for one."""
    there = quote("4.50", maker="Oxlip", row=3, currency="USD", covers=ALL_PAID)
    return inputs(quote(Span.of(4, 5), covers=ALL_PAID), there, *more, rates=dollars())


def test_a_rival_with_a_range_may_be_cheaper_from_its_low_end_on():
    # 4.50 USD are 4.00 GBP, the low end, at 1.125 USD for one; 4.50, the middle, at 1
    (change,) = currency_changes(ranged())

    assert ("Oxlip", True, (MAKER,)) == (change.cheapest, change.is_sure, change.rivals)
    assert ((Decimal("1.125"), MAKER), (Decimal("1.000"), MAKER)) == (change.unsure_below, change.below)
    assert (None, None) == (change.unsure_above, change.above)


def test_a_rival_that_lacks_a_cost_may_be_cheaper_from_its_least_on():
    # Tansy costs 3.00 with duty of 4 % and VAT of 20 %, 3.744 GBP, or more, which 4.50 USD are at 1.2019
    lacks = quote("3.00", maker="Tansy", row=4, covers="goods")
    (change,) = currency_changes(ranged(lacks))

    assert (Decimal("1.201"), "Tansy") == change.unsure_below
    assert ((Decimal("1.000"), MAKER), ("Tansy",)) == (change.below, change.rivals)


def test_a_range_of_todays_cheapest_counts_by_its_high_end():
    # 4.20 to 4.50 USD are 3.36 to 3.60 GBP: up to 4.00 at 1.125, and 4.00 by the middle at 1.0875
    there = quote(Span.of("4.20", "4.50"), maker="Oxlip", row=3, currency="USD", covers=ALL_PAID)
    (change,) = currency_changes(inputs(quote("4.00", covers=ALL_PAID), there, rates=dollars()))

    assert ((Decimal("1.125"), MAKER), (Decimal("1.087"), MAKER)) == (change.unsure_below, change.below)


def test_where_every_cost_in_reach_is_known_it_changes_at_once():
    dear = quote(Span.of(400, 500), maker="Tansy", row=4, covers=ALL_PAID)
    both = rivals()
    (change,) = currency_changes(replace(both, quotes=(*both.quotes, dear)))

    assert ((Decimal("1.125"), MAKER), None, ()) == (change.below, change.unsure_below, change.rivals)


def test_where_it_is_not_sure_today_no_further_rate_is_named():
    # 3.60 GBP today, and Fernhill from 3.50 on; 4.25 by the middle at 1.058
    there = quote("4.50", maker="Oxlip", row=3, currency="USD", covers=ALL_PAID)
    (change,) = currency_changes(inputs(quote(Span.of("3.50", 5), covers=ALL_PAID), there, rates=dollars()))

    assert (False, None, (MAKER,)) == (change.is_sure, change.unsure_below, change.rivals)
    assert (Decimal("1.058"), MAKER) == change.below
