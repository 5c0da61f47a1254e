"""One count of days, end to end: the cheapest way meets the need-by date by days as quoted, and not by the schedule."""

import json
import re
from datetime import datetime

import jsonschema
import openpyxl
import pytest
from builders import workbook_bytes
from process import schema_of, scorecard

CRITERIA = """[brief]
item = "mug"
quantity = 200
destination = "IE"
currency = "EUR"
need_by = 2027-05-14

[criteria.rating]
weight = 1
column = "Rating"
points = [[1, 0], [5, 100]]

[criteria.landed_cost]
weight = 0
measure = "landed_cost_per_piece"
points = [[4, 100], [12, 0]]

[criteria.days_to_door]
weight = 0
measure = "days_to_door"
points = [[10, 100], [120, 0]]

[import]
duty_percent = 0
tax_percent = 0
tax = "cost"

[[import.charges]]
name = "Clearance"
amount = 20
pays_for = ["clearance"]

[selling]
price = 18.00
demand = { low = 120, likely = 180, high = 260 }
"""
HEADINGS = ["Maker", "Pieces", "Price", "Price is for", "Currency", "Price covers", "Way", "Days", "Sample price"]
HEADINGS += ["Sample postage", "Set-up", "Deposit %"]
SHEETS = {
    "Makers": [["Maker", "Rating", "Country"], ["Fernhill", 4.5, "China"], ["Cold Quay", 4.1, "Ireland"]],
    "Quotes": [
        HEADINGS,
        ["Fernhill", 200, 2, "each", "EUR", "goods", None, "25-30", 20, 10, 0, 30],
        ["Cold Quay", 200, 1800, "all", "EUR", "to my door, duty and tax paid", "road", 30, 0, 0, 0, 30],
    ],
    "Freight": [
        ["Maker", "Way", "Cost", "Currency", "Days", "Freight covers"],
        ["Fernhill", "sea", 200, "EUR", "35-40", "door to door"],
        ["Fernhill", "air", 600, "EUR", "6-8", "door to door"],
    ],
}
# Worked by the plain days: 30 + 40 = 70 days from 2027-01-06 are 17 March, long before 14 May.
DAY = ("--as-of", "2027-01-06")


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    path = tmp_path_factory.mktemp("days")
    (path / "criteria.toml").write_text(CRITERIA, "utf-8")
    (path / "makers.xlsx").write_bytes(workbook_bytes(SHEETS))
    scorecard("score", *DAY, cwd=path)
    return path


def result(folder, command):
    found = json.loads(scorecard(command, "--json", *DAY, cwd=folder).out)
    jsonschema.validate(found, schema_of(command))
    return found


@pytest.fixture(scope="module")
def plans(folder):
    return {(one["maker"], one["way"]): one for one in result(folder, "dates")["plans"]}


def costs_of(found):
    return {(one["maker"], one["way"]): one for one in found["landed_costs"]}


def test_by_plain_days_sea_would_do_and_by_the_schedule_only_air_does(folder, plans):
    costs = costs_of(result(folder, "cost"))

    assert ({"low": 60, "high": 70}, "no time for a sample", "in time") == (
        costs["Fernhill", "sea"]["days"],
        plans["Fernhill", "sea"]["status"],
        plans["Fernhill", "air"]["status"],
    )


@pytest.mark.parametrize("command", ["cost", "score"])
def test_every_cost_stands_as_its_plan_does(folder, plans, command):
    costs = costs_of(result(folder, command))
    keys = ("status", "begin_by", "order_by")

    assert [tuple(plans[key][name] for name in keys) for key in costs] == [
        tuple(one[name] for name in keys) for one in costs.values()
    ]
    assert {("Fernhill", "air"), ("Cold Quay", "road")} == {key for key, one in costs.items() if one["chosen"]}


