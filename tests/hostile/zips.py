"""Archives that are traps, broken, or no workbooks: bombs, lies in headers, halves, other kinds under a wrong name."""

import random
import struct
import zipfile
from io import BytesIO

from builders import part, with_parts, workbook_bytes
from hostile.hostile_file import HEADINGS, PLAIN_CSV, ROWS, Shelf

SHEET = "xl/worksheets/sheet1.xml"
BOOK = workbook_bytes({"Makers": [HEADINGS, *ROWS]})
OLD_CONTAINER = bytes.fromhex("D0CF11E0A1B11AE1")
WEB_PAGE = b"<html><head></head><body><table><tr><td>Maker</td></tr></table></body></html>"

shelf = Shelf("makers.xlsx")
csv_shelf = Shelf("makers.csv")


def zipped(parts, method=zipfile.ZIP_DEFLATED):
    """Return the bytes of a zip."""
    content = BytesIO()
    with zipfile.ZipFile(content, "w", method) as archive:
        for name, value in parts.items():
            archive.writestr(name, value)
    return content.getvalue()


def with_sheet(change):
    """Return the plain workbook with the bytes of its sheet changed."""
    return with_parts(BOOK, {SHEET: change(part(BOOK, SHEET))})


def below(rows):
    """Return the plain workbook with more XML below its rows."""
    return with_sheet(lambda sheet: sheet.replace(b"</sheetData>", rows + b"</sheetData>"))


def directory_entry(content, name):
    """Return where a part stands in the directory."""
    return content.rfind(b"PK\x01\x02", 0, content.rfind(name.encode()))


def lying(field, size, value):
    """Return the plain workbook whose directory tells another value of its sheet."""
    content = bytearray(BOOK)
    at = directory_entry(BOOK, SHEET) + field
    content[at : at + size] = value.to_bytes(size, "little")
    return bytes(content)


def noise(length, seed=1):
    """Return bytes that hardly pack."""
    return random.Random(seed).randbytes(length)


# bombs


@shelf.refused("file-unpacks-too-big")
def a_sheet_of_blanks_that_packs_to_a_thousandth():
    return with_sheet(lambda sheet: sheet + b" " * 30_000_000)


@shelf.refused("file-unpacks-too-big")
def a_picture_that_packs_to_a_thousandth():
    return with_parts(BOOK, {"xl/media/image1.bmp": bytes(20_000_000)})


@shelf.refused("file-unpacks-too-big")
def parts_that_would_unpack_to_500_MiB_at_an_innocent_ratio():
    return lying(20, 8, 20 * 2**20 | (500 * 2**20) << 32)


@shelf.refused("file-unpacks-too-big")
def two_thousand_parts():
    return with_parts(BOOK, {f"xl/media/{number}.png": b"" for number in range(2_000)})


@shelf.refused("file-unpacks-too-big")
def a_hundred_parts_that_share_the_same_bytes():
    """Return a workbook whose directory names the same packed megabyte a hundred times over."""
    content = bytearray(zipped({"[Content_Types].xml": b"", "xl/a": bytes(1_000_000)}))
    end = content.rfind(b"PK\x05\x06")
    start = struct.unpack("<I", content[end + 16 : end + 20])[0]
    directory = content[start:end]
    entry = directory[directory.rfind(b"PK\x01\x02") :]
    more = b"".join(entry[:-4] + b"%04d" % n for n in range(100))
    tail = bytearray(content[end:])
    tail[8:12] = struct.pack("<HH", 102, 102)
    tail[12:16] = struct.pack("<I", len(directory) + len(more))
    return bytes(content[:end] + more + tail)


@shelf.refused("file-not-workbook")
def a_zip_of_zips():
    inner = zipped({"0": bytes(1_000_000)})
    for depth in range(6):
        inner = zipped({f"{depth}-{copy}.zip": inner for copy in range(10)})
    return inner


@shelf.read(makers=("Brightholm", "Kilnside"))
def a_bomb_that_lies_unopened_beside_the_sheets():
    bomb = zipped({"0": bytes(15_000_000)})
    return with_parts(BOOK, {"xl/embeddings/package1.zip": bomb})


@shelf.refused("file-damaged")
def a_size_told_too_small():
    return lying(24, 4, 100)


@shelf.refused("file-unpacks-too-big")
def a_size_told_as_four_gigabytes():
    return lying(24, 4, 0xFFFFFFF0)


@shelf.read(makers=("Brightholm", "Kilnside"))
def a_packed_size_told_too_great():
    return lying(20, 4, 10_000_000)


@shelf.refused("file-damaged")
def a_wrong_check_sum():
    return lying(16, 4, 12345)


