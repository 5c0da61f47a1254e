"""The last other run in a folder's history."""

import json

import pytest
from cases import AS_OF, rated

from scorecard.assessment import assess
from scorecard.reading.earlier_runs import last_other_run


def result_of(*ratings):
    return assess(rated((1,), {"Fernhill": [ratings[0]]}), as_of=AS_OF).as_json()


def put(folder, name, result):
    folder.mkdir(exist_ok=True)
    (folder / name).write_text(json.dumps(result), "utf-8")


def test_a_folder_without_history_has_no_earlier_run(tmp_path):
    assert last_other_run(tmp_path / "history", result_of(3)) is None


def test_the_newest_other_result_is_taken_and_the_same_one_passed_over(tmp_path):
    for day, rating in ((1, 1), (2, 2), (3, 3)):
        put(tmp_path, f"shortlist-2026-11-0{day}.json", result_of(rating))

    assert result_of(2) == last_other_run(tmp_path, result_of(3))


@pytest.mark.parametrize("content", ["", "[]", "{}", "null", '{"schema": "scorecard/1"}', "{" * 5000])
def test_a_file_that_is_no_result_is_passed_over(tmp_path, content):
    (tmp_path / "a.json").write_text(content, "utf-8")

    assert last_other_run(tmp_path, result_of(3)) is None
