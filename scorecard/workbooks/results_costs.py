"""The sheets Costs and Cost lines: what a good piece costs at the door, by maker and way, and every line of every sum.

They are values, in the brief's currency; they are there once a maker is quoted.
"""

from collections.abc import Sequence
from decimal import Decimal
from typing import TYPE_CHECKING

from xlsxwriter.worksheet import Worksheet

from scorecard.cost_results import in_order
from scorecard.costed import Costed
from scorecard.workbooks.results_view import FIRST, HEAD, NAME_WIDTH, Book, View, heading_height
from scorecard.workbooks.safe import Value, put

if TYPE_CHECKING:
    from scorecard.costing.entries import Group
    from scorecard.costing.landed import LandedCost
    from scorecard.costing.sums import Line, Reading

COSTS = {
    "Maker": NAME_WIDTH,
    "Way": 10,
    "Stands for its maker": 12,
    "A good piece, least": 12,
    "A good piece, most": 12,
    "In all, least": 12,
    "In all, most": 12,
    "Pieces, fewest": 10,
    "Pieces, most": 10,
    "Days, least": 9,
    "Days, most": 9,
    "By the need-by date": 22,
    "Ask for a sample by": 12,
    "Order by": 12,
    "Freight % of all": 10,
    "Border % of all": 10,
    "Paid before you can check, least": 14,
    "Paid before you can check, most": 14,
    "Ruled out": 30,
    "Missing": 50,
}
LINES = {
    "Maker": NAME_WIDTH,
    "Way": 10,
    "The price is read as": 30,
    "Pieces": 9,
    "Line": 24,
    "Goes to": 12,
    "Least": 12,
    "Most": 12,
    "Paid, least": 12,
    "Paid, most": 12,
    "How it is worked out": 90,
}
WORDS = frozenset({"Maker", "Way", "Stands for its maker", "By the need-by date", "Ruled out", "Missing"})
WORDS |= {"The price is read as", "Line", "Goes to", "How it is worked out"}
DAYS = frozenset({"Ask for a sample by", "Order by"})
WHOLE = frozenset({"Pieces, fewest", "Pieces, most", "Pieces", "Days, least", "Days, most"})
ADDED: tuple["Group", ...] = ("freight", "border")
TOTAL = "In all"
MOST_LINES = 20_000


def write_costs(book: Book, view: View) -> None:
    """Write both sheets; none while nothing is quoted."""
    costed = view.assessment.case.costed
    if costed is None or not costed.costs:
        return
    from scorecard.cost_words import days_counted

    home = costed.inputs.rates.home
    about = (
        f"At your door, in {home}; the cheapest good piece first. What is missing is not counted: see the last column."
    )
    about = " ".join([about, *(f"{words}." for words in days_counted(costed))])
    costs = in_order(view.assessment)
    _write(book, ("Costs", about), COSTS, [_cost(costed, cost, why) for cost, why in costs])
    lines = [row for cost, _ in costs for reading in cost.readings for row in _lines(cost, reading)]
    lines += [_line(cost, cost.readings[0], one, "already paid") for cost, _ in costs for one in cost.spent]
    about = (
        f"Every line of every sum, in {home}, which add up to what stands at In all. What is already paid is in no sum."
    )
    _write(book, ("Cost lines", about), LINES, lines[:MOST_LINES])


def _write(book: Book, named: tuple[str, str], columns: dict[str, int], rows: Sequence[Sequence[Value]]) -> None:
    titles, widths = list(columns), list(columns.values())
    page = book.page(named[0], *named)
    for at, width in enumerate(widths):
        page.set_column(at, at, width)
    book.headings(page, titles, words=[at for at, title in enumerate(titles) if title in WORDS])
    page.set_row(HEAD, heading_height(titles, widths))
    page.freeze_panes(HEAD + 1, 1)
    for number, row in enumerate(rows, start=FIRST - 1):
        _write_row(book, page, number, titles, row)
    page.autofilter(HEAD, 0, HEAD + max(len(rows), 1), len(titles) - 1)


def _write_row(book: Book, page: Worksheet, number: int, titles: Sequence[str], row: Sequence[Value]) -> None:
    heavy = {"bold": True} if TOTAL in row else {}
    for at, (title, value) in enumerate(zip(titles, row, strict=True)):
        if title in WORDS:
            put(page, (number, at), value, book.words(**heavy))
        else:
            look = "yyyy-mm-dd" if title in DAYS else "0" if title in WHOLE else "0.00"
            put(page, (number, at), value, book.number(look, **heavy))


def _cost(costed: Costed, cost: "LandedCost", why_out: str) -> list[Value]:
    """Return the row of one maker by one way."""
    from scorecard.cost_words import standing
    from scorecard.costing.comparing import known_shares
    from scorecard.costing.paying import paid_before_checking

    parts, paid = known_shares(cost), paid_before_checking(cost)
    days = (None, None) if cost.days is None else (cost.days.low, cost.days.high)
    return [
        cost.maker,
        cost.way,
        "yes" if costed.chosen[cost.maker] is cost else "no",
        *_ends_of_all(cost, cost.per_good_piece),
        *_ends_of_all(cost, (cost.low, cost.high)),
        *cost.quantities,
        *map(_figure, days),
        standing(costed, cost),
        *_latest_days(cost),
        *(_figure(parts[group]) for group in ADDED),
        *_ends_of_all(cost, (paid.low, paid.high)),
        why_out,
        ", ".join(dict.fromkeys(gap.name for gap in cost.gaps)),
    ]


def _latest_days(cost: "LandedCost") -> tuple[Value, Value]:
    """Return the latest days to ask for a sample, where one comes first, and to order, as the schedule has them."""
    timing = cost.timing
    if timing is None:
        return None, None
    return (timing.begin_by if timing.begin_by != timing.order_by else None), timing.order_by


def _figure(amount: Decimal | None) -> float | None:
    return None if amount is None or not amount.is_finite() else float(amount)


def _ends_of_all(of: "LandedCost | Reading", ends: tuple[Decimal, Decimal]) -> tuple[float | None, float | None]:
    """Return the two ends of an amount; with a cost missing there is no most."""
    return _figure(ends[0]), None if of.gaps else _figure(ends[1])


def _lines(cost: "LandedCost", reading: "Reading") -> list[list[Value]]:
    """Return the lines of one sum, what is missing of it, and its total."""
    ends = _ends_of_all(reading, (reading.low, reading.high))
    total: list[Value] = [*_start(cost, reading), "In all", None, *ends, None, None]
    missing = [[*_start(cost, reading), "Missing", None, None, None, None, None, gap.words] for gap in reading.gaps]
    return [*(_line(cost, reading, line) for line in reading.lines), *missing, [*total, None]]


def _start(cost: "LandedCost", reading: "Reading") -> list[Value]:
    situation = reading.situation
    return [cost.maker, cost.way, situation.coverage.words, situation.quantity]


def _line(cost: "LandedCost", reading: "Reading", line: "Line", where: str = "") -> list[Value]:
    from scorecard.cost_words import WHERE

    ends = (line.low, line.high, line.paid_low, line.paid_high)
    return [*_start(cost, reading), line.name, where or WHERE[line.group], *map(_figure, ends), line.working]
