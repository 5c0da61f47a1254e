"""A tolerant look at TOML text: which characters are code, and where each statement starts and ends.

Enters: text that need not be valid TOML. Leaves: statements with their lines and keys, so that a fault can be shown at
its key and the rest of the file still be read.
"""

import re
from bisect import bisect
from collections.abc import Callable, Iterable, Iterator

from scorecard.frozen import dataclass

Path = tuple[str, ...]
Extent = tuple[int, int]

STRING = "\0"
COMMENT = "\1"
BLANK = " \t" + COMMENT
DEEPEST = 40
CURLY = "“”„‟‘’‚‛"

TOKEN = re.compile(
    rf"""
      (?P<comment> \#[^\n]* )
    | (?P<block>   \"\"\"(?:\\.|[^\\])*?\"{{3,5}} | '''.*?'{{3,5}} )
    | (?P<string>  "(?:\\[^\n]|[^"\\\n])*"? | '[^'\n]*'? )
    | (?P<curly>   [{CURLY}] )
    | (?P<code>    [^\#"'{CURLY}]+ )
    """,
    re.VERBOSE | re.DOTALL,
)

_PART = r'"(?:\\[^\n]|[^"\\\n])*"|\'[^\'\n]*\'|[A-Za-z0-9_-]+'
_KEY = re.compile(rf"\s*(?:{_PART})\s*(?:\.\s*(?:{_PART})\s*)*")
_KEY_WITHOUT_EQUALS = re.compile(rf"\s*([A-Za-z0-9_-]+)(?:\s*:|\s+[\d{STRING}[{{])")
_BRACKET = re.compile(r"[][{}]")
_NEW_HEADER = re.compile(r"\s*\[{1,2}\s*[A-Za-z_][^],]*\]{1,2}[\s\1]*$")
_LONG_NUMBER = re.compile(r"[\d_]{1000}")
_NEW_PAIR = re.compile(r"\s*[A-Za-z0-9_.-]+\s*=")


@dataclass(frozen=True, slots=True, kw_only=True)
class Statement:
    """A table's header, or a key with its value, as it stands in the text.

    Parameters
    ----------
    start, end : positions in the text of its first character and after its last, whole lines without the last line end
    line, last_line : numbers of its lines, from 1
    is_header : whether it opens a table
    path : its whole key, table included; None where it cannot be told or nests too deep
    is_balanced : whether all its brackets close
    depth : how deep its brackets nest, or its own key, whichever is deeper
    braces_over_lines : positions of the line ends that stand between braces
    """

    start: int
    end: int
    line: int
    last_line: int
    is_header: bool
    path: Path | None
    is_balanced: bool
    depth: int
    braces_over_lines: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """Something in a TOML text that stops it from being read as it stands.

    Parameters
    ----------
    code, found, wanted : as in a Problem
    line : its number, from 1
    path : the key that it concerns; None where it cannot be told
    is_lost : whether what stands there could not be read at all, rather than put right
    """

    code: str
    line: int
    path: Path | None
    found: str
    wanted: str
    is_lost: bool = False


def is_hopeless(statement: Statement, text: str) -> bool:
    """Return whether a statement would mislead the parser about where the fault is, or make it give up."""
    too_much = statement.depth > DEEPEST or _LONG_NUMBER.search(text)
    return not statement.is_balanced or bool(too_much) or opens_a_block(text)


def opens_a_block(text: str) -> bool:
    """Return whether a text over several lines is opened here with three quotes, and never closed."""
    unclosed = (token.end() for token in TOKEN.finditer(text) if token.lastgroup == "string" and len(token[0]) == 2)
    return any(text[end - 1 : end] == text[end : end + 1] for end in unclosed)


def masked(text: str) -> str:
    """Return the text with every character of a string or a comment replaced, and all others in their places."""
    fill = {"comment": COMMENT, "block": STRING, "string": STRING}
    pieces = (
        fill[token.lastgroup] * len(token[0]) if token.lastgroup in fill else token[0] for token in TOKEN.finditer(text)
    )
    return "".join(pieces)


def statements(text: str) -> list[Statement]:
    """Return the statements of a text in their order."""
    mask = masked(text)
    line_ends = [end.start() for end in re.finditer("\n", text)]
    table: Path | None = ()
    found = []
    for start, end in _extents(mask):
        lines = bisect(line_ends, start - 1) + 1, bisect(line_ends, end - 1) + 1
        statement = _statement(text[start:end], mask[start:end], start, lines, table)
        table = statement.path if statement.is_header else table
        found.append(statement)
    return found


