"""One row of the sheet Quotes."""

from pathlib import Path

from scorecard.costing.amounts import Span
from scorecard.costing.quotes import FOR_ANY_WAY, STALE_DAYS, TERMS, QuoteRow
from scorecard.errors import Place

CELL = Place(file="makers.xlsx", sheet="Quotes", cell="A2")
ROW = QuoteRow(maker="Fernhill", row=2, price=Span.of(480), price_is_for="all", currency="EUR", places={"Maker": CELL})


def test_a_column_that_is_not_there_gives_the_maker_s_cell():
    assert CELL == ROW.at("Valid until")


def test_incoterms_2020_has_eleven_rules_four_of_them_for_water_only():
    assert (11, 4) == (len(TERMS), len(FOR_ANY_WAY))


def test_a_price_is_taken_to_hold_as_long_as_readme_says():
    said = " ".join((Path(__file__).parents[2] / "README.md").read_text("utf-8").split())

    assert f"to hold for {STALE_DAYS} days where the quote does not say" in said


def test_a_row_names_its_currency_unless_the_reader_says_otherwise():
    assert ROW.currency_named
