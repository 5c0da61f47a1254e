from fractions import Fraction
from itertools import combinations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.weighting import RANK_RULES, USUAL_RATIO_LIMIT, pairwise_weights, tied_rank_weights


def matrix(n, upper):
    """Return a reciprocal matrix from its upper triangle, row by row."""
    table = np.ones((n, n))
    for (i, j), value in zip(combinations(range(n), 2), upper, strict=True):
        table[i, j] = Fraction(value)
        table[j, i] = 1 / Fraction(value)
    return table


# Choosing a leader: matrices recalled from an encyclopedia's worked example, seen again in a public test suite; its
# weights and totals from memory.
LEADER = matrix(4, ["4", "3", "7", "1/3", "3", "5"])
EXPERIENCE = matrix(3, ["1/4", "4", "9"])
EDUCATION = matrix(3, ["3", "1/5", "1/7"])
CHARISMA = matrix(3, ["5", "9", "4"])
AGE = matrix(3, ["1/3", "5", "9"])

# Saaty (2008), Int. J. Services Sciences 1(1), 83-98: coffee, wine, tea, beer, soda, milk, water.
DRINKS_ROWS = "9 5 2 1 1 1/2 | 1/3 1/9 1/9 1/9 1/9 | 1/3 1/4 1/3 1/9 | 1/2 1 1/3 | 2 1/2 | 1/3"
DRINKS = matrix(7, DRINKS_ROWS.replace("|", "").split())

# Choosing a car, from the tests of the R package MCDA; the criteria's matrix from memory of a tutorial by Haas and
# Meixner.
STYLE = matrix(4, ["1/4", "4", "1/6", "4", "1/4", "1/5"])
RELIABILITY = matrix(4, ["2", "5", "1", "3", "2", "1/4"])
FUEL = matrix(4, ["2", "4", "1", "3", "2", "1/5"])
CAR_CRITERIA = matrix(3, ["1/2", "3", "4"])


@pytest.mark.parametrize(
    ("n", "rule", "exact"),
    [
        (1, "centroid", ["1"]),
        (1, "sum", ["1"]),
        (1, "reciprocal", ["1"]),
        (2, "centroid", ["3/4", "1/4"]),
        (2, "sum", ["2/3", "1/3"]),
        (2, "reciprocal", ["2/3", "1/3"]),
        (3, "centroid", ["11/18", "5/18", "1/9"]),
        (3, "sum", ["1/2", "1/3", "1/6"]),
        (3, "reciprocal", ["6/11", "3/11", "2/11"]),
        (4, "centroid", ["25/48", "13/48", "7/48", "1/16"]),
        (4, "sum", ["2/5", "3/10", "1/5", "1/10"]),
        (4, "reciprocal", ["12/25", "6/25", "4/25", "3/25"]),
    ],
)
def test_rank_weights_are_the_closed_forms_of_stillwell_1981_and_edwards_and_barron_1994(n, rule, exact):
    assert [float(Fraction(weight)) for weight in exact] == tied_rank_weights([1] * n, rule).tolist()


@pytest.mark.parametrize(
    ("rule", "table"),
    [
        ("centroid", [0.4567, 0.2567, 0.1567, 0.0900, 0.0400]),
        ("sum", [0.3333, 0.2667, 0.2, 0.1333, 0.0667]),
        ("reciprocal", [0.4380, 0.2190, 0.1460, 0.1095, 0.0876]),
    ],
)
def test_five_ranks_give_the_recalled_tables_of_barron_and_barrett_1996(rule, table):
    assert table == tied_rank_weights([1] * 5, rule).round(4).tolist()


def test_the_centroid_is_the_mean_of_uniform_weights_in_that_order():
    draws = np.random.default_rng(7).exponential(size=(200_000, 6))
    ordered = -np.sort(-draws / draws.sum(axis=1, keepdims=True), axis=1)

    # The spread of a weight is under 0.2, so four standard errors are under 4 · 0.2 / sqrt(200000) = 0.0018.
    np.testing.assert_allclose(tied_rank_weights([1] * 6, "centroid"), ordered.mean(axis=0), atol=0.0018)


def test_tied_criteria_share_the_mean_of_their_places():
    # Reciprocal weights of 4: 12/25, 6/25, 4/25, 3/25; the middle two share 5/25 each.
    expected = [0.48, 0.2, 0.2, 0.12]

    assert expected == tied_rank_weights([1, 2, 1], "reciprocal").tolist()


@pytest.mark.parametrize("rule", RANK_RULES)
@given(sizes=st.lists(st.integers(1, 5), min_size=1, max_size=12))
def test_rank_weights_add_up_to_one_and_fall_group_by_group(rule, sizes):
    weights = tied_rank_weights(sizes, rule)

    firsts = weights[np.cumsum([0, *sizes[:-1]])]
    assert abs(weights.sum() - 1) < 1e-12
    assert (np.diff(firsts) < 0).all()


