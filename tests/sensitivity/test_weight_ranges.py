"""The ends of weight ranges, against worked examples in exact fractions and against a sweep.

The office location is from Goodwin and Wright, Decision Analysis for Management Judgment, chapter 3, table 3.2
[mixed: closeness weight, totals and the threshold seen, the other columns recalled]; the three suppliers are a
textbook-style exercise, "Jolly Company" [stored]. The intervals are derived from them in exact fractions [derived].
"""

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import OFFICE_SHARES, OFFICES, SUPPLIER_SHARES, SUPPLIERS

from scorecard.sensitivity.weight_ranges import (
    RangeOverAnswers,
    WeightRange,
    ranges_over_answers,
    typed_end,
    weight_ranges,
)

A, B, C, D, E, F, G = range(7)
RAW_SWINGS = np.array([100, 80, 70, 30, 20, 10], dtype=float)

X, Y, Z = range(3)


def as_tuple(found: WeightRange | None):
    assert found is not None
    return (found.low, found.high, found.overtaken_below, found.overtaken_above)


@pytest.mark.parametrize(
    ("criterion", "low", "high", "below", "above"),
    [
        (0, Fraction(4, 55), 1, E, None),
        (1, 0, Fraction(155, 303), None, G),
        (2, 0, 1, None, None),
        (3, 0, Fraction(37, 82), None, E),
        (4, 0, Fraction(49, 190), None, E),
        (5, 0, Fraction(337, 434), None, C),
    ],
)
def test_office_weights_move_as_far_as_exact_fractions_say(criterion, low, high, below, above):
    expected = (pytest.approx(float(low), abs=1e-14), pytest.approx(float(high), abs=1e-14), below, above)
    assert expected == as_tuple(weight_ranges(OFFICES, OFFICE_SHARES, A)[criterion])


def test_office_turnover_group_crosses_at_the_published_52_1_percent():
    turnover, conditions = RAW_SWINGS[:3], RAW_SWINGS[3:]
    grouped = np.column_stack(
        [OFFICES[:, :3] @ turnover / turnover.sum(), OFFICES[:, 3:] @ conditions / conditions.sum()]
    )
    found = weight_ranges(grouped, np.array([0.81, 0.19]), A)[0]
    assert found is not None
    assert round(100 * found.low, 1) == 52.1
    assert (pytest.approx(875 / 1679, abs=1e-14), 1.0, E, None) == as_tuple(found)


@pytest.mark.parametrize(
    ("criterion", "expected"),
    [(0, (0, 5 / 7, None, X)), (1, (1 / 13, 1, X, None)), (2, (0, 1, None, None)), (3, (0, 1, None, None))],
)
def test_supplier_weights_move_as_far_as_exact_fractions_say(criterion, expected):
    assert pytest.approx(expected, abs=1e-14) == as_tuple(weight_ranges(SUPPLIERS, SUPPLIER_SHARES, Y)[criterion])


def test_a_share_of_1_has_no_range_and_the_others_have_one():
    points = np.array([[90.0, 10.0], [80.0, 100.0]])
    assert (None, WeightRange(low=0.0, high=0.1, overtaken_below=None, overtaken_above=1)) == weight_ranges(
        points, np.array([1.0, 0.0]), 0
    )


def test_a_single_criterion_has_no_range():
    assert weight_ranges(np.array([[90.0], [80.0]]), np.array([1.0]), 0) == (None,)


def test_a_lone_maker_stays_first_from_0_to_1():
    expected = WeightRange(low=0.0, high=1.0, overtaken_below=None, overtaken_above=None)
    assert (expected, expected) == weight_ranges(np.array([[10.0, 20.0]]), np.array([0.5, 0.5]), 0)


def test_a_weight_of_0_has_a_range():
    points = np.array([[60.0, 60.0, 0.0], [50.0, 50.0, 100.0]])
    expected = (0.0, pytest.approx(10 / 110, abs=1e-15), None, 1)
    assert expected == as_tuple(weight_ranges(points, np.array([0.5, 0.5, 0.0]), 0)[2])


def test_joint_leaders_make_the_current_share_an_end():
    points = np.array([[100.0, 0.0], [0.0, 100.0]])
    assert as_tuple(weight_ranges(points, np.array([0.5, 0.5]), 0)[0]) == (0.5, 1.0, 1, None)


def test_a_joint_leader_that_rounding_puts_a_hair_behind_keeps_the_current_share_inside():
    points = np.array([[100.0, 0.0], [0.0, 100.0 + 5e-10]])
    assert as_tuple(weight_ranges(points, np.array([0.5, 0.5]), 0)[0]) == (0.5, 1.0, 1, None)


