"""Plain .csv files in every encoding and with every separator that programs write, and some that none should."""

import csv
from io import StringIO

from hostile.hostile_file import HEADINGS, PLAIN_CSV, Shelf
from hostile.zips import noise

shelf = Shelf("makers.csv")
NAMES = ("Br\u00eeghtholm & S\u00f6hne", "Kiln bleut\u00e9")
BOTH = ("Brightholm", "Kilnside")
DIFFERENT = b"".join(b"Studio %d,1,4,100,screen print,3,4\n" % number for number in range(20_000))
JAPANESE = ("\u7aaf\u5143", "\u967d\u5149")
SEPARATORS = {"commas": ",", "semicolons": ";", "tabs": "\t", "bars": "|"}
ENCODINGS = {  # how its letters come out; None: in no way
    "utf-8": NAMES, "utf-8-sig": NAMES, "utf-16": NAMES, "utf-16-be with its mark": NAMES,
    "cp1252": NAMES, "latin-1": NAMES,
    "mac-roman": tuple(name.encode("mac-roman").decode("cp1252") for name in NAMES),
    "shift_jis": tuple(name.encode("shift_jis").decode("cp1252") for name in JAPANESE),
    "utf-16-le": None, "utf-32": None,
}  # fmt: skip
MARKED = {"utf-16-be with its mark": ("utf-16-be", b"\xfe\xff")}
GUESSED = {"cp1252", "latin-1", "mac-roman", "shift_jis"}  # with a warning to look at the letters


def text(separator=",", names=NAMES, end="\r\n"):
    """Return a list of two makers."""
    written = StringIO(newline="")
    decimal = "," if separator == ";" else "."
    rows = [[name, 12, f"4{decimal}7", 100, "screen print", 21, f"4{decimal}25"] for name in names]
    csv.writer(written, delimiter=separator, lineterminator=end).writerows([HEADINGS, *rows])
    return written.getvalue()


def encoded(content, encoding):
    """Return text as bytes, with the mark that the encoding's name promises."""
    name, mark = MARKED.get(encoding, (encoding, b""))
    names = JAPANESE if name == "shift_jis" else NAMES
    for old, new in zip(NAMES, names, strict=True):
        content = content.replace(old, new)
    return mark + content.encode(name)


def expected(encoding, separator):
    """Return what must come of a list in an encoding and with a separator."""
    if ENCODINGS[encoding] is None:
        return ("file-not-text",), {}
    warnings = ("read-as-windows-1252",) if encoding in GUESSED else ()
    if separator == "|":
        return ("A1 no-maker-column",), {"warnings": warnings}
    years, price = (12.0, 12.0), (4.25, 4.25)
    fields = {"makers": ENCODINGS[encoding], "warnings": warnings, "answers": {"years": years, "price": price}}
    return (), fields


for encoding in ENCODINGS:
    for called, separator in SEPARATORS.items():
        problems, fields = expected(encoding, separator)
        shelf.add(
            lambda encoding=encoding, separator=separator: encoded(text(separator), encoding),
            *problems,
            name=f"{called} in {encoding}",
            **fields,
        )


@shelf.read(makers=BOTH)
def a_line_that_names_the_separator():
    return b"sep=;\r\n" + text(";", BOTH).encode()


@shelf.read(makers=BOTH)
def old_line_ends():
    return PLAIN_CSV.replace(b"\n", b"\r")


@shelf.read(makers=BOTH)
def no_line_end_at_the_end():
    return PLAIN_CSV.rstrip()


@shelf.read(makers=BOTH)
def a_thousand_empty_lines():
    return PLAIN_CSV + b"\r\n" * 1_000 + b",,,,,,\r\n" * 1_000


@shelf.read(makers=("Bright\nholm", "Kiln, side", 'The "Kiln"'))
def quotes_round_what_would_part_cells():
    return text(",", ("Bright\nholm", "Kiln, side", 'The "Kiln"')).encode()


@shelf.refused("A3 unclosed-quote")
def a_quote_that_is_never_closed():
    return PLAIN_CSV.replace(b"Kilnside", b'"Kilnside')


