"""Mutation testing on a small project: one fault that its tests see, one that they do not, one that never ends."""

import os
import subprocess
import sys

from house.sources import ROOT

MODULE = '''"""A module."""
LIMIT = 3


def passes(number):
    """Say whether a number passes."""
    return number < LIMIT


def count(number):
    """Count down."""
    while number > 0:
        number -= 1
    return number
'''
TESTS = """from scorecard.a import count, passes


def test_small_passes_and_great_does_not():
    assert passes(2)
    assert not passes(4)


def test_it_ends_at_nothing():
    assert 0 == count(2)
"""
RUN = """from pathlib import Path
from house.mutation import run
for tried in run(Path("scorecard/a.py"), ["tests/test_a.py"]):
    print(tried.outcome, "|", tried.text)
"""
SETTINGS = "from hypothesis import settings\nsettings.register_profile('house')\n"


def test_what_the_tests_do_not_see_survives(tmp_path):
    (tmp_path / "scorecard").mkdir()
    (tmp_path / "scorecard" / "__init__.py").write_text("")
    (tmp_path / "tests").mkdir()
    (tmp_path / "pytest.ini").write_text("[pytest]\nmarkers =\n  browser\n  office\n  peers\n")
    (tmp_path / "conftest.py").write_text(SETTINGS)
    (tmp_path / "scorecard" / "a.py").write_text(MODULE)
    (tmp_path / "tests" / "test_a.py").write_text(TESTS)
    environment = {**os.environ, "PYTHONPATH": f"{tmp_path}:{ROOT / 'tests'}", "MUTANT_SECONDS": "1"}

    done = subprocess.run([sys.executable, "-c", RUN], cwd=tmp_path, env=environment, capture_output=True, text=True)

    assert "" == done.stderr
    said = dict(reversed(line.split(" | ")) for line in done.stdout.splitlines() if " | " in line)
    assert "survived" == said["Lt becomes LtE: return number < LIMIT"]  # nobody asks about 3 itself
    assert "killed" == said["Lt becomes GtE: return number < LIMIT"]
    assert "survived" == said["3 becomes 4: LIMIT = 3"]
    assert "killed" == said["3 becomes 2: LIMIT = 3"]
    assert "timed out" == said["Sub becomes Add: number -= 1"]
    assert "killed" == said["returns None: return number"]