@shelf.refused("file-damaged")
def a_way_of_packing_that_nobody_knows():
    return lying(10, 2, 99)


@shelf.refused("file-damaged")
def a_part_locked_within_the_archive():
    return lying(8, 2, 1)


@shelf.refused("file-damaged")
def a_part_that_stands_beyond_the_end():
    return lying(42, 4, 100_000_000)


@shelf.refused("file-damaged")
def one_part_twice_with_different_bytes():
    spare = SHEET.replace("sheet1", "sheet2")
    return with_parts(BOOK, {spare: part(BOOK, SHEET)}).replace(spare.encode(), SHEET.encode())


@shelf.read(makers=("Brightholm", "Kilnside"))
def parts_named_out_of_the_archive():
    return with_parts(BOOK, {"../../outside.xml": b"<a/>", "/etc/outside": b"x", "C:\\outside": b"x"})


@shelf.refused("file-damaged")
def bytes_before_and_a_remark_behind():
    content = BytesIO(BOOK)
    with zipfile.ZipFile(content, "a") as archive:
        archive.comment = b"PK\x05\x06 no end yet " * 50
    return noise(5_000) + content.getvalue()


# halves

for part_of_a_hundred in (0.05, 1, 25, 50, 75, 99, 99.9):
    shelf.add(
        lambda share=part_of_a_hundred: BOOK[: max(int(len(BOOK) * share / 100), 4)],
        "file-cut-short",
        name=f"the first {part_of_a_hundred} of 100 of a workbook",
    )


@shelf.refused("file-damaged")
def a_workbook_with_a_hole_of_zeros():
    middle = len(BOOK) // 3
    return BOOK[:middle] + bytes(2_000) + BOOK[middle + 2_000 :]


@shelf.refused("file-damaged")
def a_sheet_cut_short_within_a_sound_archive():
    return with_sheet(lambda sheet: sheet[: len(sheet) // 2])


# other kinds, and wrong names

for ending, code in {
    "xls": "file-old-workbook", "ods": "file-opendocument", "numbers": "file-numbers",
}.items():  # fmt: skip
    shelf.add(lambda: OLD_CONTAINER + bytes(500), code, name=f"only a .{ending}", file=f"makers.{ending}")

for name, code, content in (
    ("a workbook with a password", "file-password", OLD_CONTAINER + "EncryptedPackage".encode("utf-16-le")),
    ("an old workbook", "file-old-workbook", OLD_CONTAINER + bytes(504) + "Workbook".encode("utf-16-le")),
    ("an OpenDocument spreadsheet", "file-opendocument", zipped({
        "mimetype": b"application/vnd.oasis.opendocument.spreadsheet", "content.xml": b"<a/>"})),
    ("a .numbers spreadsheet", "file-numbers", zipped({"Index/Document.iwa": b"", "Metadata/a": b""})),
    ("a PDF", "file-damaged", b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n1 0 obj\n<</Type/Catalog>>\nendobj\n\0\0"),
    ("a PDF without binary signs", "file-plain-text", b"%PDF-1.7\n1 0 obj\n<</Type/Catalog>>\nendobj\n"),
    ("a picture", "file-damaged", b"\x89PNG\r\n\x1a\n" + bytes(100)),
    ("a web page", "file-web-page", WEB_PAGE),
    ("a page in XML", "file-web-page", b'<?xml version="1.0"?>\n<Workbook><Table/></Workbook>'),
    ("a .csv", "file-plain-text", PLAIN_CSV),
    ("nothing", "file-empty", b""),
    ("nothing but zeros", "file-damaged", bytes(10_000)),
    ("noise", "file-damaged", noise(10_000)),
    ("a document of words", "file-not-workbook", zipped({"[Content_Types].xml": b"", "word/document.xml": b""})),
    ("a zip with the workbook in it", "file-not-workbook", zipped({"makers.xlsx": BOOK})),
    ("an empty zip", "file-not-workbook", zipped({})),
):  # fmt: skip
    shelf.add(lambda content=content: content, code, name=f"{name} named .xlsx")

for name, code, content in (
    ("a workbook", "file-workbook-named-csv", BOOK),
    ("a workbook with a password", "file-old-workbook", OLD_CONTAINER + bytes(504)),
    ("a web page", "file-web-page", WEB_PAGE),
    ("nothing", "file-empty", b""),
    ("NUL bytes", "file-not-text", PLAIN_CSV.replace(b"12", b"1\x002")),
    ("a picture", "file-not-text", b"\x89PNG\r\n\x1a\n" + bytes(100)),
):
    csv_shelf.add(lambda content=content: content, code, name=f"{name} named .csv")
