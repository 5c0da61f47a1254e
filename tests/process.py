"""The command line as a whole process, in a folder of its own."""

import json
import os
import subprocess
import sys
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path
from typing import Any

STARTED = f"{sys.executable} -m scorecard"  # how the commands that it suggests begin


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


def scorecard(*words: str, cwd: Path, **environment: str) -> Ran:
    """Run the tool in a folder."""
    env = {**os.environ, "PYTHONWARNINGS": "error", **environment}
    done = subprocess.run(
        [sys.executable, "-m", "scorecard", *words], cwd=cwd, env=env, capture_output=True, text=True, timeout=120
    )
    return Ran(status=done.returncode, out=done.stdout, err=done.stderr)
