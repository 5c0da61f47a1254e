"""The lines of a tally sheet."""

from scorecard.inspection.faults import KINDS, OTHER, USUAL_FAULTS, fault_list


def test_codes_tell_the_kind_and_the_place_within_it():
    lines = fault_list({"critical": ("burr",), "major": ("chip", "smudge"), "minor": ()})
    told = [(line.code, line.kind, line.text) for line in lines]
    assert [
        ("A1", "critical", "burr"),
        ("A2", "critical", OTHER),
        ("B1", "major", "chip"),
        ("B2", "major", "smudge"),
        ("B3", "major", OTHER),
        ("C1", "minor", OTHER),
    ] == told


def test_a_kind_that_is_not_named_has_the_usual_faults():
    texts = [line.text for line in fault_list({})]
    assert [fault for kind in KINDS for fault in (*USUAL_FAULTS[kind], OTHER)] == texts
