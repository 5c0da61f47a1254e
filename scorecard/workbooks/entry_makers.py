"""The columns of the sheet Makers, which follow from the criteria file and the brief.

Enters: criteria and brief. Leaves: columns in the order in which a buyer can fill them in, each heading once.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from scorecard.brief import UNITS, Brief
from scorecard.criteria import Criterion
from scorecard.words import shortest
from scorecard.workbooks.entry_columns import (
    ANY_TIME,
    ASKING,
    BROWSING,
    LATER_SHEETS,
    MAKER,
    REPLYING,
    SHOWN_OR_ASKED,
    Column,
    EntrySheet,
)

FIRST = ("Years trading", "Rating", "Minimum order", "Print method")  # enough for a first ranking

_KNOWN = {  # by heading: what it means, and where a buyer finds it
    "years trading": (
        "How long the maker has been in business",
        "The maker's page, or the company register of its country",
    ),
    "rating": ("What its buyers give it on average", "The page on which its buyers rate it"),
    "minimum order": (
        "The fewest pieces that it makes at a time",
        "The price list of the goods; else ask, and ask whether it is per design",
    ),
    "print method": (
        "How the picture gets on the goods",
        "The description of the goods; else ask",
    ),
    "earlier work": (
        "How near its finished goods come to yours",
        "Its pictures of finished goods; else ask for photographs",
    ),
    "sample": (
        "What it asks for a sample",
        "The description of the goods; else ask whether it is free, paid or credited",
    ),
}


def entry_sheets(criteria: Iterable[Criterion], brief: Brief) -> tuple[EntrySheet, ...]:
    """Return the sheets that a buyer fills in, in order: Makers first, then those that wait for quotes."""
    makers = EntrySheet(
        name="Makers",
        about="One row per maker that you found",
        columns=makers_columns(criteria, brief),
        until_quotes=False,
    )
    return (makers, *LATER_SHEETS)


def makers_columns(criteria: Iterable[Criterion], brief: Brief) -> tuple[Column, ...]:
    """Return the columns of the sheet Makers: the few for a first ranking, then those that can wait."""
    drawn_on = tuple(_from_criteria(criteria))
    first = [column for name in FIRST for column in drawn_on if _folded(column.heading) == _folded(name)]
    ordered = {_folded(column.heading): column for column in (MAKER, *first)}
    for column in (*drawn_on, *_always_there(brief)):
        ordered.setdefault(_folded(column.heading), replace(column, when=column.when or SHOWN_OR_ASKED))
    return tuple(ordered.values())


def _folded(heading: str) -> str:
    return heading.strip().casefold()


def _from_criteria(criteria: Iterable[Criterion]) -> Iterator[Column]:
    """Yield the columns that the criteria draw on, in the order of the file."""
    for criterion in criteria:
        if criterion.column is not None:
            yield _answer_column(criterion, criterion.column)
        if criterion.steady is not None:
            heading = criterion.steady.count_column
            meaning = f"How many ratings {criterion.title} rests on: few of them count for less"
            yield Column(
                heading=heading,
                meaning=meaning,
                where="Beside the rating, often in brackets",
                unit="ratings",
                kind="number",
                when=BROWSING,
            )


def _answer_column(criterion: Criterion, heading: str) -> Column:
    """Return the column of a criterion's answers."""
    within = criterion.within
    bounds = f", from {shortest(within[0])} to {shortest(within[1])}" if within else ""
    meaning, where = _KNOWN.get(_folded(heading), ("What you compare makers on", "The maker's page; else ask"))
    title = "" if _folded(criterion.title) == _folded(heading) else f"; your criterion {criterion.title}"
    return Column(
        heading=heading,
        meaning=f"{meaning}{bounds}{title}",
        where=where,
        unit=criterion.unit,
        kind="choice" if criterion.choices else "number",
        options=criterion.choices or (),
    )


def _always_there(brief: Brief) -> tuple[Column, ...]:
    """Return the columns that every entry workbook has, whatever the criteria."""
    designs = f"; you want {brief.designs} designs, so it matters" if brief.designs > 1 else ""
    return (
        Column(
            heading="Minimum is per",
            meaning=f"What the minimum order counts for: the whole order, or each design, colour or size{designs}",
            where="Ask the maker, for it is seldom written down",
            kind="choice",
            options=UNITS,
            when=REPLYING,
        ),
        Column(
            heading="Country",
            meaning="Where the goods are made",
            where="The maker's page; two letters such as IE",
            when=BROWSING,
        ),
        Column(
            heading="Web page",
            meaning="The page on which you found it",
            where="The address line",
            wide=True,
            when=BROWSING,
        ),
        Column(
            heading="Contact",
            meaning="Whom to write to; stays out of the report",
            where="The maker's page",
            when=BROWSING,
        ),
        Column(
            heading="Asked on",
            meaning="The day on which you first wrote; with the next column it gives the response time",
            where="Your messages",
            kind="date",
            when=ASKING,
        ),
        Column(
            heading="Answered on",
            meaning="The day of the first real answer, not of an automatic one",
            where="Your messages",
            kind="date",
            when=REPLYING,
        ),
        Column(
            heading="Care",
            meaning="How to wash and care for the goods, as the maker answered: lines parted by semicolons",
            where="Ask the maker: of textiles washing temperature, bleaching, tumble drying, ironing and dry cleaning; "
            "of tableware dishwasher cycles and microwave. The care cards are made from it",
            wide=True,
            when=REPLYING,
        ),
        Column(
            heading="Seen on",
            meaning="The day on which you read all this",
            where="You",
            kind="date",
            when=BROWSING,
        ),
        Column(
            heading="Notes",
            meaning="Anything worth remembering; stays out of the report",
            where="You",
            wide=True,
            when=ANY_TIME,
        ),
    )
