"""The results workbook: the ranking with live formulas, so that another weight gives another order.

Enters: an assessment. Leaves: the bytes of an .xlsx. Weights are the only cells to change; points are values; shares,
scores, bands, ranks and the order are formulas that store what was computed here. Functions are those that every
spreadsheet has.
"""

from collections.abc import Callable
from datetime import datetime
from io import BytesIO

from scorecard.assessment import Assessment
from scorecard.words import plain_command
from scorecard.workbooks.results_costs import write_costs
from scorecard.workbooks.results_notes import write_notes, write_ruled_out
from scorecard.workbooks.results_points import write_answers, write_contributions, write_ends, write_points
from scorecard.workbooks.results_scores import write_scores
from scorecard.workbooks.results_shortlist import write_shortlist
from scorecard.workbooks.results_view import Book, View
from scorecard.workbooks.safe import clean_text, new_workbook


def results_workbook(assessment: Assessment, *, made: datetime, command: Callable[[str], str] = plain_command) -> bytes:
    """Return the results workbook.

    Parameters
    ----------
    assessment : of a case on a day
    made : when it is made; stands in the document's properties and on the sheet Notes
    command : from "reweigh rating=5" to what this user types for it

    Returns
    -------
    the bytes of an .xlsx, the same for the same input
    """
    buffer = BytesIO()
    title = clean_text(assessment.case.title)
    workbook = new_workbook(buffer, title)
    workbook.set_properties({"title": title, "created": made.replace(tzinfo=None)})
    book, view = Book(workbook), View(assessment=assessment, made=made, command=command)
    write_shortlist(book, view)
    write_scores(book, view)
    write_contributions(book, view)
    write_points(book, view)
    write_ends(book, view)
    write_answers(book, view)
    write_ruled_out(book, view)
    write_costs(book, view)
    write_notes(book, view)
    workbook.close()
    return buffer.getvalue()
