"""Branch coverage: the suite run once with it, processes that the tests start counted, and what it comes to."""

import json
import os
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path

from house.core import core_modules
from house.limits import LEFT_OUT
from house.sources import ROOT

LEAST = 95.0
DATA = ROOT / ".coverage"


@dataclass(frozen=True, slots=True, kw_only=True)
class Covered:
    """How many lines and branches of one module there are, how many were run, and the lines that were not."""

    module: str
    of: int
    run: int
    missing: tuple[str, ...] = ()

    @property
    def is_whole(self) -> bool:
        """Whether every line and branch was run."""
        return self.run == self.of


def run_suite() -> int:
    """Run all tests with branch coverage, on all processors, and return the exit status of pytest."""
    words = ["-m", "pytest", "-q", "-n", "auto", "--dist", "worksteal", "--cov=scorecard", "--cov-report="]
    environment = {**os.environ, "COVERAGE_FILE": str(DATA), "PYTHONPATH": str(ROOT), LEFT_OUT: "1"}
    return subprocess.run([sys.executable, *words], cwd=ROOT, env=environment).returncode


def covered(data: Path = DATA, root: Path = ROOT) -> list[Covered]:
    """Return the coverage of every module in a data file."""
    with tempfile.TemporaryDirectory() as folder:
        report = Path(folder) / "coverage.json"
        words = ["-m", "coverage", "json", "-q", "--include=scorecard/*", f"--data-file={data}", "-o", str(report)]
        subprocess.run([sys.executable, *words], cwd=root, check=True)
        files = json.loads(report.read_text("utf-8"))["files"]
    return [_of(name, found) for name, found in sorted(files.items())]


def _of(name: str, found: dict) -> Covered:
    """Return the coverage of one module from coverage.py's own report."""
    summary = found["summary"]
    lines = [str(line) for line in found["missing_lines"]]
    lines += [f"{first}→{'out' if then < 0 else then}" for first, then in found.get("missing_branches", [])]
    return Covered(
        module=name,
        of=summary["num_statements"] + summary.get("num_branches", 0),
        run=summary["covered_lines"] + summary.get("covered_branches", 0),
        missing=tuple(lines),
    )


def in_all(modules: list[Covered]) -> float:
    """Return how many of 100 lines and branches were run."""
    return 100 * sum(each.run for each in modules) / sum(each.of for each in modules)


def gaps_in_core(modules: list[Covered], root: Path = ROOT) -> list[str]:
    """Return the modules of the core of which not all was run, with their lines."""
    core = {path.as_posix() for path in core_modules(root)}
    return gaps([each for each in modules if each.module in core])


def gaps(modules: list[Covered]) -> list[str]:
    """Return the modules of which not all was run, with their lines and branches."""
    return [f"{each.module}: {', '.join(each.missing)}" for each in modules if not each.is_whole]
