"""The command line as a whole process, in a folder of its own."""

import json
import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path
from queue import Empty, Queue
from threading import Thread
from typing import Any

_PYTHON = Path(sys.executable)
_NAME_DOES = Path(shutil.which(_PYTHON.name) or "").absolute() == _PYTHON.absolute()
STARTED = f"{_PYTHON.name if _NAME_DOES else _PYTHON} -m scorecard"  # how the commands that it suggests begin


@dataclass(frozen=True, slots=True, kw_only=True)
class Ran:
    """What a run left: its exit status, and what it said on either stream."""

    status: int
    out: str
    err: str

    @property
    def last(self) -> str:
        """The last line on standard output."""
        return self.out.rstrip("\n").split("\n")[-1]


def schema_of(command: str) -> Any:
    """Return the published JSON Schema of what a command prints."""
    return json.loads(files("scorecard").joinpath("schemas", f"{command}.json").read_text("utf-8"))


class Watch:
    """A watch that runs: its lines as they come, and its end."""

    def __init__(self, *words: str, cwd: Path) -> None:
        env = {**os.environ, "PYTHONUNBUFFERED": "1"}
        command = [sys.executable, "-m", "scorecard", "watch", *words]
        pipes = {"stdout": subprocess.PIPE, "stderr": subprocess.STDOUT}
        self.process = subprocess.Popen(command, cwd=cwd, env=env, text=True, **pipes)
        self.lines: list[str] = []
        self._coming: Queue[str] = Queue()
        Thread(target=lambda: [self._coming.put(line) for line in self.process.stdout or ()], daemon=True).start()

    def until(self, words: str) -> str:
        """Return the first line to come that holds these words; an error after a minute without."""
        while True:
            try:
                line = self._coming.get(timeout=60)
            except Empty:
                raise AssertionError(f"no line with {words!r} after {self.lines}") from None
            self.lines.append(line.rstrip())
            if words in line:
                return line

    def address(self) -> str:
        """Return where the report is served."""
        return self.until("Report that follows: ").partition("follows: ")[2].split(" ")[0]

    def stop(self) -> Ran:
        """Press Ctrl-C, and return what is left of the output."""
        self.process.send_signal(signal.SIGINT)
        status = self.process.wait(timeout=60)
        time.sleep(0.2)
        while not self._coming.empty():
            self.lines.append(self._coming.get().rstrip())
        return Ran(status=status, out="\n".join(self.lines), err="")


@contextmanager
def watching(*words: str, cwd: Path) -> Iterator[Watch]:
    """Watch a folder while the block runs."""
    watch = Watch(*words, cwd=cwd)
    try:
        yield watch
    finally:
        if watch.process.poll() is None:
            watch.process.kill()
        watch.process.wait(timeout=60)
        watch.process.stdout.close()


def scorecard(*words: str, cwd: Path, **environment: str) -> Ran:
    """Run the tool in a folder."""
    env = {**os.environ, "PYTHONWARNINGS": "error", **environment}
    encoding = environment.get("PYTHONIOENCODING")
    pipes = {"capture_output": True, "text": True, "encoding": encoding, "timeout": 120}
    done = subprocess.run([sys.executable, "-m", "scorecard", *words], cwd=cwd, env=env, **pipes)
    return Ran(status=done.returncode, out=done.stdout, err=done.stderr)
