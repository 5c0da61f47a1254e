from types import SimpleNamespace

import pytest
from builders import codes

from scorecard.reading.findings import Findings
from scorecard.reading.headings import Headings
from scorecard.reading.sheet_notes import runs, warn_of_looks

HEADINGS = Headings(row=2, columns={"maker": 1, "rating": 3})


def warnings_of(rows=(3, 4, 5), hidden_rows=(), hidden_columns=(), merged=()):
    """Return the warnings of a sheet with makers in some rows."""
    findings = Findings(file="makers.xlsx", sheet="Makers")
    sheet = SimpleNamespace(hidden_rows=hidden_rows, hidden_columns=hidden_columns, merged=merged)
    warn_of_looks(sheet, HEADINGS, rows, findings)
    return findings.warnings


def test_hidden_makers_are_named_in_one_warning():
    (warning,) = warnings_of(hidden_rows=[1, 4, 5, 9])

    assert ("A4", "hidden-rows") == (warning.place.cell, warning.code)
    assert "4 to 5" in warning.found


def test_only_known_columns_that_are_hidden_are_named():
    assert [("C2", "hidden-columns")] == codes(warnings_of(hidden_columns=[2, 3, 4]))


@pytest.mark.parametrize("merged", ["A3:A5", "B4:C4", "A1:C2", "C5:D90"])
def test_merged_cells_that_reach_an_answer_are_a_warning_at_their_first_cell(merged):
    assert [(merged.split(":")[0], "merged-cells")] == codes(warnings_of(merged=[merged]))


@pytest.mark.parametrize("merged", ["A1:C1", "B3:B5", "A6:C6", "nonsense"])
def test_merged_cells_elsewhere_are_the_users_own(merged):
    assert [] == warnings_of(merged=[merged])


def test_neighbours_make_a_run():
    assert ["4", "7 to 9"] == runs([4, 7, 8, 9])
