"""What a good piece costs at a maker as a value to compare: its ends in every case that all makers share, what is open.

Enters: a landed cost. Leaves: a ``Piece``.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import product
from typing import cast

from scorecard.costing.amounts import Span
from scorecard.costing.border_entries import duty_percent
from scorecard.costing.charge_entries import applying
from scorecard.costing.cheapest import Ends, Piece
from scorecard.costing.entries import Situation
from scorecard.costing.importing import ImportRules
from scorecard.costing.landed import LandedCost
from scorecard.costing.sums import Line, Reading, reckon

SALES_TAX_INSIDE = "whether the price has sales tax inside (price_has_tax)"
_OF_THE_MAKER = {"goods": "the price", "sample credited": "the sample"}


def piece_of(cost: LandedCost, name: str | None = None) -> Piece:
    """Return what a good piece costs by one way.

    Parameters
    ----------
    cost : one maker by one way
    name : under which it is compared; the maker's where not given
    """
    return replace(bare_piece(cost), maker=name or cost.maker, open_parts=open_parts(cost))


def bare_piece(cost: LandedCost) -> Piece:
    """Return the same without what is open of it, which is quicker."""
    rules = cost.inputs.imports
    cases = list(_shared_cases(rules)) if rules else []
    ends = [_ends_under(cost, case) for case in cases] if len(cases) > 1 else [cost.per_good_piece]
    missing = tuple(dict.fromkeys(gap.name for gap in cost.gaps))
    return Piece(maker=cost.maker, cases=tuple(ends), missing=missing)


def _shared_cases(rules: ImportRules) -> Iterator[ImportRules]:
    """Yield the rules in every case of what is open for all makers alike: tax that may come back, rates as ranges.

    The difference of two makers' costs is straight in each of these, so that it is greatest and least in these cases.
    """
    kinds = (rules.tax_is,) if rules.tax_is else ("cost", "recoverable")
    for tax_is, duty, tax in product(kinds, _ends(rules.duty_percent), _ends(rules.tax_percent)):
        yield replace(rules, tax_is=tax_is, duty_percent=duty, tax_percent=tax)  # type: ignore[arg-type]  # as it was


def _ends(percent: Span | None) -> tuple[Span | None, ...]:
    if percent is None or percent.high is None or percent.is_known:
        return (percent,)
    return Span(percent.low, percent.low), Span(percent.high, percent.high)


def _ends_under(cost: LandedCost, rules: ImportRules) -> Ends:
    return replace(cost, readings=tuple(_under(reading, rules) for reading in cost.readings)).per_good_piece


def _under(reading: Reading, rules: ImportRules) -> Reading:
    situation = reading.situation
    return reckon(replace(situation, inputs=replace(situation.inputs, imports=rules)))


def open_parts(cost: LandedCost) -> tuple[str, ...]:
    """Return what makes a cost a range or too low, in words: causes alone, not what follows from them."""
    situations = [reading.situation for reading in cost.readings]
    found = ["what the price covers"] if len({each.coverage for each in situations}) > 1 else []
    found += ["how many must be ordered"] if len({each.quantity for each in situations}) > 1 else []
    found += [part for reading in cost.readings for line in reading.lines if (part := _open_part(reading, line))]
    return tuple(dict.fromkeys([*found, *(gap.name for gap in cost.gaps)]))


def _open_part(reading: Reading, line: Line) -> str:
    """Return what is open of one line by itself; "" where it is known, or follows from another."""
    if line.low == line.high:
        return ""
    if line.key in ("duty", "import tax", "sales tax"):
        return _of_duty_or_tax(reading.situation, line.key)
    if line.group == "maker":
        return _OF_THE_MAKER.get(line.key, line.name.lower())
    if line.key == "freight":
        return "freight"
    charges = {f"charge:{charge.name}": charge for charge in applying(reading.situation)}
    amount = charges[line.key].amount if line.key in charges else None
    return line.name if amount is not None and not amount.is_known else ""


def _of_duty_or_tax(situation: Situation, key: str) -> str:
    if key == "duty":
        percent = duty_percent(situation)
        return "" if percent is None or percent.is_known else "the rate of duty"
    rules = cast("ImportRules", situation.inputs.imports)  # without rules or a rate there is no line of tax
    if key == "sales tax" and rules.price_has_tax is None:
        return SALES_TAX_INSIDE
    if rules.tax_is is None:
        return f"whether {key} comes back"
    return "" if cast("Span", rules.tax_percent).is_known else f"the rate of {key}"
