"""Quotes, freight and the criteria file's tables, gathered into the inputs of a landed cost.

Enters: the filled sheets, the makers and the criteria as read. Leaves: the inputs; every problem at its cell or key.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from math import isnan
from typing import cast

from scorecard.answers import MakerTable
from scorecard.codes import CURRENCY_DECIMALS
from scorecard.costing.amounts import Span
from scorecard.costing.currencies import Rates
from scorecard.costing.freight import FreightOffer
from scorecard.costing.import_presets import preset_for
from scorecard.costing.inputs import SAMPLES, CostInputs, MakerFacts, SampleIs
from scorecard.costing.quotes import QuoteRow
from scorecard.criteria import Criterion
from scorecard.errors import Place, Problem
from scorecard.reading.cost_tables import CostTables
from scorecard.reading.costs import CostsReading
from scorecard.reading.countries import countries_of
from scorecard.reading.criteria_file import CriteriaReading
from scorecard.reading.filled_sheets import FilledSheet
from scorecard.reading.findings import each_once
from scorecard.reading.freight_sheet import FREIGHT_HEADINGS, FREIGHT_SHEET, read_freight
from scorecard.reading.further_sheets import FurtherSheets
from scorecard.reading.headings import SAMPLE, folded, heading_of
from scorecard.reading.makers import MakersReading, ReadingOptions
from scorecard.reading.names import same
from scorecard.reading.quotes_sheet import QUOTE_HEADINGS, QUOTES_SHEET, read_quotes
from scorecard.reading.sheet_table import TableRow
from scorecard.reading.unit_numbers import uncounted_setups
from scorecard.reading.units import ANY_MONEY
from scorecard.words import nearest

HEADINGS = {QUOTES_SHEET: QUOTE_HEADINGS, FREIGHT_SHEET: FREIGHT_HEADINGS}


def gathered(
    filled: Mapping[str, FilledSheet], makers: MakersReading, criteria: CriteriaReading, options: ReadingOptions
) -> CostsReading:
    """Return what the filled sheets and the criteria file say of costs.

    Parameters
    ----------
    filled : by the sheet's name
    makers, criteria : as read
    options : what to set aside, today, and the most rows
    """
    named, tables = criteria.named, criteria.costs
    sheets = FurtherSheets.of(filled, HEADINGS, (makers, criteria), options)
    home = named.currency if named else None
    known = _known_currencies(home, tables)
    rows = sheets[QUOTES_SHEET]
    quotes = read_quotes(rows, home, known)
    offers = read_freight(sheets[FREIGHT_SHEET], home, known)
    of_keys = _key_problems(tables, makers, criteria, quotes)
    problems = (*of_keys, *each_once(sheets.problems, "currency-without-rate"))
    return CostsReading(
        inputs=_with_unread(None if problems else _inputs(makers.table, criteria, options, quotes, offers), rows),
        problems=problems,
        warnings=(*sheets.warnings, *uncounted_setups(quotes, criteria.brief)),
        set_aside=sheets.set_aside,
    )


def _with_unread(inputs: CostInputs | None, rows: Sequence[TableRow]) -> CostInputs | None:
    """Return the inputs with the makers whose prices are typed and none of which could be read."""
    if inputs is None:
        return None
    read = {quote.row for quote in inputs.quotes}
    typed = frozenset(row.text("Maker") for row in rows if row.says("Price") and row.number_in_sheet not in read)
    unread = _spelt(typed, list(inputs.makers)) - {quote.maker for quote in inputs.quotes}
    return replace(inputs, unread=unread) if unread else inputs


def _known_currencies(home: str | None, tables: CostTables | None) -> frozenset[str]:
    """Return the currencies in which amounts can be given; any, where the brief's cannot be told."""
    if home in (None, ANY_MONEY):
        return frozenset(CURRENCY_DECIMALS)
    rates = tables.rates if tables else None
    return frozenset({home, *(rates.rates if rates else ())})


