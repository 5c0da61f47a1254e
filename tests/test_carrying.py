"""What a second brief starts from: facts carried, every old figure to confirm."""

from datetime import date

import pytest
from order_folder import CRITERIA, FREIGHT, ORDERS, QUOTES, lay_out

from scorecard.carrying import carried
from scorecard.reading.folder import read_folder

AS_OF = date(2026, 11, 25)
NEXT_YEAR = date(2027, 11, 1)
MORE = """
[criteria.print_method]
weight = 1
column = "Print method"
choices = { "kiln" = 100, "sticker" = 0 }

[criteria.postage]
weight = 0
column = "Postage"
unit = "EUR"
points = [[0, 100], [9, 0]]
"""
HEADINGS = ["Maker", "Rating", "Minimum order", "Minimum is per", "Country", "Print method", "Postage", "Seen on"]
HEADINGS += ["Asked on", "Answered on", "Notes"]


def makers(**changes):
    row = ["Fernhill", 4.5, 60, "design", "Portugal", "kiln", 4, "2026-11-01", "2026-11-02", "2026-11-04", "kind"]
    other = ["Brightholm", None, "100-150", "order", "China", "sticker"]
    return [HEADINGS, list((dict(zip(HEADINGS, row, strict=True)) | changes).values()), other, ["Cold Quay"]]


def found(tmp_path, as_of=NEXT_YEAR, criteria=CRITERIA + MORE, rows=None, **sheets):
    folder = lay_out(tmp_path, criteria=criteria, Makers=rows or makers(), **sheets)
    return carried(read_folder(folder, as_of=as_of), as_of)


def row_of(made, maker="Fernhill"):
    return next(dict(row) for row in made.makers if row["Maker"] == maker)


def lines(made, maker="Fernhill"):
    return {line.what: line for line in made.last_time if line.maker == maker}


def test_facts_are_carried_and_neither_prices_nor_the_days_of_asking(tmp_path):
    assert {
        "Maker": "Fernhill",
        "Rating": 4.5,
        "Minimum order": 60,
        "Minimum is per": "design",
        "Country": "Portugal",
        "Seen on": date(2026, 11, 1),
        "Notes": "kind",
    } == row_of(found(tmp_path))


def test_every_maker_is_carried_ruled_out_or_not(tmp_path):
    assert ["Fernhill", "Brightholm", "Cold Quay"] == [row["Maker"] for row in found(tmp_path).makers]


def test_a_range_is_carried_in_words_that_read_as_the_same(tmp_path):
    assert "100 to 150" == row_of(found(tmp_path), "Brightholm")["Minimum order"]


@pytest.mark.parametrize(
    ("as_of", "is_carried"),
    [(date(2027, 5, 3), True), (date(2027, 5, 4), False)],  # 180 and 181 days after 4 November 2026
)
def test_a_print_method_older_than_180_days_is_to_confirm(tmp_path, as_of, is_carried):
    made = found(tmp_path, as_of)

    assert (is_carried, not is_carried) == ("Print method" in row_of(made), "Print method" in lines(made))


def test_what_nobody_dated_is_to_confirm(tmp_path):
    assert ("sticker", None, "to confirm") == (
        lines(found(tmp_path, AS_OF), "Brightholm")["Print method"].figure,
        lines(found(tmp_path, AS_OF), "Brightholm")["Print method"].as_of,
        lines(found(tmp_path, AS_OF), "Brightholm")["Print method"].state,
    )


def test_a_price_is_never_carried_however_young(tmp_path):
    made = found(tmp_path, AS_OF)

    assert "Postage" not in row_of(made)
    assert ("4 EUR", "recent: ask whether it holds") == (lines(made)["Postage"].figure, lines(made)["Postage"].state)


def test_each_figure_of_a_quote_comes_back_with_its_old_value(tmp_path):
    told = {what: (line.figure, line.state) for what, line in lines(found(tmp_path)).items()}

    assert ("5.00 EUR each, DAP my door, by road", "to confirm") == told["price for 200 pieces"]
    assert ("30 days", "to confirm") == told["lead time"]
    assert ("60.00 EUR per design", "to confirm") == told["set-up"]
    assert ("30 %", "to confirm") == told["deposit"]


