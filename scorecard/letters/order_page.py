"""The order sheet as one HTML page that prints on A4, without network or script.

Enters: an order sheet. Leaves: a page whose content security policy allows its own style sheet alone, by its hash. A
sheet that is not complete says so at the head of every printed page, and has no place to sign.
"""

import re
from datetime import datetime
from pathlib import Path

from scorecard import __version__
from scorecard.harmless import environment
from scorecard.letters.order_words import (
    approval_lines,
    approved_lines,
    arrival_facts,
    cautions,
    delivery_facts,
    design_rows,
    head_facts,
    method_facts,
    missing_lines,
    not_complete_line,
    own_notes,
    owner_facts,
    packing_facts,
    payment_facts,
    price_rows,
    quantity_facts,
    tax_facts,
    total_words,
)
from scorecard.letters.plain import one_line
from scorecard.order_sheet import OrderSheet
from scorecard.page_policy import worn
from scorecard.words import moment_words

HERE = Path(__file__).parent


COMPLETE = b"<title>Order: "  # as the template begins the title of a sheet from which nothing is missing
STAMP = re.compile(rb"<footer>.*</footer>")


def is_complete_page(page: bytes) -> bool:
    """Say whether a page that was written is of a complete order."""
    return COMPLETE in page


def unstamped(page: bytes) -> bytes:
    """Return a page without the line that says when it was made."""
    return STAMP.sub(b"", page)


def order_page(sheet: OrderSheet, *, written: datetime) -> str:
    """Return the order sheet; the same sheet and time give the same bytes.

    Parameters
    ----------
    sheet : of one maker
    written : when the page is made
    """
    views = {
        **worn(HERE / "style.css", HERE / "order.css"),
        "title": one_line(sheet.case.title),
        "written": moment_words(written),
        "version": __version__,
        "not_complete": not_complete_line(sheet),
        "missing": missing_lines(sheet),
        "placed": sheet.placed is not None,
        "head": head_facts(sheet),
        "designs": design_rows(sheet),
        "method": method_facts(sheet),
        "quantity": quantity_facts(sheet),
        "prices": price_rows(sheet),
        "total": total_words(sheet),
        "payment": [*tax_facts(sheet), *payment_facts(sheet)],
        "approvals": approval_lines(sheet),
        "approved": approved_lines(sheet),
        "packing": packing_facts(sheet),
        "delivery": delivery_facts(sheet),
        "arrival": arrival_facts(sheet),
        "owners": owner_facts(sheet),
        "notes": own_notes(sheet),
        "cautions": cautions(sheet),
    }
    return environment(HERE).get_template("order.html.jinja").render(views)
