"""The criteria file: what is wanted, and what makers are compared on, checked as a whole.

Enters: a path, or the file's bytes. Leaves: a reading, with every problem and warning at once; it never raises for
bad input.
"""

from collections.abc import Sequence
from dataclasses import field, replace
from hashlib import sha256
from pathlib import Path
from typing import TYPE_CHECKING

from scorecard.brief import Brief
from scorecard.case import SourceFile
from scorecard.criteria import CriteriaSet, Criterion, Firmness, WeightsNote
from scorecard.errors import Problem
from scorecard.frozen import dataclass
from scorecard.reading.brief_table import as_named, read_brief, read_firmness
from scorecard.reading.criteria_bytes import decoded, read_bytes
from scorecard.reading.criteria_order import problems_in_order, warnings_in_order
from scorecard.reading.criteria_toml import read_tables
from scorecard.reading.criterion_table import read_criterion
from scorecard.reading.toml_tables import Notes, Table, shown_value
from scorecard.reading.weights_table import DerivedWeights, read_weights

if TYPE_CHECKING:
    from scorecard.care import CareFacts
    from scorecard.inspection.settings import InspectionSettings
    from scorecard.order_terms import OrderTerms
    from scorecard.ordering.selling import Selling
    from scorecard.reading.cost_tables import CostTables
    from scorecard.scheduling.settings import ScheduleSettings

FORMAT = 1
OWN_TABLES = ("brief", "criteria", "weights", "firmness")
COST_TABLES = ("currencies", "import", "shipping", "cost")
FURTHER_TABLES = ("currencies", "import", "shipping", "schedule", "selling", "cost", "inspection", "care", "order")
TOP_KEYS = ("format", "title", *OWN_TABLES, *FURTHER_TABLES)


@dataclass(frozen=True, slots=True, kw_only=True)
class CriteriaReading:
    """What the criteria file says.

    Parameters
    ----------
    title : of the page; the item where the file gives none, and "" where it gives neither
    brief : None where its item or quantity cannot be told
    named : the same with stand-ins for what has a problem of its own, so that what is named counts as named
    criteria : those of which it can be told what they draw on and what answers are worth, so that the makers' answers
        can be checked even when other parts have problems
    criteria_set : the criteria with their weights; None while the file has any problem
    firmness : as given, or as usual
    costs : None where the file says nothing of costs
    selling, inspection, care, order : None where the file has no such table
    problems, warnings : in the order of the file
    source : None where the file could not be opened
    """

    title: str = ""
    brief: Brief | None = None
    named: Brief | None = None
    criteria: tuple[Criterion, ...] = ()
    criteria_set: CriteriaSet | None = None
    firmness: Firmness = field(default_factory=Firmness)
    costs: "CostTables | None" = None
    selling: "Selling | None" = None
    inspection: "InspectionSettings | None" = None
    care: "CareFacts | None" = None
    order: "OrderTerms | None" = None
    schedule: "ScheduleSettings | None" = None
    problems: tuple[Problem, ...] = ()
    warnings: tuple[Problem, ...] = ()
    source: SourceFile | None = None


def read_criteria(path: Path) -> CriteriaReading:
    """Return what a criteria file says, with every problem and warning.

    Parameters
    ----------
    path : the file; anything else, and nothing at all, is a problem of the reading
    """
    notes = Notes(path.name)
    content = read_bytes(path, notes)
    if content is None:
        return CriteriaReading(problems=tuple(notes.problems))
    return parse_criteria(content, path.name)


def parse_criteria(content: bytes, name: str) -> CriteriaReading:
    """Return what the bytes of a criteria file say, with every problem and warning.

    Parameters
    ----------
    content : of the file
    name : of the file, for messages
    """
    of_bytes = Notes(name)
    source = SourceFile(name=name, digest=sha256(content).hexdigest())
    text = decoded(content, of_bytes)
    if text is None:
        return CriteriaReading(problems=tuple(of_bytes.problems), warnings=tuple(of_bytes.warnings), source=source)
    tables = read_tables(text)
    of_tables = Notes(name, lost=frozenset(fault.path for fault in tables.faults if fault.is_lost and fault.path))
    reading = _read_top(Table(tables.values, (), of_tables))
    problems = (*of_bytes.problems, *problems_in_order(tables, of_tables))
    warnings = (*of_bytes.warnings, *warnings_in_order(tables, of_tables))
    criteria_set = None if problems else reading.criteria_set
    return replace(reading, problems=problems, warnings=warnings, criteria_set=criteria_set, source=source)


def _read_top(top: Table) -> CriteriaReading:
    """Return what the file's tables say; problems go to the table's notes."""
    top.known_keys(TOP_KEYS, "the file")
    title = top.text("title")
    brief, named = _read_brief(top)
    firmness = top.table("firmness")
    for key in FURTHER_TABLES:
        top.table(key)
    costs, selling = _read_costs(top, named), _read_selling(top, named)
    inspection, care = _read_arrival(top)
    schedule = _read_schedule(top)
    criteria, derived = _read_criteria_tables(top, named)
    _check_format(top)  # last, since it takes back what was said of unknown keys
    is_sound = not top.notes.problems and bool(criteria)
    return CriteriaReading(
        title=title or (brief.item if brief else ""),
        brief=brief,
        named=named,
        criteria=criteria,
        criteria_set=CriteriaSet(criteria, derived.note if derived else WeightsNote()) if is_sound else None,
        firmness=read_firmness(firmness) if firmness else Firmness(),
        costs=costs,
        selling=selling,
        inspection=inspection,
        care=care,
        order=_read_order(top, brief),
        schedule=schedule,
    )


