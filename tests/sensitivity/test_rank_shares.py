"""Shares of ranks over random weightings, against exact fractions.

The three suppliers are a textbook-style exercise, "Jolly Company" [stored]; every expected share is derived in exact
fractions [derived]. A share found in so many draws may be 4 standard errors off.
"""

import tracemalloc
from itertools import count

import numpy as np
import pytest
from published import SUPPLIERS

from scorecard.sensitivity import rank_shares as module
from scorecard.sensitivity.rank_shares import first_shares, rank_shares_of_each
from scorecard.sensitivity.weightings import Weightings


def rank_shares(low, high, stream, **more):
    """Return the rank shares of one stream alone."""
    (found,) = rank_shares_of_each(low, high, [stream], **more)
    return found


UNITS_AND_MIDDLE = np.vstack([np.eye(3), np.full(3, 0.5)]) * 100


def weightings(kind, *weights, **more):
    return Weightings(kind=kind, shares=np.array(weights) / sum(weights), **more)


def found(points, kind, *weights, **more):
    points = np.array(points, dtype=float)
    return rank_shares(points, points, weightings(kind, *weights, **more))


def agrees(expected, result):
    exact = np.array(expected, dtype=float)
    errors = np.sqrt(exact * (1 - exact) / result.draws)
    return bool((np.abs(result.shares - exact) <= 4 * errors + 1e-15).all())


def test_two_criteria_share_ranks_as_exact_fractions_say():
    expected = [[2 / 5, 1 / 10, 1 / 2], [2 / 5, 1 / 10, 1 / 2], [1 / 5, 4 / 5, 0]]
    assert agrees(expected, found([[100, 0], [0, 100], [60, 60]], "any", 1, 1))


def test_three_criteria_share_ranks_as_exact_fractions_say():
    unit = [1 / 4, 1 / 12, 1 / 3, 1 / 3]
    assert agrees([unit, unit, unit, [1 / 4, 3 / 4, 0, 0]], found(UNITS_AND_MIDDLE, "any", 1, 1, 1))


def test_three_criteria_in_order_share_ranks_as_exact_fractions_say():
    expected = [[3 / 4, 1 / 4, 0, 0], [0, 0, 1, 0], [0, 0, 0, 1], [1 / 4, 3 / 4, 0, 0]]
    assert agrees(expected, found(UNITS_AND_MIDDLE, "ordered", 3, 2, 1))


def test_suppliers_share_ranks_as_exact_fractions_say():
    expected = [[1 / 32, 27 / 160, 4 / 5], [31 / 32, 1 / 32, 0], [0, 4 / 5, 1 / 5]]
    assert agrees(expected, found(SUPPLIERS, "any", 1, 1, 1, 1))


def test_suppliers_without_service_share_ranks_as_exact_fractions_say():
    expected = [[1 / 8, 11 / 40, 3 / 5], [7 / 8, 1 / 8, 0], [0, 3 / 5, 2 / 5]]
    assert agrees(expected, found(SUPPLIERS[:, :3], "any", 1, 1, 1))


def test_suppliers_without_service_in_order_share_ranks_as_exact_fractions_say():
    expected = [[1 / 4, 61 / 140, 11 / 35], [3 / 4, 1 / 4, 0], [0, 11 / 35, 24 / 35]]
    assert agrees(expected, found(SUPPLIERS[:, :3], "ordered", 3, 2, 1))


@pytest.mark.parametrize("criteria", [3, 4, 5, 6, 7, 12])
def test_a_sliver_of_the_weightings_is_found_as_often_as_it_is_large(criteria):
    # One maker best on each criterion alone, each first in 1 / 2^(n-1), and one halfway on all, first in the rest.
    points = np.vstack([np.eye(criteria), np.full(criteria, 0.5)]) * 100
    sliver = 1 / 2 ** (criteria - 1)
    result = found(points, "any", *[1] * criteria)
    firsts = type(result)(draws=result.draws, half_width=0.0, shares=result.shares[:, 0])
    assert agrees([sliver] * criteria + [1 - criteria * sliver], firsts)


class PlainUniformWeightings:
    """The usual mistake: uniform numbers over their sum, which favour the middle of the simplex."""

    kind, counted = "any", np.arange(3)

    def blocks(self, rows):
        random = np.random.default_rng(1)
        for _ in count():
            drawn = random.random((rows, 3))
            yield drawn / drawn.sum(axis=1, keepdims=True)

    def uniforms(self, columns, rows):
        for _ in count():
            yield np.empty((rows, columns))


