"""``cost``: what a good piece costs at the door, every maker by every way, each with every line of its sum."""

from collections.abc import Sequence
from textwrap import wrap
from typing import TYPE_CHECKING

import typer

from scorecard.assessment import Assessment, assess
from scorecard.cli.gate import show_json
from scorecard.cli.scoring import Inputs, refuse_nobody, tell_case, tell_warnings
from scorecard.cli.tables import as_text, plain, visible
from scorecard.cost_results import cost_result, first_ranked, in_order, not_quoted
from scorecard.costed import Costed
from scorecard.scheduling.wording import OVER
from scorecard.sentences import unquoted_words
from scorecard.words import counted, day_words, listed

if TYPE_CHECKING:
    from scorecard.cost_words import CostTold, LineTold

SHORT = 30  # costs told line by line on the screen; --json gives all
WIDE = 110  # characters of a line of words
WORKING = 80  # characters of a line's working
HEADINGS = (
    "",
    "Maker",
    "Way",
    "A good piece",
    "In all",
    "Days quoted",
    "How it stands",
    "Begin by",
    "Freight and border, of the total",
    "Missing",
)
FEW = 3  # missing costs from which they are counted, not named, in the table


def cost_folder(inputs: Inputs, *, as_json: bool) -> None:
    """Print what every quoted maker's goods cost at the door, and what stands beside these sums."""
    case = inputs.read()
    refuse_nobody(case)
    assessment = assess(case, as_of=inputs.day())
    if as_json:
        show_json(cost_result(assessment))
        return
    tell_case(assessment.case, assessment.as_of)
    costed = assessment.case.costed
    if costed is None or not costed.costs:
        typer.echo("Nothing is quoted yet: once a reply is written into the sheet Quotes, one line is enough.")
    else:
        tell_costs(assessment, costed)
    tell_warnings(assessment.case, inputs)
    typer.echo(f"Next: {next_step(assessment, inputs)}")


def tell_costs(assessment: Assessment, costed: Costed) -> None:
    """Print the table of all costs, each sum line by line, and what stands beside them."""
    from scorecard.cost_words import days_counted, told

    costs = [told(costed, cost, why) for cost, why in in_order(assessment)]
    _tell_wanted(costed)
    rows = [HEADINGS]
    for place, one in enumerate(costs, start=1):
        mark = f"{place}." if one.has_place else "–"
        name = f"{visible(one.maker)}{' *' if one.is_chosen else ''}"
        missing = plain(", ".join(one.missing)) if len(one.missing) < FEW else counted(len(one.missing), "cost")
        missing = "; ".join([*(["ruled out"] if one.ruled_out else []), *([missing] if one.missing else [])])
        when = (one.quoted, one.time, one.begin_by)
        rows.append((mark, name, one.way, one.per_piece, one.total, *when, one.adds, missing))
    typer.echo(as_text(_told_columns(rows), right=frozenset({0, 3, 4})))
    typer.echo(
        "* The way that stands for its maker: as ordered, else the cheapest that is there in time, else the quickest."
    )
    if any(one.begin_by.startswith("(") for one in costs):
        typer.echo(f"{OVER}.")
    for words in days_counted(costed):
        _tell(words)
    for place, one in enumerate(costs[:SHORT], start=1):
        _tell_sum(place, one)
    if len(costs) > SHORT:
        typer.echo(f"\n… and {len(costs) - SHORT} more; --json gives every line of all")
    typer.echo("")
    for words in sentences(assessment, costed):
        _tell(words)


def _told_columns(rows: Sequence[Sequence[str]]) -> list[tuple[str, ...]]:
    """Return the rows without the columns about a need-by date where nothing is said of it."""
    silent = {at for at in (6, 7) if not any(row[at] for row in rows[1:])}
    return [tuple(cell for at, cell in enumerate(row) if at not in silent) for row in rows]


def _tell_wanted(costed: Costed) -> None:
    brief = costed.inputs.brief
    where = f" in {brief.destination}" if brief.destination else ""
    when = f", needed by {day_words(brief.need_by)}" if brief.need_by else ""
    home = costed.inputs.rates.home
    typer.echo(
        f"{counted(brief.quantity, 'piece')} at your door{where}, in {home}{when}; the cheapest good piece first."
    )


def _tell_sum(place: int, one: "CostTold") -> None:
    """Print one cost: its headline, every line, what is missing, what must be said, and what is paid before."""
    way = f", {one.way}" if one.way else ""
    mark = f"{place}." if not one.ruled_out else "–"
    typer.echo(f"\n{mark} {visible(one.maker)}{way}: {one.piece_amount} a good piece, {one.total} in all")
    if one.ruled_out:
        _tell(f"Ruled out: {one.ruled_out}", "   ")
    _tell(f"{one.pieces}, {one.when}", "   ")
    for told_sum in one.sums:
        if told_sum.heading:
            typer.echo(f"   {plain(told_sum.heading)}:")
        rows = [row for line in told_sum.lines for row in _line_rows(line)]
        typer.echo(as_text([*rows, ("   In all", told_sum.total, "")], right=frozenset({1})))
        for gap in told_sum.gaps:
            _tell(f"Missing – {gap}", "   ")
    for line in one.spent:
        _tell(f"Already paid, and left out of the sum – {line.name}: {line.amount} ({line.working})", "   ")
    for note in one.notes:
        _tell(note, "   ")
    _tell(f"Before you can check anything you will have paid {one.paid_amount}, {one.paid_how}", "   ")


def _line_rows(line: "LineTold") -> list[tuple[str, str, str]]:
    """Return a line of a sum as rows of a table, its working broken where it is long."""
    back = f" – of {line.paid} paid" if line.paid else ""
    first, *more = wrap(f"{plain(line.working)}{back}", WORKING) or [""]
    return [(f"   {plain(line.name)}", line.amount, first), *(("", "", words) for words in more)]


def _tell(words: str, margin: str = "") -> None:
    """Print a sentence, broken into lines."""
    typer.echo("\n".join(wrap(f"{plain(words)}.", WIDE, initial_indent=margin, subsequent_indent=f"{margin}  ")))


def sentences(assessment: Assessment, costed: Costed) -> list[str]:
    """Return what stands beside the sums, as sentences without their full stops."""
    from scorecard.cost_sentences import beside, compared
    from scorecard.costing.cautions import cautions

    ranked = assessment.ranked_costs or costed
    said = [*compared(ranked), *beside(ranked, first_ranked(assessment))]
    said += unquoted_words(not_quoted(assessment), costed.inputs.unread)
    return [*said, *cautions(costed.inputs, costed.costs)]


def next_step(assessment: Assessment, inputs: Inputs) -> str:
    """Return what to do next, as the quotes stand."""
    costed = assessment.ranked_costs
    if costed is None or not costed.costs:
        return f"ask for quotes: {inputs.started.command('enquire')}"
    open_ones = [cost for cost in costed.chosen.values() if not cost.is_complete]
    if open_ones:
        first = min(open_ones, key=lambda cost: len(cost.gaps))
        names = listed(dict.fromkeys(gap.name for gap in first.gaps))
        return f"find out what is missing of {visible(first.maker)} ({plain(names)}), and write it in"
    return f"see scores and costs side by side: {inputs.started.command('score')}"
