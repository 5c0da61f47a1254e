"""How many to order on the page."""

from dataclasses import replace

from cases import AS_OF
from ordered import PAID, case_of
from quoted import quote
from sized import selling

from scorecard.assessment import assess
from scorecard.report.quantities import quantities_of_page
from scorecard.report.texts import bare

ANSWERS = {"Ash": 90, "Birch": 70, "Cedar": 50}
BREAKS = {
    "Ash": quote("5.00", maker="Ash", covers=PAID, pieces=100),
    "Ash, more": quote("4.40", maker="Ash", row=3, covers=PAID, pieces=250),
    "Birch": quote("4.50", maker="Birch", row=4, covers=PAID, pieces=200),
}


def quantities(quotes, sold, answers=ANSWERS):
    return quantities_of_page(assess(replace(case_of(answers, quotes), selling=sold), as_of=AS_OF))


def test_without_a_quote_or_a_price_there_are_no_rows():
    assert ((), ()) == (quantities({}, selling("12")).rows, quantities({"Ash": 5}, None).rows)


def test_every_size_has_a_row_and_the_best_of_each_maker_is_marked():
    found = quantities(BREAKS, selling("12.00", (150, 240, 300)))

    assert [("Ash", "100", False), ("Ash", "200", False), ("Ash", "250", True), ("Birch", "200", True)] == [
        (bare(row.maker), row.pieces, row.is_best) for row in found.rows
    ]


def test_a_row_says_what_is_left_at_each_demand():
    found = quantities(BREAKS, selling("12.00", (150, 240, 300)))

    # 250 at 4.40 are 1100.00; 150, 240 and 250 sold at 12.00; 0.3 × 700 + 0.4 × 1780 + 0.3 × 1900
    assert ("1100.00", "4.40", "4.58", "63 %", "92", ("+700.00", "+1780.00", "+1900.00", "+1492.00")) == (
        found.rows[2].total,
        found.rows[2].per_good,
        found.rows[2].per_likely,
        found.rows[2].margin,
        found.rows[2].back,
        found.rows[2].left,
    )
    assert ("low", "likely", "high", "on average") == found.cases


def test_with_the_likely_demand_alone_there_is_one_column():
    found = quantities(BREAKS, selling("12.00", 240))

    assert (("likely",), 1) == (found.cases, len(found.rows[0].left))


def test_a_size_with_a_cost_missing_claims_nothing():
    found = quantities({"Ash": quote(5, maker="Ash", covers="goods")}, selling("12.00", (150, 240, 300)))
    (row,) = found.rows

    assert ("–", "–", "–", ("–",) * 4, True) == (
        row.per_likely,
        row.margin,
        row.back,
        row.left,
        row.total.startswith("at least "),
    )


def test_the_figures_of_the_drawing_are_its_stretches():
    found = quantities(BREAKS, selling("12.00"))

    # Birch takes no fewer than 200, 900.00, which is as much as 180 at 5.00
    assert [
        ("100 to 180", "Ash", "5.00 to 5.00"),
        ("181 to 249", "Birch", "4.97 to 4.50"),
        ("250", "Ash", "4.40"),
    ] == [(row.pieces, bare(row.maker), row.costs) for row in found.stretches]


def test_names_are_isolated_and_made_visible_in_every_sentence():
    turned = "As\u202eh"
    row = quote("5.00", maker=turned, covers=PAID, pieces=100)
    found = quantities({"a": row, "Birch": 6}, selling("12.00", (150, 240, 300)), {turned: 90, "Birch": 70})
    told = [*found.said, *(words for one in found.makers for words in one.said), *(row.maker for row in found.rows)]

    assert [] == [words for words in told if "\u202e" in words]
    assert "\N{FIRST STRONG ISOLATE}" in found.said[0]
