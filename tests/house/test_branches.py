import os
import subprocess
import sys

import pytest
from house import branches
from house.branches import covered, gaps, gaps_in_core, in_all
from house.limits import LEFT_OUT

HALF = "def f(a):\n    if a:\n        return 1\n    return 2\n\n\nf(0)\n"  # 5 lines, 2 branches; one of each is not run


@pytest.fixture
def data(tmp_path):
    package = tmp_path / "scorecard"
    package.mkdir()
    (package / "points.py").write_text(HALF)
    (package / "words.py").write_text("x = 1\n")
    (package / "both.py").write_text("import points\nimport words\n")
    words = [sys.executable, "-m", "coverage", "run", "--branch", "--data-file=cov", "--source=scorecard"]
    environment = {name: text for name, text in os.environ.items() if not name.startswith("COV")}
    subprocess.run([*words, "scorecard/both.py"], cwd=tmp_path, env=environment, check=True)
    return tmp_path / "cov"


def test_lines_and_branches_that_were_not_run_are_told(tmp_path, data):
    found = {each.module: each for each in covered(data, tmp_path)}

    half = found["scorecard/points.py"]
    assert (7, 5, ("3", "2→3")) == (half.of, half.run, half.missing)
    assert found["scorecard/words.py"].is_whole


def test_only_gaps_in_the_core_are_held_against_it(tmp_path, data):
    found = covered(data, tmp_path)

    assert ["scorecard/points.py: 3, 2→3"] == gaps(found)
    assert ["scorecard/points.py: 3, 2→3"] == gaps_in_core(found)
    assert [] == gaps_in_core([each for each in found if each.module == "scorecard/words.py"])
    assert pytest.approx(100 * 8 / 10) == in_all(found)


def test_the_suite_is_run_with_its_limits_left_out_and_its_exit_status_kept(monkeypatch):
    environments = []

    def run(words, *, env, **_):
        environments.append(env)
        return subprocess.CompletedProcess(words, 1)

    monkeypatch.setattr(branches.subprocess, "run", run)

    assert 1 == branches.run_suite()
    assert ["1"] == [each[LEFT_OUT] for each in environments]
