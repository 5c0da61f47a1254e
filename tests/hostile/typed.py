"""What people type into cells: every number habit of which we know, and makers' names that would be code elsewhere."""

import csv
from io import StringIO

from builders import workbook_bytes
from hostile.hostile_file import CRITERIA, HEADINGS, Shelf

shelf = Shelf("makers.xlsx")
INF = float("inf")
DAYS, PRICE, YEARS, RATING, MINIMUM = "Lead days", "Price", "Years trading", "Rating", "Minimum order"

# (column, as typed, what is read: a number, a range, None for unknown, or the code of the problem)
HABITS = [
    (DAYS, "12,5", 12.5), (DAYS, "12.5", 12.5), (DAYS, " 21 ", 21), (DAYS, "0021", 21), (DAYS, "+21", 21),
    (DAYS, "1.000", "ambiguous-number"), (DAYS, "1,000", "ambiguous-number"), (DAYS, "0.125", 0.125),
    (DAYS, "1.000,5", 1000.5), (DAYS, "1,000.5", 1000.5), (DAYS, "1,000,000", 1e6), (DAYS, "1.000.000", 1e6),
    (DAYS, "1 000", 1000), (DAYS, "1\u00a0000", 1000), (DAYS, "1\u202f000", 1000), (DAYS, "1'000", 1000),
    (DAYS, "1\u2019000,5", 1000.5), (DAYS, "1,23,456", "not-a-number"), (DAYS, "1,2,3", "not-a-number"),
    (DAYS, "12,", "not-a-number"), (DAYS, ".5", 0.5), (DAYS, ",5", 0.5), (DAYS, "1..5", "not-a-number"),
    (DAYS, "\uff12\uff11", 21), (DAYS, "\u0662\u0661", 21), (DAYS, "2\u200b1", 21), (DAYS, "\u200e21", 21),
    (DAYS, "3 days", 3), (DAYS, "3days", 3), (DAYS, "3 d", 3), (DAYS, "3 Days.", 3),
    (DAYS, "100-200", (100, 200)), (DAYS, "10\u201315 days", (10, 15)), (DAYS, "20 to 25", (20, 25)),
    (DAYS, "2-3 weeks", "other-unit"), (DAYS, "3 weeks", "other-unit"), (DAYS, "24h", "other-unit"),
    (DAYS, "2 months", "other-unit"), (DAYS, "5-3", "reversed-range"), (DAYS, "3-5-7", "date-for-number"),
    (DAYS, "<24", (-INF, 24)), (DAYS, "up to 24", (-INF, 24)), (DAYS, "at least 50", (50, INF)),
    (DAYS, "50+", (50, INF)), (DAYS, ">= 50 days", (50, INF)), (DAYS, "from 3", "from-number"),
    (DAYS, "~100", "rough-number"), (DAYS, "about 20", "rough-number"), (DAYS, "ca. 20 days", "rough-number"),
    (DAYS, "25%", "other-unit"), (DAYS, "free", "not-a-number"), (DAYS, "n/a", None), (DAYS, "N/A", None),
    (DAYS, "-", None), (DAYS, "\u2013", None), (DAYS, "\u2014", None), (DAYS, "?", None), (DAYS, "unknown", None),
    (DAYS, "", None), (DAYS, "   ", None), (DAYS, "\u00a0", None), (DAYS, "#N/A", "spreadsheet-error"),
    (DAYS, "nan", "not-a-number"), (DAYS, "inf", "not-a-number"), (DAYS, "NaN", "not-a-number"),
    (DAYS, "None", "not-a-number"), (DAYS, "null", "not-a-number"), (DAYS, "TBC", "not-a-number"),
    (DAYS, "1e3", "not-a-number"), (DAYS, "1OO", "not-a-number"), (DAYS, "l00", "not-a-number"),
    (DAYS, "0x10", "not-a-number"), (DAYS, "1_000", "not-a-number"), (DAYS, "10\u00b2", "not-a-number"),
    (DAYS, "\u00bd", "not-a-number"), (DAYS, "1 1/2", "not-a-number"), (DAYS, "\u2162", "not-a-number"),
    (DAYS, "\u4e00", "not-a-number"), (DAYS, "twelve", "not-a-number"), (DAYS, "(5.00)", "not-a-number"),
    (DAYS, "03/04/2026", "date-for-number"), (DAYS, "3.4.2026", "date-for-number"),
    (DAYS, "5 Dec", "date-for-number"), (DAYS, "2026-11-25", "date-for-number"),
    (DAYS, "=1+1", "formula-without-result"),
    (DAYS, "5 + 5", "not-a-number"), (DAYS, "3, maybe 5", "not-a-number"), (DAYS, "9" * 101, "not-a-number"),
    (DAYS, "9" * 100_000, "not-a-number"),
    (DAYS, "-5", -5), (DAYS, "\u22125", -5), (DAYS, "--5", "not-a-number"), (DAYS, "5-", "not-a-number"),
    (PRICE, "12,50 \u20ac", 12.5), (PRICE, "\u20ac 12.50", 12.5), (PRICE, "EUR 12.50", 12.5),
    (PRICE, "12.5 eur", 12.5), (PRICE, "\u20ac12.50 each", "not-a-number"), (PRICE, "\u00a512.5", "other-currency"),
    (PRICE, "$12.5", "other-currency"), (PRICE, "12.50 USD", "other-currency"), (PRICE, "GBP12", "other-currency"),
    (PRICE, "\u20ac1.250", "ambiguous-number"), (PRICE, "\u20ac-3", -3), (PRICE, "free", "not-a-number"),
    (PRICE, "12.-", "not-a-number"),
    (MINIMUM, "~100 pcs", "rough-number"), (MINIMUM, "100 pcs", 100), (MINIMUM, "from 100", 100),
    (MINIMUM, "no minimum", "not-a-number"), (MINIMUM, "-100", "below-zero"), (MINIMUM, "100 kg", "other-unit"),
    (MINIMUM, "\u20ac 500", "money-for-number"), (MINIMUM, "1k", "not-a-number"),
    (MINIMUM, "100/200", "not-a-number"), (RATING, "4.6/5", "not-a-number"), (RATING, "4,6", 4.6),
    (RATING, "46", "outside-within"),
    (RATING, "4.6 (120)", "not-a-number"), (RATING, "\u2605\u2605\u2605\u2605", "not-a-number"),
    (RATING, "98%", "other-unit"), (YEARS, "2015", "year-for-years"), (YEARS, "since 2015", "not-a-number"),
    (YEARS, "10+ years", (10, INF)),
    (YEARS, "6 months", "other-unit"),
]  # fmt: skip

