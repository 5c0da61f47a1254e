"""Landed costs as the machine-readable result gives them: amounts in the brief's currency, null where open."""

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal
from typing import Any

from scorecard.costing.amounts import OPEN, Span
from scorecard.costing.choosing import cheapest_first, chosen_ways, in_time, status_of
from scorecard.costing.comparing import CurrencyChange, known_shares
from scorecard.costing.entries import Gap
from scorecard.costing.inputs import CostInputs
from scorecard.costing.landed import LandedCost
from scorecard.costing.paying import PaidBefore, Sampling, paid_before_checking
from scorecard.costing.sums import Line, Reading
from scorecard.costing.timing import Status


def landed_costs_json(inputs: CostInputs, costs: Sequence[LandedCost]) -> list[dict[str, Any]]:
    """Return ``landed_costs`` of the result: one entry per maker, reply and way, the cheapest good piece first.

    Parameters
    ----------
    inputs : all that was read
    costs : of ``landed_costs(inputs)``
    """
    chosen = chosen_ways(costs, inputs.as_of, inputs.brief.need_by, inputs.ordered)
    return [_cost(inputs, cost, is_chosen=chosen[cost.maker] is cost) for cost in cheapest_first(costs)]


def _cost(inputs: CostInputs, cost: LandedCost, *, is_chosen: bool) -> dict[str, Any]:
    fewest, most = cost.quantities
    need_by = inputs.brief.need_by
    is_ordered = cost.way is not None and inputs.ordered.get(cost.maker) == cost.way
    return {
        "maker": cost.maker,
        "row": cost.reply.head.row,
        "way": cost.way,
        "chosen": is_chosen,
        "ordered": is_ordered,
        "currency": inputs.rates.home,
        "wanted": inputs.brief.quantity,
        "quantity": {"low": fewest, "high": most},
        "total": _ends_of_all(cost, (cost.low, cost.high)),
        "per_good_piece": _ends_of_all(cost, cost.per_good_piece),
        "complete": cost.is_complete,
        "gaps": [_gap(gap) for gap in cost.gaps],
        "days": days(cost.days),
        "in_time": in_time(cost, inputs.as_of, need_by) if need_by and not is_ordered else None,
        **timing_json(cost, None if is_ordered else status_of(cost, inputs.as_of, need_by)),
        "shares": {group: None if share is None else number(share) for group, share in known_shares(cost).items()},
        "readings": [_reading(reading) for reading in cost.readings],
        "spent": [_line(line) for line in cost.spent],
        "paid_before_checking": _paid(cost, paid_before_checking(cost)),
        "notes": list(cost.notes),
    }


def timing_json(cost: LandedCost, status: Status | None) -> dict[str, str | None]:
    """Return how a way stands against the need-by date, and by when to begin, as the schedule has it."""
    timing = cost.timing
    return {
        "status": status,
        "status_rests_on": timing.rests_on or None if timing else None,
        "begin_by": timing.begin_by.isoformat() if timing else None,
        "order_by": timing.order_by.isoformat() if timing else None,
    }


def _reading(reading: Reading) -> dict[str, Any]:
    return {
        "read_as": reading.situation.coverage.words,
        "quantity": reading.situation.quantity,
        "total": _ends_of_all(reading, (reading.low, reading.high)),
        "per_good_piece": _ends_of_all(reading, reading.per_good_piece),
        "gaps": [_gap(gap) for gap in reading.gaps],
        "days": days(reading.days),
        "lines": [_line(line) for line in reading.lines],
    }


def _line(line: Line) -> dict[str, Any]:
    return {
        "key": line.key,
        "name": line.name,
        "group": line.group,
        "cost": ends(line.low, line.high),
        "paid": ends(line.paid_low, line.paid_high),
        "working": line.working,
    }


def _gap(gap: Gap) -> dict[str, str]:
    return {"name": gap.name, "words": gap.words}


def _ends_of_all(of: LandedCost | Reading, both: tuple[Decimal, Decimal]) -> Mapping[str, float | None]:
    """Return the two ends of an amount; with a cost missing there is no most."""
    return ends(both[0], OPEN if of.gaps else both[1])


def _paid(cost: LandedCost, paid: PaidBefore) -> dict[str, Any]:
    return {
        "paid": _ends_of_all(cost, (paid.low, paid.high)),
        "deposit": ends(paid.deposit_low, paid.deposit_high),
        "words": paid.words,
    }


def currency_changes_json(changes: Iterable[CurrencyChange]) -> list[dict[str, Any]]:
    """Return at which rate of each currency another maker becomes the cheapest."""
    return [
        {
            "currency": change.currency,
            "rate": number(change.figure),
            "cheapest": change.cheapest,
            "below": _other(change.below),
            "above": _other(change.above),
            "unsure_below": _doubtful(change.unsure_below),
            "unsure_above": _doubtful(change.unsure_above),
            "may_be_cheaper": list(change.rivals),
        }
        for change in changes
    ]


def _other(change: tuple[Decimal, str] | None) -> dict[str, Any] | None:
    return None if change is None else {"rate": number(change[0]), "cheapest": change[1]}


def _doubtful(doubt: tuple[Decimal, str] | None) -> dict[str, Any] | None:
    return None if doubt is None else {"rate": number(doubt[0]), "maker": doubt[1]}


def sampling_json(sampling: Sampling) -> dict[str, Any]:
    """Return what sampling some makers costs."""
    return {
        "makers": [
            {
                "maker": one.maker,
                "cost": ends(one.low if one.is_known_of else OPEN, one.high),
                "missing": list(one.missing),
            }
            for one in sampling.makers
        ],
        "total": ends(sampling.low, sampling.high),
        "unknown": list(sampling.unknown),
        "already_paid": list(sampling.already_paid),
    }


def rates_json(inputs: CostInputs) -> list[dict[str, Any]]:
    """Return the rates with their direction, day and source."""
    return [
        {
            "currency": rate.currency,
            "rate": number(rate.figure),
            "means": f"{inputs.rates.home} for 1 {rate.currency}"
            if rate.means == "home for one"
            else f"{rate.currency} for 1 {inputs.rates.home}",
            "dated": rate.dated.isoformat() if rate.dated else None,
            "source": rate.source,
        }
        for rate in inputs.rates.rates.values()
    ]


def ends(low: Decimal, high: Decimal) -> Mapping[str, float | None]:
    """Return the two ends of an amount; null where it is open."""
    return {"low": number(low), "high": number(high)}


def days(span: Span | None) -> Mapping[str, float | None] | None:
    """Return days from least to most; null where they are not known."""
    return None if span is None else ends(span.at("low"), span.at("high"))


def number(amount: Decimal) -> float | None:
    """Return an amount with 12 significant digits; null where it is open.

    Examples
    --------
    >>> number(Decimal("441.84")), number(Decimal("Infinity"))
    (441.84, None)
    """
    return float(f"{amount:.12g}") if amount.is_finite() else None
