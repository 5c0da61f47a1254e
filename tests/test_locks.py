"""One run at a time writes in a folder, and one that waits too long says so."""

import subprocess
import sys

import pytest

from scorecard import locks
from scorecard.errors import WriteError

COUNTS = """
import sys
from pathlib import Path
from scorecard.locks import alone_in

number = Path(sys.argv[1]) / "number"
for _ in range(200):
    with alone_in(number.parent):
        number.write_text(str(int(number.read_text()) + 1))
"""
HOLDS = """
import sys
from pathlib import Path
from scorecard.locks import alone_in

with alone_in(Path(sys.argv[1])):
    print("held", flush=True)
    sys.stdin.read()
"""


def test_two_runs_that_count_in_one_file_lose_nothing(tmp_path):
    (tmp_path / "number").write_text("0")
    runs = [subprocess.Popen([sys.executable, "-c", COUNTS, str(tmp_path)]) for _ in range(2)]

    assert [0, 0] == [run.wait(timeout=60) for run in runs]
    assert "400" == (tmp_path / "number").read_text()


def test_a_run_that_another_holds_up_for_too_long_says_so(tmp_path, monkeypatch):
    monkeypatch.setattr(locks, "WAIT", 0.1)
    pipes = {"stdin": subprocess.PIPE, "stdout": subprocess.PIPE}
    with subprocess.Popen([sys.executable, "-c", HOLDS, str(tmp_path)], **pipes) as other:
        other.stdout.readline()
        with (
            pytest.raises(WriteError, match=r"Another run is writing in .*\. Let it end, and try again"),
            locks.alone_in(tmp_path),
        ):
            pass
        other.kill()


def test_where_nothing_can_be_locked_it_goes_on(tmp_path, monkeypatch):
    def unsupported(_handle):
        raise OSError("not here")

    monkeypatch.setattr(locks, "lock", unsupported)
    with locks.alone_in(tmp_path), locks.alone_in(tmp_path / "nowhere"):
        (tmp_path / "written").write_bytes(b"")

    assert ["written"] == [path.name for path in tmp_path.iterdir()]


def test_what_fails_inside_is_not_swallowed(tmp_path):
    with pytest.raises(OSError, match="inside"), locks.alone_in(tmp_path):
        raise OSError("inside")