def test_both_measures_are_of_air_and_count_production_and_transit_as_quoted(folder):
    (maker,) = (one for one in result(folder, "score")["makers"] if one["maker"] == "Fernhill")

    # goods 400, sample 20 and 10, freight 600, clearance 20: 1050 for 200; 25 + 6 to 30 + 8 days
    assert (5.25, {"low": 31, "high": 38}) == (
        maker["criteria"]["landed_cost"]["answer"],
        maker["criteria"]["days_to_door"]["answer"],
    )


def rows_of(text, beginning):
    return [" ".join(line.split()) for line in text.splitlines() if line.lstrip().startswith(beginning)]


def test_cost_and_dates_print_the_same_words(folder):
    cost, dates = (scorecard(command, *DAY, cwd=folder).out for command in ("cost", "dates"))
    sea, air = (next(line for line in rows_of(cost, ("1.", "2.")) if way in line) for way in ("by sea", "by air"))
    by_sea, by_air = rows_of(dates, "Fernhill sea") or rows_of(dates, "Fernhill")[:1], rows_of(dates, "Fernhill")[1:2]

    assert (True, True) == ("no time for a sample" in sea, "in time" in air and "Fernhill *" in air)
    assert (True, True) == (by_sea[0].endswith("no time for a sample"), by_air[0].endswith("in time"))
    assert "31 to 38 days as quoted, in time: ask for a sample by" in " ".join(cost.split())


def test_the_page_says_the_same_in_both_its_tables(folder):
    page = (folder / "reports" / "shortlist.html").read_text("utf-8")
    text = " ".join(re.sub(r"<[^>]+>", " ", page).split())

    assert 2 <= text.count("31 to 38 days, in time")
    assert "31 to 38 days as quoted, in time: ask for a sample by" in text
    assert "60 to 70 days, no time for a sample" in text
    assert "60 to 70 days as quoted, no time for a sample: order by" in text
    assert "70 days, in time" not in text


def test_no_column_of_quoted_days_is_called_the_days_to_the_door(folder):
    page = (folder / "reports" / "shortlist.html").read_text("utf-8")
    style, table = page.split("</style>", 1)

    assert (2, 0) == (table.count(">Days quoted, how it stands<"), table.count("Days to your door"))
    assert (3, 0) == (style.count('content: "days quoted: "'), style.count('content: "there'))  # of two tables


def test_the_workbook_says_the_same_with_the_latest_days(folder, plans):
    book = openpyxl.load_workbook(folder / "reports" / "shortlist.xlsx")
    head, *rows = [row for row in book["Costs"].iter_rows(values_only=True) if row[0] in ("Maker", "Fernhill")]
    found = {row[1]: dict(zip(head, row, strict=True)) for row in rows}

    for way in ("sea", "air"):
        plan, row = plans["Fernhill", way], found[way]
        assert (plan["status"], *(datetime.fromisoformat(plan[key]) for key in ("begin_by", "order_by"))) == (
            row["By the need-by date"],
            row["Ask for a sample by"],
            row["Order by"],
        )
    assert ("no", "yes") == (found["sea"]["Stands for its maker"], found["air"]["Stands for its maker"])


def test_quantity_takes_the_way_and_dates_its_cash_by_the_schedule(folder, plans):
    found = result(folder, "quantity")["quantities"]
    (size,) = next(one["sizes"] for one in found["makers"] if one["maker"] == "Fernhill")
    days = {one["what"]: one["day"] for one in size["cash"]["payments"]}
    ready = datetime.fromisoformat(plans["Fernhill", "air"]["ready_if_begun_today"]) - datetime(2027, 1, 6)

    assert ("air", "in time", "with a sample") == (size["way"], size["status"], size["cash"]["begun"])
    assert 0 == days["samples"] < days["deposit"] < days["balance"] == days["freight"] < days["border"] < ready.days


def test_the_order_sheet_of_the_slow_way_says_that_there_is_no_time_for_a_sample(folder):
    said = " ".join(scorecard("order", "Fernhill", "--way", "sea", *DAY, cwd=folder).out.split())

    assert "To have the pieces by 14 May 2027: no time for a sample; order by" in said
