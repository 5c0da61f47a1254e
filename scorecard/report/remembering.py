"""What own orders say of makers, as rows of words beside the ranking."""

from typing import Any

from scorecard.frozen import dataclass
from scorecard.memory import Totals
from scorecard.memory_json import span_of
from scorecard.memory_words import cost_words, faulty_words, on_time_words
from scorecard.report.texts import isolate
from scorecard.words import counted

MOST = 12  # makers told of


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnRow:
    """What own orders from one maker came to; "" where nothing is known."""

    maker: str
    orders: str
    on_time: str
    faulty: str
    paid: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Own:
    """The makers that were ordered from, by rank, and how many more there are."""

    rows: tuple[OwnRow, ...]
    more: int


def own_of(result: dict[str, Any]) -> Own | None:
    """Return what own orders say, or None where there is none.

    Parameters
    ----------
    result : of schema ``scorecard/1``
    """
    found = result.get("own_orders")
    if not found:
        return None
    places = {one["maker"]: place for place, one in enumerate(result["makers"])}
    rows = sorted(found, key=lambda one: places.get(one["maker"], len(places)))
    return Own(rows=tuple(_row(one) for one in rows[:MOST]), more=max(0, len(rows) - MOST))


def _row(one: dict[str, Any]) -> OwnRow:
    made = Totals(
        orders=one["orders"],
        judged=one["judged"],
        on_time=one["on_time"],
        pieces=one["pieces"],
        faulty=one["faulty"],
        in_part=one["in_part"],
        paid=span_of(one["paid"]),
        quoted=span_of(one["quoted"]),
        currency=one["currency"],
    )
    return OwnRow(
        maker=isolate(one["maker"]),
        orders=counted(made.orders, "order"),
        on_time=on_time_words(made),
        faulty=faulty_words(made),
        paid=cost_words(made),
    )
