"""Workbooks whose sheets are odd: far cells, floods, entities, lies about size, what is hidden, what is ignored."""

from datetime import date, datetime, time

from builders import part, with_parts, workbook_bytes
from hostile.hostile_file import HEADINGS, ROWS, Shelf
from hostile.zips import BOOK, SHEET, below, noise, with_sheet

shelf = Shelf("makers.xlsx")
BOTH = ("Brightholm", "Kilnside")
OWN_SHEET = b'<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>'


def book(rows=ROWS, change=None, **sheets):
    """Return a workbook of these makers, and other sheets."""
    return workbook_bytes({"Makers": [HEADINGS, *rows], **sheets}, change)


def replaced(old, new):
    """Return the plain workbook with something else in its sheet."""
    return with_sheet(lambda sheet: sheet.replace(old, new))


# far cells, wide and long sheets


@shelf.refused("Makers!XFD1048576 too-many-rows")
def a_value_in_the_last_cell():
    return book(change=lambda made: made["Makers"].__setitem__("XFD1048576", "x"))


@shelf.refused("Makers!XFD2 too-many-columns")
def a_value_in_the_last_column():
    return book(change=lambda made: made["Makers"].__setitem__("XFD2", "x"))


@shelf.refused("Makers!SG1 too-many-columns", "Makers!SG2 too-many-columns")
def ten_thousand_columns():
    wide = [[f"Mine {at}" for at in range(10_000)]] + [list(range(10_000)) for _ in ROWS]
    return workbook_bytes({"Makers": [[*a, *b] for a, b in zip([HEADINGS, *ROWS], wide, strict=True)]})


@shelf.read(makers=BOTH)
def two_hundred_sheets():
    return book(**{f"Mine {number}": [["x"]] for number in range(199)})


@shelf.refused("Makers!A20002 too-many-rows", is_heavy=True)
def two_hundred_thousand_rows_of_values():
    return below(b"".join(b'<row r="%d"><c r="A%d"><v>%d</v></c></row>' % (n, n, n) for n in range(4, 200_000)))


@shelf.read(makers=BOTH, is_heavy=True)
def a_million_rows_of_formatted_blanks():
    cells = b"".join(b'<c r="%s%%d" s="0"/>' % bytes([letter]) for letter in b"ABCDE")
    row = b'<row r="%d" spans="1:5">' + cells + b"</row>"
    return below(b"".join(row % ((number,) * 6) for number in range(4, 1_048_577)))


@shelf.read(makers=BOTH, is_heavy=True)
def a_million_rows_with_a_height_and_nothing_else():
    return below(b"".join(b'<row r="%d" ht="15" customHeight="1"/>' % number for number in range(4, 1_048_577)))


@shelf.refused("file-unpacks-too-big", is_heavy=True)
def a_million_blank_rows_without_numbers():
    return below(b"<row><c/><c/></row>" * 1_000_000)


@shelf.refused("file-unpacks-too-big", is_heavy=True)
def a_million_blank_rows_that_seem_to_hold_values():
    return below(b"".join(b'<row r="%d"><c r="A%d"><v></v></c></row>' % (n, n) for n in range(4, 1_048_577)))


@shelf.refused("Makers!A1000000 too-many-rows", is_heavy=True)
def a_value_below_a_million_blank_rows():
    rows = [b'<row r="%d"><c r="A%d" s="0"/></row>' % (number, number) for number in range(4, 1_000_000)]
    return below(b"".join([*rows, b'<row r="1000000"><c r="A1000000"><v>7</v></c></row>']))


@shelf.read(makers=("Brightholm", "Kilnside", "7"))
def a_maker_below_fifteen_thousand_wide_blank_rows():
    cells = b'<c r="A%d" s="0"/>' * 20
    rows = [b'<row r="%d">' % number + cells % ((number,) * 20) + b"</row>" for number in range(4, 15_000)]
    return below(b"".join([*rows, b'<row r="15000"><c r="A15000"><v>7</v></c></row>']))


@shelf.refused("file-unpacks-too-big")
def one_endless_row():
    return below(b"<row>" + b"<c><v>1</v></c>" * 300_000 + b"</row>")


@shelf.read(makers=BOTH)
def tags_a_hundred_thousand_deep():
    return below(b"<row>" + b"<c>" * 100_000 + b"</c>" * 100_000 + b"</row>")


@shelf.refused("Makers cell-too-long")
def a_row_of_a_hundred_thousand_attributes():
    return replaced(b'<row r="2"', b'<row r="2" ' + b" ".join(b'a%d="%d"' % (n, n) for n in range(100_000)))


@shelf.refused("Makers!A2 cell-too-long", is_heavy=True)
def a_name_of_thirty_megabytes():
    return replaced(b"Brightholm", (noise(750_000).hex() * 20).encode())


