"""Freight: offers and rates, cell by cell."""

from decimal import Decimal

import pytest
from sourcing import costs_of, problems_of

from scorecard.costing.amounts import Span
from scorecard.costing.freight import Carton

CARTON = ["Pieces per carton", "Carton length cm", "Carton width cm", "Carton height cm", "Carton kg"]
HEAD = ["Maker", "Way", "Cost", "Rate per kg", "Currency", *CARTON]
WHOLE = [24, 40, 30, 30, "12.5 kg"]


def offers(path, *rows, head=HEAD):
    return costs_of(path, {"Freight": [head, *rows]}).offers


def problems(path, *rows, head=HEAD):
    return problems_of(path, {"Freight": [head, *rows]})


def test_a_cost_needs_no_carton(tmp_path):
    (offer,) = offers(tmp_path, ["Fernhill", "sea", 150, None, "EUR"])

    assert (Span.of(150), None, "sea") == (offer.cost, offer.carton, offer.way)


def test_a_rate_comes_with_its_carton(tmp_path):
    (offer,) = offers(tmp_path, ["Fernhill", "air", None, "5-6", "EUR", *WHOLE])
    carton = Carton(pieces=24, length_cm=Decimal(40), width_cm=Decimal(30), height_cm=Decimal(30), kg=Decimal("12.5"))

    assert (Span.of(5, 6), carton) == (offer.rate_per_kg, offer.carton)


def test_bounds_and_days_are_read(tmp_path):
    head = [*HEAD, "From pieces", "To pieces", "Days"]
    (offer,) = offers(tmp_path, ["Fernhill", "sea", 150, None, "EUR", *[None] * 5, 100, 300, "30 to 40"], head=head)

    assert (100, 300, Span.of(30, 40)) == (offer.from_pieces, offer.to_pieces, offer.days)


@pytest.mark.parametrize(
    ("row", "found"),
    [
        (["Nobody", "sea", 150, None, "EUR"], [("A2", "unknown-maker")]),
        (["Fernhill", None, 150, None, "EUR"], [("B2", "missing-value")]),
        (["Fernhill", "balloon", 150, None, "EUR"], [("B2", "not-a-choice")]),
        (["Fernhill", "sea", None, None, "EUR"], [("C2", "no-freight-price")]),
        (["Fernhill", "sea", 150, 5, "EUR", *WHOLE], [("D2", "two-freight-prices")]),
        (["Fernhill", "sea", 0, None, "EUR"], [("C2", "not-above-zero")]),
        (["Fernhill", "sea", 150, None, "USD"], [("E2", "currency-without-rate")]),
        (["Fernhill", "air", None, 5, "EUR"], [("F2", "carton-not-whole")]),
        (["Fernhill", "air", None, 5, "EUR", None, 40, 30, 30, 12], [("F2", "carton-not-whole")]),
        (["Fernhill", "air", None, 5, "EUR", 24, 40, None, 30, 12], [("H2", "carton-not-whole")]),
        (["Fernhill", "air", None, 5, "EUR", 24, "40-50", 30, 30, 12], [("G2", "range-for-carton")]),
    ],
)
def test_each_fault_stands_at_its_cell(tmp_path, row, found):
    assert found == problems(tmp_path, row)


def test_bounds_the_wrong_way_round_are_told(tmp_path):
    head = [*HEAD, "From pieces", "To pieces"]
    row = ["Fernhill", "sea", 150, None, "EUR", *[None] * 5, 300, 100]

    assert [("L2", "reversed-range")] == problems(tmp_path, row, head=head)
