"""The sheet Shortlist: the weights, to be changed, and beside them the order of the makers under these weights."""

from decimal import ROUND_HALF_UP, Decimal
from re import fullmatch
from textwrap import wrap

from xlsxwriter.worksheet import Worksheet

from scorecard.sentences import spread_of_points, verdict_sentence
from scorecard.words import counted
from scorecard.workbooks.results_scores import may_yet_fail
from scorecard.workbooks.results_view import FIRST, HEAD, NAME_WIDTH, QUIET, RULE, Book, View, heading_height, stored
from scorecard.workbooks.results_view import INPUT_GROUND as GROUND
from scorecard.workbooks.safe import clean_text, put

WEIGHT_TITLES = ("Criterion", "Saved weight", "Weight: change me", "Share", "Moves makers by at most")
ORDER_TITLES = ("Rank", "Maker", "Score", "Lowest", "Highest", "Known", "Rank as saved", "May yet fail a limit on")
WIDTHS = (28, 8, 10, 8, 11, 3, 6, NAME_WIDTH, 8, 8, 8, 8, 8, 30)
ORDER = 6  # column in which the order begins
TEXT = 7  # the order's column of words that may be empty
WHOLE = sum(WIDTHS)
LONGEST_NAME = 120  # of a maker in the sentence on who leads


def write_shortlist(book: Book, view: View) -> None:
    """Write the sheet Shortlist."""
    case, assessment = view.assessment.case, view.assessment
    shown = counted(len(assessment.ranking.order), "maker")
    compared = counted(len(view.criteria), "criterion", "criteria")
    about = f"As of {assessment.as_of.isoformat()}; {shown} ranked on {compared}."
    page = book.page("Shortlist", case.title, f"{about}{_left_out(view)}")
    for at, width in enumerate(WIDTHS):
        page.set_column(at, at, width)
    _write_sentences(book, page, view)
    book.headings(page, WEIGHT_TITLES)
    book.headings(page, ORDER_TITLES, words=0, at=ORDER)
    for at in (1, 7):
        put(page, (HEAD, ORDER + at), ORDER_TITLES[at], book.heading(right=False))
    page.set_row(HEAD, heading_height((*WEIGHT_TITLES, "", *ORDER_TITLES), WIDTHS))
    page.freeze_panes(HEAD + 1, 0)
    _write_weights(book, page, view)
    _write_order(book, page, view)
    page.set_first_sheet()
    page.activate()
    page.set_selection(FIRST - 1, 2, FIRST - 1, 2)


def _left_out(view: View) -> str:
    """Return the sentence that says that not all ranked makers are here; "" where all are."""
    out = len(view.assessment.ranking.order) - len(view.ranked)
    if not out:
        return ""
    return f" Only the {len(view.ranked)} best at the saved weights are here; other weights might bring in another."


def _write_sentences(book: Book, page: Worksheet, view: View) -> None:
    """Write the verdict, who leads under these weights, and how to keep them."""
    verdict = clean_text(f"At the saved weights: {verdict_sentence(view.assessment)}.")
    page.merge_range(2, 0, 2, len(WIDTHS) - 1, None)
    put(page, (2, 0), verdict[:2000], book.look(text_wrap=True))
    page.set_row(2, 15.0 * min(len(wrap(verdict[:2000], WHOLE - 10)), 6) + 2)
    page.write_formula(
        3, 0, f"=IF({view.usable},{_who_leads(view)},{_what_is_wrong(view)})", book.look(bold=True), _led(view)
    )
    formula, value = _how_to_keep(view)
    page.write_formula(4, 0, formula, book.look(font_color=QUIET), value)


def _who_leads(view: View) -> str:
    """Return the expression that says who leads under the weights that stand here, and by how much."""
    if not view.ranked:
        return '"No maker passes every limit"'
    name, rival = (f"LEFT(H{row},{LONGEST_NAME})" for row in (FIRST, FIRST + 1))
    alone = f'"With these weights: "&{name}&" is the only maker that passes every limit"'
    if len(view.ranked) == 1:
        return alone
    ranks = f"G{FIRST}:G{view.last_ranked}"
    joint = f'"With these weights: "&COUNTIF({ranks},1)&" makers are level in first place, "&{name}&" among them"'
    ahead = f'FIXED(I{FIRST}-I{FIRST + 1},1)&" points ahead of "&{rival}'
    leads = f'"With these weights: "&{name}&" leads, "&{ahead}'
    return f"IF(COUNTIF({ranks},1)>1,{joint},{leads})"


def _led(view: View) -> str:
    """Return what that expression comes to at the saved weights."""
    ranking = view.assessment.ranking
    if not view.ranked:
        return "No maker passes every limit"
    name = view.names[view.ranked[0]][:LONGEST_NAME]
    if len(view.ranked) == 1:
        return f"With these weights: {name} is the only maker that passes every limit"
    joint = sum(ranking.ranks[maker] == 1 for maker in view.ranked)
    if joint > 1:
        return f"With these weights: {joint} makers are level in first place, {name} among them"
    rival = view.names[view.ranked[1]][:LONGEST_NAME]
    return f"With these weights: {name} leads, {_fixed(ranking.margin or 0.0)} points ahead of {rival}"


def _fixed(number: float) -> str:
    """Return a number with one decimal as spreadsheets round: a half away from zero, on 15 digits at most."""
    return str(Decimal(f"{number:.12g}").quantize(Decimal("0.1"), ROUND_HALF_UP))


