"""What is per colour or size, where the brief does not say how many of them there are."""

import pytest
from cases import AS_OF
from sourcing import BRIEF, folder_of

from scorecard.reading.folder import read_folder

HEAD = ["Maker", "Price", "Price is for", "Currency", "Set-up", "Set-up is per"]


def warned(path, minimum, per, *quotes, more=""):
    makers = [["Maker", "Minimum order", "Minimum is per", "Country"], ["Fernhill", minimum, per, "PT"]]
    makers += [["Brightholm", minimum, per, "PT"]]
    sheets = {"Makers": makers} | ({"Quotes": [HEAD, *quotes]} if quotes else {})
    brief = BRIEF.replace("designs = 4\n", f"designs = 4\n{more}\n")
    case = read_folder(folder_of(path, sheets, brief=brief), as_of=AS_OF)
    return [
        (one.place.sheet, one.place.cell, one.found, one.wanted)
        for one in case.warnings
        if one.code == "number-not-said"
    ]


def test_a_minimum_per_colour_asks_for_their_number_at_its_first_cell(tmp_path):
    found = "the minimum order is per colour, and the brief does not say how many colours the goods come in"
    wanted = "Add them under [brief] of the criteria file, such as colours = 2"

    assert [("Makers", "C2", f"{found}, here and in 1 more cell: Makers!C3", wanted)] == warned(tmp_path, 60, "colour")


def test_set_up_per_size_asks_for_their_number(tmp_path):
    (found,) = warned(tmp_path, 60, "order", ["Fernhill", 3, "each", "EUR", 60, "size"])

    assert ("Quotes", "F2") == found[:2]
    assert found[2].startswith("set-up is per size, and the brief does not say how many sizes")


@pytest.mark.parametrize(
    ("minimum", "per", "more"),
    [(60, "colour", "colours = 2"), (60, "design", ""), (60, None, ""), (None, "colour", ""), (1, "colour", "")],
)
def test_where_nothing_hangs_on_a_number_it_is_not_asked_for(tmp_path, minimum, per, more):
    assert [] == warned(tmp_path, minimum, per, more=more)


def test_set_up_that_costs_nothing_asks_for_no_number(tmp_path):
    assert [] == warned(tmp_path, 60, "order", ["Fernhill", 3, "each", "EUR", 0, "colour"])