def _key_problems(
    tables: CostTables | None, makers: MakersReading, criteria: CriteriaReading, quotes: Sequence[QuoteRow]
) -> list[Problem]:
    """Return what is wrong with keys of the criteria file, now that the sheets are read."""
    file = criteria.source.name if criteria.source else ""
    found = []
    brief = criteria.named
    if brief is not None and brief.currency is None and len({quote.currency for quote in quotes}) > 1:
        place = Place(file=file, key="brief.currency")
        wanted = 'Add the currency that costs are shown in, such as: currency = "EUR"'
        problem = Problem(code="missing-currency", place=place, found="quotes are in several currencies", wanted=wanted)
        found.append(problem)
    names = {same(name): name for name in makers.names or ()}
    for sampled in sorted(tables.settings.sampled) if tables and makers.names is not None else ():
        if same(sampled) not in names:
            place = Place(file=file, key="cost.sampled")
            close = nearest(sampled, list(names.values()))
            wanted = f"Write '{close}', if that is meant" if close else "Write a name that stands on the sheet Makers"
            told = f"'{sampled}' is no maker of the sheet Makers"
            found.append(Problem(code="unknown-maker", place=place, found=told, wanted=wanted))
    return found


def _inputs(
    table: MakerTable | None,
    criteria: CriteriaReading,
    options: ReadingOptions,
    quotes: tuple[QuoteRow, ...],
    offers: tuple[FreightOffer, ...],
) -> CostInputs | None:
    """Return the inputs; None where the makers or the brief could not be read."""
    brief = criteria.brief
    if table is None or brief is None:
        return None
    home = brief.currency or next((quote.currency for quote in quotes), None)
    tables = criteria.costs or CostTables(imports=preset_for(brief.destination) if brief.destination else None)
    if home is None:
        return None
    return CostInputs(
        brief=replace(brief, currency=home),
        as_of=options.as_of or date.min,
        makers={facts.maker: facts for facts in _facts(table, criteria.criteria)},
        rates=tables.rates or Rates(home=home),
        quotes=quotes,
        offers=offers,
        imports=tables.imports,
        shipping=tables.shipping,
        shipping_charges=tables.shipping_charges,
        settings=replace(tables.settings, sampled=_spelt(tables.settings.sampled, table.makers)),
    )


def _spelt(names: frozenset[str], makers: Sequence[str]) -> frozenset[str]:
    """Return names as the sheet Makers spells them."""
    wanted = {same(name) for name in names}
    return frozenset(maker for maker in makers if same(maker) in wanted)


def _facts(table: MakerTable, criteria: Sequence[Criterion]) -> list[MakerFacts]:
    """Return what the sheet Makers says of each maker that bears on cost."""
    answers = table.minimum
    countries, samples = countries_of(table), _samples(table, criteria)
    return [
        MakerFacts(
            maker=maker,
            minimum=None if answers is None else _span(float(answers.low[at]), float(answers.high[at])),
            minimum_per=table.minimum_per[at] if table.minimum_per else None,
            country=countries[at],
            sample=samples[at],
        )
        for at, maker in enumerate(table.makers)
    ]


def _samples(table: MakerTable, criteria: Sequence[Criterion]) -> list[SampleIs | None]:
    """Return which makers' samples are free, and which are paid, by the column Sample; other words are the user's."""
    of_sample = (one for one in criteria if one.choices and folded(heading_of(one) or "") == folded(SAMPLE))
    criterion = next((one for one in of_sample if one.key in table.answers), None)
    if criterion is None:
        return [None] * len(table)
    choices = cast("tuple[str, ...]", criterion.choices)
    known: list[SampleIs | None] = [next((one for one in SAMPLES if one == folded(each)), None) for each in choices]
    return [None if isnan(answer) else known[int(answer)] for answer in table.answers[criterion.key].low]


def _span(low: float, high: float) -> Span | None:
    """Return a minimum as a span; None where it is unknown."""
    return None if isnan(low) else Span.between(max(0.0, low), max(0.0, low, high))
