"""A sampling plan in words."""

from fractions import Fraction

import pytest

from scorecard.inspection.odds import slips_through
from scorecard.inspection.plan_words import limit_sentence, of_100, shared_sentence, slip_rows, slips
from scorecard.inspection.plans import sampling_plan
from scorecard.inspection.settings import USUAL_LIMITS

PLAN = sampling_plan(200, "II", USUAL_LIMITS)


def test_each_limit_says_from_which_number_on_the_lot_is_over_it():
    assert [
        "Critical faults (none is allowed): the first one in 32 pieces is over it",
        "Major faults (limit 2.5 of 100): in 32 pieces, up to 2 are within it, 3 or more are over it",
        "Minor faults (limit 4 of 100): in 32 pieces, up to 3 are within it, 4 or more are over it",
    ] == [limit_sentence(one) for one in PLAN.plans]


def test_numbers_beyond_the_end_of_the_tables_are_said_to_be_in_proportion():
    minor = sampling_plan(500_000, "II", USUAL_LIMITS).plans[2]
    assert (
        "Minor faults (limit 4 of 100): in 800 pieces, up to 53 are within it, 54 or more are over it, in proportion "
        "to the 315 pieces at which the tables end for this limit"
    ) == limit_sentence(minor)


def test_a_limit_of_1_of_100_ends_as_any_other():
    # letter R, 2000 pieces: 1.0 points up to Q's 21/22 in 1250; 21·2000/1250 = 33.6
    minor = sampling_plan(600_000, "III", {"critical": 0, "minor": 1.0}).plans[1]
    assert (
        "Minor faults (limit 1 of 100): in 2000 pieces, up to 33 are within it, 34 or more are over it, in proportion "
        "to the 1250 pieces at which the tables end for this limit"
    ) == limit_sentence(minor)


def test_one_that_is_allowed_is_told_in_the_singular():
    (plan,) = sampling_plan(100, "II", {"major": 2.5}).plans
    assert "Major faults (limit 2.5 of 100): in 20 pieces, 1 is within it, 2 or more are over it" == limit_sentence(
        plan
    )


def test_it_is_said_why_more_is_opened_than_a_limit_asks_for():
    assert (
        "Alone, the limits would ask for 8 pieces (critical), 5 (major) and 13 (minor); one sample of 20 serves them "
        "all, the smallest for which the tables have numbers for each"
    ) == shared_sentence(sampling_plan(40, "II", USUAL_LIMITS))
    assert "" == shared_sentence(PLAN)


def test_slips_are_exact():
    assert all(slip.chance == slips_through(200, slip.faulty, 32, slip.plan.accept) for slip in slips(PLAN))


def test_the_rows_stand_for_2_5_10_and_20_of_100():
    # 10 of 200 with a major fault, 32 opened, up to 2 let through: 0.797591... by the hypergeometric distribution
    rows = list(slip_rows(PLAN))
    assert ["4 of 200", "10 of 200", "20 of 200", "40 of 200"] == [row[0] for row in rows]
    assert "79.8" == rows[1][2]
    large = sampling_plan(10_000, "II", {"major": 2.5})
    assert ["200 of 10000", "500 of 10000", "1000 of 10000", "2000 of 10000"] == [row[0] for row in slip_rows(large)]


@pytest.mark.parametrize(
    ("chance", "words"),
    [
        ((0, 1), "none"),
        ((1, 1001), "under 0.1"),
        ((1, 1000), "0.1"),
        ((6, 5000), "0.1"),  # 0.12
        ((4994, 5000), "99.9"),  # 99.88
        ((999, 1000), "99.9"),
        ((1000, 1001), "over 99.9"),
        ((1, 1), "all"),
    ],
)
def test_only_what_cannot_happen_is_none_and_only_what_must_is_all(chance, words):
    assert words == of_100(Fraction(*chance))


@pytest.mark.parametrize("lot", [1, 2, 3, 7])
def test_a_tiny_lot_has_each_number_once(lot):
    rows = [row[0] for row in slip_rows(sampling_plan(lot, "II", USUAL_LIMITS))]
    assert sorted(set(rows)) == rows