def test_an_open_end_of_a_quote_comes_back_with_its_unit(tmp_path):
    more = {"Set-up": "60+", "Days": "30+"}
    row = list((dict(zip(QUOTES[0], QUOTES[1], strict=True)) | more).values())
    told = lines(found(tmp_path, Quotes=[QUOTES[0], row]))

    assert ("60.00 EUR or more per design", "30 days or more") == (told["set-up"].figure, told["lead time"].figure)


def test_freight_comes_back_with_the_day_of_its_makers_last_quote(tmp_path):
    line = lines(found(tmp_path), "Brightholm")["freight by sea"]

    assert ("380.00 USD, door to door", date(2026, 11, 20), "to confirm") == (line.figure, line.as_of, line.state)


def test_own_orders_come_as_facts(tmp_path):
    made = lines(found(tmp_path, Orders=ORDERS))

    assert ("known", date(2026, 11, 21)) == (made["own order"].state, made["own order"].as_of)
    assert "1 own order: 0 of 1 on time; 6 of 200 pieces faulty (3.0 of 100)" == made["own orders in all"].figure


def test_the_approved_piece_and_warning_signs_come_as_facts(tmp_path):
    samples = [["Maker", "Round", "Received on", "Decision"], ["Fernhill", "sample", "2026-10-01", "approved"]]
    checks = [["Maker", "Check", "State"], ["Fernhill", "references", "no"]]
    made = lines(found(tmp_path, Samples=samples, Checks=checks))

    assert ("sample: keep it, to compare the next one with", "known") == (
        made["approved piece"].figure,
        made["approved piece"].state,
    )
    assert made["warning sign"].figure.startswith("it names no buyer who can be asked")


def test_what_came_out_with_no_is_a_row_of_the_next_checks(tmp_path):
    heads = ["Maker", "Check", "State", "Date"]
    rows = [["Fernhill", "references", "no", "2026-10-01"], ["Fernhill", "who prints it", "yes", "2026-10-01"]]
    carried = found(tmp_path, Checks=[heads, *rows, ["Fernhill", "a walk round the press", "no", None]])

    assert [
        {"Maker": "Fernhill", "Check": "references", "State": "no", "Date": date(2026, 10, 1)},
        {"Maker": "Fernhill", "Check": "a walk round the press", "State": "no"},
    ] == list(carried.checks)


def test_a_row_that_continues_a_reply_has_its_day(tmp_path):
    dated = dict(zip(QUOTES[0], QUOTES[1], strict=True))
    more = dict.fromkeys(dated) | {"Maker": dated["Maker"], "Pieces": 600, "Price": 4, "Price is for": "each"}
    told = lines(found(tmp_path, Quotes=[*QUOTES, list(more.values())]))

    assert told["price for 600 pieces"].as_of is not None
    assert told["price for 600 pieces"].as_of == told["price for 200 pieces"].as_of


def test_a_row_that_continues_a_reply_is_on_its_terms(tmp_path):
    dated = dict(zip(QUOTES[0], QUOTES[1], strict=True)) | {"Price covers": "goods and freight"}
    more = dict.fromkeys(dated) | {"Maker": dated["Maker"], "Pieces": 600, "Price": 4, "Price is for": "each"}
    told = lines(found(tmp_path, Quotes=[QUOTES[0], list(dated.values()), list(more.values())]))

    assert "4.00 EUR each, covering goods and freight, DAP my door, by road" == told["price for 600 pieces"].figure


@pytest.mark.parametrize(
    ("typed", "told"),
    [("30 working days", "30 working days"), ("10-12 calendar days", "10 to 12 calendar days"), ("30", "30 days")],
)
def test_days_come_back_as_they_were_counted(tmp_path, typed, told):
    row = list((dict(zip(QUOTES[0], QUOTES[1], strict=True)) | {"Days": typed}).values())

    assert told == lines(found(tmp_path, Quotes=[QUOTES[0], row]))["lead time"].figure


