"""Writing: whole or not at all, nothing of the user's lost, and names and links made harmless."""

import errno
import json
import os
import subprocess
import sys
from datetime import UTC, datetime, timedelta
from hashlib import sha256
from pathlib import Path

import jinja2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard import writing
from scorecard.errors import UsageError, WriteError

AT = datetime(2026, 11, 25, 9, 30, 5, tzinfo=UTC)
OLD = {"shortlist.html": b"old page", "shortlist.xlsx": b"old workbook" * 9000, "shortlist.json": b'{"run": "old"}'}
NEW = {"shortlist.html": b"new page", "shortlist.xlsx": b"new workbook" * 9000, "shortlist.json": b'{"run": "new"}'}

# Runs an act in forked children, each ended without warning at one more line of writing.py than the one before.
KILLED_AT_EVERY_LINE = """
import os, sys
from itertools import count
from pathlib import Path
from scorecard import writing

def killer(limit):
    seen = 0
    def trace(frame, event, arg):
        nonlocal seen
        if frame.f_code.co_filename != writing.__file__:
            return None
        if event == "line":
            seen += 1
            if seen == limit:
                os._exit(9)
        return trace
    return trace

def run(root, prepare, act):
    for limit in count(1):
        folder = root / str(limit)
        folder.mkdir()
        prepare(folder)
        child = os.fork()
        if not child:
            sys.settrace(killer(limit))
            act(folder)
            os._exit(0)
        if os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) != 9:
            break

OLD, NEW = eval(sys.stdin.read())
"""


def killed(tmp_path, prepare, act):
    """Return the folders that were left behind, one per line of writing.py at which the act was killed."""
    if not hasattr(os, "fork"):
        pytest.skip("this system cannot fork")
    code = f"{KILLED_AT_EVERY_LINE}\nrun(Path({str(tmp_path)!r}), lambda folder: {prepare}, lambda folder: {act})"
    subprocess.run([sys.executable, "-c", code], input=repr((OLD, NEW)), text=True, check=True, timeout=60)
    return sorted(tmp_path.iterdir(), key=lambda folder: int(folder.name))


