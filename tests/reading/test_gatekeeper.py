import zipfile
from hashlib import sha256
from io import BytesIO

import pytest
from builders import codes, makers_xlsx, with_parts, workbook_bytes

from scorecard.errors import InputError
from scorecard.reading import gatekeeper
from scorecard.reading.gatekeeper import admit

LIMIT = 20_000
BOOK = workbook_bytes({"Makers": [["Maker"], ["Brightholm"]]})


def refused(path, content=None):
    """Return the code of the one problem with which a file is turned away."""
    if content is not None:
        path.write_bytes(content)
    with pytest.raises(InputError) as error:
        admit(path, LIMIT)
    (problem,) = error.value.problems
    assert path.name == problem.place.file
    assert problem.wanted
    assert path.name not in problem.found, "its name stands before the sentence"
    return problem.code


def zipped(parts, method=zipfile.ZIP_DEFLATED):
    """Return the bytes of a zip."""
    content = BytesIO()
    with zipfile.ZipFile(content, "w", method) as archive:
        for name, value in parts.items():
            archive.writestr(name, value)
    return content.getvalue()


def test_an_ordinary_workbook_is_let_in_with_its_digest(tmp_path):
    path = makers_xlsx(tmp_path / "makers.xlsx", ["Maker"], [["Brightholm"]])
    admitted = admit(path, LIMIT)

    assert (".xlsx", ()) == (admitted.kind, admitted.warnings)
    assert ("makers.xlsx", sha256(path.read_bytes()).hexdigest()) == (admitted.source.name, admitted.source.digest)


def test_an_ending_in_capitals_is_the_same_ending(tmp_path):
    path = tmp_path / "MAKERS.CSV"
    path.write_text("Maker\n")

    assert ".csv" == admit(path, LIMIT).kind


def test_a_missing_file_is_said_to_be_missing(tmp_path):
    assert "file-missing" == refused(tmp_path / "makers.xlsx")


def test_a_folder_is_no_file(tmp_path):
    folder = tmp_path / "makers.xlsx"
    folder.mkdir()

    assert "file-is-folder" == refused(folder)


def test_a_name_that_no_file_can_have_is_refused(tmp_path):
    assert "file-unreadable" == refused(tmp_path / "mak\0ers.xlsx")


@pytest.mark.parametrize(
    ("name", "code"),
    [
        ("makers.xls", "file-old-workbook"),
        ("makers.ods", "file-opendocument"),
        ("makers.numbers", "file-numbers"),
        ("makers.pdf", "file-kind"),
        ("makers.xlsm", "file-kind"),
        ("makers.tsv", "file-kind"),
        ("makers", "file-kind"),
    ],
)
def test_another_kind_of_file_says_how_to_save_it_as_one_that_is_read(tmp_path, name, code):
    (tmp_path / name).write_bytes(b"anything")
    with pytest.raises(InputError) as error:
        admit(tmp_path / name, LIMIT)

    assert code == error.value.problems[0].code
    assert ".xlsx or .csv" in error.value.problems[0].wanted


@pytest.mark.parametrize(
    ("content", "code"),
    [
        (b"", "file-empty"),
        (bytes.fromhex("D0CF11E0A1B11AE1") + "EncryptedPackage".encode("utf-16-le"), "file-password"),
        (bytes.fromhex("D0CF11E0A1B11AE1") + b"Workbook", "file-old-workbook"),
        (b"<!DOCTYPE html><table></table>", "file-web-page"),
        (b"\xef\xbb\xbf <html>", "file-web-page"),
        (b"Maker,Rating\nBrightholm,4.5\n", "file-plain-text"),
        (b"\x89PNG\0\0", "file-damaged"),
        (BOOK[: len(BOOK) // 2], "file-cut-short"),
        (zipped({"mimetype": b"application/vnd.oasis.opendocument.spreadsheet"}), "file-opendocument"),
        (zipped({"Index/Document.iwa": b""}), "file-numbers"),
        (zipped({"makers.xlsx": BOOK}), "file-not-workbook"),
        (zipped({"[Content_Types].xml": b""}), "file-not-workbook"),
    ],
)
def test_what_is_named_xlsx_and_is_none_has_a_sentence_of_its_own(tmp_path, content, code):
    assert code == refused(tmp_path / "makers.xlsx", content)


@pytest.mark.parametrize(
    ("content", "code"),
    [
        (b"", "file-empty"),
        (BOOK, "file-workbook-named-csv"),
        (b"Maker,Rating\n\0\0\0,4\n", "file-not-text"),
        ("Maker,Rating\n".encode("utf-16-le"), "file-not-text"),
        ("Maker,Rating\n".encode("utf-32"), "file-not-text"),
        (b"<html><table>", "file-web-page"),
        (bytes.fromhex("D0CF11E0A1B11AE1"), "file-old-workbook"),
    ],
)
def test_what_is_named_csv_and_is_none_has_a_sentence_of_its_own(tmp_path, content, code):
    assert code == refused(tmp_path / "makers.csv", content)


def test_a_file_that_is_too_big_is_not_even_opened(tmp_path, monkeypatch):
    monkeypatch.setattr(gatekeeper, "PACKED_LIMIT", len(BOOK) - 1)

    assert "file-too-big" == refused(tmp_path / "makers.xlsx", BOOK)


def test_a_csv_may_be_as_big_as_its_rows(tmp_path, monkeypatch):
    monkeypatch.setattr(gatekeeper, "PACKED_LIMIT", 10)
    path = tmp_path / "makers.csv"
    path.write_bytes(b"x" * 5_001)

    assert ".csv" == admit(path, 2).kind
    with pytest.raises(InputError):
        admit(path, 1)


def test_a_bomb_is_known_by_its_directory(tmp_path):
    bomb = with_parts(BOOK, {"xl/worksheets/sheet1.xml": b" " * 20_000_000})

    assert "file-unpacks-too-big" == refused(tmp_path / "makers.xlsx", bomb)


def test_a_zip_of_many_parts_is_no_workbook_of_makers(tmp_path):
    bomb = with_parts(BOOK, {f"xl/media/{number}": b"" for number in range(1_001)})

    assert "file-unpacks-too-big" == refused(tmp_path / "makers.xlsx", bomb)


@pytest.mark.parametrize(
    ("part", "code"), [("xl/vbaProject.bin", "macros-ignored"), ("xl/externalLinks/externalLink1.xml", "links-ignored")]
)
def test_what_is_left_alone_in_a_workbook_is_a_warning(tmp_path, part, code):
    path = tmp_path / "makers.xlsx"
    path.write_bytes(with_parts(BOOK, {part: b"<a/>"}))

    assert [(None, code)] == codes(admit(path, LIMIT).warnings)


@pytest.mark.parametrize("mark", ["~$makers.xlsx", ".~lock.makers.xlsx#"])
def test_a_workbook_that_is_open_elsewhere_is_a_warning(tmp_path, mark):
    path = makers_xlsx(tmp_path / "makers.xlsx", ["Maker"], [])
    (tmp_path / mark).write_bytes(b"")

    assert [(None, "open-elsewhere")] == codes(admit(path, LIMIT).warnings)


def test_two_parts_of_one_name_are_damage(tmp_path):
    doubled = with_parts(BOOK, {"xl/worksheets/sheet2.xml": b""}).replace(b"sheet2.xml", b"Sheet1.xml")

    assert "file-damaged" == refused(tmp_path / "makers.xlsx", doubled)
