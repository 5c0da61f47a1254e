"""The tables [inspection] and [care], key by key."""

import pytest
from sourcing import folder_of, problems_of

from scorecard.reading.criteria_file import read_criteria
from scorecard.reading.folder import read_folder


def case_of(path, toml):
    return read_folder(folder_of(path, toml=toml))


def test_everything_is_read(tmp_path):
    toml = """
[inspection]
critical = ["burr"]
major = ["chip", "smudge"]
level = "I"
critical_limit = 0.065
minor_limit = 6.5
seed = 0

[care]
touches_food = true
for_children = false
flame = "holds a flame"
from = "Ann Example, 1 Quay Street"
"""
    case = case_of(tmp_path, toml)
    found, care = case.inspection, case.care
    assert ({"critical": ("burr",), "major": ("chip", "smudge")}, "I", 0) == (found.faults, found.level, found.seed)
    assert {"critical": 0.065, "major": 2.5, "minor": 6.5} == found.limits
    assert (True, False, "holds a flame", "Ann Example, 1 Quay Street") == (
        care.touches_food,
        care.for_children,
        care.flame,
        care.sender,
    )


def test_a_file_that_says_nothing_of_arrival_leaves_both_open(tmp_path):
    case = case_of(tmp_path, "")
    assert (None, None) == (case.inspection, case.care)


def test_what_is_not_said_of_the_goods_stays_open(tmp_path):
    case = case_of(tmp_path, "[care]\ntouches_food = true\n")
    assert (True, None, None) == (case.care.touches_food, case.care.for_children, case.care.flame)


@pytest.mark.parametrize(
    ("line", "key", "code"),
    [
        ("majour = []", "inspection.majour", "unknown-key"),
        ("major = 3", "inspection.major", "not-a-list"),
        ('major = ["chip", "Chip"]', "inspection.major", "doubled-fault"),
        ('major = ["another one"]', "inspection.major", "doubled-fault"),
        ('major = [""]', "inspection.major", "fault-name"),
        (f'major = ["{"x" * 61}"]', "inspection.major", "fault-name"),
        (f"major = {[str(at) for at in range(13)]}", "inspection.major", "too-many-faults"),
        ('level = "IV"', "inspection.level", "not-an-option"),
        ("minor_limit = 3", "inspection.minor_limit", "not-an-option"),
        ('minor_limit = "4"', "inspection.minor_limit", "number-in-quotes"),
        ("seed = -1", "inspection.seed", "not-whole"),
    ],
)
def test_each_fault_of_inspection_is_told_at_its_key(tmp_path, line, key, code):
    assert [(key, code)] == problems_of(tmp_path, toml=f"[inspection]\n{line}\n")


@pytest.mark.parametrize(
    ("line", "key", "code"),
    [
        ("touches_foot = true", "care.touches_foot", "unknown-key"),
        ('touches_food = "yes"', "care.touches_food", "not-true-or-false"),
        ("for_children = 1", "care.for_children", "not-true-or-false"),
        ('flame = "maybe"', "care.flame", "not-an-option"),
        ('from = ""', "care.from", "empty-text"),
    ],
)
def test_each_fault_of_care_is_told_at_its_key(tmp_path, line, key, code):
    assert [(key, code)] == problems_of(tmp_path, toml=f"[care]\n{line}\n")


def test_a_table_that_is_none_is_told(tmp_path):
    path = tmp_path / "criteria.toml"
    path.write_text(
        'care = 3\n[brief]\nitem = "mug"\nquantity = 2\n[criteria.a]\nweight = 1\npoints = [[0, 0], [1, 9]]\n'
    )
    assert [("care", "not-a-table")] == [(one.place.key, one.code) for one in read_criteria(path).problems]
