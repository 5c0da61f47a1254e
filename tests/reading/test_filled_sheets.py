"""Which further sheets hold anything, and that none of their rows is lost by looking."""

from further import opened

from scorecard.reading.filled_sheets import filled_sheets

HEAD = ["Maker", "Pieces"]


def test_a_sheet_with_a_row_below_its_headings_is_filled(tmp_path):
    makers, _ = opened(tmp_path, {"Quotes": [HEAD, ["Fernhill", 100]], "Freight": [HEAD]})

    assert ["Quotes"] == list(filled_sheets(makers, ("Quotes", "Freight", "Samples")))


def test_the_rows_looked_at_are_still_there(tmp_path):
    makers, _ = opened(tmp_path, {"Quotes": [HEAD, ["Fernhill", 100], ["Brightholm", 200]]})

    assert 3 == len(list(filled_sheets(makers, ("Quotes",))["Quotes"].rows))
