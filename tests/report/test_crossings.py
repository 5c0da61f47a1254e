from dataclasses import replace
from itertools import pairwise

import pytest
from cases import make_case, numbers, rated
from published import OFFICE_SHARES, OFFICES

from scorecard.criteria import WeightsNote
from scorecard.report.crossings import LONGEST, crossings_of, who_leads
from scorecard.report.texts import bare
from scorecard.sensitivity.lead_crossings import Stretch

TWO = {"Brightholm": [90, 50], "Cressel": [40, 80]}
NAMES = ("A", "B", "C", "D")


def offices():
    return rated((100 * OFFICE_SHARES).tolist(), dict(zip("ABCDEFG", OFFICES.tolist(), strict=True)))


def told(*ends):
    edges = [0.0, *ends, 1.0]
    return [Stretch(leader=at, start=a, end=b) for at, (a, b) in enumerate(pairwise(edges))]


def test_three_leaders_are_told_in_one_sentence():
    expected = "Up to 20.0 of 100 A leads, from there to 60.0 B, from there on C."
    assert expected == who_leads(told(0.2, 0.6), NAMES)


def test_a_part_of_the_leaders_says_where_it_begins_and_ends():
    expected = "From 20.0 to 60.0 of 100 B leads, from there to 80.0 C."
    assert expected == who_leads(told(0.2, 0.6, 0.8)[1:3], NAMES)


def test_the_weight_nearest_to_changing_the_leader_is_the_one_with_the_least_way_to_go(shown):
    """Of the published offices, winner A: comfort from 6 to 49/190 = 25.8 goes less far than any other.

    By hand, E and B are level where (6120 − 3340) / 94 · (1 − t) = 40 · t: t = 2780/6540 = 42.5.
    """
    nearest = crossings_of(shown(offices())).nearest
    assert ("C5", "Up to 25.8 of 100 A leads, from there to 42.5 E, from there on B.") == tuple(
        map(bare, (nearest.title, nearest.who))
    )


def test_every_other_weight_that_can_change_the_leader_is_there_in_the_order_of_the_file(shown):
    found = crossings_of(shown(offices())).others
    assert ["C1", "C2", "C4", "C6"] == [bare(one.title) for one in found]


def test_the_same_crossing_is_told_as_a_weight_to_type(shown):
    """Beside the others' 94: 94 · 49 / 141 = 32.7 and 94 · 2780 / 3760 = 69.5."""
    assert (
        "Typed as a weight, beside the others as they are: 32.7 and 69.5."
        == crossings_of(shown(offices())).nearest.typed
    )


def test_where_no_weight_alone_changes_the_leader_nothing_is_drawn(shown):
    found = crossings_of(shown(rated((1, 1), {"Brightholm": [90, 90], "Cressel": [40, 80]})))
    assert (None, ()) == (found.nearest, found.others)


@pytest.mark.parametrize("rows", [{}, {"Brightholm": [90, 50]}])
def test_a_field_without_rivals_has_no_drawing(shown, rows):
    assert None is crossings_of(shown(rated((1, 1), rows or {"Brightholm": [1, 1]}))).nearest


def test_a_criterion_with_all_the_weight_has_no_drawing(shown):
    found = crossings_of(shown(rated((1, 0), TWO)))
    assert ("C2", ()) == (bare(found.nearest.title), found.others)


def test_the_words_at_a_crossing_name_the_share_and_who_leads(shown):
    """Brightholm 50 + 40t against Cressel 80 - 40t: level at t = 3/8."""
    words = [bare(mark.words) for mark in crossings_of(shown(rated((3, 1), TWO))).nearest.chart.marks]
    assert ["from 37.5 of 100 Brightholm leads"] == words


def test_the_figures_are_those_of_the_lines(shown):
    rows = crossings_of(shown(rated((3, 1), TWO))).nearest.rows
    expected = [("1", "50.0", "80.0", "90.0", "37.5 to 100.0"), ("2", "80.0", "50.0", "40.0", "0.0 to 37.5")]
    assert expected == [(row.place, row.at_none, row.now, row.at_all, row.leads) for row in rows]


def test_a_far_maker_that_leads_somewhere_is_drawn(shown):
    rows = {f"M{at}": [90 - at, 90 - at] for at in range(8)} | {"Cressel": [20, 95]}
    drawn = [row.place for row in crossings_of(shown(rated((3, 1), rows))).nearest.rows]
    assert ["1", "2", "3", "4", "5", "9"] == drawn


def test_a_long_name_is_cut_in_the_drawing_and_whole_in_the_table(shown):
    found = crossings_of(shown(rated((3, 1), {"W" * 90: [90, 50], "Cressel": [40, 80]}))).nearest
    assert (LONGEST, 90) == (len(bare(found.chart.lines[0].name)), len(bare(found.rows[0].maker)))


def test_beyond_six_leaders_the_page_says_how_many_more_there_are(shown):
    """Tangents of a parabola all lead in turn: 100 t² touched at 0, 0.1 … 1."""
    touching = [at / 10 for at in range(11)]
    rows = {f"M{at}": [100 * (2 * a - a * a), 100 - 100 * a * a] for at, a in enumerate(touching)}
    knots = ((0, 0), (100, 100))
    case = make_case([numbers("a", 1, *knots), numbers("b", 1, *knots)], rows)
    found = crossings_of(shown(case)).nearest
    assert (5, "Further off the lead passes on 5 more times.") == (len(found.chart.marks), found.left_out)


def test_weights_that_come_from_ranks_are_not_told_as_typed(shown):
    case = rated((3, 1), TWO)
    ranked = replace(case, criteria=replace(case.criteria, note=WeightsNote(method="ranks")))
    assert None is crossings_of(shown(ranked)).nearest.typed


def test_joint_leaders_stand_at_a_crossing(shown):
    """Brightholm 50 + 40t against Cressel 80 − 40t, level at t = 3/8, which is the share as it is."""
    nearest = crossings_of(shown(rated((3, 5), TWO))).nearest
    assert ("37.5", "37.5%", "37.5%") == (nearest.share, nearest.chart.now, nearest.chart.marks[0].x)


def test_a_weight_of_0_is_drawn_where_it_can_change_the_leader(shown):
    case = rated((1, 1, 0), {"Brightholm": [60, 60, 0], "Cressel": [50, 50, 100]})
    assert "0.0" == crossings_of(shown(case)).nearest.share
