"""The table [selling] of the criteria file: what a piece sells for, what selling costs, how many may sell.

Enters: the table. Leaves: it as one value, exact in decimal; or None once what is missing or wrong is noted.
"""

from datetime import date
from decimal import Decimal
from typing import TypedDict

from scorecard.brief import Brief
from scorecard.costing.amounts import exact
from scorecard.ordering.demands import Demand
from scorecard.ordering.selling import Selling
from scorecard.reading.toml_amounts import MOST_PERCENT, amount_at, place_of
from scorecard.reading.toml_tables import Table
from scorecard.words import shortest

PERCENT_KEYS = ("sales_tax_percent", "channel_fee_percent", "payment_fee_percent")
AMOUNT_KEYS = ("payment_fee", "packing", "postage", "fixed", "unsold_worth", "order_cost")
DEMAND_KEYS = ("low", "likely", "high")
SELLING_KEYS = (
    "price",
    *PERCENT_KEYS,
    *AMOUNT_KEYS,
    "demand",
    "wanted_margin_percent",
    "sales_begin",
    "selling_weeks",
    "yearly_demand",
    "holding_percent",
)


class _Given(TypedDict, total=False):
    """Keys whose value is an amount, with a default where it is not given."""

    sales_tax_percent: Decimal
    channel_fee_percent: Decimal
    payment_fee_percent: Decimal
    payment_fee: Decimal
    packing: Decimal
    postage: Decimal
    fixed: Decimal
    unsold_worth: Decimal
    order_cost: Decimal


def read_selling(table: Table, brief: Brief | None) -> Selling | None:
    """Return what the pieces sell for; problems and warnings go to the table's notes.

    Parameters
    ----------
    table : ``[selling]``
    brief : for the day on which the pieces are needed; None where it could not be read
    """
    before = len(table.notes.problems)
    table.known_keys(SELLING_KEYS, "[selling]")
    table.required(["price"], "[selling]")
    price = table.number_above_zero("price")
    amounts = _amounts(table)
    found = Selling(
        price=exact(price or 1),
        **amounts,
        demand=_demand(table.table("demand")),
        wanted_margin_percent=_below_hundred(table, "wanted_margin_percent"),
        sales_begin=_sales_begin(table, brief),
        selling_weeks=_above_zero(table, "selling_weeks"),
        yearly_demand=table.whole("yearly_demand", least=1),
        holding_percent=_holding(table),
        given=frozenset(table.values),
        places={key: place_of(table, key) for key in SELLING_KEYS},
    )
    if len(table.notes.problems) > before:
        return None
    _warn(table, found)
    return found


def _amounts(table: Table) -> _Given:
    given = {key: amount_at(table, key, most=100) for key in PERCENT_KEYS}
    given |= {key: amount_at(table, key) for key in AMOUNT_KEYS}
    kept: _Given = {}
    for key, amount in given.items():
        if amount is not None:
            kept[key] = amount  # type: ignore[literal-required]  # the keys above
    return kept


def _above_zero(table: Table, key: str) -> Decimal | None:
    number = table.number_above_zero(key)
    return None if number is None else exact(number)


def _below_hundred(table: Table, key: str) -> Decimal | None:
    """Return a percentage below 100."""
    amount = amount_at(table, key)
    if amount is not None and amount >= 100:
        found = f"{amount} of 100 leaves nothing to pay for the goods"
        table.problem("above-hundred", key, found, "Write the part of the price that is to be left, such as 40")
        return None
    return amount


def _holding(table: Table) -> Decimal | None:
    """Return what keeping a piece for a year costs; it must be given where there is a yearly demand."""
    if "yearly_demand" in table and "holding_percent" not in table:
        wanted = "Add what keeping a piece for a year costs, of its cost, such as: holding_percent = 20"
        table.problem("missing-key", "holding_percent", "[selling] has yearly_demand without 'holding_percent'", wanted)
    percent = _above_zero(table, "holding_percent")
    if percent is not None and percent > MOST_PERCENT:
        found = f"{shortest(float(percent))} is above {MOST_PERCENT} percent"
        table.problem("too-high", "holding_percent", found, "Write it in percent, such as 20 for 20 %")
        return None
    return percent


def _demand(table: Table | None) -> Demand | None:
    """Return the demand; None where it is not given, or once its problem is noted."""
    if table is None:
        return None
    table.known_keys(DEMAND_KEYS, "[selling] demand")
    table.required(["likely"], "[selling] demand")
    low, likely, high = (table.whole(key, least=0) for key in DEMAND_KEYS)
    rises = _rises(table, ("low", low), ("likely", likely))
    rises = _rises(table, ("likely", likely), ("high", high)) and rises
    if likely is None:
        _rises(table, ("low", low), ("high", high))
        return None
    return Demand(low=low, likely=likely, high=high) if rises else None


def _rises(table: Table, lower: tuple[str, int | None], upper: tuple[str, int | None]) -> bool:
    """Say whether one demand is no more than another; else it is noted at the lower one's key."""
    (name, low), (other, high) = lower, upper
    if low is None or high is None or low <= high:
        return True
    table.problem(
        "reversed-range", name, f"the {name} demand, {low}, is above the {other} demand, {high}",
        f"Write {high} or less, or exchange the two",
    )  # fmt: skip
    return False


def _sales_begin(table: Table, brief: Brief | None) -> date | None:
    day = table.day("sales_begin")
    need_by = brief.need_by if brief else None
    if day and need_by and day < need_by:
        found = f"sales begin on {day.isoformat()}, before the pieces are needed ({need_by.isoformat()})"
        table.notes.warn("sales-before-need-by", table.at("sales_begin"), found, "Mend one of the two days")
    return day


def _warn(table: Table, selling: Selling) -> None:
    """Warn of a price of which nothing is left, and of pieces left over that bring more than those sold."""
    price, kept = shortest(float(selling.price)), selling.kept
    if kept <= 0:
        found = f"of the price, {price}, tax, fees, packing and postage leave nothing"
        table.notes.warn("price-below-fees", table.at("price"), found, "Raise the price, or mend the fees")
    elif selling.unsold_worth >= kept:
        found = f"a piece left over brings {shortest(float(selling.unsold_worth))}, no less than one that is sold"
        wanted = "Write what is really got for pieces left over, or leave it out"
        table.notes.warn("unsold-above-price", table.at("unsold_worth"), found, wanted)
