"""What reading a sheet brings to light, gathered in one pass: problems, warnings, and what was set aside."""

from dataclasses import dataclass, field
from pathlib import Path

from scorecard.errors import Place, Problem
from scorecard.reading.cells import Fault, row_and_column


def folder_named(path: Path) -> str:
    """Return the folder of a file in words, as it was named."""
    return "this folder" if path.parent == Path() else f"the folder {path.parent}"


def in_order(problems: list[Problem]) -> tuple[Problem, ...]:
    """Return the problems by row, then by column, each once."""
    return tuple(sorted(dict.fromkeys(problems), key=lambda problem: row_and_column(problem.place.cell)))


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
