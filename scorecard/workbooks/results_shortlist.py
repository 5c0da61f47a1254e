"""The sheet Shortlist: the weights, to be changed, and beside them the order of the makers under these weights."""

from math import fsum
from re import fullmatch
from textwrap import wrap

from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.worksheet import Worksheet

from scorecard.sentences import only_words, verdict_sentence
from scorecard.words import counted, rounded
from scorecard.workbooks.results_scores import may_yet_fail
from scorecard.workbooks.results_view import FIRST, HEAD, NAME_WIDTH, QUIET, RULE, Book, View, heading_height, stored
from scorecard.workbooks.results_view import INPUT_GROUND as GROUND
from scorecard.workbooks.safe import clean_text, put

WEIGHT_TITLES = ("Criterion", "Saved weight", "Weight: change me", "Share", "Moves makers by at most")
ORDER_TITLES = ("Rank", "Maker", "Score", "Lowest", "Highest", "Known", "Rank as saved", "May yet fail a limit on")
WIDTHS = (28, 9, 11, 9, 12, 3, 7, NAME_WIDTH, 9, 9, 10, 9, 9, 30)
ORDER = 6  # column in which the order begins
TEXT = 7  # the order's column of words that may be empty
WHOLE = sum(WIDTHS)
LONGEST_TITLE = 44  # of a criterion, in characters that show
HOLE = "\0"  # in a command: where the changed weights are put
LONGEST_NAME = 120  # of a maker in the sentence on who leads
RUN = "To see how firm that is, run this; with --save at its end it keeps these weights: "
DOUBT = "; how firm that is, this sheet cannot tell"  # smallest changes are no formula


def write_shortlist(book: Book, view: View) -> None:
    """Write the sheet Shortlist."""
    case, assessment = view.assessment.case, view.assessment
    shown = counted(len(assessment.ranking.order), "maker")
    compared = counted(len(view.criteria), "criterion", "criteria")
    about = f"As of {assessment.as_of.isoformat()}; {shown} ranked on {compared}."
    page = book.page("Shortlist", case.title, f"{about}{_left_out(view)}")
    for at, width in enumerate(WIDTHS):
        page.set_column(at, at, width)
    page.set_column(0, 0, min(max(WIDTHS[0], *(len(one.title) for one in view.criteria)), LONGEST_TITLE))
    _write_sentences(book, page, view)
    book.headings(page, WEIGHT_TITLES)
    book.headings(page, ORDER_TITLES, words=(1, TEXT), at=ORDER)
    page.set_row(HEAD, heading_height((*WEIGHT_TITLES, "", *ORDER_TITLES), WIDTHS))
    page.freeze_panes(HEAD + 1, 0)
    _write_weights(book, page, view)
    _write_order(book, page, view)
    page.set_first_sheet()
    page.activate()
    page.set_selection(FIRST - 1, 2, FIRST - 1, 2)


def _left_out(view: View) -> str:
    """Return what of the ranked makers is not on this sheet, or not in the workbook; "" where all are."""
    here = len(view.ranked)
    places = f" The first {view.read} places are shown here, every maker's rank on Scores." if view.read < here else ""
    if not view.assessment.case.left_out:
        return places
    return f"{places} Only the best at the saved weights are in this workbook; other weights might bring another."


def _write_sentences(book: Book, page: Worksheet, view: View) -> None:
    """Write the verdict, who leads under these weights, and how to keep them."""
    verdict = clean_text(f"At the saved weights: {verdict_sentence(view.assessment)}.")
    page.merge_range(2, 0, 2, len(WIDTHS) - 1, None)
    put(page, (2, 0), verdict[:2000], book.look(text_wrap=True, align="left", indent=1))
    page.set_row(2, 15.0 * min(len(wrap(verdict[:2000], WHOLE - 10)), 6) + 2)
    leads = f"=IF({view.usable},{_who_leads(view)},{_what_is_wrong(view)})"
    page.write_formula(3, 0, leads, book.look(bold=True, align="left", indent=1), _led(view))
    formula, value = _how_to_keep(view)
    page.write_formula(4, 0, formula, book.look(font_color=QUIET, align="left", indent=1), value)


def _who_leads(view: View) -> str:
    """Return the expression that says who leads under the weights that stand here, and by how much."""
    if not view.ranked:
        return '"No maker passes every limit"'
    name, rival = (f"LEFT(H{row},{LONGEST_NAME})" for row in (FIRST, FIRST + 1))
    alone = f'"With these weights: "&{name}&" is {only_words(view.assessment)}"'
    if len(view.ranked) == 1:
        return alone
    ranks = f"Scores!{view.down('A')}"
    joint = f'"With these weights: "&COUNTIF({ranks},1)&" makers are level in first place, "&{name}&" among them"'
    margin = f"I{FIRST}-I{FIRST + 1}"
    ahead = f'IF({margin}<0.05,"less than 0.1",FIXED({margin},1))&" points ahead of "&{rival}'
    leads = f'"With these weights: "&{name}&" leads, "&{ahead}&IF({_is_unchanged(view)},"","{DOUBT}")'
    return f"IF(COUNTIF({ranks},1)>1,{joint},{leads})"


def _is_unchanged(view: View) -> str:
    """Return the expression that is true while every weight is as saved."""
    return f"SUMPRODUCT(--(C{FIRST}:C{view.total_row - 1}<>B{FIRST}:B{view.total_row - 1}))=0"


