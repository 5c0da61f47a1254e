"""From the folder to what arrived: which order, how it is packed, what a piece cost."""

from datetime import date
from decimal import Decimal

import pytest
from sourcing import folder_of

from scorecard.arrivals import Told, arrival_of, order_of
from scorecard.errors import InputError, UsageError
from scorecard.reading.folder import read_folder

AS_OF = date(2026, 11, 25)
ORDERS = ["Maker", "Ordered on", "Pieces", "Arrived on", "Complain until", "Paid in all", "Way"]
ORDER = ["Fernhill", date(2026, 9, 1), 200, date(2026, 11, 20), date(2026, 12, 5)]
QUOTES = [
    ["Maker", "Pieces", "Price", "Price is for", "Currency", "Price covers", "Way", "Days"],
    ["Fernhill", 200, 4, "each", "EUR", "to my door, duty and tax paid", "road", 10],
]
FREIGHT = ["Maker", "Way", "Cost", "Currency", "Pieces per carton", "Carton length cm", "Carton width cm",
           "Carton height cm", "Carton kg"]  # fmt: skip


def case_of(path, *orders, **sheets):
    return read_folder(folder_of(path, {"Orders": [ORDERS, *orders]} | sheets), as_of=AS_OF)


def arrival(case, **told):
    return arrival_of(case, order_of(case, told.get("maker")), Told(**told))


def test_the_order_says_what_was_ordered_and_until_when_one_may_complain(tmp_path):
    found = arrival(case_of(tmp_path, ORDER))
    assert ("Fernhill", 200, 200, date(2026, 12, 5)) == (
        found.maker,
        found.ordered,
        found.lot,
        found.complain_until,
    )


def test_what_the_user_counted_goes_before_what_was_ordered(tmp_path):
    found = arrival(case_of(tmp_path, ORDER), arrived=197, per_carton=24)
    assert (197, 3, 9) == (found.lot, found.missing, found.cartons)


def test_without_an_order_the_brief_stands_for_it(tmp_path):
    found = arrival(case_of(tmp_path))
    assert (None, 200, None, None) == (found.maker, found.ordered, found.price, found.complain_at)


def test_a_maker_that_no_order_names_is_a_problem_at_the_sheet(tmp_path):
    with pytest.raises(InputError) as raised:
        order_of(case_of(tmp_path, ORDER), "Brightholm")
    assert [("no-order", "makers.xlsx", "Orders")] == [
        (one.code, one.place.file, one.place.sheet) for one in raised.value.problems
    ]


TWO = [
    ["Fernhill", date(2026, 8, 1), 250, date(2026, 10, 6), date(2026, 10, 20)],
    ["Fernhill", date(2026, 10, 8), 500],
]


def test_an_order_can_be_named_by_its_row(tmp_path):
    case = case_of(tmp_path, *TWO)
    assert [2, 2, 3] == [order_of(case, None, row).row for row in (None, 2, 3)]


@pytest.mark.parametrize(
    ("maker", "row", "told"),
    [
        (None, 9, "--row 9: no order stands in row 9 of the sheet Orders. Say --row with one of these: 2 and 3."),
        ("Fernhill", 3, "--row 3: no order of Fernhill stands in row 3 of the sheet Orders. Say --row 2."),
    ],
)
def test_a_row_without_such_an_order_is_refused(tmp_path, maker, row, told):
    case = case_of(tmp_path, TWO[0], ["Brightholm", *TWO[1][1:]])
    with pytest.raises(UsageError) as raised:
        order_of(case, maker, row)
    assert told == str(raised.value)


def test_a_row_where_no_order_is_noted_is_refused(tmp_path):
    with pytest.raises(UsageError, match=r"Write the order into the sheet Orders first\."):
        order_of(case_of(tmp_path), None, 2)


