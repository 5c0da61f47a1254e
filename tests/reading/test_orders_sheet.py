"""Orders, cell by cell."""

from datetime import date
from decimal import Decimal

import pytest
from sourcing import folder_of, problems_of

from scorecard.costing.amounts import Span
from scorecard.errors import InputError
from scorecard.reading.folder import read_folder

HEAD = [
    "Maker",
    "Ordered on",
    "Pieces",
    "Proof approved on",
    "Promised on",
    "Shipped on",
    "Arrived on",
    "Complain until",
    "Faulty pieces",
    "Paid in all",
]
AS_OF = date(2026, 11, 25)
GOOD = [
    "fernhill",
    date(2026, 10, 1),
    200,
    date(2026, 10, 4),
    date(2026, 11, 20),
    date(2026, 11, 10),
    date(2026, 11, 20),
    date(2026, 12, 20),
    0,
    "840.50 EUR",
]


def orders(path, *rows):
    return read_folder(folder_of(path, {"Orders": [HEAD, *rows]}), as_of=AS_OF).orders


def problems(path, **changes):
    row = [changes.get(heading.replace(" ", "_"), value) for heading, value in zip(HEAD, GOOD, strict=True)]
    return problems_of(path, {"Orders": [HEAD, row]}, as_of=AS_OF)


def test_an_order_is_read_whole(tmp_path):
    (order,) = orders(tmp_path, GOOD)

    assert ("Fernhill", 2, 200, date(2026, 10, 1), date(2026, 11, 20), date(2026, 12, 20), 0) == (
        order.maker,
        order.row,
        order.pieces,
        order.ordered,
        order.arrived,
        order.complain_until,
        order.faulty,
    )
    assert Span.of(Decimal("840.5")) == order.paid


def test_blank_cells_are_unknown(tmp_path):
    (order,) = orders(tmp_path, ["Fernhill"])

    assert (None, None, None, None) == (order.pieces, order.ordered, order.faulty, order.paid)


@pytest.mark.parametrize(("faulty", "opened", "codes"), [(32, 32, []), (33, 32, ["more-faulty-than-pieces"])])
def test_faulty_pieces_are_among_those_that_were_opened(tmp_path, faulty, opened, codes):
    found = problems_of(tmp_path, {"Orders": [["Maker", "Pieces", "Faulty pieces", "Pieces opened"],
                                              ["Fernhill", 200, faulty, opened]]}, as_of=AS_OF)  # fmt: skip

    assert [("C2", code) for code in codes] == found


def test_more_opened_than_ordered_is_a_warning(tmp_path):
    sheet = [["Maker", "Pieces", "Faulty pieces", "Pieces opened"], ["Fernhill", 200, 205, 210]]
    case = read_folder(folder_of(tmp_path, {"Orders": sheet}), as_of=AS_OF)

    assert [("D2", "more-opened-than-ordered")] == [(one.place.cell, one.code) for one in case.warnings]
    assert (205, 210) == (case.orders[0].faulty, case.orders[0].opened)


def test_an_order_that_has_only_begun_is_no_problem(tmp_path):
    assert [] == problems(tmp_path, Arrived_on=None, Shipped_on=None)


@pytest.mark.parametrize(
    ("changes", "expected"),
    [
        ({"Arrived_on": date(2026, 9, 30), "Shipped_on": None}, [("G2", "out-of-order")]),
        ({"Shipped_on": date(2026, 9, 30)}, [("F2", "out-of-order")]),
        ({"Shipped_on": date(2026, 11, 21)}, [("G2", "out-of-order")]),
        ({"Shipped_on": date(2026, 10, 3)}, [("F2", "out-of-order")]),
        ({"Promised_on": date(2026, 9, 1)}, [("E2", "out-of-order")]),
        ({"Arrived_on": date(2026, 11, 26)}, [("G2", "day-to-come")]),
        ({"Maker": "Nobody"}, [("A2", "unknown-maker")]),
        ({"Pieces": 0}, [("C2", "not-above-zero")]),
        ({"Faulty_pieces": 201}, [("I2", "more-faulty-than-pieces")]),
        ({"Faulty_pieces": 1.5}, [("I2", "not-whole")]),
        ({"Paid_in_all": -1}, [("J2", "below-zero")]),
    ],
)
def test_each_fault_is_told_at_its_cell(tmp_path, changes, expected):
    assert expected == problems(tmp_path, **changes)


def test_a_promise_and_a_last_day_to_complain_may_lie_ahead(tmp_path):
    assert [] == problems(tmp_path, Promised_on=date(2027, 1, 1), Complain_until=date(2027, 1, 1))


def test_the_last_day_to_complain_may_lie_before_the_arrival(tmp_path):
    assert [] == problems(tmp_path, Complain_until=date(2026, 11, 1))


@pytest.mark.parametrize(("last", "codes"), [(19, ["complain-before-arrival"]), (20, [])])
def test_a_last_day_to_complain_before_the_arrival_is_a_warning_at_its_cell(tmp_path, last, codes):
    sheet = [["Maker", "Arrived on", "Complain until"], ["Fernhill", date(2026, 11, 20), date(2026, 11, last)]]
    case = read_folder(folder_of(tmp_path, {"Orders": sheet}), as_of=AS_OF)

    assert [("C2", code) for code in codes] == [(one.place.cell, one.code) for one in case.warnings]


def test_a_deposit_is_paid_before_the_pieces_arrive(tmp_path):
    sheet = [["Maker", "Deposit paid on", "Arrived on"], ["Fernhill", date(2026, 11, 21), date(2026, 11, 20)]]
    assert [("C2", "out-of-order")] == problems_of(tmp_path, {"Orders": sheet}, as_of=AS_OF)


@pytest.mark.parametrize("heading", ["Pieces", "Pieces opened"])
def test_a_part_of_a_piece_is_a_problem_and_no_warning_too(tmp_path, heading):
    with pytest.raises(InputError) as raised:
        read_folder(folder_of(tmp_path, {"Orders": [["Maker", heading], ["Fernhill", 1.5]]}), as_of=AS_OF)
    assert (["not-whole"], []) == (
        [one.code for one in raised.value.problems],
        [one.code for one in raised.value.warnings],
    )
