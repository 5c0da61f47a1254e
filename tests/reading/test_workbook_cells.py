import time
from datetime import datetime

import pytest
import xlsxwriter
from builders import makers_xlsx, part, with_parts, workbook_bytes

from scorecard.errors import InputError
from scorecard.reading.cells import CellError, NoResult, PercentNumber
from scorecard.reading.gatekeeper import admit
from scorecard.reading.workbook_cells import OpenWorkbook

SHEET = "xl/worksheets/sheet1.xml"
BOOK = workbook_bytes({"Makers": [["Maker", "Rating"], ["Brightholm", 4.5]]})


def opened(path, content=None, sheet="Makers"):
    """Open a sheet of a workbook."""
    if content is not None:
        path.write_bytes(content)
    return OpenWorkbook(admit(path, 20_000)).required(sheet)


def rows_of(path, content=None):
    """Return the rows of the sheet of makers."""
    return list(opened(path, content))


def refusal(path, content):
    """Return the code with which a workbook is turned away while it is read."""
    with pytest.raises(InputError) as error:
        rows_of(path, content)
    (problem,) = error.value.problems
    return problem.code


def test_rows_have_their_numbers_and_columns(tmp_path):
    path = makers_xlsx(tmp_path / "m.xlsx", ["Maker", None, "Rating"], [[], [None, None, 4]], above=[[]])

    assert [(2, ["Maker", None, "Rating"]), (4, [None, None, 4])] == rows_of(path)


def test_every_kind_of_cell_keeps_its_kind(tmp_path):
    def formats(book):
        book["Makers"]["C2"].number_format = "0.0%"
        book["Makers"]["D2"].number_format = '0" %"'

    row = ["text ", True, 0.25, 25, datetime(2026, 11, 25), "#N/A", 7]
    path = makers_xlsx(tmp_path / "m.xlsx", ["Maker"], [row], change=formats)
    values = rows_of(path)[1][1]

    assert ["text ", True, 0.25, 25, datetime(2026, 11, 25), CellError("#N/A"), 7] == values
    assert (PercentNumber, int) == (type(values[2]), type(values[3]))


def test_a_formula_without_a_stored_result_is_told_from_an_empty_cell(tmp_path):
    path = makers_xlsx(tmp_path / "m.xlsx", ["Maker", "Rating"], [["=1+1", None, 5]])

    assert [NoResult(), None, 5] == rows_of(path)[1][1]


def test_a_formula_with_a_stored_result_is_its_result(tmp_path):
    book = xlsxwriter.Workbook(str(tmp_path / "m.xlsx"))
    sheet = book.add_worksheet("Makers")
    sheet.write_formula("A1", "=1+1", None, 2)
    sheet.write_formula("B1", '="a"', None, "a")
    book.close()

    assert [2, "a"] == rows_of(tmp_path / "m.xlsx")[0][1]


def test_a_formula_whose_stored_result_is_an_empty_text_is_empty(tmp_path):
    formula = b'<c r="C2" t="str"><f>""</f><v></v></c><c r="D2"><v>1</v></c></row>'
    sheet = part(BOOK, SHEET)
    at = sheet.rfind(b"</row>")
    content = with_parts(BOOK, {SHEET: sheet[:at] + formula + sheet[at + len(b"</row>") :]})

    assert ["Brightholm", 4.5, None, 1] == rows_of(tmp_path / "m.xlsx", content)[1][1]


def test_the_strict_form_of_a_workbook_is_told_how_to_save_it(tmp_path):
    plain, strict = (
        b"http://schemas.openxmlformats.org/spreadsheetml/2006/main",
        b"http://purl.oclc.org/ooxml/spreadsheetml/main",
    )
    parts = {name: part(BOOK, name).replace(plain, strict) for name in (SHEET, "xl/workbook.xml")}

    assert "file-strict" == refusal(tmp_path / "m.xlsx", with_parts(BOOK, parts))


