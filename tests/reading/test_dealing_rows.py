"""Samples and checks, cell by cell."""

from datetime import date

import pytest
from sourcing import folder_of, problems_of

from scorecard.assessment import assess
from scorecard.reading.folder import read_folder

SAMPLES = ["Maker", "Round", "Asked on", "Received on", "Print", "Colour", "Position off mm", "Decision"]
CHECKS = ["Maker", "Check", "State", "Evidence", "Date"]
AS_OF = date(2026, 11, 25)
MARKED = """
[criteria.marks]
weight = 3
measure = "sample_marks"
points = [[0, 0], [10, 100]]
"""


def case_of(path, samples=(), checks=(), toml=""):
    sheets = {"Samples": [SAMPLES, *samples], "Checks": [CHECKS, *checks]}
    return read_folder(folder_of(path, sheets, toml), as_of=AS_OF)


def problems(path, samples=(), checks=(), head=SAMPLES):
    return problems_of(path, {"Samples": [head, *samples], "Checks": [CHECKS, *checks]}, as_of=AS_OF)


def test_a_round_is_read_with_its_marks(tmp_path):
    row = ["fernhill", "Sample", date(2026, 11, 2), date(2026, 11, 9), 8, "6-7", "1 mm", "approved"]
    (sample,) = case_of(tmp_path, [row]).samples

    assert ("Fernhill", "sample", {"Print": (8, 8), "Colour": (6, 7)}, (1, 1), "approved", 2) == (
        sample.maker,
        sample.kind,
        sample.marks,
        sample.position_off_mm,
        sample.decision,
        sample.row,
    )


def test_sample_marks_are_an_answer_to_a_criterion(tmp_path):
    rows = [["Fernhill", "sample", None, None, 8, "6-7"], ["Brightholm", "photograph", None, None, 9]]
    result = assess(case_of(tmp_path, rows, toml=MARKED), as_of=AS_OF).as_json()
    answers = {one["maker"]: one["criteria"]["marks"]["answer"] for one in result["makers"]}

    assert {"Fernhill": {"low": 7.0, "high": 7.5}, "Brightholm": 9.0} == answers


def test_sample_marks_change_the_leader(tmp_path):
    rows = [["Fernhill", "sample", None, None, 10], ["Brightholm", "sample", None, None, 1]]
    before = assess(case_of(tmp_path, toml=MARKED), as_of=AS_OF).as_json()["leader"]
    after = assess(case_of(tmp_path, rows, toml=MARKED), as_of=AS_OF).as_json()["leader"]

    assert ("Brightholm", "Fernhill") == (before, after)


def test_a_check_is_read_and_a_usual_one_spelt_as_usual(tmp_path):
    row = ["Fernhill", "References", "yes", "two calls", date(2026, 11, 20)]
    (check,) = case_of(tmp_path, checks=[row]).checks

    assert ("references", "yes", date(2026, 11, 20)) == (check.name, check.state, check.checked_on)


def test_a_blank_state_is_waiting(tmp_path):
    assert "waiting" == case_of(tmp_path, checks=[["Fernhill", "references"]]).checks[0].state


@pytest.mark.parametrize(
    ("row", "found"),
    [
        (["Nobody", "sample"], ("A2", "unknown-maker")),
        (["Fernhill", None], ("B2", "missing-value")),
        (["Fernhill", "parcel"], ("B2", "not-a-choice")),
        (["Fernhill", "sample", date(2026, 11, 9), date(2026, 11, 2)], ("D2", "received-before-asked")),
        (["Fernhill", "sample", date(2027, 1, 1)], ("C2", "day-to-come")),
        (["Fernhill", "sample", None, None, 11], ("E2", "outside-within")),
        (["Fernhill", "sample", None, None, -1], ("E2", "below-zero")),
        (["Fernhill", "sample", None, None, "good"], ("E2", "not-a-number")),
        (["Fernhill", "sample", None, None, 8, None, None, "fine"], ("H2", "not-a-choice")),
    ],
)
def test_each_fault_of_a_sample_stands_at_its_cell(tmp_path, row, found):
    assert [found] == problems(tmp_path, [row])


@pytest.mark.parametrize(
    ("row", "found"),
    [
        (["Nobody", "references", "yes"], ("A2", "unknown-maker")),
        (["Fernhill", None, "yes"], ("B2", "missing-value")),
        (["Fernhill", "references", "perhaps"], ("C2", "not-a-choice")),
        (["Fernhill", "references", "yes", None, "soon"], ("E2", "not-a-date")),
    ],
)
def test_each_fault_of_a_check_stands_at_its_cell(tmp_path, row, found):
    assert [found] == problems(tmp_path, checks=[row])


def test_a_measured_colour_is_three_numbers(tmp_path):
    head = ["Maker", "Round", "Colour wanted L*a*b*", "Colour measured L*a*b*"]
    sheets = {"Samples": [head, ["Fernhill", "sample", "50 2.5 0", "73; 25; -18"]]}
    case = read_folder(folder_of(tmp_path, sheets))

    assert ((50.0, 2.5, 0.0), (73.0, 25.0, -18.0)) == (case.samples[0].wanted_lab, case.samples[0].measured_lab)
    assert [("C2", "not-a-colour")] == problems(tmp_path, [["Fernhill", "sample", "blue"]], head=head)
