"""What an order was quoted at: figures worked out by hand beside each test."""

from datetime import date
from decimal import Decimal

from order_folder import CRITERIA, HEADINGS, MAKERS, lay_out

from scorecard.costing.amounts import Span
from scorecard.costing.quoted_then import quoted_then
from scorecard.reading.folder import read_folder

AS_OF = date(2026, 11, 25)
PLAIN = {
    "Maker": "Fernhill",
    "Price is for": "each",
    "Currency": "EUR",
    "Price covers": "to my door, duty and tax paid",
}


def inputs(tmp_path, *rows, **files):
    quotes = [HEADINGS, *([({**PLAIN, **row}).get(heading) for heading in HEADINGS] for row in rows)]
    return read_folder(lay_out(tmp_path, Quotes=quotes, Freight=[["Maker", "Way"]], **files), as_of=AS_OF).costs


def amount(costs, pieces=200, day=AS_OF, way=None):
    found = quoted_then(costs, "Fernhill", pieces, day, way)
    return None if found is None else found.amount


def test_the_price_break_for_the_pieces_ordered_counts(tmp_path):
    costs = inputs(tmp_path, {"Pieces": 100, "Price": 6}, {"Pieces": 300, "Price": 5})

    assert (Span.of(1500), Span.of(600)) == (amount(costs, 300), amount(costs, 100))


def test_the_minimum_is_not_put_in_place_of_what_was_ordered(tmp_path):
    makers = [MAKERS[0], ["Fernhill", 4.5, 400, "design", "Portugal"], *MAKERS[2:]]

    assert Span.of(1200) == amount(inputs(tmp_path, {"Pieces": 100, "Price": 6}, Makers=makers))


def test_fewer_pieces_than_anything_quoted_were_not_quoted(tmp_path):
    assert None is amount(inputs(tmp_path, {"Pieces": 100, "Price": 6}), pieces=50)


def test_the_quotes_of_that_day_count_alone(tmp_path):
    costs = inputs(
        tmp_path,
        {"Quoted on": "2026-09-01", "Pieces": 100, "Price": 6},
        {"Quoted on": "2026-11-01", "Pieces": 100, "Price": 8},
    )

    assert [None, Span.of(1200), Span.of(1600)] == [
        amount(costs, day=day) for day in (date(2026, 8, 31), date(2026, 10, 31), date(2026, 11, 1))
    ]


def test_the_way_by_which_it_was_sent_counts(tmp_path):
    costs = inputs(tmp_path, {"Pieces": 1, "Price": 6, "Way": "sea"}, {"Pieces": 1, "Price": 9, "Way": "air"})

    assert [Span.of(1200), Span.of(1800), None] == [amount(costs, way=way) for way in ("sea", "air", "post")]


def test_tax_that_comes_back_was_paid_all_the_same(tmp_path):
    criteria = CRITERIA.replace('tax = "cost"', 'tax = "recoverable"').replace("price_has_tax = true", "")
    row = {"Pieces": 1, "Price": 5, "Price covers": "goods and freight", "Way": "road"}
    makers = [MAKERS[0], ["Fernhill", 4.5, 60, "design", "Ireland"], *MAKERS[2:]]
    costs = inputs(
        tmp_path, row, criteria=criteria.replace("[import]", "[import]\nprice_has_tax = false"), Makers=makers
    )

    # 200 × 5 = 1000, and 20 % of it
    assert Span.of(Decimal(1200)) == amount(costs)


def test_what_the_price_covered_is_left_open_where_nobody_said(tmp_path):
    row = {"Pieces": 1, "Price": 5, "Price covers": "don't know", "Way": "road"}
    makers = [MAKERS[0], ["Fernhill", 4.5, 60, "design", "Ireland"], *MAKERS[2:]]
    criteria = CRITERIA.replace("price_has_tax = true", "price_has_tax = false")
    found = amount(inputs(tmp_path, row, criteria=criteria, Makers=makers))

    # 200 × 5 = 1000 to the door; or 20 % of it on top
    assert Span.of(1000, 1200) == found


def test_a_cost_that_was_missing_is_said(tmp_path):
    row = {"Maker": "Brightholm", "Pieces": 1, "Price": 2, "Price covers": "goods", "Way": "sea"}
    found = quoted_then(inputs(tmp_path, row), "Brightholm", 200, AS_OF, None)

    assert (False, True) == (found.in_full, found.amount.low >= 400)


def test_a_quote_that_was_over_on_the_day_of_the_order_does_not_count(tmp_path):
    costs = inputs(tmp_path, {"Quoted on": "2026-09-01", "Pieces": 100, "Price": 6, "Valid until": "2026-10-31"})

    assert (Span.of(1200), None) == (amount(costs, day=date(2026, 10, 31)), amount(costs, day=date(2026, 11, 1)))
