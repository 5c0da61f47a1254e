"""Rows of the sheets Samples, Checks and Orders, as rounds, checks and orders.

Enters: the filled sheets, and the makers as read. Leaves: rounds, checks and orders, with every problem at its cell.
"""

import re
from collections.abc import Mapping
from math import inf

from scorecard.checks import STATES, Check, usual
from scorecard.costing.amounts import Span
from scorecard.reading.cells import Fault, quoted
from scorecard.reading.criteria_file import CriteriaReading
from scorecard.reading.dealings import CHECKS_SHEET, ORDERS_SHEET, SAMPLES_SHEET, DealingsReading
from scorecard.reading.filled_sheets import FilledSheet
from scorecard.reading.further_sheets import FurtherSheets
from scorecard.reading.makers import MakersReading, ReadingOptions
from scorecard.reading.orders_sheet import ORDER_HEADINGS, read_orders
from scorecard.reading.sheet_table import TableRow
from scorecard.samples import ASPECTS, DECISIONS, KINDS, Lab, SampleRound

WANTED_LAB, MEASURED_LAB = "Colour wanted L*a*b*", "Colour measured L*a*b*"
SAMPLE_HEADINGS = (
    "Maker",
    "Round",
    "Asked on",
    "Received on",
    *ASPECTS,
    "Position off mm",
    "Size off mm",
    "Decision",
    WANTED_LAB,
    MEASURED_LAB,
)
CHECK_HEADINGS = ("Maker", "Check", "State", "Evidence", "Date")
MOST_MARK = 10

HEADINGS = {SAMPLES_SHEET: SAMPLE_HEADINGS, CHECKS_SHEET: CHECK_HEADINGS, ORDERS_SHEET: ORDER_HEADINGS}
LAB = re.compile(r"\s*(-?\d+(?:\.\d+)?)[\s;,/]+(-?\d+(?:\.\d+)?)[\s;,/]+(-?\d+(?:\.\d+)?)\s*")
MOST_LIGHTNESS, MOST_CHROMA = 100, 200


def gathered(
    filled: Mapping[str, FilledSheet], makers: MakersReading, criteria: CriteriaReading, options: ReadingOptions
) -> DealingsReading:
    """Return what the filled sheets say.

    Parameters
    ----------
    filled : by the sheet's name
    makers : as read
    criteria : as read; the brief's decimal mark settles numbers typed as text
    options : what to set aside, today, and the most rows
    """
    sheets, brief = FurtherSheets.of(filled, HEADINGS, (makers, criteria), options), criteria.named
    samples = [found for row in sheets[SAMPLES_SHEET] if (found := _round(row)) is not None]
    checks = [made for row in sheets[CHECKS_SHEET] if (made := _check(row)) is not None]
    days = criteria.order.complain_days if criteria.order else None
    rows = read_orders(sheets[ORDERS_SHEET], brief.currency if brief else None)
    return DealingsReading(
        samples=tuple(samples),
        checks=tuple(checks),
        orders=tuple(order.with_days(days) for order in rows),
        problems=sheets.problems,
        warnings=sheets.warnings,
        set_aside=sheets.set_aside,
    )


def _round(row: TableRow) -> SampleRound | None:
    maker, kind = row.maker(), row.choice("Round", KINDS)
    if not row.says("Round"):
        wanted = "Write photograph, sample or pre-production sample"
        row.refuse("Round", Fault("missing-value", "Round is empty", wanted))
    asked, received = row.day("Asked on", may_come=False), row.day("Received on", may_come=False)
    if asked and received and received < asked:
        found = f"it came on {received.isoformat()}, before it was asked for on {asked.isoformat()}"
        row.refuse("Received on", Fault("received-before-asked", found, "Correct Asked on or Received on"))
    sample = SampleRound(
        maker=maker or "",
        row=row.number_in_sheet,
        kind=kind or "sample",
        asked_on=asked,
        received_on=received,
        marks={aspect: mark for aspect in ASPECTS if (mark := _mark(row, aspect)) is not None},
        position_off_mm=_ends(row.number("Position off mm", "mm")),
        size_off_mm=_ends(row.number("Size off mm", "mm")),
        decision=row.choice("Decision", DECISIONS),
        wanted_lab=_lab(row, WANTED_LAB),
        measured_lab=_lab(row, MEASURED_LAB),
        place=row.places()["Maker"],
    )
    return sample if maker is not None and kind is not None else None


def _mark(row: TableRow, aspect: str) -> tuple[float, float] | None:
    """Return a mark, 0 to 10; None where it is unknown, or once its problem is noted."""
    mark = _ends(row.number(aspect))
    if mark is not None and mark[1] > MOST_MARK:
        found = f"{quoted(row.values[aspect])} is not a mark from 0 to 10"
        row.findings.refuse_answer(row.cell(aspect), Fault("outside-within", found, "Write a number from 0 to 10"))
        return None
    return mark


def _ends(span: Span | None) -> tuple[float, float] | None:
    return None if span is None else (float(span.low), inf if span.high is None else float(span.high))


def _lab(row: TableRow, heading: str) -> Lab | None:
    """Return a colour in CIELAB; None where there is none, or once its problem is noted."""
    if not row.says(heading):
        return None
    text = row.text(heading)
    match = LAB.fullmatch(text)
    lab = (float(match[1]), float(match[2]), float(match[3])) if match else None
    if lab is None or not 0 <= lab[0] <= MOST_LIGHTNESS or max(abs(lab[1]), abs(lab[2])) > MOST_CHROMA:
        wanted = "Write L*, a* and b* as measured, such as 54.3 -12.1 30.5, or leave the cell empty"
        row.findings.refuse_answer(row.cell(heading), Fault("not-a-colour", f"{quoted(text)} is no colour", wanted))
        return None
    return lab


def _check(row: TableRow) -> Check | None:
    maker, name, state = row.maker(), row.text("Check"), row.choice("State", STATES)
    if not name:
        row.refuse("Check", Fault("missing-value", "Check is empty", "Write what was checked, or delete the row"))
    day = row.day("Date", may_come=False)
    if maker is None or not name:
        return None
    known = usual(name)
    return Check(
        maker=maker,
        row=row.number_in_sheet,
        name=known.name if known else name,
        state=state or "waiting",
        checked_on=day,
        place=row.places()["Maker"],
    )
