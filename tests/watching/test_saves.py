"""When a file counts as saved: changed, the same at two looks, and whole."""

import os
from zipfile import ZipFile

import pytest

from scorecard.watching.saves import PATIENCE, Saves, is_whole


@pytest.fixture
def book(tmp_path):
    path = tmp_path / "makers.xlsx"
    path.write_bytes(workbook(tmp_path, "first"))
    return path


def workbook(folder, text):
    """Return the bytes of a zip."""
    with ZipFile(folder / "made.zip", "w") as archive:
        archive.writestr("xl/workbook.xml", text * 50)
    return (folder / "made.zip").read_bytes()


def looks(saves, number):
    return [saves.look() for _ in range(number)]


def test_without_a_save_there_is_nothing_new(book):
    assert [False] * 3 == looks(Saves(book), 3)


def test_a_save_is_taken_at_the_second_look_and_once(book, tmp_path):
    saves = Saves(book)
    book.write_bytes(workbook(tmp_path, "second, longer"))

    assert [False, True, False, False] == looks(saves, 4)


def test_a_file_put_in_place_of_another_is_a_save(book, tmp_path):
    saves = Saves(book)
    (tmp_path / "lu1234.tmp").write_bytes(workbook(tmp_path, "second, longer"))
    (tmp_path / "lu1234.tmp").replace(book)

    assert [False, True] == looks(saves, 2)


def test_the_same_size_at_another_time_is_a_save(book):
    saves = Saves(book)
    os.utime(book, (1, 1))

    assert [False, True] == looks(saves, 2)


def test_a_file_that_still_grows_is_left_to_grow(tmp_path):
    text = tmp_path / "makers.csv"
    text.write_text("Maker\n", "utf-8")
    saves, found = Saves(text), []
    for line in range(4):
        text.write_text("Maker\n" * (line + 2), "utf-8")
        found.append(saves.look())

    assert ([False] * 4, [True]) == (found, looks(saves, 1))


def test_half_a_workbook_is_waited_for(book, tmp_path):
    saves, whole = Saves(book), workbook(tmp_path, "second, longer")
    book.write_bytes(whole[: len(whole) // 2])
    half = looks(saves, PATIENCE - 2)
    book.write_bytes(whole)

    assert (False, [False, True]) == (any(half), looks(saves, 2))


def test_half_a_workbook_that_stays_so_is_taken_in_the_end(book):
    saves = Saves(book)
    book.write_bytes(book.read_bytes()[:40])

    assert [False] * PATIENCE + [True, False] == looks(saves, PATIENCE + 2)


def test_a_file_that_is_gone_for_a_moment_is_waited_for(book):
    saves, content = Saves(book), book.read_bytes()
    book.unlink()
    gone = looks(saves, 3)
    book.write_bytes(content + b"")
    os.utime(book, (1, 1))

    assert ([False] * 3, [False, True]) == (gone, looks(saves, 2))


def test_a_file_that_stays_gone_is_told_in_the_end(book):
    saves = Saves(book)
    book.unlink()

    assert 1 == looks(saves, PATIENCE + 5).count(True)


def test_a_file_that_was_never_there_holds_nothing_up(book, tmp_path):
    saves = Saves(tmp_path / "makers.csv", book)
    book.write_bytes(workbook(tmp_path, "second, longer"))

    assert [False, True] == looks(saves, 2)


def test_lock_files_beside_it_are_no_save(book, tmp_path):
    saves = Saves(book)
    for name in (".~lock.makers.xlsx#", "~$makers.xlsx"):
        (tmp_path / name).write_text("anna", "utf-8")

    assert [False] * 3 == looks(saves, 3)


def test_of_other_files_than_workbooks_nothing_is_asked(tmp_path):
    (tmp_path / "criteria.toml").write_text("half a l", "utf-8")

    assert is_whole(tmp_path / "criteria.toml")
