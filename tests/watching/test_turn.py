"""One watch at a time on one folder."""

import subprocess
import sys

import pytest

from scorecard.errors import UsageError
from scorecard.watching.turn import turn

HOLDS = """
import sys, time
from pathlib import Path
from scorecard.watching.turn import turn
with turn(Path(sys.argv[1]), "its report is at http://127.0.0.1:1/"):
    print("held", flush=True)
    time.sleep(60)
"""


@pytest.fixture
def path(tmp_path):
    return tmp_path / "reports" / ".watching"


@pytest.fixture
def other(path):
    """Another process that has the turn."""
    words = [sys.executable, "-c", HOLDS, str(path)]
    with subprocess.Popen(words, stdout=subprocess.PIPE, text=True) as process:
        assert "held\n" == process.stdout.readline()
        yield process
        process.kill()


def test_a_second_watch_is_told_of_the_first_in_one_sentence(other, path):
    with pytest.raises(UsageError, match=r"watched already: its report is at http://127\.0\.0\.1:1/\. End that watch"):
        turn(path, "mine").__enter__()


def test_the_turn_of_a_killed_watch_is_free(other, path):
    other.kill()
    other.wait()

    with turn(path, "mine"):
        assert "mine" == path.read_text("utf-8")


def test_at_the_end_nothing_is_left(path):
    with turn(path, "mine"):
        pass

    assert [] == list(path.parent.iterdir())


def test_the_turn_can_be_taken_again(path):
    for words in ("a long word for the first", "next"):
        with turn(path, words):
            assert words == path.read_text("utf-8")


def test_where_nothing_can_be_written_there_is_no_turn_to_take(tmp_path):
    (tmp_path / "reports").write_text("a file", "utf-8")

    with turn(tmp_path / "reports" / ".watching", "mine"):
        assert (tmp_path / "reports").is_file()


def test_a_folder_that_is_removed_meanwhile_is_no_matter(path, tmp_path):
    with turn(path, "mine"):
        path.parent.rename(tmp_path / "away")

    assert not path.exists()
