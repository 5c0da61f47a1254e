"""A TOML text that cannot be read as it stands: all that is wrong with it at once, and the rest read all the same.

Enters: text. Leaves: tables, and the faults with their lines and keys. What an editor or a keyboard did is put right; a
statement that cannot be read even so is taken out, and the text read again without it, until all of it can be.
"""

import re
import tomllib

from scorecard.reading.toml_hints import hint, shown_line
from scorecard.reading.toml_repairs import repaired
from scorecard.reading.toml_scan import Fault, Statement, is_hopeless, statements

_AT_LINE = re.compile(r"at line (\d+)")
_TWICE = re.compile("twice|overwrite|uplicate|immutable")
_CHARACTERS_TRIED = 2_000_000
_MOST_FAULTS = 200
_UNREAD = "unread line "


class Rescue:
    """A text on its way to being readable: its lines, of which more and more are taken out.

    Parameters
    ----------
    text : with line ends of one character

    Attributes
    ----------
    values : the tables of what can be read
    faults, is_whole : as in Tables
    statements : of the text as it was put right
    """

    def __init__(self, text: str) -> None:
        straight, self.faults = repaired(text)
        self.is_whole = True
        self.lines = straight.split("\n")
        self.statements = statements(straight)
        for statement in self.statements:
            if is_hopeless(statement, straight[statement.start : statement.end]):
                self._take_out(statement, self._unreadable(statement))
        self.values = {key: value for key, value in self._parsed().items() if not key.startswith(_UNREAD)}

    def _parsed(self) -> dict[str, object]:
        """Return the tables of what can be read, and those that stand for headers that cannot."""
        tries = min(_MOST_FAULTS, 10 + _CHARACTERS_TRIED // (1 + sum(map(len, self.lines))))
        for _ in range(tries):
            try:
                return tomllib.loads("\n".join(self.lines))
            except (ValueError, RecursionError) as error:
                self._take_out(*self._blamed(error))
        self.is_whole = False
        self.faults.append(_too_many(self.faults[-1].line))
        return {}

    def _blamed(self, error: Exception) -> tuple[Statement, Fault]:
        """Return the statement that an error is about, with its fault."""
        found = _AT_LINE.search(str(error))
        filled = [number for number, line in enumerate(self.lines, 1) if line.strip()]
        line = int(found[1]) if found else filled[-1]
        statement = next((s for s in self.statements if s.line <= line <= s.last_line), _lone_line(line))
        return statement, self._twice(statement) if _TWICE.search(str(error)) else self._unreadable(statement)

    def _take_out(self, statement: Statement, fault: Fault) -> None:
        """Take a statement out; a header leaves one behind, so that its keys do not fall to the table above."""
        self.faults.append(fault)
        self.is_whole = self.is_whole and bool(statement.path) and not statement.is_header
        self.lines[statement.line - 1 : statement.last_line] = [""] * (statement.last_line - statement.line + 1)
        if statement.is_header:
            self.lines[statement.line - 1] = f'["{_UNREAD}{statement.line}"]'

    def _text(self, statement: Statement) -> str:
        return "\n".join(self.lines[statement.line - 1 : statement.last_line])

    def _unreadable(self, statement: Statement) -> Fault:
        """Return the fault of a statement that is no TOML."""
        text = self._text(statement)
        return Fault(
            code="not-toml",
            line=statement.line,
            path=statement.path,
            found=f"line {statement.line} cannot be read: {shown_line(text)}",
            wanted=hint(text, statement),
            is_lost=True,
        )

    def _twice(self, statement: Statement) -> Fault:
        """Return the fault of a key or a table that was there before."""
        what = "this table" if statement.is_header else "this key, or one within it,"
        return Fault(
            code="stands-twice",
            line=statement.line,
            path=statement.path,
            found=f"{what} stands twice, the second time in line {statement.line}: {shown_line(self._text(statement))}",
            wanted="Keep one of the two",
            is_lost=True,
        )


def _lone_line(line: int) -> Statement:
    """Return a line that belongs to no statement, such as a comment with a character that may not stand in it."""
    return Statement(
        start=0,
        end=0,
        line=line,
        last_line=line,
        is_header=False,
        path=None,
        is_balanced=True,
        depth=0,
        braces_over_lines=(),
    )


def _too_many(line: int) -> Fault:
    return Fault(
        code="too-many-faults",
        line=line,
        path=None,
        found="more lines cannot be read than are listed here",
        wanted="Put these right first, and check that this is a criteria file",
        is_lost=True,
    )
