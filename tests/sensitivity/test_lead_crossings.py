"""Where the lead passes on, against a published chart, exact fractions, brute force and the weight ranges.

The office location is from Goodwin and Wright, Decision Analysis for Management Judgment, chapter 3 [mixed: weights,
totals, ends and threshold seen, the other columns recalled]; the three suppliers are a textbook-style exercise, "Jolly
Company" [stored], their crossings derived in exact fractions [derived].
"""

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import OFFICE_SHARES, OFFICES, SUPPLIER_SHARES, SUPPLIERS

from scorecard.ranking import TIE
from scorecard.sensitivity.lead_crossings import ScoreLines, Stretch, lead_crossings, score_lines
from scorecard.sensitivity.weight_ranges import weight_ranges

A, E, G = 0, 4, 6
X, Y = 0, 1
RAW_SWINGS = np.array([100, 80, 70, 30, 20, 10], dtype=float)


def turnover_lines():
    """Return the published chart: closeness, visibility and image as one weight, raw swings inside either group."""
    turnover, conditions = RAW_SWINGS[:3], RAW_SWINGS[3:]
    grouped = np.column_stack([OFFICES[:, :3] @ turnover / turnover.sum(), OFFICES[:, 3:] @ conditions / 60])
    return score_lines(grouped, np.array([0.81, 0.19]))[0]


def told(stretches):
    return [(one.leader, one.start, one.end) for one in stretches]


def test_the_published_lines_begin_and_end_where_the_chart_says():
    lines = turnover_lines()
    ends = [lines.none_on[E], lines.all_on[E], lines.none_on[A], lines.all_on[A]]
    assert [81.7, 60.4, 52.5, 87.2] == [round(end, 1) for end in ends]


def test_the_published_lead_passes_from_office_e_to_office_a_at_52_1_and_no_other_ever_leads():
    found = lead_crossings(turnover_lines())
    assert [(E, 0.0, 52.1), (A, 52.1, 100.0)] == [
        (who, round(100 * a, 1), round(100 * b, 1)) for who, a, b in told(found)
    ]


def test_the_published_office_g_is_always_above_c():
    lines = turnover_lines()
    assert (True, True) == (lines.none_on[G] > lines.none_on[2], lines.all_on[G] > lines.all_on[2])


@pytest.mark.parametrize(
    ("criterion", "expected"),
    [
        (0, [(Y, 0, Fraction(5, 7)), (X, Fraction(5, 7), 1)]),
        (1, [(X, 0, Fraction(1, 13)), (Y, Fraction(1, 13), 1)]),
        (2, [(Y, 0, 1)]),
        (3, [(Y, 0, 1)]),
    ],
)
def test_the_lead_of_the_suppliers_passes_where_exact_fractions_say(criterion, expected):
    found = told(lead_crossings(score_lines(SUPPLIERS, SUPPLIER_SHARES)[criterion]))
    assert [(who, pytest.approx(float(a)), pytest.approx(float(b))) for who, a, b in expected] == found


def test_a_line_at_the_present_share_is_the_score():
    found = [lines.at(share) for lines, share in zip(score_lines(OFFICES, OFFICE_SHARES), OFFICE_SHARES, strict=True)]
    assert [pytest.approx(OFFICES @ OFFICE_SHARES)] * 6 == found


def test_a_criterion_with_all_the_share_has_no_lines():
    assert (True, False) == tuple(one is None for one in score_lines(OFFICES[:, :2], np.array([1.0, 0.0])))


def test_three_lines_through_one_point_pass_the_lead_to_the_steepest():
    lines = ScoreLines(none_on=np.array([60.0, 55.0, 50.0]), all_on=np.array([40.0, 45.0, 50.0]))
    assert (Stretch(leader=0, start=0.0, end=0.5), Stretch(leader=2, start=0.5, end=1.0)) == lead_crossings(lines)


def test_of_makers_level_all_along_the_first_leads():
    lines = ScoreLines(none_on=np.array([10.0, 60.0, 60.0]), all_on=np.array([10.0, 40.0, 40.0]))
    assert (Stretch(leader=1, start=0.0, end=1.0),) == lead_crossings(lines)


def test_one_that_is_level_at_the_start_alone_never_leads():
    lines = ScoreLines(none_on=np.array([60.0, 60.0]), all_on=np.array([40.0, 50.0]))
    assert (Stretch(leader=1, start=0.0, end=1.0),) == lead_crossings(lines)


def test_one_that_is_level_at_the_end_alone_never_leads():
    lines = ScoreLines(none_on=np.array([60.0, 50.0]), all_on=np.array([50.0, 50.0]))
    assert (Stretch(leader=0, start=0.0, end=1.0),) == lead_crossings(lines)


def test_lines_apart_by_rounding_alone_do_not_cross():
    lines = ScoreLines(none_on=np.array([50.0, 50.0 - 1e-12]), all_on=np.array([50.0, 50.0 + 1e-12]))
    assert (Stretch(leader=0, start=0.0, end=1.0),) == lead_crossings(lines)