NAMES = [
    "=HYPERLINK(\"http://maker.example/?\"&A1,\"Click\")", "=cmd|' /C calc'!A0", "+cmd|' /C calc'!A0",
    "-2+3+cmd|' /C calc'!A0",
    "@SUM(1+1)*cmd|' /C calc'!A0", "\t=1+1", " =2+2", "\uff1d3+3", "{=4+4}", "'=5+5", "%0A=6+6",
    "<script>alert(1)</script>", "</script><script>alert(1)</script>", "<!--<script>",
    "\"><img src=x onerror=alert(1)>",
    "' onmouseover='alert(1)", "javascript:alert(1)", "&lt;b&gt;", "&amp;amp;", "]]>", "<![CDATA[x]]>",
    "<?xml version='1.0'?>",
    "{{ 7 * 7 }}", "{% raw %}", "${7*7}", "#{7*7}", "{maker}", "{0.__class__}", "%s%n%d", "\\N{BULLET}", "`id`",
    "$(id)",
    "; rm -rf ~", "| more", "a && b", "a\\b\\c", "../../../outside", "/etc/outside", "C:\\outside", "\\\\host\\share",
    "CON", "nul.txt", "aux", ".", "..", "~", "a:b", "a*b?", "NA", "None", "null", "nan", "TRUE", "0", "007", "1e5",
    "\u202eedis gnorw eht\u202c", "\u2067isolated\u2069", "\u05e9\u05dc\u05d5\u05dd", "\u0645\u0635\u0646\u0639",
    "Zero\u200bwidth",
    "soft\u00adhyphen", "\ufeffmarked", "\U0001f3f4\u200d\u2620\ufe0f", "\U0001f469\U0001f3fd\u200d\U0001f527",
    "\U0001f1ee\U0001f1ea",
    "Z\u0351\u036b\u0343\u036a\u0302\u036b\u033d\u034f\u0334\u0319\u0324\u031e\u0349\u035a\u032f\u031e\u0320\u034dA",
    "\u7aaf\u5143",
    "\ufb01ne kiln", "\u00c5ngstr\u00f6m", "\U0001d4c0\U0001d4be\U0001d4c1\U0001d4c3", "line\nbreak",
    "tab\tinside", "\u2028separator",
    "M" * 32_767, "word " * 1_000, "n", "--help", "-rf", "--folder=x", "#1 Kilns", "[brief]", "key = \"value\"",
    "100%",
]  # fmt: skip
UNSEEN = {"\x01bell\x07", "delete\x7f", "\x85next"}


