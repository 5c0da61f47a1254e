"""Random weightings: on which part of the simplex they lie, that they are uniform there, and that they are repeatable.

That the weights uniform in an order have the rank order centroid as their mean: Edwards and Barron (1994),
Organizational Behavior and Human Decision Processes 60, 306-325 [memory].
"""

from itertools import islice
from types import SimpleNamespace

import numpy as np
import pytest

from scorecard.sensitivity.weightings import KINDS, Weightings, _fitting, blocks_of_each

SHARES = np.array([0.1, 0.4, 0.0, 0.3, 0.2])
TIED = np.array([0.2, 0.3, 0.2, 0.3])
CENTROID_OF_4 = np.array([25 / 48, 13 / 48, 7 / 48, 1 / 16])
DRAWS = 65536


def drawn(kind, shares=SHARES, rows=4096, draws=DRAWS, **more):
    return np.concatenate(list(islice(Weightings(kind=kind, shares=shares, **more).blocks(rows), draws // rows)))


def within_4_errors(expected, sample):
    return bool((np.abs(sample.mean(axis=0) - expected) <= 4 * sample.std(axis=0) / np.sqrt(len(sample))).all())


@pytest.mark.parametrize("kind", KINDS)
def test_weights_are_not_negative_and_add_up_to_1(kind):
    found = drawn(kind)
    assert (found >= 0).all()
    assert pytest.approx(np.ones(DRAWS), abs=1e-12) == found.sum(axis=1)


@pytest.mark.parametrize("kind", KINDS)
def test_there_is_a_column_for_each_positive_share(kind):
    assert drawn(kind).shape == (DRAWS, 4)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("shares", [SHARES, TIED])
def test_the_stream_does_not_depend_on_the_size_of_its_blocks(kind, shares):
    assert (drawn(kind, shares, rows=32, draws=4096) == drawn(kind, shares, rows=4096, draws=4096)).all()


@pytest.mark.parametrize("kind", KINDS)
def test_another_seed_gives_another_stream(kind):
    assert (drawn(kind, seed=1)[0] != drawn(kind, seed=2)[0]).all()


def test_the_uniform_numbers_do_not_depend_on_the_size_of_their_blocks():
    stream = Weightings(kind="any", shares=SHARES)
    small = np.concatenate([block.copy() for block in islice(stream.uniforms(3, 2), 8)])
    assert (small == next(stream.uniforms(3, 16))).all()


def test_the_streams_are_those_of_the_seed_and_their_number():
    # The exponential of a uniform number u is -ln(1 - u); numpy's generator of the seed and 0 gives the weightings.
    numbers = -np.log(1 - np.random.default_rng((1, 0)).random((32, 2)))
    expected = numbers / numbers.sum(axis=1, keepdims=True)
    assert pytest.approx(expected, abs=1e-12) == drawn("any", np.array([0.7, 0.3]), rows=32, draws=32)
    uniforms = next(Weightings(kind="any", shares=SHARES).uniforms(3, 32))
    assert (uniforms == np.random.default_rng((1, 1)).random((32, 3))).all()


@pytest.mark.parametrize("kind", KINDS)
def test_a_single_criterion_of_positive_share_has_weight_1(kind):
    assert drawn(kind, np.array([0.0, 1.0])).tolist() == [[1.0]] * DRAWS


def test_a_single_criterion_has_weight_1_even_where_0_is_drawn(monkeypatch):
    generator = SimpleNamespace(random=np.zeros)
    monkeypatch.setattr(np.random, "default_rng", lambda _: generator)
    with np.errstate(invalid="ignore"):
        assert drawn("any", np.array([0.0, 1.0]), rows=2, draws=2).tolist() == [[1.0], [1.0]]


def test_any_weightings_have_the_moments_of_the_uniform_simplex():
    # Each weight has mean 1/n, each square 2/(n(n+1)), each product of two 1/(n(n+1)).
    found = drawn("any")
    products = np.column_stack([found, found**2, found[:, :1] * found[:, 1:]])
    assert within_4_errors([1 / 4] * 4 + [1 / 10] * 4 + [1 / 20] * 3, products)


def test_ordered_weightings_keep_the_stated_order():
    found = drawn("ordered")
    assert (np.diff(found[:, [1, 2, 3, 0]], axis=1) <= 0).all()


def test_ordered_weightings_have_the_rank_order_centroid_as_mean():
    assert within_4_errors(CENTROID_OF_4, drawn("ordered")[:, [1, 2, 3, 0]])


def test_equal_shares_have_no_order_between_them():
    assert within_4_errors([0.5, 0.5], (lambda w: w[:, [0, 1]] > w[:, [2, 3]])(drawn("ordered", TIED)).astype(float))


def test_the_orders_of_two_groups_of_equal_shares_have_nothing_to_do_with_one_another():
    found = drawn("ordered", TIED)
    both = (found[:, 0] > found[:, 2]) & (found[:, 1] > found[:, 3])
    assert within_4_errors(0.25, both.astype(float))


def test_equal_shares_each_take_the_mean_of_the_places_that_they_share():
    high, low = CENTROID_OF_4[:2].mean(), CENTROID_OF_4[2:].mean()
    assert within_4_errors([low, high, low, high], drawn("ordered", TIED))


def test_shares_apart_by_rounding_alone_are_equal():
    shares = TIED + np.array([1e-16, 0, 0, 0])
    assert (drawn("ordered", shares) == drawn("ordered", TIED)).all()


def test_shares_a_trillionth_apart_have_no_order_and_further_apart_they_have():
    for step, expected in ((1e-12, 0.5), (1.01e-12, 1.0)):
        found = drawn("ordered", np.array([1 - 3 * step, 2 * step, step]))
        assert within_4_errors([expected], (found[:, [1]] > found[:, [2]]).astype(float))


def test_all_equal_shares_make_ordered_weightings_any_weightings():
    shares = np.full(5, 0.2)
    assert (drawn("ordered", shares) == drawn("any", shares)).all()


def test_ordered_weightings_are_the_any_weightings_that_happen_to_be_in_order():
    any_kind = drawn("any", TIED, draws=8 * DRAWS)
    happening = any_kind[np.minimum(any_kind[:, 1], any_kind[:, 3]) >= np.maximum(any_kind[:, 0], any_kind[:, 2])]
    ordered = drawn("ordered", TIED)
    error = np.sqrt(happening.var(axis=0) / len(happening) + ordered.var(axis=0) / len(ordered))
    for power in (1, 2):
        gap = np.abs((happening**power).mean(axis=0) - (ordered**power).mean(axis=0))
        assert (gap <= 4 * error).all()


def test_near_weightings_stay_within_their_spread():
    found, shares = drawn("near", spread=0.25), SHARES[SHARES > 0]
    assert (np.abs(found - shares) <= 0.25 * shares + 1e-15).all()


def test_near_weightings_fill_their_spread():
    found, shares = drawn("near", spread=0.25), SHARES[SHARES > 0]
    assert (np.abs(found - shares).max(axis=0) >= 0.245 * shares).all()


def test_two_near_weights_are_uniform_on_their_stretch():
    # Shares 0.5 and 0.5 with a spread of 0.2: the first is uniform from 0.4 to 0.6, its variance 0.2² / 12.
    first = drawn("near", np.array([0.5, 0.5]), spread=0.2)[:, 0]
    assert within_4_errors([0.5, 0.2**2 / 12], np.column_stack([first, (first - 0.5) ** 2]))


def test_three_near_weights_are_uniform_on_their_hexagon():
    # With reach h the first weight moved by x leaves the second a stretch of 2h - |x|, which adds up to 3h² in all and
    # to 5h²/8 for x from h/2 to h: 5/24 of the whole.
    first = drawn("near", np.full(3, 1 / 3), spread=0.3)[:, 0]
    outer = (first - 1 / 3) > 0.5 * 0.3 / 3
    assert within_4_errors(5 / 24, outer.astype(float))


@pytest.mark.parametrize("spread", [0.25, 1.0])
def test_near_weightings_are_the_any_weightings_that_happen_to_be_near(spread):
    shares = np.array([0.5, 0.2, 0.3])
    any_kind = drawn("any", shares, draws=16 * DRAWS)
    happening = any_kind[(np.abs(any_kind - shares) <= spread * shares).all(axis=1)]
    near = drawn("near", shares, spread=spread)
    for power in (1, 2, 3):
        one, other = (happening - shares) ** power, (near - shares) ** power
        error = np.sqrt(one.var(axis=0) / len(one) + other.var(axis=0) / len(other))
        assert (np.abs(one.mean(axis=0) - other.mean(axis=0)) <= 4 * error).all()


def test_a_weighting_at_the_end_of_the_spread_is_near():
    # The drawn 0 and 1 move the second weight by a tenth down and up.
    found = _fitting(np.array([0.5, 0.5]), np.array([0.1, 0.1]), np.array([[0.0], [1.0]]))
    assert pytest.approx([0.6, 0.4, 0.4, 0.6]) == found.ravel()


@pytest.mark.parametrize("shares", [np.full(15, 1 / 15), np.array([0.9] + [0.01] * 10), np.array([0.48, 0.48, 0.04])])
def test_near_weightings_are_drawn_without_long_waiting(shares):
    uniforms = np.random.default_rng(1).random((DRAWS, len(shares) - 1))
    assert len(_fitting(shares, 0.25 * shares, uniforms)) >= DRAWS / np.sqrt(len(shares)) / 1.1


@pytest.mark.parametrize("spread", [0, -0.1, 1.5])
def test_a_spread_beyond_0_to_1_is_refused(spread):
    with pytest.raises(ValueError, match="spread"):
        Weightings(kind="near", shares=SHARES, spread=spread)


def test_shares_of_nothing_are_refused():
    with pytest.raises(ValueError, match="share"):
        Weightings(kind="any", shares=np.zeros(3))


@pytest.mark.parametrize("kinds", [KINDS, ("ordered", "any"), ("near", "ordered"), ("any",)])
def test_streams_drawn_together_are_those_drawn_alone(kinds):
    streams = [Weightings(kind=kind, shares=SHARES, seed=3) for kind in kinds]
    for stream, blocks in zip(streams, blocks_of_each(streams, 256), strict=True):
        found, alone = list(islice(blocks, 3)), list(islice(stream.blocks(256), 3))
        assert np.array_equal(alone, found)
