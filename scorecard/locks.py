"""One at a time: what the system keeps locked for as long as a program holds it open, and no longer."""

import os
import sys
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path

from scorecard.errors import WriteError

WAIT, PAUSE = 10.0, 0.02  # seconds to wait for another run, and between two looks

if sys.platform == "win32":
    import msvcrt

    FAR = 4096  # the locked byte stands beyond what a file holds, so that others can read it

    def lock(handle: int) -> None:
        """Lock an open file at once, or raise an OSError: a PermissionError where another program has it."""
        os.lseek(handle, FAR, os.SEEK_SET)
        msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)

    @contextmanager
    def _held_open(folder: Path) -> Iterator[int]:
        beside = folder / ".writing"
        handle = os.open(beside, os.O_RDWR | os.O_CREAT)
        try:
            yield handle
        finally:
            with suppress(OSError):  # another run holds it open by now
                os.close(handle)
                beside.unlink()

else:
    import fcntl

    def lock(handle: int) -> None:
        """Lock an open file at once, or raise an OSError: a BlockingIOError where another program has it."""
        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)

    @contextmanager
    def _held_open(folder: Path) -> Iterator[int]:
        handle = os.open(folder, os.O_RDONLY)
        try:
            yield handle
        finally:
            with suppress(OSError):
                os.close(handle)


@contextmanager
def alone_in(folder: Path) -> Iterator[None]:
    """Write in a folder while no other run does; where the system can lock nothing, go on without.

    Raises
    ------
    WriteError
        If another run has it for longer than anybody would wait.
    """
    with ExitStack() as held:
        with suppress(OSError):
            _wait(held.enter_context(_held_open(folder)), folder)
        yield


def _wait(handle: int, folder: Path) -> None:
    until = time.monotonic() + WAIT
    while True:
        try:
            lock(handle)
        except (BlockingIOError, PermissionError):
            if time.monotonic() > until:
                raise WriteError(f"Another run is writing in {folder}. Let it end, and try again.") from None
            time.sleep(PAUSE)
        else:
            return
