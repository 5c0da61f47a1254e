"""Small changes to files, at random but repeatable: of bytes, of XML within a workbook, of TOML's lines, of cells."""

import re
import zipfile
from collections.abc import Callable
from io import BytesIO
from random import Random

from hostile.typed import HABITS, NAMES

Change = Callable[[bytes, Random], bytes]

CELLS = [typed for _, typed, _ in HABITS if len(typed) < 200] + [name for name in NAMES if len(name) < 200]
NUMBERS = [
    "0",
    "-1",
    "1e308",
    "1e999",
    "nan",
    "inf",
    "-0",
    "1.5",
    "9" * 30,
    "4294967296",
    "1048577",
    "20001",
    "true",
    "",
]
DELIMITERS = [
    "\0",
    "\n",
    "\r",
    "\t",
    '"',
    "'",
    ",",
    ";",
    "|",
    "=",
    "[",
    "]",
    "{",
    "}",
    "#",
    "\ufeff",
    "\u2028",
    "<",
    ">",
    "&",
]
TOML_VALUES = [
    "nan", "-inf", "1979-05-27", "07:32:00", "1979-05-27T07:32:00Z", "true", "[]", "{}",
    "[[]]", '""', "''", '"""x', "0x10",
    "1_000", "+1", "1e400", "-0.0", "[1, 2]", '["a", "a"]', "{ at_least = 1 }", '"1/7"',
    "[[0, 0], [0, 100]]", "[[0, 0], [1, 101]]",
]  # fmt: skip
ENCODINGS = ["utf-8-sig", "utf-16", "utf-16-le", "utf-32", "cp1252", "latin-1", "utf-7", "cp037"]
ATTRIBUTE = re.compile(rb'[\w:]+="([^"]*)"')
TAG = re.compile(rb"<[^<>]*>")
TEXT = re.compile(rb">([^<>]+)<")
VALUE = re.compile(r"=\s*([^\n]+)")
ITEM = re.compile(r'"[^"\n]*"|[\d.]+')
CSV_CELL = re.compile(r"[^,;\t\r\n]+")


def mutated(content: bytes, name: str, draw: Random) -> bytes:
    """Return a file with a few changes of the kind that suits it."""
    kinds: dict[str, list[Change]] = {
        ".xlsx": [_parts, _parts, _parts, _parts, _bytes],
        ".toml": [_toml, _toml, _toml, _bytes],
    }
    changes = kinds.get(name[name.rfind(".") :], [_csv, _csv, _csv, _bytes])
    if name.endswith(".xlsx") and not zipfile.is_zipfile(BytesIO(content)):
        changes = [_bytes]
    for _ in range(draw.choice((1, 1, 1, 2, 3, 6))):
        content = draw.choice(changes)(content, draw)
    return content


def _stretch(length: int, draw: Random) -> slice:
    """Return a stretch of something: most often a short one."""
    start = draw.randrange(length + 1)
    return slice(start, start + draw.choice((0, 1, 1, 2, 4, 16, 200, length)))


def _bytes(content: bytes, draw: Random) -> bytes:
    """Flip a bit, cut, double, move, or put something in."""
    where = _stretch(len(content), draw)
    old = content[where]
    if not content:
        return draw.randbytes(3)
    at = draw.randrange(len(content))
    flipped = bytes([content[at] ^ 1 << draw.randrange(8)])
    return draw.choice((
        content[:at] + flipped + content[at + 1 :],
        content[: where.start] + content[where.stop :],
        content[: where.start] + old + content[where.start :],
        content[:at],
        content[: where.start] + draw.choice(DELIMITERS + CELLS).encode("utf-8", "replace") + content[where.start :],
        content[: where.start] + draw.randbytes(len(old)) + content[where.stop :],
        content[: where.start] + bytes(len(old)) + content[where.stop :],
    ))  # fmt: skip


def _put(content: bytes, found: "re.Match[bytes]", group: int, value: bytes) -> bytes:
    start, end = found.span(group)
    return content[:start] + value + content[end:]


