"""``start`` and ``demo``: new folders, never in place of anything that is there."""

import re
from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path
from typing import Any

from scorecard.cli.invocation import Invocation, command, program
from scorecard.demo.replies import reply_rows
from scorecard.demo.scenario import criteria_text, maker_rows
from scorecard.errors import InputError
from scorecard.frozen import dataclass
from scorecard.reading.criteria_file import parse_criteria
from scorecard.reading.kinds import find_kind, kinds
from scorecard.reading.memory_file import MEMORY_FILE
from scorecard.words import listed
from scorecard.workbooks.entry import Rows, entry_workbook
from scorecard.workbooks.from_last_time import LastTime
from scorecard.writing import lay_out

QUOTED = r"""(?:"[^"\n]*{end}"|'[^'\n]*{end}')"""
STARTED = (
    rf"""(?:(?:{QUOTED.format(end="")}|[^\s"'\#]+)\ -m\ scorecard|{QUOTED.format(end="scorecard")}"""
    r"""|[^\s"'\#]*\bscorecard)"""
)
REMARKED = re.compile(
    rf"""{STARTED}
    \ (score|check|cost|quantity|dates|inspect|order\ MAKER|care\ MAKER|reweigh\ \w+=\d+)\b
    (?:\ --(?:folder|criteria|makers|rows)\ (?:"[^"\n]*"|'[^'\n]*'|[^\s"']+))*(?:\ --set-aside)?""",
    re.VERBOSE,
)  # a command in a remark, as it was typed for this folder or for the one before
FILES = ("criteria.toml", "makers.xlsx")
FIRST_KIND = "enamelware-and-ceramics"


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidOut:
    """A new folder: what is said of it in words, and in the machine-readable result."""

    words: str
    result: dict[str, Any]


def lay_out_start(folder: Path, kind: str | None) -> LaidOut:
    """Lay out a new sourcing folder of one kind of goods, and return what was done and what comes next."""
    path = find_kind(kind or FIRST_KIND)
    text = path.read_bytes()
    lay_out_folder(folder, text)
    others = listed(name for name in kinds() if name != path.stem)
    hint = "" if kind else f"\nThe kind of goods is {path.stem}; for another, say --kind: {others}."
    holds = "criteria.toml says what counts and how much, makers.xlsx is to be filled in"
    words = (
        f"{folder.resolve()} is ready: {holds}.{hint}\n"
        "Next: put your item and quantity into criteria.toml, two makers into makers.xlsx, then "
        f"{command('score', folder)}"
    )
    about = {"schema": "scorecard-start/1", "folder": str(folder), "kind": path.stem, "kinds": list(kinds())}
    return LaidOut(words=words, result={**about, "files": list(FILES)})


def lay_out_demo(folder: Path, day: date) -> LaidOut:
    """Lay out the demo folder, its dates set from a day, and return what it holds."""
    from scorecard.demo.dealings import dealing_rows
    from scorecard.demo.drawings import drawings
    from scorecard.demo.past_orders import past_orders

    drawn = {MEMORY_FILE: past_orders(day), **drawings()}
    rows = {"Makers": maker_rows(day), **reply_rows(day), **dealing_rows(day)}
    lay_out_folder(folder, criteria_text(day).encode(), rows, drawn)
    holds = "an invented example: 200 mugs, twelve makers, six quotes, two orders of last year, and the artwork"
    result = {"schema": "scorecard-demo/1", "folder": str(folder), "files": [*FILES, *drawn]}
    return LaidOut(words=f"{folder.resolve()} holds {holds}.", result=result)


def lay_out_folder(
    folder: Path,
    text: bytes,
    rows: Rows | None = None,
    more: Mapping[str, bytes] | None = None,
    last_time: LastTime | None = None,
) -> None:
    """Lay out a folder: the criteria file, its workbook with these rows, and more files by name."""
    reading = parse_criteria(text, "criteria.toml")
    if reading.problems or reading.brief is None:
        raise InputError(reading.problems, reading.warnings)
    typed = Invocation(program=program(), folder=folder).in_files()
    score = typed.command("score")
    workbook = entry_workbook(reading.criteria, reading.brief, rows, score=score, last_time=last_time)
    files = dict(zip(FILES, (with_commands(text, typed.command), workbook), strict=True))
    lay_out(folder, files | dict(more or {}))


def with_commands(text: bytes, command: Callable[[str], str]) -> bytes:
    """Return a criteria file in whose remarks the commands stand as this user types them.

    Examples
    --------
    >>> with_commands(b"#   scorecard reweigh years=30", lambda words: f"./scorecard {words} --folder mugs")
    b'#   ./scorecard reweigh years=30 --folder mugs'
    >>> with_commands(b"#   ./scorecard reweigh years=30 --folder mugs", lambda words: f"scorecard {words}")
    b'#   scorecard reweigh years=30'
    """
    lines = text.decode().splitlines(keepends=True)
    remarks = (REMARKED.sub(lambda found: command(found[1]), line) if line.startswith("#") else line for line in lines)
    return "".join(remarks).encode()
