"""What to ask a maker that was ordered from before: whether all is as it was, and whether set-up is charged again."""

from collections.abc import Mapping
from datetime import date

from scorecard.case import Case
from scorecard.remembered import own_orders_of
from scorecard.words import counted, day_words

SET_UP = "Is set-up charged again for this order?"


def again_questions(case: Case) -> Mapping[str, tuple[str, ...]]:
    """Return the questions by maker, as the sheet Makers spells it; none for one of whom no earlier order has arrived.

    Parameters
    ----------
    case : what was read
    """
    records = [one for one in own_orders_of(case) if one.arrived is not None]
    if not records:
        return {}
    from scorecard.memory import same_maker

    latest = {same_maker(one.maker): one for one in sorted(records, key=lambda one: one.ordered or date.min)}
    found = ((maker, latest.get(same_maker(maker))) for maker in case.table.makers)
    return {maker: (_same(one.ordered, one.pieces), SET_UP) for maker, one in found if one is not None}


def _same(ordered: date | None, pieces: int | None) -> str:
    on = f" on {day_words(ordered)}" if ordered else ""
    of = f" {counted(pieces, 'piece')}" if pieces else ""
    return (
        f"We ordered{of} from you{on}. Are the blank article, the print method and the factory the same now? "
        "If not, please say what is different."
    )