def _read_costs(top: Table, brief: Brief | None) -> "CostTables | None":
    """Return what the file says of costs; None where it says nothing."""
    if not any(isinstance(top.values.get(key), dict) for key in COST_TABLES):
        return None
    from scorecard.reading.cost_tables import read_cost_tables

    return read_cost_tables(top, brief)


def _read_selling(top: Table, brief: Brief | None) -> "Selling | None":
    """Return what the file says of selling; None where it says nothing."""
    found = top.values.get("selling")
    if not isinstance(found, dict):
        return None
    from scorecard.reading.selling_table import read_selling

    return read_selling(Table(found, ("selling",), top.notes), brief)


def _read_arrival(top: Table) -> "tuple[InspectionSettings | None, CareFacts | None]":
    """Return what the file says of inspection and of care; None where it says nothing."""
    tables = [Table(found, (key,), top.notes) if isinstance(found := top.values.get(key), dict) else None
              for key in ("inspection", "care")]  # fmt: skip
    if not any(tables):
        return None, None
    from scorecard.reading.arrival_tables import read_care, read_inspection

    return read_inspection(tables[0]), read_care(tables[1])


def _read_schedule(top: Table) -> "ScheduleSettings | None":
    """Return what the file says of days; None where it says nothing."""
    values = top.values.get("schedule")
    if not isinstance(values, dict):
        return None
    from scorecard.reading.schedule_table import read_schedule_table

    return read_schedule_table(Table(values, top.at("schedule"), top.notes))


def _read_order(top: Table, brief: Brief | None) -> "OrderTerms | None":
    """Return what the file says of the order sheet; None where it says nothing."""
    found = top.values.get("order")
    if not isinstance(found, dict):
        return None
    from scorecard.reading.order_table import read_order

    return read_order(Table(found, ("order",), top.notes), brief)


def _check_format(top: Table) -> None:
    """Note a format that this version does not know; what it does not know of such a file is then no mistake."""
    number = top.whole("format", least=1)
    if number is not None and number > FORMAT:
        top.notes.take_back("unknown-key")
        found = f"the file has format {number} and is made for a later version"
        top.problem("later-version", "format", found, "Install the newest version of this tool")


def _read_brief(top: Table) -> tuple[Brief | None, Brief | None]:
    """Return the brief, and what it names in spite of problems."""
    table = top.table("brief")
    if "brief" not in top:
        top.problem(
            "missing-table", "brief", "the file has no [brief]", "Add it, with a line for item and for quantity"
        )
    brief = read_brief(table) if table else None
    return brief, as_named(table, brief) if table else None


def _read_criteria_tables(top: Table, named: Brief | None) -> tuple[tuple[Criterion, ...], DerivedWeights | None]:
    """Return the criteria that are sound, and where their weights come from judgements, these."""
    table = top.table("criteria") or Table({}, ("criteria",), top.notes)
    home = named.currency if named else None
    found = [
        read_criterion(one, has_weights_table="weights" in top, home=home)
        for key in table.values
        if (one := table.table(key))
    ]
    sound = tuple(criterion for criterion in found if criterion is not None)
    _warn_of_one_title(table, sound)
    if not table.values and not ("criteria" in top and top.values["criteria"] != {}):
        top.problem("no-criteria", "criteria", "the file has no criteria", "Add one, such as [criteria.years_trading]")
    if "weights" not in top:
        _check_any_weight(table)
        return sound, None
    weights = top.table("weights")
    derived = read_weights(weights, list(table.values)) if weights else None
    by_key = derived.weights if derived else {}
    return tuple(replace(criterion, weight=by_key.get(criterion.key, 0.0)) for criterion in sound), derived


def _warn_of_one_title(criteria: Table, found: Sequence[Criterion]) -> None:
    """Warn of each criterion with the title of one before it: no page could tell them apart."""
    titled: dict[str, str] = {}
    for criterion in found:
        first = titled.setdefault(" ".join(criterion.title.casefold().split()), criterion.key)
        if first != criterion.key:
            said = f"the title {shown_value(criterion.title)} is that of [criteria.{first}] too"
            wanted = "Give each criterion a title of its own, so that screen and page can tell them apart"
            criteria.notes.warn("same-title", (*criteria.at(criterion.key), "title"), said, wanted)


def _check_any_weight(criteria: Table) -> None:
    """Note that no criterion has a weight; one whose weight cannot be read may have meant some."""
    raw = [values.get("weight", 0) for values in criteria.values.values() if isinstance(values, dict)]
    if raw and len(raw) == len(criteria.values) and all(isinstance(w, int | float) and w == 0 for w in raw):
        found = "no criterion has a weight above 0, so there is nothing to rank by"
        criteria.problem("weights-all-zero", None, found, "Give the criteria that matter a weight, such as weight = 20")
