"""The sheets Costs and Cost lines of the results workbook."""

from datetime import datetime
from io import BytesIO

import openpyxl
from cases import AS_OF
from ordered import PAID, case_of
from quoted import quote

from scorecard.assessment import assess
from scorecard.costing.amounts import Span
from scorecard.costing.inputs import CostSettings
from scorecard.workbooks.results import results_workbook

MADE = datetime(2026, 11, 25, 9, 30, 5)
ANSWERS = {"Ash": 90, "Birch": 70}
HEAD = 7  # row of the headings


def book(quotes, **more):
    assessment = assess(case_of(ANSWERS, quotes, **more), as_of=AS_OF)
    return openpyxl.load_workbook(BytesIO(results_workbook(assessment, made=MADE)))


def rows(found, sheet):
    """Return the rows of a sheet by heading."""
    values = list(found[sheet].iter_rows(min_row=HEAD, values_only=True))
    return [dict(zip(values[0], row, strict=True)) for row in values[1:]]


def test_while_nothing_is_quoted_the_sheets_are_not_there():
    assert set() == {"Costs", "Cost lines"} & set(book({}).sheetnames)


def test_each_cost_is_a_row_of_values_the_cheapest_first():
    found = rows(book({"Ash": 5, "Birch": 4}), "Costs")

    assert [
        ("Birch", "road", "yes", 4, 800, 200, 30, "in time", 800),
        ("Ash", "road", "yes", 5, 1000, 200, 30, "in time", 1000),
    ] == [
        (
            row["Maker"],
            row["Way"],
            row["Stands for its maker"],
            row["A good piece, most"],
            row["In all, least"],
            row["Pieces, most"],
            row["Days, least"],
            row["By the need-by date"],
            row["Paid before you can check, most"],
        )
        for row in found
    ]


def test_no_cell_is_a_formula():
    found = book({"Ash": 5, "Birch": 4})

    assert {"n", "s"} >= {
        cell.data_type for name in ("Costs", "Cost lines") for row in found[name].iter_rows() for cell in row
    }


def test_what_is_missing_is_named_and_is_no_0():
    goods = quote(3, maker="Ash", covers="goods", way="road")
    found = book({"Ash": goods})
    (row,) = rows(found, "Costs")
    missing = [line for line in rows(found, "Cost lines") if line["Line"] == "Missing"]

    assert (True, None, None) == ("freight" in row["Missing"], missing[0]["Least"], row["Freight % of all"])


def test_the_lines_add_up_to_what_stands_at_in_all():
    row = quote("3.33", maker="Ash", covers="goods", way="sea", setup=17, sample_price=9)
    lines = rows(book({"Ash": row}), "Cost lines")
    counted = [line["Least"] for line in lines if line["Line"] not in ("In all", "Missing")]
    (total,) = [line["Least"] for line in lines if line["Line"] == "In all"]

    assert round(total, 2) == round(sum(counted), 2)


def test_an_open_end_is_an_empty_cell():
    row = quote(Span(Span.of(2).low, None), maker="Ash", covers=PAID)

    assert (400, None) == tuple(rows(book({"Ash": row}), "Costs")[0][f"In all, {end}"] for end in ("least", "most"))


def test_what_is_already_paid_is_marked_and_in_no_sum():
    row = quote(5, maker="Ash", covers=PAID, sample_price=20)
    lines = rows(book({"Ash": row}, settings=CostSettings(sampled=frozenset({"Ash"}))), "Cost lines")

    assert [("Goods", "the maker", 1000), ("In all", None, 1000), ("Sample", "already paid", 20)] == [
        (line["Line"], line["Goes to"], line["Least"]) for line in lines
    ]


def test_that_price_is_not_in_the_ranking_is_noted_only_while_true():
    said = [
        "Not in this ranking"
        in [row[0] for row in book({"Ash": 5}, weight=weight)["Notes"].iter_rows(values_only=True)]
        for weight in (0, 1)
    ]

    assert [True, False] == said


def test_with_a_cost_missing_there_is_no_most_and_no_share():
    found = book({"Ash": quote(5, maker="Ash", covers="goods", way="sea")})
    (cost,), lines = rows(found, "Costs"), rows(found, "Cost lines")
    (total,) = [line for line in lines if line["Line"] == "In all"]
    open_ones = ("A good piece, most", "In all, most", "Paid before you can check, most", "Freight % of all")

    assert [None] * 5 == [*(cost[heading] for heading in open_ones), total["Most"]]
    assert total["Least"] == cost["In all, least"] > 0
