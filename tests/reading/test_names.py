import time
from datetime import date
from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.reading.cells import CellError, NoResult
from scorecard.reading.findings import Findings
from scorecard.reading.names import alike_pairs, all_bare, bare, check_names, is_one_slip, read_name


def found(*names):
    """Return the findings of names in column A from row 2."""
    findings = Findings(file="makers.csv")
    check_names(names, lambda at: f"A{at + 2}", findings)
    return findings


def places(problems):
    """Return (cell, code) of each."""
    return [(problem.place.cell, problem.code) for problem in problems]


@pytest.mark.parametrize(
    ("value", "name"),
    [
        ("None", "None"),
        ("NA", "NA"),
        ("null", "null"),
        ("#N/A", "#N/A"),
        ("-", "-"),
        (12.0, "12"),
        (True, "TRUE"),
        (" a ", " a "),
    ],
)
def test_a_name_is_kept_exactly(value, name):
    assert name == read_name(value)


@pytest.mark.parametrize(
    ("value", "code"),
    [
        (date(2026, 5, 3), "date-for-name"),
        (CellError("#N/A"), "spreadsheet-error"),
        (NoResult(), "formula-without-result"),
        ("x" * 32_768, "name-too-long"),
    ],
)
def test_what_is_no_name_is_a_fault(value, code):
    assert code == read_name(value).code


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Tall Ship", "TALL  ship "),
        ("Tall\u00a0Ship", "Tall Ship"),
        ("Ｋiln", "kiln"),
        ("Straße", "STRASSE"),
        ("e\u0301clat", "Éclat"),
        ("İ", "i\u0307"),
    ],
)
def test_names_equal_after_folding_are_a_problem_at_the_later(one, other):
    findings = found(one, "Another", other)

    assert [("A4", "doubled-maker")] == places(findings.problems)
    assert "A2" in findings.problems[0].found


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Éclat", "Eclat"),
        ("Tall Ship", "Tallship"),
        ("Tall-Ship, Ltd.", "Tall Ship Ltd"),
        ("Brightholm", "Brightholn"),
        ("Brightholm", "Brightolm"),
        ("Brightholm", "Birghtholm"),
    ],
)
def test_names_merely_alike_are_a_warning(one, other):
    findings = found(one, other)

    assert ([], [("A3", "alike-makers")]) == (places(findings.problems), places(findings.warnings))


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Studio 7", "Studio 8"),
        ("Kiln", "Kilt"),
        ("Brightholm", "Birghtholn"),
        ("Brightholm", "Brigtholms"),
        ("!!", "??"),
    ],
)
def test_names_further_apart_are_left_alone(one, other):
    findings = found(one, other)

    assert [] == findings.problems + findings.warnings


def test_a_name_with_hidden_signs_is_kept_with_a_warning():
    assert [("A2", "hidden-signs")] == places(found("Tall\u202eShip", "Other").warnings)


def test_at_most_twenty_pairs_are_named():
    assert 20 == len(found(*[f"brighthol{chr(97 + n % 26)}{chr(97 + n // 26)}" for n in range(100)]).warnings)


def test_twenty_thousand_names_are_compared_within_three_seconds():
    # letters alone, so that digits part none of them
    names = ["".join(chr(97 + (n * 7919 // 26**place) % 26) for place in range(12)) for n in range(20_000)]
    start = time.process_time()
    list(alike_pairs(names))

    assert time.process_time() - start < 3


def test_a_name_of_many_letters_costs_no_more_than_others():
    start = time.process_time()
    list(alike_pairs(["x" * 30_000, "y" * 30_000]))

    assert time.process_time() - start < 1


WORDS = st.text("abcé. ", min_size=1, max_size=7)


@given(st.lists(WORDS | st.text(max_size=5), max_size=6))
def test_names_folded_at_once_are_folded_alike(names):
    assert [bare(name) for name in names] == all_bare(names)


@given(st.lists(st.text("ab", min_size=5, max_size=7), max_size=12))
def test_the_index_finds_the_same_pairs_as_comparing_each_with_each(names):
    compared = {
        (later, earlier)
        for later in range(len(names))
        for earlier in range(later)
        if names[later] == names[earlier] or is_one_slip(names[later], names[earlier])
    }

    assert compared == set(alike_pairs(names))


def test_no_bound_is_needed_for_names():
    assert "inf" == read_name(inf)


@pytest.mark.parametrize("value", [CellError("#N/A"), NoResult()])
def test_a_name_that_is_an_error_is_not_to_be_left_empty(value):
    wanted = read_name(value).wanted

    assert (True, False) == (wanted.endswith(", or type the name as text"), "empty" in wanted)
