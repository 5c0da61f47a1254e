import json
import re
from hashlib import sha256
from math import isnan

import pytest
from hostile.corpus import FILES
from hostile.measured import LoadedTool, run_alone
from house.limits import is_within

from scorecard.reading.folder import read_folder

SECONDS, MEBIBYTES = 2.0, 300
TODAY = "2026-11-25"
CELL = re.compile(r"[A-Z]{1,3}[1-9]\d{0,6}")
IDS = [file.name for file in FILES]
LIGHT = [file for file in FILES if not file.is_heavy]
HEAVY = [file for file in FILES if file.is_heavy]
READABLE = [file for file in LIGHT if file.is_read]
SCORED = [file for file in READABLE if not file.file.endswith(".csv")]


def each(files):
    """Return a decorator of a test of each of these files."""
    return pytest.mark.parametrize("file", files, ids=[file.name for file in files])


@pytest.fixture(scope="module")
def tool():
    loaded = LoadedTool()
    yield loaded
    loaded.close()


def laid_out(folder, file):
    """Lay a hostile file into a folder; return what stands there."""
    folder.mkdir(exist_ok=True)
    for name, content in file.contents().items():
        (folder / name).write_bytes(content)
    return standing(folder)


def standing(folder):
    """Return the digest of every file in a folder."""
    return {path.name: sha256(path.read_bytes()).hexdigest() for path in folder.iterdir() if path.is_file()}


def told(problem):
    """Return a problem as the corpus writes it."""
    place = problem["key"] or "!".join(part for part in (problem["sheet"], problem["cell"]) if part)
    return f"{place} {problem['code']}".strip()


def is_sentence(problem):
    """Say whether a problem names its file, what was found and what to do, in printable words, without a traceback."""
    words = f"{problem['found']}|{problem['wanted']}"
    is_placed = problem["cell"] is None or CELL.fullmatch(problem["cell"])
    return problem["file"] and is_placed and problem["wanted"] and words.isprintable() and "Error" not in words


def test_the_corpus_is_of_at_least_a_hundred_files_each_with_a_name_of_its_own():
    assert len(set(IDS)) == len(IDS) >= 100


def assert_sound(file, run, before, folder):
    """Assert that a check refused or read a file as it should, and left everything as it was."""
    result = json.loads(run.out)
    assert (0 if file.is_read else 3, "") == (run.status, run.err)
    assert file.problems in {tuple(map(told, result["problems"])), ("*",)}
    assert all(map(is_sentence, result["problems"] + result["warnings"]))
    if file.warnings is not None:
        assert list(file.warnings) == [told(one) for one in result["warnings"] if one["code"] != "read-as"]
    assert before == standing(folder)
    assert is_within(run.seconds, SECONDS)
    assert is_within(run.mebibytes, MEBIBYTES)


@each(LIGHT)
def test_each_is_refused_or_read_with_its_place_in_little_time_and_memory(file, tool, tmp_path):
    before = laid_out(tmp_path / "folder", file)
    run = tool.run("check", "--json", "--as-of", TODAY, cwd=tmp_path / "folder", room=tmp_path)

    assert_sound(file, run, before, tmp_path / "folder")


@each(HEAVY)
def test_the_worst_keep_the_limits_as_processes_of_their_own(file, tmp_path):
    before = laid_out(tmp_path / "folder", file)
    run = run_alone("check", "--json", "--as-of", TODAY, cwd=tmp_path / "folder", room=tmp_path)

    assert_sound(file, run, before, tmp_path / "folder")


@each([file for file in LIGHT if file.problems not in {(), ("*",)}])
def test_each_is_told_in_words_with_its_place(file, tool, tmp_path):
    laid_out(tmp_path / "folder", file)
    run = tool.run("check", "--as-of", TODAY, cwd=tmp_path / "folder", room=tmp_path)

    assert "Traceback" not in run.err
    assert "The tool itself failed" not in run.err
    for problem in file.problems[:200]:
        place, _, code = problem.rpartition(" ")
        assert f"  {file.file}{place and ', '}{place}: " in run.err, code


@each(READABLE)
def test_what_is_read_is_what_stands_there(file, tmp_path):
    laid_out(tmp_path / "folder", file)
    table = read_folder(tmp_path / "folder").table

    if file.makers is not None:
        assert file.makers == table.makers
    for key, answers in file.answers.items():
        read = table.answers[key]
        assert answers == tuple(map(as_answer, read.low.tolist(), read.high.tolist()))


def as_answer(low, high):
    """Return an answer as the corpus writes it."""
    return None if isnan(low) else low if low == high else (low, high)


@each(SCORED)
def test_what_is_read_is_scored_in_little_time_and_memory(file, tool, tmp_path):
    before = laid_out(tmp_path / "folder", file)
    run = tool.run("score", "--as-of", TODAY, cwd=tmp_path / "folder", room=tmp_path)

    assert 0 == run.status, run.err
    assert before == standing(tmp_path / "folder")
    assert is_within(run.seconds, SECONDS)
    assert is_within(run.mebibytes, MEBIBYTES)
