"""What can go wrong, and where: places, problems, and the tree of expected errors.

::

    ScorecardError                 exit status 1, unless a branch below says otherwise
    ├── UsageError        2        the command was put wrongly
    ├── InputError        3        the files have problems; all of them are in ``.problems``
    └── WriteError        1        an output could not be written
"""

from collections.abc import Iterable

from scorecard.frozen import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where in the user's files something stands: a sheet's cell, or a key of the criteria file.

    Parameters
    ----------
    file : the file's name as the user knows it, without its folder
    sheet : the sheet's name, or None in a criteria file or a .csv
    cell : such as "D7", or None
    key : the TOML key with dots, such as "criteria.years_trading.weight", or None
    """

    file: str | None = None
    sheet: str | None = None
    cell: str | None = None
    key: str | None = None

    def __str__(self) -> str:
        inner = self.key or "!".join(part for part in (self.sheet, self.cell) if part)
        return ", ".join(part for part in (self.file, inner) if part)


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One thing the user should know of an input: a problem, or a warning where the list that holds it says so.

    Parameters
    ----------
    code : a stable name of the kind of problem, such as "not-a-number"
    place : where it stands
    found : what stands there, in words ("'about 100' is not a number of pieces")
    wanted : what to write instead ("Write a number, a range such as 3-5, or leave the cell empty")
    """

    code: str
    place: Place
    found: str
    wanted: str

    def __str__(self) -> str:
        return f"{self.place}: {self.found}. {self.wanted}."

    def as_json(self) -> dict[str, str | None]:
        """Return the problem as the machine-readable result gives it."""
        place = self.place
        return {
            "code": self.code,
            "file": place.file,
            "sheet": place.sheet,
            "cell": place.cell,
            "key": place.key,
            "found": self.found,
            "wanted": self.wanted,
        }


class ScorecardError(Exception):
    """An expected failure, whose message is a sentence for the user."""

    exit_status = 1


class UsageError(ScorecardError):
    """The command, or a call, was put wrongly."""

    exit_status = 2


class InputError(ScorecardError):
    """The files have problems: every one of them, in the order in which they stand.

    Attributes
    ----------
    problems : what stops the run
    warnings : what was noticed besides
    set_aside : cells that could not be read and do not stop the run, on the user's word
    """

    exit_status = 3

    def __init__(
        self, problems: Iterable[Problem], warnings: Iterable[Problem] = (), set_aside: Iterable[Problem] = ()
    ) -> None:
        self.problems = tuple(problems)
        self.warnings = tuple(warnings)
        self.set_aside = tuple(set_aside)
        super().__init__("\n".join(str(problem) for problem in self.problems))


class WriteError(ScorecardError):
    """An output could not be written."""