def test_a_rival_apart_by_rounding_alone_never_takes_over():
    points = np.array([[50.0, 50.0], [50.0 + 1e-13, 50.0 - 1e-13]])
    assert as_tuple(weight_ranges(points, np.array([0.5, 0.5]), 0)[0]) == (0.0, 1.0, None, None)


def test_of_rivals_that_cross_together_the_steepest_takes_over():
    points = np.array([[100.0, 0.0], [90.0, 10.0], [50.0, 50.0], [40.0, 60.0]])
    assert weight_ranges(points, np.array([0.8, 0.2]), 0)[0].overtaken_below == 3


def test_of_rivals_that_cross_together_equally_the_first_in_sheet_order_takes_over():
    points = np.array([[90.0, 10.0], [50.0, 50.0], [50.0, 50.0]])
    found = weight_ranges(points, np.array([0.8, 0.2]), 0)[0]
    assert as_tuple(found) == (0.5, 1.0, 1, None)


def test_leads_below_a_point_cross_where_they_are_nil():
    # The lead is 1/2 less 3/2 of the first share.
    points = np.array([[50.0, 50.5], [51.0, 50.0]])
    first, second = weight_ranges(points, np.array([0.25, 0.75]), 0)
    assert (0.0, pytest.approx(1 / 3, abs=1e-15), None, 1) == as_tuple(first)
    assert (pytest.approx(2 / 3, abs=1e-15), 1.0, 1, None) == as_tuple(second)


TIE = 1e-9


@pytest.mark.parametrize(
    ("points", "first", "second"),
    [
        # behind by a tie on the first criterion alone
        ([[0, 100], [TIE, 0]], (0, 1, None, None), (0, 1, None, None)),
        # at halves one rival is level, another behind by a tie but coming up faster
        ([[0, 4 * TIE], [2 * TIE, 2 * TIE], [2 * TIE, 0]], (0, 1 / 2, None, 2), (1 / 2, 1, 2, None)),
        # at a third one rival is level, another behind by less than a tie; its line falls by just a tie more
        ([[0, 2 * TIE], [2 * TIE, TIE], [2 * TIE, 0]], (0, 1 / 3, None, 1), (2 / 3, 1, 1, None)),
    ],
)
def test_a_tie_is_a_billionth_of_a_point(points, first, second):
    found = weight_ranges(np.array(points), np.array([0.25, 0.75]), 0)
    assert pytest.approx([*first, *second], abs=1e-15) == [*as_tuple(found[0]), *as_tuple(found[1])]


def test_a_criterion_that_leaves_the_others_no_more_than_rounding_has_no_range():
    points, rest = np.array([[90.0, 10.0], [80.0, 100.0]]), np.array([1e-15, 1.01e-15])
    assert [weight_ranges(points, np.array([1 - part, part]), 0)[0] is None for part in rest] == [True, False]


def test_a_typed_weight_gives_its_share():
    others = 80.0
    typed = typed_end(5 / 7, others)
    assert typed is not None
    assert pytest.approx(5 / 7, abs=1e-15) == typed / (typed + others)


def test_at_share_1_any_typed_weight_will_do():
    assert typed_end(1.0, 80.0) is None


# Y's quality unknown on a scale of 1 to 5 (the three suppliers above): by hand, with Y's quality at 1 and at 5.
Y_LOW, Y_HIGH = SUPPLIERS.copy(), SUPPLIERS.copy()
Y_LOW[Y, 1] = 1


def test_a_lead_that_an_answer_could_overturn_is_nowhere_guaranteed_near_the_current_share():
    quality = ranges_over_answers(Y_LOW, Y_HIGH, SUPPLIER_SHARES, Y)[1]
    assert (None, pytest.approx(1 / 13)) == (quality.guaranteed, quality.possible.low)


def test_the_possible_range_is_that_of_the_best_answers():
    found = tuple(r.possible for r in ranges_over_answers(Y_LOW, Y_HIGH, SUPPLIER_SHARES, Y))
    assert weight_ranges(Y_HIGH, SUPPLIER_SHARES, Y) == found


def test_the_guaranteed_range_may_lie_away_from_the_current_share():
    low = np.array([[90.0, 20.0], [30.0, 30.0]])
    high = np.array([[90.0, 20.0], [30.0, 100.0]])
    found = ranges_over_answers(low, high, np.array([0.25, 0.75]), 0)[0].guaranteed
    assert (pytest.approx(80 / 140), 1.0, 1, None) == as_tuple(found)


def test_a_maker_that_leads_at_one_end_alone_by_a_tie_has_that_end():
    points = np.array([[0.0, 0.0], [10.0, 5e-10]])
    first, second = ranges_over_answers(points, points, np.array([0.5, 0.5]), 0)
    assert (as_tuple(first.guaranteed), as_tuple(second.guaranteed)) == ((0, 0, None, 1), (1, 1, 1, None))


