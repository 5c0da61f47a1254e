"""One table [criteria.…] of the criteria file.

Enters: the table. Leaves: a criterion, or None where it cannot be told what it draws on.
"""

from scorecard.criteria import Criterion, UnknownRule
from scorecard.reading.criterion_parts import Kind, kind_of, read_limit, read_steady, read_value, read_within, stand_in
from scorecard.reading.toml_tables import LONGEST_WORD, Table, shown_value
from scorecard.reading.units import ANY_MONEY, ColumnUnit
from scorecard.words import nearest, shortest

CRITERION_KEYS = (
    "title",
    "weight",
    "column",
    "measure",
    "unit",
    "per",
    "within",
    "points",
    "choices",
    "limit",
    "steady",
    "unknown",
    "question",
)
MEASURE_NAMES = (
    "response_days",
    "landed_cost_per_piece",
    "days_to_door",
    "sample_marks",
    "on_time_share",
    "faulty_share",
)
UNKNOWN_WORDS = ("worst", "middle", "best")

_UNKNOWN_OPTIONS = '"worst", "middle", "best" or a number of points from 0 to 100'


def read_criterion(table: Table, *, has_weights_table: bool, home: str | None = None) -> Criterion | None:
    """Return the criterion, or None where it cannot be told what it draws on.

    A part that has a problem is left out, or something stands in for it, so that the makers' answers can be checked
    all the same.

    Parameters
    ----------
    table : the criterion's own; its key is the last part of the table's path
    has_weights_table : whether the weights come from judgements, so that none may stand here
    home : the brief's currency, or ``ANY_MONEY`` where it cannot be told
    """
    key = table.path[-1]
    table.known_keys(CRITERION_KEYS, "a criterion")
    is_named = _has_fit_key(table, key)
    kind = kind_of(table)
    value = read_value(table) or stand_in(table, kind)
    title = table.text("title") or prettified(key)
    column, measure = _column(table, title), table.one_of("measure", MEASURE_NAMES)
    weight = _weight(table, has_weights_table=has_weights_table)
    unit = _unit(table, measure, home)
    per_quantity, unknown = _is_per_quantity(table, kind), _unknown(table)
    within = read_within(table, kind)
    limit = read_limit(table, kind, None if per_quantity else within)
    steady, question = read_steady(table, kind, within), table.text("question")
    if not is_named or (column is None and measure is None):
        return None
    return Criterion(
        key=key,
        title=title,
        weight=weight,
        value=value,
        column=column,
        measure=measure,
        unit=unit,
        per_quantity=per_quantity,
        within=within,
        limit=limit,
        steady=steady,
        unknown=unknown,
        question=question,
    )


def _unit(table: Table, measure: str | None, home: str | None) -> str:
    """Return the unit of the answers: of a measure that which the tool counts it in, whatever else is typed."""
    typed = (table.text("unit") if table.values.get("unit") != "" else None) or ""
    if measure == "response_days":
        return "working days" if typed in ("days", "day") else typed
    if measure != "landed_cost_per_piece" or home in (None, ANY_MONEY):
        return typed
    if typed and not ColumnUnit(typed).has_currency(home or ""):
        found = f"{shown_value(typed)} is not the brief's currency, {home}, in which landed costs are worked out"
        table.problem("other-currency", "unit", found, f'Delete the line, or write "{home}"')
    return home or ""


def prettified(key: str) -> str:
    """Return a key as a title.

    Examples
    --------
    >>> prettified("years_trading")
    'Years trading'
    """
    words = " ".join(key.replace("_", " ").replace("-", " ").split())
    return words[:1].upper() + words[1:] or key


def _has_fit_key(table: Table, key: str) -> bool:
    """Return whether a criterion's name can be written in a command and in a message."""
    is_fit = bool(key.strip()) and "=" not in key and key.isprintable()
    if not is_fit:
        wanted = "Name it with letters, digits and underscores, such as [criteria.years_trading]"
        found = "the criterion's name is empty, or holds an equals sign or a character that cannot be seen"
        table.problem("criterion-name", None, found, wanted)
    return is_fit


def _column(table: Table, title: str) -> str | None:
    """Return the heading of the column that a criterion draws on, or None where it draws on a measure."""
    if "measure" not in table:
        return table.text("column") if "column" in table else title
    if "column" in table:
        found = "the criterion has both a column and a measure"
        table.problem("column-and-measure", None, found, "Keep one: the column if you fill it in yourself")
        return table.text("column")
    return None


def _weight(table: Table, *, has_weights_table: bool) -> float:
    """Return the weight as typed; 0 where there is none, or one with a problem."""
    if has_weights_table:
        if "weight" in table:
            wanted = "Delete this line, or the whole [weights] table"
            table.problem("weight-besides-judgements", "weight", "the weights come from the [weights] table", wanted)
        return 0.0
    if "weight" not in table:
        found = "the criterion has no weight, so it counts as 0"
        table.notes.warn("no-weight", table.at("weight"), found, "Add a line such as weight = 10, or weight = 0")
        return 0.0
    weight = table.number("weight")
    if weight is not None and weight < 0:
        wanted = "Write 0 or more; what should count against a maker gets falling points"
        table.problem("negative-weight", "weight", f"the weight {shortest(weight)} is below 0", wanted)
    return max(weight or 0.0, 0.0)


def _is_per_quantity(table: Table, kind: Kind) -> bool:
    """Return whether answers are divided by the pieces wanted."""
    if table.one_of("per", ("quantity",)) is None:
        return False
    if kind == "choices" or "measure" in table:
        found = "only numbers from a column can be taken per quantity"
        table.problem(
            "per-without-numbers", "per", found, "Delete this line, or give the criterion points and a column"
        )
        return False
    return True


def _unknown(table: Table) -> UnknownRule:
    """Return what counts for unknown answers; the middle where it does not say."""
    match table.values.get("unknown", "middle"):
        case "worst" | "middle" | "best" as rule:
            return rule
        case str() as word:
            close = nearest(word, UNKNOWN_WORDS) if len(word) < LONGEST_WORD else None
            wanted = f'Write "{close}" if that is meant' if close else f"Write {_UNKNOWN_OPTIONS}"
            table.problem("not-an-option", "unknown", f"{shown_value(word)} cannot stand here", wanted)
        case _:
            points = table.number("unknown")
            if points is not None and 0 <= points <= 100:
                return points
            if points is not None:
                found = f"{shortest(points)} points are not between 0 and 100"
                table.problem("points-outside-scale", "unknown", found, f"Write {_UNKNOWN_OPTIONS}")
    return "middle"
