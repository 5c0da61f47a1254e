"""Who pays what under each delivery term.

EXW, FCA, CPT, CIP, DAP, DPU: agree with a public table seen in part; FAS, FOB, CFR, CIF, DDP: [memory]. The expected
rows are written out a second time here, part by part, in the order of the journey.
"""

import pytest

from scorecard.costing.charges import PARTS
from scorecard.costing.delivery_terms import by_term, by_words, coverages, covers_by_term, point_of
from scorecard.costing.quotes import COVERS, TERMS

PORT, DOOR = "port", "my door"

# M the maker pays, B the buyer: packing, loading, collection, export clearance, origin charges, loading on board,
# freight, insurance, arrival charges, clearance, duty, import tax, delivery, unloading
GRID = {
    ("EXW", "factory"): "M BBBBB B B B BBB B B",
    ("FCA", "factory"): "M MBMBB B B B BBB B B",
    ("FCA", PORT): "M MMMBB B B B BBB B B",
    ("FAS", PORT): "M MMMMB B B B BBB B B",
    ("FOB", PORT): "M MMMMM B B B BBB B B",
    ("CFR", PORT): "M MMMMM M B B BBB B B",
    ("CIF", PORT): "M MMMMM M M B BBB B B",
    ("CPT", PORT): "M MMMMM M B B BBB B B",
    ("CPT", DOOR): "M MMMMM M B M BBB M B",
    ("CIP", PORT): "M MMMMM M M B BBB B B",
    ("CIP", DOOR): "M MMMMM M M M BBB M B",
    ("DAP", PORT): "M MMMMM M B B BBB B B",
    ("DAP", DOOR): "M MMMMM M B M BBB M B",
    ("DPU", PORT): "M MMMMM M B M BBB B B",
    ("DPU", DOOR): "M MMMMM M B M BBB M M",
    ("DDP", PORT): "M MMMMM M B B MMM B B",
    ("DDP", DOOR): "M MMMMM M B M MMM M B",
}


@pytest.mark.parametrize(("term", "place"), GRID)
def test_each_term_pays_for_its_own_parts(term, place):
    (coverage,) = by_term(term, place)

    assert GRID[term, place].replace(" ", "") == "".join("M" if part in coverage.parts else "B" for part in PARTS)


def test_the_grid_has_all_eleven_rules():
    assert set(TERMS) == {term for term, _ in GRID}


@pytest.mark.parametrize("term", ["FCA", "CPT", "CIP"])
def test_a_term_whose_place_decides_is_read_both_ways_where_the_place_does_not_say(term):
    assert [2, 2, 1] == [len(by_term(term, place)) for place in ("", "Leixoes", "port of Leixoes")]


def test_readings_of_one_term_are_told_apart_by_their_place():
    assert ["FCA, if its place is the maker's door", "FCA, if its place is a port or terminal"] == [
        each.words for each in by_term("FCA", "")
    ]


@pytest.mark.parametrize("term", ["DAP", "DPU", "DDP"])
def test_delivery_is_to_the_door_unless_the_place_is_a_port(term):
    at_the_door, at_the_port = by_term(term, "Dingle")[0], by_term(term, "Cork port")[0]

    assert ("delivery" in at_the_door.parts, "delivery" in at_the_port.parts) == (True, False)


def test_loss_on_the_way_is_the_maker_s_until_delivery_under_d_terms_alone():
    assert {"DAP", "DPU", "DDP"} == {term for term in TERMS if by_term(term, "")[0].insured_by_maker}


@pytest.mark.parametrize("text", ["Leixoes", "", "from the factory to the port"])
def test_a_place_that_does_not_say_what_it_is_stays_open(text):
    assert point_of(text) is None


def test_freight_to_the_door_covers_arrival_and_delivery():
    to_port, to_door = by_words("goods and freight", None), by_words("goods and freight", "door to door")

    assert {"arrival charges", "delivery"} == to_door.parts - to_port.parts


def test_all_paid_leaves_the_unloading_alone():
    assert {"unloading"} == set(PARTS) - by_words("to my door, duty and tax paid", None).parts


def test_what_is_not_known_is_read_every_way():
    readings = coverages(None, None, "", None)

    assert [False, True, True] == [each.pays_freight for each in readings]
    assert [False, False, True] == [each.insured_by_maker for each in readings]  # the last is to the door


def test_the_term_decides_where_the_words_agree():
    assert ["FOB"] == [each.words for each in coverages("goods", "FOB", "Leixoes port", None)]


def test_words_that_say_otherwise_are_costed_too():
    readings = coverages("to my door, duty and tax paid", "FOB", "Leixoes port", None)

    assert ["FOB", "the price is to my door, duty and tax paid"] == [each.words for each in readings]


@pytest.mark.parametrize("term", TERMS)
def test_the_words_for_a_term_agree_with_its_parts(term):
    covers = covers_by_term(term)
    parts = by_term(term, "")[0].parts

    assert ("freight" in parts, "duty" in parts) == (covers != COVERS[0], covers == COVERS[2])