def test_a_sheet_with_prefixed_tags_is_read_like_any_other(tmp_path):
    sheet = b"""<x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:sheetData><x:row>
        <x:c r="A1" t="inlineStr"><x:is><x:t>Maker</x:t></x:is></x:c></x:row></x:sheetData></x:worksheet>"""

    assert [(1, ["Maker"])] == rows_of(tmp_path / "m.xlsx", with_parts(BOOK, {SHEET: sheet}))


def test_hidden_rows_columns_and_merged_cells_are_known_after_reading(tmp_path):
    def hide(book):
        sheet = book["Makers"]
        sheet.row_dimensions[3].hidden = True
        sheet.column_dimensions["B"].hidden = True
        sheet.merge_cells("A2:A3")

    path = makers_xlsx(tmp_path / "m.xlsx", ["Maker", "Rating"], [["a", 1], [None, 2]], change=hide)
    sheet = opened(path)
    list(sheet)

    assert ([3], {2}, ["A2:A3"]) == (sheet.hidden_rows, sheet.hidden_columns, sheet.merged)


def test_a_value_in_the_last_cell_costs_nothing(tmp_path):
    def stray(book):
        book["Makers"]["XFD1048576"] = "x"

    path = makers_xlsx(tmp_path / "m.xlsx", ["Maker"], [["a"]], change=stray)
    start = time.process_time()
    last = rows_of(path)[-1]

    assert (1_048_576, 16_384) == (last[0], len(last[1]))
    assert time.process_time() - start < 1


@pytest.mark.parametrize("name", ["makers", " MAKERS "])
def test_a_sheet_is_found_whatever_its_case_and_outer_space(tmp_path, name):
    path = makers_xlsx(tmp_path / "m.xlsx", ["Maker"], [], sheet=name)

    assert name == opened(path).sheet


def test_a_missing_sheet_names_those_that_are_there_and_the_nearest(tmp_path):
    content = workbook_bytes({"Notes": [], "Maker": [["Maker"]]})
    with pytest.raises(InputError) as error:
        opened(tmp_path / "m.xlsx", content)
    (problem,) = error.value.problems

    assert "no-such-sheet" == problem.code
    assert "'Notes' and 'Maker'" in problem.found
    assert "'Maker'" in problem.wanted


def test_the_1904_day_count_is_heeded(tmp_path):
    book = xlsxwriter.Workbook(str(tmp_path / "m.xlsx"), {"date_1904": True})
    sheet = book.add_worksheet("Makers")
    sheet.write_datetime("A1", datetime(2026, 11, 25), book.add_format({"num_format": "yyyy-mm-dd"}))
    book.close()

    assert [datetime(2026, 11, 25)] == rows_of(tmp_path / "m.xlsx")[0][1]


def test_a_document_type_is_refused(tmp_path):
    entities = b'<!DOCTYPE a [<!ENTITY b "lol"><!ENTITY c "&b;&b;&b;">]>' + part(BOOK, SHEET)

    assert "file-doctype" == refusal(tmp_path / "m.xlsx", with_parts(BOOK, {SHEET: entities}))


def test_a_header_that_lies_about_its_size_is_damage(tmp_path):
    content = bytearray(BOOK)
    at = content.rfind(b"PK\x01\x02", 0, content.rfind(SHEET.encode()))
    content[at + 24 : at + 28] = (100).to_bytes(4, "little")

    assert "file-damaged" == refusal(tmp_path / "m.xlsx", bytes(content))


@pytest.mark.parametrize(
    "parts",
    [
        {SHEET: b"<worksheet"},
        {SHEET: b"\1\2"},
        {"xl/workbook.xml": b"<workbook/>"},
        {"xl/styles.xml": b"no xml"},
        {"[Content_Types].xml": b"<Types/>"},
        {SHEET: part(BOOK, SHEET).replace(b'r="A1"', b'r="A0B"')},
        {SHEET: part(BOOK, SHEET).replace(b"<v>4.5</v>", b"<v>four</v>")},
    ],
)
def test_a_workbook_that_is_broken_inside_is_damaged(tmp_path, parts):
    assert "file-damaged" == refusal(tmp_path / "m.xlsx", with_parts(BOOK, parts))


