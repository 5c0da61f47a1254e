"""Further sheets as tables, and all that is wrong with them."""

from further import read_further


def test_rows_stand_under_the_name_of_their_sheet(tmp_path):
    sheets = read_further(tmp_path, {"Quotes": [["Maker", "Pieces"], ["fernhill", 100], ["Brightholm", 200]]})

    assert ([100, 200], ()) == ([row.whole("Pieces") for row in sheets["Quotes"]], sheets["Freight"])


def test_faults_come_sheet_by_sheet_in_the_order_of_their_cells_once_cells_are_read(tmp_path):
    quotes = [["Maker", "Pieces"], ["Fernhill", 2.5], ["Brightholm", "many"]]
    sheets = read_further(tmp_path, {"Quotes": quotes, "Freight": [["Maker", "Way"], ["Nobody", "sea"]]})
    for row in reversed(sheets["Quotes"]):
        row.whole("Pieces")
    for row in sheets["Freight"]:
        row.maker()

    assert [("Quotes", "B2"), ("Quotes", "B3"), ("Freight", "A2")] == [
        (one.place.sheet, one.place.cell) for one in sheets.problems
    ]


def test_a_heading_that_is_nearly_known_is_a_warning(tmp_path):
    sheets = read_further(tmp_path, {"Quotes": [["Maker", "Peices"], ["Fernhill", 5]]})

    assert ["Quotes"] == [one.place.sheet for one in sheets.warnings]
    assert ((), ()) == (sheets.problems, sheets.set_aside)
