"""The results workbook as a whole: formulas store what was computed, and other weights give what is computed then."""

from datetime import datetime
from io import BytesIO

import openpyxl
from cases import AS_OF, choices, make_case, numbers

from scorecard.assessment import assess
from scorecard.workbooks.results import results_workbook

MADE = datetime(2026, 11, 25, 9, 30, 5)


def small_case():
    criteria = [numbers("work", 3), numbers("speed", 2, unknown="middle"), choices("sample", 1, {"free": 100, "no": 0})]
    makers = {"Ash": [90, 20, "free"], "Birch": [60, (40, 80), "no"], "Cedar": [30, None, None]}
    return make_case(criteria, makers)


def test_the_same_input_gives_the_same_bytes():
    case = small_case()

    assert results_workbook(assess(case, as_of=AS_OF), made=MADE) == results_workbook(
        assess(case, as_of=AS_OF), made=MADE
    )


def test_the_stored_order_is_that_of_the_calculation():
    book = openpyxl.load_workbook(
        BytesIO(results_workbook(assess(small_case(), as_of=AS_OF), made=MADE)), data_only=True
    )

    assert ["Ash", "Birch", "Cedar"] == [book["Shortlist"].cell(row, 8).value for row in (8, 9, 10)]
