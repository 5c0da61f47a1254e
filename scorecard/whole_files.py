"""Files whole or not at all, in reading and in writing, and nothing of the user's overwritten.

Enters: paths, and bytes already made. Leaves: bytes of one moment; files that are old or new, never half. Every
temporary name begins with ``.scorecard-``; what a killed run left under such a name is removed by a later one.
"""

import errno
import os
import re
import shutil
import time
from collections.abc import Iterable, Iterator
from contextlib import contextmanager, suppress
from itertools import count
from pathlib import Path
from secrets import token_hex

from scorecard.errors import WriteError

TEMPORARY = re.compile(r"\.scorecard-[0-9a-f]{12}\.tmp")
STALE = 3600  # seconds after which nobody is at work on a temporary file any more
TRIES, PAUSE = 5, 0.2  # readings of a file that changes meanwhile, and seconds between two


def read_whole(path: Path) -> bytes:
    """Return what a file holds, all of one moment; a file that is being saved is read again.

    Raises
    ------
    OSError
        If it cannot be read, or still changes after a second.
    """
    for attempt in range(TRIES):
        time.sleep(PAUSE if attempt else 0)
        before = _version_of(path)
        content = path.read_bytes()
        if before == _version_of(path):
            return content
    raise OSError(errno.EBUSY, "it changes while it is read")


def _version_of(path: Path) -> tuple[int, ...]:
    found = path.stat()
    return found.st_ino, found.st_size, found.st_mtime_ns


def write_whole(target: Path, content: bytes) -> None:
    """Put content at the target whole, or leave what is there; a symlink is replaced, not followed.

    Raises
    ------
    WriteError
        If the target cannot be written, in one sentence that says what to do.
    """
    with told(target):
        sweep(target.parent)
        temporary = prepared(target.parent, content)
        with _removed_on_error(temporary):
            temporary.replace(target)


def keep_beside(path: Path) -> Path:
    """Copy a file beside itself before the tool rewrites it: ``criteria-before-1.toml``, or the next free number.

    Raises
    ------
    WriteError
        If it cannot be read, or the copy cannot be written.
    """
    with told(path):
        return write_new(numbered(path, "before"), path.read_bytes())


def write_new(candidates: Iterable[Path], content: bytes) -> Path:
    """Put content under the first name that is free, or that holds the very same already; return that name."""
    for path in candidates:
        if path.is_file() and path.read_bytes() == content:
            return path
        if not os.path.lexists(path) and _placed(path, content):
            return path
    raise FileExistsError(errno.EEXIST, "every name is taken")


def numbered(path: Path, word: str) -> Iterator[Path]:
    """Yield shortlist-edited-1.html, shortlist-edited-2.html, and so on."""
    return (path.with_name(f"{path.stem}-{word}-{number}{path.suffix}") for number in count(1))


def sweep(folder: Path) -> None:
    """Remove what killed runs left in a folder: temporary files and folders that nobody has touched for an hour."""
    with suppress(OSError), os.scandir(folder) as entries:
        for entry in entries:
            if is_temporary(entry.name) and abs(time.time() - entry.stat(follow_symlinks=False).st_mtime) > STALE:
                remove(Path(entry.path))


def remove(temporary: Path) -> None:
    """Remove a temporary file, or a temporary folder with what is in it; one that cannot be removed does no harm."""
    if temporary.is_dir() and not temporary.is_symlink():
        shutil.rmtree(temporary, ignore_errors=True)
    else:
        with suppress(OSError):
            temporary.unlink()


def is_temporary(name: str) -> bool:
    """Say whether a name is one that only the tool gives, and only for a moment."""
    return bool(TEMPORARY.fullmatch(name))


def temporary_name() -> str:
    """Return a name that no user gives and that listings hide."""
    return f".scorecard-{token_hex(6)}.tmp"


def prepared(folder: Path, content: bytes) -> Path:
    """Write content to a temporary file of the folder, down to the disk; the file's mode is the usual one."""
    temporary = folder / temporary_name()
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
        remove(temporary)
        raise


def _placed(path: Path, content: bytes) -> bool:
    """Put content under a name whole, unless the name has been taken meanwhile; say whether it was put there."""
    temporary = prepared(path.parent, content)
    try:
        path.hardlink_to(temporary)
    except FileExistsError:
        return False
    except OSError:  # a disk without hard links, such as a memory stick
        return _placed_where_reserved(path, temporary)
    finally:
        remove(temporary)
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


@contextmanager
def told(target: Path, *, is_folder: bool = False) -> Iterator[None]:
    """Turn what the system says of a failure into a sentence about a file, or about a folder."""
    try:
        yield
    except OSError as error:
        raise WriteError(f"{target} could not be written: {_cause(target, error, is_folder)}.") from error


def _cause(target: Path, error: OSError, is_folder: bool) -> str:
    """Return why a file or folder could not be written, and what to do."""
    is_taken = isinstance(error, IsADirectoryError | PermissionError | FileExistsError) and target.is_dir()
    if is_taken and not is_folder:
        return "there is a folder of that name. Move it, and try again"
    if isinstance(error, PermissionError) and not is_folder and os.access(target.parent, os.W_OK):
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
