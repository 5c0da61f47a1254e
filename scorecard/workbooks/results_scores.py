"""The sheet Scores: every ranked maker's score, band, known share and rank, as formulas on points and shares.

Makers stand in the order of the calculation and stay there. Ranks follow the rule of the calculation to the letter:
scores within 1e-9 of the best of their group share its rank. To the right stand the working columns from which the
Shortlist takes its order.
"""

from xlsxwriter.worksheet import Worksheet

from scorecard.ranking import TIE
from scorecard.words import listed
from scorecard.workbooks.results_view import FIRST, HEAD, NAME_WIDTH, QUIET, Book, View, heading_height
from scorecard.workbooks.safe import put

TITLES = (
    "Rank",
    "Maker",
    "Score",
    "Lowest",
    "Highest",
    "Known",
    "Rank as saved",
    "Row in makers file",
    "May yet fail a limit on",
)
WORKING = ("Place", "Scores, highest first", "Rank of that place", "Rank and row in one number", "Line of who has it")
WIDTHS = (7, NAME_WIDTH, 9, 9, 9, 9, 9, 10, 30, 3, 7, 12, 9, 15, 9)
TEXTS = (1, 8)  # columns of words
WORKING_COLUMN = 10
BY_ROW = 1_000_000  # more than there can be rows


def write_scores(book: Book, view: View) -> None:
    """Write the sheet Scores."""
    page = book.page("Scores", "Scores", "Every maker that passes the limits, at the weights that stand on Shortlist.")
    stand_in = f'=IF({view.usable},"","The weights on Shortlist cannot be used: see there.")'
    page.write_formula(2, 0, stand_in, book.look(bold=True), "")
    for at, width in enumerate(WIDTHS):
        page.set_column(at, at, width)
    book.headings(page, TITLES, words=0)
    for at in TEXTS:
        put(page, (HEAD, at), TITLES[at], book.heading(right=False))
    put(page, (HEAD - 1, WORKING_COLUMN), "Working columns for the order on Shortlist", book.look(italic=True))
    book.headings(page, WORKING, words=0, at=WORKING_COLUMN)
    titles = (*TITLES, "", *WORKING)
    page.set_row(HEAD, heading_height(titles, WIDTHS))
    page.freeze_panes(HEAD + 1, 2)
    _write_makers(book, page, view)
    _write_working(book, page, view)


def _write_makers(book: Book, page: Worksheet, view: View) -> None:
    ranking, rows = view.assessment.ranking, view.assessment.case.table.rows
    figures, words, whole, percent = book.number(), book.cell(), book.number("0"), book.number("0%")
    for row, maker in enumerate(view.ranked, start=FIRST):
        rank, score, low, high, known = _formulas(view, row)
        at = row - 1
        page.write_formula(at, 0, rank, whole, ranking.ranks[maker])
        page.write_string(at, 1, view.names[maker], words)
        page.write_formula(at, 2, score, figures, ranking.scores[maker])
        page.write_formula(at, 3, low, figures, ranking.low[maker])
        page.write_formula(at, 4, high, figures, ranking.high[maker])
        page.write_formula(at, 5, known, percent, ranking.known_shares[maker])
        page.write_number(at, 6, ranking.ranks[maker], whole)
        page.write_number(at, 7, rows[maker], whole)
        put(page, (at, 8), may_yet_fail(view, maker), words)


def _formulas(view: View, row: int) -> tuple[str, str, str, str, str]:
    """Return the formulas of one maker's rank, score, lowest and highest score, and known share."""
    shares, here = view.share_row, f"B{row}:{view.last_column}{row}"
    low, high = (f'{shares}*({end}!{here}+({end}!{here}="")*Points!{here})' for end in ("Lowest", "Highest"))
    return (
        f"=INDEX({view.down('M')},RANK(C{row},{view.down('C')}))",
        f"=SUMPRODUCT({shares},Points!{here})",
        f"=MIN(C{row},SUMPRODUCT({low}))",
        f"=MAX(C{row},SUMPRODUCT({high}))",
        f'=MIN(1,SUMPRODUCT({shares}*(Answers!{here}<>"")))',
    )


def may_yet_fail(view: View, maker: int) -> str:
    """Return the titles of the limits that a maker may yet fail, as a list in words; "" where there is none."""
    flags = view.assessment.screening.may_fail[maker].tolist()
    titles = [criterion.title for criterion, flag in zip(view.criteria, flags, strict=True) if flag]
    return listed(titles) if titles else ""


def _write_working(book: Book, page: Worksheet, view: View) -> None:
    ranking, rows = view.assessment.ranking, view.assessment.case.table.rows
    whole, figures = book.number("0", font_color=QUIET), book.number(font_color=QUIET)
    highest_first = sorted((float(ranking.scores[maker]) for maker in view.ranked), reverse=True)
    for place, (maker, score) in enumerate(zip(view.ranked, highest_first, strict=True), start=1):
        row, rank = FIRST + place - 1, ranking.ranks[maker]
        level = f"INDEX({view.down('L')},M{row - 1})-L{row}<={TIE}"
        values = (score, rank, rank * BY_ROW + rows[maker], place)
        formulas = (
            f"=LARGE({view.down('C')},K{row})",
            f"=K{row}" if place == 1 else f"=IF({level},M{row - 1},K{row})",
            f"=A{row}*{BY_ROW}+H{row}",
            f"=MATCH(SMALL({view.down('N')},K{row}),{view.down('N')},0)",
        )
        page.write_number(row - 1, WORKING_COLUMN, place, whole)
        for at, (formula, value) in enumerate(zip(formulas, values, strict=True), start=WORKING_COLUMN + 1):
            page.write_formula(row - 1, at, formula, figures if at == WORKING_COLUMN + 1 else whole, value)
