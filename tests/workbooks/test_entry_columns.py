"""The columns of the entry workbook, as the design fixes them."""

import pytest

from scorecard.workbooks.entry_columns import FREIGHT, LATER_SHEETS, QUOTES, Column

COLUMNS = [(sheet, column) for sheet in LATER_SHEETS for column in sheet.columns]


def test_quotes_has_the_columns_that_the_design_fixes_and_what_set_up_is_per():
    expected = (
        "Maker, Quoted on, Pieces, Price, Price is for, Currency, Price covers, Way, Days, Delivery term, Place, "
        "Set-up, Set-up is per, Set-up again on reorder, Sample price, Sample postage, Credited from, Deposit %, "
        "Valid until"
    )

    assert expected.split(", ") == [column.heading for column in QUOTES.columns]


def test_freight_has_the_columns_that_the_design_fixes_a_rate_for_sea_and_what_freight_covers():
    expected = (
        "Maker, Way, From pieces, To pieces, Cost, Rate per kg, Rate per revenue ton, Currency, Days, "
        "Pieces per carton, Carton length cm, Carton width cm, Carton height cm, Carton kg, Freight covers"
    )

    assert expected.split(", ") == [column.heading for column in FREIGHT.columns]


def test_no_sheet_has_a_heading_twice():
    assert len(COLUMNS) == len({(sheet.name, column.heading.casefold()) for sheet, column in COLUMNS})


def test_a_column_has_a_drop_down_exactly_when_it_is_a_choice():
    assert [] == [column.heading for _, column in COLUMNS if (column.kind == "choice") != bool(column.options)]


def test_every_column_says_what_it_means_and_where_to_find_it():
    assert [] == [column.heading for _, column in COLUMNS if not column.meaning or not column.where]


def test_no_sentence_brings_its_own_full_stop():
    texts = [text for sheet, column in COLUMNS for text in (sheet.about, column.meaning, column.where)]

    assert [] == [text for text in texts if text.endswith(".")]


@pytest.mark.parametrize(
    ("column", "width"),
    [
        (Column(heading="a", meaning="m", where="w", kind="number"), 12),
        (Column(heading="a", meaning="m", where="w", wide=True), 36),
        (Column(heading="a", meaning="m", where="w", kind="choice", options=("x" * 20,)), 23),
        (Column(heading="a", meaning="m", where="w", kind="choice", options=("x" * 500,)), 30),
    ],
)
def test_a_column_is_as_wide_as_its_content_asks(column, width):
    assert width == column.width
