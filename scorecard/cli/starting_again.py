"""``start --from``: a second brief, which starts from what the folder before knows: facts, and no prices."""

from dataclasses import replace
from pathlib import Path
from typing import Any

from scorecard.carrying import Carried, FromLastTime, carried
from scorecard.case import Case
from scorecard.cli.invocation import command
from scorecard.cli.laying_out import FILES, LaidOut, lay_out_folder
from scorecard.cli.recording import with_quotes
from scorecard.cli.scoring import Inputs
from scorecard.cli.tables import visible
from scorecard.criteria_edit import TakenOut, for_next_order
from scorecard.errors import UsageError
from scorecard.letters.wording import KINDS, file_name
from scorecard.memory import Record, is_news
from scorecard.memory_json import memory_bytes
from scorecard.reading.folder import CRITERIA_FILE
from scorecard.reading.kinds import kinds
from scorecard.reading.memory_file import MEMORY_FILE
from scorecard.words import counted, listed
from scorecard.workbooks.from_last_time import NAME, LastTime


def lay_out_again(folder: Path, inputs: Inputs, kind: str | None = None) -> LaidOut:
    """Lay out a second brief from the folder before, and return what was carried and what comes next.

    Parameters
    ----------
    folder : the new one
    inputs : the folder before, and the day that stands for today
    kind : of goods; must not be named, since the folder before has its own

    Raises
    ------
    UsageError
        If a kind is named too, or the new folder holds anything.
    InputError
        If the folder before has problems: all of them; nothing is laid out then.
    """
    if kind is not None:
        raise UsageError("--kind and --from: the folder before has its own criteria file. Name one of the two.")
    case, day = inputs.read(), inputs.day()
    text, taken = for_next_order((inputs.folder / CRITERIA_FILE).read_bytes().decode("utf-8"), day)
    found = carried(case, day)
    files = artwork_named(case)
    found = replace(found, last_time=(*found.last_time, *map(_line, taken), *map(_artwork, files)))
    records = remembered_records(case, inputs)
    more = _templates(inputs.folder) | ({MEMORY_FILE: memory_bytes(records)} if records else {})
    rows = {"Makers": [dict(row) for row in found.makers], "Checks": [dict(row) for row in found.checks]}
    lay_out_folder(folder, text.encode(), rows, more, LastTime(lines=found.last_time, as_of=day))
    return LaidOut(
        words=_words(folder, found, records, files), result=_result(folder, inputs, found, records, list(more))
    )


def _line(one: TakenOut) -> FromLastTime:
    where = f"{one.key} of {CRITERIA_FILE}"
    return FromLastTime(maker="", what=one.what, figure=one.figure, as_of=one.on, state="to confirm", where=where)


def artwork_named(case: Case) -> list[str]:
    """Return the files of artwork that the order names; they stay where they are."""
    return list(dict.fromkeys(one.file for one in case.order.designs if one.file)) if case.order else []


def _artwork(file: str) -> FromLastTime:
    where = "copy it from the folder before; file of [[order.designs]] names it"
    return FromLastTime(
        maker="", what="artwork, not brought along", figure=file, as_of=None, state="known", where=where
    )


def remembered_records(case: Case, inputs: Inputs) -> list[Record]:
    """Return what the new folder remembers: all that was kept, and the orders of the sheet as they stand."""
    fresh = [one for one in with_quotes(case) if one.ordered is not None and is_news(one, case.memory)]
    return [*case.memory, *(replace(one, recorded_on=inputs.day()) for one in fresh)]


def _templates(folder: Path) -> dict[str, bytes]:
    """Return the user's own wording of messages."""
    paths = [folder / file_name(kind) for kind in KINDS]
    return {path.name: path.read_bytes() for path in paths if path.is_file()}


def _words(folder: Path, found: Carried, records: list[Record], files: list[str]) -> str:
    to_confirm = sum(line.state != "known" for line in found.last_time)
    own = f" {counted(len({one.key for one in records}), 'own order')} remembered." if records else ""
    old = (
        f"\n{counted(to_confirm, 'figure')} of last time to ask about, on the sheet “{NAME}”: none of them counts "
        "until it is typed in anew."
        if to_confirm
        else ""
    )
    return (
        f"{folder.resolve()} is ready: {counted(len(found.makers), 'maker')} with what is known of them, and no prices."
        f"{own}{_signs(found)}{old}{_artwork_words(files)}\n"
        f"Next: put the new quantity and the day into criteria.toml, then ask again: {command('enquire', folder)}"
    )


def _signs(found: Carried) -> str:
    comes = "comes" if len(found.checks) == 1 else "come"
    return f" {counted(len(found.checks), 'warning sign')} {comes} along on the sheet Checks." if found.checks else ""


def _artwork_words(files: list[str]) -> str:
    if not files:
        return ""
    return f"\nNot brought along: {listed(map(visible, files))}. Copy the artwork that you use again."


def _result(folder: Path, inputs: Inputs, found: Carried, records: list[Record], more: list[str]) -> dict[str, Any]:
    return {
        "schema": "scorecard-start/1",
        "folder": str(folder),
        "kind": None,
        "kinds": list(kinds()),
        "files": [*FILES, *more],
        "from": str(inputs.folder),
        "makers": len(found.makers),
        "own_orders": len({one.key for one in records}),
        "last_time": [
            {
                "maker": line.maker or None,
                "what": line.what,
                "figure": line.figure,
                "as_of": None if line.as_of is None else line.as_of.isoformat(),
                "state": line.state,
                "where": line.where or None,
            }
            for line in found.last_time
        ],
    }
