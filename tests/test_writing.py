"""Outputs and new folders: whole or not at all, and nothing of the user's lost."""

import errno
import json
import os
import subprocess
import sys
from datetime import UTC, datetime, timedelta
from hashlib import sha256
from pathlib import Path

import pytest
from killing import NEW, OLD, contents, killed, no_room, stray

from scorecard import writing
from scorecard.errors import UsageError, WriteError

AT = datetime(2026, 11, 25, 9, 30, 5, tzinfo=UTC)


def test_outputs_are_old_or_new_wherever_a_run_is_killed_and_the_users_own_are_kept(tmp_path):
    folders = killed(
        tmp_path,
        "(writing.write_outputs(folder, OLD), (folder / 'shortlist.html').write_bytes(b'edited by hand'))",
        "writing.write_outputs(folder, NEW, history=b'{}')",
    )

    assert len(folders) > 100
    for folder in folders:
        there = contents(folder)
        assert b"edited by hand" in there.values()
        assert there["shortlist.html"] in (b"edited by hand", NEW["shortlist.html"])
        for name in ("shortlist.xlsx", "shortlist.json"):
            assert there[name] in (OLD[name], NEW[name])


def test_what_a_killed_run_leaves_is_known_as_the_tools_own_at_the_next_run(tmp_path):
    folders = killed(tmp_path, "writing.write_outputs(folder, OLD)", "writing.write_outputs(folder, NEW)")

    assert [()] * len(folders) == [writing.write_outputs(folder, NEW).kept for folder in folders]


def test_a_new_folder_is_there_whole_or_not_at_all_wherever_it_is_killed(tmp_path):
    folders = killed(
        tmp_path, "None", "writing.lay_out(folder / 'mugs' / 'autumn', {'a.toml': b'a', 'reports/b': b'b'})"
    )

    whole = {"mugs/autumn/a.toml": b"a", "mugs/autumn/reports/b": b"b"}
    assert len(folders) > 30
    assert [] == [folder.name for folder in folders if contents(folder) not in ({}, whole)]


def test_only_hidden_names_are_left_where_a_run_is_killed(tmp_path):
    folders = killed(tmp_path, "None", "writing.write_outputs(folder, NEW)")

    odd = {path.name for folder in folders for path in folder.iterdir()} - set(NEW)
    assert [] == sorted(name for name in odd if not name.startswith("."))


def test_a_run_that_ends_well_leaves_no_temporary_file(tmp_path):
    writing.write_outputs(tmp_path, NEW, history=b"{}", stamp=AT)

    assert [] == stray(tmp_path)


def test_a_full_disk_halfway_through_a_run_leaves_every_output_old(tmp_path, monkeypatch):
    writing.write_outputs(tmp_path, OLD)
    fsync, calls = os.fsync, iter([True, True, False])
    monkeypatch.setattr(os, "fsync", lambda handle: fsync(handle) if next(calls) else no_room())

    with pytest.raises(WriteError, match=r"shortlist\.json could not be written: the disk is full"):
        writing.write_outputs(tmp_path, NEW)

    assert OLD == {name: (tmp_path / name).read_bytes() for name in OLD}


def test_an_output_that_cannot_be_replaced_leaves_each_of_them_whole(tmp_path, monkeypatch):
    writing.write_outputs(tmp_path, OLD)
    replace = Path.replace

    def held(self, target):
        if target.name == "shortlist.xlsx":
            raise PermissionError(errno.EACCES, "held")
        return replace(self, target)

    monkeypatch.setattr(Path, "replace", held)
    with pytest.raises(WriteError, match=r"open in another program\. Close it and try again"):
        writing.write_outputs(tmp_path, NEW)

    there = contents(tmp_path)
    assert [True] * 3 == [there[name] in (OLD[name], NEW[name]) for name in OLD]
    assert [] == stray(tmp_path)


def test_a_file_in_the_place_of_the_outputs_folder_is_said_so(tmp_path):
    (tmp_path / "reports").write_bytes(b"")

    with pytest.raises(WriteError, match="there is a file of that name"):
        writing.write_outputs(tmp_path / "reports", NEW)


def test_an_output_that_nobody_changed_is_replaced(tmp_path):
    writing.write_outputs(tmp_path, OLD)

    assert () == writing.write_outputs(tmp_path, NEW).kept


def test_an_output_that_the_user_changed_is_kept_under_a_new_name(tmp_path):
    writing.write_outputs(tmp_path, OLD)
    (tmp_path / "shortlist.xlsx").write_bytes(b"edited")

    written = writing.write_outputs(tmp_path, NEW)

    assert (tmp_path / "shortlist-edited-1.xlsx",) == written.kept
    assert b"edited" == written.kept[0].read_bytes()


def test_a_second_change_takes_the_next_free_number(tmp_path):
    for edit in (b"first", b"second"):
        (tmp_path / "shortlist.xlsx").write_bytes(edit)
        written = writing.write_outputs(tmp_path, NEW)

    assert (tmp_path / "shortlist-edited-2.xlsx",) == written.kept
    assert b"first" == (tmp_path / "shortlist-edited-1.xlsx").read_bytes()


