from io import BytesIO

from scorecard.reading.shared_texts import read_shared_texts


def texts_of(items):
    """Return the texts of these items."""
    head = '<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">'
    return read_shared_texts(BytesIO(f"{head}{items}</sst>".encode()))


def test_plain_texts_keep_their_order_and_every_letter():
    assert ["a & b", " c\n", "", ""] == texts_of("<si><t>a &amp; b</t></si><si><t> c\n</t></si><si><t/></si><si/>")


def test_runs_of_other_formats_are_one_text_and_how_it_is_spoken_is_left_out():
    runs = "<si><r><rPr><b/></rPr><t>Bright</t></r><r><t>holm</t></r><rPh sb='0' eb='1'><t>said so</t></rPh></si>"

    assert ["Brightholm"] == texts_of(runs)
