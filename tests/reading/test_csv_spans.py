"""Plain rows taken a column at a time, against the csv module's reading of the same bytes."""

from itertools import chain

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from scorecard.errors import InputError
from scorecard.reading import csv_spans as module
from scorecard.reading.cells import COLUMN_LIMIT
from scorecard.reading.csv_cells import CsvSheet
from scorecard.reading.csv_spans import LONGEST_IN_WORDS, Spans, different, distinct_keys, joined
from scorecard.reading.gatekeeper import Admitted

HEADING = "Maker,B,C\n"
TEXTS = st.text('ab1é€,"\r\n ', max_size=12)
PLAIN_CELLS = st.text("ab1é. ", max_size=5) | st.text("a,é\r\n", max_size=5).map(lambda text: f'"{text}"')
PLAIN_ROWS = st.lists(st.tuples(PLAIN_CELLS, PLAIN_CELLS, PLAIN_CELLS).map(",".join), max_size=6)
BODIES = st.tuples(PLAIN_ROWS, st.sampled_from(["\n", "\r\n"]), TEXTS).map(
    lambda parts: "".join(row + parts[1] for row in parts[0]) + parts[2]
)


def sheet(tmp_path, text, encoding="utf-8"):
    """Return a .csv of these letters."""
    return CsvSheet(Admitted(path=tmp_path / "makers.csv", content=text.encode(encoding), kind=".csv"))


def taken(content, most=1000, positions=(1, 2, 3), after=1):
    """Return rows taken a column at a time, with their numbers, and the rows that are left."""
    start, number, rows = content.start_below(after), after + 1, []
    for block in content.plain(positions, most).rows(start, number):
        cells = zip(*(column.texts() for column in block.columns), strict=True)
        rows += zip(block.numbers, map(list, cells), strict=True)
        start, number = block.end, block.numbers.stop
    return rows, list(content.rows_from(start, number))


@given(BODIES | TEXTS, st.sampled_from(["utf-8", "utf-8-sig", "cp1252"]))
@example('"a",b,c\n"x ""y""",1,2\nq,w,e\n', "utf-8")
@example('a,5" wide,c\nd,"e"f,g\n', "utf-8")
@example("a,b,c\r\nd\re,f,g\r\n", "utf-8")
@example("a,b,c\n\n\nd,e,f\n", "utf-8")
@example("a,\ufeffb,c\n", "utf-8-sig")
@example('\n1"', "utf-8")
def test_rows_taken_by_column_and_those_left_are_the_rows_of_the_csv_module(tmp_path_factory, body, encoding):
    content = sheet(tmp_path_factory.getbasetemp(), HEADING + body, encoding)
    try:
        expected = list(content)[1:]
    except InputError:
        return
    if content.may_be_plain:
        plain, rest = taken(content)
        of_those = [(number, values[:3]) for number, values in expected[: len(plain)]]
        end = len(plain) + len(rest)

        assert (of_those, expected[len(plain) : end]) == (plain, rest)
        assert not any(chain.from_iterable(values for _, values in expected[end:]))


def test_a_wholly_plain_file_is_taken_by_column_to_its_end(tmp_path):
    rows, rest = taken(sheet(tmp_path, HEADING + 'a,"1,5",x\r\n"",,\r\nb,"two\r\nlines",y'))

    assert ([(2, ["a", "1,5", "x"]), (3, ["", "", ""]), (4, ["b", "two\r\nlines", "y"])], []) == (rows, rest)


@pytest.mark.parametrize("odd", ['"x ""y""",1,2', 'x,5" wide,2', "x,1", "x,1,2,3", "x\ry,1,2", ""])
def test_an_odd_row_ends_the_plain_ones(tmp_path, odd):
    content = sheet(tmp_path, f"{HEADING}a,b,c\n{odd}\nd,e,f\n")
    rows, rest = taken(content)

    assert list(content.rows_from(len(HEADING), 2)) == rows + rest
    assert 3 in [number for number, _ in rest]


