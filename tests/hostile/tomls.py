"""Criteria files with every fault of TOML, and of what is said in it."""

from hostile.hostile_file import CRITERIA, Shelf
from hostile.zips import noise

shelf = Shelf("criteria.toml")
BOTH = ("Brightholm", "Kilnside")


def changed(old, new):
    """Return the plain criteria with something else in them."""
    assert old in CRITERIA
    return lambda: CRITERIA.replace(old, new, 1)


def added(more):
    """Return the plain criteria with more below."""
    return lambda: CRITERIA + more


QUANTITY, WEIGHT = b"quantity = 200", b"weight = 20\n"
YEARS = "criteria.years"

for name, build, *problems in (
    # how the file is saved
    ("nothing", lambda: b"", "file-empty"),
    ("nothing but space", lambda: b" \n\t\r\n" * 100, "file-empty"),
    ("UTF-16", lambda: CRITERIA.decode().encode("utf-16"), "saved-as-utf-16"),
    ("UTF-16 without its mark", lambda: CRITERIA.decode().encode("utf-16-be"), "saved-as-utf-16"),
    ("another encoding", changed(b"enamel mug", b"\xe9mail"), "not-utf-8"),
    ("half a letter at the end", added(b"# caf\xc3"), "not-utf-8"),
    ("NUL bytes", changed(b"[brief]", b"[brief]\n\0"), "not-toml"),
    ("noise", lambda: noise(5_000), "not-utf-8"),
    ("more than a megabyte", lambda: CRITERIA + b"#" * 1_000_000, "file-too-large"),
    ("more lines than anybody writes", added(b"\n#" * 25_000), "file-too-large"),
    ("a workbook", lambda: b"PK\x03\x04" + noise(500), "not-utf-8"),
    # how it is written
    ("a key twice", changed(QUANTITY, b"quantity = 200\nquantity = 300"), "brief.quantity stands-twice"),
    ("a table twice", added(b"[criteria.years]\nweight = 3\n"), "criteria.years stands-twice"),
    ("a table within itself", added(b"[criteria.years.weight]\nx = 1\n"), "criteria.years.weight stands-twice"),
    ("curly quotes", changed(b'"enamel mug"', "\u201cenamel mug\u201d".encode()), "brief.item curly-quotes"),
    ("a comma in a number", changed(WEIGHT, b"weight = 12,5\n"), f"{YEARS}.weight comma-in-number"),
    ("a percent sign", changed(WEIGHT, b"weight = 20%\n"), f"{YEARS}.weight percent-sign"),
    ("a word without quotes", changed(b'"enamel mug"', b"enamel mug"), "brief.item not-toml"),
    ("a quote never closed", changed(b'"enamel mug"', b'"enamel mug'), "brief.item not-toml"),
    ("three quotes never closed", changed(b'"enamel mug"', b'"""enamel mug'), "brief.item not-toml"),
    ("a bracket never closed", changed(b"[[0, 0], [10, 100]]", b"[[0, 0], [10, 100]"), f"{YEARS}.points not-toml"),
    ("a header never closed", changed(b"[brief]", b"[brief"), "not-toml"),
    ("a colon for an equals sign", changed(QUANTITY, b"quantity: 200"), "brief.quantity not-toml"),
    ("a backslash in a text", changed(b'"enamel mug"', b'"C:\\mugs"'), "brief.item not-toml"),
    ("a date as people write it", changed(QUANTITY, b"quantity = 200\nneed_by = 14/5/2027"), "brief.need_by not-toml"),
    ("a control character", changed(b"enamel mug", b"enamel\x07mug"), "brief.item not-toml"),
    ("a number with leading noughts", changed(QUANTITY, b"quantity = 0200"), "brief.quantity not-toml"),
    ("brackets a hundred deep", changed(b"[[0, 0], [10, 100]]", b"[" * 100 + b"]" * 100), f"{YEARS}.points not-toml"),
    ("brackets 100,000 deep", changed(b"[[0, 0], [10, 100]]", b"[" * 100_000), f"{YEARS}.points not-toml"),
    ("a key of a hundred parts", added(b"[" + b".".join([b"a"] * 100) + b"]\n"), "not-toml"),
    ("ten thousand unreadable lines", added(b"\n".join([b"what is this"] * 10_000)), "*"),
    # what it says
    ("no brief", changed(b"[brief]", b"[breif]"), "brief missing-table", "breif unknown-key"),
    ("text for a number", changed(QUANTITY, b'quantity = "200"'), "brief.quantity number-in-quotes"),
    ("a date as text", changed(QUANTITY, b'quantity = 200\nneed_by = "14 May 2027"'), "brief.need_by date-in-quotes"),
    ("true for a number", changed(QUANTITY, b"quantity = true"), "brief.quantity true-false-as-number"),
    ("infinity", changed(QUANTITY, b"quantity = inf"), "brief.quantity not-finite"),
    ("no number", changed(QUANTITY, b"quantity = nan"), "brief.quantity not-finite"),
    ("a weight of infinity", changed(WEIGHT, b"weight = inf\n"), f"{YEARS}.weight not-finite"),
    ("a weight below nought", changed(WEIGHT, b"weight = -1\n"), f"{YEARS}.weight negative-weight"),
    ("points of no number", changed(b"[10, 100]", b"[10, nan]"), f"{YEARS}.points not-finite"),
    ("a number of 400 digits", changed(QUANTITY, b"quantity = " + b"9" * 400), "brief.quantity number-too-large"),
    ("a number of 5,000 digits", changed(QUANTITY, b"quantity = " + b"9" * 5_000), "brief.quantity not-toml"),
    ("a number of 200,000 digits", changed(QUANTITY, b"quantity = " + b"9" * 200_000), "brief.quantity not-toml"),
    (
        "points that go backwards",
        changed(b"[[0, 0], [10, 100]]", b"[[10, 0], [0, 100]]"),
        f"{YEARS}.points points-not-increasing",
    ),
    ("one point alone", changed(b"[[0, 0], [10, 100]]", b"[[10, 0]]"), f"{YEARS}.points too-few-points"),
    ("no criteria", lambda: CRITERIA.partition(b"[criteria")[0], "criteria no-criteria"),
    ("a key that is not known", changed(QUANTITY, b"quantity = 200\nquantum = 3"), "brief.quantum unknown-key"),
    ("a list for a table", lambda: b"criteria = [1]\n" + CRITERIA.partition(b"[criteria")[0], "criteria not-a-table"),
    ("a later format", lambda: b"format = 2\n" + CRITERIA, "format later-version"),
    ("a currency that is none", changed(b'"EUR"', b'"EURO"'), "brief.currency not-a-currency"),
    ("no weight anywhere", lambda: CRITERIA.replace(b"weight = ", b"weight = 0 #"), "criteria weights-all-zero"),
):
    shelf.add(build, *problems, name=f"criteria: {name}")