def contents(folder):
    """Return every file below a folder that is no temporary one, by its name inside it."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file() and not any(part.startswith(".scorecard-") for part in path.relative_to(folder).parts)
    }


def stray(folder):
    return [path.name for path in folder.rglob("*.tmp")]


def no_room(*_args):
    raise OSError(errno.ENOSPC, "No space left on device")


def test_the_same_bytes_in_are_the_same_bytes_on_disk(tmp_path):
    content = bytes(range(256)) + b"\r\n\n\r"

    writing.write_whole(tmp_path / "page.html", content)

    assert content == (tmp_path / "page.html").read_bytes()


def test_a_written_file_has_the_mode_that_the_user_asks_of_new_files(tmp_path):
    before = os.umask(0o027)
    try:
        writing.write_whole(tmp_path / "page.html", b"page")
    finally:
        os.umask(before)

    assert 0o640 == (tmp_path / "page.html").stat().st_mode & 0o777


def test_a_symlink_is_replaced_and_what_it_points_to_is_left_alone(tmp_path):
    (tmp_path / "precious").write_bytes(b"precious")
    (tmp_path / "page.html").symlink_to(tmp_path / "precious")

    writing.write_whole(tmp_path / "page.html", b"page")

    assert {"precious": b"precious", "page.html": b"page"} == contents(tmp_path)


def test_a_single_file_is_old_or_new_wherever_the_writing_is_killed(tmp_path):
    folders = killed(
        tmp_path,
        "(folder / 'one').write_bytes(OLD['shortlist.xlsx'])",
        "writing.write_whole(folder / 'one', NEW['shortlist.xlsx'])",
    )

    whole = ({"one": OLD["shortlist.xlsx"]}, {"one": NEW["shortlist.xlsx"]})
    assert len(folders) > 10
    assert [] == [folder.name for folder in folders if contents(folder) not in whole]


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


@pytest.mark.parametrize("failing", ["fsync", "replace", "open"])
def test_a_failure_leaves_the_old_file_and_no_temporary_one(tmp_path, monkeypatch, failing):
    (tmp_path / "page.html").write_bytes(b"old")
    home = os if failing == "fsync" else Path
    with monkeypatch.context() as patch:
        patch.setattr(home, failing, no_room)
        with pytest.raises(WriteError, match="the disk is full"):
            writing.write_whole(tmp_path / "page.html", b"new")

    assert ({"page.html": b"old"}, []) == (contents(tmp_path), stray(tmp_path))


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


def test_a_path_through_a_file_is_said_so(tmp_path):
    (tmp_path / "notes").write_bytes(b"")

    with pytest.raises(WriteError, match="a part of its path is a file"):
        writing.write_whole(tmp_path / "notes" / "page.html", b"page")


def test_a_folder_that_is_not_there_is_said_so(tmp_path):
    with pytest.raises(WriteError, match="its folder is not there"):
        writing.write_whole(tmp_path / "nowhere" / "page.html", b"page")


def test_a_folder_in_the_place_of_an_output_is_said_so(tmp_path):
    (tmp_path / "page.html").mkdir()

    with pytest.raises(WriteError, match="there is a folder of that name"):
        writing.write_whole(tmp_path / "page.html", b"page")


def test_a_file_in_the_place_of_the_outputs_folder_is_said_so(tmp_path):
    (tmp_path / "reports").write_bytes(b"")

    with pytest.raises(WriteError, match="there is a file of that name"):
        writing.write_outputs(tmp_path / "reports", NEW)


def test_a_folder_that_may_only_be_read_is_said_so(tmp_path, monkeypatch):
    def refused(*_args):
        raise OSError(errno.EROFS, "Read-only file system")

    monkeypatch.setattr(Path, "open", refused)
    with pytest.raises(WriteError, match="its folder may only be read"):
        writing.write_whole(tmp_path / "page.html", b"page")


def test_a_name_that_is_too_long_is_said_so(tmp_path):
    with pytest.raises(WriteError, match="its name is too long"):
        writing.write_whole(tmp_path / ("x" * 300), b"page")


def test_another_failure_is_given_in_the_systems_words(tmp_path, monkeypatch):
    def broken(*_args):
        raise OSError(errno.EIO, "Input/output error")

    monkeypatch.setattr(os, "fsync", broken)
    with pytest.raises(WriteError, match="the system says Input/output error"):
        writing.write_whole(tmp_path / "page.html", b"page")


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


@pytest.mark.parametrize("has_links", [True, False])
def test_a_name_that_is_taken_at_the_last_moment_is_left_alone(tmp_path, monkeypatch, has_links):
    prepared = writing._prepared

    def overtaken(folder, content):
        (tmp_path / "one-before-1.toml").write_bytes(b"another's")
        return prepared(folder, content)

    def unsupported(*_args):
        raise OSError(errno.EPERM, "Operation not permitted")

    (tmp_path / "one.toml").write_bytes(b"one")
    monkeypatch.setattr(writing, "_prepared", overtaken)
    if not has_links:
        monkeypatch.setattr(Path, "hardlink_to", unsupported)

    assert tmp_path / "one-before-2.toml" == writing.keep_beside(tmp_path / "one.toml")
    assert b"another's" == (tmp_path / "one-before-1.toml").read_bytes()


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


def test_the_old_file_is_kept_beside_the_one_that_will_be_rewritten(tmp_path):
    (tmp_path / "criteria.toml").write_bytes(b"weight = 1")

    kept = writing.keep_beside(tmp_path / "criteria.toml")
    (tmp_path / "criteria.toml").write_bytes(b"weight = 2")  # in place, as some editors write

    assert ("criteria-before-1.toml", b"weight = 1") == (kept.name, kept.read_bytes())


def test_an_older_kept_file_is_never_overwritten(tmp_path):
    for content in (b"1", b"2"):
        (tmp_path / "criteria.toml").write_bytes(content)
        kept = writing.keep_beside(tmp_path / "criteria.toml")

    assert ("criteria-before-2.toml", b"1") == (kept.name, (tmp_path / "criteria-before-1.toml").read_bytes())


@given(st.text(max_size=200), st.integers(2, 20_000))
def test_a_safe_name_is_one_short_plain_part_of_a_path(text, row):
    name = writing.safe_name(text, row)

    assert set(name) <= set("abcdefghijklmnopqrstuvwxyz0123456789-")
    assert len(name) <= 66
    assert name.split("-")[0] == f"{row:02d}"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Žluť & Söhne", "03-zlut-sohne"),
        ("../../etc/passwd", "03-etc-passwd"),
        ("C:\\nul", "03-c-nul"),
        ("-rf *", "03-rf"),
        ("陶器", "03-maker"),
        ("", "03-maker"),
        ("Straße", "03-strasse"),
        ("a\x00b\nc\u202ed", "03-a-b-cd"),
    ],
)
def test_a_hostile_name_becomes_harmless(text, expected):
    assert expected == writing.safe_name(text, 3)


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


@pytest.mark.parametrize("name", ["page.html", "page.html.j2", "page.txt", "page"])
def test_whatever_a_template_is_called_text_is_escaped(tmp_path, name):
    (tmp_path / name).write_text("<p>{{ maker }}</p>")

    page = writing.environment(tmp_path).get_template(name).render(maker="<script>")

    assert "<p>&lt;script&gt;</p>" == page


def test_a_name_that_a_template_is_not_given_is_an_error(tmp_path):
    (tmp_path / "page.html").write_text("{{ makr }}")

    with pytest.raises(jinja2.UndefinedError, match="makr"):
        writing.environment(tmp_path).get_template("page.html").render(maker="x")


def test_a_template_outside_the_folder_is_not_found(tmp_path):
    (tmp_path / "secret").write_text("secret")
    (tmp_path / "inner").mkdir()

    with pytest.raises(jinja2.TemplateNotFound):
        writing.environment(tmp_path / "inner").get_template("../secret")


def test_templates_know_the_link_filter(tmp_path):
    (tmp_path / "page.html").write_text("{{ 'javascript:alert(1)'|safe_href }}")

    assert "None" == writing.environment(tmp_path).get_template("page.html").render()


@pytest.mark.parametrize(
    "address", ["https://pots.example", "http://pots.example:8080/a?b=c#d", "HTTPS://Pots.Example/é", "https://[::1]/"]
)
def test_a_plain_web_address_may_be_linked(address):
    assert address == writing.safe_href(address)


@pytest.mark.parametrize(
    "address",
    [
        None,
        "",
        "pots.example",
        "//pots.example",
        "http:pots.example",
        "https://",
        "javascript:alert(1)",
        "java\tscript:alert(1)",
        "https://pots.example\n",
        "https://pots.example/\x00",
        "https://pots.example/a b",
        "https://pots.example/\u202egnp.exe",
        "data:text/html,x",
        "file:///etc/passwd",
        "mailto:a@b.example",
        "https://user:pw@pots.example",
        "https://pots.example@other.example",
        "https://other.example\\.pots.example",
        "https://[broken",
        "https://pots.example:99999",
    ],
)
def test_a_doubtful_address_is_not_linked(address):
    assert writing.safe_href(address) is None


def test_the_page_tools_stay_unloaded_until_a_page_is_made():
    code = "import sys, scorecard.writing; sys.exit('jinja2' in sys.modules)"

    assert 0 == subprocess.run([sys.executable, "-c", code], check=False).returncode


def test_in_a_new_folder_no_file_takes_the_place_of_another(tmp_path):
    with pytest.raises(WriteError):
        writing.lay_out(tmp_path / "mugs", {"a": b"1", "./a": b"2"})

    assert [] == list(tmp_path.iterdir())


def test_an_empty_time_stamp_counts_as_none(monkeypatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "")

    assert abs(datetime.now(UTC) - writing.time_stamp()) < timedelta(minutes=1)
