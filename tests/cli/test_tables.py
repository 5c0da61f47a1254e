"""Plain tables for the terminal: aligned whatever the script, and safe whatever the name."""

from datetime import date

import pytest
from cases import make_case, numbers, rated

from scorecard.assessment import assess
from scorecard.cli.tables import WIDEST, as_text, ranking_table, visible, width_of
from scorecard.criteria import Limit


def table_of(case, most=10):
    return ranking_table(assess(case, as_of=date(2026, 11, 25)), most).splitlines()


def many(number, **more):
    return rated((1,), {f"maker {at}": [at] for at in range(number)}, **more)


def test_columns_are_as_wide_as_their_widest_text():
    assert "a    bb\nccc  d" == as_text([("a", "bb"), ("ccc", "d")])


def test_columns_to_the_right_end_together():
    assert "a     9\nccc  10" == as_text([("a", "9"), ("ccc", "10")], right=frozenset({1}))


@pytest.mark.parametrize(("text", "width"), [("mug", 3), ("陶器", 4), ("e\u0301", 1), ("\u200b", 0)])
def test_a_text_is_as_wide_as_a_terminal_shows_it(text, width):
    assert width == width_of(text)


def test_a_name_cannot_move_the_cursor_or_turn_the_line_round():
    assert "a\ufffd[2Jb\ufffdc" == visible("a\x1b[2Jb\u202ec")


@pytest.mark.parametrize("name", ["m" * 60, "陶" * 60, "m" * WIDEST + "\u0301" * 3])
def test_a_name_takes_no_more_than_its_column(name):
    assert width_of(visible(name)) <= WIDEST


def test_a_name_that_is_cut_says_so():
    assert visible("m" * 60) == "m" * (WIDEST - 1) + "…"


def test_a_name_that_just_fits_is_whole():
    assert "m" * WIDEST == visible("m" * WIDEST)


def test_the_ranking_shows_rank_score_band_and_what_is_known():
    case = rated((3, 1), {"Fernhill": [80, 40], "Brightholm": [20, (20, 60)]}, unknown="worst")
    expected = [
        "Rank  Maker       Score      Could be  Known",
        "   1  Fernhill     70.0          70.0  100 of 100",
        "   2  Brightholm   20.0  20.0 to 30.0  100 of 100",
    ]
    assert expected == table_of(case)


def test_no_more_makers_are_shown_than_asked_for():
    assert "… and 2 more on the page" == table_of(many(5), most=3)[-1]


def test_a_ruled_out_maker_stands_below_with_every_reason():
    criteria = [numbers("rating", 1, limit=Limit(at_least=4)), numbers("price", 1, limit=Limit(at_most=9))]
    case = make_case(criteria, {"Fernhill": [5, 5], "Brightholm": [3, 10]})
    expected = "Ruled out: Brightholm – Rating: 3 is below the limit of 4; Price: 10 is above the limit of 9"
    assert expected == table_of(case)[-1]


@pytest.mark.parametrize(("most", "last"), [(3, "… and 2 others ruled out"), (4, "… and 1 other ruled out")])
def test_no_more_ruled_out_makers_are_shown_than_asked_for(most, last):
    assert last == table_of(many(6, limit=Limit(at_least=5)), most)[-1]


def test_where_nobody_is_ranked_there_is_no_table():
    assert ["Ruled out: maker 0 – C1: 0 is below the limit of 5"] == table_of(many(1, limit=Limit(at_least=5)))