def _escaped(text: str) -> bytes:
    """Return text as it stands in XML, which cannot hold some of it."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace('"', "&quot;").encode("utf-8", "replace")


def _xml(content: bytes, draw: Random) -> bytes:
    """Change an attribute, a text, or a tag."""
    kind = draw.randrange(6)
    found = list((ATTRIBUTE, TEXT, TAG, TAG, TEXT, ATTRIBUTE)[kind].finditer(content))
    if not found:
        return _bytes(content, draw)
    one, other = draw.choice(found), draw.choice(found)
    if kind < 2:
        return _put(content, one, 1, _escaped(draw.choice(NUMBERS + CELLS)))
    if kind == 2:
        return _put(content, one, 0, draw.choice((b"", one[0] * 2, one[0] + b"<!-- -->", b"<x>" + one[0])))
    if kind == 3:
        return _put(content, one, 0, other[0])
    return _put(content, one, 1, other[1])


def _parts(content: bytes, draw: Random) -> bytes:
    """Change one part of a workbook: most often a sheet; or take a part out, or name it otherwise."""
    try:
        with zipfile.ZipFile(BytesIO(content)) as archive:
            parts = {name: archive.read(name) for name in archive.namelist()}
    except Exception:  # it is broken by an earlier change
        return _bytes(content, draw)
    if not parts:
        return _bytes(content, draw)
    sheets = [name for name in parts if "sheet" in name.lower() and name.endswith(".xml")]
    name = draw.choice(sheets if sheets and draw.random() < 0.8 else list(parts))
    what = draw.randrange(20)
    if what == 0:
        del parts[name]
    elif what == 1:
        parts[name.swapcase()] = parts.pop(name)
    elif what == 2:
        parts[name] = parts[draw.choice(list(parts))]
    else:
        for _ in range(draw.choice((1, 1, 2, 5))):
            parts[name] = (_xml if draw.random() < 0.9 else _bytes)(parts[name], draw)
    changed = BytesIO()
    with zipfile.ZipFile(changed, "w") as archive:
        for title, value in parts.items():
            archive.writestr(title or "x", value)
    return changed.getvalue()


def _toml(content: bytes, draw: Random) -> bytes:
    """Change a line, a value, or one thing within a value."""
    text = content.decode("utf-8", "surrogateescape")
    lines = text.split("\n")
    at, other = draw.randrange(len(lines)), draw.randrange(len(lines))
    kind = draw.randrange(9)
    values = list(VALUE.finditer(text)) if kind < 4 else list(ITEM.finditer(text))
    if kind == 4:
        del lines[at]
    elif kind == 5:
        lines.insert(at, lines[other])
    elif kind == 6:
        lines[at], lines[other] = lines[other], lines[at]
    elif kind == 7:
        cut = draw.randrange(len(lines[at]) + 1)
        lines[at] = lines[at][:cut] + draw.choice(DELIMITERS + CELLS) + lines[at][cut:]
    elif values:
        one = draw.choice(values)
        value = draw.choice(
            (
                draw.choice(TOML_VALUES),
                draw.choice(NUMBERS),
                f'"{draw.choice(CELLS)}"',
                draw.choice(values)[0].lstrip("= "),
            )
        )
        start, end = one.span(1 if kind < 4 else 0)
        lines = (text[:start] + value + text[end:]).split("\n")
    return "\n".join(lines).encode("utf-8", "surrogateescape")


def _csv(content: bytes, draw: Random) -> bytes:
    """Change a cell, a line, the separator, or the encoding."""
    text = content.decode("utf-8", "surrogateescape")
    lines = text.splitlines(keepends=True) or [""]
    at, other = draw.randrange(len(lines)), draw.randrange(len(lines))
    kind = draw.randrange(8)
    cells = list(CSV_CELL.finditer(text))
    if kind < 3 and cells:
        one = draw.choice(cells)
        text = text[: one.start()] + draw.choice(CELLS + NUMBERS + [f'"{draw.choice(CELLS)}"']) + text[one.end() :]
    elif kind == 3:
        text = "".join(lines[:at] + lines[at + 1 :])
    elif kind == 4:
        text = "".join([*lines[:at], lines[other], *lines[at:]])
    elif kind == 5:
        text = text.replace(draw.choice(",;\t\n"), draw.choice(DELIMITERS), draw.choice((1, 3, -1)))
    elif kind == 6:
        return text.encode(draw.choice(ENCODINGS), "replace")
    else:
        cut = draw.randrange(len(text) + 1)
        text = text[:cut] + draw.choice(DELIMITERS + CELLS) + text[cut:]
    return text.encode("utf-8", "surrogateescape")
