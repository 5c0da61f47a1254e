import zipfile
from datetime import date, datetime
from io import BytesIO
from math import inf, nan

import numpy as np
import pytest
from builders import choices, codes, makers_csv, makers_xlsx, numbers, workbook_bytes
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from scorecard.brief import Brief
from scorecard.case import Case
from scorecard.criteria import CriteriaSet, Steady
from scorecard.measures import measured
from scorecard.reading.csv_cells import CsvSheet
from scorecard.reading.makers import MakersReading, ReadingOptions, read_makers

CRITERIA = (
    numbers("years", "Years trading", unit="years"),
    numbers(
        "rating", "Rating", within=(0, 5), steady=Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20)
    ),
    numbers("minimum", "Minimum order", unit="pieces", per_quantity=True),
    choices("sample", "free", "paid", "none", column="Sample"),
    numbers("days", measure="response_days"),
)
COLUMNS = ("Maker", "Years trading", "Rating", "Ratings counted", "Minimum order", "Minimum is per", "Sample")
WITH_DAYS = (*COLUMNS, "Asked on", "Answered on", "Seen on")
GOOD = ("Brightholm", 7, 4.5, 120, 100, "order", "free")
BRIEF = Brief(item="mugs", quantity=200)


def read(path, *, criteria=CRITERIA, decimal=None, **options):
    """Read a file of makers."""
    brief = Brief(item="mugs", quantity=200, decimal=decimal)
    return read_makers(path, criteria=criteria, brief=brief, options=ReadingOptions(**options))


def read_rows(tmp_path, *rows, headings=COLUMNS, change=None, **options):
    """Read a workbook with these rows of makers from row 2."""
    return read(makers_xlsx(tmp_path / "makers.xlsx", headings, rows, change=change), **options)


def with_cell(heading, value):
    """Return a good row with one cell changed."""
    return [value if column == heading else cell for column, cell in zip(COLUMNS, GOOD, strict=True)]


def test_a_good_sheet_is_read_without_a_word(tmp_path):
    reading = read_rows(tmp_path, GOOD)

    assert ((), (), ()) == (reading.problems, reading.warnings, reading.set_aside)
    assert "makers.xlsx" == reading.source.name


def test_answers_stand_in_the_order_of_the_sheet(tmp_path):
    table = read_rows(tmp_path, GOOD, [], ["Otterwick", "3-5", "?", None, "from 300", "per design", "Paid"]).table

    assert (("Brightholm", "Otterwick"), (2, 4)) == (table.makers, table.rows)
    np.testing.assert_array_equal([7, 3], table.answers["years"].low)
    np.testing.assert_array_equal([7, 5], table.answers["years"].high)
    np.testing.assert_array_equal([4.5, nan], table.answers["rating"].low)
    np.testing.assert_array_equal([120, nan], table.counts["rating"].low)
    np.testing.assert_array_equal([100, 300], table.answers["minimum"].low)
    np.testing.assert_array_equal([0, 1], table.answers["sample"].low)
    assert ("order", "design") == table.minimum_per


def test_every_answer_knows_its_cell(tmp_path):
    table = read_rows(tmp_path, GOOD).table

    assert "makers.xlsx, Makers!C2" == str(table.place(0, "rating"))


def test_an_open_range_stays_open_beyond_its_bounds(tmp_path):
    table = read_rows(tmp_path, with_cell("Rating", "4+")).table

    assert (4, inf) == (table.answers["rating"].low[0], table.answers["rating"].high[0])


def test_a_measure_is_not_there_unless_typed(tmp_path):
    assert "days" not in read_rows(tmp_path, GOOD).table.answers


def test_a_typed_measure_is_an_answer_and_blank_is_unknown(tmp_path):
    rows = [(*GOOD, "2 days"), ("Otterwick",)]
    table = read_rows(tmp_path, *rows, headings=(*COLUMNS, "Response days")).table

    np.testing.assert_array_equal([2, nan], table.answers["days"].low)


def test_details_are_texts(tmp_path):
    table = read_rows(
        tmp_path,
        ["a", "IE", 353, datetime(2026, 11, 2)],
        headings=("Maker", "Country", "Contact", "Seen on"),
        criteria=(),
    ).table

    assert {"Country": ("IE",), "Contact": ("353",), "Seen on": ("2026-11-02",)} == table.details


