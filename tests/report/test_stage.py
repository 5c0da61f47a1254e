"""Whom to order from, near the verdict."""

from cases import AS_OF
from ordered import case_of
from quoted import quote

from scorecard.assessment import assess
from scorecard.costing.inputs import CostSettings
from scorecard.report.stage import MOST, ordering_of
from scorecard.report.texts import bare, presentable
from scorecard.stage import costed_makers

ANSWERS = {"Ash": 90, "Birch": 70, "Cedar": 50}


def ordering(case):
    assessment = assess(case, as_of=AS_OF)
    return ordering_of(presentable(assessment), costed_makers(assessment))


def test_before_two_makers_are_costed_the_stage_alone_is_said():
    found = ordering(case_of(ANSWERS, {"Ash": 5}))

    assert (True, (), (), ()) == (found.stage.startswith("Whom to write to"), found.beside, found.rows, found.paid_how)


def test_the_opening_is_one_sentence_without_figures_and_the_rest_stands_below_the_table():
    found = ordering(case_of(ANSWERS, {"Cedar": 4, "Ash": 5}))

    assert (True, True, True) == (
        found.stage.startswith("Whom to order from: "),
        not any(sign.isdigit() for sign in found.stage),
        bare(found.beside[0]).startswith("Of those costed Ash stands first, at 5.00 GBP"),
    )


def test_costed_makers_stand_by_rank_with_score_cost_and_what_is_paid_before():
    found = ordering(case_of(ANSWERS, {"Cedar": 4, "Ash": 5}))

    assert [
        ("1", "Ash", "90.0", "5.00", "by road", "30 days, in time", "1000.00"),
        ("3", "Cedar", "50.0", "4.00", "by road", "30 days, in time", "800.00"),
    ] == [(row.rank, bare(row.maker), row.score, row.piece, row.way, row.time, row.paid) for row in found.rows]


def test_names_stand_between_marks_in_sentences_and_rows():
    found = ordering(case_of({"Ash\u202e": 90, "Birch": 70}, {"Ash\u202e": 5, "Birch": 4}))

    assert "\u202e" not in " ".join([*found.beside, *(row.maker for row in found.rows)])


def test_when_the_price_is_paid_is_said_once():
    after = CostSettings(balance="after checking")
    found = ordering(case_of(ANSWERS, {"Ash": 5, "Birch": 4}, settings=after))

    assert ("The rest of the price waits until you have checked the goods.",) == found.paid_how


def test_more_makers_than_fit_are_counted():
    answers = {f"maker {at:02}": 90 - at for at in range(MOST + 2)}
    found = ordering(case_of(answers, dict.fromkeys(answers, 5)))

    assert (MOST, 2) == (len(found.rows), found.left)


def test_a_price_quoted_both_ways_is_a_range_of_what_is_paid():
    row = quote((4, 6), maker="Ash", covers="to my door, duty and tax paid")
    found = ordering(case_of(ANSWERS, {"Ash": row, "Birch": 4}))

    assert ("4.00 to 6.00", "800.00 to 1200.00", "") == (found.rows[0].piece, found.rows[0].paid, found.rows[0].way)


def test_what_the_days_count_is_said_below_the_table():
    found = ordering(case_of(ANSWERS, {"Cedar": 4, "Ash": 5}))

    assert found.as_quoted.startswith("Days are as quoted, production and transit alone, without samples, proof and")


def test_of_days_that_the_table_has_not_nothing_is_said():
    assert "" == ordering(case_of(ANSWERS, {"Ash": 5})).as_quoted
