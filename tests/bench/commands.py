"""Whole commands against public yardsticks, pair by pair in one run: seconds, processor seconds and peak memory."""

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from statistics import median

from inputs import folder

PYTHON = sys.executable
SCORECARD = [PYTHON, "-m", "scorecard"]

# both sides keep their compiled code, as they do once installed, and run on one thread and one core
ENVIRONMENT = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
ENVIRONMENT["OPENBLAS_NUM_THREADS"] = "1"
ENVIRONMENT["PYTHONPATH"] = str(Path(__file__).parents[2])  # the package that this folder belongs to

NO_OP = """
import typer
app = typer.Typer(add_completion=False, rich_markup_mode=None)
@app.callback()
def main() -> None: "Do nothing."
@app.command()
def nothing() -> None: "Do nothing."
app()
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """A command, its yardstick, and how many times as long (or as much memory) it may take."""

    name: str
    command: list[str]
    yardstick: list[str]
    limit: float
    memory_limit: float | None = None
    pairs: int = 7


@dataclass(frozen=True, slots=True)
class Run:
    """One whole process: seconds by the clock and of the processor, and peak memory in MiB."""

    seconds: float
    processor: float
    memory: float


def timed(command: list[str]) -> Run:
    """Run one whole process, which must end well."""
    start = time.perf_counter()
    child = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, env=ENVIRONMENT)
    said = child.stderr.read() if child.stderr else b""
    _, status, used = os.wait4(child.pid, 0)
    child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode:
        raise SystemExit(f"{' '.join(command)} ended with {child.returncode}: {said.decode()[-2000:]}")
    return Run(time.perf_counter() - start, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024)


def compare(pair: Pair) -> list[str]:
    """Run command and yardstick in turn, after one run of each that does not count; return rows of the table."""
    timed(pair.command), timed(pair.yardstick)
    runs = [(timed(pair.command), timed(pair.yardstick)) for _ in range(pair.pairs)]
    rows = [row(pair.name, [ours.seconds / theirs.seconds for ours, theirs in runs], pair.limit)]
    rows.append(row("  the same in processor seconds", [a.processor / b.processor for a, b in runs], pair.limit))
    if pair.memory_limit:
        rows.append(row("  the same in peak memory", [a.memory / b.memory for a, b in runs], pair.memory_limit))
    return rows


def row(name: str, ratios: list[float], limit: float) -> str:
    """Return one row: what, median ratio, least, greatest, limit, and whether the median keeps it."""
    kept = "kept" if median(ratios) <= limit else "MISSED"
    return f"{name:<62} {median(ratios):>7.2f} {min(ratios):>7.2f} {max(ratios):>7.2f} {limit:>8.2f}  {kept}"


def pairs(room: Path) -> list[Pair]:
    """Return the pairs, with inputs laid out in a room of their own."""
    small, large = folder(room / "small", 30), folder(room / "large", 5_000)
    huge = folder(room / "huge", 100_000, as_csv=True)
    no_op = room / "no_op.py"
    no_op.write_text(NO_OP, "utf-8")
    read_excel = f"import pandas; pandas.read_excel({str(large / 'makers.xlsx')!r}, engine='openpyxl')"
    read_csv = (
        f"import pandas, numpy; t = pandas.read_csv({str(huge / 'makers.csv')!r}); "
        "numpy.nan_to_num(t.select_dtypes('number').to_numpy()[:, :8]) @ numpy.ones(8)"
    )
    on = [*SCORECARD, "score", "--folder"]
    return [
        Pair(name="--help / that of a command that does nothing", command=[*SCORECARD, "--help"],
             yardstick=[PYTHON, str(no_op), "--help"], limit=1.4, pairs=15),
        Pair(name="score, 30 makers / import pandas, openpyxl", command=[*on, str(small)],
             yardstick=[PYTHON, "-c", "import pandas, openpyxl"], limit=1.0, pairs=21),
        Pair(name="check, 5,000 makers / pandas.read_excel", command=[*SCORECARD, "check", "--folder", str(large)],
             yardstick=[PYTHON, "-c", read_excel], limit=1.5),
        Pair(name="score, 5,000 makers / pandas.read_excel", command=[*on, str(large)],
             yardstick=[PYTHON, "-c", read_excel], limit=2.5),
        Pair(name="score, 100,000 makers in a .csv / read_csv and one product",
             command=[*on, str(huge), "--rows", "100000"], yardstick=[PYTHON, "-c", read_csv],
             limit=2.0, memory_limit=1.8),
    ]  # fmt: skip


@contextmanager
def one_core() -> Iterator[None]:
    """Keep what is started within to one core: a library that reads on a thread of its own gains nothing by it."""
    if not hasattr(os, "sched_setaffinity"):  # Linux alone has it
        yield
        return
    cores = os.sched_getaffinity(0)
    os.sched_setaffinity(0, {max(cores)})
    try:
        yield
    finally:
        os.sched_setaffinity(0, cores)


def main(only: str = "") -> None:
    """Print a row for each pair whose name holds the words given."""
    with tempfile.TemporaryDirectory() as room, one_core():
        for pair in pairs(Path(room)):
            if only in pair.name:
                print("\n".join(compare(pair)), flush=True)


if __name__ == "__main__":
    main(*sys.argv[1:2])