@pytest.mark.parametrize(
    ("heading", "value", "cell", "code"),
    [
        ("Years trading", "about 100", "B2", "rough-number"),
        ("Years trading", "~100", "B2", "rough-number"),
        ("Years trading", "many", "B2", "not-a-number"),
        ("Years trading", "1.000", "B2", "ambiguous-number"),
        ("Years trading", "1,000", "B2", "ambiguous-number"),
        ("Years trading", "10²", "B2", "not-a-number"),
        ("Years trading", "5-3", "B2", "reversed-range"),
        ("Years trading", "from 3", "B2", "from-number"),
        ("Years trading", "18 months", "B2", "other-unit"),
        ("Years trading", "€3", "B2", "money-for-number"),
        ("Years trading", datetime(2026, 5, 3), "B2", "date-for-number"),
        ("Years trading", True, "B2", "true-or-false"),
        ("Years trading", "=1/0", "B2", "formula-without-result"),
        ("Years trading", "#DIV/0!", "B2", "spreadsheet-error"),
        ("Rating", 6, "C2", "outside-within"),
        ("Ratings counted", -1, "D2", "below-zero"),
        ("Minimum order", -50, "E2", "below-zero"),
        ("Minimum is per", "pallet", "F2", "not-a-minimum-unit"),
        ("Sample", "perhaps", "G2", "not-a-choice"),
        ("Maker", None, "A2", "no-name"),
        ("Maker", datetime(2026, 5, 3), "A2", "date-for-name"),
        ("Maker", "=1+1", "A2", "formula-without-result"),
        ("Maker", "#N/A", "A2", "spreadsheet-error"),
    ],
)
def test_every_fault_stands_at_its_cell(tmp_path, heading, value, cell, code):
    reading = read_rows(tmp_path, with_cell(heading, value))

    assert ([(cell, code)], None) == (codes(reading.problems), reading.table)


FAULTY = [
    ["Brightholm", "many", 6, -1, -50, "pallet", "perhaps", "03/04/2026", None, None],
    [None, 3],
    ["Otterwick", "1.000", True, "~9", "2-3 weeks", None, None, 46_351, "2026-11-30", None],
    ["BRIGHTHOLM ", "5-3", datetime(2026, 5, 3), "=1+1", "#N/A", None, None, "2026-11-20", "2026-11-19", "2030-01-01"],
]
FAULTS = [
    ("A1", "missing-column"),
    ("L1", "doubled-heading"),
    ("B2", "not-a-number"),
    ("C2", "outside-within"),
    ("D2", "below-zero"),
    ("E2", "below-zero"),
    ("F2", "not-a-minimum-unit"),
    ("G2", "not-a-choice"),
    ("H2", "ambiguous-date"),
    ("A3", "no-name"),
    ("B4", "ambiguous-number"),
    ("C4", "true-or-false"),
    ("D4", "rough-number"),
    ("E4", "other-unit"),
    ("H4", "number-for-date"),
    ("I4", "day-to-come"),
    ("A5", "doubled-maker"),
    ("B5", "reversed-range"),
    ("C5", "date-for-number"),
    ("D5", "formula-without-result"),
    ("E5", "spreadsheet-error"),
    ("I5", "answered-before-asked"),
    ("J5", "day-to-come"),
]


def test_a_workbook_with_one_of_each_fault_lists_all_of_them_in_order(tmp_path):
    headings = (*WITH_DAYS, None, " rating ")
    reading = read_rows(
        tmp_path,
        *FAULTY,
        headings=headings,
        criteria=(*CRITERIA, numbers("print", "Print method")),
        as_of=date(2026, 11, 25),
    )

    assert FAULTS == codes(reading.problems)
    assert {"Makers"} == {problem.place.sheet for problem in reading.problems}


def test_unreadable_answers_are_set_aside_but_not_what_is_wrong_with_the_sheet(tmp_path):
    reading = read_rows(tmp_path, *FAULTY, headings=WITH_DAYS, set_aside=True)

    assert [("A3", "no-name"), ("A5", "doubled-maker")] == codes(reading.problems)
    assert ("B2", "not-a-number") == codes(reading.set_aside)[0]


def test_what_is_set_aside_is_unknown(tmp_path):
    reading = read_rows(tmp_path, with_cell("Years trading", "many"), with_cell("Maker", "Otterwick"), set_aside=True)

    assert ((), [("B2", "not-a-number")]) == (reading.problems, codes(reading.set_aside))
    np.testing.assert_array_equal([nan, 7], reading.table.answers["years"].low)