def test_uniform_numbers_over_their_sum_would_be_found_out():
    unit = [1 / 4, 1 / 12, 1 / 3, 1 / 3]
    wrong = rank_shares(UNITS_AND_MIDDLE, UNITS_AND_MIDDLE, PlainUniformWeightings())
    assert not agrees([unit, unit, unit, [1 / 4, 3 / 4, 0, 0]], wrong)
    assert pytest.approx(0.5, abs=0.01) == wrong.shares[3, 0]


def test_near_weightings_of_two_criteria_share_ranks_as_exact_fractions_say():
    # The first weight is uniform from 0.4 to 0.6; the first maker leads above 0.55.
    result = found([[100, 0], [55, 55]], "near", 1, 1, spread=0.2)
    assert agrees([[1 / 4, 3 / 4], [3 / 4, 1 / 4]], result)


def test_near_shares_are_those_of_the_any_weightings_that_happen_to_be_near():
    random = np.random.default_rng(4)
    points, shares = np.array([[64.0, 30, 50], [50, 60, 52], [46, 62, 58]]), np.array([0.5, 0.2, 0.3])
    drawn = random.dirichlet(np.ones(3), 2_000_000)
    near = drawn[(np.abs(drawn - shares) <= 0.5 * shares).all(axis=1)]
    happening = np.bincount((near @ points.T).argmax(axis=1), minlength=3) / len(near)
    result = rank_shares(points, points, Weightings(kind="near", shares=shares, spread=0.5))
    error = np.sqrt(happening * (1 - happening) * (1 / len(near) + 1 / result.draws))
    assert (happening > 0.05).sum() >= 2  # or the comparison would say little
    assert (np.abs(result.shares[:, 0] - happening) <= 4 * error + 3 / len(near)).all()


def test_three_identical_makers_all_share_rank_1():
    result = found([[50, 50], [50, 50], [50, 50]], "any", 1, 1)
    assert result.shares.tolist() == [[1, 0, 0]] * 3


def test_the_next_after_identical_makers_has_the_rank_that_they_leave():
    result = found([[50, 50], [70, 70], [50, 50], [40, 40]], "any", 1, 1)
    assert result.shares.tolist() == [[0, 1, 0, 0], [1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 0, 1]]


def test_makers_apart_by_rounding_alone_share_a_rank():
    result = found([[50, 50], [50 + 1e-13, 50 - 1e-13]], "any", 1, 1)
    assert result.shares.tolist() == [[1, 0], [1, 0]]


def test_makers_apart_on_a_criterion_of_weight_0_alone_share_a_rank():
    assert found([[50, 0], [50, 90]], "any", 1, 0).shares.tolist() == [[1, 0], [1, 0]]


def test_one_criterion_of_positive_share_gives_one_ranking():
    result = found([[50, 0], [70, 0], [60, 99]], "any", 1, 0)
    assert result.shares.tolist() == [[0, 0, 1], [1, 0, 0], [0, 1, 0]]


def test_scores_that_a_weighting_makes_level_share_the_better_rank():
    # A spread so small that the weighting hardly moves, and the first two stay level within a billionth.
    result = found([[60, 40], [40, 60], [49, 49], [10, 80]], "near", 1, 1, spread=1e-12)
    assert result.shares.tolist() == [[1, 0, 0, 0], [1, 0, 0, 0], [0, 0, 1, 0], [0, 0, 0, 1]]


def test_level_scores_of_doubled_makers_leave_their_ranks():
    result = found([[60, 40], [60, 40], [40, 60], [49, 49]], "near", 1, 1, spread=1e-12)
    assert result.shares[:, [0, 3]].tolist() == [[1, 0], [1, 0], [1, 0], [0, 1]]


@pytest.mark.parametrize("points", [[[90, 90], [60, 40], [40, 60]], [[60, 40], [40, 60], [90, 90]]])
def test_scores_level_behind_the_first_share_their_rank_whatever_memory_held(points, monkeypatch):
    monkeypatch.setattr(module.np, "empty", lambda shape, dtype=float: np.full(shape, 2**62, dtype))
    result = found(points, "near", 1, 1, spread=1e-12)
    assert result.shares.tolist() == [[1, 0, 0] if point == [90, 90] else [0, 1, 0] for point in points]


