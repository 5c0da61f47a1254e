"""What holds where the criteria file says nothing of inspection."""

from scorecard.inspection.settings import USUAL_LIMITS, InspectionSettings


def test_the_usual_limits_are_those_of_consumer_goods():
    # critical 0, major 2.5, minor 4.0, level II: common practice, as inspection firms' pages say
    settings = InspectionSettings()
    assert ("II", {"critical": 0, "major": 2.5, "minor": 4.0}) == (settings.level, dict(settings.limits))
    assert USUAL_LIMITS == settings.limits


def test_without_a_seed_the_pieces_are_drawn_by_the_first():
    assert 1 == InspectionSettings().seed


def test_the_lines_of_the_sheet_follow_the_named_faults():
    assert ["A1", "A2", "B1", "B2"] == [
        line.code for line in InspectionSettings(faults={"critical": ("burr",), "major": ("chip",)}).lines
    ][:4]
