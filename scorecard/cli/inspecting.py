"""``inspect``: a tally sheet of what arrived, or a sample of it; with counts, what they come to and what to claim."""

from pathlib import Path
from typing import Any

import typer

from scorecard.arrivals import Told, arrival_of, order_of
from scorecard.case import Case
from scorecard.cli.gate import show_json
from scorecard.cli.invocation import quoted
from scorecard.cli.naming import named_maker
from scorecard.cli.scoring import REPORTS, Inputs, tell_case, tell_kept
from scorecard.cli.tables import as_text, plain, visible
from scorecard.errors import UsageError
from scorecard.frozen import dataclass
from scorecard.harmless import safe_name
from scorecard.inspection.counting_faults import count_faults
from scorecard.inspection.drawing import drawn, spots
from scorecard.inspection.inspection_json import arrival_json, lines_json, outcome_json, plan_json
from scorecard.inspection.outcome import Arrival, Outcome, outcome_of
from scorecard.inspection.outcome_words import (
    CAUTIONS,
    DANGER,
    arrived_sentence,
    claim_text,
    count_words,
    exact_sentence,
    exact_words,
    found_sentence,
    judged_sentence,
    last_day_sentence,
    money_sentence,
    noting_words,
    number_sentence,
    rest_sentence,
)
from scorecard.inspection.plan_words import NO_PROMISE, SLIP_HEADING, limit_sentence, shared_sentence, slip_rows
from scorecard.inspection.plans import SamplingPlan, sampling_plan
from scorecard.inspection.settings import InspectionSettings
from scorecard.letters.arrival_page import Sheet, outcome_page, tally_page
from scorecard.orders import OrderRow, of_maker
from scorecard.words import all_of, counted, day_words, listed
from scorecard.writing import time_stamp, write_outputs

MOST_TO_OPEN = 500  # pieces; of more, a sample is drawn unless all is asked for (our own choice)


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """What the user says of an arrival.

    Parameters
    ----------
    row : of the order, in the sheet Orders; None for the one that is to be counted
    sample, everything : what to open; neither: a sample where there are more than ``MOST_TO_OPEN`` pieces
    opened : pieces; None while nothing is counted
    counts : as typed, such as "B2=4"
    seed : in place of that of the criteria file
    """

    maker: str | None = None
    row: int | None = None
    arrived: int | None = None
    per_carton: int | None = None
    sample: bool = False
    everything: bool = False
    opened: int | None = None
    counts: tuple[str, ...] = ()
    seed: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Inspection:
    """An inspection, as far as it has come.

    Parameters
    ----------
    outcome : None while nothing is counted
    """

    case: Case
    order: OrderRow | None
    wish: Wish
    sheet: Sheet
    seed: int
    outcome: Outcome | None = None

    @property
    def arrival(self) -> Arrival:
        """What arrived."""
        return self.sheet.arrival

    @property
    def rivals(self) -> list[OrderRow]:
        """Other orders that may be meant: of the maker that is named, or of all."""
        whose = self.order.maker if self.order and self.wish.maker else None
        return [one for one in of_maker(self.case.orders, whose) if one != self.order]

    @property
    def entering(self) -> str:
        """The command that takes the counts, with numbers for an example."""
        arrival, named = self.arrival, self.wish.maker
        options = (
            "--sample" if self.sheet.plan else "--all" if arrival.lot > MOST_TO_OPEN else "",
            f"--maker {quoted(named)}" if named else "",
            f"--row {self.order.row}" if self.order and (self.wish.row or self.rivals) else "",
            "" if self.wish.arrived is None else f"--arrived {arrival.lot}",
            "" if self.wish.per_carton is None else f"--per-carton {self.wish.per_carton}",
            f"--opened {self.sheet.to_open}",
        )
        return " ".join(["inspect", *filter(None, options), "B1=2", "C1=5"])

    def file_name(self, what: str) -> str:
        """Return the name of a page of this order, so that those of another order stay."""
        order = f"-{safe_name(self.order.maker, self.order.row)}" if self.order else ""
        return f"{what}{order}.html"


