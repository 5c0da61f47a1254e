"""Writing in one place: whole or not at all, and nothing of the user's overwritten or deleted.

Enters: bytes already made. Leaves: files that are old or new, never half. Every temporary name begins with
``.scorecard-``. Names, links, time stamps and templates that stem from what a user typed are made harmless here too.
"""

import errno
import json
import os
import re
import shutil
import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from datetime import UTC, datetime
from hashlib import sha256
from itertools import count
from pathlib import Path
from secrets import token_hex
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

from scorecard.errors import UsageError, WriteError
from scorecard.words import listed

if TYPE_CHECKING:
    from jinja2 import Environment

RECORD = ".written.json"
HISTORY = "history"
REMEMBERED = 8  # versions of each output that the tool still knows as its own


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """What a run wrote.

    Parameters
    ----------
    files : the outputs, in the order given
    kept : new names of the files that the user had changed, or that were never the tool's
    history : where the run's result stays; None where none was given
    """

    files: tuple[Path, ...]
    kept: tuple[Path, ...] = ()
    history: Path | None = None


def write_whole(target: Path, content: bytes) -> None:
    """Put content at the target whole, or leave what is there; a symlink is replaced, not followed.

    Raises
    ------
    WriteError
        If the target cannot be written, in one sentence that says what to do.
    """
    with _told(target):
        temporary = _prepared(target.parent, content)
        with _removed_on_error(temporary):
            temporary.replace(target)


def write_outputs(
    folder: Path, outputs: Mapping[str, bytes], *, history: bytes | None = None, stamp: datetime | None = None
) -> Written:
    """Replace the tool's own outputs, one after another, once all of them lie ready.

    Parameters
    ----------
    folder : such as ``reports``; made where it is missing
    outputs : content by file name
    history : what is to stay in ``history/`` under the time stamp, never in place of another run's
    stamp : the run's time; None takes ``time_stamp()``

    Raises
    ------
    WriteError
        If one cannot be written; each output is then old or new, whole.
    """
    with _told(folder):
        folder.mkdir(parents=True, exist_ok=True)
    stays = None if history is None else _into_history(folder / HISTORY, history, stamp or time_stamp())
    with _all_prepared(folder, outputs) as temporaries:
        kept = [_kept(folder / name, content) for name, content in outputs.items()]
        _remember(folder, outputs)
        for name, temporary in temporaries.items():
            with _told(folder / name):
                temporary.replace(folder / name)
    return Written(
        files=tuple(folder / name for name in outputs),
        kept=tuple(path for path in kept if path),
        history=stays,
    )


def lay_out(folder: Path, files: Mapping[str, bytes]) -> None:
    """Make a new folder with these files, whole or not at all; an empty folder that is there is filled.

    Parameters
    ----------
    folder : its parents are made where they are missing
    files : content by name, inside the folder, with "/" before each level

    Raises
    ------
    UsageError
        If the folder holds anything, hidden files too, or is a file.
    WriteError
        If it cannot be written.
    """
    _refuse_if_taken(folder)
    with _told(folder):
        if folder.is_dir():
            _fill(folder, files)
            return
        folder.parent.mkdir(parents=True, exist_ok=True)
        workshop = folder.parent / _temporary_name()
        workshop.mkdir()
        try:
            _fill(workshop, files)
            workshop.rename(folder)
        except BaseException:
            shutil.rmtree(workshop, ignore_errors=True)
            raise


def keep_beside(path: Path) -> Path:
    """Copy a file beside itself before the tool rewrites it: ``criteria-before-1.toml``, or the next free number.

    Raises
    ------
    WriteError
        If it cannot be read, or the copy cannot be written.
    """
    with _told(path):
        return _write_new(_numbered(path, "before"), path.read_bytes())


def safe_name(text: str, row: int) -> str:
    """Return a harmless file name, without an ending, for a maker in a row of the sheet.

    Examples
    --------
    >>> safe_name("Žluť & Söhne", 3), safe_name("../../etc/passwd", 4), safe_name("陶器", 12)
    ('03-zlut-sohne', '04-etc-passwd', '12-maker')
    """
    plain = unicodedata.normalize("NFKD", text.casefold()).encode("ascii", "ignore").decode()
    slug = re.sub(r"[^a-z0-9]+", "-", plain)[:60].strip("-")
    return f"{row:02d}-{slug or 'maker'}"


