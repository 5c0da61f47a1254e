"""The sheet Shortlist: weights to change, and the order under them."""

import pytest
from cases import make_case, numbers
from result_books import opened, retyped, values, varied_case, written

from scorecard.criteria import WeightsNote


def test_the_cells_to_change_are_marked_by_ground_border_and_word():
    sheet = opened(written(varied_case()))["Shortlist"]

    assert ("Weight: change me", "FFEADFC8", "thin") == (
        sheet["C7"].value,
        sheet["C8"].fill.fgColor.rgb,
        sheet["C8"].border.left.style,
    )


def test_a_weight_below_0_is_warned_of_and_may_still_be_typed():
    (rule,) = opened(written(varied_case()))["Shortlist"].data_validations.dataValidation

    assert ("C8:C13", "decimal", "greaterThanOrEqual", "0", "warning") == (
        str(rule.sqref),
        rule.type,
        rule.operator,
        rule.formula1,
        rule.errorStyle,
    )


def test_weights_stand_there_as_typed():
    sheet = opened(written(varied_case()))["Shortlist"]

    assert [15, 20, 20, 10, 10, 0] == [sheet.cell(row, 3).value for row in range(8, 14)]


def test_what_a_weight_moves_at_most_is_its_share_of_the_spread_of_points():
    case = make_case([numbers("work", 3), numbers("speed", 1)], {"Ash": [90, 20], "Birch": [50, 40]})

    sheet = values(written(case))["Shortlist"]

    assert [30.0, 5.0] == [sheet["E8"].value, sheet["E9"].value]  # 3/4 · (90 - 50), 1/4 · (40 - 20)


def test_the_leader_is_named_with_its_margin():
    case = make_case([numbers("work", 1)], {"Ash": [90], "Birch": [50.25]})

    assert "With these weights: Ash leads, 39.8 points ahead of Birch" == values(written(case))["Shortlist"]["A4"].value


def test_joint_leaders_are_said_to_be_level():
    case = make_case([numbers("work", 1)], {"Ash": [50], "Birch": [50], "Cedar": [1]})

    assert (
        "With these weights: 2 makers are level in first place, Ash among them"
        == values(written(case))["Shortlist"]["A4"].value
    )


def test_a_margin_that_would_round_to_nothing_is_said_in_words():
    case = make_case([numbers("work", 1)], {"Ash": [50.01], "Birch": [50]})

    assert "less than 0.1 points ahead" in values(written(case))["Shortlist"]["A4"].value


@pytest.mark.office
def test_changed_weights_show_the_command_that_tells_how_firm_it_is_and_keeps_them(recalc):
    again = recalc(retyped(written(varied_case()), [15, 12.5, 20, 10, 30, 0]))

    assert (
        "To see how firm that is, run this; with --save at its end it keeps these weights: "
        "scorecard reweigh rating=12.5 reply=30"
    ) == again["Shortlist"]["A5"].value


@pytest.mark.office
@pytest.mark.parametrize(("weights", "is_doubted"), [([30.0, 10.0], False), ([30.0, 11.0], True)])
def test_only_with_changed_weights_it_is_said_that_the_sheet_cannot_tell_how_firm_they_are(recalc, weights, is_doubted):
    case = make_case([numbers("work", 30), numbers("reply", 10)], {"Ash": [90, 20], "Birch": [50, 40]})

    said = recalc(retyped(written(case), weights))["Shortlist"]["A4"].value

    assert (True, is_doubted) == (
        said.startswith("With these weights: Ash leads, 2"),
        said.endswith("points ahead of Birch; how firm that is, this sheet cannot tell"),
    )


@pytest.mark.parametrize("key", ['a"&B8&"', "$(reboot)", "a b", "; reboot"])
def test_a_key_that_a_terminal_might_take_otherwise_stands_in_no_command(key):
    case = make_case([numbers(key, 1, title="Work")], {"Ash": [1], "Birch": [2]})

    assert key not in opened(written(case))["Shortlist"]["A5"].value


def test_weights_from_judgements_are_not_kept_by_reweigh():
    case = varied_case()
    object.__setattr__(case.criteria, "note", WeightsNote(method="ranks"))

    assert "reweigh" not in opened(written(case))["Shortlist"]["A5"].value


def test_beyond_500_makers_it_says_where_the_others_are():
    case = make_case([numbers("work", 1)], {f"Maker {at}": [at / 10] for at in range(501)})

    sheet = opened(written(case))["Shortlist"]

    assert "The first 500 places are shown here, every maker's rank on Scores." in sheet["A2"].value
    assert 507 == sheet.max_row
