"""A file is written whole or not at all, and read as of one moment."""

import errno
import os
import time
from pathlib import Path

import pytest
from killing import NEW, OLD, contents, killed, no_room, stray

from scorecard import whole_files
from scorecard.errors import WriteError


def test_the_same_bytes_in_are_the_same_bytes_on_disk(tmp_path):
    content = bytes(range(256)) + b"\r\n\n\r"

    whole_files.write_whole(tmp_path / "page.html", content)

    assert content == (tmp_path / "page.html").read_bytes()


def test_a_written_file_has_the_mode_that_the_user_asks_of_new_files(tmp_path):
    before = os.umask(0o027)
    try:
        whole_files.write_whole(tmp_path / "page.html", b"page")
    finally:
        os.umask(before)

    assert 0o640 == (tmp_path / "page.html").stat().st_mode & 0o777


def test_a_symlink_is_replaced_and_what_it_points_to_is_left_alone(tmp_path):
    (tmp_path / "precious").write_bytes(b"precious")
    (tmp_path / "page.html").symlink_to(tmp_path / "precious")

    whole_files.write_whole(tmp_path / "page.html", b"page")

    assert {"precious": b"precious", "page.html": b"page"} == contents(tmp_path)


def test_a_single_file_is_old_or_new_wherever_the_writing_is_killed(tmp_path):
    folders = killed(
        tmp_path,
        "(folder / 'one').write_bytes(OLD['shortlist.xlsx'])",
        "whole_files.write_whole(folder / 'one', NEW['shortlist.xlsx'])",
    )

    whole = ({"one": OLD["shortlist.xlsx"]}, {"one": NEW["shortlist.xlsx"]})
    assert len(folders) > 10
    assert [] == [folder.name for folder in folders if contents(folder) not in whole]


@pytest.mark.parametrize("failing", ["fsync", "replace", "open"])
def test_a_failure_leaves_the_old_file_and_no_temporary_one(tmp_path, monkeypatch, failing):
    (tmp_path / "page.html").write_bytes(b"old")
    home = os if failing == "fsync" else Path
    with monkeypatch.context() as patch:
        patch.setattr(home, failing, no_room)
        with pytest.raises(WriteError, match="the disk is full"):
            whole_files.write_whole(tmp_path / "page.html", b"new")

    assert ({"page.html": b"old"}, []) == (contents(tmp_path), stray(tmp_path))


def test_a_path_through_a_file_is_said_so(tmp_path):
    (tmp_path / "notes").write_bytes(b"")

    with pytest.raises(WriteError, match="a part of its path is a file"):
        whole_files.write_whole(tmp_path / "notes" / "page.html", b"page")


def test_a_folder_that_is_not_there_is_said_so(tmp_path):
    with pytest.raises(WriteError, match="its folder is not there"):
        whole_files.write_whole(tmp_path / "nowhere" / "page.html", b"page")


def test_a_folder_in_the_place_of_an_output_is_said_so(tmp_path):
    (tmp_path / "page.html").mkdir()

    with pytest.raises(WriteError, match="there is a folder of that name"):
        whole_files.write_whole(tmp_path / "page.html", b"page")


def test_a_folder_that_may_only_be_read_is_said_so(tmp_path, monkeypatch):
    def refused(*_args):
        raise OSError(errno.EROFS, "Read-only file system")

    monkeypatch.setattr(Path, "open", refused)
    with pytest.raises(WriteError, match="its folder may only be read"):
        whole_files.write_whole(tmp_path / "page.html", b"page")


def test_a_name_that_is_too_long_is_said_so(tmp_path):
    with pytest.raises(WriteError, match="its name is too long"):
        whole_files.write_whole(tmp_path / ("x" * 300), b"page")


def test_another_failure_is_given_in_the_systems_words(tmp_path, monkeypatch):
    def broken(*_args):
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(os, "fsync", broken)
    with pytest.raises(WriteError, match="the system says Input/output error"):
        whole_files.write_whole(tmp_path / "page.html", b"page")


@pytest.mark.parametrize("has_links", [True, False])
def test_a_name_that_is_taken_at_the_last_moment_is_left_alone(tmp_path, monkeypatch, has_links):
    prepared = whole_files.prepared

    def overtaken(folder, content):
        (tmp_path / "one-before-1.toml").write_bytes(b"another's")
        return prepared(folder, content)

    def unsupported(*_args):
        raise OSError(errno.EPERM, "Operation not permitted")

    (tmp_path / "one.toml").write_bytes(b"one")
    monkeypatch.setattr(whole_files, "prepared", overtaken)
    if not has_links:
        monkeypatch.setattr(Path, "hardlink_to", unsupported)

    assert tmp_path / "one-before-2.toml" == whole_files.keep_beside(tmp_path / "one.toml")
    assert b"another's" == (tmp_path / "one-before-1.toml").read_bytes()


def test_the_old_file_is_kept_beside_the_one_that_will_be_rewritten(tmp_path):
    (tmp_path / "criteria.toml").write_bytes(b"weight = 1")

    kept = whole_files.keep_beside(tmp_path / "criteria.toml")
    (tmp_path / "criteria.toml").write_bytes(b"weight = 2")  # in place, as some editors write

    assert ("criteria-before-1.toml", b"weight = 1") == (kept.name, kept.read_bytes())


def test_an_older_kept_file_is_never_overwritten(tmp_path):
    for content in (b"1", b"2"):
        (tmp_path / "criteria.toml").write_bytes(content)
        kept = whole_files.keep_beside(tmp_path / "criteria.toml")

    assert ("criteria-before-2.toml", b"1") == (kept.name, (tmp_path / "criteria-before-1.toml").read_bytes())


def old_strays(folder):
    """Leave what killed runs leave: a file and a folder of two hours ago, and a file of now."""
    old, room, new = (folder / f".scorecard-{sign * 12}.tmp" for sign in "abc")
    room.mkdir()
    for path in (old, room / "half", new):
        path.write_bytes(b"half")
    for path in (old, room):
        os.utime(path, (time.time() - 7200,) * 2)
    return old, room, new


def test_what_killed_runs_left_is_removed_an_hour_later_and_what_another_run_works_on_is_not(tmp_path):
    old, room, new = old_strays(tmp_path)
    (tmp_path / ".scorecard-notes.tmp").write_bytes(b"mine")
    os.utime(tmp_path / ".scorecard-notes.tmp", (0, 0))

    whole_files.write_whole(tmp_path / "page.html", b"page")

    assert [(False, False, True)] == [(old.exists(), room.exists(), new.exists())]
    assert b"mine" == (tmp_path / ".scorecard-notes.tmp").read_bytes()


def test_a_link_in_the_place_of_a_temporary_folder_takes_nothing_along(tmp_path):
    (tmp_path / "precious").mkdir()
    (tmp_path / "precious" / "file").write_bytes(b"mine")
    link = tmp_path / ".scorecard-aaaaaaaaaaaa.tmp"
    link.symlink_to(tmp_path / "precious")
    os.utime(link, (0, 0), follow_symlinks=False)

    whole_files.sweep(tmp_path)

    assert (False, b"mine") == (link.is_symlink(), (tmp_path / "precious" / "file").read_bytes())


def test_a_folder_that_cannot_be_swept_stops_nothing(tmp_path):
    whole_files.sweep(tmp_path / "nowhere")


def test_a_file_is_read_as_it_stands(tmp_path):
    (tmp_path / "one").write_bytes(b"one")

    assert b"one" == whole_files.read_whole(tmp_path / "one")
