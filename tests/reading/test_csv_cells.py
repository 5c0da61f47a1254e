import pytest
from builders import codes

from scorecard.errors import InputError
from scorecard.reading.csv_cells import LONGEST_LINE, CsvSheet
from scorecard.reading.gatekeeper import admit


def sheet_of(path, content):
    """Open a .csv of these bytes, or of this text in UTF-8."""
    path.write_bytes(content if isinstance(content, bytes) else content.encode())
    return CsvSheet(admit(path, 20_000))


@pytest.fixture
def path(tmp_path):
    return tmp_path / "makers.csv"


@pytest.mark.parametrize(
    ("text", "decimal"),
    [
        ("Maker,Rating\na,1\n", "."),
        ("Maker;Rating\na;1\n", ","),
        ("Maker\tRating\na\t1\n", None),
        ("Maker;Rating;Price, EUR\na;1\n", ","),
        ('Maker;"Price, freight, duty, tax";\na;1\n', ","),
        ("Makers, by town, 2026\nMaker;Rating\na;1\n", ","),
        ("Maker\na\n", "."),
        ("sep=;\nMaker;Rating\na;1\n", ","),
        ("SEP=\t\r\nMaker\tRating\na\t1\n", None),
    ],
)
def test_the_heading_lines_most_frequent_separator_settles_the_decimal_mark(path, text, decimal):
    assert decimal == sheet_of(path, text).decimal


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_rows_have_the_addresses_of_a_spreadsheet(path, end):
    text = f'sep=;{end}Maker;Notes{end}{end}a;"two{end}lines"{end}b;x'

    assert [(1, ["Maker", "Notes"]), (2, []), (3, ["a", f"two{end}lines"]), (4, ["b", "x"])] == list(
        sheet_of(path, text)
    )


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16"])
def test_letters_are_read_in_unicode(path, encoding):
    sheet = sheet_of(path, "Maker,Notes\nÉclat,žlutý\n".encode(encoding))

    assert ([(1, ["Maker", "Notes"]), (2, ["Éclat", "žlutý"])], []) == (list(sheet), sheet.warnings)


def test_other_letters_are_read_as_windows_1252_with_a_warning(path):
    sheet = sheet_of(path, "Maker,Notes\nÉclat,€\n".encode("cp1252"))

    assert (2, ["Éclat", "€"]) == list(sheet)[1]
    assert [(None, "read-as-windows-1252")] == codes(sheet.warnings)


@pytest.mark.parametrize("content", [b"Maker\n\x81\x8d\n", b"\xff\xfeM\0a\0\0\xd8"])
def test_letters_in_no_known_encoding_are_refused(path, content):
    with pytest.raises(InputError) as error:
        sheet_of(path, content)

    assert [(None, "file-not-text")] == codes(error.value.problems)


@pytest.mark.parametrize(
    "text", ['Maker,Notes\na,"open\nb,x\nc,y\n', 'Maker,Notes\na,"open', 'Maker,N\nb,x\na,"' + "y\n" * 90_000]
)
def test_a_quotation_mark_that_is_never_closed_is_refused(path, text):
    with pytest.raises(InputError) as error:
        list(sheet_of(path, text))

    assert ["unclosed-quote"] == [problem.code for problem in error.value.problems]


def test_a_cell_of_more_than_any_spreadsheets_is_refused(path):
    with pytest.raises(InputError) as error:
        list(sheet_of(path, "Maker,Notes\na,b\n" + "x" * 140_000))

    assert [("A3", "cell-too-long")] == codes(error.value.problems)


def test_a_single_inch_mark_is_text(path):
    assert (2, ['12" mugs', "x"]) == list(sheet_of(path, 'Maker,Notes\n12" mugs,x\n'))[1]


def test_an_endless_line_is_refused(path):
    with pytest.raises(InputError) as error:
        list(sheet_of(path, "Maker\n" + "," * (LONGEST_LINE + 1)))

    assert [(None, "line-too-long")] == codes(error.value.problems)


def test_a_line_of_more_cells_than_a_sheet_has_is_refused(path):
    with pytest.raises(InputError) as error:
        list(sheet_of(path, "Maker,Notes\n" + "," * 16_385))

    assert [(None, "line-too-long")] == codes(error.value.problems)


def test_old_line_ends_are_no_endless_line(path):
    rows = list(sheet_of(path, "Maker\r" + "a,b\r" * 300_000))

    assert 300_001 == len(rows)
