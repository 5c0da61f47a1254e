import zipfile
from io import BytesIO

import pytest

from scorecard.errors import InputError
from scorecard.reading.guarded_archive import TAGS_IN_ROW_LIMIT, TAGS_LIMIT, GuardedArchive, GuardedPart


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
