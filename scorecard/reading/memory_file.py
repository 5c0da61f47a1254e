"""What a folder remembers of own orders: the file memory.json, which the tool keeps.

Enters: a folder. Leaves: its records, oldest first, or the problem that keeps them from being read.
"""

import json
from pathlib import Path
from typing import TYPE_CHECKING

from scorecard.errors import Place, Problem
from scorecard.frozen import dataclass
from scorecard.whole_files import read_whole

if TYPE_CHECKING:
    from scorecard.memory import Record

MEMORY_FILE = "memory.json"
MOST_BYTES = 20_000_000
WANTED = "Put back the file as the tool wrote it, or move it away; then only the sheet Orders counts"


@dataclass(frozen=True, slots=True, kw_only=True)
class MemoryReading:
    """What was read: nothing where there is no such file."""

    records: "tuple[Record, ...]" = ()
    problems: tuple[Problem, ...] = ()


def read_memory(folder: Path) -> MemoryReading:
    """Return what a folder remembers; it need not remember anything."""
    path = folder / MEMORY_FILE
    if not path.exists():
        return MemoryReading()
    from scorecard.memory_json import SCHEMA, record_of

    try:
        content = read_whole(path)
        found = json.loads(content) if len(content) <= MOST_BYTES else None
    except (OSError, ValueError, RecursionError):
        found = None
    if not isinstance(found, dict) or found.get("schema") != SCHEMA or not isinstance(found.get("records"), list):
        return MemoryReading(problems=(_problem(None, "this is not what the tool keeps of your orders"),))
    read = [record_of(one) for one in found["records"]]
    problems = tuple(
        _problem(f"records[{at}]{f'.{one}' if one else ''}", "this part of a kept order cannot be")
        for at, one in enumerate(read)
        if isinstance(one, str)
    )
    records = tuple(one for one in read if not isinstance(one, str))
    return MemoryReading(problems=problems) if problems else MemoryReading(records=records)


def _problem(key: str | None, found: str) -> Problem:
    return Problem(code="memory", place=Place(file=MEMORY_FILE, key=key), found=found, wanted=WANTED)