def time_stamp() -> datetime:
    """Return the time of this run in UTC, to the second: that of SOURCE_DATE_EPOCH where it is set, else the clock's.

    Raises
    ------
    UsageError
        If SOURCE_DATE_EPOCH is not a whole number of seconds.
    """
    fixed = os.environ.get("SOURCE_DATE_EPOCH")
    if not fixed:
        return datetime.now(UTC).replace(microsecond=0)
    try:
        return datetime.fromtimestamp(_not_negative(int(fixed)), UTC)
    except (ValueError, OverflowError, OSError):
        raise UsageError(f"SOURCE_DATE_EPOCH: {fixed!r} is not a whole number of seconds since 1970.") from None


def _not_negative(seconds: int) -> int:
    """Return seconds since 1970; a ValueError for a time before."""
    if seconds < 0:
        raise ValueError
    return seconds


def environment(folder: Path) -> "Environment":
    """Return the one template environment: everything is escaped, and a name that is not there is an error.

    Parameters
    ----------
    folder : of the package, with its templates; never a folder of the user's, whose texts are not templates
    """
    from jinja2 import Environment, FileSystemBytecodeCache, FileSystemLoader, StrictUndefined  # most need no page

    compiled = folder / "__pycache__"  # where Python keeps its own
    made = Environment(
        loader=FileSystemLoader(folder),
        bytecode_cache=FileSystemBytecodeCache(str(compiled)) if os.access(compiled, os.W_OK) else None,
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    made.filters["safe_href"] = safe_href
    return made


def safe_href(text: str | None) -> str | None:
    """Return a web address that a page may link to, or None: http or https, with a host, and nothing hidden in it.

    Examples
    --------
    >>> safe_href(" https://pots.example/mugs "), safe_href("javascript:alert(1)"), safe_href("https://a@b.example")
    ('https://pots.example/mugs', None, None)
    """
    address = (text or "").strip(" ")
    if any(unicodedata.category(sign)[0] in "CZ" or sign == "\\" for sign in address):
        return None
    try:
        parts = urlsplit(address)
        _ = parts.port  # reading it is what checks it
    except ValueError:
        return None
    is_plain = parts.scheme.lower() in ("http", "https") and parts.hostname and "@" not in parts.netloc
    return address if is_plain else None


def _temporary_name() -> str:
    """Return a name that no user gives and that listings hide."""
    return f".scorecard-{token_hex(6)}.tmp"


def _prepared(folder: Path, content: bytes) -> Path:
    """Write content to a temporary file of the folder, down to the disk; the file's mode is the usual one."""
    temporary = folder / _temporary_name()
    with _removed_on_error(temporary), temporary.open("xb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
    return temporary


@contextmanager
def _removed_on_error(temporary: Path) -> Iterator[None]:
    """Remove a temporary file where what follows fails."""
    try:
        yield
    except BaseException:
        temporary.unlink(missing_ok=True)
        raise


@contextmanager
def _all_prepared(folder: Path, outputs: Mapping[str, bytes]) -> Iterator[dict[str, Path]]:
    """Prepare every output; remove at the end what was not put in its place."""
    temporaries: dict[str, Path] = {}
    try:
        for name, content in outputs.items():
            with _told(folder / name):
                temporaries[name] = _prepared(folder, content)
        yield temporaries
    finally:
        for temporary in temporaries.values():
            temporary.unlink(missing_ok=True)


def _write_new(candidates: Iterable[Path], content: bytes) -> Path:
    """Put content under the first name that is free, or that holds the very same already; return that name."""
    for path in candidates:
        if path.is_file() and path.read_bytes() == content:
            return path
        if not os.path.lexists(path) and _placed(path, content):
            return path
    raise FileExistsError(errno.EEXIST, "every name is taken")


def _placed(path: Path, content: bytes) -> bool:
    """Put content under a name whole, unless the name has been taken meanwhile; say whether it was put there."""
    temporary = _prepared(path.parent, content)
    try:
        path.hardlink_to(temporary)
    except FileExistsError:
        return False
    except OSError:  # a disk without hard links, such as a memory stick
        return _placed_where_reserved(path, temporary)
    finally:
        temporary.unlink(missing_ok=True)
    return True


def _placed_where_reserved(path: Path, temporary: Path) -> bool:
    """Take the name first, so that nobody else's file is replaced."""
    try:
        path.open("xb").close()
    except FileExistsError:
        return False
    with _removed_on_error(path):
        temporary.replace(path)
    return True


def _numbered(path: Path, word: str) -> Iterator[Path]:
    """Yield shortlist-edited-1.html, shortlist-edited-2.html, and so on."""
    return (path.with_name(f"{path.stem}-{word}-{number}{path.suffix}") for number in count(1))


def _into_history(folder: Path, content: bytes, stamp: datetime) -> Path:
    """Keep a run's result under its time stamp; another result of the same second gets -2."""
    name = f"{stamp.astimezone(UTC):%Y-%m-%dT%H-%M-%SZ}"
    names = (folder / f"{name}{'' if number == 1 else f'-{number}'}.json" for number in count(1))
    with _told(folder):
        folder.mkdir(exist_ok=True)
        return _write_new(names, content)


def _kept(target: Path, content: bytes) -> Path | None:
    """Keep a file that the tool did not write, or that was changed since, beside itself; None where there is none."""
    with _told(target):
        if not target.exists():
            return None
        there = target.read_bytes()
        if there == content or _digest(there) in _record(target.parent).get(target.name, ()):
            return None
        return _write_new(_numbered(target, "edited"), there)


def _digest(content: bytes) -> str:
    return sha256(content).hexdigest()


def _record(folder: Path) -> dict[str, list[str]]:
    """Return digests of what the tool wrote here, by file name; nothing where the record is missing or damaged."""
    try:
        record = json.loads((folder / RECORD).read_bytes())
    except (OSError, ValueError, RecursionError):
        return {}
    whole = record if isinstance(record, dict) else {}
    return {
        name: [digest for digest in digests if isinstance(digest, str)]
        for name, digests in whole.items()
        if isinstance(digests, list)
    }


def _remember(folder: Path, outputs: Mapping[str, bytes]) -> None:
    """Add what is about to be written to the record; before it is, so that a kill in between forgets nothing."""
    record = _record(folder)
    for name, content in outputs.items():
        new = _digest(content)
        older = [digest for digest in record.get(name, ()) if digest != new]
        record[name] = [new, *older][:REMEMBERED]
    write_whole(folder / RECORD, (json.dumps(record, indent=1, sort_keys=True) + "\n").encode())


def _refuse_if_taken(folder: Path) -> None:
    """Refuse a folder that holds anything, and a file."""
    if not folder.is_dir():
        if os.path.lexists(folder):
            raise UsageError(f"{folder} is there already and is not a folder. Give another name.")
        return
    with _told(folder):
        names = sorted(path.name for path in folder.iterdir())
    if names:
        shown = listed([*names[:3], *(["more"] if len(names) > 3 else [])])
        raise UsageError(
            f"{folder} holds something already ({shown}). Name a new folder, or one that is empty; hidden files count."
        )


def _fill(folder: Path, files: Mapping[str, bytes]) -> None:
    """Write files into an empty folder; on an error, empty it again."""
    made: list[Path] = []
    try:
        for name, content in files.items():
            path = folder / name
            path.parent.mkdir(parents=True, exist_ok=True)
            made.append(_write_new([path], content))
    except BaseException:
        for path in made:
            path.unlink(missing_ok=True)
        for path in sorted(folder.rglob("*"), reverse=True):
            with suppress(OSError):
                path.rmdir()
        raise


@contextmanager
def _told(target: Path) -> Iterator[None]:
    """Turn what the system says of a failure into a sentence."""
    try:
        yield
    except OSError as error:
        raise WriteError(f"{target} could not be written: {_cause(target, error)}.") from error


def _cause(target: Path, error: OSError) -> str:
    """Return why a file could not be written, and what to do."""
    if isinstance(error, IsADirectoryError | PermissionError | FileExistsError) and target.is_dir():
        return "there is a folder of that name. Move it, and try again"
    if isinstance(error, PermissionError) and os.access(target.parent, os.W_OK):
        return "it may be open in another program. Close it and try again"
    causes: dict[int | None, str] = {
        errno.ENOSPC: "the disk is full. Make room, and try again",
        errno.EDQUOT: "your share of the disk is full. Make room, and try again",
        errno.ENAMETOOLONG: "its name is too long. Give a shorter one",
        errno.ENOTDIR: "a part of its path is a file, not a folder. Name another folder",
        errno.EEXIST: "there is a file of that name. Move it, and try again",
        errno.ENOENT: "its folder is not there. Make it, or name another",
    }
    if isinstance(error, PermissionError) or error.errno == errno.EROFS:
        return "its folder may only be read. Choose another folder, or ask for the right to write there"
    return causes.get(error.errno, f"the system says {error.strerror or error}")
