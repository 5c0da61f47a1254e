"""A sourcing folder as one case: the criteria file and the makers, every problem of both at once.

Enters: a folder, or single files in place of its own. Leaves: the case, or an ``InputError`` with all that is wrong.
"""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from scorecard.case import Case, day_meant
from scorecard.design_minimums import BELOW_MINIMUM, below_minimums
from scorecard.errors import InputError, Place, Problem
from scorecard.reading.criteria_file import read_criteria
from scorecard.reading.dates import DatesReading, ReadSoFar
from scorecard.reading.findings import each_once
from scorecard.reading.makers import ROW_LIMIT, ReadingOptions, read_makers
from scorecard.reading.memory_file import MemoryReading, read_memory
from scorecard.reading.once_filled import read_costs, read_dates, read_dealings

if TYPE_CHECKING:
    from scorecard.costing.inputs import CostInputs

CRITERIA_FILE = "criteria.toml"
MAKERS_FILES = ("makers.xlsx", "makers.csv")
OTHER_ENDINGS = frozenset({".xls", ".xlsm", ".xlsb", ".xltx", ".ods", ".numbers", ".tsv", ".txt", ".pdf"})


def read_folder(  # noqa: PLR0913 - each stands for an option of the command line
    path: str | Path,
    *,
    criteria_file: str | Path | None = None,
    makers_file: str | Path | None = None,
    set_aside: bool = False,
    as_of: date | None = None,
    row_limit: int = ROW_LIMIT,
    dates: bool = False,
) -> Case:
    """Read a sourcing folder.

    Parameters
    ----------
    path : of the folder
    criteria_file, makers_file : single files in place of the folder's own
    set_aside : whether an answer that cannot be read is taken as unknown
    as_of : today; days after it are problems. None: the clock's day
    row_limit : the most rows of makers
    dates : whether a schedule is wanted even where no maker has said how many days anything takes

    Returns
    -------
    The case; its table may be empty, which is a warning.

    Raises
    ------
    InputError
        With every problem of both files.
    TypeError
        If ``as_of`` is no day.

    Examples
    --------
    >>> from scorecard.errors import InputError
    >>> try:
    ...     read_folder("no such folder")
    ... except InputError as error:
    ...     print(error)
    no such folder: there is no folder of this name. Lay out a sourcing folder with: scorecard start FOLDER.
    """
    folder = Path(path)
    if criteria_file is None or makers_file is None:
        refuse_empty(folder, all_is_missing=criteria_file is None and makers_file is None)
    chosen, warnings = (Path(makers_file), ()) if makers_file is not None else _makers_file(folder)
    criteria = read_criteria(Path(criteria_file) if criteria_file is not None else folder / CRITERIA_FILE)
    options = ReadingOptions(set_aside=set_aside, as_of=day_meant(as_of), row_limit=row_limit)
    makers = read_makers(chosen, criteria=criteria.criteria, brief=criteria.named, options=options)
    read = ReadSoFar(
        criteria=criteria,
        makers=makers,
        costs=read_costs(makers, criteria, options),
        dealings=read_dealings(makers, criteria, options),
    )
    return _case(read, read_dates(read, options, asked_for=dates), read_memory(folder), warnings)


def _case(read: ReadSoFar, dates: DatesReading, memory: MemoryReading, warnings: Sequence[Problem]) -> Case:
    """Return the readings as one case, if none has a problem."""
    criteria, makers, costs, dealings = read.criteria, read.makers, read.costs, read.dealings
    problems = (
        criteria.problems + makers.problems + costs.problems + dealings.problems + dates.problems + memory.problems
    )
    of_sheets = (*makers.warnings, *_of_designs(read), *costs.warnings, *dealings.warnings, *dates.warnings)
    noticed = tuple(dict.fromkeys((*criteria.warnings, *warnings, *of_sheets)))
    set_aside = makers.set_aside + costs.set_aside + dealings.set_aside
    if problems or criteria.brief is None or criteria.criteria_set is None or makers.table is None:
        raise InputError(problems, noticed, set_aside)
    return Case(
        title=criteria.title,
        brief=criteria.brief,
        criteria=criteria.criteria_set,
        table=makers.table,
        firmness=criteria.firmness,
        warnings=noticed,
        set_aside=set_aside,
        costs=_with_samples(read),
        selling=criteria.selling,
        samples=dealings.samples,
        checks=dealings.checks,
        orders=dealings.orders,
        inspection=criteria.inspection,
        care=criteria.care,
        order=criteria.order,
        memory=memory.records,
        schedule=dates.inputs,
        sources=tuple(source for source in (criteria.source, makers.source) if source is not None),
    )


def _of_designs(read: ReadSoFar) -> tuple[Problem, ...]:
    """Return the warnings where designs are ordered in fewer pieces than a maker's minimum per design."""
    terms, table = read.criteria.order, read.makers.table
    return () if terms is None or table is None else each_once(below_minimums(terms, table), BELOW_MINIMUM)


def _with_samples(read: ReadSoFar) -> "CostInputs | None":
    """Return the inputs of landed costs with the samples that the sheet Samples shows to be paid for."""
    inputs, rounds = read.costs.inputs, read.dealings.samples
    if inputs is None or not rounds:
        return inputs
    from scorecard.samples import asked_of

    sampled = inputs.settings.sampled | asked_of(rounds)
    return replace(inputs, settings=replace(inputs.settings, sampled=sampled))


def refuse_empty(folder: Path, all_is_missing: bool) -> None:
    """Turn away a folder that is not there, or in which nothing of a sourcing folder is."""
    wanted = "Lay out a sourcing folder with: scorecard start FOLDER"
    place = Place(file=folder.resolve().name if folder == Path() else str(folder))
    if folder.is_file():
        found, instead = "this is a file, not a folder", "Name the folder that it is in"
        raise InputError([Problem(code="not-a-folder", place=place, found=found, wanted=instead)])
    if not folder.is_dir():
        problem = Problem(code="no-such-folder", place=place, found="there is no folder of this name", wanted=wanted)
        raise InputError([problem])
    known = (CRITERIA_FILE, f"{CRITERIA_FILE}.txt", *MAKERS_FILES)
    is_begun = any((folder / name).exists() for name in known) or _of_another_kind(folder) is not None
    if all_is_missing and not is_begun:
        found = f"there is neither {CRITERIA_FILE} nor {MAKERS_FILES[0]} in the folder"
        raise InputError([Problem(code="nothing-in-folder", place=place, found=found, wanted=wanted)])


def _makers_file(folder: Path) -> tuple[Path, tuple[Problem, ...]]:
    """Return the folder's file of makers, the workbook where both are there, with a warning."""
    workbook, text = (folder / name for name in MAKERS_FILES)
    if not workbook.exists():
        return (text if text.exists() else _of_another_kind(folder) or workbook), ()
    if not text.exists():
        return workbook, ()
    found = f"both {workbook.name} and {text.name} are there, and {workbook.name} is read"
    wanted = f"To read the other, name it: --makers {text.name}"
    return workbook, (Problem(code="two-makers-files", place=Place(file=text.name), found=found, wanted=wanted),)


def _of_another_kind(folder: Path) -> Path | None:
    """Return the folder's file of makers that is of a kind which is not read, and says so when it is."""
    stem = Path(MAKERS_FILES[0]).stem
    found = (one for one in folder.glob("*") if one.stem.casefold() == stem and one.suffix.lower() in OTHER_ENDINGS)
    return min(found, default=None)
