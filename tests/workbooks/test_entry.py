"""The entry workbook: every heading with its note, drop-downs by name, the same bytes, and no formula."""

import zipfile
from datetime import date, datetime
from io import BytesIO

import openpyxl
import pytest

from scorecard.brief import Brief
from scorecard.criteria import Criterion
from scorecard.value_functions import Choices, PiecewiseLinear
from scorecard.workbooks.entry import entry_workbook
from scorecard.workbooks.entry_makers import entry_sheets

BRIEF = Brief(item="enamel mug", quantity=200, designs=4, currency="EUR")
CRITERIA = (
    Criterion(
        key="years",
        title="Years trading",
        weight=1,
        column="Years trading",
        unit="years",
        value=PiecewiseLinear(((0, 0), (10, 100))),
    ),
    Criterion(
        key="method",
        title="Print method",
        weight=1,
        column="Print method",
        value=Choices((("kiln-fired transfer", 100), ("sticker", 0))),
    ),
    Criterion(
        key="sample",
        title="Sample",
        weight=1,
        column="Sample",
        value=Choices((("free", 100), ("paid, credited to the order", 85))),
    ),
)
ROWS = {
    "Makers": [
        {"Maker": "Brightholm", "Years trading": 7, "Print method": "sticker", "Asked on": date(2026, 11, 2)},
        {"Maker": "=1+1", "Years trading": "3-5"},
    ],
    "Quotes": [{"Maker": "Brightholm", "Price": 4.2, "Pieces": 200}],
}


def opened(content):
    return openpyxl.load_workbook(BytesIO(content))


@pytest.fixture(scope="module")
def blank():
    return opened(entry_workbook(CRITERIA, BRIEF))


def headings(page):
    return [cell.value for cell in page[1]]


def entered(book):
    """Return the sheets that a buyer fills in."""
    return [page for page in book if page.title not in ("Guide", "Lists")]


def list_lines(book, name):
    """Return the lines that a named range refers to."""
    ((sheet, cells),) = book.defined_names[name].destinations
    return [cell.value for (cell,) in book[sheet][cells]]


def drop_downs(page):
    """Return the source of each drop-down by the letter of its column."""
    return {
        str(rule.sqref)[: str(rule.sqref).index("2")]: rule.formula1 for rule in page.data_validations.dataValidation
    }


def test_the_sheets_come_in_the_order_of_the_work(blank):
    assert ["Makers", "Quotes", "Freight", "Samples", "Checks", "Orders", "Guide", "Lists"] == blank.sheetnames


def test_every_sheet_has_its_headings_in_row_1(blank):
    expected = [[column.heading for column in sheet.columns] for sheet in entry_sheets(CRITERIA, BRIEF)]

    assert expected == [headings(page) for page in entered(blank)]


def test_a_blank_workbook_holds_nothing_below_the_headings(blank):
    assert [1] * 6 == [page.max_row for page in entered(blank)]


def test_every_heading_has_a_note_that_says_where_to_look(blank):
    silent = [cell.value for page in entered(blank) for cell in page[1] if "Where: " not in cell.comment.text]

    assert [] == silent


@pytest.mark.parametrize(
    ("heading", "when"),
    [
        ("Maker", "First of all, while you browse."),
        ("Print method", "First of all, while you browse."),
        ("Sample", "While you browse, where it is shown; else after they reply."),
        ("Minimum is per", "After they reply."),
        ("Country", "While you browse."),
        ("Web page", "While you browse."),
        ("Contact", "While you browse."),
        ("Asked on", "When you write to the maker."),
        ("Answered on", "After they reply."),
        ("Seen on", "While you browse."),
        ("Notes", "At any time."),
    ],
)
def test_the_note_on_a_heading_begins_with_when_to_fill_it_in(blank, heading, when):
    notes = {cell.value: cell.comment.text.split("\n")[0] for cell in blank["Makers"][1]}

    assert when == notes[heading]


def test_the_sheets_for_quotes_say_that_they_stay_empty_until_then(blank):
    notes = [page["A1"].comment.text for page in entered(blank)[1:]]

    assert [True] * 5 == [note.startswith("Leave this sheet empty until quotes come.") for note in notes]


def test_every_drop_down_refers_to_a_list_by_its_name(blank):
    sources = [source for page in entered(blank) for source in drop_downs(page).values()]

    assert 3 + 6 + 2 + 2 + 2 + 1 == len(sources)  # on Makers, Quotes, Freight, Samples, Checks and Orders
    assert [] == [source for source in sources if source not in blank.defined_names]


def test_every_list_holds_the_lines_of_its_column(blank):
    expected = {column.options for sheet in entry_sheets(CRITERIA, BRIEF) for column in sheet.columns if column.options}

    assert expected == {tuple(list_lines(blank, name)) for name in blank.defined_names}