def test_no_more_rows_are_taken_than_wanted(tmp_path):
    rows, rest = taken(sheet(tmp_path, HEADING + "a,b,c\n" * 5), most=3)

    assert ([2, 3, 4], [5, 6]) == ([number for number, _ in rows], [number for number, _ in rest])


def test_rows_wider_than_a_sheet_may_be_are_left(tmp_path):
    wide = "," * COLUMN_LIMIT
    rows, rest = taken(sheet(tmp_path, f"Maker{wide}\na{wide}\n"))

    assert ([], [2]) == (rows, [number for number, _ in rest])


@pytest.mark.parametrize("at_once", [16, 64, 256])
def test_parts_of_any_size_give_the_same_rows(tmp_path, monkeypatch, at_once):
    text = HEADING + "".join(f'maker {number},"a, b",{"x" * (number % 7)}\n' for number in range(200))
    whole = taken(sheet(tmp_path, text))
    monkeypatch.setattr(module, "BYTES_AT_ONCE", at_once)
    monkeypatch.setattr(module, "ROWS_AT_ONCE", 10)
    parts = taken(sheet(tmp_path, text))

    assert whole[0][: len(parts[0])] == parts[0]
    assert whole[0] + whole[1] == parts[0] + parts[1]


def spans(*texts):
    """Return texts as stretches of one file."""
    pieces = [text.encode() for text in texts]
    content = np.frombuffer(b",".join([*pieces, b""]) + bytes(module.PADDING), dtype=np.uint8)
    ends = np.cumsum([len(piece) + 1 for piece in pieces], dtype=np.intp) - 1
    return Spans(content, "utf-8", ends - [len(piece) for piece in pieces], ends)


@given(st.lists(st.text("aé1", max_size=30) | st.sampled_from(["x" * 63 + end for end in "ab"]), min_size=1))
def test_different_texts_are_told_apart_and_equal_ones_are_not(texts):
    different, places = spans(*texts).distinct()

    assert sorted(set(texts)) == sorted(different)
    assert texts == [different[place] for place in places]


def test_two_texts_of_one_key_are_told_apart(monkeypatch):
    monkeypatch.setattr(module, "STIR", np.uint64(0))  # then only the last eight bytes count, and all share a slot
    texts = ["first and more", "other and more", "first and more"]
    different, places = spans(*texts).distinct()

    assert texts == [different[place] for place in places]


def test_very_long_texts_are_told_apart():
    texts = ["x" * LONGEST_IN_WORDS + end for end in "aba"]
    different, places = spans(*texts).distinct()

    assert texts == [different[place] for place in places]


@given(st.lists(st.integers(0, 2**64 - 1) | st.integers(0, 9), min_size=1, max_size=50))
def test_each_key_is_found_at_its_place(keys):
    first, places = distinct_keys(np.array(keys, dtype=np.uint64))

    assert len(set(keys)) == len(first)
    assert keys == [keys[first[place]] for place in places]


def test_texts_become_text_one_at_a_time_or_some_at_a_time():
    cells = spans("a", "é\nb", "", "last")

    assert ("é\nb", ["é\nb", ""], ["a", "é\nb", "", "last"]) == (cells[1], list(cells[1:3]), cells.texts())


def test_parts_of_one_file_are_joined_without_becoming_text():
    cells = spans("a", "b", "c")
    whole = joined([cells[:1], cells[1:]])

    assert isinstance(whole, Spans)
    assert (["a", "b", "c"], ["a", "x"]) == (list(whole), joined([cells[:1], ["x"]]))


def test_different_texts_are_told_of_stretches_and_of_texts_alike():
    texts = ["Portugal", "", "Poland", "Portugal", ""]
    assert ["", "Poland", "Portugal"] == sorted(different(spans(*texts))) == sorted(different(texts))
    assert [] == list(different(()))
