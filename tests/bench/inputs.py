"""Inputs of the benchmark: long lists of invented makers with 25 columns, some answers blank or given as ranges."""

import csv
import random
from pathlib import Path

import xlsxwriter

HEADINGS = [
    "Maker", "Years trading", "Rating", "Minimum order", "Print method", "Ratings counted", "Earlier work", "Sample",
    "Minimum is per", "Response days", "Lead days", "Unit price", "Country", "Web page", "Contact", "Notes",
    *(f"Mine {number}" for number in range(1, 10)),
]  # fmt: skip
METHODS = ["kiln-fired transfer", "screen print", "sublimation"]
WORK = ["same method, art like mine", "other goods, art like mine", "plain logos only"]
SAMPLES = ["free", "paid, credited to the order", "paid", "photo only", "none"]

CRITERIA = """
format = 1
[brief]
item = "enamel mug"
quantity = 200
designs = 4
decimal = "."
[criteria.years_trading]
weight = 15
points = [[0, 0], [3, 50], [10, 100]]
[criteria.rating]
weight = 20
column = "Rating"
within = [0, 5]
points = [[4.0, 0], [4.6, 60], [5.0, 100]]
steady = { count_column = "Ratings counted", usual = 4.5, usual_counts_as = 20 }
[criteria.minimum_order]
weight = 20
per = "quantity"
points = [[1, 100], [2, 0]]
limit = { at_most = 6 }
[criteria.earlier_work]
weight = 15
choices = { "same method, art like mine" = 100, "other goods, art like mine" = 60, "plain logos only" = 20 }
[criteria.sample]
weight = 10
choices = { "free" = 100, "paid, credited to the order" = 85, "paid" = 60, "photo only" = 25, "none" = 0 }
[criteria.print_method]
weight = 10
choices = { "kiln-fired transfer" = 100, "screen print" = 80, "sublimation" = 60 }
[criteria.response_time]
weight = 10
column = "Response days"
points = [[1, 100], [2, 80], [5, 0]]
[criteria.lead_time]
weight = 10
column = "Lead days"
unit = "days"
points = [[10, 100], [40, 0]]
"""


def rows(count: int, seed: int = 1) -> list[list[object]]:
    """Return makers, a twentieth of the answers blank."""
    draw = random.Random(seed)
    return [_row(draw, number) for number in range(count)]


def _row(draw: random.Random, number: int) -> list[object]:
    row: list[object] = [
        f"Maker {number:06d}", draw.randint(0, 30), round(draw.uniform(3.8, 5), 1),
        draw.choice([25, 50, 100, 200, 300]),
        draw.choice(METHODS), draw.randint(0, 900), draw.choice(WORK), draw.choice(SAMPLES),
        draw.choice(["order", "design"]), draw.randint(0, 6), draw.randint(8, 45), round(draw.uniform(1, 9), 2),
        "Portugal", f"https://maker{number}.example/mugs", "sales desk", "seen while browsing",
        *(round(draw.uniform(0, 100), 2) for _ in range(9)),
    ]  # fmt: skip
    for at in range(1, 12):
        if draw.random() < 0.05:
            row[at] = None
    return row


def folder(place: Path, count: int, *, as_csv: bool = False) -> Path:
    """Lay out a folder with a criteria file and so many makers."""
    place.mkdir(parents=True)
    (place / "criteria.toml").write_text(CRITERIA, "utf-8")
    (_write_csv if as_csv else _write_xlsx)(place, rows(count))
    return place


def _write_csv(place: Path, makers: list[list[object]]) -> None:
    with (place / "makers.csv").open("w", newline="", encoding="utf-8") as file:
        csv.writer(file).writerows([HEADINGS, *makers])


def _write_xlsx(place: Path, makers: list[list[object]]) -> None:
    with xlsxwriter.Workbook(str(place / "makers.xlsx"), {"strings_to_urls": False}) as book:
        sheet = book.add_worksheet("Makers")
        for at, row in enumerate([HEADINGS, *makers]):
            sheet.write_row(at, 0, row)
