"""``check`` and ``score``: read a folder, assess it, print, and write the report, the workbook and the result."""

from datetime import date, datetime
from pathlib import Path
from typing import Any

import typer

from scorecard.asks import question_phrase, where_to_write
from scorecard.assessment import Assessment, assess
from scorecard.case import Case, day_meant
from scorecard.cli.following import next_of_latest
from scorecard.cli.gate import say, show_json, tell
from scorecard.cli.invocation import Invocation, program
from scorecard.cli.tables import ranking_table, visible
from scorecard.costed import with_costs
from scorecard.counting import count
from scorecard.errors import InputError, Place, Problem, UsageError
from scorecard.frozen import dataclass
from scorecard.reading.earlier_runs import since_last_time
from scorecard.reading.folder import read_folder
from scorecard.reading.makers import ROW_LIMIT
from scorecard.report.page import page
from scorecard.result_bytes import result_bytes
from scorecard.scale_doubts import with_scale_doubts
from scorecard.sentences import supporting, told_apart_by_none, verdict_sentence
from scorecard.stage import costed_makers, open_makers, stage_of, stage_sentences
from scorecard.words import counted, listed, shortest
from scorecard.workbooks.results import results_workbook
from scorecard.writing import HISTORY, Written, time_stamp, write_outputs

REPORTS = "reports"
LOUD = "not-whole"  # the warning that may put the wrong maker first, told by every run
UNSAVED = "open-elsewhere"  # the warning that what the user just typed may not be there yet, told before everything
SHORT = 10  # makers in the table on the screen


@dataclass(frozen=True, slots=True, kw_only=True)
class Inputs:
    """Which files to read, how, and as of which day."""

    folder: Path = Path()
    criteria: Path | None = None
    makers: Path | None = None
    as_of: str | None = None
    set_aside: bool = False
    rows: int = ROW_LIMIT

    def day(self) -> date:
        """Return the day that stands for today: the one named, else the clock's where the user is."""
        if self.as_of is None:
            return day_meant(None)
        try:
            return date.fromisoformat(self.as_of)
        except ValueError:
            raise UsageError(f"--as-of {self.as_of}: write a day as year-month-day, such as 2026-11-25.") from None

    @property
    def started(self) -> Invocation:
        """How this run was started, for the commands that it suggests."""
        return Invocation(
            program=program(),
            folder=self.folder,
            criteria=self.criteria,
            makers=self.makers,
            rows=None if self.rows == ROW_LIMIT else self.rows,
            set_aside=self.set_aside,
        )

    def read(self, *, dates: bool = False) -> Case:
        """Return what the files say, with what follows from it for costs.

        Parameters
        ----------
        dates : whether a schedule is wanted even where no maker has said how long anything takes

        Raises
        ------
        InputError
            If they have problems: all of them.
        """
        case = read_folder(
            self.folder,
            criteria_file=self.criteria,
            makers_file=self.makers,
            set_aside=self.set_aside,
            as_of=self.day(),
            row_limit=self.rows,
            dates=dates,
        )
        return with_costs(case, self.day())


def check_folder(inputs: Inputs, *, as_json: bool) -> None:
    """Print every problem and warning of a folder."""
    case = inputs.read()
    day = inputs.day()
    case = with_scale_doubts(case, [count(criterion, case, day) for criterion in case.criteria])
    if as_json:
        show_json(check_result(case, day))
        return
    readings = [one for one in case.warnings if one.code == "read-as"]
    warnings = [one for one in case.warnings if one.code != "read-as"]
    compared = counted(len(case.criteria), "criterion", "criteria")
    typer.echo(f"{case.title}: {counted(len(case.table), 'maker')} on {compared}, no problems.")
    _tell_list("Warnings", [str(one) for one in warnings])
    _tell_list("Read with goodwill", [f"{one.place}: {one.found}, {one.wanted}" for one in readings])
    first = f"write the first makers into {case.table.file}"
    typer.echo(f"Next: {inputs.started.command('score') if len(case.table) else first}")


def _tell_list(heading: str, lines: list[str]) -> None:
    if lines:
        typer.echo("\n  ".join([f"{heading}:", *lines]))


def check_result(case: Case, day: date) -> dict[str, Any]:
    """Return what ``scorecard check --json`` prints where the files have no problems."""
    return {
        "schema": "scorecard-check/1",
        "title": case.title,
        "as_of": day.isoformat(),
        "makers": len(case.table),
        "criteria": list(case.criteria.keys),
        "problems": [],
        "warnings": [one.as_json() for one in case.warnings],
    }


def score_folder(inputs: Inputs, *, as_json: bool, with_contacts: bool = False) -> None:
    """Assess a folder, write its outputs and print the verdict, a short table and where the report is."""
    assessment, result = written(inputs, with_contacts=with_contacts)
    if as_json:
        show_json(result)
        return
    tell_ranking(assessment, inputs)
    if "since_last_time" in result:
        from scorecard.report.since import sentences_of

        typer.echo(sentences_of(result["since_last_time"], visible)[0])
    typer.echo(f"Report: {(inputs.folder / REPORTS / 'shortlist.html').resolve()}")
    typer.echo(f"Next: {next_step(assessment, inputs)}")