def test_makers_apart_by_more_than_a_billionth_do_not_share_a_rank():
    assert found([[50, 50], [50 + 4e-9, 50 + 4e-9]], "any", 1, 1).shares.tolist() == [[0, 1], [1, 0]]


def test_a_lone_maker_is_always_first_in_as_few_draws_as_there_may_be():
    result = found([[50, 20]], "any", 1, 1)
    assert (result.shares.tolist(), result.draws) == ([[1]], 16_384)


def test_an_unknown_answer_is_drawn_uniformly():
    low, high = np.array([[30.0], [0.0]]), np.array([[30.0], [100.0]])
    assert agrees([[0.3, 0.7], [0.7, 0.3]], rank_shares(low, high, weightings("any", 1)))


def test_several_unknown_answers_are_drawn_independently():
    # Three makers unknown from 0 to 100, one known at 50: it leads in 1/8, and the others share the rest.
    low, high = np.array([[0.0], [0.0], [50.0], [0.0]]), np.array([[100.0], [100.0], [50.0], [100.0]])
    firsts = first_shares(low, high, weightings("any", 1))
    assert agrees([7 / 24, 7 / 24, 1 / 8, 7 / 24], firsts)


def test_an_unknown_answer_is_drawn_with_its_weight():
    # x·w beats 50·(1-w) with x from 0 to 100 and w from 0 to 1 in 1 - E[1 / (1 + x/50)] = 1 - ln(3) / 2.
    low, high = np.array([[0.0, 0.0], [0.0, 50.0]]), np.array([[100.0, 0.0], [0.0, 50.0]])
    ahead = 1 - np.log(3) / 2
    result = rank_shares(low, high, weightings("any", 1, 1))
    assert agrees([[ahead, 1 - ahead], [1 - ahead, ahead]], result)


def test_an_unknown_answer_on_a_criterion_of_weight_0_changes_nothing():
    low, high = np.array([[30.0, 0.0], [30.0, 5.0]]), np.array([[30.0, 100.0], [30.0, 5.0]])
    assert rank_shares(low, high, weightings("any", 1, 0)).shares.tolist() == [[1, 0], [1, 0]]


def test_an_answer_open_by_less_than_a_point_is_drawn():
    low, high = np.array([[50.0], [50.25]]), np.array([[50.5], [50.25]])
    assert agrees([[0.5, 0.5], [0.5, 0.5]], rank_shares(low, high, weightings("any", 1)))


@pytest.mark.parametrize("most", [[100.0, 100.0], [0.0, 100.0], [0.0, 0.5]])
def test_makers_alike_but_for_open_answers_do_not_share_a_rank(most):
    low, high = np.zeros((2, 2)), np.array([most, most])
    assert agrees([[0.5, 0.5], [0.5, 0.5]], rank_shares(low, high, weightings("any", 1, 1)))


@pytest.mark.parametrize("kind", ["any", "ordered", "near"])
def test_the_size_of_the_blocks_changes_nothing(kind, monkeypatch):
    random = np.random.default_rng(2)
    low = random.random((6, 4)) * 60
    high = low + 30 * (random.random((6, 4)) < 0.3)
    stream = weightings(kind, 4, 3, 2, 1)
    before = rank_shares(low, high, stream).shares
    monkeypatch.setattr(module, "SCORES_AT_ONCE", 2**12)
    assert before.tolist() == rank_shares(low, high, stream).shares.tolist()


def test_just_as_many_draws_are_made_as_half_a_point_needs():
    # 1.96² · ¼ / 0.005² = 38,416, rounded up to whole blocks of 2,048
    result = found([[100, 0], [0, 100]], "any", 1, 1)
    assert (result.draws, result.half_width <= 0.005) == (38_912, True)


@pytest.mark.parametrize("kinds", [("any", "ordered", "near"), ("ordered", "any"), ("near", "ordered")])
def test_streams_drawn_together_give_what_each_gives_alone(kinds):
    random = np.random.default_rng(3)
    low = random.random((7, 4)) * 60
    high = low + 30 * (random.random((7, 4)) < 0.3)
    streams = [weightings(kind, 4, 3, 2, 1, seed=5) for kind in kinds]
    together = rank_shares_of_each(low, high, streams, target=0.006)
    alone = [rank_shares(low, high, stream, target=0.006) for stream in streams]
    assert [one.shares.tolist() for one in together] == [one.shares.tolist() for one in alone]
    assert [(one.draws, one.half_width) for one in together] == [(one.draws, one.half_width) for one in alone]