@pytest.mark.parametrize(
    ("asked", "answered"), [("2026-11-02", "last week"), ("last week", "2026-11-02"), ("2026-11-05", "2026-11-02")]
)
def test_a_reply_whose_day_is_set_aside_does_not_pass_for_no_reply(tmp_path, asked, answered):
    reading = read_rows(tmp_path, (*GOOD, asked, answered, None), headings=WITH_DAYS, set_aside=True)

    np.testing.assert_array_equal([[nan], [nan]], [reading.table.asked_on, reading.table.answered_on])


def test_days_are_counted_from_the_same_start_as_pythons(tmp_path):
    table = read_rows(tmp_path, (*GOOD, "2026-11-02", datetime(2026, 11, 5), None), headings=WITH_DAYS).table
    days = [date(2026, 11, 2).toordinal(), date(2026, 11, 5).toordinal()]

    assert days == [table.asked_on[0], table.answered_on[0]]


def days_of(table):
    """Return the response days of a table."""
    brief = Brief(item="mug", quantity=200)
    case = Case(title="mug", brief=brief, criteria=CriteriaSet((numbers("a"),)), table=table)
    return measured("response_days", case, date(2026, 11, 25))


@pytest.mark.parametrize("there", ["Asked on", "Answered on", None])
def test_response_days_are_unknown_for_all_where_a_column_of_days_is_missing(tmp_path, there):
    row, headings = ((*GOOD, "2026-11-02"), (*COLUMNS, there)) if there else (GOOD, COLUMNS)
    table = read_rows(tmp_path, row, headings=headings).table

    assert [False] == days_of(table).known.tolist()


def test_response_days_are_at_least_those_so_far_where_the_answer_is_blank(tmp_path):
    table = read_rows(tmp_path, (*GOOD, "2026-11-20", None, None), headings=WITH_DAYS).table

    assert [3.0] == days_of(table).low.tolist()


def test_an_answer_without_a_question_is_a_warning(tmp_path):
    reading = read_rows(tmp_path, (*GOOD, None, "2026-11-02", None), headings=WITH_DAYS)

    assert [("I2", "answered-not-asked")] == codes(reading.warnings)


def test_no_makers_at_all_is_a_warning(tmp_path):
    reading = read_rows(tmp_path)

    assert ([("A1", "no-makers")], 0) == (codes(reading.warnings), len(reading.table))


def test_rows_of_the_users_own_notes_are_no_makers(tmp_path):
    reading = read_rows(tmp_path, GOOD, [*[None] * 7, "my note"], headings=(*COLUMNS, "Mine"))

    assert ((), 1) == (reading.problems, len(reading.table))


def test_a_name_of_spaces_is_none(tmp_path):
    assert [("A2", "no-name")] == codes(read_rows(tmp_path, with_cell("Maker", "  ")).problems)


def test_a_value_below_the_last_row_names_its_address(tmp_path):
    reading = read_rows(tmp_path, GOOD, with_cell("Maker", "Otterwick"), [None, None, 4], row_limit=1)

    assert [("A3", "too-many-rows")] == codes(reading.problems)


def test_a_value_in_the_last_cell_of_a_sheet_names_its_address(tmp_path):
    def stray(book):
        book["Makers"]["XFD1048576"] = "x"

    reading = read_rows(tmp_path, GOOD, change=stray)

    assert [("XFD1048576", "too-many-rows")] == codes(reading.problems)


def test_a_value_to_the_right_of_the_last_column_names_its_address(tmp_path):
    def stray(book):
        book["Makers"]["SG2"] = "x"  # column 501

    assert [("SG2", "too-many-columns")] == codes(read_rows(tmp_path, GOOD, change=stray).problems)


def test_limits_stand_even_when_answers_are_set_aside(tmp_path):
    reading = read_rows(tmp_path, GOOD, with_cell("Maker", "Otterwick"), row_limit=1, set_aside=True)

    assert [("A3", "too-many-rows")] == codes(reading.problems)


def test_a_sheet_whose_rows_all_have_one_number_is_damaged(tmp_path):
    row = b'<row r="2"><c r="A2"><v>1</v></c></row>'
    path = tmp_path / "makers.xlsx"
    content = BytesIO()
    with zipfile.ZipFile(BytesIO(workbook_bytes({"Makers": [["Maker"]]}))) as old, zipfile.ZipFile(content, "w") as new:
        for name in old.namelist():
            new.writestr(name, old.read(name).replace(b"</sheetData>", row * 5000 + b"</sheetData>"))
    path.write_bytes(content.getvalue())

    assert ["file-damaged"] == [problem.code for problem in read(path, criteria=()).problems]


