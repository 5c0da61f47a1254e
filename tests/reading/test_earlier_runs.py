"""What changed since the last other run in a folder's history."""

import json
from copy import deepcopy

import pytest
from cases import AS_OF, rated

from scorecard.assessment import assess
from scorecard.reading.earlier_runs import MOST_BYTES, NEEDED, since_last_time
from scorecard.report.since import since_of as shown

JUNK = (
    None,
    True,
    -1,
    1e999,
    10**400,
    "x",
    "\ud800",
    "\x1b[2J",
    [],
    [[]],
    [None],
    {},
    {"low": "x"},
    {"low": 2, "high": 1},
)


def case_of(rating):
    return rated((1,), {"Fernhill": [rating]})


def result_of(rating):
    return assess(case_of(rating), as_of=AS_OF).as_json()


def since_of(folder, rating):
    return since_last_time(folder, result_of(rating), case_of(rating).criteria.criteria)


def run(folder, day, rating):
    """Leave a run's result in a history, as the command does."""
    folder.mkdir(exist_ok=True)
    changed = since_of(folder, rating)
    result = result_of(rating) | ({} if changed is None else {"since_last_time": changed})
    (folder / f"shortlist-2026-11-{day:02}.json").write_text(json.dumps(result), "utf-8")
    return changed


def scores(changed):
    return [(one["score_before"], one["score"]) for one in changed["makers"]]


def test_a_folder_without_history_has_no_earlier_run(tmp_path):
    assert since_of(tmp_path / "history", 30) is None


def test_the_run_before_is_compared_with(tmp_path):
    run(tmp_path, 1, 10)

    assert [(10.0, 30.0)] == scores(since_of(tmp_path, 30))


def test_running_again_unchanged_tells_the_same(tmp_path):
    found = [run(tmp_path, day, rating) for day, rating in ((1, 10), (2, 30), (3, 30), (4, 30))]

    assert (None, found[1], found[1]) == (found[0], found[2], found[3])


def test_a_first_run_repeated_has_nothing_to_tell(tmp_path):
    assert [None, None] == [run(tmp_path, 1, 10), run(tmp_path, 2, 10)]


@pytest.mark.parametrize("content", ["", "[]", "{}", "null", '{"schema": "scorecard/1"}', "{" * 5000])
def test_a_file_that_is_no_result_is_passed_over(tmp_path, content):
    run(tmp_path, 1, 10)
    (tmp_path / "shortlist-2026-11-02.json").write_text(content, "utf-8")

    assert [(10.0, 30.0)] == scores(since_of(tmp_path, 30))


def test_a_result_too_long_to_compare_is_passed_over(tmp_path):
    (tmp_path / "a.json").write_text(json.dumps(result_of(10) | {"title": "x" * MOST_BYTES}), "utf-8")

    assert since_of(tmp_path, 30) is None


def places(value, path=()):
    """Yield the path of everything inside a value of JSON, itself too."""
    yield path
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, one in inner:
        yield from places(one, (*path, key))


def with_junk(result, path, junk):
    """Return a result in which something else stands at one place."""
    changed = deepcopy(result)
    inside = changed
    for key in path[:-1]:
        inside = inside[key]
    inside[path[-1]] = junk
    return changed


def spoilt(result, keys):
    """Yield a result with every kind of junk in every place under some of its keys."""
    for key in keys:
        for path in places(result[key], (key,)):
            yield from (with_junk(result, path, junk) for junk in JUNK)


def told(folder, content, rating):
    """Return what a run would write and show after a run of some content."""
    (folder / "shortlist-2026-11-02.json").write_text(json.dumps(content), "utf-8")
    found = since_of(folder, rating)
    if found is not None:
        json.dumps(found, ensure_ascii=False, allow_nan=False).encode()
        assert "\x1b" not in found["compared_with"]
        shown({"since_last_time": found})
    return found


def test_junk_anywhere_in_an_earlier_result_does_no_harm(tmp_path):
    run(tmp_path, 1, 10)

    assert all(told(tmp_path, content, 30) for content in spoilt(result_of(10), NEEDED))


def test_junk_anywhere_in_what_is_told_again_does_no_harm(tmp_path):
    run(tmp_path, 1, 10)
    good = result_of(30) | {"since_last_time": since_of(tmp_path, 30)}

    assert all(told(tmp_path, content, 30) for content in spoilt(good, ["since_last_time"]))


@pytest.mark.parametrize("junk", [5, "x", None, {"leaders_before": 1}])
def test_what_is_told_again_is_passed_over_where_it_is_malformed(tmp_path, junk):
    run(tmp_path, 1, 10)
    (tmp_path / "shortlist-2026-11-02.json").write_text(json.dumps(result_of(30) | {"since_last_time": junk}), "utf-8")

    assert [(10.0, 30.0)] == scores(since_of(tmp_path, 30))
