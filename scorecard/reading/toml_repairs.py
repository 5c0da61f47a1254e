"""What a newcomer's editor or keyboard does to a TOML file, found everywhere at once and put right in memory.

Enters: text. Leaves: text that says what was meant, on the same lines, and a fault for every place put right.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import chain, islice

from scorecard.frozen import dataclass
from scorecard.reading.toml_hints import shown
from scorecard.reading.toml_scan import COMMENT, TOKEN, Fault, Statement, masked, statements

_CLOSERS = (
    dict.fromkeys("“”„‟", '“”„‟"') | dict.fromkeys("‘’‚‛", "‘’‚‛'") | {'"': "“”„‟", "'": "‘’‚‛"}
)  # a straight quote that a straight one closes is a proper string
_COMMA = re.compile(r"=\s*([+-]?\d+(?:\.\d{3})*(?:,\d+)+)(?=\s*(?:,|\}|$))")
_PERCENT = re.compile(r"(?<![\w.,])([+-]?\d{1,15}(?:[.,]\d{1,15})?)\s*%")
_ODD_SPACE = re.compile("[\u00a0\u1680\u2000-\u200b\u202f\u205f\u2060\u3000\ufeff]")
_LAST_COMMA = re.compile(r",(?=\s*\})")
_WORDY_HEADER = re.compile(r"\s*\[([^][\0\n]+)\]\s*$")
_MOST_IN_ONE = 100  # beyond so many in one statement, it is no criteria file
_BARE = re.compile(r"[A-Za-z0-9_-]+")
_THOUSANDS = re.compile(r"[+-]?\d{1,3}(?:,\d{3})+")


@dataclass(frozen=True, slots=True)
class _Edit:
    """A piece of text to put in place of another."""

    start: int
    end: int
    text: str


@dataclass(frozen=True, slots=True)
class _Site:
    """One statement with its text, and the same with strings and comments masked."""

    statement: Statement
    text: str
    mask: str

    @property
    def code(self) -> str:
        return self.mask.replace(COMMENT, " ")

    def edit(self, start: int, end: int, text: str) -> _Edit:
        """Return a change at positions within the statement."""
        return _Edit(self.statement.start + start, self.statement.start + end, text)

    def fault(self, code: str, at: int, found: str, wanted: str) -> Fault:
        """Return a fault at a position within the statement, its line named first."""
        line = self.statement.line + self.text.count("\n", 0, at)
        return Fault(code=code, line=line, path=self.statement.path, found=f"line {line} {found}", wanted=wanted)


_Repairs = Iterator[tuple[list[_Edit], Fault]]


def repaired(text: str) -> tuple[str, list[Fault]]:
    """Return the text put right, line for line, and what was put right."""
    straight, curly_lines = _straightened(text)
    headed, of_headers = _put_right(straight, (_wordy_headers,))  # first, since a header is part of the keys below it
    whole, of_values = _put_right(headed, (_percents, _commas, _odd_spaces, _spread_braces))
    curly = [fault for statement in statements(headed) for fault in _curly_faults(statement, curly_lines)]
    return whole, [*curly, *of_headers, *of_values]


def _put_right(text: str, finders: tuple[Callable[[_Site], _Repairs], ...]) -> tuple[str, list[Fault]]:
    """Return the text with what these find put right, and what it was."""
    mask = masked(text)
    edits: list[_Edit] = []
    faults: list[Fault] = []
    for statement in statements(text):
        extent = slice(statement.start, statement.end)
        site = _Site(statement, text[extent], mask[extent])
        for changes, fault in chain.from_iterable(find(site) for find in finders):
            edits.extend(changes)
            faults.append(fault)
    return _edited(text, edits), faults


def _edited(text: str, edits: list[_Edit]) -> str:
    """Return the text with all edits made; none overlaps another."""
    pieces, at = [], 0
    for edit in sorted(edits, key=lambda edit: edit.start):
        pieces += [text[at : edit.start], edit.text]
        at = edit.end
    return "".join([*pieces, text[at:]])


def _straightened(text: str) -> tuple[str, set[int]]:
    """Return the text with straight quotes wherever curly ones open or close a text, and the lines where they did."""
    pieces: list[str] = []
    lines: set[int] = set()
    at, line = 0, 1
    while token := TOKEN.match(text, at):
        piece, end = token[0], token.end()
        closing = _closing(text, token)
        if closing:
            inner = text[at + 1 : closing].replace("\\", "\\\\").replace('"', '\\"')
            piece, end = f'"{inner}"', closing + 1
            lines.add(line)
        pieces.append(piece)
        line += piece.count("\n")
        at = end
    return "".join(pieces), lines


def _closing(text: str, token: re.Match[str]) -> int | None:
    """Return where the text ends that a curly quote opens or closes, or None where none does."""
    opening = token[0][0]
    is_closed = len(token[0]) > 1 and token[0][-1] == opening
    if token.lastgroup != "curly" and (token.lastgroup != "string" or is_closed):
        return None
    line_end = text.find("\n", token.start())
    end = re.compile(rf"[{_CLOSERS[opening]}](?=[ \t\r]*(?:[=,\]}}#.\n]|$))")
    found = end.search(text, token.start() + 1, len(text) if line_end < 0 else line_end)
    return found.start() if found else None


def _curly_faults(statement: Statement, curly_lines: set[int]) -> Iterator[Fault]:
    """Yield a fault for every line of a statement that has curly quotes round a text."""
    for line in sorted(curly_lines.intersection(range(statement.line, statement.last_line + 1))):
        yield Fault(
            code="curly-quotes",
            line=line,
            path=statement.path,
            found=f"line {line} has curly quotes round a text",
            wanted='Put straight quotes (") at both ends; a plain text editor types them',
        )


def _percents(site: _Site) -> _Repairs:
    """Find numbers with a percent sign."""
    for found in islice(_PERCENT.finditer(site.code), _MOST_IN_ONE):
        number = found[1].replace(",", ".")
        part = format(float(number) / 100, ".6g")
        edit = site.edit(*found.span(), number)
        wanted = f"Write the number alone: {number}, or {part} where a part of 1 is wanted"
        yield [edit], site.fault("percent-sign", found.start(), f"has a percent sign: {shown(found[0])}", wanted)


def _commas(site: _Site) -> _Repairs:
    """Find numbers with a comma, where no list is written."""
    for found in islice(_COMMA.finditer(site.code), _MOST_IN_ONE):
        typed = found[1]
        is_thousands = bool(_THOUSANDS.fullmatch(typed))
        number = typed.replace(",", "") if is_thousands else _with_point(typed)
        wanted = f"Write {number}, with no comma" if is_thousands else f"Write {number}, with a point"
        edit = site.edit(*found.span(1), number)
        yield [edit], site.fault("comma-in-number", found.start(1), f"has a number with a comma: {typed}", wanted)


def _with_point(typed: str) -> str:
    """Return a number with a decimal comma as TOML writes it; only the last comma can be the decimal one."""
    whole, _, decimals = typed.replace(".", "").rpartition(",")
    return f"{whole.replace(',', '')}.{decimals}"


def _odd_spaces(site: _Site) -> _Repairs:
    """Find characters that look like a space, or like nothing, and are not: pages and word processors make them."""
    found = [space.start() for space in _ODD_SPACE.finditer(site.code)]
    if found:
        edits = [site.edit(at, at + 1, " ") for at in found]
        wanted = "Delete the spaces in this line and type them again"
        yield edits, site.fault("odd-space", found[0], "has a space of another kind, as web pages have", wanted)


def _spread_braces(site: _Site) -> _Repairs:
    """Find braces that close on a later line, which TOML does not allow; what was on those lines moves up."""
    offset = site.statement.start
    line_ends = [at - offset for at in site.statement.braces_over_lines]
    if line_ends and site.statement.is_balanced:
        joined = [site.edit(at, at + 1, " ") for at in line_ends]
        comments = [site.edit(*comment.span(), "") for comment in re.finditer(COMMENT + "+", site.mask)]
        commas = [site.edit(comma.start(), comma.start() + 1, " ") for comma in _LAST_COMMA.finditer(site.code)]
        kept = site.edit(len(site.text), len(site.text), "\n" * len(joined))
        wanted = "Write everything from { to } on one line, with no comma before the }"
        yield (
            [*joined, *comments, *commas, kept],
            site.fault("braces-over-lines", line_ends[0], "opens braces that close on a later line", wanted),
        )


def _wordy_headers(site: _Site) -> _Repairs:
    """Find headers with spaces or accents in a name, which TOML wants in quotes."""
    found = _WORDY_HEADER.match(site.code) if site.statement.is_header else None
    parts = tuple(part.strip() for part in found[1].split(".")) if found else ()
    if found and all(parts) and not all(_BARE.fullmatch(part) for part in parts) and "\\" not in found[1]:
        plain = ".".join(re.sub(r"\W+", "_", part) for part in parts)
        quoted = ".".join(f'"{part}"' for part in parts)
        fault = site.fault("wordy-header", 0, f"has a name with spaces: [{shown(found[1])}]", f"Write [{shown(plain)}]")
        yield [site.edit(*found.span(1), quoted)], replace(fault, path=parts)
