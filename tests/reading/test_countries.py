"""Countries of the sheet Makers."""

from sourcing import folder_of

from scorecard.reading.countries import countries_of, unknown_countries
from scorecard.reading.folder import read_folder

MAKERS = [["Maker", "Minimum order", "Country"], ["Ash", 1, "uk"], ["Birch", 1, "Chnia"], ["Cedar", 1, None]]


def table(path):
    return read_folder(folder_of(path, {"Makers": MAKERS})).table


def test_a_code_or_a_name_is_read_and_a_near_miss_is_not(tmp_path):
    assert ["GB", None, None] == countries_of(table(tmp_path))


def test_what_cannot_be_told_is_named_with_what_may_be_meant(tmp_path):
    (one,) = unknown_countries(table(tmp_path))

    assert ("C3", "Write CN if China is meant") == (one.place.cell, one.wanted)
    assert "taken to cross a customs border" in one.found
