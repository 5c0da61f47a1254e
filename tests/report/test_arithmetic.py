from dataclasses import replace

import pytest
from cases import choices, make_case, numbers

from scorecard.brief import Brief
from scorecard.criteria import Limit, Steady
from scorecard.report.arithmetic import (
    limit_words,
    per_sentence,
    points_sentence,
    rules_of,
    source_sentence,
    steady_sentence,
    unknown_sentence,
    workings_of,
)
from scorecard.report.texts import bare

METHOD = choices("method", 1, {"kiln": 100, "glue": 0})


def test_every_criterion_has_its_rule_in_the_order_of_the_file(field, assessed):
    found = assessed(field(3))
    assert [one.title for one in found.case.criteria] == [rule.title for rule in rules_of(found)]


def test_knots_are_told_with_their_unit():
    criterion = numbers("years", 1, (0, 0), (3, 50), (10, 100), unit="years")
    expected = (
        "Points: 0 at 0 years, 50 at 3 years and 100 at 10 years; in proportion between these, level beyond them."
    )
    assert expected == points_sentence(criterion)


def test_choices_are_told_with_their_points():
    assert "Points: “kiln” 100 and “glue” 0." == points_sentence(METHOD)


@pytest.mark.parametrize(
    ("limit", "words"),
    [
        (Limit(at_least=4), "at least 4"),
        (Limit(at_least=4, at_most=9), "at least 4 and at most 9"),
        (Limit(one_of=("kiln", "glue")), "“kiln” or “glue”"),
        (Limit(none_of=("glue",)), "not “glue”"),
    ],
)
def test_limits_are_told(limit, words):
    assert words == limit_words(limit, numbers("a", 1))


def test_the_steady_rule_is_told_with_its_formula():
    said = bare(steady_sentence(Steady(count_column="Ratings counted", usual=4.5, usual_counts_as=20)))
    assert "(column “Ratings counted”) counts as (n × r + 20 × 4.5) ÷ (n + 20)" in said


def test_minimums_are_told_with_the_pieces_of_each_unit():
    said = per_sentence(Brief(item="mug", quantity=200, designs=4))
    assert said.startswith("Divided by the pieces wanted: 200 for the order and 50 for a design; which of these,")


def test_with_one_design_minimums_are_told_with_all_pieces_alone():
    expected = "Divided by the pieces wanted: 200 for the order. So 2× is twice what is wanted."
    assert expected == per_sentence(Brief(item="mug", quantity=200))


def test_a_minimum_is_told_in_times_what_is_wanted():
    criterion = numbers("order", 1, (1, 100), (2, 0), per_quantity=True, unit="pieces")
    expected = "Points: 100 at 1× and 0 at 2×; in proportion between these, level beyond them."
    assert (expected, "at most 2.5×") == (points_sentence(criterion), limit_words(Limit(at_most=2.5), criterion))


def test_unknown_is_told_with_what_it_allows():
    assert "Unknown allows 0 to 100 points and counts as 40.0 points." == unknown_sentence(
        numbers("a", 1, unknown=40.0)
    )


def test_a_measure_says_what_it_counts():
    criterion = replace(numbers("a", 1, unit="days"), column=None, measure="response_days")
    assert "whole working days from Asked on to Answered on" in source_sentence(criterion)


@pytest.mark.parametrize("measure", ["landed_cost_per_piece", "days_to_door"])
def test_a_measure_of_quotes_says_that_one_way_stands_for_its_maker(measure):
    criterion = replace(numbers("a", 1), column=None, measure=measure)
    assert "by the way that stands for its maker" in source_sentence(criterion)


def test_a_cell_holds_the_way_from_answer_to_contribution(assessed):
    case = make_case([numbers("a", 1, (0, 0), (10, 100)), numbers("b", 3)], {"Brightholm": [(2, 4), 50]})
    cell = workings_of(assessed(case), (0,))[0].cells[0]
    # the middle of 20 and 40 points is 30; a quarter of it is 7.5
    assert ("2 to 4", "2 to 4", "30.00", "20.00 to 40.00", "25.00", "7.50") == (
        cell.answer, cell.counts_as, cell.points, cell.band, cell.share, cell.contribution,
    )  # fmt: skip


def test_contributions_add_up_to_the_score(field, assessed):
    found = assessed(field(9))
    for one in workings_of(found, found.ranking.order):
        total = sum(float(cell.contribution) for cell in one.cells)
        assert pytest.approx(float(one.score), abs=0.05 + 0.005 * len(one.cells)) == total


def test_a_score_reads_as_it_does_everywhere_else(assessed):
    # 85.346 would read 85.35 here and 85.3 there
    assert "85.3" == workings_of(assessed(make_case([numbers("a", 1)], {"Brightholm": [85.346]})), (0,))[0].score


def test_a_criterion_without_weight_is_left_out_unless_its_limit_is_at_stake(assessed):
    limit = Limit(at_least=50)
    criteria = [numbers("a", 1), numbers("b", 0), numbers("c", 0, limit=limit), numbers("d", 0, limit=limit)]
    found = workings_of(assessed(make_case(criteria, {"Brightholm": [60, 60, 60, None]})), (0,))[0]
    assert ["A", "D"] == [cell.title for cell in found.cells]


def test_a_ruled_out_maker_has_no_rank(assessed):
    case = make_case([numbers("a", 1, limit=Limit(at_least=50))], {"Brightholm": [1]})
    assert workings_of(assessed(case), (0,))[0].rank is None
