from scorecard.reading.cells import Fault
from scorecard.reading.findings import Findings, in_order

FAULT = Fault("some-code", "this stands here", "Write that")


def test_problems_come_by_row_then_column_each_once():
    findings = Findings(file="makers.csv")
    for cell in ("B10", "AA2", "B2", "B2"):
        findings.refuse(cell, FAULT)

    assert ["B2", "AA2", "B10"] == [problem.place.cell for problem in in_order(findings.problems)]


def test_an_unreadable_answer_is_a_problem_unless_set_aside():
    findings = Findings(file="makers.csv")
    findings.refuse_answer("B2", FAULT)

    assert (1, 0) == (len(findings.problems), len(findings.set_aside))


def test_an_unreadable_answer_is_set_aside_on_the_users_word():
    findings = Findings(file="makers.csv", takes_unreadable_as_unknown=True)
    findings.refuse_answer("B2", FAULT)

    assert (0, 1) == (len(findings.problems), len(findings.set_aside))


def test_a_problem_names_file_sheet_and_cell():
    findings = Findings(file="makers.xlsx", sheet="Makers")

    assert "makers.xlsx, Makers!B2: this stands here. Write that." == str(findings.problem_at("B2", FAULT))