def test_a_stream_with_enough_draws_is_not_drawn_further_with_the_others():
    # In this order the first always leads; over any weighting it does in half, which takes 38,416 draws to know.
    points = np.array([[100.0, 0.0], [0.0, 100.0]])
    streams = [weightings("ordered", 2, 1), weightings("any", 2, 1)]
    found = rank_shares_of_each(points, points, streams)
    assert [one.draws for one in found] == [16_384, 38_912]


def test_the_half_width_is_the_widest_of_all_shares():
    result = found([[100, 0], [0, 100], [60, 60]], "any", 1, 1)
    assert (
        pytest.approx(1.96 * np.sqrt((result.shares * (1 - result.shares)).max() / result.draws)) == result.half_width
    )


def test_a_finer_target_takes_more_draws_until_it_is_met():
    # 1.96² · ¼ / 0.002² = 240,100
    points = np.array([[100.0, 0.0], [0.0, 100.0]])
    result = rank_shares(points, points, weightings("any", 1, 1), target=0.002)
    assert (result.draws, result.half_width <= 0.002) == (241_664, True)
    assert result.shares.sum(axis=1).tolist() == [1, 1]


def test_the_draws_wanted_are_those_that_a_share_as_found_needs():
    # 1.96² · ¼ · ¾ / 0.005² = 28,812, rounded up to whole blocks of 2,048
    assert module._draws_wanted(np.array([[4096, 12288], [12288, 4096]]), 16384, 0.005) == 30_720


def test_draws_end_at_2_to_the_20th():
    points = np.array([[100.0, 0.0], [0.0, 100.0]])
    assert rank_shares(points, points, weightings("any", 1, 1), target=1e-6).draws == 2**20


@pytest.mark.parametrize(("makers", "target"), [(30, 1e-6), (200, 0.005)])
def test_no_number_of_draws_needs_more_than_16_mib(makers, target):
    points = np.random.default_rng(0).random((makers, 8)) * 100
    tracemalloc.start()
    rank_shares(points, points, weightings("any", *[1] * 8), target=target)
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert peak <= 16 * 2**20


def test_first_shares_are_those_of_rank_1():
    points = np.random.default_rng(6).random((40, 6)) * 100
    stream = weightings("ordered", 6, 5, 4, 3, 2, 1)
    firsts = first_shares(points, points, stream, draws=65_536)
    usual = rank_shares(points, points, stream)
    as_many = rank_shares(
        points, points, stream, target=usual.half_width * np.sqrt(usual.draws / (firsts.draws - 1024))
    )
    assert as_many.draws == firsts.draws == 65_536
    assert pytest.approx(as_many.shares[:, 0], abs=1e-4) == firsts.shares


def test_identical_makers_share_being_first():
    points = np.array([[50.0, 50.0], [50.0, 50.0], [40.0, 40.0]])
    assert first_shares(points, points, weightings("any", 1, 1)).shares.tolist() == [1, 1, 0]


def test_makers_alike_to_nine_decimals_share_being_first_among_others():
    points = np.array([[40.0, 40], [50, 50], [50, 50], [50, 50 + 4e-10], [50, 50], [45, 45]])
    assert first_shares(points, points, weightings("any", 1, 1)).shares.tolist() == [0, 1, 1, 1, 1, 0]


def test_more_makers_than_a_block_holds_have_a_block_all_the_same(monkeypatch):
    monkeypatch.setattr(module, "SCORES_AT_ONCE", 1)
    points = np.array([[50.0, 50.0], [40.0, 40.0]])
    assert first_shares(points, points, weightings("any", 1, 1)).shares.tolist() == [1, 0]


def test_first_shares_of_thousands_of_makers_add_up():
    points = np.random.default_rng(6).random((5000, 3)) * 100
    firsts = first_shares(points, points, weightings("any", 1, 1, 1))
    assert (firsts.draws, pytest.approx(1)) == (16_384, firsts.shares.sum())


def test_open_answers_added_one_by_one_come_to_the_same(monkeypatch):
    low = np.array([[50.0, 20, 0], [30, 30, 30], [0, 60, 10]])
    high = np.array([[50.0, 90, 40], [30, 80, 30], [100, 60, 10]])
    stream = weightings("any", 3, 2, 1, seed=4)
    at_once = rank_shares(low, high, stream)
    monkeypatch.setattr(module, "SPREAD_AT_MOST", 0)

    assert (at_once.shares == rank_shares(low, high, stream).shares).all()
