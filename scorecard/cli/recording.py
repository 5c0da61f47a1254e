"""``record``: a maker's orders as they went, kept in the folder for the next order."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

import typer

from scorecard.arrivals import order_of
from scorecard.case import Case
from scorecard.cli.following import inspect_of
from scorecard.cli.gate import show_json
from scorecard.cli.invocation import quoted
from scorecard.cli.naming import named_maker
from scorecard.cli.scoring import Inputs, refuse_nobody, tell_case, tell_warnings
from scorecard.cli.tables import plain, visible
from scorecard.costing.quoted_then import quoted_then
from scorecard.errors import InputError, Problem
from scorecard.locks import alone_in
from scorecard.memory import Record, is_news, last_of, own_orders, records_of, same_maker, totals
from scorecard.memory_json import memory_bytes, record_json, totals_json
from scorecard.memory_words import changes_words, record_words, totals_words
from scorecard.orders import OrderRow
from scorecard.reading.memory_file import MEMORY_FILE, read_memory
from scorecard.whole_files import write_whole
from scorecard.words import counted, day_words

SCHEMA = "scorecard-record/1"


def record_orders(inputs: Inputs, typed: str, *, as_json: bool) -> None:
    """Keep what happened to a maker's orders, and print it in words."""
    case, day = inputs.read(), inputs.day()
    refuse_nobody(case)
    maker = case.table.makers[named_maker(typed, case.table.makers, "MAKER")]
    refuse_unknown(case, maker)
    refuse_undated(case, maker)
    fresh = [one for one in with_quotes(case) if one.maker == maker]
    kept, news = keep_news(inputs.folder, fresh, day)
    changes = [line for one in news for line in change_lines(one, kept)]
    own = [one for one in own_orders([*kept, *news], fresh) if same_maker(one.maker) == same_maker(maker)]
    if as_json:
        show_json(record_result(case, maker, own, day) | {"new": len(news), "changes": changes, "file": MEMORY_FILE})
        return
    tell_case(case, day)
    tell_orders(maker, own, day)
    tell_kept_orders(news, changes)
    tell_warnings(case, inputs)
    typer.echo(f"Next: {next_step(case, maker, inputs)}")


def keep_news(folder: Path, fresh: Sequence[Record], day: date) -> tuple[Sequence[Record], Sequence[Record]]:
    """Add what is new to what a folder remembers, and return both; another run at the same time adds its own to it.

    Raises
    ------
    InputError
        If what is remembered cannot be read any more.
    """
    with alone_in(folder):
        memory = read_memory(folder)
        if memory.problems:
            raise InputError(memory.problems)
        news = [replace(one, recorded_on=day) for one in fresh if is_news(one, memory.records)]
        if news:
            write_whole(folder / MEMORY_FILE, memory_bytes([*memory.records, *news]))
    return memory.records, news


def refuse_unknown(case: Case, maker: str) -> None:
    """Raise an error where neither the sheet nor what is kept names an order of a maker."""
    if not any(same_maker(one.maker) == same_maker(maker) for one in case.memory):
        order_of(case, maker)


def refuse_undated(case: Case, maker: str) -> None:
    """Raise an error where no day is known of an order, since it could not be told from others later."""
    wanted = "Write the day on which you ordered"
    problems = [
        Problem(code="no-day-of-order", place=one.at("Ordered on"), found="this order has no day", wanted=wanted)
        for one in case.orders
        if one.maker == maker and one.ordered is None
    ]
    if problems:
        raise InputError(problems, case.warnings, case.set_aside)


def with_quotes(case: Case) -> list[Record]:
    """Return the orders of the sheet as records, each with what it was quoted at that day; kept quotes stay."""
    records = records_of(case.orders, case.brief.item, case.brief.currency)
    kept = {one.key: one for one in case.memory}
    return [_quoted(case, one, order, kept.get(one.key)) for one, order in zip(records, case.orders, strict=True)]


def _quoted(case: Case, record: Record, order: OrderRow, before: Record | None) -> Record:
    if case.costs is not None and record.pieces and record.ordered:
        found = quoted_then(case.costs, order.maker, record.pieces, record.ordered, record.way)
        if found is not None:
            home = case.costs.rates.home
            return replace(record, quoted=found.amount, quoted_in_full=found.in_full, currency=home)
    if before is None:
        return record
    return replace(record, quoted=before.quoted, quoted_in_full=before.quoted_in_full)


def record_result(case: Case, maker: str, own: Sequence[Record], day: date) -> dict[str, Any]:
    """Return what ``scorecard record --json`` prints, without what was written."""
    return {
        "schema": SCHEMA,
        "title": case.title,
        "as_of": day.isoformat(),
        "maker": maker,
        "orders": [
            record_json(one) | {"days_late": one.days_late(day), "words": record_words(one, day)} for one in own
        ],
        "totals": totals_json(totals(own, day)),
        "earlier_records": len(case.memory),
        "warnings": [one.as_json() for one in case.warnings],
    }


def tell_orders(maker: str, own: Sequence[Record], day: date) -> None:
    """Print a maker's orders, and what they come to."""
    typer.echo(f"{visible(maker)}:")
    for one in own:
        typer.echo(f"  {plain(record_words(one, day))}.")
    typer.echo(f"{totals_words(totals(own, day))}.")


def change_lines(one: Record, kept: Sequence[Record]) -> list[str]:
    """Return what a record says that the last one of its order did not, in words; nothing of an order that is new."""
    before = last_of(one, kept)
    if before is None or one.ordered is None:
        return []
    return [f"order of {day_words(one.ordered)}: {'; '.join(changes_words(before, one))}"]


def tell_kept_orders(news: Sequence[Record], changes: Sequence[str]) -> None:
    """Print what was kept of these orders that was not kept before."""
    if not news:
        typer.echo(f"Already recorded in {MEMORY_FILE}; nothing changed.")
    for line in changes:
        typer.echo(f"Changed in {MEMORY_FILE}, {plain(line)}.")
    if len(news) > len(changes):
        typer.echo(f"Kept in {MEMORY_FILE}: {counted(len(news) - len(changes), 'order')}.")


def next_step(case: Case, maker: str, inputs: Inputs) -> str:
    """Return what to do next: what is still to be noted of the last order, or the next brief."""
    of_sheet = [one for one in case.orders if one.maker == maker]
    if not of_sheet:
        order = inputs.started.command(f"order {quoted(visible(maker))}")
        return f"to order again, see what the order sheet still lacks: {order}"
    last = of_sheet[-1]
    inspect = inputs.started.command(inspect_of(last, of_sheet))
    wanted = (
        ("Arrived on", last.arrived, "when the pieces have come, type the day"),
        ("Faulty pieces", last.faulty, f"count with {inspect}, and type what it says"),
        ("Paid in all", last.paid, "type what it cost in all"),
    )
    for heading, value, words in wanted:
        if value is None:
            into = f"{last.places[heading].cell} ({heading})" if heading in last.places else f"a new column {heading}"
            again = inputs.started.command(f"record {quoted(visible(maker))}")
            return f"{words} into {into} of the sheet Orders, then {again}"
    source = inputs.folder if inputs.folder.name else "."
    return f"when you order again: {inputs.started.program} start NEW-FOLDER --from {quoted(str(source))}"
