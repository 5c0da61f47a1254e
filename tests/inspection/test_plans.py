"""What to open of a lot: arrows, published plans, one sample for all kinds."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from published_sampling import LETTERS_BY_LOT, SINGLE_PLANS, rows

from scorecard.inspection.plans import letter_of_plan, sampling_plan
from scorecard.inspection.sampling_tables import LETTERS, LEVELS, LIMITS, SIZES
from scorecard.inspection.settings import USUAL_LIMITS


def walked(letter, limit):
    """Return the published plan of a cell, walking the published arrows row by row: sample, accept, reject."""
    table = {name: (int(size), cells) for name, size, *cells in rows(SINGLE_PLANS)}
    row = LETTERS.index(letter)
    while (told := table[LETTERS[row]][1][LIMITS.index(limit)]) in "v^":
        row += 1 if told == "v" else -1
    accept, reject = told.split("/")
    return table[LETTERS[row]][0], int(accept), int(reject)


def one(lot, level, limit):
    """Return sample, accept and reject number of one kind alone."""
    (plan,) = sampling_plan(lot, level, {"major": limit}).plans
    return plan.opened, plan.accept, plan.reject


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("limit", LIMITS)
def test_every_lot_and_limit_has_the_plan_to_which_the_published_arrows_lead(level, limit):
    for low, high, *letters in rows(LETTERS_BY_LOT):
        size, accept, reject = walked(letters[LEVELS.index(level)], limit)
        for lot in (int(low), int(high)):
            assert (min(size, lot), accept, reject) == one(lot, level, limit), lot


@pytest.mark.parametrize(
    ("lot", "limit", "expected"),
    [
        (100, 2.5, (20, 1, 2)),  # worked from MIL-STD-105E, tables I and II-A
        (100, 4.0, (20, 2, 3)),
        (300, 2.5, (50, 3, 4)),
        (300, 4.0, (50, 5, 6)),
        (5000, 2.5, (200, 10, 11)),  # an inspection firm's public answers
        (10_000, 1.5, (200, 7, 8)),  # a page of the garment trade
        (10_000, 4.0, (200, 14, 15)),
        (300, 0.65, (80, 1, 2)),  # an arrow: not 0/1 at 50, as a public script of the garment trade has it
    ],
)
def test_plans_are_those_that_the_trade_publishes(lot, limit, expected):
    assert expected == one(lot, "II", limit)


def test_an_arrow_changes_the_sample_with_the_letter():
    assert ("J", 80) == (letter_of_plan("H", 0.65), SIZES["J"])


def test_all_kinds_share_the_largest_sample_and_its_numbers():
    # letter F: 1.5 points down to G (32, 1/2); 4.0 is then judged by G's 3/4, not by F's 2/3
    plan = sampling_plan(100, "II", {"critical": 0, "major": 1.5, "minor": 4.0})
    told = [(one.kind, one.letter, one.opened, one.accept, one.reject) for one in plan.plans]
    assert [("critical", "G", 32, 0, 1), ("major", "G", 32, 1, 2), ("minor", "G", 32, 3, 4)] == told


def test_a_limit_whose_table_ends_before_the_shared_sample_is_judged_in_proportion():
    # letter N: 2.5 is 21/22 in 500; 4.0 points up to M, 21/22 in 315, the last of its column: 21·500/315 = 33.3
    plan = sampling_plan(40_000, "II", {"major": 2.5, "minor": 4.0})
    assert (500, [(500, 21, 22), (500, 33, 34)]) == (
        plan.opened,
        [(one.opened, one.accept, one.reject) for one in plan.plans],
    )
    assert [500, 315] == [one.alone for one in plan.plans]


def test_an_arrow_up_takes_all_kinds_to_the_next_letter_with_numbers_for_each():
    # letter E: 1.5 points up to D's 8, 4.0 is E's 1/2 in 13; at F 1.5 points down; G has 1/2 and 3/4 in 32
    plan = sampling_plan(80, "II", {"critical": 0, "major": 1.5, "minor": 4.0})
    assert (32, [(0, 1), (1, 2), (3, 4)]) == (plan.opened, [(one.accept, one.reject) for one in plan.plans])


def test_critical_faults_take_part_in_choosing_the_sample():
    # letter F, 20: 1.0 points up to E's 13, down from G, and is 1/2 in H's 50
    plan = sampling_plan(120, "II", {"critical": 0, "major": 1.0, "minor": 1.0})
    assert (50, [20, 13, 13]) == (plan.opened, [one.alone for one in plan.plans])
    # letter P, 800: 2.5 ends at N's 21/22 in 500, 4.0 at M's 21/22 in 315: 21·800/500 = 33.6, 21·800/315 = 53.3
    plan = sampling_plan(500_000, "II", USUAL_LIMITS)
    assert (800, [0, 33, 53]) == (plan.opened, [one.accept for one in plan.plans])


@pytest.mark.parametrize("lot", range(6, 26))
def test_a_lot_of_6_to_25_is_judged_whole_or_by_one_sample(lot):
    plan = sampling_plan(lot, "II", USUAL_LIMITS)  # the tables have numbers for 2.5 and 4.0 from F's 20 on
    assert {min(20, lot)} == {plan.opened, *(one.opened for one in plan.plans)}


def test_a_sample_of_at_least_the_lot_is_the_whole_lot():
    plan = sampling_plan(4, "II", USUAL_LIMITS)
    assert (4, True) == (plan.opened, plan.is_whole_lot)


def test_limits_that_ask_for_different_samples_are_told_apart():
    # letter D (26 to 50 pieces): critical 0 asks for D's 8, 2.5 points up to C's 5, 4.0 down to E's 13; at E 2.5 points
    # down to F's 20, where there are numbers for both
    plan = sampling_plan(40, "II", USUAL_LIMITS)
    assert (20, [8, 5, 13]) == (plan.opened, [one.alone for one in plan.plans])
    assert [True, False] == [sampling_plan(lot, "II", USUAL_LIMITS).is_more_than_alone for lot in (40, 200)]
    # letter E (51 to 90 pieces): 2.5 points down to F's 20, 4.0 is E's 1/2 in 13
    one_alone = sampling_plan(60, "II", {"major": 2.5, "minor": 4.0})
    assert ([20, 13], True) == ([one.alone for one in one_alone.plans], one_alone.is_more_than_alone)


def test_a_whole_lot_opened_for_another_limit_is_judged_by_the_limit_itself():
    # critical 0.1 points to K's 125, more than the lot of 60; K's 7/8 for 2.5 would let 7 of 60 through, 11.7 of 100:
    # 2.5 of 100 of 60 is 1.5, so 1 is within the limit; of 4.0 it is 2.4
    plan = sampling_plan(60, "II", {"critical": 0.1, "major": 2.5, "minor": 4.0})
    assert (60, [(0, 1), (1, 2), (2, 3)]) == (plan.opened, [(one.accept, one.reject) for one in plan.plans])


@pytest.mark.parametrize(("lot", "accepted"), [(124, [0, 3, 4]), (125, [0, 3, 5])])
def test_the_limit_itself_of_a_whole_lot_is_its_whole_pieces(lot, accepted):
    # critical 0.1 points to K's 125; 2.5 of 100 of 124 is 3.1, of 125 3.125; 4.0 is 4.96 and 5
    plan = sampling_plan(lot, "II", {"critical": 0.1, "major": 2.5, "minor": 4.0})
    assert (lot, accepted) == (plan.opened, [one.accept for one in plan.plans])


def test_a_lot_of_nothing_cannot_be_sampled():
    with pytest.raises(ValueError, match="at least one piece"):
        sampling_plan(0, "II", USUAL_LIMITS)


@given(
    st.integers(1, 1_000_000),
    st.sampled_from(LEVELS),
    st.fixed_dictionaries({kind: st.sampled_from((0, *LIMITS)) for kind in ("critical", "major", "minor")}),
)
def test_every_plan_can_be_carried_out(lot, level, limits):
    plan = sampling_plan(lot, level, limits)
    assert plan.opened <= lot
    assert all(one.opened == plan.opened and one.reject == one.accept + 1 for one in plan.plans)
    assert all(one.alone <= plan.opened for one in plan.plans)


@given(
    st.integers(1, 1_000_000),
    st.sampled_from(LEVELS),
    st.fixed_dictionaries({kind: st.sampled_from((0, *LIMITS)) for kind in ("critical", "major", "minor")}),
)
def test_the_numbers_of_a_shared_sample_are_the_published_ones_while_the_table_has_them(lot, level, limits):
    published = {int(size): dict(zip(LIMITS, cells, strict=True)) for _, size, *cells in rows(SINGLE_PLANS)}
    plan = sampling_plan(lot, level, limits)
    for one in plan.plans:
        told = published.get(plan.opened, {}).get(one.limit, "^")
        if plan.opened < lot and told not in "v^":
            assert told == f"{one.accept}/{one.reject}"
        elif plan.opened < lot and one.limit:
            last = [size for size, cells in published.items() if cells[one.limit] not in "v^"][-1]
            assert last < plan.opened
