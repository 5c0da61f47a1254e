"""Countries of the sheet Makers."""

from sourcing import folder_of

from scorecard.reading import countries
from scorecard.reading.countries import MOST_OFFERED, countries_of, unknown_countries
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


def test_of_many_unknown_texts_the_country_meant_is_sought_for_a_few(tmp_path, monkeypatch):
    many = [MAKERS[0], *([f"Maker {at}", 1, f"Land {at}"] for at in range(2 * MOST_OFFERED))]
    read, sought = read_folder(folder_of(tmp_path, {"Makers": many})).table, []
    monkeypatch.setattr(countries, "country_offered", sought.append)

    assert (2 * MOST_OFFERED, MOST_OFFERED) == (len(list(unknown_countries(read))), len(sought))