def test_hidden_and_merged_makers_are_warnings(tmp_path):
    def hide(book):
        book["Makers"].row_dimensions[2].hidden = True
        book["Makers"].merge_cells("B2:C2")

    reading = read_rows(tmp_path, with_cell("Rating", None), change=hide)

    assert [("A2", "hidden-rows"), ("B2", "merged-cells")] == codes(reading.warnings)


def test_a_missing_file_is_one_problem(tmp_path):
    reading = read(tmp_path / "makers.xlsx")

    assert ([(None, "file-missing")], None) == (codes(reading.problems), reading.source)


def test_a_missing_sheet_is_one_problem_of_a_file_that_was_read(tmp_path):
    reading = read(makers_xlsx(tmp_path / "makers.xlsx", COLUMNS, [], sheet="Quotes"))

    assert ([(None, "no-such-sheet")], "makers.xlsx") == (codes(reading.problems), reading.source.name)


@pytest.mark.parametrize(("separator", "rating"), [(",", "4.25"), (";", "4,25"), ("\t", "4.25")])
def test_a_csv_is_read_as_a_workbook_is(tmp_path, separator, rating):
    row = ["Brightholm", "7", rating, "120", "100", "order", "free"]
    reading = read(makers_csv(tmp_path / "makers.csv", COLUMNS, [row], separator=separator))

    assert ((), ()) == (reading.problems, reading.warnings)
    assert 4.25 == reading.table.answers["rating"].low[0]


@pytest.mark.parametrize(("separator", "rating"), [(",", "4.250"), (";", "4,250")])
def test_three_decimals_that_the_separator_settled_are_listed(tmp_path, separator, rating):
    row = ["Brightholm", "7", rating, "120", "100", "order", "free"]
    reading = read(makers_csv(tmp_path / "makers.csv", COLUMNS, [row], separator=separator))

    assert [("C2", "read as 4.25")] == [(one.place.cell, one.wanted) for one in reading.warnings]


def test_the_separator_settles_the_decimal_mark_in_place_of_the_briefs(tmp_path):
    path = makers_csv(tmp_path / "makers.csv", ("Maker", "Years trading"), [["a", "1.250"]])

    assert 1.25 == read(path, criteria=CRITERIA[:1], decimal=",").table.answers["years"].low[0]


def test_the_briefs_decimal_mark_settles_a_file_with_tabs(tmp_path):
    path = makers_csv(tmp_path / "makers.csv", ("Maker", "Years trading"), [["a", "1.250"]], separator="\t")

    assert [("B2", "ambiguous-number")] == codes(read(path, criteria=CRITERIA[:1]).problems)
    assert 1250 == read(path, criteria=CRITERIA[:1], decimal=",").table.answers["years"].low[0]


@pytest.mark.parametrize(("decimal", "read_as"), [(",", "read as 1"), (".", "read as 1000")])
def test_a_minimum_order_that_the_decimal_mark_settled_is_listed(tmp_path, decimal, read_as):
    warnings = read_rows(tmp_path, with_cell("Minimum order", "1,000"), decimal=decimal).warnings

    assert [("E2", read_as)] == [(one.place.cell, one.wanted) for one in warnings if one.code == "read-as"]


def test_a_minimum_order_that_the_decimal_mark_broke_is_warned_of(tmp_path):
    warnings = read_rows(tmp_path, with_cell("Minimum order", "1,000"), decimal=",").warnings

    assert [("E2", "read-as"), ("E2", "not-whole")] == codes(warnings)
    assert "If 1000 is meant, write it without a mark" == warnings[1].wanted


def test_the_briefs_decimal_mark_settles_text_in_a_workbook(tmp_path):
    assert 1000 == read_rows(tmp_path, with_cell("Years trading", "1,000"), decimal=".").table.answers["years"].low[0]


def test_a_problem_of_a_csv_has_no_sheet(tmp_path):
    (problem,) = read(
        makers_csv(tmp_path / "makers.csv", ("Maker", "Years trading"), [["a", "x"]]), criteria=CRITERIA[:1]
    ).problems

    assert (
        "makers.csv, B2: 'x' is not a number of years. Write a number, a range such as 3-5, or leave the cell empty."
        == str(problem)
    )


def test_lines_without_a_cell_are_no_makers(tmp_path):
    path = tmp_path / "makers.csv"
    path.write_text("Maker,Notes\n\na,x\n,\n\nb\n")
    reading = read(path, criteria=())

    assert ((), (3, 6)) == (reading.problems, reading.table.rows)


