"""Files of every released format are read as they were then.

The files under a number (that of the format) were made by the version that brought it, and are never changed; a release
that adds to a format adds a folder. ``values.json`` holds what that version read, by the names that the code had: today
more may be read, but nothing otherwise. A name that the code has changed since goes into ``RENAMED``.
"""

import dataclasses
import json
import shutil
from collections.abc import Mapping
from datetime import date
from pathlib import Path

import numpy as np
import pytest
from process import scorecard

from scorecard.letters.wording import read_wording
from scorecard.reading.criteria_file import read_criteria
from scorecard.reading.folder import read_folder

HERE = Path(__file__).parent
FORMATS = sorted(path.name for path in HERE.iterdir() if path.name.isdecimal())
AS_OF = date(2026, 11, 25)
RENAMED: dict[str, str] = {}  # as it was then: as it is now
NOT_READ = {  # worked out or said, not read; places are held by the codes below
    *("place", "places", "source", "sources", "costed", "latest_orders", "schedule", "warnings", "problems"),
    *("legal", "seen", "relief", "without_border", "given"),
}


def plain(value):
    """Return a value as JSON can hold it, without what was not read."""
    if dataclasses.is_dataclass(value):
        fields = (one.name for one in dataclasses.fields(value))
        return {name: plain(getattr(value, name)) for name in fields if name not in NOT_READ}
    if isinstance(value, Mapping):
        return {str(key): plain(one) for key, one in value.items() if key not in NOT_READ}
    if isinstance(value, np.ndarray):
        return [None if one != one else str(one) for one in value.tolist()]
    if isinstance(value, frozenset | set):
        return sorted(map(str, value))
    if isinstance(value, list | tuple):
        return [plain(one) for one in value]
    return value if isinstance(value, str | bool | type(None)) else str(value)


def otherwise(then, now, path=""):
    """Yield where what was read then is not what is read now; what is there besides does no harm."""
    if isinstance(then, dict) and isinstance(now, dict):
        for key, value in then.items():
            name = RENAMED.get(key, key)
            yield from otherwise(value, now[name], f"{path}.{key}") if name in now else [f"{path}.{key} is gone"]
    elif isinstance(then, list) and isinstance(now, list) and len(then) == len(now):
        for at, pair in enumerate(zip(then, now, strict=True)):
            yield from otherwise(*pair, f"{path}[{at}]")
    elif then != now:
        yield f"{path}: {then!r} then, {now!r} now"


def laid_out(number, folder, makers="makers.xlsx"):
    """Lay out a sourcing folder of a format's files."""
    folder.mkdir(exist_ok=True)
    for name in ("criteria.toml", makers, "memory.json"):
        shutil.copy(HERE / number / name, folder)
    return folder


def read(number, folder):
    """Return all that is read of the files of a format, as JSON can hold it."""
    files = HERE / number
    case = read_folder(laid_out(number, folder / "xlsx"), as_of=AS_OF)
    listed = read_folder(laid_out(number, folder / "csv", "makers.csv"), as_of=AS_OF)
    weighed = {path.stem: read_criteria(path) for path in sorted(files.glob("criteria-*.toml"))}
    return {
        "folder": plain(case),
        "days": plain(read_criteria(files / "criteria.toml").schedule),
        "makers.csv": plain(listed.table),
        "weights": {name: {one.key: f"{one.weight:.9f}" for one in found.criteria} for name, found in weighed.items()},
        "noted": {f"{one.code}: {one.place}": True for one in (*case.warnings, *listed.warnings)},
    }


@pytest.mark.parametrize("number", FORMATS)
def test_files_of_a_released_format_are_read_to_the_same_values(number, tmp_path):
    then = json.loads((HERE / number / "values.json").read_text("utf-8"))

    assert [] == list(otherwise(then, read(number, tmp_path)))


