"""Whole commands with their processor seconds and peak memory: each in a process of its own that has loaded the tool.

``python measured.py`` is the process that they are forked from: it loads what every run loads, takes requests as lines
of JSON, and answers each with what the run left. So a run costs what a run costs, but for loading, which is measured
once and added.
"""

import json
import os
import resource
import signal
import subprocess
import sys
import time
from dataclasses import dataclass
from pathlib import Path
from typing import Any

HARD_MEMORY = 1_500 * 2**20  # of addresses, of which a process has more than memory
HARD_SECONDS = 10
MEBIBYTE = 2**20


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """What a run left.

    Parameters
    ----------
    status : its exit status; below 0 where a signal ended it
    out, err : what it printed
    seconds : of the processor, loading included
    mebibytes : the most memory that it held
    """

    status: int
    out: str
    err: str
    seconds: float
    mebibytes: float


class LoadedTool:
    """The tool, loaded once."""

    def __init__(self) -> None:
        pipes: dict[str, Any] = {"stdin": subprocess.PIPE, "stdout": subprocess.PIPE, "text": True}
        env = {**os.environ, "PYTHONWARNINGS": "error", "OPENBLAS_NUM_THREADS": "1"}
        self._process = subprocess.Popen([sys.executable, __file__], env=env, **pipes)
        self.loading = float(self._answer()["seconds"])

    def run(self, *words: str, cwd: Path, room: Path) -> Run:
        """Run a command in a folder; what it prints goes through files in ``room``."""
        request = {"words": words, "cwd": str(cwd), "out": str(room / "out"), "err": str(room / "err")}
        self._process.stdin.write(json.dumps(request) + "\n")
        self._process.stdin.flush()
        answer = self._answer()
        out, err = ((room / name).read_text("utf-8", errors="replace") for name in ("out", "err"))
        seconds = self.loading + answer["seconds"]
        return Run(status=answer["status"], out=out, err=err, seconds=seconds, mebibytes=answer["mebibytes"])

    def close(self) -> None:
        """End the process."""
        self._process.stdin.close()
        self._process.stdout.close()
        self._process.wait(timeout=60)

    def _answer(self) -> dict[str, Any]:
        return json.loads(self._process.stdout.readline())


def run_alone(*words: str, cwd: Path, room: Path) -> Run:
    """Run a command as a process started for it alone.

    A small process starts it, waits for it and answers: what a process held before it became another counts as its
    own peak, and the tests' own may hold more than the limit.
    """
    request = {"words": words, "cwd": str(cwd), "out": str(room / "out"), "err": str(room / "err")}
    command = [sys.executable, __file__, json.dumps(request)]
    said = subprocess.run(command, capture_output=True, text=True, check=True, timeout=30 * HARD_SECONDS)
    out, err = ((room / name).read_text("utf-8", errors="replace") for name in ("out", "err"))
    return Run(out=out, err=err, **json.loads(said.stdout))


def _start_alone(request: dict[str, Any]) -> None:
    """Start the command that was asked for, wait for it, and print what it took."""
    with Path(request["out"]).open("wb") as out, Path(request["err"]).open("wb") as err:
        command = [sys.executable, "-m", "scorecard", *request["words"]]
        process = subprocess.Popen(command, cwd=request["cwd"], stdout=out, stderr=err, preexec_fn=_limit)
        answer = _waited_for(process.pid)
        process.returncode = answer["status"]
    print(json.dumps(answer))


def _limit() -> None:
    """Set what no run may go beyond."""
    resource.setrlimit(resource.RLIMIT_AS, (HARD_MEMORY, HARD_MEMORY))
    resource.setrlimit(resource.RLIMIT_CPU, (HARD_SECONDS, HARD_SECONDS))
    signal.alarm(20 * HARD_SECONDS)  # where it waits for ever


def _waited_for(pid: int) -> dict[str, Any]:
    """Wait for a process, and return its exit status and what it took."""
    _, status, used = os.wait4(pid, 0)
    return {
        "status": os.waitstatus_to_exitcode(status),
        "seconds": used.ru_utime + used.ru_stime,
        "mebibytes": used.ru_maxrss / 1024,
    }


def _run_forked(request: dict[str, Any]) -> None:
    """Be the run that was asked for."""
    from scorecard.cli import main

    _limit()
    os.chdir(request["cwd"])
    for number, name in ((1, "out"), (2, "err")):
        file = os.open(request[name], os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
        os.dup2(file, number)
    sys.argv = ["scorecard", *request["words"]]
    main()


def _serve() -> None:
    """Load the tool, then answer requests until there are no more."""
    import scorecard.cli.scoring
    import scorecard.reading.workbook_cells  # noqa: F401

    print(json.dumps({"seconds": time.process_time()}), flush=True)
    while line := sys.stdin.readline():
        pid = os.fork()
        if pid == 0:
            _run_forked(json.loads(line))
            os._exit(0)
        print(json.dumps(_waited_for(pid)), flush=True)


if __name__ == "__main__":
    if sys.argv[1:]:
        _start_alone(json.loads(sys.argv[1]))
    else:
        _serve()
