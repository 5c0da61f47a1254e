"""A whole reply in one cell: where each part goes."""

import pytest

from scorecard.reading.reply_text import ALL_COVERED, parts_of_reply, where_parts_go


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        (
            "480 all in, 100 pieces, by air",
            {"Pieces": "100", "Price": "480", "Price is for": "all", "Price covers": ALL_COVERED, "Way": "air"},
        ),
        (
            "2.10 each FOB Ningbo, 25-30 days",
            {"Price": "2.10", "Price is for": "each", "Days": "25-30", "Delivery term": "FOB", "Place": "Ningbo"},
        ),
        (
            "US$2.40/pc, 500 pcs, 30% deposit",
            {"Pieces": "500", "Price": "2.40", "Price is for": "each", "Currency": "USD", "Deposit %": "30"},
        ),
        (
            "1,480 in total for 200 pieces by courier, 20 working days",
            {"Pieces": "200", "Price": "1,480", "Price is for": "all", "Way": "express", "Days": "20 working days"},
        ),
        ("EUR 4,20 per piece", {"Price": "4,20", "Price is for": "each", "Currency": "EUR"}),
        ("480 ALL IN", {"Price": "480", "Price is for": "all", "Price covers": ALL_COVERED}),
        ("$3.20 each", {"Price": "3.20", "Price is for": "each"}),  # of several currencies
        ("on request", {}),
    ],
)
def test_each_part_is_told_under_its_heading(text, parts):
    assert parts == parts_of_reply(text)


@pytest.mark.parametrize("text", ["on request", "about 3", "200 x 2.10", "4.20 USD", "100 pieces"])
def test_where_at_most_a_price_is_recognised_nothing_is_said(text):
    assert where_parts_go(text) is None


def test_the_words_say_what_to_write_where():
    assert (
        "Give each part the cell of its heading in this row – Pieces: 100; Price: 480; Currency: GBP"
        == where_parts_go("£480 for 100 pcs")
    )
