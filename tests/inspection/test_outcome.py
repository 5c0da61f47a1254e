"""What counts come to: shares, money, photographs, and what a sample says."""

from decimal import Decimal
from fractions import Fraction

import inspection_cases
import pytest
from hypothesis import given
from hypothesis import strategies as st
from inspection_cases import LINES, arrival

from scorecard.inspection.outcome import PiecePrice
from scorecard.inspection.plans import sampling_plan
from scorecard.inspection.settings import USUAL_LIMITS

PRICE = PiecePrice(low=Decimal("1184.60") / 200, high=Decimal("1184.60") / 200, currency="EUR", source="paid")


def outcome(opened=200, came=None, **counts):
    return inspection_cases.outcome(opened, came=came or arrival(price=PRICE), **counts)


def test_the_faulty_share_is_that_of_the_opened_pieces():
    assert (19, Fraction(19, 200)) == (outcome(B1=4, B3=3, C1=12).faulty, outcome(B1=4, B3=3, C1=12).share)


def test_photographs_are_numbered_through_by_the_order_of_the_sheet():
    counts = outcome(C1=2, B3=3, A1=1, B1=0).counts
    assert [("A1", (1, 1)), ("B3", (2, 4)), ("C1", (5, 6))] == [(one.line.code, one.photographs) for one in counts]


@given(st.dictionaries(st.sampled_from(sorted(code for code in LINES if LINES[code].text)), st.integers(0, 9)))
def test_every_faulty_piece_has_a_number_of_its_own(counts):
    found = outcome(**counts)
    numbers = [n for one in found.counts for n in range(one.photographs[0], one.photographs[1] + 1)]
    assert list(range(1, found.faulty + 1)) == numbers


def test_lost_are_critical_and_major_faults_and_what_is_missing():
    found = outcome(opened=197, came=arrival(lot=197), A1=1, B1=4, C1=12)
    assert (3, 8) == (found.arrival.missing, found.lost)


def test_money_is_what_the_pieces_cost_to_the_last_cent():
    # 1184.60 / 200 = 5.923 each; ten pieces 59.23, twelve 71.076
    found = outcome()
    assert (Decimal("59.23"), Decimal("71.08")) == (found.worth(10)[0], found.worth(12)[1])


def test_money_keeps_the_two_ends_of_a_range():
    price = PiecePrice(low=Decimal("5"), high=Decimal("6.50"), currency="EUR", source="quote")
    assert (Decimal("15.00"), Decimal("19.50")) == outcome(came=arrival(price=price)).worth(3)


def test_without_a_price_there_is_no_money():
    assert outcome(came=arrival()).worth(3) is None


def test_a_lot_is_over_its_limit_from_the_reject_number_on():
    # 200 pieces, level II: 32 opened, major 2/3, minor 3/4, critical 0/1
    plan = sampling_plan(200, "II", USUAL_LIMITS)
    judged = {one.plan.kind: one.verdict for one in outcome(opened=32, plan=plan, A1=1, B1=2, C1=4).judged}
    assert {"critical": "over its limit", "major": "not over its limit", "minor": "over its limit"} == judged


def test_other_numbers_of_opened_pieces_than_the_plans_are_not_judged():
    plan = sampling_plan(200, "II", USUAL_LIMITS)
    assert {"not judged"} == {one.verdict for one in outcome(opened=20, plan=plan).judged}


def test_pieces_opened_beyond_all_doubt_leave_none():
    plan = sampling_plan(200, "II", USUAL_LIMITS)
    assert [0, 5, 0] == [one.most for one in outcome(opened=200, plan=plan, B1=5).judged]


@pytest.mark.parametrize(("opened", "faulty"), [(0, 0), (201, 0), (3, 4)])
def test_counts_beyond_what_there_is_are_refused(opened, faulty):
    with pytest.raises(ValueError, match="among"):
        outcome(opened=opened, B1=faulty)


@pytest.mark.parametrize(("lot", "per_carton", "cartons"), [(200, 24, 9), (192, 24, 8), (200, None, None)])
def test_the_last_carton_may_be_part_full(lot, per_carton, cartons):
    assert cartons == arrival(lot=lot, per_carton=per_carton).cartons


def test_more_than_was_ordered_is_not_missing():
    assert 0 == arrival(lot=210).missing
