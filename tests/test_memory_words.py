"""Own orders in words."""

from dataclasses import fields, replace
from datetime import date

import pytest

from scorecard.costing.amounts import Span
from scorecard.memory import Record, Totals
from scorecard.memory_words import CHANGING, against_words, changes_words, record_words, totals_words

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
            "faulty: 0; paid 5.00 to 6.00 EUR; no quote that held that day was for so many pieces",
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


@pytest.mark.parametrize(
    ("known", "words"),
    [
        ({"pieces": 200, "faulty": 6}, "faulty: 6 of 200 (3.0 of 100)"),
        ({"pieces": 200, "faulty": 6, "opened": 200}, "faulty: 6 of 200 (3.0 of 100)"),
        ({"pieces": 200, "faulty": 6, "opened": 32}, "faulty: 6 of 32 opened (18.8 of 100)"),
        ({"faulty": 6, "opened": 32}, "faulty: 6 of 32 opened (18.8 of 100)"),
        ({"faulty": 6}, "faulty: 6"),
    ],
)
def test_faulty_pieces_are_told_among_those_that_were_opened(known, words):
    assert words in record_words(Record(maker="Fernhill", item="mug", **known), AS_OF).split("; ")


def test_totals_with_a_sample_say_that_they_are_of_the_opened_pieces():
    made = Totals(orders=2, judged=0, on_time=0, pieces=132, faulty=6, in_part=1)

    assert "2 own orders: 6 of 132 opened pieces faulty (4.5 of 100)" == totals_words(made)


def test_what_changed_is_told_with_what_it_was():
    before = Record(maker="Fernhill", item="mug", pieces=200, paid=Span.of(5), currency="EUR")
    after = replace(before, arrived=AS_OF, paid=Span.of(6), quoted_in_full=True)

    assert [
        "arrived on 25 November 2026 (before: not noted)",
        "paid 6.00 EUR (before: 5.00 EUR)",
        "quoted without a gap yes (before: no)",
    ] == changes_words(before, after)


def test_every_change_that_makes_a_record_new_is_told():
    kept = {one.name for one in fields(Record)} - {"recorded_on", "number", "ordered"}

    assert kept == {key for _, key in CHANGING}


def test_of_orders_of_which_nothing_is_known_nothing_is_said():
    made = Totals(orders=1, judged=0, on_time=0, pieces=0, faulty=0)

    assert "1 own order: nothing to tell of them yet" == totals_words(made)
