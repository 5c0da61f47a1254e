"""Scores, bands and ranks: published examples, exact fractions, other libraries, and the laws of the model.

Examples: the plain weighted sum of an encyclopedia article after Triantaphyllou (2000) [stored input, corrected
output]; the office location of Goodwin and Wright, Decision Analysis for Management Judgment, chapter 3, table 3.2
[mixed]; the three suppliers of a textbook-style exercise, "Jolly Company" [stored].
"""

from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from published import OFFICE_SHARES, OFFICES, SUPPLIER_SHARES, SUPPLIERS

from scorecard.points import PointsTable
from scorecard.ranking import competition_ranks, known_shares, leaders_of, rank_makers, ranks_if_let_in, weighted_sums

PLAIN = np.array([[25, 20, 15, 30], [10, 30, 20, 30], [30, 10, 30, 10]], dtype=float)
PLAIN_SHARES = np.array([0.20, 0.15, 0.40, 0.25])


def ranked(points, shares, out=()):
    points = np.array(points, dtype=float)
    table = PointsTable(low=points, high=points, counted=points, known=np.ones(points.shape, dtype=bool))
    return rank_makers(table, np.array(shares, dtype=float), np.isin(np.arange(len(points)), out))


@st.composite
def tables(draw, makers=(1, 6)):
    """Points in whole numbers, and whole weights, not all nil."""
    criteria = draw(st.integers(1, 5))
    row = st.lists(st.integers(0, 100), min_size=criteria, max_size=criteria)
    points = draw(st.lists(row, min_size=makers[0], max_size=makers[1]))
    weights = draw(st.lists(st.integers(0, 9), min_size=criteria, max_size=criteria).filter(any))
    return points, weights


def exact_scores(points, weights):
    whole = sum(weights)
    return [sum(Fraction(w * p, whole) for w, p in zip(weights, row, strict=True)) for row in points]


def shares_of(weights):
    return np.array(weights) / sum(weights)


# published


def test_the_plain_weighted_sum_gives_21_5_22_and_22():
    assert [21.5, 22.0, 22.0] == weighted_sums(PLAIN, PLAIN_SHARES).tolist()


def test_the_plain_weighted_sum_ends_in_an_exact_tie_for_first():
    assert (3, 1, 1) == ranked(PLAIN, PLAIN_SHARES).ranks


def test_joint_leaders_have_no_margin_between_them():
    assert 0.0 == ranked(PLAIN, PLAIN_SHARES).margin


def test_the_totals_of_the_seven_offices_are_those_of_the_table():
    expected = [80.8, 39.4, 47.4, 52.3, 64.8, 20.9, 60.2]
    assert pytest.approx(expected, abs=1e-12) == weighted_sums(OFFICES, OFFICE_SHARES).tolist()


def test_the_seven_offices_rank_as_their_totals():
    assert (1, 6, 5, 4, 2, 7, 3) == ranked(OFFICES, OFFICE_SHARES).ranks


def test_the_first_office_leads_the_second_by_16():
    assert pytest.approx(16.0, abs=1e-12) == ranked(OFFICES, OFFICE_SHARES).margin


def test_the_three_suppliers_score_3_9_4_3_and_3_5():
    assert pytest.approx([3.9, 4.3, 3.5], abs=1e-12) == weighted_sums(SUPPLIERS, SUPPLIER_SHARES).tolist()


# second computations


@given(tables())
def test_scores_are_those_of_exact_fractions(table):
    points, weights = table
    expected = [float(score) for score in exact_scores(points, weights)]
    assert pytest.approx(expected, abs=1e-12) == weighted_sums(np.array(points, dtype=float), shares_of(weights))


@given(tables())
def test_ranks_are_one_more_than_those_above_in_exact_fractions(table):
    scores = exact_scores(*table)
    expected = tuple(1 + sum(other > score for other in scores) for score in scores)
    assert expected == ranked(table[0], shares_of(table[1])).ranks


@pytest.mark.peers
@pytest.mark.parametrize(("points", "shares"), [(PLAIN, PLAIN_SHARES), (OFFICES, OFFICE_SHARES)])
def test_pymcdm_gives_the_same_weighted_sums(points, shares):
    methods = pytest.importorskip("pymcdm.methods")
    # its own scaling is by sums, which would turn the tie into a win: the points are compared as they are
    peer = methods.WSM(normalization_function=lambda column, cost=False: column)
    found = peer(points, shares, np.ones(len(shares)))
    assert pytest.approx(found, abs=1e-12) == weighted_sums(points, shares)


