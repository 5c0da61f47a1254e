"""The sheets of makers by criteria: Points, Lowest, Highest, Contributions and Answers.

A maker's row number is the same on all of them and on Scores; those ruled out follow the ranked ones.
"""

from collections.abc import Sequence
from math import isnan

from xlsxwriter.format import Format
from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.worksheet import Worksheet

from scorecard.answers import Answers
from scorecard.criteria import Criterion
from scorecard.reasons import range_words
from scorecard.value_functions import Floats
from scorecard.workbooks.results_view import FIRST, HEAD, LONG, NAME_WIDTH, QUIET, Book, View, heading_height
from scorecard.workbooks.safe import clean_text, put

WIDTH = 16  # of a criterion's column


def write_points(book: Book, view: View) -> None:
    """Write the sheet Points: what each answer is worth, with each criterion's share above."""
    about = "What each answer is worth on its criterion, 0 to 100. Weights do not change it."
    page = _grid(book, view, ("Points", about), [criterion.title for criterion in view.criteria])
    share = book.look(num_format="0.0%", align="right", font_color=QUIET)
    put(page, (HEAD - 1, 0), "Share of the weight", book.look(font_color=QUIET, align="left", indent=1))
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
        _write_open(book, view, _grid(book, view, (name, about), [one.title for one in view.criteria]), ends)


def _write_open(book: Book, view: View, page: Worksheet, ends: Floats) -> None:
    is_open, figures = view.assessment.points.open, book.look(num_format="0.0", align="right")
    for row, maker in enumerate(view.makers, start=FIRST):
        for at in is_open[maker].nonzero()[0].tolist():
            page.write_number(row - 1, at + 1, float(ends[maker, at]), figures)


def write_contributions(book: Book, view: View) -> None:
    """Write the sheet Contributions: share times points, whose sum is the score."""
    about = "Share times points, at the weights that stand on Shortlist. They add up to the score."
    shown = view.makers[:LONG]
    titles = [*(criterion.title for criterion in view.criteria), "Score"]
    page = _grid(book, view, ("Contributions", about + _first_lines(view)), titles, most=LONG)
    values = (view.assessment.points.counted[shown] * view.assessment.shares).tolist()
    scores, look, bold = view.assessment.ranking.scores[shown].tolist(), book.number(), book.number(bold=True)
    letters = [xl_col_to_name(at) for at in range(1, len(view.criteria) + 1)]
    shares = [f"=Points!{letter}${HEAD}*Points!{letter}" for letter in letters]
    for row, (line, score) in enumerate(zip(values, scores, strict=True), start=FIRST):
        for at, value in enumerate(line):
            page.write_formula(row - 1, at + 1, f"{shares[at]}{row}", look, value)
        page.write_formula(row - 1, len(letters) + 1, f"=SUM(B{row}:{letters[-1]}{row})", bold, score)


def _first_lines(view: View) -> str:
    """Return the sentence that says that a sheet does not hold all makers; "" where it does."""
    return f" The first {LONG} lines of the sheet Points are here." if len(view.makers) > LONG else ""


def write_answers(book: Book, view: View) -> None:
    """Write the sheet Answers: every answer as typed, then, where it is divided or steadied, what it counts as."""
    about = "Answers as typed; to the right, what they count as where that differs. An empty cell is unknown."
    countings = view.assessment.countings
    columns = [(criterion, counting.typed) for criterion, counting in zip(view.criteria, countings, strict=True)]
    titles = [f"{one.title} ({one.unit})" if one.unit else one.title for one in view.criteria]
    for criterion, counting in zip(view.criteria, countings, strict=True):
        if criterion.per_quantity or criterion.steady is not None:
            columns.append((criterion, counting.counts_as))
            titles.append(f"{criterion.title}, counts as")
    page = _grid(book, view, ("Answers", about + _first_lines(view)), titles, most=LONG)
    for column, (criterion, answers) in enumerate(columns, start=1):
        if criterion.choices is not None:
            page.set_column(column, column, min(max(WIDTH, *map(len, criterion.choices)) + 2, NAME_WIDTH))
            put(page, (HEAD, column), titles[column - 1], book.heading(right=False))
        text = book.number() if criterion.choices is None else book.words()
        _write_column(page, column, _texts(view, criterion, answers), (book.number("General"), text))


def _texts(view: View, criterion: Criterion, answers: Answers) -> list[str | float | None]:
    shown = view.makers[:LONG]
    ends = zip(answers.low[shown].tolist(), answers.high[shown].tolist(), strict=True)
    return [_answer(criterion, low, high) for low, high in ends]


def _answer(criterion: Criterion, low: float, high: float) -> str | float | None:
    """Return an answer as a cell holds it: a number, a choice or a range in words, None where it is unknown."""
    if isnan(low):
        return None
    if criterion.choices is not None:
        return clean_text(criterion.choices[int(low)]) or "(no name)"
    return low if low == high else range_words(low, high)


def _write_column(
    page: Worksheet, column: int, answers: Sequence[str | float | None], looks: tuple[Format, Format]
) -> None:
    for row, answer in enumerate(answers, start=FIRST - 1):
        put(page, (row, column), answer, looks[0] if isinstance(answer, float) else looks[1])


def _grid(
    book: Book, view: View, named: tuple[str, str], titles: Sequence[str], *, most: int | None = None
) -> Worksheet:
    """Return a new sheet, with a name and a sentence, makers down the side and titles across the top."""
    page = book.page(named[0], *named)
    page.set_column(0, 0, NAME_WIDTH)
    page.set_column(1, len(titles), WIDTH)
    book.headings(page, ["Maker", *titles])
    page.set_row(HEAD, heading_height(titles, [WIDTH] * len(titles)))
    page.freeze_panes(HEAD + 1, 1)
    page.repeat_columns(0)
    words, out = book.words(), book.words(font_color=QUIET, italic=True)
    for row, maker in enumerate(view.makers[:most], start=FIRST - 1):
        page.write_string(row, 0, view.names[maker], words if row < view.last_ranked else out)
    return page
