"""What is wrong with a criteria file in the order of its lines, less what a fault of the text brings about elsewhere.

Enters: the faults of the text, and the problems and warnings of its tables. Leaves: one list.
"""

from bisect import bisect
from dataclasses import replace

from scorecard.errors import Place, Problem
from scorecard.reading.criteria_toml import Tables
from scorecard.reading.toml_scan import Fault, Path
from scorecard.reading.toml_tables import Notes, dotted

# What a lost line or table brings about: not to be told on top of the loss itself.
FOLLOWS_A_LOSS = frozenset(
    {
        "empty-limit",
        "missing-key",
        "missing-table",
        "no-criteria",
        "no-points",
        "no-weight",
        "not-ranked",
        "pair-missing",
        "unknown-choice",
        "unknown-criterion",
        "weights-all-zero",
    }
)

# Put right by a guess: what is then found at the same key may come from the guess.
_GUESSED = frozenset({"comma-in-number", "percent-sign"})


def problems_in_order(tables: Tables, notes: Notes) -> list[Problem]:
    """Return the faults and the problems in the order of the file."""
    faults = [(fault.line, _as_problem(fault, notes.file)) for fault in tables.faults]
    return _sorted([*faults, *_kept(tables, notes, notes.problems)])


def warnings_in_order(tables: Tables, notes: Notes) -> list[Problem]:
    """Return the warnings in the order of the file."""
    return _sorted(_kept(tables, notes, notes.warnings))


def _sorted(numbered: list[tuple[int, Problem]]) -> list[Problem]:
    """Return problems by their lines, each once."""
    return list(dict.fromkeys(problem for _, problem in sorted(numbered, key=lambda pair: pair[0])))


def _as_problem(fault: Fault, file: str) -> Problem:
    place = Place(file=file, key=dotted(fault.path) if fault.path else None)
    return Problem(code=fault.code, place=place, found=fault.found, wanted=fault.wanted)


def _kept(tables: Tables, notes: Notes, problems: list[Problem]) -> list[tuple[int, Problem]]:
    """Return the problems that stand for themselves, with their lines."""
    placed = [(notes.paths[problem.place.key], problem) for problem in problems]
    guessed = {fault.path for fault in tables.faults if fault.code in _GUESSED and fault.path}
    lost = {fault.path for fault in tables.faults if fault.is_lost and fault.path}
    above_lost = {above for path in lost for above in _upwards(path)}

    def follows(path: Path, code: str) -> bool:
        upwards = _upwards(path)
        is_near_loss = not tables.is_whole or path in above_lost or not lost.isdisjoint(upwards)
        return (code in FOLLOWS_A_LOSS and is_near_loss) or not guessed.isdisjoint(upwards)

    kept = [(path, problem) for path, problem in placed if not follows(path, problem.code)]
    off = sorted(tables.off.items()) if any(problem.code == "unknown-key" for _, problem in kept) else []
    return [(_line(tables, path), _with_header(tables, off, path, problem)) for path, problem in kept]


def _with_header(tables: Tables, off: list[tuple[int, str]], path: Path, problem: Problem) -> Problem:
    """Return a problem of an unknown key with the header that stands behind a # between its table and itself."""
    before = bisect(off, (tables.lines.get(path, 0), ""))
    number, header = off[before - 1] if before else (0, "")
    if problem.code != "unknown-key" or number <= tables.lines.get(path[:-1], 0):
        return problem
    return replace(problem, wanted=f"If it belongs to {header}, take the # away from line {number}, {header}, too")


def _upwards(path: Path) -> list[Path]:
    """Return a path and those of the tables that it stands in, itself first."""
    return [path[:length] for length in range(len(path), 0, -1)]


def _line(tables: Tables, path: Path) -> int:
    """Return the line of a key, or of the table where it would stand; 0 where that is not there either."""
    return next((tables.lines[place] for place in _upwards(path) if place in tables.lines), 0)
