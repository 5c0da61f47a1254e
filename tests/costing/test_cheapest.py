"""Who comes out cheapest, and whether that is sure."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.costing.cheapest import Piece, cheapest_of, level_words, piece_amount, rivals_words

OPEN = Decimal("Infinity")


def piece(maker, low, high=None, *missing, parts=()):
    ends = (Decimal(low), Decimal(low if high is None else high))
    return Piece(maker=maker, cases=(ends,), missing=missing, open_parts=parts)


def found(*pieces):
    one = cheapest_of(pieces)
    return one.piece.maker, [rival.maker for rival in one.rivals], [level.maker for level in one.level]


def test_costs_that_are_known_have_one_cheapest():
    assert ("B", [], []) == found(piece("A", "5.20"), piece("B", "5.10"))


def test_ranges_that_do_not_meet_have_one_cheapest():
    assert ("A", [], []) == found(piece("A", "5.10", "5.90"), piece("B", "5.90", "6.20"))


def test_one_whose_least_lies_below_the_most_of_the_cheapest_may_be_cheaper():
    assert ("A", ["B"], []) == found(piece("A", "5.10", "5.90"), piece("B", "5.40", "6.20"))


def test_how_surely_one_is_dearer_is_told_by_the_case_of_least():
    # in the first case by 0.20 at least, in the second 0.10 may be saved
    one = Piece(maker="A", cases=((Decimal("5.40"), Decimal("5.50")), (Decimal("6.00"), Decimal("6.20"))))
    other = Piece(maker="B", cases=((Decimal("5.10"), Decimal("5.20")), (Decimal("6.00"), Decimal("6.10"))))

    assert (Decimal("-0.10"), True) == (one.surely_above(other), one.may_be_below(other))


def test_a_cost_without_an_upper_end_is_not_dropped():
    assert ("A", ["B"], []) == found(piece("A", "5.10"), piece("B", "3.00", OPEN))


def test_of_costs_without_an_upper_end_the_one_of_the_least_comes_out():
    assert ("B", ["A"], []) == found(piece("A", "5.00", OPEN), piece("B", "3.00", OPEN))


def test_one_that_lacks_a_cost_never_comes_out_but_may_be_cheaper():
    assert ("A", ["C"], []) == found(
        piece("A", "5.10"), piece("B", "5.10", "5.10", "freight"), piece("C", "2.00", "2.00", "clearance")
    )


def test_with_a_cost_missing_of_all_nobody_comes_out():
    assert cheapest_of([piece("A", "5.10", "5.10", "freight")]) is None


def test_who_costs_just_as_much_is_level():
    assert ("A", [], ["B"]) == found(piece("A", "5.10"), piece("B", "5.10"), piece("C", "5.1", "5.1", "freight"))


def test_what_is_open_for_all_alike_is_compared_case_by_case():
    # with or without import tax B is the dearer, though the ranges meet
    alike = Piece(maker="A", cases=((Decimal(5), Decimal(5)), (Decimal(6), Decimal(6))))
    dearer = Piece(maker="B", cases=((Decimal("5.5"), Decimal("5.5")), (Decimal("6.6"), Decimal("6.6"))))

    assert ("A", [], []) == found(dearer, alike)


def in_cases(maker, *costs):
    """Return a piece that is known in each case, and costs something else in each."""
    return Piece(maker=maker, cases=tuple((Decimal(cost), Decimal(cost)) for cost in costs))


@pytest.mark.parametrize("costs", [("5", "6.5"), ("6.5", "5")])
def test_one_that_is_the_same_in_every_case_may_be_cheaper_in_one(costs):
    # B is cheaper where A costs 6.50; the middles are 5.75 and 5.80
    assert ("A", ["B"], []) == found(in_cases("A", *costs), in_cases("B", "5.8"))


@pytest.mark.parametrize("costs", [("5", "6.5"), ("6.5", "5")])
def test_one_that_costs_more_or_less_by_the_case_may_be_below_one_that_costs_the_same(costs):
    # A is cheaper where it costs 5; the middles are 5.75 and 5.70
    assert ("B", ["A"], []) == found(in_cases("A", *costs), in_cases("B", "5.7"))


def test_least_and_most_are_those_of_any_case():
    one = in_cases("A", "5", "7", "6")

    assert (5, 7) == (one.low, one.high)


MONEY = st.decimals(0, 9, places=2)


@given(st.lists(st.tuples(MONEY, MONEY, st.booleans()), min_size=1, max_size=5), st.data())
def test_a_sure_cheapest_is_the_cheapest_whatever_the_costs_turn_out_to_be(ends, data):
    pieces = [
        piece(str(at), min(low, high), max(low, high), *(["freight"] if lacks else []))
        for at, (low, high, lacks) in enumerate(ends)
    ]
    one = cheapest_of(pieces)
    if one is None or not one.is_sure:
        return
    least = min(each.low if each is not one.piece else each.high for each in pieces)

    assert least == one.piece.high


def test_the_words_name_who_may_be_cheaper_and_what_is_open():
    one = cheapest_of(
        [
            piece("A", "5.10", "5.90", parts=("what the price covers",)),
            piece("B", "5.40", "6.20"),
            piece("C", "4", "4", "freight", parts=("freight",)),
        ]
    )

    assert (
        "C (at least 4.00) and B (5.40 to 6.20) may be cheaper, until more is known: of A what the price covers; "
        "of C freight" == rivals_words(one, "EUR")
    )


def test_of_many_that_may_be_cheaper_and_of_many_open_parts_some_are_named():
    parts = ("freight", "clearance", "duty", "delivery", "unloading")
    rivals = [piece(f"B{at}", at, at, *parts, parts=parts) for at in range(5)]
    words = rivals_words(cheapest_of([piece("A", "9"), *rivals]), "EUR")

    assert words.startswith("B0 (at least 0.00), B1 (at least 1.00), B2 (at least 2.00) and 2 more makers may be")
    assert "of B0 freight, clearance, duty, delivery and 1 more" in words


@pytest.mark.parametrize(
    ("number", "told"),
    [
        (3, "B0 (at least 1.00), B1 (at least 1.00) and B2 (at least 1.00)"),
        (4, "B0 (at least 1.00), B1 (at least 1.00), B2 (at least 1.00) and 1 more maker"),
    ],
)
def test_three_that_may_be_cheaper_are_named_and_the_others_counted(number, told):
    rivals = [piece(f"B{at}", 1, 1, "freight") for at in range(number)]
    words = rivals_words(cheapest_of([piece("A", "9"), *rivals]), "EUR")

    assert f"{told} may be cheaper" == words


def test_four_open_parts_are_all_named():
    parts = ("freight", "clearance", "duty", "delivery")
    words = rivals_words(cheapest_of([piece("A", "9"), piece("B", 1, 1, *parts, parts=parts)]), "EUR")

    assert words.endswith("of B freight, clearance, duty and delivery")


def test_where_it_is_sure_there_are_no_words():
    assert ("", "") == (rivals_words(cheapest_of([piece("A", 5)]), "EUR"), level_words(cheapest_of([piece("A", 5)])))


def test_level_makers_are_named():
    assert ", level with B" == level_words(cheapest_of([piece("A", 5), piece("B", 5)]))


@pytest.mark.parametrize(
    ("one", "words"),
    [
        (piece("A", 5, 6), "5.00 to 6.00 EUR"),
        (piece("A", 5, OPEN), "5.00 EUR or more"),
        (piece("A", 5, 5, "x"), "at least 5.00 EUR"),
    ],
)
def test_an_amount_in_words(one, words):
    assert words == piece_amount(one, "EUR")
