from io import BytesIO

import pytest
from builders import part, workbook_bytes

from scorecard.reading.number_formats import NumberFormats, read_number_formats

HEAD = b'<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">'


def formats_of(numbers, own=""):
    """Return what is read of cell formats with these numbers, and own formats."""
    cells = "".join(f'<xf numFmtId="{number}"/>' for number in numbers)
    body = f'<numFmts>{own}</numFmts><cellStyleXfs><xf numFmtId="14"/></cellStyleXfs><cellXfs>{cells}</cellXfs>'
    return read_number_formats(BytesIO(HEAD + body.encode() + b"</styleSheet>"))


def test_days_times_and_percentages_are_told_by_the_numbers_that_every_workbook_knows():
    # ECMA-376 part 1, 18.8.30: 9 and 10 per cent, 14 a day, 20 a time, 46 a length of time, 49 text (from memory)
    found = formats_of([0, 9, 14, 20, 46, 10, 49])

    assert NumberFormats(dates=frozenset({2, 3, 4}), lengths=frozenset({4}), percentages=frozenset({1, 5})) == found


def test_own_formats_count_by_their_codes_and_words_in_quotes_say_nothing():
    own = (
        '<numFmt numFmtId="164" formatCode="0.0%"/><numFmt numFmtId="165" formatCode="0&quot; %&quot;"/>'
        '<numFmt numFmtId="166" formatCode="yyyy-mm-dd"/>'
    )
    found = formats_of([165, 164, 166, 999], own)

    assert (frozenset({2}), frozenset({1})) == (found.dates, found.percentages)


def test_formats_are_those_that_openpyxl_writes():
    def shape(book):
        book["Makers"]["A1"].number_format = "0%"
        book["Makers"]["A2"].number_format = "d/m/y"

    styles = part(workbook_bytes({"Makers": [[0.5], [1]]}, shape), "xl/styles.xml")
    found = read_number_formats(BytesIO(styles))

    assert (1, 1) == (len(found.dates), len(found.percentages))


def test_another_document_is_no_styles():
    with pytest.raises(ValueError, match="other"):
        read_number_formats(BytesIO(b"<other/>"))