@shelf.refused("A2 unclosed-quote", is_heavy=True)
def a_quote_that_swallows_ten_megabytes():
    return PLAIN_CSV.replace(b"Brightholm", b'"Brightholm') + b"Maker,1,4,100,screen print,3,4\n" * 300_000


@shelf.read(makers=('Bright"holm', "Kilnside"))
def a_quote_in_the_middle_of_a_cell():
    return PLAIN_CSV.replace(b"Brightholm", b'Bright"holm')


@shelf.refused("A1 no-maker-column")
def nothing_but_noise():
    return bytes(byte | 32 for byte in noise(10_000) if byte & 127 not in (127,) and byte < 127)


@shelf.refused("file-not-text")
def bytes_in_no_encoding():
    return PLAIN_CSV.replace(b"Brightholm", b"Bright\x81\x8d\x8f\x90\x9dholm")


@shelf.refused("file-not-text")
def half_a_letter_of_two_bytes():
    return b"\xff\xfe" + PLAIN_CSV.decode().encode("utf-16-le")[:-1]


@shelf.refused("line-too-long", is_heavy=True)
def one_line_of_ninety_megabytes():
    return b"Maker," * 15_000_000


@shelf.refused("line-too-long")
def a_row_of_a_hundred_thousand_cells():
    return PLAIN_CSV + b"x" + b",1" * 100_000 + b"\n"


@shelf.refused("A2 cell-too-long")
def a_cell_of_half_a_megabyte():
    return PLAIN_CSV.replace(b"Brightholm", b'"' + b"Brightholm\n" * 50_000 + b'"')


@shelf.refused("file-too-big", is_heavy=True)
def more_than_is_opened():
    return b"a" * (101 * 2**20)


@shelf.refused("A20002 too-many-rows", is_heavy=True)
def three_million_rows():
    return PLAIN_CSV + DIFFERENT + b"Maker,1,4,100,screen print,3,4\n" * 2_300_000


@shelf.read(makers=BOTH, is_heavy=True)
def ninety_megabytes_of_empty_lines():
    return PLAIN_CSV + b"\n" * 90_000_000


@shelf.refused("A40993 too-many-rows", is_heavy=True)
def ninety_megabytes_of_separators():
    return PLAIN_CSV + b",,,,,,\n" * 12_000_000


@shelf.refused("A20002 too-many-rows", is_heavy=True)
def ninety_megabytes_with_one_wide_letter():
    return PLAIN_CSV.replace(b"Kilnside", "\U0001f3fa".encode()) + DIFFERENT + b"M,1,4,9,screen print,3,4\n" * 3_300_000


@shelf.refused("A20002 too-many-rows", is_heavy=True)
def ninety_megabytes_in_wide_letters():
    wide = PLAIN_CSV.decode() + DIFFERENT.decode() + "\U0001f3fa,1,4,100,screen print,3,4\n" * 1_300_000
    return wide.encode("utf-16")


@shelf.refused("A40993 too-many-rows", is_heavy=True)
def ninety_megabytes_of_nothing_but_quotes():
    return PLAIN_CSV + b'"",' * 6 + b'""\n' + (b'"",' * 6 + b'""\n') * 4_000_000


@shelf.read(makers=BOTH, answers={"years": (12.0, 3.0)})
def a_thousand_columns_of_ones_own():
    lines = PLAIN_CSV.decode().splitlines()
    own = [",".join(f"Mine {n}" for n in range(400)), *(",".join("x" * 400) for _ in range(2))]
    return "\n".join(f"{line},{more}" for line, more in zip(lines, own, strict=True)).encode()


@shelf.refused("H1 doubled-heading")
def one_heading_twice():
    lines = PLAIN_CSV.decode().splitlines()
    return "\n".join(f"{line},{more}" for line, more in zip(lines, ("Rating", "4", "5"), strict=True)).encode()


@shelf.refused("B1 missing-column")
def a_misspelt_heading():
    return PLAIN_CSV.replace(b"Years trading", b"Years tradeing")


@shelf.refused("C2 spreadsheet-error", "C3 spreadsheet-error")
def errors_as_text():
    return PLAIN_CSV.replace(b"4.7", b"#DIV/0!").replace(b"4.9", b"#N/A")