def test_a_file_that_was_never_the_tools_is_kept(tmp_path):
    (tmp_path / "shortlist.html").write_bytes(b"mine")

    assert b"mine" == writing.write_outputs(tmp_path, NEW).kept[0].read_bytes()


@pytest.mark.parametrize(
    "damage", [b"", b"{", b"[]", b'{"shortlist.xlsx": 3}', b'{"shortlist.xlsx": [3]}', b"\xff", b"[" * 100_000]
)
def test_with_a_damaged_record_every_file_is_taken_for_the_users(tmp_path, damage):
    writing.write_outputs(tmp_path, OLD)
    (tmp_path / ".written.json").write_bytes(damage)

    kept = writing.write_outputs(tmp_path, NEW).kept

    assert list(OLD.values()) == [path.read_bytes() for path in kept]


def test_without_a_record_every_file_is_taken_for_the_users(tmp_path):
    writing.write_outputs(tmp_path, OLD)
    (tmp_path / ".written.json").unlink()

    assert 3 == len(writing.write_outputs(tmp_path, NEW).kept)


def test_the_record_holds_the_digest_of_what_was_written(tmp_path):
    writing.write_outputs(tmp_path, {"shortlist.html": b"page"})

    record = json.loads((tmp_path / ".written.json").read_bytes())
    assert {"shortlist.html": [sha256(b"page").hexdigest()]} == record


def test_the_record_does_not_grow_without_end(tmp_path):
    for number in range(20):
        writing.write_outputs(tmp_path, {"shortlist.html": b"%d" % number})

    record = json.loads((tmp_path / ".written.json").read_bytes())
    assert writing.REMEMBERED == len(record["shortlist.html"])


def test_a_symlink_in_the_place_of_an_output_is_replaced_and_its_content_kept(tmp_path):
    (tmp_path / "elsewhere").write_bytes(b"precious")
    reports = tmp_path / "reports"
    reports.mkdir()
    (reports / "shortlist.html").symlink_to(tmp_path / "elsewhere")

    kept = writing.write_outputs(reports, NEW).kept

    assert [b"precious"] == [path.read_bytes() for path in kept]
    assert b"precious" == (tmp_path / "elsewhere").read_bytes()


def test_a_runs_result_stays_under_its_time_stamp(tmp_path):
    written = writing.write_outputs(tmp_path, NEW, history=b"{}", stamp=AT)

    assert tmp_path / "history" / "2026-11-25T09-30-05Z.json" == written.history
    assert b"{}" == written.history.read_bytes()


def test_the_same_result_at_the_same_time_stays_once(tmp_path):
    for _ in range(2):
        writing.write_outputs(tmp_path, NEW, history=b"{}", stamp=AT)

    assert ["2026-11-25T09-30-05Z.json"] == [path.name for path in (tmp_path / "history").iterdir()]


def test_another_result_at_the_same_time_stays_beside_the_first(tmp_path):
    for content in (b"1", b"2", b"3", b"2"):
        written = writing.write_outputs(tmp_path, NEW, history=content, stamp=AT)

    assert "2026-11-25T09-30-05Z-2.json" == written.history.name
    assert 3 == len(list((tmp_path / "history").iterdir()))


def test_without_hard_links_nothing_is_overwritten_either(tmp_path, monkeypatch):
    def unsupported(*_args):
        raise OSError(errno.EPERM, "Operation not permitted")

    monkeypatch.setattr(Path, "hardlink_to", unsupported)
    for content in (b"1", b"2"):
        writing.write_outputs(tmp_path, NEW, history=content, stamp=AT)

    assert [b"1", b"2"] == sorted(path.read_bytes() for path in (tmp_path / "history").iterdir())
    assert [] == stray(tmp_path)


def test_two_runs_at_once_both_end_with_whole_files(tmp_path):
    code = (
        "import sys; from pathlib import Path; from scorecard.writing import write_outputs\n"
        "for _ in range(25): write_outputs(Path(sys.argv[1]), {'a': sys.argv[2].encode() * 50_000}, history=b'{}')"
    )
    runs = [subprocess.Popen([sys.executable, "-c", code, str(tmp_path), word]) for word in ("old", "new")]

    assert [0, 0] == [run.wait(timeout=60) for run in runs]
    assert (tmp_path / "a").read_bytes() in (b"old" * 50_000, b"new" * 50_000)
    assert [] == stray(tmp_path)


def test_a_new_folder_holds_its_files_and_its_parents_are_made(tmp_path):
    writing.lay_out(tmp_path / "summer" / "mugs", {"criteria.toml": b"c", "reports/README.md": b"r"})

    assert {"criteria.toml": b"c", "reports/README.md": b"r"} == contents(tmp_path / "summer" / "mugs")


def test_an_empty_folder_is_filled_and_stays_the_same_folder(tmp_path):
    before = tmp_path.stat().st_ino

    writing.lay_out(tmp_path, {"criteria.toml": b"c"})

    assert ({"criteria.toml": b"c"}, before) == (contents(tmp_path), tmp_path.stat().st_ino)


