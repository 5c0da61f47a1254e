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
from scorecard.inspection.sampling_tables import LIMITS
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


def test_what_is_not_opened_and_what_a_critical_fault_halts_is_told_apart():
    found = outcome(opened=120, A1=1, B1=2, C1=3)
    assert (80, 200 - 3) == (found.unopened, found.halted)
    assert (0, 0) == (outcome(B1=2, C1=3).unopened, outcome(B1=2, C1=3).halted)


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


OVER, WITHIN, OPEN = "over its limit", "not over its limit", "not judged"


@pytest.mark.parametrize(
    ("opened", "counts", "expected"),
    [
        (20, {}, [OPEN, OPEN, OPEN]),  # the other 12 are not known
        (31, {"A1": 1, "B1": 5}, [OVER, OVER, OPEN]),  # over already, whatever the last piece is
        (33, {"B1": 3, "C1": 3}, [WITHIN, OPEN, WITHIN]),  # of 3, one may be the piece beyond the 32
        (33, {"B1": 4, "C1": 5}, [WITHIN, OVER, OVER]),  # at least 3 and 4 are among the 32
        (150, {"A1": 1, "B1": 6}, [OVER, OVER, WITHIN]),  # 6 of 200 are more than 2.5 of 100
        (200, {"A1": 1, "B1": 5, "C1": 9}, [OVER, WITHIN, OVER]),  # all: 5 and 8 are within 2.5 and 4 of 100
    ],
)
def test_other_numbers_of_opened_pieces_than_the_plans_are_judged_where_it_is_certain(opened, counts, expected):
    plan = sampling_plan(200, "II", USUAL_LIMITS)  # 32 opened: 0/1, 2/3, 3/4
    assert expected == [one.verdict for one in outcome(opened=opened, plan=plan, **counts).judged]


@pytest.mark.parametrize(("opened", "expected"), [(20, WITHIN), (21, WITHIN), (40, OVER)])
def test_what_the_tables_allow_in_a_sample_is_within_until_all_is_known(opened, expected):
    # 40 pieces: 20 opened, minor 2/3; 2 of 40 are 5 of 100, more than 4
    plan = sampling_plan(40, "II", USUAL_LIMITS)
    assert expected == outcome(opened=opened, came=arrival(lot=40), plan=plan, C1=2).judged[2].verdict


@given(st.integers(1, 600), st.data())
def test_a_sample_of_the_size_that_was_asked_for_is_always_judged(lot, data):
    limits = {kind: data.draw(st.sampled_from((0, *LIMITS))) for kind in ("critical", "major", "minor")}
    plan = sampling_plan(lot, "II", limits)
    found = data.draw(st.integers(0, plan.opened))
    judged = outcome(opened=plan.opened, came=arrival(lot=lot), plan=plan, minor=found).judged
    assert [WITHIN if one.found <= one.plan.accept else OVER for one in judged] == [one.verdict for one in judged]


@pytest.mark.parametrize(("found", "expected"), [(250, WITHIN), (251, OVER)])
def test_one_piece_of_many_takes_a_whole_lot_over_its_share(found, expected):
    plan = sampling_plan(10_000, "II", {"major": 2.5})  # 2.5 of 100 of 10,000 are 250
    judged = outcome(opened=10_000, came=arrival(lot=10_000), plan=plan, major=found).judged
    assert [expected] == [one.verdict for one in judged]


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


AGREED = (245, 260)


@pytest.mark.parametrize(
    ("lot", "accepted", "missing", "owed", "extra", "beyond"),
    [
        (250, None, 0, 0, 0, 0),
        (247, None, 3, 3, 0, 0),
        (251, None, 0, 0, 1, 1),
        (250, AGREED, 0, 0, 0, 0),
        (245, AGREED, 5, 0, 0, 0),
        (244, AGREED, 6, 6, 0, 0),
        (260, AGREED, 0, 0, 10, 0),
        (261, AGREED, 0, 0, 11, 1),
    ],
)
def test_what_is_missing_and_what_is_too_much_follow_from_order_and_agreement(
    lot, accepted, missing, owed, extra, beyond
):
    came = arrival(lot=lot, ordered=250, accepted=accepted)
    assert (missing, owed, extra, beyond) == (came.missing, came.owed, came.extra, came.beyond)
