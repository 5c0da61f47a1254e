"""Whatever stands in a file is refused in sentences or read: properties of the readers, whatever the input."""

import re
from math import isnan, nan

import pytest
from builders import makers_csv, numbers, part, with_parts, workbook_bytes
from hypothesis import given, settings
from hypothesis import strategies as st

from scorecard.reading.cell_values import Reading, read_number
from scorecard.reading.cells import CellError, NoResult
from scorecard.reading.criteria_file import parse_criteria
from scorecard.reading.makers import read_makers
from scorecard.reading.number_text import NumberRule
from scorecard.reading.units import ColumnUnit

CELL = re.compile(r"[A-Z]{1,3}[1-9]\d{0,6}")
UNITS = ["", "days", "years", "pieces", "EUR", "%"]
ALMOST_NUMBERS = st.text(st.sampled_from("0123456789.,'’ \u00a0-–+~<>%€$eE()/½²٣to"), max_size=12)
CELL_TEXTS = st.one_of(ALMOST_NUMBERS, st.text(max_size=30), st.sampled_from(["n/a", "?", "3 days", "12,50 €", "50+"]))
VALUES = st.one_of(
    st.none(), CELL_TEXTS, st.booleans(), st.integers(), st.floats(), st.dates(), st.times(), st.timedeltas(),
    st.just(NoResult()), st.sampled_from(["#N/A", "#REF!"]).map(CellError),
)  # fmt: skip
PLAIN_VALUES = VALUES.filter(lambda value: not isinstance(value, CellError | NoResult))
TOML_LINES = st.one_of(
    st.sampled_from([
        "[brief]", 'item = "mug"', "quantity = 200", "[criteria.rating]", "weight = 20", "points = [[4, 0], [5, 100]]",
        "limit = { at_least = 4 }", 'unknown = "worst"', "[weights]", 'method = "ranks"', "[firmness]", "spread = 0.25",
    ]),
    st.builds("{} = {}".format, st.sampled_from(["item", "quantity", "weight", "points", "within", "need_by"]),
              st.one_of(st.integers().map(str), st.floats().map(str), st.text(max_size=12), st.dates().map(str))),
    st.text(max_size=30),
)  # fmt: skip
NAMES = st.text(st.characters(exclude_categories=["Cs", "Cc"]), min_size=1, max_size=20).filter(str.strip)


def are_sentences(problems):
    """Say whether problems have their places, and words that can be printed."""
    return all(
        one.place.file
        and (one.place.cell is None or CELL.fullmatch(one.place.cell))
        and one.wanted
        and f"{one.found}{one.wanted}".isprintable()
        for one in problems
    )


@pytest.fixture(scope="module")
def room(tmp_path_factory):
    return tmp_path_factory.mktemp("any")


@given(VALUES, st.sampled_from(UNITS), st.sampled_from([None, ".", ","]))
def test_any_cell_is_a_number_a_range_unknown_or_a_fault_in_printable_words(value, unit, decimal):
    read = read_number(value, NumberRule(unit=ColumnUnit(unit), decimal=decimal))

    if isinstance(read, Reading):
        assert isnan(read.low) == isnan(read.high)
        assert isnan(read.low) or read.low <= read.high
    else:
        assert read.code
        assert f"{read.found}{read.wanted}".isprintable()


@given(st.one_of(st.integers(-(10**12), 10**12), st.decimals(-(10**6), 10**6, places=2)), st.sampled_from(".,"))
def test_a_number_written_with_the_decimal_mark_is_that_number(number, mark):
    text = str(number).replace(".", mark)
    read = read_number(text, NumberRule(decimal=mark))

    assert (float(number), float(number)) == (read.low, read.high)


@settings(max_examples=60)
@given(st.binary(max_size=300))
def test_any_bytes_are_a_csv_that_is_read_or_refused(room, content):
    path = room / "any.csv"
    path.write_bytes(b"Maker,Rating\na,4\n" + content)
    found = read_makers(path, criteria=[numbers("Rating")], brief=None)

    assert bool(found.problems) == (found.table is None)
    assert are_sentences(found.problems + found.warnings)


@settings(max_examples=60)
@given(
    st.lists(st.tuples(NAMES, st.one_of(st.none(), st.integers(0, 999))), max_size=5, unique_by=lambda row: row[0]),
    st.sampled_from(",;\t"),
    st.sampled_from(["utf-8", "utf-8-sig", "utf-16"]),
)
def test_what_a_csv_writer_writes_is_what_is_read(room, rows, separator, encoding):
    path = makers_csv(room / "written.csv", ["Maker", "Rating"], rows, separator=separator, encoding=encoding)
    found = read_makers(path, criteria=[numbers("Rating")], brief=None)

    assert {one.code for one in found.problems} <= {"doubled-maker"}
    if not found.problems:
        expected = [nan if number is None else float(number) for _, number in rows]
        assert tuple(name for name, _ in rows) == found.table.makers
        assert str(expected) == str(found.table.answers["Rating"].low.tolist())


@settings(max_examples=60)
@given(st.lists(TOML_LINES, max_size=12).map("\n".join), st.sampled_from(["utf-8", "utf-8-sig", "utf-16", "cp1252"]))
def test_any_criteria_file_is_read_or_refused(text, encoding):
    content = text.encode(encoding, "replace")
    found = parse_criteria(content, "criteria.toml")

    assert (found.criteria_set is None) == bool(found.problems)
    assert are_sentences(found.problems + found.warnings)
    assert found.problems == parse_criteria(content, "criteria.toml").problems


@settings(max_examples=40)
@given(st.lists(st.lists(PLAIN_VALUES, max_size=4), max_size=4))
def test_any_workbook_is_read_or_refused(room, rows):
    path = room / "any.xlsx"
    try:
        path.write_bytes(workbook_bytes({"Makers": [["Maker", "Rating", "Years"], *rows]}))
    except Exception:  # openpyxl itself writes no such value
        return
    found = read_makers(path, criteria=[numbers("Rating"), numbers("Years")], brief=None)

    assert bool(found.problems) == (found.table is None)
    assert are_sentences(found.problems + found.warnings)


@settings(max_examples=40)
@given(st.integers(0, 2_000), st.binary(max_size=20))
def test_a_sheet_with_any_bytes_put_in_is_read_or_refused(room, at, bytes_put_in):
    book = workbook_bytes({"Makers": [["Maker", "Rating"], ["Brightholm", 4], ["Kilnside", 5]]})
    sheet = part(book, "xl/worksheets/sheet1.xml")
    path = room / "changed.xlsx"
    path.write_bytes(with_parts(book, {"xl/worksheets/sheet1.xml": sheet[:at] + bytes_put_in + sheet[at:]}))
    found = read_makers(path, criteria=[numbers("Rating")], brief=None)

    assert bool(found.problems) == (found.table is None)
    assert are_sentences(found.problems + found.warnings)
