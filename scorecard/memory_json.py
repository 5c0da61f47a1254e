"""Records of own orders as JSON: as they are kept in the folder, and as results give them.

Enters: records, or what a file holds. Leaves: plain dictionaries, or records. Amounts stand as text, so that no digit
is lost.
"""

import json
from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from decimal import Decimal, InvalidOperation
from typing import Any

from scorecard.costing.amounts import Span
from scorecard.costing.quotes import WAYS
from scorecard.memory import Record, Totals

Json = dict[str, Any]

SCHEMA = "scorecard-memory/1"
LONGEST = 32_767
LARGEST = 10**9
DAYS = ("ordered", "promised", "arrived", "recorded_on")
COUNTS = {"number": 1, "pieces": 1, "faulty": 0, "opened": 1}
LATER = ("opened",)  # keys that records kept by earlier versions do not have
SPANS = ("paid", "quoted")


def record_json(record: Record) -> Json:
    """Return a record as it is kept."""
    return {
        "maker": record.maker,
        "item": record.item,
        "number": record.number,
        **{key: _day(getattr(record, key)) for key in DAYS},
        "pieces": record.pieces,
        "way": record.way,
        "faulty": record.faulty,
        "opened": record.opened,
        **{key: _span(getattr(record, key)) for key in SPANS},
        "quoted_in_full": record.quoted_in_full,
        "currency": record.currency,
    }


def _day(day: date | None) -> str | None:
    return None if day is None else day.isoformat()


def _span(span: Span | None) -> Json | None:
    return None if span is None else {"low": str(span.low), "high": None if span.high is None else str(span.high)}


def memory_bytes(records: Sequence[Record]) -> bytes:
    """Return the file memory.json with these records, one a line."""
    lines = ",\n".join(f"  {json.dumps(record_json(one), ensure_ascii=False)}" for one in records)
    return f'{{"schema": "{SCHEMA}", "records": [\n{lines}\n]}}\n'.encode()


def totals_json(made: Totals) -> Json:
    """Return what a maker's orders come to, shares of 100 as numbers."""
    return {
        "orders": made.orders,
        "judged": made.judged,
        "on_time": made.on_time,
        "on_time_share": None if made.on_time_share is None else float(f"{float(made.on_time_share):.12g}"),
        "pieces": made.pieces,
        "faulty": made.faulty,
        "in_part": made.in_part,
        "faulty_share": None if made.faulty_share is None else float(f"{float(made.faulty_share):.12g}"),
        "paid": _span(made.paid),
        "quoted": _span(made.quoted),
        "currency": made.currency,
    }


def record_of(found: object) -> Record | str:
    """Return a record as it was kept, or the key that is wrong; "" where it is no record at all."""
    if not isinstance(found, dict):
        return ""
    found = {**dict.fromkeys(LATER), **found}
    wrong = next(_wrong_keys(found), None)
    if wrong is not None:
        return wrong
    return Record(
        maker=found["maker"],
        item=found["item"],
        number=found["number"],
        pieces=found["pieces"],
        way=found["way"],
        faulty=found["faulty"],
        opened=found["opened"],
        quoted_in_full=found["quoted_in_full"],
        currency=found["currency"],
        ordered=_day_of(found["ordered"]),
        promised=_day_of(found["promised"]),
        arrived=_day_of(found["arrived"]),
        recorded_on=_day_of(found["recorded_on"]),
        paid=span_of(found["paid"]),
        quoted=span_of(found["quoted"]),
    )


def _day_of(text: str | None) -> date | None:
    return None if text is None else date.fromisoformat(text)


def _wrong_keys(found: Mapping[str, Any]) -> Iterator[str]:
    """Yield each key that is not there or holds what cannot be."""
    yield from (key for key in ("maker", "item") if not _is_text(found.get(key)))
    yield from (key for key in ("way", "currency") if key not in found or not _is_known(key, found[key]))
    yield from (key for key in DAYS if key not in found or not _is_day(found[key]))
    yield from (key for key, least in COUNTS.items() if key not in found or not _is_count(key, found[key], least))
    yield from (key for key in SPANS if key not in found or not _is_span(found[key]))
    if not isinstance(found.get("quoted_in_full"), bool):
        yield "quoted_in_full"
    among = found.get("opened") or found.get("pieces")
    if isinstance(among, int) and isinstance(found.get("faulty"), int) and found["faulty"] > among:
        yield "faulty"


def _is_text(value: object) -> bool:
    return isinstance(value, str) and bool(value.strip()) and len(value) <= LONGEST


def _is_known(key: str, value: object) -> bool:
    return value is None or (value in WAYS if key == "way" else isinstance(value, str) and len(value) == len("EUR"))


def _is_day(value: object) -> bool:
    try:
        return value is None or (isinstance(value, str) and bool(date.fromisoformat(value)))
    except ValueError:
        return False


def _is_count(key: str, value: object, least: int) -> bool:
    if value is None:
        return key != "number"
    return isinstance(value, int) and not isinstance(value, bool) and least <= value <= LARGEST


def _is_span(value: object) -> bool:
    try:
        return value is None or span_of(value) is not None
    except (ValueError, InvalidOperation):
        return False


def span_of(value: object) -> Span | None:
    """Return an amount as it was kept.

    Raises
    ------
    ValueError
        If it is none.
    """
    if value is None:
        return None
    if not isinstance(value, dict) or not isinstance(value.get("low"), str):
        raise ValueError("an amount has a low end")
    high = value.get("high")
    if high is not None and (not isinstance(high, str) or len(high) > 40):
        raise ValueError("the high end of an amount is a number or open")
    return Span(Decimal(value["low"][:40]), None if high is None else Decimal(high))
