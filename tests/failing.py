"""Whole commands that are killed, or fail, at every operation on a file.

A command reads once. Where it is about to write for the first time, one process is forked for each operation on a file
that follows; each goes on in a copy of the folder, until its own operation ends it or fails.
"""

import errno
import json
import os
import resource
import shutil
import signal
import subprocess
import sys
from dataclasses import dataclass
from io import BufferedRandom, BufferedWriter, FileIO
from itertools import count
from pathlib import Path

import pytest

STAMP = "1795598400"
OPERATIONS = {
    *("open", "write", "flush", "fsync", "close", "__exit__", "flock", "truncate"),
    *("replace", "rename", "link", "unlink", "remove", "mkdir", "rmdir"),
}
HOMES = {"posix", "nt", "io", "_io", "fcntl"}
CUTS = (0, 1, 100, 4_095, 4_096, 20_000, 50_000, 100_000)  # bytes of a file after which the process is killed
WRITING = os.O_WRONLY | os.O_RDWR | os.O_CREAT


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """A run that was killed, or in which an operation failed: its folder, its exit status, and what it said."""

    folder: Path
    status: int
    out: str
    err: str


def points(words: list[str], folder: Path, room: Path, mode: str, every: int = 1) -> tuple[list[Point], Point]:
    """Return what a command left at each point, and what it leaves where nothing fails.

    Parameters
    ----------
    words : of the command, which is run in the folder
    folder : as it is before
    room : where the copies come to lie
    mode : "kill" before and after each operation, "cut" in the middle of a file, or the name of an error number
    every : how many operations further each point lies
    """
    if not hasattr(os, "fork"):
        pytest.skip("this system cannot fork")
    room.mkdir()
    started(mode, words, folder, room, str(every))
    statuses = json.loads((room / "statuses.json").read_text())
    found = [_point(room, number, status) for number, status in enumerate(statuses, start=1)]
    return found[:-1], found[-1]


def again(words: list[str], points: list[Point]) -> list[Point]:
    """Return what the same command does at its next run in each of these folders."""
    folders = [str(one.folder) for one in points]
    started("again", words, points[0].folder, points[0].folder.parent, *folders)
    statuses = json.loads((points[0].folder.parent / "again.json").read_text())
    return [
        _point(one.folder.parent, int(one.folder.name), status)
        for one, status in zip(points, statuses, strict=True)
    ]  # fmt: skip


def started(mode: str, words: list[str], folder: Path, room: Path, *more: str) -> None:
    """Start this module as a program."""
    env = {**os.environ, "SOURCE_DATE_EPOCH": STAMP, "OPENBLAS_NUM_THREADS": "1"}
    told = json.dumps([mode, words, str(room), more])
    subprocess.run([sys.executable, __file__, told], cwd=folder, env=env, check=True, timeout=300)


def _point(room: Path, number: int, status: int) -> Point:
    out, err = ((room / f"{number}.{name}").read_text("utf-8") for name in ("out", "err"))
    return Point(folder=room / str(number), status=status, out=out, err=err)


class _Points:
    """The program: it waits for the first writing, and forks there."""

    def __init__(self, mode: str, room: Path, every: int) -> None:
        self.mode, self.room, self.source, self.every, self.waits = mode, room, Path.cwd(), every, True

    def hook(self, event: str, args: tuple) -> None:
        """Fork where something is about to be written below the folder it runs in."""
        if not self.waits or not self._writes(event, args):
            return
        self.waits = False
        statuses = []
        for number in count(1):
            status, was_met = self._one(number)
            if status is None:
                return  # this is the child: go on writing
            statuses.append(status)
            if not was_met:
                break
        (self.room / "statuses.json").write_text(json.dumps(statuses))
        os._exit(0)

    @staticmethod
    def _writes(event: str, args: tuple) -> bool:
        if event == "open":
            return isinstance(args[0], str | os.PathLike) and bool((args[2] or 0) & WRITING) and _is_here(args[0])
        return event in {"os.mkdir", "os.rename", "os.link"} and _is_here(args[0])

    def _one(self, number: int) -> tuple[int | None, bool]:
        """Fork once: None in the child, else its exit status, and whether it met its point."""
        shutil.copytree(self.source, self.room / str(number), symlinks=True)
        reading, writing = os.pipe()
        child = os.fork()
        if not child:
            os.chdir(self.room / str(number))
            speak(self.room, number)
            self._arm(number, writing)
            return None, False
        os.close(writing)
        status = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
        met = os.read(reading, 1)
        os.close(reading)
        return status, bool(met)

    def _arm(self, number: int, writing: int) -> None:
        if self.mode != "cut":
            sys.setprofile(
                _Hook(
                    1 + (number - 1) * self.every, writing, None if self.mode == "kill" else getattr(errno, self.mode)
                )
            )
        elif number <= len(CUTS):
            os.write(writing, b".")
            signal.signal(signal.SIGXFSZ, signal.SIG_DFL)
            resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
            resource.setrlimit(resource.RLIMIT_FSIZE, (CUTS[number - 1],) * 2)


class _Hook:
    """Count operations on files; at one of them, end the process or fail."""

    def __init__(self, limit: int, writing: int, fails: int | None) -> None:
        self.left, self.writing, self.fails = limit, writing, fails

    def __call__(self, frame: object, event: str, arg: object) -> None:
        if event not in ({"c_call", "c_return"} if self.fails is None else {"c_call"}) or not _is_on_a_file(arg):
            return
        self.left -= 1
        if self.left:
            return
        os.write(self.writing, b".")
        if self.fails is None:
            os.kill(os.getpid(), signal.SIGKILL)
        raise OSError(self.fails, os.strerror(self.fails), "a file")


def _is_on_a_file(arg: object) -> bool:
    if getattr(arg, "__name__", "") not in OPERATIONS:
        return False
    home = getattr(arg, "__self__", None)
    return isinstance(home, BufferedWriter | BufferedRandom | FileIO) or getattr(home, "__name__", "") in HOMES


def _is_here(path: object) -> bool:
    return not Path(os.fspath(path)).is_absolute()


def speak(room: Path, number: int) -> None:
    """Let this process write what it says into files of the room."""
    for name, handle in (("out", 1), ("err", 2)):
        file = os.open(room / f"{number}.{name}", os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
        os.dup2(file, handle)
        os.close(file)


def _again(words: list[str], room: Path, folders: list[str]) -> None:
    from scorecard.cli import main

    statuses = []
    for folder in map(Path, folders):
        child = os.fork()
        if not child:
            os.chdir(folder)
            speak(room, int(folder.name))
            _run(main, words)
        statuses.append(os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]))
    (room / "again.json").write_text(json.dumps(statuses))


def _run(main, words: list[str]) -> None:
    sys.argv = ["scorecard", *words]
    try:
        main()
    except SystemExit as end:
        sys.stdout.flush()
        os._exit(end.code or 0)
    os._exit(0)


def _program(mode: str, words: list[str], room: Path, more: list[str]) -> None:
    import scorecard.assessment
    import scorecard.report.page
    import scorecard.workbooks.results  # noqa: F401 - once for all
    from scorecard.cli import main

    if mode == "again":
        _again(words, room, more)
        return
    sys.addaudithook(_Points(mode, room, int(more[0])).hook)
    _run(main, words)


if __name__ == "__main__":
    told = json.loads(sys.argv[1])
    _program(told[0], told[1], Path(told[2]), told[3])
