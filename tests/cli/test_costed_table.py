from cases import AS_OF
from ordered import case_of

from scorecard.assessment import assess
from scorecard.cli.costed_table import cost_table
from scorecard.stage import costed_makers


def table(most, weight=None):
    assessment = assess(
        case_of({"Ash": 90, "Birch": 70, "Cedar": 50}, {"Ash": 5, "Cedar": 4}, weight=weight), as_of=AS_OF
    )
    return cost_table(assessment, costed_makers(assessment), most=most).split("\n")


def test_costed_makers_stand_by_rank_with_score_cost_and_what_is_paid_before():
    assert [
        "Rank Maker Score A good piece at the door, GBP Way How it stands Paid before you can check",
        "1 Ash 90.0 5.00 by road in time 1000.00",
        "3 Cedar 50.0 4.00 by road in time 800.00",
    ] == [" ".join(line.split()) for line in table(10)]


def test_more_than_fit_are_counted():
    assert "… and 1 more costed" == table(1)[-1]