def _what_is_wrong(view: View) -> str:
    """Return the expression that says why the weights cannot be used."""
    weights = f"$C${FIRST}:$C${view.total_row - 1}"
    not_number = '"A weight is not a number: write a number of 0 or more into each marked cell"'
    negative = '"A weight is below 0: write a number of 0 or more into each marked cell"'
    nothing = '"All weights are 0: give at least one criterion a weight above 0"'
    return (
        f"IF(COUNT({weights})<{len(view.criteria)},{not_number},"
        f"IFERROR(IF(MIN({weights})<0,{negative},IF(SUM({weights})=0,{nothing},{not_number})),{not_number}))"
    )


def _how_to_keep(view: View) -> tuple[str, str]:
    """Return the formula that says how to keep changed weights, and its text while none is changed."""
    unchanged = "Change a weight in a marked cell and watch the order. Nothing flows back to the folder by itself"
    keys, method = [criterion.key for criterion in view.criteria], view.assessment.case.criteria.note.method
    whether = f"SUMPRODUCT(--(C{FIRST}:C{view.total_row - 1}<>B{FIRST}:B{view.total_row - 1}))=0"
    if method != "typed":
        keep = '"To keep such an order of weights, change the list under [weights] in the criteria file"'
    elif len(keys) > 60 or not all(fullmatch(r"[A-Za-z0-9_-]{1,60}", key) for key in keys):
        keep = '"To keep these weights, run scorecard reweigh with each changed one as NAME=WEIGHT, and --save"'
    else:
        parts = "&".join(
            f'IF(C{row}=B{row},"", " {key}="&SUBSTITUTE(C{row},",","."))'.replace(', "', ',"')
            for row, key in enumerate(keys, start=FIRST)
        )
        keep = f'"To keep these weights, run: scorecard reweigh"&{parts}&" --save"'
    return f'=IF({view.usable},IF({whether},"{unchanged}",{keep}),"")', unchanged


def _write_weights(book: Book, page: Worksheet, view: View) -> None:
    """Write the weights: as saved, to be changed, as shares, and how far each moves the makers apart."""
    first, last, total = FIRST, view.total_row - 1, view.total_row
    weights = f"$C${first}:$C${last}"
    saved, general, percent, figures = (
        book.number("General", font_color=QUIET),
        book.number("General", bg_color=GROUND, border=1, border_color=RULE, locked=False),
        book.number("0.0%"),
        book.number(),
    )
    shares = view.assessment.shares.tolist()
    for at, criterion in enumerate(view.criteria):
        row = first + at
        put(page, (row - 1, 0), criterion.title, book.cell())
        page.write_number(row - 1, 1, criterion.weight, saved)
        page.write_number(row - 1, 2, criterion.weight, general)
        share = f"=IFERROR(IF(AND(COUNT({weights})={len(shares)},MIN({weights})>=0),C{row}/SUM({weights}),0),0)"
        page.write_formula(row - 1, 3, share, percent, shares[at])
        if view.ranked:
            column = f"INDEX(Points!$B${first}:${view.last_column}${view.last_ranked},0,{at + 1})"
            page.write_formula(row - 1, 4, f"=D{row}*(MAX({column})-MIN({column}))", figures, _moves(view, at))
    put(page, (total - 1, 0), "Sum", book.look(bold=True))
    sums = book.look(bold=True, num_format="General", align="right")
    page.write_formula(total - 1, 2, f"=IFERROR(SUM({weights}),0)", sums, sum(c.weight for c in view.criteria))
    whole = book.look(bold=True, num_format="0.0%", align="right")
    page.write_formula(total - 1, 3, f"=SUM(D{first}:D{last})", whole, sum(shares))
    page.data_validation(first - 1, 2, last - 1, 2, _at_least_0())


def _moves(view: View, criterion: int) -> float:
    if view.most is None:
        return spread_of_points(view.assessment, criterion)
    points = view.assessment.points.counted[view.ranked, criterion]
    return float(view.assessment.shares[criterion] * (points.max() - points.min()))


def _at_least_0() -> dict[str, object]:
    return {
        "validate": "decimal",
        "criteria": ">=",
        "value": 0,
        "error_type": "warning",
        "error_title": "A weight is 0 or more",
        "error_message": "Weights are numbers of 0 or more; 0 takes a criterion out. Is this meant so?",
    }


def _write_order(book: Book, page: Worksheet, view: View) -> None:
    """Write the makers in their order under the weights that stand here."""
    ranking = view.assessment.ranking
    if not view.ranked:
        put(page, (FIRST - 1, ORDER), "No maker passes every limit: see the sheet Ruled out.", book.look())
    whole, words, figures, percent = book.number("0"), book.cell(), book.number(), book.number("0%")
    quiet = book.number("0", font_color=QUIET)
    columns = [f"INDEX(Scores!{view.down(letter)},Scores!O" for letter in "ABCDEFGI"]
    looks = (whole, words, figures, figures, figures, percent, quiet, words)
    for row, maker in enumerate(view.ranked, start=FIRST):
        values = (
            ranking.ranks[maker],
            stored(view.names[maker]),
            ranking.scores[maker],
            ranking.low[maker],
            ranking.high[maker],
            ranking.known_shares[maker],
            ranking.ranks[maker],
            stored(may_yet_fail(view, maker)),
        )
        for at, (found, look, value) in enumerate(zip(columns, looks, values, strict=True)):
            text = '&""' if at == TEXT else ""
            page.write_formula(row - 1, ORDER + at, f'=IF({view.usable},{found}{row}){text},"")', look, value)
