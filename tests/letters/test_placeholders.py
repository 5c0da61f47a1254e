"""Named placeholders, and nothing that could run."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.letters.placeholders import faults_of, fill, names_in

KNOWN = {"maker", "item"}


def found(template):
    return [(fault.name, fault.line) for fault in faults_of(template, KNOWN)]


def test_a_value_is_not_read_as_a_template():
    assert "{item} {{x}}" == fill("{maker}", {"maker": "{item} {{x}}", "item": "mug"})


@pytest.mark.parametrize(
    ("template", "filled"),
    [("{{maker}}", "{maker}"), ("{{{maker}}}", "{Oxlip}"), ("}}{{", "}{"), ("{maker}}}", "Oxlip}"), ("100 %", "100 %")],
)
def test_a_doubled_brace_is_one_brace(template, filled):
    assert filled == fill(template, {"maker": "Oxlip"})


@pytest.mark.parametrize(
    "name",
    ["makr", "maker.__class__", "maker[0]", "maker!r", "maker:>9", "", "0", "Maker", " maker ", "1+1", "%print%"],
)
def test_anything_but_a_known_name_is_a_fault(name):
    assert [(name, 1)] == found(f"{{{name}}}")


def test_a_line_whose_value_is_blank_is_left_out_whole():
    assert "a\n{b}\nx 1\n" == fill("a\nby {day}, {one}\n{{b}}\nx {one}\n", {"day": "", "one": "1"})


def test_every_fault_is_found_with_its_line():
    assert [("a", 1), ("b", 2), ("{", 3), ("}", 4)] == found("{a} {maker}\n{b}\n{\nmaker}")


def test_a_template_with_a_fault_is_not_filled():
    with pytest.raises(ValueError, match="'makr'"):
        fill("{makr}", {"maker": "Oxlip"})


def test_the_names_of_a_template_are_told():
    assert frozenset({"maker", "item"}) == names_in("{maker} {{no}} {item} {")


@given(st.text())
def test_text_with_doubled_braces_comes_out_as_it_was(text):
    assert text == fill(text.replace("{", "{{").replace("}", "}}"), {})


@given(st.text(alphabet="{}ab\n"))
def test_a_template_without_faults_can_be_filled(template):
    if not faults_of(template, {"a", "b"}):
        assert isinstance(fill(template, {"a": "1", "b": "2"}), str)
