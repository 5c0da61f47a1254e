"""``order``: the order sheet of one maker as a page to print, with what is still missing at its head."""

from dataclasses import replace
from pathlib import Path
from textwrap import wrap
from typing import Any

import typer

from scorecard.checks import MONEY_CAUTION
from scorecard.cli.following import next_of_order
from scorecard.cli.gate import say, show_json
from scorecard.cli.invocation import quoted
from scorecard.cli.naming import named_maker
from scorecard.cli.ordered_artwork import lack_of_artwork
from scorecard.cli.scoring import REPORTS, Inputs, refuse_nobody, tell_case, tell_kept, tell_warnings
from scorecard.cli.tables import plain, visible
from scorecard.costing.quotes import WAYS, Way
from scorecard.errors import UsageError
from scorecard.harmless import safe_name
from scorecard.letters.order_json import order_json
from scorecard.letters.order_page import is_complete_page, order_page, unstamped
from scorecard.letters.order_words import OWN_BRAND, SAFETY, missing_lines, own_notes, total_words
from scorecard.order_sheet import OrderSheet, order_sheet, with_artwork
from scorecard.reasons import reasons_against
from scorecard.whole_files import numbered, told, write_new
from scorecard.words import counted, listed
from scorecard.writing import time_stamp, write_outputs

WIDE = 110  # characters of a line of words


def write_order_sheet(inputs: Inputs, typed: str, way: str | None, *, as_json: bool) -> None:
    """Write a maker's order sheet, and print what is still missing, what to mind, and where the page is."""
    case, by = inputs.read(dates=True), named_way(way)
    refuse_nobody(case)
    maker = named_maker(typed, case.table.makers, "MAKER")
    sheet = replace(order_sheet(case, maker, inputs.day(), by), ruled_out=reasons_against(case, maker, inputs.day()))
    if sheet.placed is None:
        home = inputs.criteria.parent if inputs.criteria else inputs.folder
        sheet = with_artwork(sheet, lambda design: lack_of_artwork(design, home, case.brief))
    path = inputs.folder / REPORTS / sheet_name(sheet, by)
    page = order_page(sheet, written=time_stamp())
    keep_complete(path, page)
    tell_kept(write_outputs(path.parent, {path.name: page.encode()}))
    if as_json:
        show_json(order_result(sheet, path) | {"as_of": inputs.day().isoformat()})
        return
    tell_case(case, inputs.day())
    tell_sheet(sheet, path)
    tell_warnings(case, inputs)
    typer.echo(f"Next: {next_step(sheet, inputs)}")


def named_way(typed: str | None) -> Way | None:
    """Return the way of shipping that is named, or None.

    Raises
    ------
    UsageError
        If it is none of the ways.
    """
    found = next((way for way in WAYS if way == (typed or "").strip().casefold()), None)
    if typed is not None and found is None:
        raise UsageError(f"--way {visible(typed)}: there is no such way of shipping. Write {listed(WAYS, 'or')}.")
    return found


def sheet_name(sheet: OrderSheet, way: Way | None) -> str:
    """Return the name of the page; that of a placed order has its day, so that the sheet that was sent stays."""
    return _named(sheet, sheet.as_of.isoformat() if sheet.placed else way)


def _named(sheet: OrderSheet, end: str | None) -> str:
    return f"{'-'.join(['order', safe_name(sheet.maker, sheet.row), *([end] if end else [])])}.html"


def drafts_of(sheet: OrderSheet, folder: Path) -> list[str]:
    """Return the names of sheets from before an order was placed that still lie in a folder; of a draft none."""
    names = [_named(sheet, way) for way in (None, *WAYS)] if sheet.placed else []
    return [name for name in names if (folder / name).is_file()]


def keep_complete(path: Path, page: str) -> None:
    """Keep a complete sheet beside itself before another takes its place, and say so; it may have been sent."""
    if not path.is_file():
        return
    with told(path):
        there = path.read_bytes()
        if is_complete_page(there) and unstamped(there) != unstamped(page.encode()):
            kept = write_new(numbered(path, "earlier"), there)
            say(f"The sheet that was there was complete, and you may have sent it: it is kept as {kept}.")


def order_result(sheet: OrderSheet, path: Path) -> dict[str, Any]:
    """Return what ``scorecard order --json`` prints."""
    warnings = [one.as_json() for one in sheet.case.warnings]
    return order_json(sheet) | {"file": path.as_posix(), "warnings": warnings}


def tell_sheet(sheet: OrderSheet, path: Path) -> None:
    """Print what is ordered, what is missing, and what the buyer should know."""
    bill = total_words(sheet)
    by = f" by {sheet.cost.way}" if sheet.cost and sheet.cost.way else ""
    fewest, most = sheet.quantity
    pieces = counted(most, "piece") if fewest == most else f"{fewest} to {most} pieces"
    typer.echo(f"{visible(sheet.maker)}{by}: {pieces}{f', {bill} to the maker' if bill else ''}.")
    if sheet.missing:
        typer.echo(f"Not complete: {counted(len(sheet.missing), 'thing')} still missing:")
        for line in missing_lines(sheet):
            _tell(line, "  – ")
    else:
        typer.echo("Complete: nothing is missing.")
    for words in (*own_notes(sheet), MONEY_CAUTION.rstrip("."), SAFETY, OWN_BRAND):
        _tell(f"{words}.", "")
    typer.echo(f"Page to print, with further cautions: {path.resolve()}")
    drafts = drafts_of(sheet, path.parent)
    if drafts:
        _tell(f"From before the order was placed, and not to be sent any more: {listed(drafts)} beside it.", "")


def _tell(words: str, mark: str) -> None:
    typer.echo("\n".join(wrap(plain(words), WIDE, initial_indent=mark, subsequent_indent=" " * len(mark) or "  ")))


def next_step(sheet: OrderSheet, inputs: Inputs) -> str:
    """Return what to do next."""
    if sheet.placed is not None:
        return next_of_order(sheet.case, sheet.placed, inputs)
    if sheet.missing:
        first = sheet.missing[0]
        more = ", and what follows it" if len(sheet.missing) > 1 else ""
        return f"settle {plain(first.what)} ({plain(first.where)}){more}, then run this again"
    inspect = inputs.started.command(f"inspect --maker {quoted(visible(sheet.maker))}")
    return (
        "read it once more, send all but its last part, and write the order into the sheet Orders; when the pieces "
        f"have come: {inspect}"
    )