def row_of(name, column, typed):
    """Return a row with one cell that matters."""
    row = [name, 5, 4.5, 100, "screen print", 20, 4]
    row[HEADINGS.index(column)] = typed
    return row


def habit_rows():
    """Return a row for each habit."""
    return [row_of(f"Maker {at:03d}", column, typed) for at, (column, typed, _) in enumerate(HABITS)]


def problems(sheet, skipped=()):
    """Return the problems of all habits, by row."""
    return [
        f"{sheet}{'ABCDEFG'[HEADINGS.index(column)]}{number} {read}"
        for number, (column, typed, read) in enumerate(HABITS, 2)
        if isinstance(read, str) and typed not in skipped
    ]


def of_habits(only):
    """Return the habits that are read, or those that are asked about."""
    return [habit for habit in HABITS if isinstance(habit[2], str) != only]


@shelf.refused(*problems("Makers!"))
def every_habit_of_typing_numbers():
    return workbook_bytes({"Makers": [HEADINGS, *habit_rows()]})


for at, heading in ((YEARS, "years"), (RATING, "rating"), (MINIMUM, "minimum"), (DAYS, "days"), (PRICE, "price")):
    readable = [(column, typed, read) for column, typed, read in of_habits(only=True) if column == at]
    shelf.add(
        lambda rows=readable: workbook_bytes({
            "Makers": [HEADINGS, *(row_of(f"Maker {n}", column, typed) for n, (column, typed, _) in enumerate(rows))]
        }),
        name=f"every habit that is read under {at}",
        answers={heading: tuple(read for _, _, read in readable)},
    )  # fmt: skip


def as_csv(rows, separator=","):
    """Return rows as the bytes of a .csv."""
    text = StringIO(newline="")
    csv.writer(text, delimiter=separator).writerows(rows)
    return text.getvalue().encode()


@shelf.read(makers=tuple(NAMES))
def names_that_would_be_code_elsewhere():
    def as_texts(book):
        for row in book["Makers"].iter_rows():
            if row[0].data_type == "f":
                row[0].data_type = "s"

    return workbook_bytes({"Makers": [HEADINGS, *(row_of(name, YEARS, 5) for name in NAMES)]}, as_texts)


@shelf.read(file="makers.csv", makers=tuple(NAMES))
def the_same_names_in_a_csv():
    return as_csv([HEADINGS, *(row_of(name, YEARS, 5) for name in NAMES)])


@shelf.refused("A3 doubled-maker", "A4 doubled-maker", "A5 doubled-maker", file="makers.csv")
def names_that_only_look_different():
    return as_csv([HEADINGS, *(row_of(name, YEARS, 5) for name in ("Kiln", "KILN", "\uff2biln", "  kiln  "))])


CRITERIA_WITH_A_POINT = CRITERIA.replace(b'currency = "EUR"', b'currency = "EUR"\ndecimal = "."')