def inspect_folder(inputs: Inputs, wish: Wish, *, as_json: bool) -> None:
    """Write the tally sheet of a folder, or with counts the outcome, and print what to do."""
    made = inspection_of(inputs.read(), wish)
    name, page = _page(made, inputs)
    tell_kept(write_outputs(inputs.folder / REPORTS, {name: page.encode()}))
    path = inputs.folder / REPORTS / name
    if as_json:
        show_json(inspect_result(made, inputs, path))
        return
    tell_case(made.case, inputs.day())
    _tell_order(made, inputs)
    if made.outcome is None:
        _tell_sheet(made, inputs, path)
    else:
        _tell_outcome(made.outcome, inputs, path)


def inspection_of(case: Case, wish: Wish) -> Inspection:
    """Return the inspection that is asked for.

    Raises
    ------
    InputError
        If a maker is named that no order names.
    UsageError
        If no order stands in the row that is named; else with everything that is wrong with what was typed.
    """
    maker = None if wish.maker is None else case.table.makers[named_maker(wish.maker, case.table.makers)]
    order = order_of(case, maker, wish.row)
    told = Told(maker=maker, arrived=wish.arrived, per_carton=wish.per_carton)
    arrival = arrival_of(case, order, told)
    settings = case.inspection or InspectionSettings()
    is_counted = wish.opened is not None or bool(wish.counts)
    counts = count_faults(wish.counts, settings.lines, wish.opened, arrival.lot) if is_counted else None
    mistakes = [*_wrong_lot(wish), *(counts.mistakes if counts and arrival.lot > 0 else ())]
    if mistakes:
        raise UsageError("\n".join(f"{mistake}." for mistake in mistakes))
    seed = settings.seed if wish.seed is None else wish.seed
    plan = _plan(arrival, settings, wish)
    chosen = spots(drawn(plan.lot, plan.opened, seed), arrival.per_carton) if plan else ()
    outcome = outcome_of(arrival, wish.opened, counts.faulty, plan) if counts and wish.opened else None
    sheet = Sheet(arrival=arrival, lines=settings.lines, plan=plan, drawn=chosen)
    return Inspection(case=case, order=order, wish=wish, sheet=sheet, seed=seed, outcome=outcome)


def _plan(arrival: Arrival, settings: InspectionSettings, wish: Wish) -> SamplingPlan | None:
    """Return the sampling plan; None where all is opened."""
    is_wanted = wish.sample or (arrival.lot > MOST_TO_OPEN and not wish.everything)
    return sampling_plan(arrival.lot, settings.level, settings.limits) if is_wanted else None


def _wrong_lot(wish: Wish) -> list[str]:
    """Return what is said of options that leave nothing to open, or ask for two things."""
    found = []
    if wish.sample and wish.everything:
        found.append("--sample --all: either a sample is opened or all. Leave one of them out")
    if wish.arrived is not None and wish.arrived < 1:
        found.append(
            f"--arrived {wish.arrived}: a lot of {wish.arrived} pieces has nothing to open. Say how many pieces "
            "arrived; if none did, write to the maker, and to the carrier"
        )
    if wish.per_carton is not None and wish.per_carton < 1:
        found.append(f"--per-carton {wish.per_carton}: a carton holds at least one piece. Count those of a full one")
    return found


def _page(made: Inspection, inputs: Inputs) -> tuple[str, str]:
    """Return the page's file name, and the page."""
    stamp, title, as_of = time_stamp(), made.case.title, inputs.day()
    if made.outcome is not None:
        return made.file_name("arrival"), outcome_page(made.outcome, title=title, as_of=as_of, made=stamp)
    command = inputs.started.in_files().command(made.entering)
    return made.file_name("tally-sheet"), tally_page(made.sheet, title=title, as_of=as_of, made=stamp, command=command)


def inspect_result(made: Inspection, inputs: Inputs, path: Path) -> dict[str, Any]:
    """Return what ``scorecard inspect --json`` prints."""
    sheet = made.sheet
    return {
        "schema": "scorecard-inspect/1",
        "title": made.case.title,
        "as_of": inputs.day().isoformat(),
        "row": made.order.row if made.order else None,
        "arrival": arrival_json(made.arrival),
        "lines": lines_json(sheet.lines),
        "sample": plan_json(sheet.plan, made.seed, sheet.drawn) if sheet.plan else None,
        "outcome": outcome_json(made.outcome) if made.outcome else None,
        "file": path.as_posix(),
        "warnings": [one.as_json() for one in made.case.warnings],
    }