@pytest.mark.parametrize(("steps", "crossed"), [((0, 0), False), ((2, 20), False), ((4, 40), True)])
def test_two_rivals_that_meet_leave_one_share_and_none_where_they_cross(steps, crossed):
    # In the smallest steps of floating point at 10: 22 of them move the crossing from 1/2 by 10^-15, 44 by twice that.
    more, less = 10 + steps[0] * np.spacing(10.0), 10 - steps[1] * np.spacing(9.0)
    points = np.array([[less, 10.0], [less + 10, 0.0], [0.0, 10 + more]])
    found = ranges_over_answers(points, points, np.array([0.25, 0.75]), 0)[0].guaranteed
    assert found is None if crossed else as_tuple(found) == (0.5, 0.5, 2, 1)


def test_nothing_is_possible_for_a_maker_that_is_beaten_on_everything():
    points = np.array([[10.0, 10.0], [20.0, 20.0]])
    expected = RangeOverAnswers(guaranteed=None, possible=None)
    assert (expected, expected) == ranges_over_answers(points, points, np.array([0.5, 0.5]), 0)


def test_known_answers_make_guaranteed_possible_and_counted_ranges_one():
    found = ranges_over_answers(OFFICES, OFFICES, OFFICE_SHARES, A)
    counted = weight_ranges(OFFICES, OFFICE_SHARES, A)
    assert [(c.overtaken_below, c.overtaken_above) for c in counted] == [
        (r.guaranteed.overtaken_below, r.possible.overtaken_above) for r in found
    ]
    assert pytest.approx([c.high for c in counted]) == [r.guaranteed.high for r in found]


# Laws. Whole points and whole weights make genuine ties common.

TABLES = st.tuples(st.integers(2, 8), st.integers(2, 5)).flatmap(
    lambda size: st.tuples(
        st.lists(
            st.lists(st.integers(0, 20).map(lambda p: 5.0 * p), min_size=size[1], max_size=size[1]),
            min_size=size[0],
            max_size=size[0],
        ),
        st.lists(st.integers(0, 10), min_size=size[1], max_size=size[1]).filter(lambda w: sum(w) > 0),
    )
)


def prepared(table):
    points, weights = np.array(table[0]), np.array(table[1], dtype=float)
    shares = weights / weights.sum()
    scores = points @ shares
    return points, shares, int((scores >= scores.max() - 1e-9).argmax())


def scores_at(points, shares, criterion, share):
    others = np.delete(np.arange(len(shares)), criterion)
    rest = points[:, others] @ shares[others] / shares[others].sum()
    return share * points[:, criterion] + (1 - share) * rest


def cases(table):
    points, shares, leader = prepared(table)
    for criterion, found in enumerate(weight_ranges(points, shares, leader)):
        if found is not None:
            yield points, shares, leader, criterion, found


@given(TABLES)
def test_the_current_share_lies_inside(table):
    for _, shares, _, criterion, found in cases(table):
        assert found.low <= shares[criterion] <= found.high


@given(TABLES)
def test_at_an_end_who_takes_over_is_level_and_nobody_is_ahead(table):
    for points, shares, leader, criterion, found in cases(table):
        for end, taker in ((found.low, found.overtaken_below), (found.high, found.overtaken_above)):
            scores = scores_at(points, shares, criterion, end)
            assert scores.max() <= scores[leader] + 1e-9
            assert taker is None or abs(scores[taker] - scores[leader]) <= 1e-9


@given(TABLES)
def test_just_beyond_an_end_who_takes_over_leads(table):
    for points, shares, leader, criterion, found in cases(table):
        for end, step, taker in ((found.low, -1e-7, found.overtaken_below), (found.high, 1e-7, found.overtaken_above)):
            if taker is not None:
                scores = scores_at(points, shares, criterion, end + step)
                assert scores[taker] > scores[leader]
                assert taker == int((scores >= scores.max() - 1e-9).argmax())


@given(TABLES)
def test_where_nobody_takes_over_the_end_is_that_of_the_scale(table):
    for *_, found in cases(table):
        assert (found.low == 0, found.high == 1) == (found.overtaken_below is None, found.overtaken_above is None)


def test_a_sweep_in_small_steps_finds_the_same_ends():
    random = np.random.default_rng(5)
    grid = np.linspace(0, 1, 20_001)
    for _ in range(3):
        points, shares = random.random((12, 4)) * 100, random.dirichlet(np.ones(4))
        leader = int((points @ shares).argmax())
        for criterion, found in enumerate(weight_ranges(points, shares, leader)):
            scores = np.array([scores_at(points, shares, criterion, share) for share in grid])
            first = grid[scores.argmax(axis=1) == leader]
            assert (pytest.approx(found.low, abs=5e-5), pytest.approx(found.high, abs=5e-5)) == (first[0], first[-1])
