"""Own orders in words."""

from datetime import date

import pytest

from scorecard.costing.amounts import Span
from scorecard.memory import Record, Totals
from scorecard.memory_words import against_words, record_words, totals_words

AS_OF = date(2026, 11, 25)


@pytest.mark.parametrize(
    ("known", "words"),
    [
        ({}, "ordered, the day is not noted: pieces not noted; no day was promised, not here yet"),
        ({"pieces": 1}, "ordered, the day is not noted: 1 piece; no day was promised, not here yet"),
        (
            {"promised": date(2026, 11, 24)},
            "ordered, the day is not noted: pieces not noted; promised for 24 November 2026, not here yet, 1 day late "
            "so far",
        ),
        (
            {"promised": AS_OF, "arrived": AS_OF},
            "ordered, the day is not noted: pieces not noted; promised for 25 November 2026, arrived on 25 November "
            "2026, on the day; faulty pieces not noted; what it cost in all is not noted",
        ),
        (
            {"arrived": AS_OF, "faulty": 0, "paid": Span.of(5, 6), "currency": "EUR"},
            "ordered, the day is not noted: pieces not noted; no day was promised, arrived on 25 November 2026; "
            "faulty: 0; paid 5.00 to 6.00 EUR; nothing was quoted for so many pieces",
        ),
        (
            {"paid": Span.of(5), "quoted": Span.of(4), "currency": "EUR"},
            "ordered, the day is not noted: pieces not noted; no day was promised, not here yet; paid 5.00 EUR; quoted "
            "at least 4.00 EUR, with costs missing",
        ),
    ],
)
def test_what_is_not_known_is_said(known, words):
    assert words == record_words(Record(maker="Fernhill", item="mug", **known), AS_OF)


@pytest.mark.parametrize(
    ("paid", "quoted", "words"),
    [
        (Span.of(110), Span.of(90, 100), "10.0 % more"),
        (Span.of(90), Span.of(100, 120), "10.0 % less"),
        (Span.of(100), Span.of(100), "just as quoted"),
        (Span.of(100), Span.of(90, 120), "within what was quoted"),
        (Span.of(100), Span(Span.of(90).low, None), "within what was quoted"),
        (Span.of(0), Span.of(0), "just as quoted"),
    ],
)
def test_paid_stands_against_the_nearer_end_of_what_was_quoted(paid, quoted, words):
    assert words == against_words(paid, quoted)


def test_of_orders_of_which_nothing_is_known_nothing_is_said():
    made = Totals(orders=1, judged=0, on_time=0, pieces=0, faulty=0)

    assert "1 own order: nothing to tell of them yet" == totals_words(made)