@shelf.refused("Makers!A2 name-too-long")
def a_name_of_40_000_letters():
    return replaced(b"Brightholm", b"B" * 40_000)


@shelf.refused("file-unpacks-too-big", is_heavy=True)
def texts_of_120_megabytes():
    return with_texts(b"".join(b"<si><t>%d " % n + b"letters " * 3_750 + b"</t></si>" for n in range(4_000)))


@shelf.refused("file-unpacks-too-big", is_heavy=True)
def names_of_120_megabytes():
    rows = (b'<row r="%d"><c r="A%d" t="inlineStr"><is><t>%d ' % (n, n, n) for n in range(4, 4_004))
    return below(b"".join(row + b"letters " * 3_750 + b"</t></is></c></row>" for row in rows))


@shelf.refused("file-unpacks-too-big", is_heavy=True)
def fifty_thousand_formats_with_all_their_parts():
    font = b'<font><b/><i/><sz val="11"/><color rgb="FF000000"/><name val="A"/></font>'
    return with_parts(BOOK, {"xl/styles.xml": STYLES.replace(b"</fonts>", font * 50_000 + b"</fonts>")})


@shelf.read(makers=BOTH)
def as_many_cell_formats_as_a_workbook_may_have():
    formats = b'<xf numFmtId="9" fontId="0" fillId="0" borderId="0"/>' * 64_000
    return with_parts(BOOK, {"xl/styles.xml": STYLES.replace(b"</cellXfs>", formats + b"</cellXfs>")})


@shelf.read(makers=BOTH)
def a_hundred_thousand_texts_that_no_cell_holds():
    return with_texts(b"".join(b"<si><t>text %d</t></si>" % number for number in range(100_000)))


@shelf.refused("file-unpacks-too-big", is_heavy=True)
def five_million_texts():
    return with_texts(b"<si><t>%d</t></si>" % 7 * 5_000_000)


@shelf.refused("file-unpacks-too-big")
def a_hundred_thousand_names_of_ranges():
    names = b"".join(b'<definedName name="n%d">Makers!$A$1</definedName>' % n for n in range(100_000))
    book_part = part(BOOK, "xl/workbook.xml")
    names = b"<definedNames>" + names + b"</definedNames>"
    return with_parts(BOOK, {"xl/workbook.xml": book_part.replace(b"</sheets>", b"</sheets>" + names)})


@shelf.read(makers=BOTH)
def columns_hidden_forty_thousand_times():
    return with_columns(b'<col min="1" max="16384" hidden="1"/>' * 40_000)


@shelf.read(makers=BOTH)
def hidden_columns_from_far_below_nought():
    return with_columns(b'<col min="-2000000000" max="3" hidden="1"/>')


@shelf.read(makers=BOTH)
def forty_thousand_merged_ranges():
    merged = b"".join(b'<mergeCell ref="A%d:B%d"/>' % (n, n) for n in range(3, 40_000))
    return replaced(b"</sheetData>", b"</sheetData><mergeCells>" + merged + b"</mergeCells>")


# documents within documents


@shelf.refused("file-doctype")
def entities_that_grow_a_billionfold():
    entities = b"".join(b'<!ENTITY l%d "%s">' % (n, b"&l%d;" % (n - 1) * 10) for n in range(1, 10))
    doctype = b'<!DOCTYPE x [<!ENTITY l0 "lol">' + entities + b"]>"
    return with_sheet(lambda sheet: doctype + sheet.replace(b"Brightholm", b"&l9;"))


@shelf.refused("file-doctype")
def an_entity_that_reads_a_local_file():
    doctype = b'<!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/hostname">]>'
    return with_sheet(lambda sheet: doctype + sheet.replace(b"Brightholm", b"&e;"))


@shelf.refused("file-doctype")
def an_entity_that_asks_another_machine():
    doctype = b'<!DOCTYPE x SYSTEM "http://maker.example/x.dtd">'
    return with_sheet(lambda sheet: doctype + sheet)


@shelf.refused("file-doctype")
def a_document_type_in_wider_letters():
    return with_sheet(lambda sheet: ("\ufeff<!DOCTYPE x []>" + sheet.decode()).encode("utf-16-le"))


@shelf.refused("file-doctype")
def a_document_type_in_the_texts():
    texts = b'<!DOCTYPE sst [<!ENTITY a "b">]><sst><si><t>&a;</t></si></sst>'
    return with_texts(b"", whole=texts)


@shelf.refused("file-doctype")
def a_document_type_in_the_list_of_parts():
    return with_parts(BOOK, {"[Content_Types].xml": b"<!DOCTYPE Types []>" + part(BOOK, "[Content_Types].xml")})


@shelf.refused("file-damaged")
def a_sheet_in_another_encoding_than_it_says():
    return with_sheet(lambda sheet: b'<?xml version="1.0" encoding="utf-7"?>' + sheet)


