"""Own orders: each once, and what they come to; figures worked out by hand beside each test."""

from dataclasses import replace
from datetime import date
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.costing.amounts import Span
from scorecard.memory import Record, is_news, newest, own_orders, records_of, totals
from scorecard.memory_json import LATER, record_json, record_of
from scorecard.orders import OrderRow

AS_OF = date(2026, 11, 25)
DAY = date(2026, 9, 1)
PROMISED = date(2026, 10, 1)


def record(**changes):
    return replace(Record(maker="Fernhill", item="mug", ordered=DAY, pieces=200, promised=PROMISED), **changes)


def order(**changes):
    return OrderRow(**({"maker": "Fernhill", "row": 2, "ordered": DAY, "pieces": 200} | changes))


@pytest.mark.parametrize(
    ("arrived", "late"),
    [(date(2026, 10, 1), 0), (date(2026, 10, 4), 3), (date(2026, 9, 28), -3), (None, 55)],
)
def test_lateness_is_counted_from_the_promised_day(arrived, late):
    # from 1 October to 25 November: 55 days
    assert late == record(arrived=arrived).days_late(AS_OF)


def test_an_order_under_way_is_not_judged_before_its_day():
    assert None is record().days_late(PROMISED)


def test_without_a_promise_nothing_is_late():
    assert None is record(promised=None, arrived=AS_OF).days_late(AS_OF)


def test_shares_are_of_those_that_can_be_judged():
    own = [
        record(arrived=PROMISED, faulty=6),
        record(number=2, arrived=date(2026, 10, 2), pieces=100, faulty=0),
        record(number=3, promised=None, arrived=AS_OF, pieces=50),
    ]
    found = totals(own, AS_OF)

    # 1 of 2 by the day; 6 of 300 faulty: 2 of 100
    assert (3, Fraction(50), Fraction(2)) == (found.orders, found.on_time_share, found.faulty_share)


def test_a_samples_count_is_a_share_of_the_pieces_opened_and_never_of_the_order():
    own = [record(faulty=6, opened=32), record(number=2, pieces=100, faulty=0), record(number=3, pieces=None, faulty=1)]
    found = totals(own, AS_OF)

    # 6 of 32 and 0 of 100; of the third it is not known among how many: 6 of 132
    assert (132, 6, 1, Fraction(600, 132)) == (found.pieces, found.faulty, found.in_part, found.faulty_share)


def test_of_no_order_nothing_is_known():
    assert (None, None, None) == (
        totals([], AS_OF).on_time_share,
        totals([], AS_OF).faulty_share,
        totals([], AS_OF).paid,
    )


def test_paid_and_quoted_are_added_over_orders_with_both():
    own = [
        record(paid=Span.of(110), quoted=Span.of(100), quoted_in_full=True, currency="EUR"),
        record(number=2, paid=Span.of(50), quoted=Span.of(40, 60), quoted_in_full=True, currency="EUR"),
        record(number=3, paid=Span.of(70), quoted=Span.of(10), currency="EUR"),
        record(number=4, paid=Span.of(90), currency="EUR"),
    ]

    assert (Span.of(160), Span.of(140, 160)) == (totals(own, AS_OF).paid, totals(own, AS_OF).quoted)


def test_amounts_in_two_currencies_are_not_added():
    money = {"paid": Span.of(1), "quoted": Span.of(1), "quoted_in_full": True}

    assert None is totals([record(currency="EUR", **money), record(number=2, currency="GBP", **money)], AS_OF).paid


def test_of_several_records_of_one_order_the_last_holds():
    assert (record(faulty=6),) == newest([record(), record(faulty=6)])


def test_spellings_of_one_maker_are_one_order():
    assert 1 == len(newest([record(), record(maker=" FERNHILL ")]))


def test_two_orders_of_one_day_are_two():
    assert [1, 2] == [one.number for one in records_of([order(), order(row=3)], "mug", "EUR")]


def test_the_sheet_holds_before_what_was_kept_but_for_the_quote():
    kept = record(quoted=Span.of(100), quoted_in_full=True, recorded_on=AS_OF)
    (found,) = own_orders([kept], records_of([order(faulty=3)], "mug", "EUR"))

    assert (3, Span.of(100), AS_OF) == (found.faulty, found.quoted, found.recorded_on)


def test_only_what_says_something_new_is_news():
    kept = [record(recorded_on=date(2026, 11, 1))]

    assert [False, True, True] == [is_news(one, kept) for one in (record(), record(faulty=1), record(number=2))]


days = st.dates(date(2000, 1, 1), date(2100, 1, 1))
amounts = st.decimals(0, 10**9, places=2)
spans = st.builds(
    lambda low, more, is_open: Span(low, None if is_open else low + more), amounts, amounts, st.booleans()
)


@given(
    st.builds(
        Record,
        maker=st.text(min_size=1).filter(str.strip),
        item=st.text(min_size=1).filter(str.strip),
        number=st.integers(1, 9),
        ordered=st.none() | days,
        pieces=st.integers(10, 10**6),
        way=st.sampled_from([None, "sea", "post"]),
        promised=st.none() | days,
        arrived=st.none() | days,
        faulty=st.none() | st.integers(0, 10),
        opened=st.none() | st.integers(10, 10**6),
        paid=st.none() | spans,
        quoted=st.none() | spans,
        quoted_in_full=st.booleans(),
        currency=st.sampled_from([None, "EUR"]),
        recorded_on=st.none() | days,
    )
)
def test_a_record_comes_back_from_json_as_it_was(one):
    assert one == record_of(record_json(one))


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("maker", ""),
        ("item", None),
        ("number", 0),
        ("number", True),
        ("ordered", "2026-13-01"),
        ("arrived", 20261125),
        ("pieces", 2.5),
        ("faulty", -1),
        ("faulty", 201),
        ("opened", 0),
        ("way", "boat"),
        ("paid", {"low": "-1", "high": None}),
        ("paid", {"low": "5", "high": "4"}),
        ("quoted", {"low": 5, "high": None}),
        ("quoted", {"low": "NaN", "high": None}),
        ("quoted_in_full", "yes"),
        ("currency", "EURO"),
    ],
)
def test_a_record_that_was_changed_by_hand_names_the_key(key, value):
    assert key == record_of(record_json(record()) | {key: value})


def test_of_a_record_more_faulty_pieces_than_were_opened_are_refused():
    found = [record_of(record_json(record(faulty=faulty, opened=32))) for faulty in (32, 33)]

    assert [record(faulty=32, opened=32), "faulty"] == found


def test_a_record_of_an_earlier_version_counts_among_all_pieces():
    found = record_json(record(faulty=6))
    del found["opened"]

    assert record(faulty=6) == record_of(found)


@pytest.mark.parametrize("key", [key for key in record_json(record()) if key not in LATER])
def test_a_record_without_one_of_its_keys_names_it(key):
    found = record_json(record())
    del found[key]

    assert key == record_of(found)
