"""Two runs at once, and clocks that jump: nothing is lost, and nothing odd is said."""

import json
import os
import subprocess
import sys

from order_folder import CRITERIA, DAY, ORDERS, lay_out
from process import scorecard

from scorecard.watching.saves import Saves

SECOND = {"SOURCE_DATE_EPOCH": "1795598400"}


def at_once(folder, *runs, **environment):
    """Run commands at the same time; return their exit statuses and what they said on standard error."""
    started = [
        subprocess.Popen(
            [sys.executable, "-m", "scorecard", *words], cwd=folder, env={**os.environ, **environment},
            stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True,
        )
        for words in runs
    ]  # fmt: skip
    said = [run.communicate(timeout=120)[1] for run in started]
    return [run.returncode for run in started], said


def test_two_scores_of_one_second_keep_both_results_and_the_next_knows_the_outputs_as_its_own(tmp_path):
    folder = lay_out(tmp_path / "mugs")
    other = ("score", "--as-of", "2026-11-26")
    statuses, said = at_once(folder, ("score", *DAY), other, ("score", *DAY), **SECOND)

    assert ([0, 0, 0], [True] * 3) == (statuses, ["kept" not in one for one in said])
    history = sorted((folder / "reports" / "history").iterdir())
    days = [json.loads(path.read_bytes())["as_of"] for path in history]
    assert ["2026-11-25", "2026-11-26"] == sorted(set(days))
    for name in ("shortlist.html", "shortlist.xlsx", "shortlist.json"):
        there = (folder / "reports" / name).read_bytes()
        assert there
    assert (folder / "reports" / "shortlist.json").read_bytes() in [path.read_bytes() for path in history]
    assert "kept" not in scorecard(*other, cwd=folder, **SECOND).err


def test_two_records_at_once_are_both_kept(tmp_path):
    second = ["Brightholm", *ORDERS[1][1:]]
    folder = lay_out(tmp_path / "mugs", Orders=[*ORDERS, second])
    statuses, said = at_once(folder, ("record", "Fern", *DAY), ("record", "Bright", *DAY))

    assert [0, 0] == statuses, said
    kept = json.loads((folder / "memory.json").read_bytes())["records"]
    assert ["Brightholm", "Fernhill"] == sorted(one["maker"] for one in kept)


def test_two_weights_saved_at_once_both_stand(tmp_path):
    folder = lay_out(tmp_path / "mugs")
    statuses, said = at_once(
        folder, ("reweigh", "rating=7", "--save", *DAY), ("reweigh", "minimum=3", "--save", *DAY)
    )  # fmt: skip

    assert [0, 0] == statuses, said
    text = (folder / "criteria.toml").read_text("utf-8")
    assert (True, True) == ("weight = 7" in text, "weight = 3" in text)
    assert 2 == len(list(folder.glob("criteria-before-*.toml")))


def compared_with(folder, *seconds):
    """Score at these times, each with another weight and a day later; return the day that the last compares with."""
    for number, at in enumerate(seconds):
        lay_out(folder, criteria=CRITERIA.replace("weight = 0", f"weight = {number}"))
        ran = scorecard("score", "--as-of", f"2026-11-{number + 24}", "--json", cwd=folder, SOURCE_DATE_EPOCH=str(at))
        assert 0 == ran.status, ran.err
    assert len(seconds) == len(list((folder / "reports" / "history").iterdir()))
    return json.loads(ran.out)["since_last_time"]["compared_with"]


def test_after_the_clock_went_back_each_result_stays_and_the_comparison_is_with_the_run_before(tmp_path):
    assert "2026-11-25" == compared_with(tmp_path / "mugs", 2_100_000_000, 1_795_598_400, 1_795_598_460)


def test_of_two_runs_in_one_second_the_later_is_the_one_compared_with(tmp_path):
    assert "2026-11-25" == compared_with(tmp_path / "mugs", *[1_795_598_400] * 3)


def test_a_file_that_is_older_than_before_was_saved_all_the_same(tmp_path):
    path = tmp_path / "criteria.toml"
    path.write_text("title = 1", "utf-8")
    saves = Saves(path)
    os.utime(path, (0, 0))

    assert [False, True, False] == [saves.look() for _ in range(3)]