def _tell_order(made: Inspection, inputs: Inputs) -> None:
    """Print whose order it is, and how another one is named."""
    arrival, order = made.arrival, made.order
    pieces = f"{counted(arrival.lot, 'piece')}{', with' if arrival.extra else ' of'} {arrival.ordered} ordered"
    if order is None:
        typer.echo(f"No order is noted in the sheet Orders yet; {pieces}, by the brief.")
        return
    on = f" on {day_words(arrival.ordered_on)}" if arrival.ordered_on else ""
    others = {one.maker for one in made.case.orders} - {order.maker}
    other = f" Of another maker: {inputs.started.command('inspect --maker NAME')}." if others else ""
    rows = [str(one.row) for one in of_maker(made.case.orders, order.maker) if one != order]
    if rows:
        other += f" Of another order ({_rows(rows)}): {inputs.started.command(f'inspect --row {rows[-1]}')}."
    by = "" if order.pieces else ", by the brief, since the sheet does not say how many"
    typer.echo(f"{visible(order.maker)}, ordered{on} (row {order.row} of the sheet Orders): {pieces}{by}.{other}")
    unarrived = arrived_sentence(arrival)
    if unarrived:
        typer.echo(f"{unarrived}.")


def _rows(rows: list[str]) -> str:
    return f"row {rows[0]}" if len(rows) == 1 else f"rows {listed(rows)}"


def _tell_sheet(made: Inspection, inputs: Inputs, path: Path) -> None:
    """Print how many to open, how a sample is judged, and where the sheet is."""
    plan = made.sheet.plan
    if plan is None:
        typer.echo(f"Open {all_of(made.arrival.lot, 'piece')}.")
    else:
        _tell_plan(plan)
    typer.echo(f"{last_day_sentence(made.arrival, inputs.day())}.")
    typer.echo(f"Sheet to print: {path.resolve()}")
    entering = inputs.started.command(made.entering)
    typer.echo(f"Next: print it, open and count, then {entering} with your own numbers")


def _tell_plan(plan: SamplingPlan) -> None:
    some = f"{counted(plan.opened, 'piece')} of {plan.lot}, those on the sheet and no others"
    whole = f"{all_of(plan.lot, 'piece')}: the lot is so small that the sample is all of it"
    typer.echo(f"Open {whole if plan.is_whole_lot else some}.")
    for one in plan.plans:
        typer.echo(f"{limit_sentence(one)}.")
    if plan.is_more_than_alone:
        typer.echo(f"{shared_sentence(plan)}.")
    if not plan.is_whole_lot:
        typer.echo(f"{SLIP_HEADING}:")
        heads = (f"{one.kind} faults" for one in plan.plans)
        typer.echo(as_text([("Faulty pieces", *heads), *slip_rows(plan)]))
    typer.echo(f"{NO_PROMISE}.")


def _tell_outcome(outcome: Outcome, inputs: Inputs, path: Path) -> None:
    """Print what the counts come to, what to claim, and until when."""
    typer.echo(f"{_capital(found_sentence(outcome))}.")
    if outcome.of("critical"):
        typer.echo(f"STOP. {DANGER}.")
    number = number_sentence(outcome.arrival)
    if number:
        typer.echo(f"{number}.")
    for count in outcome.counts:
        typer.echo(f"  {plain(count_words(count))}")
    rest, not_exact = rest_sentence(outcome), exact_sentence(outcome)
    for sentence in (
        *((rest,) if rest else ()),
        *(judged_sentence(one, outcome.arrival.lot) for one in outcome.judged),
        *((NO_PROMISE,) if outcome.judged and outcome.unopened else ()),
        money_sentence(outcome),
        *((not_exact,) if not_exact else ()),
        last_day_sentence(outcome.arrival, inputs.day()),
        *CAUTIONS,
    ):
        typer.echo(f"{sentence}.")
    typer.echo(f"What to write, and the numbers for the photographs: {path.resolve()}")
    typer.echo(f"Next: {_next_step(outcome)}")


def _capital(text: str) -> str:
    return text[0].upper() + text[1:]


def _next_step(outcome: Outcome) -> str:
    """Return what to do with an outcome."""
    noting, exact = noting_words(outcome), exact_words(outcome)
    if claim_text(outcome) is None:
        return noting
    sending = f"take the photographs, send the message from the page, then {noting}"
    return f"{exact}, and run this again; {sending}" if exact else sending