def _led(view: View) -> str:
    """Return what that expression comes to at the saved weights."""
    ranking = view.assessment.ranking
    if not view.ranked:
        return "No maker passes every limit"
    name = view.names[view.ranked[0]][:LONGEST_NAME]
    if len(view.ranked) == 1:
        return f"With these weights: {name} is {only_words(view.assessment)}"
    joint = sum(ranking.ranks[maker] == 1 for maker in view.ranked)
    if joint > 1:
        return f"With these weights: {joint} makers are level in first place, {name} among them"
    rival = view.names[view.ranked[1]][:LONGEST_NAME]
    return f"With these weights: {name} leads, {_fixed(ranking.margin or 0.0)} points ahead of {rival}"


def _fixed(number: float) -> str:
    """Return a margin with one decimal, as the sheet's own formula rounds it."""
    return "less than 0.1" if number < 0.05 else rounded(number)


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
    if method != "typed":
        keep = literal(
            "To keep such an order of weights, and to see how firm it is, change the list under [weights] in the "
            f"criteria file, and run: {view.command('score')}"
        )
    elif len(keys) > 60 or not all(fullmatch(r"[A-Za-z0-9_-]{1,60}", key) for key in keys):
        keep = literal(f"{RUN}{view.command('reweigh NAME=WEIGHT')}")
    else:
        parts = "&".join(
            f'IF(C{row}=B{row},"", " {key}="&SUBSTITUTE(C{row},",","."))'.replace(', "', ',"')
            for row, key in enumerate(keys, start=FIRST)
        )
        before, after = view.command(f"reweigh{HOLE}").split(HOLE)
        keep = f"{literal(f'{RUN}{before}')}&{parts}&{literal(after)}"
    return f'=IF({view.usable},IF({_is_unchanged(view)},"{unchanged}",{keep}),"")', unchanged


def literal(text: str) -> str:
    """Return a text as a formula writes it, in pieces, since one literal holds 255 characters at most.

    Examples
    --------
    >>> print(literal('score --folder "my mugs" --rows 9'))
    "score --folder ""my mugs"" --rows 9"
    """
    pieces = [text[at : at + 100].replace('"', '""') for at in range(0, max(len(text), 1), 100)]
    return "&".join(f'"{piece}"' for piece in pieces)


def _write_weights(book: Book, page: Worksheet, view: View) -> None:
    """Write the weights: as saved, to be changed, as shares, and how far each moves the makers apart."""
    saved = book.number("General", font_color=QUIET)
    marked = book.number("General", bg_color=GROUND, border=1, border_color=RULE, locked=False)
    percent, figures = book.number("0.0%"), book.number()
    for at, (criterion, value) in enumerate(zip(view.criteria, view.assessment.shares.tolist(), strict=True)):
        row, (share, moves) = FIRST + at, _weight_formulas(view, at)
        put(page, (row - 1, 0), criterion.title, book.words())
        page.write_number(row - 1, 1, criterion.weight, saved)
        page.write_number(row - 1, 2, criterion.weight, marked)
        page.write_formula(row - 1, 3, share, percent, value)
        if view.ranked:
            page.write_formula(row - 1, 4, moves, figures, _moves(view, at))
    page.data_validation(FIRST - 1, 2, view.total_row - 2, 2, _at_least_0())
    _write_sums(book, page, view)


def _weight_formulas(view: View, at: int) -> tuple[str, str]:
    """Return the formulas of a weight's share, 0 where the weights cannot be used, and of what it moves at most."""
    row, weights = FIRST + at, f"$C${FIRST}:$C${view.total_row - 1}"
    usable = f"AND(COUNT({weights})={len(view.criteria)},MIN({weights})>=0)"
    letter = xl_col_to_name(at + 1)
    points = f"Points!${letter}${FIRST}:${letter}${view.last_ranked}"
    return f"=IFERROR(IF({usable},C{row}/SUM({weights}),0),0)", f"=D{row}*(MAX({points})-MIN({points}))"


def _moves(view: View, criterion: int) -> float:
    points = view.assessment.points.counted[view.ranked, criterion]
    return float(view.assessment.shares[criterion] * (points.max() - points.min()))


def _write_sums(book: Book, page: Worksheet, view: View) -> None:
    at, last, bold = view.total_row - 1, view.total_row - 1, {"bold": True, "align": "right"}
    put(page, (at, 0), "Sum", book.look(bold=True, align="left", indent=1))
    whole = fsum(criterion.weight for criterion in view.criteria)
    page.write_formula(at, 2, f"=IFERROR(SUM(C{FIRST}:C{last}),0)", book.look(num_format="General", **bold), whole)
    shares = fsum(view.assessment.shares.tolist())
    page.write_formula(at, 3, f"=SUM(D{FIRST}:D{last})", book.look(num_format="0.0%", **bold), shares)


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
    if not view.ranked:
        put(page, (FIRST - 1, ORDER), "No maker passes every limit: see the sheet Ruled out.", book.look())
    figures, words, quiet = book.number(), book.words(), book.number("0", font_color=QUIET)
    looks = (book.number("0"), words, figures, figures, figures, book.number("0%"), quiet, words)
    columns = [f"INDEX(Scores!{view.down(letter)},Scores!O" for letter in "ABCDEFGI"]
    for row, maker in enumerate(view.ranked[: view.read], start=FIRST):
        values = _order_values(view, maker)
        for at, (found, look, value) in enumerate(zip(columns, looks, values, strict=True)):
            text = '&""' if at == TEXT else ""
            page.write_formula(row - 1, ORDER + at, f'=IF({view.usable},{found}{row}){text},"")', look, value)


def _order_values(view: View, maker: int) -> tuple[str | float, ...]:
    ranking = view.assessment.ranking
    return (
        ranking.ranks[maker],
        stored(view.names[maker]),
        float(ranking.scores[maker]),
        float(ranking.low[maker]),
        float(ranking.high[maker]),
        float(ranking.known_shares[maker]),
        ranking.ranks[maker],
        stored(may_yet_fail(view, maker)),
    )