def test_a_sheet_with_one_endless_row_is_refused_in_little_time(tmp_path):
    cells = b"".join(b'<c r="A1" s="%d"><v>%d</v></c>' % (number % 7, number) for number in range(200_000))
    flood = part(BOOK, SHEET).replace(b"<sheetData>", b"<sheetData><row>" + cells + b"</row>")
    start = time.process_time()

    assert "file-unpacks-too-big" == refusal(tmp_path / "m.xlsx", with_parts(BOOK, {SHEET: flood}))
    assert time.process_time() - start < 2


def test_other_sheets_are_never_parsed(tmp_path):
    content = workbook_bytes({"Makers": [["Maker"]], "Mine": [["x"]]})

    assert [(1, ["Maker"])] == rows_of(
        tmp_path / "m.xlsx", with_parts(content, {"xl/worksheets/sheet2.xml": b"broken"})
    )


@pytest.mark.parametrize(
    ("old", "new"),
    [
        (b'<row r="2"', b'<row r="1"'),
        (b'<row r="2"', b'<row r="2.5"'),
        (b'<row r="2"', b'<row r="1048577"'),
        (b'r="B2"', b'r="A2"'),
        (b'r="B2"', b'r="B3"'),
        (b'r="B2"', b'r="XFE2"'),
        (b"<worksheet", b"<x:other"),
    ],
)
def test_a_sheet_whose_places_contradict_one_another_is_damaged(tmp_path, old, new):
    sheet = part(BOOK, SHEET)
    assert old in sheet

    assert "file-damaged" == refusal(tmp_path / "m.xlsx", with_parts(BOOK, {SHEET: sheet.replace(old, new)}))


def test_a_shared_text_counted_from_the_end_is_damage(tmp_path):
    book = xlsxwriter.Workbook(str(tmp_path / "m.xlsx"))
    book.add_worksheet("Makers").write_row(0, 0, ["Maker", "Rating"])
    book.close()
    content = (tmp_path / "m.xlsx").read_bytes()
    sheet = part(content, SHEET)

    assert b'<c r="A1" t="s"><v>0</v>' in sheet
    assert "file-damaged" == refusal(
        tmp_path / "m.xlsx", with_parts(content, {SHEET: sheet.replace(b"<v>0</v>", b"<v>-1</v>")})
    )


def test_cells_without_addresses_are_counted_from_the_left(tmp_path):
    rows = b"<row><c t='inlineStr'><is><t>Maker</t></is></c><c/><c><v>7</v></c><c t='str'><v>a</v></c></row>"
    sheet = part(BOOK, SHEET)
    start, end = sheet.find(b"<sheetData>") + len(b"<sheetData>"), sheet.find(b"</sheetData>")

    assert [(1, ["Maker", None, 7, "a"])] == rows_of(
        tmp_path / "m.xlsx", with_parts(BOOK, {SHEET: sheet[:start] + rows + sheet[end:]})
    )


@pytest.mark.parametrize(("name", "limit"), [("BLANKS_LIMIT", 5_000), ("TEXTS_LIMIT", 9)])
def test_empty_rows_and_letters_without_end_are_refused(tmp_path, monkeypatch, name, limit):
    monkeypatch.setattr(f"scorecard.reading.workbook_cells.{name}", limit)
    empty = b"<row><c><v></v></c></row>" * 1_000
    sheet = part(BOOK, SHEET).replace(b"</sheetData>", empty + b"</sheetData>")

    assert "file-unpacks-too-big" == refusal(tmp_path / "m.xlsx", with_parts(BOOK, {SHEET: sheet}))
