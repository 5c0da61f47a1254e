"""Rows of a further sheet, and what is wrong with the sheet itself."""

import pytest
from sourcing import folder_of, problems_of

from scorecard.reading.folder import read_folder

HEAD = ["Maker", "Price", "Price is for", "Price covers"]
ROW = ["Fernhill", 2, "each", "goods"]


def warnings_of(path, sheets):
    return [(one.place.cell, one.code) for one in read_folder(folder_of(path, sheets)).warnings]


@pytest.mark.parametrize(
    ("rows", "found"),
    [
        ([["Price", "Place"], [2, "Porto"]], ("A1", "no-maker-column")),
        ([[*HEAD, "Maker"], [*ROW, "Fernhill"]], ("E1", "doubled-heading")),
        ([HEAD, [None, 2, "each", "goods"]], ("A2", "missing-maker")),
        ([HEAD, ["Fernhil", 2, "each", "goods"]], ("A2", "unknown-maker")),
        ([[*HEAD, "Place"], [*ROW, "#N/A"]], ("E2", "spreadsheet-error")),
    ],
)
def test_each_fault_stands_at_its_cell(tmp_path, rows, found):
    assert [found] == problems_of(tmp_path, {"Quotes": rows})


def test_more_rows_than_are_read_stop_there(tmp_path):
    assert ("A4", "too-many-rows") in problems_of(tmp_path, {"Quotes": [HEAD, ROW, ROW, ROW]}, row_limit=2)


def test_a_heading_that_is_nearly_known_is_told(tmp_path):
    assert ("E1", "near-heading") in warnings_of(tmp_path, {"Quotes": [[*HEAD, "Depositt %"], [*ROW, 30]]})


def test_an_empty_sheet_says_nothing(tmp_path):
    assert read_folder(folder_of(tmp_path, {"Quotes": []})).costs is None
