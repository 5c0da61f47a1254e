"""The table [schedule] of the criteria file: how many days each step takes, and when makers are closed.

Enters: the table. Leaves: the settings; a part with a problem keeps what is usual.
"""

from collections.abc import Callable, Iterator
from typing import TypeVar

from scorecard.costing.quotes import WAYS, Way
from scorecard.reading.toml_amounts import place_of, span_at, tables_at, words_at
from scorecard.reading.toml_codes import country_at, is_country_key
from scorecard.reading.toml_tables import Table
from scorecard.scheduling.settings import AS_SET, COUNTS, Days, OwnClosure, ScheduleSettings

WHOLE_KEYS = (
    "receiving_days",
    "approval_days",
    "sample_rounds",
    "long_holiday_days",
    "stop_before_days",
    "stop_after_days",
    "nearby_days",
)
RANGE_KEYS = ("clearance_days", "production_days", "proof_days", "sample_days", "sample_post_days")
OTHER_KEYS = (
    "production_counts",
    "ways",
    "transit",
    "near_transit",
    "spare_days",
    "regions",
    "closures",
    "on",
    "source",
)
SCHEDULE_KEYS = (*WHOLE_KEYS, *RANGE_KEYS, *OTHER_KEYS)
CLOSURE_KEYS = ("from", "to", "country", "maker", "why")
MOST_DAYS = 400
MOST_ROUNDS = 9
Each = TypeVar("Each")


def read_schedule_table(table: Table) -> ScheduleSettings:
    """Return what the table says; problems go to its notes."""
    table.known_keys(SCHEDULE_KEYS, "[schedule]")
    _ = table.day("on")
    read: dict[str, object] = {key: _whole(table, key) for key in WHOLE_KEYS}
    read |= {key: days_at(table, key) for key in RANGE_KEYS}
    read |= {
        "production_counts": table.one_of("production_counts", COUNTS),
        "ways": tuple(words_at(table, "ways", WAYS)),
        "transit": dict(_by_way(table, "transit", days_at)),
        "near_transit": dict(_by_way(table, "near_transit", days_at)),
        "spare": dict(_spare(table)),
        "regions": dict(_regions(table)),
        "closures": tuple(_closures(table)),
        "source": table.text("source") or "",
    }
    given = {key: value for key, value in read.items() if value is not None}
    return ScheduleSettings(given=frozenset(table.values), **given)  # type: ignore[arg-type]  # each of its own kind


def days_at(table: Table, key: str) -> Days | None:
    """Return whole days or a range of them; None where absent, or once its problem is noted."""
    span = span_at(table, key, "days") if key in table else None
    if span is None:
        return None
    if max(span.low, span.high or 0) > MOST_DAYS:
        _too_many(table, key)
        return None
    return Days.of(span)


def _whole(table: Table, key: str) -> int | None:
    number = table.whole(key, least=1 if key == "long_holiday_days" else 0)
    if number is None:
        return None
    if key == "sample_rounds" and number > MOST_ROUNDS:
        wanted = f"Write how many samples you ask for before you order, {MOST_ROUNDS} at most"
        table.problem("too-high", key, f"{number} rounds of samples are not for this", wanted)
        return None
    if number > MOST_DAYS:
        _too_many(table, key)
        return None
    return number


def _too_many(table: Table, key: str) -> None:
    found = f"more than {MOST_DAYS} days"
    table.problem("too-high", key, found, f"Write how many days it takes, {MOST_DAYS} at most")


def _by_way(table: Table, key: str, read: Callable[[Table, str], Each | None]) -> Iterator[tuple[Way, Each]]:
    """Yield what a table inside this one says of each way."""
    inner = table.table(key)
    if inner is None:
        return
    inner.known_keys(WAYS, key)
    yield from ((way, value) for way in WAYS if (value := read(inner, way)) is not None)


def _spare(table: Table) -> Iterator[tuple[Way, int]]:
    """Yield the days kept spare: of each way, or one number for all."""
    if isinstance(table.values.get("spare_days"), dict):
        yield from _by_way(table, "spare_days", _whole)
        return
    number = _whole(table, "spare_days")
    yield from () if number is None else ((way, number) for way in WAYS)


def _regions(table: Table) -> Iterator[tuple[str, str]]:
    inner = table.table("regions")
    if inner is None:
        return
    for code in inner.values:
        region = inner.text(code)
        if is_country_key(inner, code) and region is not None:
            yield code, region


def _closures(table: Table) -> Iterator[OwnClosure]:
    for one in tables_at(table, "closures"):
        one.known_keys(CLOSURE_KEYS, "a closure")
        one.required(("from", "to"), "a closure")
        first, last, country, maker = one.day("from"), one.day("to"), country_at(one, "country"), one.text("maker")
        if ("country" in one) == ("maker" in one):
            wanted = 'Add one of the two, such as: country = "CN"'
            one.problem("closure-of-whom", None, "a closure is of one country or of one maker", wanted)
            continue
        if first is None or last is None or (country or maker) is None:
            continue
        if last < first:
            found = f"it ends on {last.isoformat()}, before it begins on {first.isoformat()}"
            one.problem("reversed-range", "to", found, "Exchange the two")
        elif (last - first).days >= MOST_DAYS:
            _too_many(one, "to")
        else:
            why, place = one.text("why") or AS_SET, place_of(one, None)
            yield OwnClosure(first=first, last=last, country=country, maker=maker, why=why, place=place)
