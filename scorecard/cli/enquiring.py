"""``enquire``: messages to makers as text files and on one page, and who was asked, has answered, is due a reminder."""

import json
import os
from pathlib import Path
from typing import Any

import typer

from scorecard.asks import ANSWERED_ON, ASKED_ON
from scorecard.assessment import assess
from scorecard.case import Case
from scorecard.cli.gate import say, show_json
from scorecard.cli.invocation import command, quoted
from scorecard.cli.naming import named_maker, names_at
from scorecard.cli.scoring import Inputs, refuse_nobody, tell_case, tell_kept
from scorecard.cli.tables import as_text, visible
from scorecard.errors import InputError, UsageError
from scorecard.frozen import dataclass
from scorecard.letters.asked import REMIND_AFTER, Asked
from scorecard.letters.messages import Message, Round, cell_of, file_of, files_of, result_of, round_of
from scorecard.letters.page import page
from scorecard.letters.wording import KINDS, Wording, file_name, read_wording, shipped
from scorecard.whole_files import write_whole
from scorecard.words import counted, day_words, listed
from scorecard.writing import time_stamp, write_outputs

SHORT = 15  # makers in a table on the screen, and names in a list
CAUTIONS = """\
Before you send: attach a small marked picture of your artwork. Never send the print file first.
Before you pay: stay in the channel whose protection you rely on; a bank transfer seldom comes back; confirm changed
bank details by a phone number that you already had."""
LETTERS_FOLDER = Path("reports") / "enquiries"


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """What the user asks of a round: a maker to put first, how long to wait before a reminder, contacts on the page."""

    maker: str | None = None
    remind_after: int = REMIND_AFTER
    with_contacts: bool = False


def enquire_folder(inputs: Inputs, wish: Wish, *, as_json: bool) -> None:
    """Write the messages of a folder, and print whom to write to, who is due a reminder, and where the page is."""
    case, wording = read_all(inputs)
    named = None if wish.maker is None else named_maker(wish.maker, case.table.makers)
    made = round_of(assess(case, as_of=inputs.day()), wording, named=named, remind_after=wish.remind_after)
    result = result_of(made, wording)
    folder = inputs.folder / LETTERS_FOLDER
    enquire = inputs.started.in_files().command("enquire")
    written = page(made, written=time_stamp(), enquire=enquire, with_contacts=wish.with_contacts)
    tell_kept(write_outputs(folder, outputs_of(made, result, written)))
    if as_json:
        show_json(result)
        return
    for warning in wording.warnings:
        say(str(warning))
    tell_round(made, inputs)
    typer.echo(f"Page to copy from: {(folder / 'enquiries.html').resolve()}")
    typer.echo(f"Next: {next_step(made, inputs)}")


def lay_out_templates(folder: Path) -> None:
    """Write the templates that ship into a folder, for editing; those that are there stay as they are."""
    if not folder.is_dir():
        raise UsageError(f"{folder}: there is no folder of this name. Name your sourcing folder.")
    written, there = [], []
    for kind in KINDS:
        path = folder / file_name(kind)
        if os.path.lexists(path):
            there.append(path.name)
            continue
        write_whole(path, shipped(kind).encode())
        written.append(path.name)
    if written:
        typer.echo(f"Written into {folder.resolve()}: {listed(written)}.")
    if there:
        typer.echo(f"Left as {'it is' if len(there) == 1 else 'they are'}: {listed(there)}.")
    typer.echo("Change the words as you like, and keep names in braces such as {maker}.")
    typer.echo(f"Next: {command('enquire', folder)}")


def read_all(inputs: Inputs) -> tuple[Case, Wording]:
    """Return a folder's case and wording.

    Raises
    ------
    InputError
        With every problem of the files and of the templates.
    """
    wording = read_wording(inputs.folder)
    try:
        case = inputs.read()
        refuse_nobody(case)
    except InputError as error:
        warnings = (*error.warnings, *wording.warnings)
        raise InputError((*error.problems, *wording.problems), warnings, error.set_aside) from None
    if wording.problems:
        raise InputError(wording.problems, (*case.warnings, *wording.warnings), case.set_aside)
    return case, wording


def outputs_of(made: Round, result: dict[str, Any], written: str) -> dict[str, bytes]:
    """Return the text files, the page and the result as they are written, by file name."""
    lines = json.dumps(result, ensure_ascii=False, allow_nan=False, indent=1)
    return {
        **{name: text.encode() for name, text in files_of(made).items()},
        "enquiries.html": written.encode(),
        "enquiries.json": f"{lines}\n".encode(),
    }


def tell_round(made: Round, inputs: Inputs) -> None:
    """Print whom to write to, who is due a reminder, what to look up, who gets no message, and the cautions."""
    tell_case(made.calculation.case, made.calculation.as_of)
    _tell_messages(made)
    if made.named is None:
        _tell_asked(made)
        _tell_others(made, inputs)
    typer.echo(CAUTIONS)


