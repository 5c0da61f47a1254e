import subprocess
import sys
from pathlib import Path

import pytest
from fuzz import oracle
from hostile.hostile_file import CRITERIA, PLAIN_CSV
from house.limits import LEFT_OUT

from scorecard.errors import InputError, Place, Problem

FUZZER = Path(__file__).parent.parent / "fuzz"


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "criteria.toml").write_bytes(CRITERIA)
    (tmp_path / "makers.csv").write_bytes(PLAIN_CSV)
    return tmp_path


def test_some_inputs_of_the_fuzzer_are_all_taken_well():
    command = [sys.executable, str(FUZZER), "--inputs", "60", "--from", "7000000"]
    done = subprocess.run(command, capture_output=True, text=True, timeout=600)

    assert (0, "60 inputs tried, 0 kinds of find\n") == (done.returncode, done.stdout)


def test_a_sound_folder_has_no_fault(folder):
    assert oracle.fault(folder, thorough=True) is None


def test_the_oracle_sees_a_crash_a_hang_and_a_changed_input(folder, monkeypatch):
    def crash(_):
        raise KeyError("x")

    def hang(_):
        while True:
            pass

    def change(place):
        (place / "makers.csv").write_bytes(b"")
        return InputError([])

    found = []
    monkeypatch.setattr(oracle, "SECONDS", 0.01)
    for stand_in in (crash, hang, change):
        monkeypatch.setattr(oracle, "_read", stand_in)
        found.append(oracle.fault(folder, thorough=False).partition(":")[0])

    assert ["KeyError", "too long", "an input was changed"] == found


def test_the_oracle_sees_what_takes_much_time_or_memory(folder, monkeypatch):
    monkeypatch.delenv(LEFT_OUT, raising=False)
    with monkeypatch.context() as slow:
        slow.setattr(oracle.time, "process_time", iter([0.0, oracle.SECONDS + 0.1]).__next__)
        assert "slow" == oracle.fault(folder, thorough=False)
    monkeypatch.setattr(oracle, "_most_held", iter([0, oracle.MEBIBYTES + 1]).__next__)

    assert "much memory" == oracle.fault(folder, thorough=False)


def test_the_oracle_sees_a_problem_without_a_place(folder, monkeypatch):
    nowhere = Problem(code="odd", place=Place(), found="something", wanted="something else")
    monkeypatch.setattr(oracle, "_read", lambda _: InputError([nowhere]))

    assert "odd: says too little" == oracle.fault(folder, thorough=False)
