"""The sheets of makers by criteria: Points, Lowest, Highest, Contributions and Answers.

A maker's row number is the same on all of them and on Scores; those ruled out follow the ranked ones.
"""

from collections.abc import Sequence
from math import isnan

from xlsxwriter.format import Format
from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.worksheet import Worksheet

from scorecard.criteria import Criterion
from scorecard.reasons import range_words
from scorecard.value_functions import Floats
from scorecard.workbooks.results_view import FIRST, HEAD, NAME_WIDTH, QUIET, Book, View, heading_height
from scorecard.workbooks.safe import put

WIDTH = 14  # of a criterion's column


def write_points(book: Book, view: View) -> None:
    """Write the sheet Points: what each answer is worth, with each criterion's share above."""
    about = "What each answer is worth on its criterion, 0 to 100. Weights do not change it."
    page = _grid(book, view, "Points", about, [criterion.title for criterion in view.criteria])
    share = book.look(num_format="0.0%", align="right", font_color=QUIET)
    put(page, (HEAD - 1, 0), "Share of the weight", book.look(font_color=QUIET))
    for at, value in enumerate(view.assessment.shares.tolist()):
        page.write_formula(HEAD - 1, at + 1, f"=Shortlist!$D${FIRST + at}", share, value)
    points, look = view.assessment.points.counted, book.number()
    for row, maker in enumerate(view.makers, start=FIRST):
        for at, value in enumerate(points[maker].tolist(), start=1):
            page.write_number(row - 1, at, value, look)


def write_ends(book: Book, view: View) -> None:
    """Write the sheets Lowest and Highest: points at the worst and the best that an open answer may turn out to be."""
    points = view.assessment.points
    for name, word, ends in (("Lowest", "worst", points.low), ("Highest", "best", points.high)):
        about = f"Points if an open answer turns out at its {word}. An empty cell: not open, points as on Points."
        _write_open(book, view, _grid(book, view, name, about, [one.title for one in view.criteria]), ends)


def _write_open(book: Book, view: View, page: Worksheet, ends: Floats) -> None:
    is_open, figures = view.assessment.points.open, book.number()
    for row, maker in enumerate(view.makers, start=FIRST):
        for at in is_open[maker].nonzero()[0].tolist():
            page.write_number(row - 1, at + 1, float(ends[maker, at]), figures)


def write_contributions(book: Book, view: View) -> None:
    """Write the sheet Contributions: share times points, whose sum is the score."""
    about = "Share times points, at the weights that stand on Shortlist. They add up to the score."
    titles = [*(criterion.title for criterion in view.criteria), "Score"]
    page = _grid(book, view, "Contributions", about, titles)
    values = (view.assessment.points.counted * view.assessment.shares).tolist()
    scores, look, bold = view.assessment.ranking.scores.tolist(), book.number(), book.number(bold=True)
    letters = [xl_col_to_name(at) for at in range(1, len(view.criteria) + 1)]
    shares = [f"=Points!{letter}${HEAD}*Points!{letter}" for letter in letters]
    for row, maker in enumerate(view.makers, start=FIRST):
        for at, value in enumerate(values[maker]):
            page.write_formula(row - 1, at + 1, f"{shares[at]}{row}", look, value)
        page.write_formula(row - 1, len(letters) + 1, f"=SUM(B{row}:{letters[-1]}{row})", bold, scores[maker])


def write_answers(book: Book, view: View) -> None:
    """Write the sheet Answers: every answer as typed, then, where it is divided or steadied, what it counts as."""
    about = "Answers as typed; to the right, what they count as where that differs. An empty cell is unknown."
    counted = [at for at, one in enumerate(view.criteria) if one.per_quantity or one.steady is not None]
    titles = [_with_unit(one) for one in view.criteria]
    titles += [f"{view.criteria[at].title}, counts as" for at in counted]
    page = _grid(book, view, "Answers", about, titles)
    countings = view.assessment.countings
    columns = [(at, countings[at].typed) for at in range(len(view.criteria))]
    columns += [(at, countings[at].counts_as) for at in counted]
    number, text = book.number("General"), book.cell(align="right")
    for column, (at, answers) in enumerate(columns, start=1):
        low, high, criterion = answers.low.tolist(), answers.high.tolist(), view.criteria[at]
        for row, maker in enumerate(view.makers, start=FIRST - 1):
            _write_answer(page, (row, column), _answer(criterion, low[maker], high[maker]), (number, text))


def _with_unit(criterion: Criterion) -> str:
    return f"{criterion.title} ({criterion.unit})" if criterion.unit else criterion.title


def _answer(criterion: Criterion, low: float, high: float) -> str | float | None:
    """Return an answer as a cell holds it: a number, a choice or a range in words, None where it is unknown."""
    if isnan(low):
        return None
    if criterion.choices is not None:
        return criterion.choices[int(low)]
    return low if low == high else range_words(low, high)


def _write_answer(
    page: Worksheet, cell: tuple[int, int], answer: str | float | None, looks: tuple[Format, Format]
) -> None:
    if isinstance(answer, float):
        page.write_number(*cell, answer, looks[0])
    else:
        put(page, cell, answer, looks[1])


def _grid(book: Book, view: View, name: str, about: str, titles: Sequence[str]) -> Worksheet:
    """Return a new sheet with makers down the side and titles across the top."""
    page = book.page(name, name, about)
    page.set_column(0, 0, NAME_WIDTH)
    page.set_column(1, len(titles), WIDTH)
    book.headings(page, ["Maker", *titles])
    page.set_row(HEAD, heading_height(titles, [WIDTH] * len(titles)))
    page.freeze_panes(HEAD + 1, 1)
    page.repeat_columns(0)
    words, out = book.cell(), book.cell(font_color=QUIET, italic=True)
    for row, maker in enumerate(view.makers, start=FIRST - 1):
        page.write_string(row, 0, view.names[maker], words if row < view.last_ranked else out)
    return page
