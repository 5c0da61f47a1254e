"""Writing that is killed at every line of the modules that write, and what it leaves behind."""

import errno
import os
import subprocess
import sys

import pytest

OLD = {"shortlist.html": b"old page", "shortlist.xlsx": b"old workbook" * 9000, "shortlist.json": b'{"run": "old"}'}
NEW = {"shortlist.html": b"new page", "shortlist.xlsx": b"new workbook" * 9000, "shortlist.json": b'{"run": "new"}'}

# Runs an act in forked children, each ended without warning at one more line of the writing modules than the last.
KILLED_AT_EVERY_LINE = """
import os, sys
from itertools import count
from pathlib import Path
from scorecard import whole_files, writing

def killer(limit):
    seen = 0
    def trace(frame, event, arg):
        nonlocal seen
        if frame.f_code.co_filename not in (writing.__file__, whole_files.__file__):
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
    """Return the folders that were left behind, one per line of the writing modules at which the act was killed."""
    if not hasattr(os, "fork"):
        pytest.skip("this system cannot fork")
    code = f"{KILLED_AT_EVERY_LINE}\nrun(Path({str(tmp_path)!r}), lambda folder: {prepare}, lambda folder: {act})"
    subprocess.run([sys.executable, "-c", code], input=repr((OLD, NEW)), text=True, check=True, timeout=300)
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