def _extents(mask: str) -> Iterator[Extent]:
    """Yield where each statement starts and ends.

    A brace that is never closed would swallow all keys up to the next table, so its lines are taken one by one.
    """
    for lines, is_closed in _runs(mask, _lines(mask), _begins_anew):
        if is_closed:
            yield lines[0][0], lines[-1][1]
        else:
            yield from ((run[0][0], run[-1][1]) for run, _ in _runs(mask, lines, _looks_new))


def _runs(
    mask: str, lines: Iterable[Extent], begins: Callable[[str, list[str]], bool]
) -> Iterator[tuple[list[Extent], bool]]:
    """Yield the lines of each statement, and whether its brackets close: it goes on while one is open."""
    run: list[Extent] = []
    opened: list[str] = []
    for start, end in lines:
        code = mask[start:end]
        if not opened or begins(code, opened):
            if run:
                yield run, not opened
            run, opened = [], []
        if run or code.strip(BLANK):
            run.append((start, end))
        _follow(opened, code)
    if run:
        yield run, not opened


def _lines(mask: str) -> Iterator[Extent]:
    """Yield where each line starts and ends, a string over several lines counting as part of one."""
    start = 0
    for line in mask.split("\n"):
        yield start, start + len(line)
        start += len(line) + 1


def _begins_anew(code: str, opened: list[str]) -> bool:
    """Return whether a line is a new statement although a bracket is open: a list holds no ``key = value``."""
    return bool(_NEW_HEADER.match(code)) or ("{" not in opened and bool(_NEW_PAIR.match(code)))


def _looks_new(code: str, _opened: list[str]) -> bool:
    """Return whether a line looks like a new statement, whatever is open."""
    return bool(_NEW_HEADER.match(code) or _NEW_PAIR.match(code))


def _follow(opened: list[str], code: str) -> tuple[int, bool]:
    """Open and close brackets as a piece of code does; return how deep they nested, and whether none closed wrongly."""
    deepest, sound = len(opened), True
    for bracket in _BRACKET.findall(code):
        if bracket in "[{":
            opened.append(bracket)
            deepest = max(deepest, len(opened))
        else:
            sound = bool(opened) and opened.pop() + bracket in ("[]", "{}") and sound
    return deepest, sound


def _statement(text: str, code: str, start: int, lines: tuple[int, int], table: Path | None) -> Statement:
    """Return the statement that this text, masked as this code, makes inside this table."""
    opened: list[str] = []
    depth, sound = _follow(opened, code)
    is_header = code.lstrip().startswith("[")
    path = _path(text[_key_extent(code, is_header)])
    depth = max(depth, len(path or ()))
    if path is not None and len(path) > DEEPEST:
        path = None
    if not is_header and path is not None:
        path = None if table is None else table + path
    return Statement(
        start=start,
        end=start + len(text),
        line=lines[0],
        last_line=lines[1],
        is_header=is_header,
        path=path,
        is_balanced=sound and not opened,
        depth=depth,
        braces_over_lines=tuple(start + at for at in _line_ends_in_braces(code)),
    )


def _key_extent(code: str, is_header: bool) -> slice:
    """Return where the key of a statement stands: between brackets, or before an equals sign or what took its place."""
    if is_header:
        found = re.match(r"\s*\[{1,2}([^][]*)\]", code)
    else:
        found = re.match(r"([^=]*)=", code) or _KEY_WITHOUT_EQUALS.match(code)
    return slice(*found.span(1)) if found else slice(0, 0)


def _path(key: str) -> Path | None:
    """Return the parts of a dotted key, or None where it is not one."""
    if not _KEY.fullmatch(key):
        return None
    return tuple(part[1:-1] if part[0] in "\"'" else part for part in re.findall(_PART, key))


def _line_ends_in_braces(code: str) -> Iterator[int]:
    """Yield the positions of the line ends that stand between braces."""
    braces = 0
    for mark in re.finditer(r"[{}\n]", code):
        if mark[0] == "\n" and braces > 0:
            yield mark.start()
        braces += {"{": 1, "}": -1, "\n": 0}[mark[0]]
