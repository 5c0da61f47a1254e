import os
import subprocess
import sys

import pytest
from house.limits import LEFT_OUT
from house.sources import ROOT

ASKED = "from house.limits import is_within\n\nprint(is_within(1, 1), is_within(2, 1))\n"
PLAIN = [sys.executable, "asked.py"]
TRACED = [sys.executable, "-m", "coverage", "run", "--data-file=cov", "asked.py"]


def said(folder, words, **environment):
    """Return what a process says of a limit that is just kept, and of one that is missed."""
    (folder / "asked.py").write_text(ASKED)
    ours = {
        name: text for name, text in os.environ.items() if not name.startswith("COV") and name not in {"CI", LEFT_OUT}
    }
    env = {**ours, "PYTHONPATH": str(ROOT / "tests"), **environment}
    return subprocess.run(words, cwd=folder, env=env, stdout=subprocess.PIPE, text=True, check=True).stdout.strip()


def test_with_coverage_limits_can_be_left_out(tmp_path):
    assert "True True" == said(tmp_path, TRACED, **{LEFT_OUT: "1"})


@pytest.mark.parametrize(
    ("words", "environment"),
    [
        (PLAIN, {}),
        (PLAIN, {LEFT_OUT: "1"}),
        (PLAIN, {LEFT_OUT: "1", "CI": "true"}),
        (TRACED, {}),
        (TRACED, {LEFT_OUT: "1", "CI": "true"}),
    ],
)
def test_neither_an_ordinary_run_nor_ci_can_leave_limits_out(tmp_path, words, environment):
    assert "True False" == said(tmp_path, words, **environment)
