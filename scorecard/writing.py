"""The tool's own outputs, and new folders: whole or not at all, and what the user changed is kept.

Enters: bytes already made, by file name. Leaves: outputs that are old or new, every run's result in the history, and a
record of what the tool wrote, by which it knows its own files.
"""

import json
import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from datetime import UTC, datetime
from hashlib import sha256
from itertools import count
from pathlib import Path

from scorecard.errors import UsageError
from scorecard.frozen import dataclass
from scorecard.locks import alone_in
from scorecard.whole_files import (
    is_temporary,
    numbered,
    prepared,
    remove,
    sweep,
    temporary_name,
    told,
    write_new,
    write_whole,
)
from scorecard.words import listed

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
    with told(folder, is_folder=True):
        folder.mkdir(parents=True, exist_ok=True)
    sweep(folder)
    stays = None if history is None else _into_history(folder / HISTORY, history, stamp or time_stamp())
    with _all_prepared(folder, outputs) as temporaries, alone_in(folder):
        kept = [_kept(folder / name, content) for name, content in outputs.items()]
        _remember(folder, outputs)
        for name, temporary in temporaries.items():
            with told(folder / name):
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
    _refuse_if_taken(folder, files)
    with told(folder, is_folder=True):
        if folder.is_dir():
            with _marked(folder):
                _fill(folder, files)
            return
        folder.parent.mkdir(parents=True, exist_ok=True)
        sweep(folder.parent)
        workshop = folder.parent / temporary_name()
        workshop.mkdir()
        try:
            _fill(workshop, files)
            workshop.rename(folder)
        except BaseException:
            remove(workshop)
            raise


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


@contextmanager
def _all_prepared(folder: Path, outputs: Mapping[str, bytes]) -> Iterator[dict[str, Path]]:
    """Prepare every output; remove at the end what was not put in its place."""
    temporaries: dict[str, Path] = {}
    try:
        for name, content in outputs.items():
            with told(folder / name):
                temporaries[name] = prepared(folder, content)
        yield temporaries
    finally:
        for temporary in temporaries.values():
            remove(temporary)


def history_name(stamp: datetime) -> str:
    """Return what the result of a run is called in the history, without its number and ending."""
    return f"{stamp.astimezone(UTC):%Y-%m-%dT%H-%M-%SZ}"


def _into_history(folder: Path, content: bytes, stamp: datetime) -> Path:
    """Keep a run's result under its time stamp; another result of the same second gets -2."""
    name = history_name(stamp)
    names = (folder / f"{name}{'' if number == 1 else f'-{number}'}.json" for number in count(1))
    with told(folder, is_folder=True):
        folder.mkdir(exist_ok=True)
        sweep(folder)
        return write_new(names, content)


def _kept(target: Path, content: bytes) -> Path | None:
    """Keep a file that the tool did not write, or that was changed since, beside itself; None where there is none."""
    with told(target):
        if not target.exists():
            return None
        there = target.read_bytes()
        if there == content or _digest(there) in _record(target.parent).get(target.name, ()):
            return None
        return write_new(numbered(target, "edited"), there)


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


def _refuse_if_taken(folder: Path, files: Mapping[str, bytes]) -> None:
    """Refuse a file, and a folder that holds anything but what a killed run may have left of these files."""
    if not folder.is_dir():
        if os.path.lexists(folder):
            raise UsageError(f"{folder} is there already and is not a folder. Give another name.")
        return
    with told(folder, is_folder=True):
        names = sorted(_names_in(folder, files))
    if names:
        shown = listed([*names[:3], *(["more"] if len(names) > 3 else [])])
        raise UsageError(
            f"{folder} holds something already ({shown}). Name a new folder, or one that is empty; hidden files count."
        )


@contextmanager
def _marked(folder: Path) -> Iterator[None]:
    """Fill a folder beside a temporary one, by which it is known that a killed run had begun to."""
    (folder / temporary_name()).mkdir()
    try:
        yield
    finally:
        for path in [path for path in folder.iterdir() if is_temporary(path.name)]:
            remove(path)


def _names_in(folder: Path, files: Mapping[str, bytes]) -> Iterator[str]:
    """Yield what a folder holds, but for what is in it of these files where a killed run had begun to lay them out."""
    there = list(folder.iterdir())
    is_begun = any(is_temporary(path.name) and path.is_dir() for path in there)
    for path in there:
        is_left = is_begun and (is_temporary(path.name) or _is_of(path, path.name, files))
        if not is_left:
            yield path.name


def _is_of(path: Path, name: str, files: Mapping[str, bytes]) -> bool:
    """Say whether a path holds just what is to be laid out under its name, or a part of it."""
    if path.is_symlink():
        return False
    if path.is_file():
        return name in files and path.read_bytes() == files[name]
    return all(is_temporary(one.name) or _is_of(one, f"{name}/{one.name}", files) for one in path.iterdir())


def _fill(folder: Path, files: Mapping[str, bytes]) -> None:
    """Write files into an empty folder; on an error, empty it again."""
    made: list[Path] = []
    try:
        for name, content in files.items():
            path = folder / name
            path.parent.mkdir(parents=True, exist_ok=True)
            made.append(write_new([path], content))
    except BaseException:
        for path in made:
            path.unlink(missing_ok=True)
        for path in sorted(folder.rglob("*"), reverse=True):
            with suppress(OSError):
                path.rmdir()
        raise