def test_freight_comes_back_with_what_it_paid_for(tmp_path):
    heads = ["Maker", "Way", "Cost", "Rate per kg", "Currency", "Freight covers", "Pieces per carton"]
    heads += ["Carton length cm", "Carton width cm", "Carton height cm", "Carton kg"]
    rows = [["Brightholm", "sea", 380, None, "USD", "port to port"]]
    rows += [["Brightholm", "air", None, 5, "USD", "door to door", 24, 40, 30, 35, 12.5]]
    told = lines(found(tmp_path, Freight=[heads, *rows]), "Brightholm")

    assert ("380.00 USD, port to port", "5.00 USD, door to door") == (
        told["freight by sea"].figure,
        told["freight by air, a kg"].figure,
    )


@pytest.mark.parametrize(
    ("typed", "decimal", "text"),
    [("50+", None, "at least 50"), ("1.125-2", ".", "1.125 to 2"), ("1,5 to 2", ",", "1,5 to 2")],
)
def test_ranges_keep_to_the_decimal_mark(tmp_path, typed, decimal, text):
    criteria = CRITERIA if decimal is None else CRITERIA.replace("[brief]", f'[brief]\ndecimal = "{decimal}"')

    assert (
        text
        == row_of(found(tmp_path, criteria=criteria + MORE, rows=makers(**{"Minimum order": typed})))["Minimum order"]
    )


def test_without_quotes_there_is_nothing_of_quotes(tmp_path):
    made = found(tmp_path, Quotes=QUOTES[:1], Freight=FREIGHT[:1])

    assert {"Print method", "Postage"} == set(lines(made))


NAMED_OTHERWISE = """
[criteria.quick]
weight = 1
column = "Turnaround"
unit = "working days"
points = [[5, 100], [60, 0]]

[criteria.first]
weight = 1
column = "Plates"
unit = "EUR"
points = [[0, 100], [90, 0]]

[criteria.screens]
weight = 1
column = "Screens (USD)"
points = [[0, 100], [90, 0]]

[criteria.look]
weight = 1
column = "Decoration"
choices = { "kiln" = 100, "sticker" = 0 }

[criteria.earlier]
weight = 1
column = "Earlier work"
choices = { "art like mine" = 100, "plain logos" = 0 }

[criteria.years]
weight = 1
column = "Years trading"
unit = "years"
points = [[0, 0], [9, 100]]
"""


def test_prices_days_and_old_choices_are_to_confirm_whatever_their_columns_are_called(tmp_path):
    headings = [
        "Rating",
        "Minimum order",
        "Turnaround",
        "Plates",
        "Screens (USD)",
        "Decoration",
        "Earlier work",
        "Years trading",
        "Seen on",
    ]
    rows = [["Maker", *headings], ["Fernhill", 4.5, 60, 30, 40, 50, "kiln", "art like mine", 7, "2026-11-01"]]
    rows += [["Brightholm"], ["Cold Quay"]]
    made = found(tmp_path, criteria=CRITERIA + NAMED_OTHERWISE, rows=rows)

    assert {"Maker", "Rating", "Minimum order", "Earlier work", "Years trading", "Seen on"} == set(row_of(made))
    told = [(line.what, line.figure, line.state) for line in made.last_time if line.where.endswith("sheet Makers")]
    assert ["to confirm"] * 4 == [state for *_, state in told]
    assert ["30 working days", "40 EUR", "50", "kiln"] == [figure for _, figure, _ in told]


def test_how_a_maker_packs_comes_as_a_fact(tmp_path):
    headings = ["Maker", "Way", "Rate per kg", "Currency", "Pieces per carton", "Carton length cm"]
    headings += ["Carton width cm", "Carton height cm", "Carton kg"]
    made = found(tmp_path, Freight=[headings, ["Brightholm", "air", 5, "USD", 24, 40, 30, 35, 12.5]])
    line = lines(made, "Brightholm")["carton by air"]

    assert ("24 pieces, 40 × 30 × 35 cm, 12.5 kg", "known") == (line.figure, line.state)
