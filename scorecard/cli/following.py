"""What to do next about an order that was placed: follow it, check what came, keep what happened, order again."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from scorecard.case import Case
from scorecard.cli.invocation import quoted
from scorecard.cli.tables import visible
from scorecard.words import day_words

if TYPE_CHECKING:
    from scorecard.cli.scoring import Inputs
    from scorecard.orders import OrderRow


def next_of_latest(case: Case, inputs: "Inputs") -> str | None:
    """Return what to do next about the order that was placed last; None where none is under way."""
    if not case.orders:
        return None
    from scorecard.orders import latest, under_way

    quotes = case.costs.quotes if case.costs else ()
    placed = [under_way(case.orders, order.maker, quotes) for order in case.orders]
    last = latest([order for order in placed if order is not None])
    return None if last is None else next_of_order(case, last, inputs)


def next_of_order(case: Case, order: "OrderRow", inputs: "Inputs") -> str:
    """Return what to do next about an order."""
    maker, command = visible(order.maker), inputs.started.command
    named = quoted(maker)
    if order.arrived is None:
        on = f" of {day_words(order.began)}" if order.began else ""
        return (
            f"follow the order from {maker}{on}: {command('dates')}; when the pieces have come: "
            f"{command(inspect_of(order, case.orders))}"
        )
    if order.faulty is None:
        return f"check the pieces from {maker}{_in_time(order)}: {command(inspect_of(order, case.orders))}"
    if not _is_kept(case, order):
        return f"keep what happened with the order from {maker}, for the next one: {command(f'record {named}')}"
    source = inputs.folder if inputs.folder.name else "."
    return f"when you order again: {inputs.started.program} start NEW-FOLDER --from {quoted(str(source))}"


def inspect_of(order: "OrderRow", orders: "Sequence[OrderRow]") -> str:
    """Return the words that inspect one of these orders: with its row where its maker has others."""
    several = sum(one.maker == order.maker for one in orders) > 1
    return f"inspect --maker {quoted(visible(order.maker))}{f' --row {order.row}' if several else ''}"


def _in_time(order: "OrderRow") -> str:
    until = order.complain_until
    return f" before the last day to complain, {day_words(until)}" if until else ""


def _is_kept(case: Case, order: "OrderRow") -> bool:
    """Say whether the folder remembers that an order came, and how many of its pieces were faulty."""
    return any(
        (one.maker, one.ordered, one.arrived, one.faulty) == (order.maker, order.ordered, order.arrived, order.faulty)
        for one in case.memory
    )
