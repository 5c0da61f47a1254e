"""Warnings where something is per colour or size, and the brief does not say how many of these the goods come in.

Enters: what was read, and the brief. Leaves: one warning for each unit, at the first cell that names it.
"""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from scorecard.answers import MakerTable
from scorecard.brief import UNITS, Brief, Unit
from scorecard.errors import Place, Problem
from scorecard.reading.findings import each_once
from scorecard.reading.headings import MINIMUM_PER

if TYPE_CHECKING:  # nothing of costs is loaded before something is quoted
    from scorecard.costing.quotes import QuoteRow

CODE = "number-not-said"


def uncounted_minimums(table: MakerTable, brief: Brief | None) -> tuple[Problem, ...]:
    """Return a warning for minimum orders above one piece that are per a unit of unknown number."""
    if brief is None or table.minimum is None:
        return ()
    unsaid = {unit for unit in UNITS if brief.units_of(unit) is None}
    found = [
        _warning(table.place(at, MINIMUM_PER), unit, "the minimum order")
        for at, unit in enumerate(table.minimum_per)
        if unit in unsaid and table.minimum.high[at] > 1
    ]
    return each_once(found, CODE)


def uncounted_setups(quotes: "Sequence[QuoteRow]", brief: Brief | None) -> tuple[Problem, ...]:
    """Return a warning for set-up that is charged per a unit of unknown number."""
    if brief is None:
        return ()
    found = [
        _warning(quote.at("Set-up is per"), quote.setup_per, "set-up")
        for quote in quotes
        if quote.setup_per
        and brief.units_of(quote.setup_per) is None
        and quote.setup is not None
        and quote.setup.high != 0
    ]
    return each_once(found, CODE)


def _warning(place: Place, unit: Unit, what: str) -> Problem:
    return Problem(
        code=CODE,
        place=place,
        found=f"{what} is per {unit}, and the brief does not say how many {unit}s the goods come in",
        wanted=f"Add them under [brief] of the criteria file, such as {unit}s = 2",
    )