@pytest.mark.parametrize("rule", RANK_RULES)
def test_when_all_are_tied_all_weigh_the_same(rule):
    expected = [0.25] * 4

    assert expected == tied_rank_weights([4], rule).tolist()


def test_another_rule_is_refused():
    with pytest.raises(ValueError, match="'exponent'"):
        tied_rank_weights([1, 1, 1], "exponent")


@pytest.mark.parametrize("sizes", [[], [1, 0]])
def test_an_empty_place_is_refused(sizes):
    with pytest.raises(ValueError, match="every place"):
        tied_rank_weights(sizes)


def test_a_consistent_matrix_gives_its_weights_and_a_ratio_of_zero():
    # From the tests of the R package ahp: 2/3, 1/9, 2/9 and no inconsistency.
    judged = pairwise_weights(matrix(3, ["6", "3", "1/2"]))

    np.testing.assert_allclose(judged.weights, [2 / 3, 1 / 9, 2 / 9], rtol=1e-12)
    assert (judged.lambda_max, judged.ratio) == (pytest.approx(3), pytest.approx(0, abs=1e-12))


@pytest.mark.parametrize(
    ("table", "weights", "ratio"),
    [
        (LEADER, [0.547, 0.127, 0.270, 0.056], 0.044),
        (EXPERIENCE, [0.217, 0.717, 0.066], 0.0318),
        (EDUCATION, [0.188, 0.081, 0.731], 0.0559),
        (CHARISMA, [0.743, 0.194, 0.063], 0.0614),
        (AGE, [0.265, 0.672, 0.063], 0.0251),
        (DRINKS, [0.177, 0.019, 0.042, 0.116, 0.190, 0.129, 0.327], 0.022),
    ],
)
def test_published_matrices_give_the_published_weights_and_ratio(table, weights, ratio):
    judged = pairwise_weights(table)

    np.testing.assert_allclose(judged.weights, weights, atol=0.0006)
    assert ratio == pytest.approx(judged.ratio, abs=0.0005)


@pytest.mark.parametrize(
    ("table", "weights", "ratio"),
    [
        (STYLE, [0.1159, 0.2469, 0.0600, 0.5773], 0.161),
        (RELIABILITY, [0.3786, 0.2902, 0.0742, 0.2571], 0.0708),
        (FUEL, [0.3589, 0.2937, 0.0749, 0.2725], 0.0857),
        (CAR_CRITERIA, [0.3196, 0.5584, 0.1220], 0.0158),
    ],
)
def test_the_car_matrices_give_the_figures_recomputed_for_them(table, weights, ratio):
    judged = pairwise_weights(table)

    np.testing.assert_allclose(judged.weights, weights, atol=0.00006)
    assert ratio == pytest.approx(judged.ratio, abs=0.0005)


def test_choosing_a_leader_gives_the_recalled_totals():
    parts = np.column_stack([pairwise_weights(m).weights for m in (EXPERIENCE, EDUCATION, CHARISMA, AGE)])

    expected = [0.358, 0.493, 0.149]
    assert expected == (parts @ pairwise_weights(LEADER).weights).round(3).tolist()


def test_choosing_a_car_gives_the_published_totals():
    # Fuel economy by pairs: .2922 .2767 .0697 .3613 in the tests of the R package MCDA.
    parts = np.column_stack([pairwise_weights(m).weights for m in (STYLE, RELIABILITY, FUEL)])

    expected = [0.2922, 0.2767, 0.0697, 0.3613]
    assert expected == (parts @ pairwise_weights(CAR_CRITERIA).weights).round(4).tolist()


@pytest.mark.parametrize(
    ("table", "lambda_max"), [(LEADER, 4.1184), (DRINKS, 7.1766), (STYLE, 4.4347)], ids=["leader", "drinks", "style"]
)
def test_the_principal_eigenvalue_is_the_recomputed_one(table, lambda_max):
    assert lambda_max == pytest.approx(pairwise_weights(table).lambda_max, abs=0.00006)


def test_the_table_of_random_indices_is_named():
    expected = "Saaty 1980"

    assert expected == pairwise_weights(LEADER).random_index


@pytest.mark.parametrize(("upper", "n", "weights"), [([], 1, [1.0]), (["3"], 2, [0.75, 0.25])])
def test_up_to_two_criteria_nothing_can_disagree(upper, n, weights):
    judged = pairwise_weights(matrix(n, upper))

    np.testing.assert_allclose(judged.weights, weights, rtol=1e-12)
    assert (float(n), 0.0, None, None) == (judged.lambda_max, judged.ratio, judged.worst_pair, judged.fitting)


weight_lists = st.lists(st.floats(0.1, 1.0), min_size=3, max_size=10)