@shelf.refused("file-damaged")
def an_entity_that_is_defined_nowhere():
    return replaced(b"Brightholm", b"&nothing;")


# lies about size and place


@shelf.read(makers=BOTH)
def a_size_told_as_the_whole_sheet():
    return with_sheet(lambda sheet: sheet.replace(b"A1:G3", b"A1:XFD1048576"))


@shelf.read(makers=BOTH)
def a_size_told_as_one_cell():
    return with_sheet(lambda sheet: sheet.replace(b"A1:G3", b"A1"))


@shelf.refused("file-damaged")
def rows_that_go_backwards():
    return replaced(b'<row r="3"', b'<row r="2"')


@shelf.refused("file-damaged")
def one_cell_twice():
    return replaced(b'r="B2"', b'r="C2"')


@shelf.refused("file-damaged")
def a_cell_of_another_row():
    return replaced(b'r="A2"', b'r="A9"')


for number in (b"0", b"-5", b"nan", b"1e300", b"9" * 5_000, b"2.5", b"1048577"):
    shelf.add(
        lambda number=number: replaced(b'<row r="2"', b'<row r="' + number + b'"'),
        "file-damaged",
        name=f"a row numbered {number[:10].decode()}",
    )

for address in (b"A0", b"2A", b"XFE2", b"ZZZZZZ2", b"\xc3\x842", b"A-2", b"$A$2"):
    shelf.add(
        lambda address=address: replaced(b'r="A2"', b'r="' + address + b'"'),
        "file-damaged",
        name=f"a cell addressed {address.decode()}",
    )


@shelf.refused("file-damaged")
def a_text_beyond_the_texts():
    return replaced(b'<c r="A2" t="inlineStr"><is><t>Brightholm</t></is></c>', b'<c r="A2" t="s"><v>999</v></c>')


@shelf.refused("file-damaged")
def a_text_before_the_first():
    return with_texts(b"<si><t>Wrongly taken</t></si>", b'<c r="A2" t="s"><v>-1</v></c>')


@shelf.refused("file-damaged")
def a_format_that_is_no_number():
    return replaced(b'<c r="A2"', b'<c s="bold" r="A2"')


@shelf.read(makers=BOTH)
def a_format_that_is_not_there():
    return replaced(b'<c r="A2"', b'<c s="99999" r="A2"')


@shelf.read(makers=BOTH)
def cells_and_rows_without_addresses():
    return with_sheet(without_addresses)


# what stands in cells


@shelf.refused(*(f"Makers!C{row} spreadsheet-error" for row in range(2, 14)))
def every_error_of_a_spreadsheet():
    errors = ["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A", "#GETTING_DATA", "#SPILL!", "#CALC!"]
    errors += ["#FIELD!", "#BLOCKED!"]
    rows = [[f"Maker {at}", 3, error, 100, "screen print"] for at, error in enumerate(errors)]
    return book(rows, change=as_errors)


@shelf.refused("Makers!A2 spreadsheet-error")
def an_error_for_a_name():
    return book([["#REF!", 3, 4.5, 100, "screen print"]], change=as_errors)


@shelf.refused("Makers!B2 formula-without-result", "Makers!C2 formula-without-result")
def formulas_whose_results_were_never_stored():
    return book([["Brightholm", "=1+2", '=HYPERLINK("http://maker.example")', 100, "screen print"]])


@shelf.refused("Makers!B2 true-or-false", "Makers!C2 date-for-number", "Makers!D2 date-for-number",
               "Makers!E2 not-a-choice",
               "Makers!F2 date-for-number")  # fmt: skip
def other_kinds_where_numbers_are_due():
    return book([["Brightholm", True, date(2026, 5, 12), datetime(2026, 5, 12, 9), False, time(9, 30)]])


@shelf.refused("Makers!B2 not-finite", "Makers!C2 outside-within", "Makers!D2 below-zero")
def numbers_beyond_all_bounds():
    return with_sheet(
        lambda sheet: (
            sheet.replace(b"<v>12</v>", b"<v>1e999</v>")
            .replace(b"<v>4.7</v>", b"<v>1e308</v>")
            .replace(b"<v>100</v>", b"<v>-1e308</v>")
        )
    )


@shelf.refused("file-damaged")
def a_number_that_is_none():
    return replaced(b"<v>12</v>", b"<v>nan</v>")


@shelf.refused("file-damaged")
def a_number_of_ten_thousand_digits():
    return replaced(b"<v>12</v>", b"<v>" + b"9" * 10_000 + b"</v>")


@shelf.refused("Makers!B2 spreadsheet-error")
def a_day_beyond_the_calendar():
    def as_day(made):
        made["Makers"]["B2"].number_format = "yyyy-mm-dd"
        made["Makers"]["B2"].value = 99_999_999

    return book(change=as_day)