def _tell_messages(made: Round) -> None:
    shown = made.messages[: SHORT if made.named is None else 1]
    if shown:
        asked = {one.maker: one for one in made.asked}
        rows = [("To", "Questions", "Could change who leads", "Asked", "Send")]
        rows.extend(_message_row(made, one, asked.get(one.maker)) for one in shown)
        typer.echo(as_text(rows, right=frozenset({1, 2})))
    more = len(made.messages) - len(shown)
    if more:
        typer.echo(f"… and {more} more on the page{'' if made.named is None else ', as before'}")


def _message_row(made: Round, message: Message, asked: Asked | None) -> tuple[str, str, str, str, str]:
    return (
        visible(made.calculation.case.table.makers[message.maker]),
        str(message.number or ("none" if message.has_quoted else "the quote")),
        str(message.could_change_leader or ""),
        "not yet" if asked is None else _answer_words(asked),
        _send_words(made, message),
    )


def _send_words(made: Round, message: Message) -> str:
    if message.due is not None:
        return file_of(made.calculation, message.maker, message.due)
    return "nothing: it has quoted" if message.has_quoted else "wait"


def _answer_words(asked: Asked) -> str:
    days = counted(asked.working_days, "working day")
    answer = "no answer for" if asked.answered_on is None else "answered in"
    return f"{day_words(asked.asked_on)}, {answer} {days}"


def _tell_asked(made: Round) -> None:
    answered = sum(one.answered_on is not None for one in made.asked)
    due = [one for one in made.asked if one.is_due]
    if made.asked:
        typer.echo(f"Asked {counted(len(made.asked), 'maker')}; answered: {answered}; due a reminder: {len(due)}.")
    for one in due[:SHORT]:
        name = visible(made.calculation.case.table.makers[one.maker])
        days = counted(one.working_days, "working day")
        typer.echo(f"  Due a reminder: {name}, asked on {day_words(one.asked_on)}, {days} ago")
    if len(due) > SHORT:
        typer.echo(f"  … and {len(due) - SHORT} more on the page")


def _tell_others(made: Round, inputs: Inputs) -> None:
    makers = made.calculation.case.table.makers
    for text in (one.text for one in made.look_ups[:SHORT]):
        typer.echo(f"Look up yourself: {text}.")
    if len(made.look_ups) > SHORT:
        typer.echo(f"… and {len(made.look_ups) - SHORT} more to look up, in enquiries.json")
    if made.left_out:
        typer.echo(f"Left out: {counted(made.left_out, 'more maker')} of lower rank.")
    if made.ruled_out:
        typer.echo(f"No message, since ruled out: {names_at(makers, made.ruled_out)}.")
    if made.ruled_out or made.left_out:
        typer.echo(f"To write to one of them too: {inputs.started.command('enquire --maker NAME')}")


def next_step(made: Round, inputs: Inputs) -> str:
    """Return what to do next, as the folder stands; of the named maker alone where one was named."""
    messages = made.messages[: None if made.named is None else 1]
    asked = {one.maker for one in made.asked}
    open_ones = [one for one in messages if one.due in ("short", "full")]
    deciding = [one for one in open_ones if one.could_change_leader]
    fresh = [one for one in open_ones if one.maker not in asked]
    late = [one for one in messages if one.due == "reminder"]
    waiting = [one.maker for one in messages if one.due is None and not one.has_quoted]
    now = [*deciding, *fresh, *late, *([] if waiting else open_ones)]
    if now:
        return _sending(made, now[0], is_new=now[0].maker not in asked)
    if waiting:
        day = _where(made, ANSWERED_ON, waiting[0])
        return f"when {_name(made, waiting[0])} answers, type the day {day}, then {inputs.started.command('score')}"
    if messages:
        return f"see what a good piece costs at your door: {inputs.started.command('cost')}"
    return f"look at the limits in the criteria file, then {inputs.started.command('score')}"


def _sending(made: Round, message: Message, *, is_new: bool) -> str:
    name, file = _name(made, message.maker), file_of(made.calculation, message.maker, message.due or "short")
    if is_new:
        return f"send {name} its message, {file}, then type the day {_where(made, ASKED_ON, message.maker)}"
    if message.due == "reminder":
        day = _where(made, ANSWERED_ON, message.maker)
        return f"send {name} the reminder, {file}; when it answers, type the day {day}"
    return f"send {name} {'its questions' if message.questions else 'the full message, for its quote'}: {file}"


def _name(made: Round, maker: int) -> str:
    return visible(made.calculation.case.table.makers[maker])


def _where(made: Round, heading: str, maker: int) -> str:
    """Return where a day of one maker is typed: the cell, or the column that is yet to be made."""
    table = made.calculation.case.table
    cell = cell_of(made.calculation, heading, maker)
    into = f"a new column {heading}" if cell is None else f"{cell} ({heading})"
    return f"into {into} of {quoted(table.file)}"
