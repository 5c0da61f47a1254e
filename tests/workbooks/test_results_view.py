"""Which makers the results workbook holds, in which order, and how its cells look."""

from io import BytesIO

from cases import AS_OF
from result_books import MADE, varied_case
from xlsxwriter import Workbook

from scorecard.assessment import assess
from scorecard.workbooks.results_view import Book, PlainSheet, View, heading_height, stored


def view():
    return View(assessment=assess(varied_case(), as_of=AS_OF), made=MADE)


def test_ranked_makers_come_first_then_those_ruled_out():
    names = [varied_case().table.makers[maker] for maker in view().makers]

    assert ["Out by its minimum", "Out by its method"] == names[6:]


def test_a_look_is_made_once():
    book = Book(Workbook(BytesIO()))

    assert book.number("0") is book.number("0")


def test_a_formula_is_written_as_it_stands():
    assert "SUM(A1:A2)" == PlainSheet()._prepare_formula("=SUM(A1:A2)", True)


def test_a_name_that_looks_like_an_error_is_not_stored_as_one():
    assert ("", "Pots") == (stored("#N/A"), stored("Pots"))


def test_a_row_of_headings_is_as_tall_as_its_longest():
    assert (18.0, 33.0) == (heading_height(["Rank"], [8]), heading_height(["Rank", "Highest one"], [8, 8]))