@shelf.read(makers=BOTH, warnings=("Makers!A2 merged-cells", "Makers!A3 hidden-rows"))
def merged_cells_and_hidden_rows():
    def change(made):
        made["Makers"]["B2"].value = None
        made["Makers"].merge_cells("A2:B2")
        made["Makers"].row_dimensions[3].hidden = True

    return book(change=change)


@shelf.read(makers=BOTH, warnings=("Makers!B1 hidden-columns",))
def a_hidden_column():
    def change(made):
        made["Makers"].column_dimensions["B"].hidden = True

    return book(change=change)


@shelf.refused("Makers!A3 no-name")
def merged_names_over_two_rows():
    def change(made):
        made["Makers"].merge_cells("A2:A3")

    return book(change=change)


@shelf.read(makers=("Brightholm", "Kilnside"))
def a_hidden_sheet_of_makers():
    def hide(made):
        made.create_sheet("Shown")
        made["Makers"].sheet_state = "veryHidden"

    return book(change=hide)


@shelf.refused("no-such-sheet")
def no_sheet_of_makers():
    return workbook_bytes({"Sheet1": [HEADINGS, *ROWS]})


@shelf.refused("no-such-sheet")
def nothing_but_a_sheet_named_in_markup():
    return workbook_bytes({"<b>'=cmd": [["Maker"]]})


# what is left alone


@shelf.read(makers=BOTH, warnings=("macros-ignored",))
def macros():
    return with_parts(BOOK, {"xl/vbaProject.bin": noise(10_000)})


@shelf.refused("file-kind", file="makers.xlsm")
def a_workbook_with_macros_by_its_ending():
    return BOOK


@shelf.read(makers=BOTH, warnings=("links-ignored",))
def links_to_other_files():
    link = b'<externalLink><externalBook r:id="rId1"/></externalLink>'
    return with_parts(BOOK, {"xl/externalLinks/externalLink1.xml": link})


@shelf.refused("file-strict")
def the_strict_form():
    plain = b"http://schemas.openxmlformats.org/spreadsheetml/2006/main"
    strict = b"http://purl.oclc.org/ooxml/spreadsheetml/main"
    return with_parts(BOOK, {name: part(BOOK, name).replace(plain, strict) for name in (SHEET, "xl/workbook.xml")})


for broken in (
    "[Content_Types].xml",
    "_rels/.rels",
    "xl/workbook.xml",
    "xl/_rels/workbook.xml.rels",
    "xl/styles.xml",
    SHEET,
):
    for what, content in (("no XML", b"\1\2"), ("empty", b""), ("another document", b"<nothing/>")):
        if (broken, what) not in {
            ("_rels/.rels", "no XML"),
            ("_rels/.rels", "empty"),
            ("_rels/.rels", "another document"),
        }:
            shelf.add(
                lambda broken=broken, content=content: with_parts(BOOK, {broken: content}),
                "file-damaged",
                name=f"{broken} that is {what}",
            )


def as_errors(made):
    """Make errors of the cells that hold the text of one."""
    for row in made["Makers"].iter_rows(min_row=2):
        for cell in row:
            if str(cell.value).startswith("#"):
                cell.data_type = "e"


def with_columns(columns):
    """Return the plain workbook with a description of its columns."""
    return replaced(b"<sheetData>", b"<cols>" + columns + b"</cols><sheetData>")


def without_addresses(sheet):
    """Return a sheet whose rows and cells do not say where they stand."""
    for row in (b"1", b"2", b"3"):
        sheet = sheet.replace(b'<row r="' + row + b'"', b"<row")
        for letter in b"ABCDEFG":
            sheet = sheet.replace(b' r="' + bytes([letter]) + row + b'"', b"")
    return sheet


def with_texts(texts, cell=b"", whole=b""):
    """Return the plain workbook with a table of shared texts, and a cell in place of the first name's."""
    head = b'<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">'
    types = part(BOOK, "[Content_Types].xml")
    kind = b"application/vnd.openxmlformats-officedocument.spreadsheetml.sharedStrings+xml"
    entry = b'<Override PartName="/xl/sharedStrings.xml" ContentType="' + kind + b'"/></Types>'
    if b"sharedStrings" not in types:
        types = types.replace(b"</Types>", entry)
    sheet = part(BOOK, SHEET)
    if cell:
        sheet = sheet.replace(b'<c r="A2" t="inlineStr"><is><t>Brightholm</t></is></c>', cell)
    parts = {"[Content_Types].xml": types, "xl/sharedStrings.xml": whole or head + texts + b"</sst>", SHEET: sheet}
    return with_parts(BOOK, parts)


STYLES = part(BOOK, "xl/styles.xml")
