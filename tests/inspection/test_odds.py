"""How likely a bad lot slips through: published figures, an independent computation, and laws."""

from fractions import Fraction
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.inspection.odds import most_faulty, slips_through

ENDLESS = 100_000_000  # so large a lot that drawing without putting back is as drawing with it


# Montgomery, Introduction to Statistical Quality Control, the operating characteristic of the plan n 89, c 2
# [plan seen; figures memory, and worked out again]
@pytest.mark.parametrize(("percent", "published"), [(0.5, 0.9897), (1, 0.9397), (2, 0.7366), (5, 0.1721)])
def test_the_operating_characteristic_is_the_published_one(percent, published):
    chance = slips_through(ENDLESS, round(ENDLESS * percent / 100), 89, 2)
    assert pytest.approx(published, abs=6e-5) == float(chance)


def test_the_textbook_figure_of_80_opened_and_1_accepted():
    # Operations Management, the supplement on acceptance sampling: 0.809 at 1 of 100, by Poisson
    assert pytest.approx(0.809, abs=5e-4) == float(slips_through(ENDLESS, ENDLESS // 100, 80, 1))


@pytest.mark.parametrize(("chance", "percent"), [(0.95, 1.81), (0.50, 8.25), (0.10, 18.1)])  # n 20, c 1 [derived]
def test_the_three_points_of_the_curve_of_20_opened_and_1_accepted(chance, percent):
    assert pytest.approx(chance, abs=1e-3) == float(slips_through(ENDLESS, round(ENDLESS * percent / 100), 20, 1))


@pytest.mark.peers
@given(st.data())
def test_scipy_finds_the_same(data):
    stats = pytest.importorskip("scipy.stats")
    lot = data.draw(st.integers(1, 400))
    faulty, opened = data.draw(st.integers(0, lot)), data.draw(st.integers(0, lot))
    accept = data.draw(st.integers(0, 22))
    expected = stats.hypergeom(lot, faulty, opened).cdf(accept)
    assert pytest.approx(expected, abs=1e-9) == float(slips_through(lot, faulty, opened, accept))


def test_counting_every_sample_gives_the_same():
    samples = list(combinations(range(9), 4))  # pieces 0, 1 and 2 are faulty
    let_through = sum(sum(piece < 3 for piece in sample) <= 1 for sample in samples)
    assert Fraction(let_through, len(samples)) == slips_through(9, 3, 4, 1)


@given(st.integers(1, 300), st.data())
def test_more_faulty_pieces_never_slip_through_more_easily(lot, data):
    faulty, opened = data.draw(st.integers(0, lot - 1)), data.draw(st.integers(0, lot))
    accept = data.draw(st.integers(0, 10))
    assert slips_through(lot, faulty + 1, opened, accept) <= slips_through(lot, faulty, opened, accept)


@given(st.integers(1, 300), st.data())
def test_opening_all_lets_nothing_slip_through(lot, data):
    faulty, accept = data.draw(st.integers(0, lot)), data.draw(st.integers(0, 10))
    assert (1 if faulty <= accept else 0) == slips_through(lot, faulty, lot, accept)


@given(st.integers(1, 250), st.data())
def test_the_most_that_a_lot_may_hold_is_where_doubt_begins(lot, data):
    opened = data.draw(st.integers(0, lot))
    found = data.draw(st.integers(0, opened))
    most, doubt = most_faulty(lot, opened, found), Fraction(1, 20)
    assert found <= most <= found + lot - opened
    assert slips_through(lot, most, opened, found) >= doubt
    assert most == found + lot - opened or slips_through(lot, most + 1, opened, found) < doubt


def test_a_chance_of_just_the_doubt_is_still_possible():
    # of 20 pieces 19 are opened: one faulty piece is the last one in 1 of 20 samples
    assert 1 == most_faulty(20, 19, 0)


@pytest.mark.parametrize(("lot", "faulty", "opened"), [(10, 11, 5), (10, 5, 11), (10, -1, 5), (10, 5, -1)])
def test_more_than_there_is_cannot_be(lot, faulty, opened):
    with pytest.raises(ValueError, match="more than the lot"):
        slips_through(lot, faulty, opened, 0)
