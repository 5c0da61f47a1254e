"""When some files were saved: seen by looking again and again, which works in synced and network folders too.

Enters: paths. Leaves: whether there is something new that is whole. Only the files themselves are looked at, so the
lock files that spreadsheet programs put beside them pass unnoticed.
"""

from pathlib import Path
from zipfile import BadZipFile, ZipFile

PATIENCE = 10  # looks for which a file may be gone or cut short before it is taken as it is

Stamp = tuple[int, int] | None


class Saves:
    """What has been seen of some files.

    Parameters
    ----------
    paths : of the files; one that is not there is waited for only where it was there before
    """

    def __init__(self, *paths: Path) -> None:
        self._paths = paths
        self._taken = self._seen = self._stamps()
        self._waited = 0

    def look(self) -> bool:
        """Look once; return whether the files have changed since they were last taken, and can be taken now.

        They can where two looks found the same sizes and times, and every workbook opens; or after some patience.
        """
        now, before = self._stamps(), self._seen
        self._seen = now
        if now == self._taken or now != before:
            self._waited = 0
            return False
        self._waited += 1
        if self._waited < PATIENCE and not self._are_whole(now):
            return False
        self._taken, self._waited = now, 0
        return True

    def _stamps(self) -> tuple[Stamp, ...]:
        return tuple(map(stamp_of, self._paths))

    def _are_whole(self, now: tuple[Stamp, ...]) -> bool:
        gone = any(stamp is None and taken is not None for stamp, taken in zip(now, self._taken, strict=True))
        return not gone and all(is_whole(path) for path, stamp in zip(self._paths, now, strict=True) if stamp)


def stamp_of(path: Path) -> Stamp:
    """Return a file's size and the time of its last change; None where there is no such file."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_size, found.st_mtime_ns


def is_whole(path: Path) -> bool:
    """Say whether a workbook opens as the zip that it is; of any other file nothing can be said."""
    if path.suffix.lower() != ".xlsx":
        return True
    try:
        with ZipFile(path):
            return True
    except (BadZipFile, OSError, ValueError, NotImplementedError):
        return False