@given(weights=weight_lists)
def test_ratios_of_weights_give_these_weights_back(weights):
    shares = np.array(weights) / np.sum(weights)
    judged = pairwise_weights(shares[:, None] / shares[None, :])

    np.testing.assert_allclose(judged.weights, shares, rtol=1e-8)
    assert abs(judged.ratio) < 1e-8


@given(weights=st.lists(st.floats(0.2, 1.0), min_size=4, max_size=10), pair=st.data())
def test_one_spoilt_comparison_is_named_with_the_value_that_it_had(weights, pair):
    i = pair.draw(st.integers(0, len(weights) - 2))
    j = pair.draw(st.integers(i + 1, len(weights) - 1))
    table = np.array(weights)[:, None] / np.array(weights)[None, :]
    fitting = table[i, j]
    table[i, j] *= 9
    table[j, i] /= 9

    judged = pairwise_weights(table)

    assert (i, j) == judged.worst_pair
    assert fitting == pytest.approx(judged.fitting, rel=1e-6)


@pytest.mark.parametrize("table", [LEADER, DRINKS, STYLE], ids=["leader", "drinks", "style"])
def test_once_the_worst_pair_has_the_value_that_the_rest_imply_it_is_the_ratio_of_the_weights(table):
    judged = pairwise_weights(table)
    i, j = judged.worst_pair
    mended = table.copy()
    mended[i, j], mended[j, i] = judged.fitting, 1 / judged.fitting

    # the other pairs disagree among themselves; what they imply leaves no misfit in this one (Harker 1987, from memory)
    weights = pairwise_weights(mended).weights
    assert judged.fitting == pytest.approx(weights[i] / weights[j], rel=1e-9)


@given(
    values=st.lists(st.sampled_from([1 / 9, 1 / 5, 1 / 2, 1, 3, 7, 9]), min_size=45, max_size=45), n=st.integers(3, 10)
)
def test_any_judgements_give_weights_that_add_up_to_one_and_a_ratio_of_at_least_zero(values, n):
    table = np.ones((n, n))
    for (i, j), value in zip(combinations(range(n), 2), values, strict=False):
        table[i, j], table[j, i] = value, 1 / value

    judged = pairwise_weights(table)

    assert abs(judged.weights.sum() - 1) < 1e-12
    assert judged.ratio >= 0
    assert judged.fitting > 0


@pytest.mark.parametrize(
    "table",
    [np.ones((0, 0)), np.ones((11, 11)), np.ones((2, 3)), np.ones(4), [[1, 2], [2, 1]], [[1, -2], [-0.5, 1]]],
)
def test_what_is_no_matrix_of_comparisons_is_refused(table):
    with pytest.raises(ValueError, match="comparisons"):
        pairwise_weights(table)


@pytest.mark.peers
@pytest.mark.parametrize("table", [LEADER, DRINKS, STYLE], ids=["leader", "drinks", "style"])
def test_ahpy_finds_the_same_weights(table):
    ahpy = pytest.importorskip("ahpy")
    names = "abcdefg"[: len(table)]
    pairs = {(names[i], names[j]): float(table[i, j]) for i, j in combinations(range(len(table)), 2)}

    peer = ahpy.Compare("peer", pairs, precision=6).local_weights

    np.testing.assert_allclose(pairwise_weights(table).weights, [peer[name] for name in names], atol=2e-6)


@pytest.mark.peers
@pytest.mark.parametrize("table", [LEADER, DRINKS, STYLE], ids=["leader", "drinks", "style"])
def test_pymcdm_finds_the_same_weights_and_with_its_other_table_the_same_consistency_index(table):
    subjective = pytest.importorskip("pymcdm.weights.subjective")
    tummala_and_ling = {4: 0.8921, 7: 1.3322}
    saaty_1980 = {4: 0.90, 7: 1.32}
    n = len(table)
    peer = subjective.AHP(matrix=table)

    judged = pairwise_weights(table)

    np.testing.assert_allclose(judged.weights, peer(), atol=1e-6)
    assert peer.get_cr() * tummala_and_ling[n] == pytest.approx(judged.ratio * saaty_1980[n], abs=1e-6)


@pytest.mark.parametrize(
    ("n", "index"),
    [
        (3, 0.58),
        (4, 0.90),
        (5, 1.12),
        (6, 1.24),
        (7, 1.32),
        (8, 1.41),
        (9, 1.45),
        (10, 1.49),
    ],  # Saaty 1980, from memory
)
def test_the_ratio_rests_on_the_random_index_of_its_size(n, index):
    table = np.ones((n, n))
    table[0, 1], table[1, 0] = 9, 1 / 9
    judged = pairwise_weights(table)

    assert pytest.approx((judged.lambda_max - n) / (n - 1) / index) == judged.ratio


def test_judgements_disagree_too_much_from_a_tenth_on():
    assert 0.10 == USUAL_RATIO_LIMIT  # Saaty 1980, from memory
