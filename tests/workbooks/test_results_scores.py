"""The sheet Scores: ranks by the rule of the calculation, bands, known shares."""

import pytest
from cases import make_case, numbers
from result_books import lines, opened, retyped, values, varied_case, written


@pytest.mark.office
def test_scores_within_a_billionth_of_the_best_of_their_group_are_level(recalc):
    # Birch is level with Ash; Cedar is so with Birch, but not with Ash, the best of the group.
    hair = 0.7e-9
    makers = {"Cedar": [50 - 2 * hair], "Birch": [50 - hair], "Ash": [50], "Elder": [1]}

    again = recalc(retyped(written(make_case([numbers("work", 1)], makers)), []))

    assert [(1, "Birch"), (1, "Ash"), (3, "Cedar"), (4, "Elder")] == list(lines(again["Shortlist"], "GH"))


def test_makers_stand_in_the_order_of_rank_with_their_rows():
    sheet = values(written(make_case([numbers("work", 1)], {"Ash": [10], "Birch": [20]})))["Scores"]

    assert [(1, "Birch", 20, 3), (2, "Ash", 10, 2)] == list(lines(sheet, "ABCH"))


def test_the_band_and_the_known_share_are_stored():
    case = make_case([numbers("work", 3, unknown="middle"), numbers("speed", 1)], {"Ash": [(20, 60), None]})

    # 3/4 · 20 + 1/4 · 0; 3/4 · 60 + 1/4 · 100; a range is known, unknown is not
    assert [(15.0, 70.0, 0.75)] == list(lines(values(written(case))["Scores"], "DEF"))


def test_limits_that_may_yet_be_failed_are_named():
    found = dict(lines(values(written(varied_case()))["Scores"], "BI"))

    assert ("Minimum and Method", None) == (found["Elder"], found["Ash"])


def test_the_working_columns_are_not_printed():
    assert "'Scores'!$A$1:$I$13" == opened(written(varied_case()))["Scores"].print_area