for name, build, warnings in (
    ("a byte-order mark", lambda: b"\xef\xbb\xbf" + CRITERIA, ("byte-order-mark",)),
    ("Windows' line ends", lambda: CRITERIA.replace(b"\n", b"\r\n"), ()),
    ("tabs for spaces", lambda: CRITERIA.replace(b" = ", b"\t=\t"), ()),
    ("a title of markup", lambda: b'title = "<script>{{ 7*7 }}</script>"\n' + CRITERIA, ()),
    ("fifteen thousand lines of remarks", added(b"\n#" * 15_000), ()),
):
    shelf.add(build, name=f"criteria: {name}", warnings=warnings, makers=BOTH)

for name, build in (
    ("as many as fit: keys", added(b"[mine]\n" + b"".join(b"k%d = 1\n" % n for n in range(19_000)))),
    ("as many as fit: tables", added(b"".join(b"[mine.t%d]\n" % n for n in range(19_000)))),
    ("as many as fit: quotes", added(b'"' * 290_000)),
    ("as many as fit: threes of quotes", added(b'"""\\' * 19_000)),
    ("as many as fit: equals signs", added(b"=" * 290_000)),
    ("as many as fit: curly quotes", added("\u201c".encode() * 95_000)),
    ("as many as fit: braces", added(b"a = " + b"{" * 290_000)),
    ("as many as fit: percent signs", added(b"a = [" + b"1%," * 95_000 + b"]")),
    ("as many as fit: odd spaces", added("a = 1\u00a0\n".encode() * 19_000)),
    ("as many as fit: dots", added(b"a" + b".a" * 145_000 + b" = 1\n")),
    ("as many as fit: backslashes", added(b'a = "' + b"\\" * 290_000)),
    ("nested lists in a line each", added(b"a = [\n" * 19_000)),
    ("as many as fit: unreadable lines", added(b"what is this\n" * 19_000)),
    ("as many as fit: keys twice", added(b"[mine]\n" + b"k = 1\n" * 19_000)),
    ("as many as fit: blanks", added(b"a" + b" " * 95_000 + b"b")),
    ("as many as fit: digits in a row", added(b"a = " + b"1," * 145_000)),
):
    shelf.add(build, "*", name=f"criteria: {name}")