@pytest.mark.peers
@pytest.mark.parametrize(("points", "shares"), [(PLAIN, PLAIN_SHARES), (SUPPLIERS, SUPPLIER_SHARES)])
def test_scikit_criteria_gives_the_same_weighted_sums(points, shares):
    skcriteria = pytest.importorskip("skcriteria")
    simple = pytest.importorskip("skcriteria.agg.simple")
    found = simple.WeightedSumModel().evaluate(skcriteria.mkdm(points, [max] * len(shares), weights=shares))
    assert pytest.approx(found.e_.score, abs=1e-12) == weighted_sums(points, shares)


# ties and order


@pytest.mark.parametrize(
    ("scores", "ranks"),
    [
        ([], []),
        ([5.0], [1]),
        ([22.0, 22.0, 21.5], [1, 1, 3]),
        ([9.0, 8.0, 8.0, 7.0], [1, 2, 2, 4]),
        ([9.0, 9.0 - 0.9e-9, 9.0 - 1.8e-9], [1, 1, 3]),  # the third is level with the second, not with the best
        ([9.0, 9.0 - 1.1e-9], [1, 2]),
    ],
)
def test_ranks_are_shared_with_the_best_of_the_group(scores, ranks):
    assert ranks == competition_ranks(scores)


def test_tenths_that_are_not_exact_in_binary_still_tie():
    # 0.1·3 + 0.2·6 + 0.7·1 = 2.2 and 0.1·1 + 0.2·7 + 0.7·1 = 2.2
    assert (1, 1) == ranked([[3, 6, 1], [1, 7, 1]], [0.1, 0.2, 0.7]).ranks


def test_level_makers_stand_in_the_order_of_the_sheet():
    assert (1, 2, 0) == ranked(PLAIN, PLAIN_SHARES).order


def test_a_hair_of_a_point_does_not_change_the_order_of_the_sheet():
    assert (0, 1) == ranked([[50 - 1e-10], [50]], [1]).order


def test_one_maker_has_no_margin():
    assert ranked([[50]], [1]).margin is None


def test_where_all_are_ruled_out_nobody_leads():
    found = ranked([[50], [60]], [1], out=(0, 1))
    assert ((), None, (0, 0)) == (found.leaders, found.margin, found.ranks)


def test_a_ruled_out_maker_has_a_score_and_no_rank():
    found = ranked([[50], [60]], [1], out=(1,))
    assert ((1, 0), 60.0) == (found.ranks, found.scores[1])


def test_the_margin_leaves_ruled_out_makers_out():
    assert 10.0 == ranked([[50], [60], [40]], [1], out=(1,)).margin


# laws


@given(tables(makers=(2, 6)), st.randoms())
def test_permuting_makers_permutes_ranks(table, random):
    points, weights = table
    order = list(range(len(points)))
    random.shuffle(order)
    shares = shares_of(weights)
    expected = tuple(ranked(points, shares).ranks[maker] for maker in order)
    assert expected == ranked([points[maker] for maker in order], shares).ranks


@given(tables(makers=(2, 6)))
def test_a_dominated_maker_never_outranks_its_dominator(table):
    points, weights = table
    points[1] = [min(pair) for pair in zip(points[0], points[1], strict=True)]
    ranks = ranked(points, shares_of(weights)).ranks
    assert ranks[0] <= ranks[1]


@given(tables(makers=(2, 6)))
def test_adding_a_maker_changes_nobodys_score(table):
    points, weights = table
    shares = shares_of(weights)
    assert ranked(points[:-1], shares).scores.tolist() == ranked(points, shares).scores[:-1].tolist()


@given(tables(makers=(2, 6)), st.integers(1, 1000))
def test_scaling_all_weights_changes_no_rank(table, factor):
    points, weights = table
    scaled = [weight * factor for weight in weights]
    assert ranked(points, shares_of(weights)).ranks == ranked(points, shares_of(scaled)).ranks


@given(tables(), st.data())
def test_what_counts_lies_within_the_band(table, drawn):
    points, weights = table
    counted = np.array(points, dtype=float)
    parts = drawn.draw(st.lists(st.floats(0, 1), min_size=counted.size, max_size=counted.size))
    low = counted * np.array(parts).reshape(counted.shape)
    known = np.ones(counted.shape, dtype=bool)
    found = rank_makers(
        PointsTable(low=low, high=counted, counted=counted, known=known), shares_of(weights), ~known.any(axis=1)
    )
    assert ((found.low <= found.scores) & (found.scores <= found.high)).all()


