"""The table [order] of the criteria file.

Enters: the table, and the brief. Leaves: terms; a key with a problem counts as not given.
"""

from scorecard.brief import Brief
from scorecard.order_terms import OVERS, USUAL_APPROVALS, WHOSE, DesignTerms, OrderTerms
from scorecard.reading.toml_amounts import amount_at, tables_at, texts_at
from scorecard.reading.toml_tables import Table
from scorecard.words import counted

DESIGN_KEYS = (
    "name",
    "file",
    "pieces",
    "width_mm",
    "height_mm",
    "position",
    "position_tolerance_mm",
    "size_tolerance_mm",
    "colours",
)
TEXT_KEYS = ("number", "method", "buyer", "address", "position", "colours", "packing", "labels", "pay_by", "remedy")
ORDER_KEYS = (
    *TEXT_KEYS,
    "position_tolerance_mm",
    "size_tolerance_mm",
    "over_percent",
    "under_percent",
    "overs",
    "approvals",
    "deliver_by",
    "complain_days",
    "artwork",
    "tooling",
    "designs",
)
MOST_TEXT = 500
MOST_APPROVALS = 12


def read_order(table: Table, brief: Brief | None) -> OrderTerms:
    """Return what the table says; problems go to its notes.

    Parameters
    ----------
    table : ``[order]``
    brief : as read; None where it has a problem of its own
    """
    table.known_keys(ORDER_KEYS, "[order]")
    deliver_by = table.day("deliver_by")
    if brief and brief.need_by and deliver_by and deliver_by > brief.need_by:
        found = f"{deliver_by.isoformat()} is later than need_by of [brief], {brief.need_by.isoformat()}"
        table.problem("after-need-by", "deliver_by", found, "Write that day or an earlier one, or move need_by")
    return OrderTerms(
        **{key: _text(table, key) for key in TEXT_KEYS},
        position_tolerance_mm=amount_at(table, "position_tolerance_mm"),
        size_tolerance_mm=amount_at(table, "size_tolerance_mm"),
        over_percent=amount_at(table, "over_percent", most=100),
        under_percent=amount_at(table, "under_percent", most=100),
        overs=table.one_of("overs", OVERS),
        approvals=_approvals(table),
        deliver_by=deliver_by,
        complain_days=table.whole("complain_days", least=1),
        artwork=table.one_of("artwork", WHOSE),
        tooling=table.one_of("tooling", WHOSE),
        designs=_designs(table, brief),
    )


def _text(table: Table, key: str) -> str:
    """Return a text of a line or two; "" where there is none, or once its problem is noted."""
    text = table.text(key) or ""
    if len(text) > MOST_TEXT:
        found = f"the text has {len(text)} letters"
        table.problem("text-too-long", key, found, f"Say it in {MOST_TEXT}, and send the rest with the order")
        return ""
    return text


def _approvals(table: Table) -> tuple[str, ...]:
    if "approvals" not in table:
        return USUAL_APPROVALS
    found = [" ".join(text.split()) for text in texts_at(table, "approvals")]
    wanted = f"Write 1 to {MOST_APPROVALS} texts, each what must be approved before the full run"
    if isinstance(table.values["approvals"], list) and (
        not all(found) or not 0 < len(found) <= MOST_APPROVALS or any(len(one) > MOST_TEXT for one in found)
    ):
        lacks = "an approval is empty or too long" if found else "no approval is listed"
        table.problem("approvals", "approvals", lacks if len(found) <= MOST_APPROVALS else "too many", wanted)
    return tuple(found)


def _designs(table: Table, brief: Brief | None) -> tuple[DesignTerms, ...]:
    designs = tuple(_design(one) for one in tables_at(table, "designs"))
    if brief is not None and designs and len(designs) != brief.designs:
        found = f"{counted(len(designs), 'design')} here, {brief.designs} in [brief]"
        wanted = "Write one [[order.designs]] for each design, or correct designs of [brief]"
        table.problem("designs-differ", "designs", found, wanted)
    return designs


def _design(table: Table) -> DesignTerms:
    table.known_keys(DESIGN_KEYS, "[[order.designs]]")
    return DesignTerms(
        name=_text(table, "name"),
        file=_text(table, "file"),
        pieces=table.whole("pieces", least=1),
        width_mm=table.number_above_zero("width_mm"),
        height_mm=table.number_above_zero("height_mm"),
        position=_text(table, "position"),
        position_tolerance_mm=amount_at(table, "position_tolerance_mm"),
        size_tolerance_mm=amount_at(table, "size_tolerance_mm"),
        colours=_text(table, "colours"),
    )