def test_a_column_of_choices_offers_the_choices_of_the_criteria_file(blank):
    letter = blank["Makers"][1][headings(blank["Makers"]).index("Sample")].column_letter

    assert ["free", "paid, credited to the order"] == list_lines(blank, drop_downs(blank["Makers"])[letter])


def test_a_drop_down_warns_and_does_not_stop(blank):
    rules = [rule for page in entered(blank) for rule in page.data_validations.dataValidation]

    assert {"warning"} == {rule.errorStyle for rule in rules}


def test_no_sheet_is_protected_or_hidden(blank):
    assert [(False, "visible")] * 8 == [(page.protection.sheet, page.sheet_state) for page in blank]


def test_headings_stay_in_sight_and_on_every_printed_page(blank):
    pages = entered(blank)

    assert {("B2", "$1:$1", "landscape")} == {
        (page.freeze_panes, page.print_title_rows, page.page_setup.orientation) for page in pages
    }


def test_dates_are_shown_year_first(blank):
    at = headings(blank["Makers"]).index("Asked on")
    letter = blank["Makers"][1][at].column_letter
    filled = opened(entry_workbook(CRITERIA, BRIEF, ROWS))["Makers"][f"{letter}2"]

    assert ("yyyy-mm-dd", datetime(2026, 11, 2)) == (filled.number_format, filled.value)


def test_amounts_that_are_filled_in_have_two_decimals():
    page = opened(entry_workbook(CRITERIA, BRIEF, ROWS))["Quotes"]
    price = page.cell(2, headings(page).index("Price") + 1)

    assert ("0.00", 4.2) == (price.number_format, price.value)


def test_rows_are_filled_in_as_they_are():
    page = opened(entry_workbook(CRITERIA, BRIEF, ROWS))["Makers"]

    assert [("Brightholm", 7, "sticker"), ("=1+1", "3-5", None)] == [
        tuple(cell.value for cell in row[:3]) for row in page.iter_rows(min_row=2)
    ]


@pytest.mark.parametrize(
    ("rows", "named"),
    [({"Quotas": []}, "Quotas"), ({"Quotes": [{"Prize": 3}]}, "Quotes: Prize")],
)
def test_a_row_without_a_place_is_refused(rows, named):
    with pytest.raises(ValueError, match=f"no place for {named}"):
        entry_workbook(CRITERIA, BRIEF, rows)


def test_the_same_input_is_the_same_bytes():
    assert entry_workbook(CRITERIA, BRIEF, ROWS) == entry_workbook(CRITERIA, BRIEF, ROWS)


def test_no_part_of_the_file_carries_the_time_of_its_making():
    with zipfile.ZipFile(BytesIO(entry_workbook(CRITERIA, BRIEF))) as parts:
        assert {(1980, 1, 1, 0, 0, 0)} == {part.date_time for part in parts.infolist()}


HOSTILE = (
    "=1+1",
    "@SUM(A1)",
    "+1",
    "-1",
    "{=1}",
    "a\x00\x07b",
    "\ud800",
    "x" * 40_000,
    "陶器",
    "'=1",
    "https://x.example",
)


def hostile_workbook():
    """Return a workbook whose every text from outside means harm."""
    criteria = [
        Criterion(key=f"k{n}", title=text, weight=1, column=f"{text} {n}"[:300], unit=text, value=Choices(((word, 1),)))
        for n, (text, word) in enumerate(zip(HOSTILE, reversed(HOSTILE), strict=True))
    ]
    criteria.append(
        Criterion(key="all", title="All", weight=1, column="=2", value=Choices(tuple((t, 1) for t in HOSTILE)))
    )
    rows = {"Makers": [{"Maker": text, "Notes": text} for text in HOSTILE]}
    return entry_workbook(criteria, Brief(item="=1+1\x00", quantity=1), rows)


def test_no_hostile_text_becomes_a_formula_or_a_link():
    cells = [cell for page in opened(hostile_workbook()) for row in page.iter_rows() for cell in row]

    assert [] == [cell.coordinate for cell in cells if cell.data_type == "f" or cell.hyperlink]


def test_hostile_names_do_not_clash():
    book = opened(hostile_workbook())

    assert 12 + 11 == len(book.defined_names)


@pytest.mark.office
def test_a_trip_through_libreoffice_keeps_what_a_buyer_sees(recalc):
    content = entry_workbook(CRITERIA, BRIEF, ROWS)
    before, after = opened(content), recalc(content)

    def seen(book):  # LibreOffice may add rows that hold nothing but a look
        return {
            page.title: (
                {cell.coordinate: cell.value for row in page.iter_rows() for cell in row if cell.value is not None},
                [cell.comment.text if cell.comment else None for cell in page[1]],
                drop_downs(page),
            )
            for page in book
        }

    assert seen(before) == seen(after)


@pytest.mark.office
def test_a_hostile_workbook_opens_in_libreoffice(recalc):
    assert "=1+1" == recalc(hostile_workbook())["Makers"]["A2"].value
