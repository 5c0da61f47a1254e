"""Own orders in words: one order as it went, and what a maker's orders come to. Sentences without the full stop."""

from collections.abc import Iterator
from datetime import date

from scorecard.codes import amount_range
from scorecard.costing.amounts import OPEN, Span
from scorecard.memory import Record, Totals
from scorecard.words import counted, day_words, rounded

CHANGING = (
    ("goods", "item"),
    ("pieces", "pieces"),
    ("way", "way"),
    ("promised for", "promised"),
    ("arrived on", "arrived"),
    ("faulty pieces", "faulty"),
    ("pieces opened", "opened"),
    ("paid", "paid"),
    ("quoted", "quoted"),
    ("quoted without a gap", "quoted_in_full"),
    ("currency", "currency"),
    ("spelt", "maker"),
)


def record_words(record: Record, as_of: date) -> str:
    """Return one order as it went.

    Parameters
    ----------
    record : one order
    as_of : the day that stands for today
    """
    return "; ".join(_parts(record, as_of))


def _parts(record: Record, as_of: date) -> Iterator[str]:
    pieces = counted(record.pieces, "piece") if record.pieces else "pieces not noted"
    began = f" on {day_words(record.ordered)}" if record.ordered else ", the day is not noted"
    yield f"ordered{began}: {pieces}{f', by {record.way}' if record.way else ''}"
    yield arrival_words(record, as_of)
    if record.faulty is not None:
        yield f"faulty: {_among(record, record.faulty)}"
    elif record.arrived:
        yield "faulty pieces not noted"
    if record.paid is not None or record.arrived:
        yield money_words(record)


def _among(record: Record, faulty: int) -> str:
    """Return the faulty pieces, and of how many: of those opened, where that was not just the order."""
    among = record.counted_among
    if among is None:
        return str(faulty)
    opened = " opened" if record.opened_some else ""
    return f"{faulty} of {among}{opened} ({rounded(100 * faulty / among)} of 100)"


def changes_words(before: Record, after: Record) -> list[str]:
    """Return what changed from one record of an order to the next, each with what it was.

    Examples
    --------
    >>> changes_words(Record(maker="A", item="mug", faulty=6), Record(maker="A", item="mug", faulty=9, opened=32))
    ['faulty pieces 9 (before: 6)', 'pieces opened 32 (before: not noted)']
    """
    return [
        f"{name} {_noted(after, key)} (before: {_noted(before, key)})"
        for name, key in CHANGING
        if getattr(before, key) != getattr(after, key)
    ]


def _noted(record: Record, key: str) -> str:
    value = getattr(record, key)
    if value is None:
        return "not noted"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, date):
        return day_words(value)
    return _amount(value, record.currency or "") if isinstance(value, Span) else str(value)


def arrival_words(record: Record, as_of: date) -> str:
    """Return when it was promised and when it came."""
    promised = f"promised for {day_words(record.promised)}" if record.promised else "no day was promised"
    late = record.days_late(as_of)
    if record.arrived is None:
        return f"{promised}, not here yet" + (f", {counted(late, 'day')} late so far" if late else "")
    arrived = f"{promised}, arrived on {day_words(record.arrived)}"
    if late is None:
        return arrived
    if late == 0:
        return f"{arrived}, on the day"
    return f"{arrived}, {counted(abs(late), 'day')} {'late' if late > 0 else 'early'}"


def money_words(record: Record) -> str:
    """Return what was paid against what was quoted."""
    currency = record.currency or ""
    if record.paid is None:
        return "what it cost in all is not noted"
    paid = f"paid {_amount(record.paid, currency)}"
    if record.quoted is None:
        return f"{paid}; no quote that held that day was for so many pieces"
    if not record.quoted_in_full:
        return f"{paid}; quoted at least {_amount(record.quoted, currency)}, with costs missing"
    return f"{paid}; quoted {_amount(record.quoted, currency)}, {against_words(record.paid, record.quoted)}"


def _amount(span: Span, currency: str) -> str:
    return amount_range(span.low, OPEN if span.high is None else span.high, currency)


def against_words(paid: Span, quoted: Span) -> str:
    """Return by how much what was paid is off what was quoted.

    Examples
    --------
    >>> against_words(Span.of(110), Span.of(100)), against_words(Span.of(100), Span.of(90, 120))
    ('10.0 % more', 'within what was quoted')
    """
    if quoted.high is not None and paid.low > quoted.high > 0:
        return f"{rounded(float(100 * (paid.low - quoted.high) / quoted.high))} % more"
    if paid.high is not None and paid.high < quoted.low:
        return f"{rounded(float(100 * (quoted.low - paid.high) / quoted.low))} % less"
    return "just as quoted" if paid.is_known and quoted.is_known else "within what was quoted"


def totals_words(made: Totals) -> str:
    """Return what a maker's own orders come to, in one sentence.

    Examples
    --------
    >>> totals_words(Totals(orders=2, judged=2, on_time=1, pieces=400, faulty=9))
    '2 own orders: 1 of 2 on time; 9 of 400 pieces faulty (2.3 of 100)'
    """
    return f"{counted(made.orders, 'own order')}: {listed_parts(made)}"


def listed_parts(made: Totals) -> str:
    """Return on time, faulty and paid against quoted, as far as they are known."""
    return "; ".join(part for part in (on_time_words(made), faulty_words(made), cost_words(made)) if part) or (
        "nothing to tell of them yet"
    )


def on_time_words(made: Totals) -> str:
    """Return how many came by the promised day; "" where none can be judged."""
    return f"{made.on_time} of {made.judged} on time" if made.judged else ""


def faulty_words(made: Totals) -> str:
    """Return how many pieces were faulty; "" where none were counted."""
    if made.faulty_share is None:
        return ""
    opened = " opened" if made.in_part else ""
    return f"{made.faulty} of {made.pieces}{opened} pieces faulty ({rounded(float(made.faulty_share))} of 100)"


def cost_words(made: Totals) -> str:
    """Return what was paid against what was quoted; "" where it cannot be told."""
    if made.paid is None or made.quoted is None:
        return ""
    words = against_words(made.paid, made.quoted)
    return f"paid {words} than quoted" if words.endswith(("more", "less")) else f"paid {words}"
