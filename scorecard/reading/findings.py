"""What reading a sheet brings to light, gathered in one pass: problems, warnings, and what was set aside."""

from collections.abc import Iterable, Sequence
from dataclasses import field, replace
from pathlib import Path

from scorecard.errors import Place, Problem
from scorecard.frozen import dataclass
from scorecard.reading.cells import Fault, row_and_column
from scorecard.words import counted, listed

CELLS_NAMED = 5  # further cells with the same fault


def folder_named(path: Path) -> str:
    """Return the folder of a file in words, as it was named."""
    return "this folder" if path.parent == Path() else f"the folder {path.parent}"


def in_order(problems: list[Problem]) -> tuple[Problem, ...]:
    """Return the problems by row, then by column, each once."""
    return tuple(sorted(dict.fromkeys(problems), key=lambda problem: row_and_column(problem.place.cell)))


def each_once(problems: Iterable[Problem], code: str) -> tuple[Problem, ...]:
    """Return problems, those of one code that say the same as one at the first cell, which names the others."""
    found: dict[object, list[Problem]] = {}
    for problem in problems:
        key = (problem.code, problem.found, problem.wanted) if problem.code == code else problem
        found.setdefault(key, []).append(problem)
    return tuple(_with_others(alike) for alike in found.values())


def _with_others(alike: Sequence[Problem]) -> Problem:
    first, others = alike[0], alike[1:]
    if not others:
        return first
    cells = [f"{problem.place.sheet or ''}!{problem.place.cell}".lstrip("!") for problem in others]
    more = len(cells) - CELLS_NAMED
    named = listed([*cells[:CELLS_NAMED], *([f"{more} more"] if more > 0 else [])])
    return replace(first, found=f"{first.found}, here and in {counted(len(cells), 'more cell')}: {named}")


@dataclass(slots=True, kw_only=True)
class Findings:
    """The findings of one sheet.

    Parameters
    ----------
    file, sheet : where the cells stand; sheet is None for a .csv
    takes_unreadable_as_unknown : whether an answer that cannot be read is set aside, on the user's word
    """

    file: str
    sheet: str | None = None
    takes_unreadable_as_unknown: bool = False
    problems: list[Problem] = field(default_factory=list)
    warnings: list[Problem] = field(default_factory=list)
    set_aside: list[Problem] = field(default_factory=list)

    def problem_at(self, cell: str | None, fault: Fault) -> Problem:
        """Return a fault as a problem with its place."""
        place = Place(file=self.file, sheet=self.sheet, cell=cell)
        return Problem(code=fault.code, place=place, found=fault.found, wanted=fault.wanted)

    def refuse(self, cell: str | None, fault: Fault) -> None:
        """Note what stops the run, whatever may be set aside."""
        self.problems.append(self.problem_at(cell, fault))

    def refuse_answer(self, cell: str, fault: Fault) -> None:
        """Note an answer that cannot be read: a problem, or set aside on the user's word."""
        goes_to = self.set_aside if self.takes_unreadable_as_unknown else self.problems
        goes_to.append(self.problem_at(cell, fault))

    def warn(self, cell: str | None, fault: Fault) -> None:
        """Note what the user should know, though it stops nothing."""
        self.warnings.append(self.problem_at(cell, fault))
