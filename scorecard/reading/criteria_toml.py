"""The criteria file's text as tables: all that is wrong with its TOML at once, and the rest read all the same.

Enters: text. Leaves: tables, and the faults with their lines and keys.
"""

import re
import tomllib
from collections.abc import Iterable, Mapping

from scorecard.frozen import dataclass
from scorecard.reading.toml_scan import Fault, Path, Statement, is_hopeless, statements

_OFF = re.compile(r"[ \t]*#[ \t]*(\[{1,2}[A-Za-z_][\w.]*\]{1,2})[ \t]*(?:#.*)?")


@dataclass(frozen=True, slots=True, kw_only=True)
class Tables:
    """What a TOML text says.

    Parameters
    ----------
    values : as ``tomllib`` gives them
    faults : what is wrong with the text
    lines : the number of the line where each key stands
    is_whole : whether of every line that was lost it is known which key it is, and no table lost its header
    text : what was read
    """

    values: Mapping[str, object]
    faults: tuple[Fault, ...]
    lines: Mapping[Path, int]
    is_whole: bool
    text: str

    @property
    def off(self) -> dict[int, str]:
        """Headers of tables that stand behind a #, by the numbers of their lines."""
        found = ((number, _OFF.fullmatch(line)) for number, line in enumerate(self.text.split("\n"), 1))
        return {number: header[1] for number, header in found if header}


def read_tables(text: str) -> Tables:
    """Return what a TOML text says, as far as it can be read, and everything that is wrong with it."""
    text = text.replace("\r\n", "\n")
    found = statements(text)
    values = None if any(is_hopeless(one, text[one.start : one.end]) for one in found) else _as_it_stands(text)
    if values is not None:
        return Tables(values=values, faults=(), lines=_lines(found), is_whole=True, text=text)
    from scorecard.reading.toml_rescue import Rescue  # most files need none

    rescue = Rescue(text)
    return Tables(
        values=rescue.values,
        faults=tuple(rescue.faults),
        lines=_lines(rescue.statements),
        is_whole=rescue.is_whole,
        text=text,
    )


def _as_it_stands(text: str) -> dict[str, object] | None:
    """Return what a text says that has no fault, or None."""
    try:
        return tomllib.loads(text)
    except (ValueError, RecursionError):
        return None


def _lines(found: Iterable[Statement]) -> dict[Path, int]:
    """Return the line where each key stands, the first where it stands twice."""
    lines: dict[Path, int] = {}
    for statement in found:
        if statement.path:
            lines.setdefault(statement.path, statement.line)
    return lines
