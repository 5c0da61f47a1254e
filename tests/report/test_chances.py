import numpy as np
from cases import make_case, numbers

from scorecard.report.chances import chances_of, of_draws
from scorecard.sensitivity.rank_shares import RankShares

TWO = [numbers("rating", 30), numbers("price", 10)]


def test_a_leader_on_everything_leads_in_all_weightings(assessed):
    found = chances_of(assessed(make_case(TWO, {"Brightholm": [9, 9], "Cressel": [5, 5]})))
    assert [("Brightholm", ("100.0", "100.0", "100.0"))] == [(row.maker, row.figures) for row in found.rows]


def test_one_that_some_weighting_puts_first_yet_never_led_is_told_of(assessed):
    rows = {"Brightholm": [90, 10], "Cressel": [10, 90], "Dunmorrow": [50.000001, 50.000001]}
    expected = "1 other never led in these draws, yet some weighting puts it first."
    assert expected == chances_of(assessed(make_case(TWO, rows))).rest


def test_one_that_can_at_best_share_first_place_is_told_of_as_such(assessed):
    rows = {"Brightholm": [90, 90], "Cressel": [90, 10]}
    expected = "1 other never led in these draws; as the answers count now, it can at best share first place."
    assert expected == chances_of(assessed(make_case(TWO, rows))).rest


def test_nothing_is_drawn_for_a_maker_alone(assessed):
    assert () == chances_of(assessed(make_case(TWO, {"Brightholm": [9, 9]}))).rows


def test_never_in_65536_draws_is_under_a_tenth_of_100():
    assert "under 0.1" == of_draws(0.0, RankShares(draws=65536, half_width=0.004, shares=np.zeros((1, 1))))


def test_no_figure_is_finer_than_the_draws_allow():
    assert "61" == of_draws(0.613, RankShares(draws=40960, half_width=0.0049, shares=np.zeros((1, 1))))


def test_how_often_a_maker_beyond_those_drawn_leads_is_told(assessed):
    rows = {f"Maker {number}": [90 - number / 10, 50] for number in range(250)} | {"Last": [0, 60]}
    told = chances_of(assessed(make_case(TWO, rows))).rest
    assert (
        "These draws are of the 200 best makers; among all, as the answers count now, one of the others leads" in told
    )
    assert told.endswith(" of 100 weightings.")


TEN = [numbers(f"c{at}", 10) for at in range(10)]


def test_a_small_move_beside_a_leader_that_nearly_always_leads_is_explained(assessed):
    """Ahead by 6 points; what moves from the first criterion to the last takes 140 points of a share: 6 / 140."""
    rows = {"Brightholm": [100, *[50] * 9], "Cressel": [0, *[50] * 8, 90]}
    told = chances_of(assessed(make_case(TEN, rows))).both
    assert "This and the verdict are both true: errors of up to 25% in each share" in told
    assert told.endswith(
        "Brightholm nearly always leads; but one particular move, of 4.3 of 100, brings Cressel level."
    )


def test_nothing_is_explained_where_another_often_leads_near_these_weights(assessed):
    rows = {"Brightholm": [80, 40], "Cressel": [40, 80]}
    assert chances_of(assessed(make_case([numbers("rating", 52), numbers("price", 48)], rows))).both is None


def test_nothing_is_explained_where_much_weight_must_move(assessed):
    """Ahead by 10 points; the widest move takes 140 points of a share: 10 / 140, more than 0.05."""
    rows = {"Brightholm": [100, 90, *[50] * 8], "Cressel": [0, 50, *[50] * 7, 90]}
    assert chances_of(assessed(make_case(TEN, rows))).both is None


def test_nothing_is_explained_where_two_are_level(assessed):
    rows = {"Brightholm": [80, *[50] * 9], "Cressel": [80, *[50] * 9]}
    assert chances_of(assessed(make_case(TEN, rows))).both is None