@pytest.mark.parametrize("number", FORMATS)
def test_a_criteria_file_of_a_released_format_has_no_problem(number):
    for path in sorted((HERE / number).glob("criteria*.toml")):
        assert () == read_criteria(path).problems


def paths(value, path=""):
    """Yield the path of every key of a JSON value; the parts of a list count as one."""
    parts = [(f"{path}.{key}", one) for key, one in value.items()] if isinstance(value, dict) else []
    parts += [(f"{path}[]", one) for one in value] if isinstance(value, list) else []
    for name, one in parts:
        yield name
        yield from paths(one, name)


@pytest.mark.parametrize("number", FORMATS)
def test_every_key_of_a_released_result_is_still_there(number, tmp_path):
    then = json.loads((HERE / number / "score.json").read_text("utf-8"))
    now = json.loads(
        scorecard("score", "--as-of", AS_OF.isoformat(), "--json", cwd=laid_out(number, tmp_path / "f")).out
    )

    assert set() == set(paths(then)) - set(paths(now))
    assert then["schema"] == now["schema"]


@pytest.mark.parametrize("number", FORMATS)
def test_a_result_of_a_released_format_is_compared_with(number, tmp_path):
    folder = laid_out(number, tmp_path / "f")
    (folder / "reports" / "history").mkdir(parents=True)
    shutil.copy(HERE / number / "score.json", folder / "reports/history/2026-11-25T09-20-00Z.json")
    criteria = (folder / "criteria.toml").read_text("utf-8")
    (folder / "criteria.toml").write_text(criteria.replace("weight = 15", "weight = 0", 1), "utf-8")
    since = json.loads(scorecard("score", "--as-of", "2026-11-26", "--json", cwd=folder).out)["since_last_time"]

    assert ("2026-11-25", ["Ottergate Textile"]) == (since["compared_with"], since["leaders_before"])
    assert [85.8, 52.2, 41.7] == [
        round(one["score_before"], 1) for one in sorted(since["makers"], key=lambda one: one["rank_before"])
    ]


@pytest.mark.parametrize("number", FORMATS)
def test_what_the_tool_wrote_is_told_from_what_the_user_changed(number, tmp_path):
    folder = laid_out(number, tmp_path / "f")
    (folder / "reports").mkdir()
    shutil.copy(HERE / number / "written.json", folder / "reports/.written.json")
    shutil.copy(HERE / number / "score.json", folder / "reports/shortlist.json")
    (folder / "reports/shortlist.html").write_text("changed", "utf-8")
    said = scorecard("score", "--as-of", AS_OF.isoformat(), cwd=folder)

    kept = sorted(path.name for path in (folder / "reports").iterdir() if "edited" in path.name)
    assert (0, ["shortlist-edited-1.html"]) == (said.status, kept), said.err


@pytest.mark.parametrize("number", FORMATS)
def test_a_users_own_text_is_used_as_it_is(number, tmp_path):
    shutil.copy(HERE / number / "enquiry-short.txt", tmp_path)

    assert (HERE / number / "enquiry-short.txt").read_text("utf-8") == read_wording(tmp_path).short


@pytest.mark.parametrize("number", FORMATS)
def test_a_second_brief_starts_from_a_folder_of_a_released_format(number, tmp_path):
    laid_out(number, tmp_path / "before")
    said = scorecard("start", "again", "--from", "before", "--as-of", AS_OF.isoformat(), cwd=tmp_path)
    case = read_folder(tmp_path / "again", as_of=AS_OF)

    assert (0, ("Ottergate Textile", "Sallowfield Linen", "Pinchbeck Wharf")) == (said.status, case.table.makers)
    assert 2 == len(case.memory)


def test_a_value_that_is_read_otherwise_is_found():
    assert [".a: 1 then, 2 now", ".b is gone", ".c: [1] then, [1, 2] now"] == list(
        otherwise({"a": 1, "b": 3, "c": [1], "d": {"e": 4}}, {"a": 2, "c": [1, 2], "d": {"e": 4, "f": 5}})
    )
