"""What must hold of every input: refused in sentences or read; soon, in little memory, twice the same, unchanged."""

import json
import re
import resource
import signal
import sys
import time
import traceback
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from house.limits import is_within

from scorecard.assessment import assess
from scorecard.case import Case
from scorecard.cli.scoring import Inputs, written
from scorecard.errors import InputError, Problem

SECONDS, MEBIBYTES = 1.4, 300  # of the processor, beside the half second in which the tool is loaded
AS_OF = "2026-11-25"
CELL = re.compile(r"[A-Z]{1,3}[1-9]\d{0,6}")


class TooLong(BaseException):
    """A run that takes more than it may; no handler of the tool catches it."""


@contextmanager
def at_most(seconds: float) -> Iterator[None]:
    """Stop what runs longer."""

    def stop(*_: object) -> None:
        raise TooLong

    before = signal.signal(signal.SIGPROF, stop)
    signal.setitimer(signal.ITIMER_PROF, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


def fault(folder: Path, *, thorough: bool) -> str | None:
    """Return what is wrong with how the tool takes a folder, in one line, or None.

    Parameters
    ----------
    folder : a sourcing folder
    thorough : whether to read it twice, and to write what ``score`` writes
    """
    before, held = {path: path.read_bytes() for path in folder.iterdir() if path.is_file()}, _most_held()
    try:
        start = time.process_time()
        with at_most(4 * SECONDS):
            found = _read(folder)
        took = time.process_time() - start
        with at_most(20 * SECONDS):
            wrong = _wrong(found) or _scored(folder, found, thorough=thorough)
    except TooLong:
        return f"too long: {_innermost()}"
    except Exception as error:
        return f"{type(error).__name__}: {_innermost()}"
    if not is_within(took, SECONDS):
        return "slow"
    if held < (most := _most_held()) and not is_within(most, MEBIBYTES):
        return "much memory"
    if before != {path: path.read_bytes() for path in folder.iterdir() if path.is_file()}:
        return "an input was changed"
    return wrong


def _most_held() -> float:
    """Return the most memory that the process has held so far, in MiB."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def _read(folder: Path) -> Case | InputError:
    try:
        return Inputs(folder=folder, as_of=AS_OF).read()
    except InputError as error:
        return error


def _innermost() -> str:
    """Return the line of the tool in which the exception that is being handled arose."""
    frames = traceback.extract_tb(sys.exc_info()[2])
    own = [frame for frame in frames if "scorecard" in frame.filename and "tests" not in frame.filename] or frames
    return f"{Path(own[-1].filename).name}:{own[-1].lineno} in {own[-1].name}"


def _told(found: Case | InputError) -> tuple[Problem, ...]:
    """Return every problem and warning."""
    if isinstance(found, InputError):
        return found.problems + found.warnings + found.set_aside
    return found.warnings + found.set_aside


def _wrong(found: Case | InputError) -> str | None:
    """Return what is wrong with the sentences about a folder."""
    if isinstance(found, InputError) and not found.problems:
        return "refused without a problem"
    return next((f"{problem.code}: {why}" for problem in _told(found) if (why := _no_sentence(problem))), None)


def _no_sentence(problem: Problem) -> str | None:
    """Return why a problem is no sentence with a place, or None."""
    place, words = problem.place, f"{problem.found}|{problem.wanted}"
    if not place.file or not problem.found or not problem.wanted:
        return "says too little"
    if place.cell is not None and not CELL.fullmatch(place.cell):
        return f"the cell {place.cell}"
    if not words.isprintable():
        return "cannot be printed"
    return "speaks of code" if re.search(r"Traceback|<class|object at 0x|Error\(", words) else None


def _scored(folder: Path, found: Case | InputError, *, thorough: bool) -> str | None:
    """Return what is wrong with the result of a folder that can be read, or with reading it again."""
    if thorough and repr(_told(_read(folder))) != repr(_told(found)):
        return "read otherwise the second time"
    if isinstance(found, InputError) or not len(found.table):
        return None
    inputs = Inputs(folder=folder, as_of=AS_OF)
    if thorough:
        written(inputs)
        return None
    json.dumps(assess(found, as_of=inputs.day()).as_json(), allow_nan=False)
    return None
