"""A disk that is full, and a folder that may only be read, as the system has them; without the right to, skipped."""

import os
import shutil
import subprocess
import sys

import pytest
from order_folder import ORDERS, lay_out

TOOL = f"{sys.executable} -m scorecard"
DAYS = "--as-of 2026-11-26"


def may_mount():
    """Say whether this process may mount a disk that nobody else sees."""
    unshare = shutil.which("unshare")
    line = [str(unshare), "-m", "sh", "-c", "mount -t tmpfs none /mnt"]
    return bool(unshare) and 0 == subprocess.run(line, capture_output=True, check=False).returncode


alone = pytest.mark.skipif(not may_mount(), reason="only an administrator of Linux may mount disks")


def mounted(line, folder):
    """Run a shell's line where what it mounts is seen by it alone."""
    words = ["unshare", "-m", "bash", "-c", line]
    return subprocess.run(words, cwd=folder, capture_output=True, text=True, timeout=120, check=False)


def contents(folder):
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    made = lay_out(tmp_path_factory.mktemp("room") / "mugs", Orders=ORDERS)
    env = {**os.environ, "SOURCE_DATE_EPOCH": "1795000000"}
    run = [sys.executable, "-m", "scorecard", "score", "--as-of", "2026-11-25"]
    subprocess.run(run, cwd=made, env=env, check=True, capture_output=True)
    return made


@alone
@pytest.mark.parametrize("room", [8, 40, 120])
def test_on_a_full_disk_one_sentence_says_so_and_every_file_is_as_it_was(folder, tmp_path, room):
    before = contents(folder)
    size = sum(-(-len(content) // 4096) * 4 for content in before.values()) + 24 + room  # KiB; folders take some too
    (tmp_path / "disk").mkdir()
    ran = mounted(
        f"mount -t tmpfs -o size={size}k none {tmp_path}/disk && cp -r {folder}/. {tmp_path}/disk && cd {tmp_path}/disk"
        f" && {TOOL} score {DAYS}; status=$?; cp -r {tmp_path}/disk {tmp_path}/out; exit $status",
        tmp_path,
    )

    told = [line for line in ran.stderr.splitlines() if "warning" not in line]
    assert (1, 1) == (ran.returncode, len(told)), ran
    assert told[0].endswith("could not be written: the disk is full. Make room, and try again.")
    there = contents(tmp_path / "out")
    outputs = [name for name in before if name.startswith("reports/shortlist")]
    assert before == {name: there.get(name) for name in before}
    assert 3 == len(outputs)
    assert not [name for name in there if ".scorecard-" in name]


@alone
def test_in_a_folder_that_may_only_be_read_one_sentence_says_so_and_what_only_reads_works(folder, tmp_path):
    before = contents(folder)
    writing = ("score", "record Fern", "reweigh rating=5 --save", "order Fern", "enquire", "start new")
    reading = ("check", "cost", "reweigh rating=5")
    lines = [
        f"{TOOL} {words}{'' if words.startswith('start') else f' {DAYS}'} >/dev/null 2>{tmp_path}/{at}.err; echo $?"
        for at, words in enumerate((*writing, *reading))
    ]
    mount = f"mount --bind {folder} {folder} && mount -o remount,bind,ro {folder} && cd {folder}"
    ran = mounted(f"{mount} && {{ {'; '.join(lines)}; }}", tmp_path)

    assert ["1"] * len(writing) + ["0"] * len(reading) == ran.stdout.split(), ran
    for at, words in enumerate(writing):
        told = [line for line in (tmp_path / f"{at}.err").read_text("utf-8").splitlines() if "warning" not in line]
        assert 1 == len(told), (words, told)
        assert told[0].endswith(
            "its folder may only be read. Choose another folder, or ask for the right to write there."
        ), words
    assert before == contents(folder)