@pytest.mark.parametrize("name", ["notes.txt", ".DS_Store"])
def test_a_folder_that_holds_anything_is_refused_and_left_alone(tmp_path, name):
    (tmp_path / name).write_bytes(b"mine")

    with pytest.raises(UsageError, match=rf"holds something already \({name}\).*hidden files count"):
        writing.lay_out(tmp_path, {"criteria.toml": b"c"})

    assert {name: b"mine"} == contents(tmp_path)


def test_of_a_full_folder_three_names_are_told(tmp_path):
    for name in "abcde":
        (tmp_path / name).mkdir()

    with pytest.raises(UsageError, match=r"\(a, b, c and more\)"):
        writing.lay_out(tmp_path, {})


def test_a_file_in_the_place_of_a_new_folder_is_refused(tmp_path):
    (tmp_path / "mugs").write_bytes(b"mine")

    with pytest.raises(UsageError, match="is there already and is not a folder"):
        writing.lay_out(tmp_path / "mugs", {"criteria.toml": b"c"})


@pytest.mark.parametrize("is_there", [True, False])
def test_a_folder_that_cannot_be_filled_is_left_as_it_was(tmp_path, monkeypatch, is_there):
    folder = tmp_path / "mugs"
    if is_there:
        folder.mkdir()
    fsync, calls = os.fsync, iter([True, False])
    monkeypatch.setattr(os, "fsync", lambda handle: fsync(handle) if next(calls) else no_room())

    with pytest.raises(WriteError, match="the disk is full"):
        writing.lay_out(folder, {"reports/a": b"a", "b": b"b"})

    assert (["mugs"] if is_there else []) == [path.relative_to(tmp_path).as_posix() for path in tmp_path.rglob("*")]


def test_source_date_epoch_fixes_the_time_stamp(monkeypatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1780000000")

    assert datetime.fromtimestamp(1_780_000_000, UTC) == writing.time_stamp()


def test_without_source_date_epoch_the_clock_is_taken_to_the_second(monkeypatch):
    monkeypatch.delenv("SOURCE_DATE_EPOCH", raising=False)

    before = datetime.now(UTC).replace(microsecond=0)
    stamp = writing.time_stamp()

    assert before <= stamp <= datetime.now(UTC)
    assert 0 == stamp.microsecond


@pytest.mark.parametrize("text", ["tomorrow", "1.5", "9" * 40, "-1"])
def test_a_source_date_epoch_that_is_no_number_is_told(monkeypatch, text):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", text)

    with pytest.raises(UsageError, match=r"SOURCE_DATE_EPOCH: .* is not a whole number of seconds"):
        writing.time_stamp()


def test_in_a_new_folder_no_file_takes_the_place_of_another(tmp_path):
    with pytest.raises(WriteError):
        writing.lay_out(tmp_path / "mugs", {"a": b"1", "./a": b"2"})

    assert [] == list(tmp_path.iterdir())


def test_an_empty_time_stamp_counts_as_none(monkeypatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "")

    assert abs(datetime.now(UTC) - writing.time_stamp()) < timedelta(minutes=1)


def test_a_new_folder_that_a_killed_run_had_begun_to_fill_is_filled(tmp_path):
    (tmp_path / ".scorecard-aaaaaaaaaaaa.tmp").mkdir()
    (tmp_path / "pictures").mkdir()
    (tmp_path / "pictures" / "one.png").write_bytes(b"1")
    files = {"criteria.toml": b"c", "pictures/one.png": b"1", "pictures/two.png": b"2"}

    writing.lay_out(tmp_path, files)

    assert (files, []) == (contents(tmp_path), stray(tmp_path))


@pytest.mark.parametrize("name", ["criteria.toml", "pictures/mine.png", "notes.txt"])
def test_a_folder_that_a_killed_run_had_begun_to_fill_and_that_holds_more_is_refused(tmp_path, name):
    (tmp_path / ".scorecard-aaaaaaaaaaaa.tmp").mkdir()
    (tmp_path / "pictures").mkdir()
    (tmp_path / name).write_bytes(b"mine")

    with pytest.raises(UsageError, match="holds something already"):
        writing.lay_out(tmp_path, {"criteria.toml": b"c", "pictures/one.png": b"1"})

    assert {name: b"mine"} == contents(tmp_path)


def test_a_folder_that_was_laid_out_whole_is_refused(tmp_path):
    writing.lay_out(tmp_path, {"criteria.toml": b"c"})

    with pytest.raises(UsageError, match=r"holds something already \(criteria\.toml\)"):
        writing.lay_out(tmp_path, {"criteria.toml": b"c"})


def test_a_folder_that_is_there_and_may_only_be_read_is_said_so(tmp_path, monkeypatch):
    def refused(*_args, **_words):
        raise PermissionError(errno.EACCES, "Permission denied")

    monkeypatch.setattr(Path, "mkdir", refused)
    with pytest.raises(WriteError, match="its folder may only be read"):
        writing.lay_out(tmp_path, {"criteria.toml": b"c"})
