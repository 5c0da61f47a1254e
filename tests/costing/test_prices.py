"""The price for a quantity, by price breaks; the example of five thousand pieces is a published one.

Price breaks 5.00, 4.80 from 1000, 4.75 from 2000 (a published order-quantity problem, totals recomputed).
"""

from decimal import Decimal

import pytest

from scorecard.costing.amounts import Span
from scorecard.costing.prices import least_quoted, price_for, price_words, row_for
from scorecard.costing.quotes import QuoteRow
from scorecard.costing.replies import Reply


def reply(*breaks, price_is_for="each", currency="USD"):
    return Reply(
        rows=tuple(
            QuoteRow(
                maker="Fernhill",
                row=at,
                pieces=pieces,
                price=price if isinstance(price, Span) else Span.of(price),
                price_is_for=price_is_for,
                currency=currency,
            )
            for at, (pieces, price) in enumerate(breaks, start=2)
        )
    )


BREAKS = reply((1, "5.00"), (1000, "4.80"), (2000, "4.75"))


@pytest.mark.parametrize(("quantity", "total"), [(999, "4995.00"), (1000, "4800.00"), (2000, "9500.00")])
def test_a_break_holds_from_its_own_quantity_on(quantity, total):
    assert Span.of(total) == price_for(BREAKS, quantity, quantity).total


def test_rows_need_not_stand_in_order():
    assert Span.of(1000) == price_for(reply((250, 4), (100, 5)), 250, 250).total


def test_below_the_least_break_its_row_is_all_there_is():
    assert 100 == row_for(reply((100, 5), (250, 4)), 60).pieces


def test_the_least_quantity_quoted_is_that_of_the_lowest_break():
    assert [100, None] == [least_quoted(reply((250, 4), (100, 5))), least_quoted(reply((None, 4)))]


def test_a_reply_that_names_no_quantity_for_one_price_has_no_least():
    assert None is least_quoted(reply((250, 4), (None, 5)))


@pytest.mark.parametrize(
    ("breaks", "quantity", "row"),
    [
        (((None, 5), (2, 4)), 1, 2),
        (((None, 5), (2, 4)), 2, 3),
        (((None, 5), (1, 4)), 1, 2),  # both from the first piece on: the one that stands first
        (((1, 4), (None, 5)), 1, 2),
    ],
)
def test_a_price_that_names_no_quantity_holds_from_the_first_piece(breaks, quantity, row):
    assert row == row_for(reply(*breaks), quantity).row


def test_a_price_for_all_stands_as_it_is_for_just_those_pieces():
    price = price_for(reply((100, 480), price_is_for="all"), 100, 100)

    assert (Span.of(480), "") == (price.total, price.doubt)


def test_a_price_for_all_of_other_pieces_is_taken_in_proportion_with_a_doubt():
    price = price_for(reply((100, 480), price_is_for="all"), 250, 250)

    assert (Span.of(1200), "price for 250 pieces (quoted for 100, taken in proportion)") == (price.total, price.doubt)


def test_a_price_for_all_without_pieces_is_for_what_was_wanted():
    lot = reply((None, 480), price_is_for="all")

    assert ["", "price for 300 pieces (quoted for 200, taken in proportion)"] == [
        price_for(lot, 200, 200).doubt,
        price_for(lot, 300, 200).doubt,
    ]


def test_a_price_range_gives_both_totals():
    assert Span.of(240, 300) == price_for(reply((1, Span.of("1.20", "1.50"))), 200, 200).total


def test_an_open_price_stays_open():
    assert price_for(reply((1, Span(Decimal(2), None))), 200, 200).total == Span(Decimal(400), None)


def test_the_working_is_said():
    each, lot = price_for(BREAKS, 200, 200), price_for(reply((100, 480), price_is_for="all"), 250, 250)

    assert ["200 × 5.00 USD", "480.00 USD for 100 × 250 ÷ 100"] == [
        price_words(each, each.row.price),
        price_words(lot, lot.row.price),
    ]