def test_a_fault_of_a_column_that_two_criteria_draw_on_is_told_once(tmp_path):
    twice = (numbers("a", "Rating"), numbers("b", "Rating"))

    assert [("C2", "not-a-number")] == codes(read_rows(tmp_path, with_cell("Rating", "x"), criteria=twice).problems)


FUZZ = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
CELL = (
    st.none()
    | st.integers(-(10**6), 10**6)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.booleans()
    | st.datetimes(datetime(1901, 1, 1), datetime(2100, 1, 1))
    | st.text(st.characters(min_codepoint=32, exclude_categories=["Cs"]), max_size=12)
)


@FUZZ
@given(st.lists(st.lists(CELL, max_size=10), max_size=6))
def test_random_cells_never_make_the_reader_raise(tmp_path, rows):
    def as_text(book):
        for row in book["Makers"].iter_rows(min_row=2):
            for cell in row:
                if cell.data_type == "f":
                    cell.data_type = "s"

    assert isinstance(read_rows(tmp_path, *rows, headings=WITH_DAYS, change=as_text), MakersReading)


@FUZZ
@given(
    st.binary(max_size=300),
    st.sampled_from([".csv", ".xlsx"]),
    st.sampled_from([b"", b"Maker,Rating\n", b"PK\x03\x04"]),
)
def test_random_bytes_never_make_the_reader_raise(tmp_path, content, ending, start):
    path = tmp_path / f"makers{ending}"
    path.write_bytes(start + content)

    assert isinstance(read(path), MakersReading)


@FUZZ
@given(st.integers(0, 10_000), st.integers(0, 255))
def test_a_workbook_with_one_byte_changed_never_makes_the_reader_raise(tmp_path, at, byte):
    content = bytearray(workbook_bytes({"Makers": [list(COLUMNS), list(GOOD)]}))
    content[at % len(content)] = byte
    path = tmp_path / "makers.xlsx"
    path.write_bytes(content)

    assert isinstance(read(path), MakersReading)


CSV_CELLS = st.sampled_from(
    ["", "7", "4.5", "3-5", "50+", "1,000", "0,5", "-1", "9", "free", "Paid ", "gold", "per design", "box", "#N/A", "?",
     "2026-11-03", "3.11.26", "é", '5" wide', "two\nlines", " "]
)  # fmt: skip
CSV_ROWS = st.lists(st.tuples(st.sampled_from(["Ann", "Bob", "Cé", "", " "]), *[CSV_CELLS] * 9), max_size=8)


@given(CSV_ROWS, st.sampled_from([",", ";"]), st.booleans())
def test_a_csv_read_a_column_at_a_time_is_read_as_row_by_row(tmp_path_factory, rows, separator, set_aside):
    path = tmp_path_factory.getbasetemp() / "makers.csv"
    named = [(f"{row[0]} {at}" if row[0].strip() else row[0], *row[1:]) for at, row in enumerate(rows)]
    makers_csv(path, WITH_DAYS, named, separator=separator)
    quick = read(path, set_aside=set_aside, as_of=date(2026, 11, 5))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(CsvSheet, "may_be_plain", False)
        slow = read(path, set_aside=set_aside, as_of=date(2026, 11, 5))

    assert (slow.problems, slow.warnings, slow.set_aside) == (quick.problems, quick.warnings, quick.set_aside)
    assert plain_values(slow.table) == plain_values(quick.table)


def plain_values(table):
    """Return a table's parts as plain lists, NaN as text."""
    if table is None:
        return None
    answers = [*table.answers.values(), *table.counts.values()]
    numbers = [ends for one in answers for ends in (one.low, one.high)] + [table.asked_on, table.answered_on]
    details = {heading: list(texts) for heading, texts in table.details.items()}
    return (table.makers, table.rows, table.minimum_per, details, [list(map(str, part.tolist())) for part in numbers])


def countries_of(tmp_path, *typed):
    rows = [[f"Maker {'ABCDEFGH'[at]}", *GOOD[1:], country] for at, country in enumerate(typed)]
    warnings = read_rows(tmp_path, *rows, headings=(*COLUMNS, "Country")).warnings
    return [one for one in warnings if one.code == "not-a-country"]


def test_a_country_that_is_not_known_is_a_warning_at_its_cell_with_the_nearest(tmp_path):
    warnings = countries_of(tmp_path, "China", "Chnia", "P.R. China", "?", None, "Atlantis")

    assert ["H3", "H7"] == [one.place.cell for one in warnings]
    assert "Write CN if China is meant" == warnings[0].wanted
