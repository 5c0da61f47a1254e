"""What a measure was worked out from of each maker's own cells, as a digest.

Enters: a case. Leaves: for each measure a short text per maker; while it stays the same, an answer that moves does so
by the brief, rates, settings or the day, and not by anything that is new of the maker.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import fields
from hashlib import sha256
from typing import Any

from scorecard.answers import Answers
from scorecard.case import Case
from scorecard.criteria import Criterion

LENGTH = 16  # hexadecimal digits: enough to tell a maker's cells from those of the run before
WHERE = frozenset({"row", "place", "places", "maker", "recorded_on"})  # of a row that only moved, nothing is new

Seen = Mapping[str, Sequence[str]]


def _words(row: Any) -> str:
    return repr([getattr(row, one.name) for one in fields(row) if one.name not in WHERE])


def _by_maker(rows: Iterable[Any], words: Callable[[Any], str] = _words) -> Seen:
    found: dict[str, list[str]] = defaultdict(list)
    for row in rows:
        found[row.maker].append(words(row))
    return {maker: sorted(texts) for maker, texts in found.items()}


def _contacts(case: Case) -> list[Seen]:
    table, days = case.table, (case.table.asked_on, case.table.answered_on)
    return [{name: [str(each[at])] for at, name in enumerate(table.makers)} for each in days if len(each)]


def _costs(case: Case) -> list[Seen]:
    if case.costs is None:
        return []
    parts = [case.costs.quotes, case.costs.offers, case.costs.makers.values()]
    stages = _by_maker(case.samples, lambda one: repr((one.kind, one.asked_on, one.received_on, one.decision)))
    return [*map(_by_maker, parts), stages]


def _samples(case: Case) -> list[Seen]:
    return [_by_maker(case.samples)]


def _orders(case: Case) -> list[Seen]:
    if not case.memory:
        return [_by_maker(case.orders)]
    from scorecard.memory import same_maker

    names = {same_maker(name): name for name in case.table.makers}
    kept: dict[str, list[str]] = defaultdict(list)
    for record in case.memory:
        kept[names.get(same_maker(record.maker), record.maker)].append(_words(record))
    return [_by_maker(case.orders), kept]


SEEN: Mapping[str, Callable[[Case], list[Seen]]] = {
    "response_days": _contacts,
    "sample_marks": _samples,
    "landed_cost_per_piece": _costs,
    "days_to_door": _costs,
    "on_time_share": _orders,
    "faulty_share": _orders,
}


def drawn_from(case: Case, criterion: Criterion, makers: Sequence[int]) -> list[str] | None:
    """Return a digest of what a measure draws on, for each of some makers; None where a criterion draws on a column.

    Parameters
    ----------
    makers : positions in the sheet
    """
    if criterion.measure is None:
        return None
    seen = SEEN[criterion.measure](case) if criterion.measure in SEEN else []
    typed = case.table.answers.get(criterion.key)
    return [_digest(seen, case.table.makers[at], typed, at) for at in makers]


def _digest(seen: Sequence[Seen], maker: str, typed: Answers | None, at: int) -> str:
    own = "" if typed is None else f"{typed.low[at]} {typed.high[at]}"
    text = repr([own, *(list(each.get(maker, ())) for each in seen)])
    return sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:LENGTH]
