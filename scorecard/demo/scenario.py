"""The invented scenario: twelve makers, unevenly known, for 200 enamel mugs with four lighthouses.

Every maker, number and date is invented; the data serve the demo alone.
"""

import re
from datetime import date, timedelta
from importlib.resources import files
from typing import Any

HEADINGS = (
    "Maker",
    "Years trading",
    "Rating",
    "Minimum order",
    "Print method",
    "Ratings counted",
    "Earlier work",
    "Sample",
    "Minimum is per",
    "Country",
    "Asked",
    "Answered",
    "Notes",
)

# Asked and Answered are so many working days before the day on which the demo is laid out
MAKERS: tuple[tuple[Any, ...], ...] = (
    (
        "Brightholm Enamel",
        12,
        4.6,
        250,
        "kiln-fired transfer",
        240,
        "same method, art like mine",
        "paid, credited to the order",
        "order",
        "Poland",
        9,
        8,
        "Ships every Tuesday",
    ),
    (
        "Quillmoor Works",
        6,
        4.8,
        50,
        "screen print",
        380,
        "other goods, art like mine",
        "free",
        "design",
        "Portugal",
        9,
        7,
        "Sent photographs unasked",
    ),
    (
        "Tansy & Vane",
        21,
        4.6,
        300,
        "kiln-fired transfer",
        95,
        "same method, art like mine",
        "paid",
        "order",
        "Czechia",
        9,
        6,
        "",
    ),
    (
        "Oxlip Kilns",
        5,
        5.0,
        25,
        "kiln-fired transfer",
        4,
        None,
        "free",
        "design",
        "Ireland",
        9,
        8,
        "Glowing, but four buyers only",
    ),
    (
        "Farrowgate Enamelware",
        15,
        4.8,
        150,
        "kiln-fired transfer",
        610,
        "plain logos only",
        "paid",
        "design",
        "China",
        8,
        7,
        "Cheapest by the piece",
    ),
    ("Lanternby Mugs", "5-8", 4.5, "from 100", "sublimation", 150, None, "photo only", "order", "Turkey", 8, None, ""),
    (
        "Sedgewater Print",
        9,
        4.4,
        200,
        "sublimation",
        75,
        "other goods, art like mine",
        "paid",
        "order",
        "Ireland",
        12,
        11,
        "",
    ),
    (
        "Copperwren",
        None,
        4.8,
        "100 to 200",
        "kiln-fired transfer",
        33,
        "same method, art like mine",
        None,
        None,
        "China",
        None,
        None,
        "Years trading not on the page",
    ),
    (
        "Nettlecombe Wares",
        2,
        4.3,
        50,
        "screen print",
        18,
        "plain logos only",
        "paid",
        "order",
        "Latvia",
        None,
        None,
        "",
    ),
    (
        "Dunlinhaugh",
        30,
        None,
        250,
        "screen print",
        None,
        "other goods, art like mine",
        "paid, credited to the order",
        "order",
        "Germany",
        12,
        6,
        "No ratings anywhere",
    ),
    (
        "Hollowmere Goods",
        4,
        4.6,
        100,
        "sticker",
        900,
        "other goods, art like mine",
        "free",
        "order",
        "China",
        None,
        None,
        "",
    ),
    (
        "Thistlewharf Enamel",
        "10+",
        4.5,
        400,
        "kiln-fired transfer",
        52,
        "same method, art like mine",
        "paid",
        "order",
        "India",
        5,
        3,
        "",
    ),
)

# What some of them answered about care.
CARE = {
    "Brightholm Enamel": "Wash by hand or in a dishwasher, to 125 cycles (EN 12875-1); not for the microwave; "
    "no steel wool on the print",
    "Quillmoor Works": "Wash by hand; not for the microwave",
    "Oxlip Kilns": "Dishwasher safe; not for the microwave",
}


def criteria_text(day: date) -> str:
    """Return the criteria file, its need-by date some 170 days after the day on which it is laid out, its rates new."""
    text = files("scorecard.demo").joinpath("criteria.toml").read_text("utf-8")
    need_by = day + timedelta(days=170)
    friday = need_by - timedelta(days=(need_by.weekday() - 4) % 7)
    text = re.sub(r"^need_by = .*$", f"need_by = {friday.isoformat()}", text, flags=re.MULTILINE)
    return re.sub(r"^on = \S+", f"on = {(day - timedelta(days=5)).isoformat()}", text, flags=re.MULTILINE)


def maker_rows(day: date) -> list[dict[str, Any]]:
    """Return the rows of the Makers sheet by heading, blanks left out."""
    return [_row(dict(zip(HEADINGS, values, strict=True)), day) for values in MAKERS]


def _row(row: dict[str, Any], day: date) -> dict[str, Any]:
    for short, heading in (("Asked", "Asked on"), ("Answered", "Answered on")):
        days = row.pop(short)
        row[heading] = None if days is None else working_day_before(day, days)
    row["Care"] = CARE.get(row["Maker"])
    row["Seen on"] = working_day_before(day, 13)
    return {heading: value for heading, value in row.items() if value not in (None, "")}


def working_day_before(day: date, working_days: int) -> date:
    """Return the day so many working days, Monday to Friday, before a day.

    Examples
    --------
    >>> working_day_before(date(2026, 11, 23), 1)
    datetime.date(2026, 11, 20)
    """
    while working_days:
        day -= timedelta(days=1)
        working_days -= day.weekday() < 5
    return day
