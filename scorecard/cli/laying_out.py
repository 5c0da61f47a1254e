"""``start`` and ``demo``: new folders, never in place of anything that is there."""

from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path

from scorecard.cli.invocation import command
from scorecard.demo.scenario import criteria_text, maker_rows
from scorecard.errors import InputError
from scorecard.reading.criteria_file import parse_criteria
from scorecard.reading.kinds import find_kind, kinds
from scorecard.words import listed
from scorecard.workbooks.entry import entry_workbook
from scorecard.workbooks.safe import Value
from scorecard.writing import lay_out

FIRST_KIND = "enamelware-and-ceramics"


def lay_out_start(folder: Path, kind: str | None) -> str:
    """Lay out a new sourcing folder of one kind of goods, and return what was done and what comes next."""
    path = find_kind(kind or FIRST_KIND)
    text = path.read_bytes()
    _lay_out(folder, text)
    others = listed(name for name in kinds() if name != path.stem)
    hint = "" if kind else f"\nThe kind of goods is {path.stem}; for another, say --kind: {others}."
    holds = "criteria.toml says what counts and how much, makers.xlsx is to be filled in"
    return (
        f"{folder.resolve()} is ready: {holds}.{hint}\n"
        "Next: put your item and quantity into criteria.toml, two makers into makers.xlsx, then "
        f"{command('score', folder)}"
    )


def lay_out_demo(folder: Path, day: date) -> str:
    """Lay out the demo folder, its dates set from a day, and return what it holds."""
    from scorecard.demo.drawings import drawings

    _lay_out(folder, criteria_text(day).encode(), maker_rows(day), drawings())
    return f"{folder.resolve()} holds an invented example: 200 mugs, four lighthouses, twelve makers, and the artwork."


def _lay_out(
    folder: Path, text: bytes, rows: Sequence[Mapping[str, Value]] = (), more: Mapping[str, bytes] | None = None
) -> None:
    reading = parse_criteria(text, "criteria.toml")
    if reading.problems or reading.brief is None:
        raise InputError(reading.problems, reading.warnings)
    workbook = entry_workbook(reading.criteria, reading.brief, {"Makers": rows})
    lay_out(folder, {"criteria.toml": text, "makers.xlsx": workbook} | dict(more or {}))
