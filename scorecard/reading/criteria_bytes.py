"""The criteria file's bytes as text, whatever the editor made of it.

Enters: a path, or bytes. Leaves: bytes, or text, or None once it is noted why there is none.
"""

from codecs import BOM_UTF8, BOM_UTF16_BE, BOM_UTF16_LE
from pathlib import Path

from scorecard.reading.findings import folder_named
from scorecard.reading.toml_tables import Notes
from scorecard.whole_files import read_whole

LARGEST_FILE = 300_000  # bytes
LARGER = "the file is larger than 300 KB"
MOST_LINES = 20_000  # 500 criteria of 40 lines each

_SAVE_AS = "Save it again from a plain text editor, with the encoding UTF-8"


def read_bytes(path: Path, notes: Notes) -> bytes | None:
    """Return what a file holds."""
    try:
        if path.is_file() and path.stat().st_size <= LARGEST_FILE:
            return read_whole(path)
        _note_what_is_there(path, notes)
    except (OSError, ValueError) as error:
        why = (error.strerror if isinstance(error, OSError) else None) or "its name is not one a file can have"
        notes.problem("cannot-open", (), f"the file cannot be opened: {why}", "Check its name and who may read it")
    return None


def _note_what_is_there(path: Path, notes: Notes) -> None:
    """Note what stands in place of a file that can be read."""
    if path.is_file():
        _note_too_large(notes, LARGER)
    elif path.is_dir():
        notes.problem("is-a-folder", (), "this is a folder, not a file", "Name the criteria file that is in it")
    elif path.exists():
        notes.problem("not-a-file", (), "this is no ordinary file", "Name a criteria file")
    elif path.with_name(path.name + ".txt").is_file():
        found = f"there is no file of this name in {folder_named(path)}, but a {path.name}.txt"
        wanted = f"Rename it to {path.name}; to see such endings, have your computer show file name extensions"
        notes.problem("saved-as-txt", (), found, wanted)
    else:
        wanted = "Lay out a new folder with: scorecard start FOLDER; or name the file with --criteria"
        notes.problem("file-missing", (), f"there is no file of this name in {folder_named(path)}", wanted)


def _note_too_large(notes: Notes, found: str) -> None:
    """Note that a file is too large."""
    wanted = "Check that it is the criteria file: it is a page or two of text"
    notes.problem("file-too-large", (), found, wanted)


def decoded(content: bytes, notes: Notes) -> str | None:
    """Return the text of a file's bytes; text in another encoding than UTF-8 is read on, where it can be told."""
    if len(content) > LARGEST_FILE:
        _note_too_large(notes, LARGER)
        return None
    text = _from_utf16(content, notes) if _is_utf16(content) else _from_utf8(content, notes)
    if text is not None and text.count("\n") > MOST_LINES:
        _note_too_large(notes, f"the file has more than {MOST_LINES:,} lines")
        return None
    if text is not None and not text.strip():
        wanted = "Start from one of the criteria files that come with the tool: scorecard start FOLDER"
        notes.problem("file-empty", (), "the file is empty", wanted)
        return None
    return text


def _is_utf16(content: bytes) -> bool:
    """Return whether bytes begin as UTF-16 does: with its mark, or with every second byte zero."""
    start = content[:40]
    halves = start[::2], start[1::2]
    return content.startswith((BOM_UTF16_LE, BOM_UTF16_BE)) or (len(start) > 1 and b"\0" * len(halves[1]) in halves)


def _from_utf16(content: bytes, notes: Notes) -> str | None:
    """Return text from UTF-16."""
    notes.problem("saved-as-utf-16", (), "the file is saved as UTF-16, also called Unicode", _SAVE_AS)
    marked = content.startswith((BOM_UTF16_LE, BOM_UTF16_BE))
    encoding = "utf-16" if marked else "utf-16-le" if content[1] == 0 else "utf-16-be"
    text = content.decode(encoding, errors="replace")
    return None if "\0" in text else text


def _from_utf8(content: bytes, notes: Notes) -> str | None:
    """Return text from UTF-8, or from the encoding that old editors use instead."""
    if content.startswith(BOM_UTF8):
        found = "the file begins with a byte-order mark, which some editors put there"
        notes.warn("byte-order-mark", (), found, "It was read all the same; saving as UTF-8 without BOM takes it away")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        found = f"the file is not saved as UTF-8: line {line} holds a character in another encoding"
        notes.problem("not-utf-8", (), found, _SAVE_AS)
        return None if b"\0" in content else content.decode("cp1252", errors="replace")
