"""One watch at a time: a file that the system keeps locked for as long as the watch runs, and no longer."""

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import BinaryIO

from scorecard.errors import UsageError
from scorecard.locks import lock


@contextmanager
def turn(path: Path, words: str) -> Iterator[None]:
    """Take a folder's turn of watching, and give it back at the end.

    Parameters
    ----------
    path : of the file that is locked; its folder is made where it is missing
    words : what another watch is told of this one, such as where its page is

    Raises
    ------
    UsageError
        If another watch has it. Where the system can lock nothing, there is no turn to take.
    """
    file = _opened(path)
    if file is None:
        yield
        return
    with file:
        try:
            lock(file.fileno())
        except (BlockingIOError, PermissionError):
            raise UsageError(_taken(path)) from None
        except OSError:
            yield
            return
        with suppress(OSError):  # on a full disk the next watch is told less of this one
            file.truncate(0)
            os.write(file.fileno(), words.encode())
        try:
            yield
        finally:
            with suppress(OSError):
                path.unlink()


def _opened(path: Path) -> BinaryIO | None:
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        return path.open("ab+")
    except OSError:
        return None


def _taken(path: Path) -> str:
    with suppress(OSError):
        if words := path.read_text("utf-8").strip():
            return f"This folder is being watched already: {words}. End that watch first, with Ctrl-C."
    return "This folder is being watched already. End that watch first, with Ctrl-C."