def written(inputs: Inputs, *, with_contacts: bool = False) -> tuple[Assessment, dict[str, Any]]:
    """Assess a folder, write its outputs, and return the assessment with its result."""
    case = inputs.read()
    refuse_nobody(case)
    assessment = assess(case, as_of=inputs.day())
    result, made = assessment.as_json(), time_stamp()
    changed = since_last_time(inputs.folder / REPORTS / HISTORY, result, case.criteria.criteria, made=made)
    if changed is not None:
        result["since_last_time"] = changed
    outputs = outputs_of(assessment, result, made, inputs=inputs, with_contacts=with_contacts)
    tell_kept(write_outputs(inputs.folder / REPORTS, outputs, history=outputs["shortlist.json"], stamp=made))
    return assessment, result


def refuse_nobody(case: Case) -> None:
    """Raise an error where there is no maker to rank."""
    if len(case.table):
        return
    place = Place(file=case.table.file, sheet=case.table.sheet, cell=f"{case.table.letters.get('maker', 'A')}2")
    found, wanted = (
        "no maker is written down yet",
        "Write the first maker's name here, and what you know of it beside it",
    )
    others = [one for one in case.warnings if one.code != "no-makers"]
    raise InputError([Problem(code="no-makers", place=place, found=found, wanted=wanted)], others, case.set_aside)


def tell_kept(written: Written) -> None:
    """Print where outputs stand that the user had changed."""
    for kept in written.kept:
        say(f"What you had changed is kept as {kept}.")


def outputs_of(
    assessment: Assessment, result: dict[str, Any], made: datetime, *, inputs: Inputs, with_contacts: bool
) -> dict[str, bytes]:
    """Return the page, the workbook and the result as they are written, by file name."""
    command = inputs.started.in_files().command
    return {
        "shortlist.html": page(assessment, result, made=made, with_contacts=with_contacts, command=command).encode(),
        "shortlist.xlsx": results_workbook(assessment, made=made, command=command),
        "shortlist.json": result_bytes(result) + b"\n",
    }


def tell_case(case: Case, as_of: date) -> None:
    """Print what was set aside, before anything else, and what the case is, as of which day.

    Before all of it, on standard error, that a file is open in another program.
    """
    for unsaved in (one for one in case.warnings if one.code == UNSAVED):
        say(str(unsaved))
    if case.set_aside:
        cells = listed(_cell(one.place, case.table.sheet) for one in case.set_aside)
        typer.echo(f"Taken as unknown, since they could not be read: {cells}.")
    typer.echo(f"{case.title} (as of {as_of.isoformat()})")


def _cell(place: Place, sheet: str | None) -> str:
    """Return a cell, with its sheet where that is not the makers' own."""
    return str(place.cell) if place.sheet == sheet else f"{place.sheet}!{place.cell}"


def tell_ranking(assessment: Assessment, inputs: Inputs) -> None:
    """Print what was set aside, the verdict, a short table, who is ruled out, and how many warnings there are."""
    case = assessment.case
    tell_case(case, assessment.as_of)
    typer.echo(f"{verdict_sentence(assessment)}.")
    costed = costed_makers(assessment)
    for sentence in stage_sentences(assessment, costed, open_makers(assessment)):
        typer.echo(f"{sentence}.")
    for sentence in supporting(assessment):
        typer.echo(f"{sentence}.")
    typer.echo(ranking_table(assessment, most=SHORT))
    if stage_of(costed) == "order":
        from scorecard.cli.costed_table import cost_table

        typer.echo(f"\n{cost_table(assessment, costed, most=SHORT)}")
    tell_warnings(case, inputs)


def tell_warnings(case: Case, inputs: Inputs) -> None:
    """Print the warnings that are told by every run, how many there are, and how to see them."""
    warnings = [one for one in case.warnings if one.code not in {"read-as", UNSAVED}]
    tell([one for one in warnings if one.code == LOUD])
    if warnings:
        them = "it" if len(warnings) == 1 else "them"
        say(f"{counted(len(warnings), 'warning')}. To see {them}: {inputs.started.command('check')}")


def next_step(assessment: Assessment, inputs: Inputs) -> str:
    """Return what to do next, as the folder stands: an order that was placed goes before all else."""
    return next_of_latest(assessment.case, inputs) or _next_of_ranking(assessment, inputs)


def _next_of_level_leaders(assessment: Assessment, inputs: Inputs) -> str:
    """Return what to do where several share first place: ask for quotes, or for what the quotes lack."""
    quoted = assessment.case.costed.chosen if assessment.case.costed else {}
    names = assessment.case.table.makers
    if all(names[maker] in quoted for maker in assessment.ranking.leaders):
        return f"find out what is missing of their costs: {inputs.started.command('cost')}"
    return f"ask those in first place for a quote: {inputs.started.command('enquire')}"


def _next_of_ranking(assessment: Assessment, inputs: Inputs) -> str:
    """Return what to do next while nothing is ordered."""
    if not assessment.ranking.order:
        return "look at the limits in the criteria file, or write down more makers"
    deciding = [one for one in assessment.questions if one.could_change_leader]
    if deciding:
        cells = where_to_write(assessment, deciding[0].maker, deciding[0].criterion)
        return f"ask {question_phrase(assessment, deciding[0])}, and write the answer into {cells}"
    if len(assessment.ranking.order) == 1:
        return "write down more makers, so that there is somebody to compare with"
    if stage_of(costed_makers(assessment)) == "order":
        return f"look at every line of these costs: {inputs.started.command('cost')}"
    if told_apart_by_none(assessment):
        return _next_of_level_leaders(assessment, inputs)
    heaviest = max(assessment.case.criteria, key=lambda criterion: criterion.weight)
    other = f"reweigh {heaviest.key}={shortest(round(heaviest.weight / 2, 2))}"
    return f"try another weight, such as {inputs.started.command(other)}"
