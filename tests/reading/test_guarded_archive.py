import zipfile
from io import BytesIO

import pytest

from scorecard.errors import InputError
from scorecard.reading.guarded_archive import (
    LONGEST_TEXT,
    TAGS_IN_ROW_LIMIT,
    TAGS_LIMIT,
    TEXTS_LIMIT,
    GuardedArchive,
    GuardedPart,
    GuardedSheet,
)


def drained(content, limit, size=16_384):
    """Read a part to its end, as a parser does."""
    part = GuardedPart(BytesIO(content), "makers.xlsx", limit)
    return b"".join(iter(lambda: part.read(size), b""))


def test_an_ordinary_part_passes_unchanged():
    content = b"<sheetData>" + b"<row><c><v>1</v></c></row>" * 1000

    assert content == drained(content, 100, size=64)


@pytest.mark.parametrize("size", [1, 7, 16_384])
def test_a_document_type_is_refused_however_it_falls_into_blocks(size):
    with pytest.raises(InputError) as error:
        drained(b"<?xml version='1.0'?><!DOCTYPE a [<!ENTITY b 'c'>]><a/>", 100, size)

    assert "file-doctype" == error.value.problems[0].code


def test_a_document_type_is_refused_in_wider_letters_too():
    with pytest.raises(InputError) as error:
        drained("<!DOCTYPE a [<!ENTITY b 'c'>]><a/>".encode("utf-16"), 100)

    assert "file-doctype" == error.value.problems[0].code


def test_a_row_without_an_end_is_refused():
    with pytest.raises(InputError) as error:
        drained(b"<row>" + b"<c/>" * (TAGS_IN_ROW_LIMIT + 1), TAGS_IN_ROW_LIMIT)

    assert "file-unpacks-too-big" == error.value.problems[0].code


def test_any_number_of_rows_is_not_a_flood():
    content = b"<x:row><x:c/></x:row>" * 100_000

    assert len(content) == len(drained(content, 20_000))


@pytest.mark.parametrize("name", ["xl/styles.xml", "xl/sharedStrings.xml"])
def test_a_part_of_more_than_it_can_have_is_refused_before_it_is_taken_apart(name):
    content = BytesIO()
    with zipfile.ZipFile(content, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr(name, b"<xf/>" * 4_000_001)
    with pytest.raises(InputError) as error:
        GuardedArchive(content).open(name)

    assert "file-unpacks-too-big" == error.value.problems[0].code


def test_a_big_part_of_many_texts_passes():
    content = BytesIO()
    with zipfile.ZipFile(content, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("xl/sharedStrings.xml", b"<si><t>something</t></si>" * TAGS_LIMIT)

    assert b"<si>" == GuardedArchive(content).open("xl/sharedStrings.xml").read(4)


def test_a_part_that_would_unpack_to_more_than_is_held_is_refused_unread():
    content = BytesIO()
    with zipfile.ZipFile(content, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("xl/sharedStrings.xml", bytes(TEXTS_LIMIT + 1))
    with pytest.raises(InputError) as error:
        GuardedArchive(content).open("xl/sharedStrings.xml")

    assert "file-unpacks-too-big" == error.value.problems[0].code


@pytest.mark.parametrize("size", [1_000, 16_384, 2**22])
def test_a_text_that_no_cell_can_hold_is_refused_at_its_cell_however_it_falls_into_blocks(size):
    content = b'<row r="2"><c r="B2"><v>1</v></c><c r="C2"><is><t>' + b"x" * (LONGEST_TEXT + 1) + b"</t></is></c></row>"
    part = GuardedPart(BytesIO(content * 2), "makers.xlsx", 100, "Makers")
    with pytest.raises(InputError) as error:
        list(iter(lambda: part.read(size), b""))
    place = error.value.problems[0].place

    assert ("Makers", "C2") == (place.sheet, place.cell)


def test_many_texts_of_the_greatest_length_pass():
    content = b"<t>" + b"</t><t>".join([b"x" * 32_767] * 50) + b"</t>"

    assert content == drained(content, 1_000, size=2**20)


def of_sheet(content):
    """Return what a parser gets of a sheet."""
    return b"".join(iter(GuardedSheet(BytesIO(content), "makers.xlsx", "Makers").read, b""))


def rows(numbers, cells=b'<c r="A%d" s="1"/>'):
    """Return rows of XML with one cell each."""
    return b"".join(b'<row r="%d">' % number + cells.replace(b"%d", b"%d" % number) + b"</row>" for number in numbers)


def test_rows_that_are_numbered_and_empty_are_passed_over():
    first, last = rows([1], b'<c r="A%d"><v>7</v></c>'), rows([300_001], b'<c r="A%d"><v>8</v></c>')
    left = of_sheet(b"<sheetData>" + first + rows(range(2, 300_001)) + last + b"</sheetData>")

    assert len(left) < 2 * 2**18 + 2_000
    assert left.startswith(b"<sheetData>" + first)
    assert left.endswith(last + b"</sheetData>")


@pytest.mark.parametrize(
    "cells",
    [b"<c/>", b'<c r="A%d"><v>1</v></c>', b'<c r="A%d"><f>A1</f></c>', b'<c r="A%d"><is><t>a</t></is></c>', b"<x:c/>"],
)
def test_rows_that_may_hold_something_come_through_whole(cells):
    content = b"<sheetData>" + rows(range(1, 30_000), cells) + b"</sheetData>"

    assert content == of_sheet(content)


def test_rows_without_numbers_come_through_whole():
    content = b"<sheetData>" + b"<row><c/></row>" * 40_000 + b"</sheetData>"

    assert content == of_sheet(content)