@pytest.mark.parametrize(
    ("toml", "accepted"),
    [
        ("[order]\nunder_percent = 2\nover_percent = 4", (245, 260)),
        ("[order]\nover_percent = 4", (250, 260)),
        ("[order]\npacking = 'boxes'", None),
        ("", None),
    ],
)
def test_how_many_pieces_are_accepted_is_what_the_order_sheet_says(tmp_path, toml, accepted):
    folder = folder_of(tmp_path, {"Orders": [ORDERS, ["Fernhill", ORDER[1], 250]]}, toml)
    assert accepted == arrival(read_folder(folder, as_of=AS_OF)).accepted


def test_a_piece_costs_its_part_of_what_was_paid_in_all(tmp_path):
    price = arrival(case_of(tmp_path, [*ORDER, 1184.6], Quotes=QUOTES)).price
    assert (Decimal("5.923"), "EUR") == (price.low, price.currency)
    assert "what you paid in all (F2 of the sheet Orders)" == price.source


def test_without_a_payment_the_landed_cost_counts(tmp_path):
    price = arrival(case_of(tmp_path, ORDER, Quotes=QUOTES)).price
    assert (Decimal(4), Decimal(4), "the landed cost of its quote by road, for 200 pieces on 1 September 2026") == (
        price.low,
        price.high,
        price.source,
    )


def test_the_landed_cost_is_that_of_the_orders_pieces_not_of_the_briefs(tmp_path):
    case = case_of(tmp_path, ["Fernhill", ORDER[1], 500], Quotes=[*QUOTES, ["Fernhill", 500, 3, *QUOTES[1][3:]]])
    assert Decimal(3) == arrival(case).price.low


@pytest.mark.parametrize(
    ("ordered_on", "pieces", "quoted_on"),
    [
        (date(2026, 9, 1), 200, date(2026, 9, 2)),  # quoted after the order
        (None, 200, date(2026, 8, 1)),  # no day of the order
        (date(2026, 9, 1), None, date(2026, 8, 1)),  # no pieces
        (date(2026, 9, 1), 100, date(2026, 8, 1)),  # fewer pieces than any quote is for
    ],
)
def test_where_the_order_was_not_quoted_a_piece_has_no_price(tmp_path, ordered_on, pieces, quoted_on):
    quotes = [[*QUOTES[0], "Quoted on"], [*QUOTES[1], quoted_on]]
    assert arrival(case_of(tmp_path, ["Fernhill", ordered_on, pieces], Quotes=quotes)).price is None


def test_the_landed_cost_of_another_way_than_the_orders_does_not_count(tmp_path):
    assert arrival(case_of(tmp_path, [*ORDER, None, "sea"], Quotes=QUOTES)).price is None


def test_a_landed_cost_with_a_gap_is_no_price(tmp_path):
    quotes = [QUOTES[0], [*QUOTES[1][:5], "goods", "road", 10]]
    assert arrival(case_of(tmp_path, ORDER, Quotes=quotes)).price is None


def test_an_open_payment_is_no_price(tmp_path):
    assert arrival(case_of(tmp_path, [*ORDER, "1000+"])).price is None


def test_a_payment_for_an_unknown_number_of_pieces_is_no_price(tmp_path):
    assert arrival(case_of(tmp_path, ["Fernhill", ORDER[1], None, None, None, 1184.6])).price is None


def test_cartons_come_from_the_sheet_freight(tmp_path):
    freight = [FREIGHT, ["Fernhill", "road", 90, "EUR", 24, 50, 40, 30, 9]]
    assert 24 == arrival(case_of(tmp_path, ORDER, Freight=freight, Quotes=QUOTES)).per_carton


def test_offers_that_pack_differently_leave_cartons_open(tmp_path):
    freight = [
        FREIGHT,
        ["Fernhill", "road", 90, "EUR", 24, 50, 40, 30, 9],
        ["Fernhill", "sea", 90, "EUR", 36, 50, 40, 30, 9],
    ]
    case = case_of(tmp_path, ORDER, Freight=freight, Quotes=QUOTES)
    assert arrival(case).per_carton is None