@pytest.mark.parametrize(
    ("none_on", "all_on", "leader"),
    [
        ([TIE, 0], [0, 50], 1),  # level at the start, just a tie apart: the steeper leads from there
        ([2 * TIE, TIE, 0], [10, 50, 60], 1),  # one more lies too far below at the start, and passes nobody at once
        ([0, 0], [0, TIE], 0),  # as steep within a tie: the first
        ([10, 0], [0, TIE], 0),  # ends just a tie above: level
    ],
)
def test_what_is_just_a_tie_apart_is_level(none_on, all_on, leader):
    lines = ScoreLines(none_on=np.array(none_on, dtype=float), all_on=np.array(all_on, dtype=float))
    assert (leader, 0.0) == told(lead_crossings(lines))[0][:2]


def test_a_line_just_a_tie_below_a_crossing_is_level_there_too():
    # the second line meets the first at 1/4, where the third is x - (x - TIE) below; all figures are exact in binary
    second, x = 11 * 2.0**-33, 3 * 2.0**-30
    lines = ScoreLines(none_on=np.array([0, -second, -x]), all_on=np.array([0, 3 * second, 3 * x - 4 * TIE]))
    assert [(0, 0.0, 0.25), (2, 0.25, 1.0)] == told(lead_crossings(lines))


def test_lines_that_rise_alike_never_pass_one_another():
    # the second ends a little more than a tie above the first, by the rounding of figures near 100 alone
    above = 100 + 2.0**-46 * np.ceil(TIE * 2.0**46)
    lines = ScoreLines(none_on=np.array([0.0, TIE]), all_on=np.array([100.0, above]))
    assert (True, True) == (above - 100 > TIE, above - TIE == 100)
    assert [(0, 0.0, 1.0)] == told(lead_crossings(lines))


def test_lines_that_touch_a_parabola_all_lead_in_turn():
    touching = np.linspace(0, 1, 41)  # the tangent of 100 t² at each: −100 a² + 200 a t; neighbours cross halfway
    lines = ScoreLines(none_on=-100 * touching**2, all_on=200 * touching - 100 * touching**2)
    found = lead_crossings(lines)
    halfway = pytest.approx(((touching[1:] + touching[:-1]) / 2).tolist())
    assert (list(range(41)), halfway) == ([one.leader for one in found], [one.end for one in found[:-1]])


# Laws. Whole points and whole weights make genuine ties common.

TABLES = st.tuples(st.integers(1, 9), st.integers(2, 5)).flatmap(
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
    weights = np.array(table[1], dtype=float)
    return np.array(table[0]), weights / weights.sum()


def drawn(table):
    for lines in score_lines(*prepared(table)):
        if lines is not None:
            yield lines, lead_crossings(lines)


@given(TABLES)
def test_stretches_follow_one_another_from_0_to_1(table):
    for _, found in drawn(table):
        ends = [one.end for one in found]
        assert ([0.0, *ends[:-1]], 1.0, True) == ([one.start for one in found], ends[-1], all(e > 0 for e in ends))


@given(TABLES, st.floats(0, 1))
def test_nobody_is_ahead_of_who_leads_at_any_share(table, share):
    for lines, found in drawn(table):
        leader = next(one.leader for one in found if one.start <= share <= one.end)
        assert lines.at(share).max() - lines.at(share)[leader] <= 1e-8


@given(TABLES)
def test_brute_force_over_all_pairs_finds_the_same_crossings(table):
    """Between neighbouring crossings of any two lines one maker leads: the one ahead in the middle."""
    for lines, found in drawn(table):
        steps = lines.none_on[:, None] - lines.none_on, lines.all_on[:, None] - lines.all_on
        with np.errstate(divide="ignore", invalid="ignore"):
            crossings = (steps[0] / (steps[0] - steps[1])).ravel()
        inside = np.unique(np.round(np.concatenate([[0, 1], crossings[(crossings > 0) & (crossings < 1)]]), 12))
        middles = (inside[1:] + inside[:-1]) / 2
        leaders = [int((lines.at(t) >= lines.at(t).max() - 1e-9).argmax()) for t in middles]
        passed = [pytest.approx(t) for t, a, b in zip(inside[1:-1], leaders[:-1], leaders[1:], strict=True) if a != b]
        assert passed == [one.end for one in found[:-1]]


@given(TABLES)
def test_the_stretch_of_the_leader_is_its_weight_range(table):
    points, shares = prepared(table)
    scores = points @ shares
    leader = int((scores >= scores.max() - 1e-9).argmax())
    for lines, known in zip(score_lines(points, shares), weight_ranges(points, shares, leader), strict=True):
        if lines is not None:
            held = [(one.start, one.end) for one in lead_crossings(lines) if one.leader == leader]
            expected = [] if known.low == known.high else [(pytest.approx(known.low), pytest.approx(known.high))]
            assert expected == held


def test_lines_within_a_hair_of_each_other_leave_no_empty_stretch():
    # the third line lies half a billionth above the second and rises a little more: both meet the first at 5/9
    none_on, all_on = np.array([90.0, 40.0, 40.0 + 5e-10]), np.array([50.0, 90.0, 90.0 + 1.3e-9])

    first, second = told(lead_crossings(ScoreLines(none_on=none_on, all_on=all_on)))
    assert (0, 0.0, pytest.approx(5 / 9)) == first
    assert (2, pytest.approx(5 / 9), 1.0) == second
