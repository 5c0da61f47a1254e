"""What the results workbook is made from, and how its sheets look.

Enters: an assessment. Leaves: which makers stand in which row, the looks of cells, and the parts that all sheets share:
a title, a sentence, headings that stay in sight, print set-up, and locked cells without a password.
"""

from collections.abc import Callable, Collection, Sequence
from datetime import datetime
from functools import cached_property
from typing import Any

from xlsxwriter import Workbook
from xlsxwriter.format import Format
from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.worksheet import Worksheet

from scorecard.assessment import Assessment
from scorecard.criteria import Criterion
from scorecard.frozen import dataclass
from scorecard.words import plain_command
from scorecard.workbooks.safe import QuickSheet, clean_text, put

INK = "#33312C"
QUIET = "#6E6A60"
INPUT_GROUND = "#EADFC8"  # as in the entry workbook: what is to be filled in
HAIRLINE = "#C9C3B4"
RULE = "#8C8573"

FIRST = 8  # spreadsheet row of the first maker, and of the first weight, on every sheet with makers
HEAD = FIRST - 2  # row of the headings, from 0
NAME_WIDTH = 30
LONG = 500  # makers on the sheets that are there for reading; scores, ranks and points are of all

ERROR_NAMES = {"#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#NUM!", "#REF!", "#VALUE!"}


@dataclass(frozen=True, kw_only=True, eq=False)
class View:
    """An assessment with the makers that the workbook holds, in its order.

    Parameters
    ----------
    assessment : what was computed
    made : when the workbook is made
    command : from "reweigh rating=5" to what this user types for it
    """

    assessment: Assessment
    made: datetime
    command: Callable[[str], str] = plain_command

    @cached_property
    def ranked(self) -> list[int]:
        """Positions of the ranked makers, in the order of rank."""
        return list(self.assessment.ranking.order)

    @cached_property
    def ruled_out(self) -> list[int]:
        """Positions of the ruled-out makers, in sheet order."""
        ranks = self.assessment.ranking.ranks
        return [maker for maker, rank in enumerate(ranks) if not rank]

    @cached_property
    def makers(self) -> list[int]:
        """Positions of all makers: the ranked ones, then those ruled out."""
        return [*self.ranked, *self.ruled_out]

    @cached_property
    def names(self) -> list[str]:
        """Names of all makers, by position, as a cell can hold them."""
        return [clean_text(name) for name in self.assessment.case.table.makers]

    @property
    def criteria(self) -> tuple[Criterion, ...]:
        """The criteria in the order of the file."""
        return self.assessment.case.criteria.criteria

    @property
    def last_ranked(self) -> int:
        """Spreadsheet row of the last ranked maker."""
        return FIRST + len(self.ranked) - 1

    @property
    def total_row(self) -> int:
        """Spreadsheet row of the sum of weights."""
        return FIRST + len(self.criteria)

    @property
    def last_column(self) -> str:
        """Letter of the last criterion's column, where criteria begin in column B."""
        return str(xl_col_to_name(len(self.criteria)))

    @property
    def whole(self) -> str:
        """The cell with the sum of all shares: 1, or 0 where the weights typed cannot be shared out."""
        return f"Shortlist!$D${self.total_row}"

    @property
    def usable(self) -> str:
        """The condition, in formulas, that the weights typed can be shared out."""
        return f"{self.whole}>0"

    @property
    def share_row(self) -> str:
        """Return the range of all shares on the sheet Points, fixed."""
        return f"Points!$B${HEAD}:${self.last_column}${HEAD}"

    @property
    def read(self) -> int:
        """How many makers the sheets that are there for reading hold."""
        return min(len(self.ranked), LONG)

    def down(self, column: str) -> str:
        """Return the range of one column over all ranked makers, fixed, as a formula writes it."""
        return f"${column}${FIRST}:${column}${self.last_ranked}"


class PlainSheet(QuickSheet):
    """A sheet whose formulas are written as they stand: ours use no function that would have to be respelt."""

    def _prepare_formula(self, formula: str, *_others: object) -> str:
        """Return a formula without its sign; the search for newer functions takes most of the time of writing."""
        return formula.removeprefix("=")


class Book:
    """A workbook being written, with its cell formats, each made once."""

    def __init__(self, workbook: Workbook) -> None:
        self.workbook = workbook
        self._looks: dict[tuple[tuple[str, Any], ...], Format] = {}

    def look(self, **properties: Any) -> Format:
        """Return the cell format with these properties, in our ink."""
        key = tuple(sorted(properties.items()))
        if key not in self._looks:
            self._looks[key] = self.workbook.add_format({"font_color": INK, "valign": "top"} | properties)
        return self._looks[key]

    def cell(self, **properties: Any) -> Format:
        """Return the format of a table's cell: a hairline below it."""
        return self.look(bottom=1, bottom_color=HAIRLINE, **properties)

    def words(self, **properties: Any) -> Format:
        """Return the format of a table's words, a little apart from the figures before them."""
        return self.cell(align="left", indent=1, **properties)

    def number(self, decimals: str = "0.0", **properties: Any) -> Format:
        """Return the format of a table's number."""
        return self.cell(num_format=decimals, align="right", **properties)

    def heading(self, *, right: bool) -> Format:
        """Return the format of a heading, to the side to which its column is set."""
        side: dict[str, Any] = {"align": "right"} if right else {"align": "left", "indent": 1}
        return self.look(bold=True, text_wrap=True, valign="bottom", bottom=1, bottom_color=RULE, **side)

    def page(self, name: str, title: str, about: str) -> Worksheet:
        """Return a new sheet with a title, a sentence on what it holds, print set-up, and its cells locked."""
        page = self.workbook.add_worksheet(name, PlainSheet)
        page.hide_gridlines(2)
        page.set_landscape()
        page.set_paper(9)  # A4
        page.set_margins(left=0.5, right=0.5, top=0.6, bottom=0.7)
        page.fit_to_pages(1, 0)
        page.set_footer("&L&A&RPage &P of &N")
        page.protect("", {"sort": True, "autofilter": True, "format_columns": True, "format_rows": True})
        put(page, (0, 0), title, self.look(bold=True, font_size=14, align="left", indent=1))
        put(page, (1, 0), about, self.look(font_color=QUIET, align="left", indent=1))
        page.set_row(0, 22)
        return page

    def headings(self, page: Worksheet, titles: Sequence[str], *, words: Collection[int] = (0,), at: int = 0) -> None:
        """Write the headings of a table, to the right but over the columns of words; they are printed on every page."""
        for column, title in enumerate(titles):
            put(page, (HEAD, at + column), title, self.heading(right=column not in words))
        page.repeat_rows(HEAD)


def heading_height(titles: Sequence[str], widths: Sequence[float]) -> float:
    """Return how tall a row of headings must be: spreadsheets do not size the rows of written files by themselves."""
    lines = max(
        (-(-len(title) // max(int(width) - 2, 1)) for title, width in zip(titles, widths, strict=True)), default=1
    )
    return 15.0 * min(max(lines, 1), 6) + 3


def stored(text: str) -> str:
    """Return a text as a formula's stored value; one that looks like an error is left to be worked out on opening."""
    return "" if text in ERROR_NAMES else text
