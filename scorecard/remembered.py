"""What a case remembers of own orders: those of the sheet Orders and those kept from before, each once."""

from collections.abc import Mapping
from datetime import date
from typing import TYPE_CHECKING

from scorecard.case import Case

if TYPE_CHECKING:
    from scorecard.memory import Record, Totals


def own_orders_of(case: Case) -> "tuple[Record, ...]":
    """Return every own order once, oldest record first, then as the sheet has them; none while there is none."""
    if not case.orders and not case.memory:
        return ()
    from scorecard.memory import own_orders, records_of

    return own_orders(case.memory, records_of(case.orders, case.brief.item, case.brief.currency))


def totals_of(case: Case, as_of: date) -> "Mapping[str, Totals]":
    """Return what own orders come to, by maker as the sheet Makers spells it; those without an order are left out.

    Parameters
    ----------
    case : what was read
    as_of : the day that stands for today
    """
    records = own_orders_of(case)
    if not records:
        return {}
    from scorecard.memory import same_maker, totals

    by_maker: dict[str, list[Record]] = {}
    for record in records:
        by_maker.setdefault(same_maker(record.maker), []).append(record)
    found = ((maker, by_maker.get(same_maker(maker))) for maker in case.table.makers)
    return {maker: totals(own, as_of) for maker, own in found if own}
