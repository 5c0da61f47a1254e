"""The sheet Scores: every ranked maker's score, band, known share and rank, as formulas on points and shares.

Makers stand in the order of the calculation and stay there. Ranks follow the rule of the calculation to the letter:
scores within 1e-9 of the best of their group share its rank. To the right stand the working columns from which the
Shortlist takes its order.
"""

from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.worksheet import Worksheet

from scorecard.ranking import TIE
from scorecard.words import listed
from scorecard.workbooks.results_view import FIRST, HEAD, NAME_WIDTH, QUIET, Book, View, heading_height
from scorecard.workbooks.safe import clean_text, put

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
WIDTHS = (8, NAME_WIDTH, 9, 9, 10, 9, 9, 12, 30, 3, 8, 13, 10, 16, 10)
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
    book.headings(page, TITLES, words=TEXTS)
    put(page, (HEAD - 1, WORKING_COLUMN), "Working columns for the order on Shortlist", book.look(italic=True))
    book.headings(page, WORKING, words=(), at=WORKING_COLUMN)
    titles = (*TITLES, "", *WORKING)
    page.set_row(HEAD, heading_height(titles, WIDTHS))
    page.freeze_panes(HEAD + 1, 2)
    page.ignore_errors({"formula_differs": f"A{FIRST}:O{max(view.last_ranked, FIRST)}"})  # they differ as answers do
    page.print_area(0, 0, max(view.last_ranked, FIRST) - 1, len(TITLES) - 1)
    _write_makers(book, page, view)
    _write_working(book, page, view)


def _write_makers(book: Book, page: Worksheet, view: View) -> None:
    ranking, rows = view.assessment.ranking, view.assessment.case.table.rows
    figures, words, whole, percent = book.number(), book.words(), book.number("0"), book.number("0%")
    for row, maker in enumerate(view.ranked, start=FIRST):
        rank, score, low, high, known = _formulas(view, row, maker)
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


def _formulas(view: View, row: int, maker: int) -> tuple[str, str, str, str, str]:
    """Return the formulas of one maker's rank, score, lowest and highest score, and known share."""
    points, shares, here = view.assessment.points, view.share_row, f"B{row}:{view.last_column}{row}"
    low = high = f"=C{row}"
    if (points.high[maker] > points.low[maker]).any():
        low, high = (
            f'={pick}(C{row},SUMPRODUCT({shares}*({end}!{here}+({end}!{here}="")*Points!{here})))'
            for pick, end in (("MIN", "Lowest"), ("MAX", "Highest"))
        )
    return (
        f"=INDEX({view.down('M')},RANK(C{row},{view.down('C')}))",
        f"=SUMPRODUCT({shares},Points!{here})",
        low,
        high,
        _known(view, maker),
    )


def _known(view: View, maker: int) -> str:
    """Return the formula of the known share: all shares but those of the criteria whose answer is unknown."""
    unknown = (~view.assessment.points.known[maker]).nonzero()[0].tolist()
    without = "".join(f"-Points!{xl_col_to_name(at + 1)}${HEAD}" for at in unknown)
    return f"=MAX(0,{view.whole}{without})" if without else f"={view.whole}"


def may_yet_fail(view: View, maker: int) -> str:
    """Return the titles of the limits that a maker may yet fail, as a list in words; "" where there is none."""
    flags = view.assessment.screening.may_fail[maker].tolist()
    titles = [criterion.title for criterion, flag in zip(view.criteria, flags, strict=True) if flag]
    return clean_text(listed(titles)) if titles else ""


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
        needed = len(formulas) if place <= view.read else len(formulas) - 1
        for at, (formula, value) in enumerate(zip(formulas[:needed], values[:needed], strict=True), WORKING_COLUMN + 1):
            page.write_formula(row - 1, at, formula, figures if at == WORKING_COLUMN + 1 else whole, value)
