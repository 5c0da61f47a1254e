"""Which pieces are drawn: fairly, and the same by the same seed."""

from collections import Counter
from types import SimpleNamespace

import numpy as np
from hypothesis import given
from hypothesis import strategies as st

from scorecard.inspection.drawing import Spot, drawn, spots


@given(st.integers(1, 500), st.data())
def test_so_many_pieces_of_the_lot_are_drawn_each_once_and_in_order(lot, data):
    opened, seed = data.draw(st.integers(1, lot)), data.draw(st.integers(0, 2**32))
    pieces = drawn(lot, opened, seed)
    assert (opened, sorted(set(pieces))) == (len(pieces), list(pieces))
    assert set(pieces) <= set(range(1, lot + 1))


def test_one_seed_draws_the_same_again_and_another_seed_others():
    assert (True, False) == (drawn(200, 32, 5) == drawn(200, 32, 5), drawn(200, 32, 5) == drawn(200, 32, 6))


def test_every_piece_is_drawn_about_as_often_as_any_other():
    # 4,000 samples of 5 of 10: each piece in about 2,000; four standard deviations are 4·sqrt(4000·¼) = 126.5
    times = Counter(piece for seed in range(4000) for piece in drawn(10, 5, seed))
    assert (10, True) == (len(times), all(abs(number - 2000) < 127 for number in times.values()))


def test_a_number_on_the_edge_draws_no_piece_too_many(monkeypatch):
    # a piece is drawn below the chance of 1 of 2, not at it; the last one then is drawn, whatever its number
    edge = SimpleNamespace(random=lambda lot: np.array([0.5, 0.0]))
    monkeypatch.setattr(np.random, "default_rng", lambda seed: edge)

    assert (2,) == drawn(2, 1, seed=0)


def test_pieces_are_counted_through_carton_by_carton():
    assert (Spot(carton=1, piece=24), Spot(carton=2, piece=1), Spot(carton=3, piece=2)) == spots([24, 25, 50], 24)


def test_without_cartons_a_piece_keeps_its_number():
    assert (Spot(carton=None, piece=50),) == spots([50], None)
