"""The criteria set: shares, and what it refuses."""

import pytest
from cases import choices, numbers
from hypothesis import given
from hypothesis import strategies as st

from scorecard.criteria import CriteriaSet, Criterion, WeightsNote

WEIGHTS = st.lists(st.floats(0, 1e6), min_size=1, max_size=8).filter(lambda weights: sum(weights) > 1e-3)


def set_of(*weights):
    return CriteriaSet(tuple(numbers(f"c{at}", weight) for at, weight in enumerate(weights)))


def test_a_share_is_a_weight_over_the_sum_of_weights():
    assert {"c0": 0.15, "c1": 0.6, "c2": 0.25} == dict(set_of(3, 12, 5).shares)


@given(WEIGHTS)
def test_shares_add_up_to_1(weights):
    assert pytest.approx(1, abs=1e-12) == sum(set_of(*weights).shares.values())


@given(WEIGHTS, st.floats(0.001, 1000))
def test_scaling_all_weights_changes_no_share(weights, factor):
    scaled = set_of(*(weight * factor for weight in weights))
    assert pytest.approx(list(set_of(*weights).shares.values()), rel=1e-9, abs=1e-300) == list(scaled.shares.values())


@pytest.mark.parametrize("weights", [(), (-1, 5), (0, 0), (float("nan"), 1), (float("inf"), 1)])
def test_weights_that_cannot_be_shared_out_are_refused(weights):
    with pytest.raises(ValueError, match=r"weights must be|at least one criterion"):
        set_of(*weights)


def test_two_criteria_of_one_key_are_refused():
    with pytest.raises(ValueError, match="a key of its own"):
        CriteriaSet((numbers("a", 1), numbers("a", 2)))


def test_criteria_are_found_by_key():
    assert 12 == set_of(3, 12)["c1"].weight


def test_criteria_come_in_the_order_of_the_file():
    assert ["b", "a"] == [criterion.key for criterion in CriteriaSet((numbers("b", 1), numbers("a", 1)))]


def test_the_length_is_the_number_of_criteria():
    assert 3 == len(set_of(1, 1, 1))


def test_other_weights_leave_the_unnamed_as_they_were():
    assert {"c0": 3, "c1": 7.0} == dict(set_of(3, 12).with_weights({"c1": 7}).typed_weights)


def test_other_weights_keep_where_weights_came_from():
    note = WeightsNote(method="pairs", ratio=0.04)
    assert note == CriteriaSet((numbers("a", 1),), note).with_weights({"a": 2}).note


def test_a_criterion_on_numbers_has_no_choices():
    assert numbers("a", 1).choices is None


def test_a_criterion_on_choices_spells_them_as_the_file_does():
    assert ("Free", "paid ") == choices("a", 1, {"Free": 100, "paid ": 0}).choices


def test_the_middle_counts_for_an_unknown_answer_where_nothing_is_said():
    assert "middle" == Criterion(key="a", title="A", weight=1, value=numbers("a", 1).value).unknown