def test_known_shares_add_up_the_shares_of_known_answers():
    points = np.array([[50.0, 50.0, 50.0]])
    known = np.array([[True, False, True]])
    table = PointsTable(low=points, high=points, counted=points, known=known)
    found = rank_makers(table, np.array([0.5, 0.3, 0.2]), np.array([False]))
    assert [0.7] == found.known_shares.tolist()


@given(st.lists(st.lists(st.booleans(), min_size=3, max_size=3), min_size=1, max_size=9), st.data())
def test_known_shares_are_those_summed_maker_by_maker(rows, drawn):
    weights = drawn.draw(st.lists(st.integers(0, 9), min_size=3, max_size=3).filter(any))
    expected = [float(Fraction(sum(w for w, k in zip(weights, row, strict=True) if k), sum(weights))) for row in rows]
    assert pytest.approx(expected, abs=1e-12) == known_shares(np.array(rows), shares_of(weights)).tolist()


# leaders


@given(tables(), st.data())
def test_the_leaders_of_those_in_play_are_the_best_in_exact_fractions(table, drawn):
    points, weights = table
    in_play = drawn.draw(st.lists(st.booleans(), min_size=len(points), max_size=len(points)))
    scores = [score if there else None for score, there in zip(exact_scores(points, weights), in_play, strict=True)]
    best = max((score for score in scores if score is not None), default=None)
    expected = tuple(at for at, score in enumerate(scores) if score is not None and score == best)
    assert expected == leaders_of(np.array(points, dtype=float), shares_of(weights), np.array(in_play))


# very long lists


def test_one_let_in_above_all_takes_first_place():
    assert [1] == ranks_if_let_in(ranked([[50], [60], [40]], [1], out=(1,)), [1])


def test_one_let_in_where_nobody_is_ranked_takes_first_place():
    assert [1, 1] == ranks_if_let_in(ranked([[50], [60]], [1], out=(0, 1)), [0, 1])


def test_each_is_let_in_alone():
    assert [1, 1] == ranks_if_let_in(ranked([[50], [60], [70]], [1], out=(1, 2)), [1, 2])


def test_one_let_in_level_shares_the_rank():
    assert [2] == ranks_if_let_in(ranked([[70], [60], [60], [50]], [1], out=(2,)), [2])


@given(st.lists(st.integers(0, 12), min_size=1, max_size=12), st.data())
def test_the_rank_of_one_let_in_is_that_of_ranking_it_with_the_others(steps, drawn):
    # scores 0.4e-9 apart, so that groups are level in chains
    points = [[50 + step * 0.4e-9] for step in steps]
    out = drawn.draw(st.sets(st.integers(0, len(points) - 1)))
    expected = [ranked(points, [1], out=tuple(out - {maker})).ranks[maker] for maker in sorted(out)]
    assert expected == ranks_if_let_in(ranked(points, [1], out=tuple(out)), sorted(out))


def test_the_ruled_out_are_told_in_sheet_order():
    assert (0, 2) == ranked([[50], [60], [70]], [1], out=(2, 0)).ruled_out


# the edges of a tie, and bands


def test_scores_just_a_tie_apart_are_level_everywhere():
    # the difference is 1e-9 itself
    points, shares = np.array([[1e-9], [0.0]]), np.ones(1)

    assert [1, 1] == competition_ranks([1e-9, 0.0])
    assert (0, 1) == leaders_of(points, shares, np.array([True, True]))
    assert [1] == ranks_if_let_in(ranked(points, [1], out=(1,)), [1])


def test_who_is_only_nearly_level_leads_with_nobody():
    assert (0,) == leaders_of(np.array([[50.0], [50 - 1e-7]]), np.ones(1), np.array([True, True]))


def test_joint_leaders_are_all_that_rank_first():
    assert ((1, 2), (0,)) == (ranked(PLAIN, PLAIN_SHARES).leaders, ranked(OFFICES, OFFICE_SHARES).leaders)


def test_joint_leaders_a_hair_apart_have_no_margin():
    assert 0.0 == ranked([[50.0], [50 + 5e-10]], [1]).margin


def test_a_band_is_the_sums_of_the_least_and_the_greatest_points():
    # one answer of two is open: 1/4 of 20 to 60 beside 3/4 of 40
    low, counted, high = (np.array([[40.0, one], [40, 50], [one, one]]) for one in (20, 30, 60))
    table = PointsTable(low=low, high=high, counted=counted, known=np.ones((3, 2), dtype=bool))
    found = rank_makers(table, np.array([0.75, 0.25]), np.zeros(3, dtype=bool))

    assert ([35, 42.5, 20], [45, 42.5, 60]) == (found.low.tolist(), found.high.tolist())
    assert [37.5, 42.5, 30] == found.scores.tolist()
