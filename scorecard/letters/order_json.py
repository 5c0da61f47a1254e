"""An order sheet as the machine-readable result gives it: what is not settled yet is null."""

from decimal import Decimal
from typing import Any

from scorecard.costing.amounts import Span
from scorecard.costing.bill import Bill
from scorecard.costing.costs_json import ends, number
from scorecard.letters.order_words import cautions, own_notes
from scorecard.order_sheet import OrderedDesign, OrderSheet

Json = dict[str, Any]

SCHEMA = "scorecard-order/1"


def order_json(sheet: OrderSheet) -> Json:
    """Return the sheet, without the file that it was written to."""
    brief, terms = sheet.case.brief, sheet.terms
    fewest, most = sheet.quantity
    return {
        "schema": SCHEMA,
        "title": sheet.case.title,
        "as_of": sheet.as_of.isoformat(),
        "maker": sheet.maker,
        "row": sheet.row,
        "ordered_on": sheet.as_of.isoformat() if sheet.placed else None,
        "complete": sheet.is_complete,
        "missing": [{"what": one.what, "where": one.where} for one in sheet.missing],
        "number": terms.number or None,
        "buyer": terms.buyer or None,
        "item": brief.item,
        "quantity": {
            "low": fewest,
            "high": most,
            "over_percent": _number(terms.over_percent),
            "under_percent": _number(terms.under_percent),
            "overs": terms.overs,
            "accepted": None if sheet.bounds is None else dict(zip(("low", "high"), sheet.bounds, strict=True)),
        },
        "method": sheet.method or None,
        "ruled_out": list(sheet.ruled_out),
        "designs": [_design(one) for one in sheet.designs],
        "approvals": list(terms.approvals),
        "approved": [{"round": one.kind, "row": one.row, "decision": one.decision} for one in sheet.approved],
        "bill": None if sheet.bill is None else _bill(sheet.bill),
        "pay_by": terms.pay_by or None,
        "packing": terms.packing or None,
        "labels": terms.labels or None,
        "delivery": _delivery(sheet),
        "arrival": {"complain_days": terms.complain_days, "remedy": terms.remedy or None},
        "owners": {"artwork": terms.artwork, "tooling": terms.tooling},
        "notes": own_notes(sheet),
        "cautions": cautions(sheet),
    }


def _number(amount: Decimal | None) -> float | None:
    return None if amount is None else number(amount)


def _design(one: OrderedDesign) -> Json:
    return {
        "name": one.name or None,
        "file": one.file or None,
        "pieces": one.pieces,
        "width_mm": one.width_mm,
        "height_mm": one.height_mm,
        "position": one.position or None,
        "position_tolerance_mm": _number(one.position_tolerance_mm),
        "size_tolerance_mm": _number(one.size_tolerance_mm),
        "colours": one.colours or None,
    }


def _bill(bill: Bill) -> Json:
    lines = [
        {
            "name": line.name,
            "working": line.working,
            "amount": dict(ends(line.low, line.high)),
            "currency": line.currency,
        }
        for line in bill.lines
    ]
    sums = {"total": bill.total, "deposit": bill.deposit, "rest": bill.rest}
    return {
        "currency": bill.currency,
        "lines": lines,
        **{name: None if found is None else dict(ends(*found)) for name, found in sums.items()},
        "deposit_percent": _span(bill.deposit_percent),
        "balance": bill.balance,
    }


def _span(span: Span | None) -> Json | None:
    return None if span is None else dict(ends(span.at("low"), span.at("high")))


def _delivery(sheet: OrderSheet) -> Json:
    head = sheet.quote
    return {
        "term": head.term if head else None,
        "place": (head.term_place.strip() or None) if head else None,
        "way": sheet.cost.way if sheet.cost else None,
        "address": sheet.terms.address or None,
        "by": sheet.deliver_by.isoformat() if sheet.deliver_by else None,
    }
