"""Sample marks by hand, and colours against the published test pairs.

Colour pairs: Sharma, Wu and Dalal (2005), Color Research and Application 30(1), table 1, of which the reference of
trade facts carries five of 34.
"""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scorecard.samples import (
    SampleRound,
    asked_of,
    colour_difference,
    kept_piece,
    latest_of_each_kind,
    sample_mark,
    undecided_round,
)


def round_of(kind="sample", marks=(8, 6), row=2, came=None, maker="Fernhill", **more):
    names = ("Print", "Colour", "Material", "Finish")
    pairs = {name: mark if isinstance(mark, tuple) else (mark, mark) for name, mark in zip(names, marks, strict=False)}
    return SampleRound(maker=maker, row=row, kind=kind, marks=pairs, received_on=came, **more)


def test_a_mark_is_the_mean_of_the_marks_given():
    assert (7.0, 7.0) == sample_mark([round_of(marks=(8, 6))], "Fernhill")


def test_a_range_among_the_marks_is_kept():
    assert (6.5, 8.0) == sample_mark([round_of(marks=((5, 8), 8))], "Fernhill")


def test_the_last_round_of_a_kind_counts():
    rounds = [round_of(marks=(9,), came=date(2026, 11, 9)), round_of(marks=(4,), row=3, came=date(2026, 11, 2))]

    assert (9.0, 9.0) == sample_mark(rounds, "Fernhill")


def test_the_kind_nearest_to_the_full_run_counts():
    rounds = [round_of("pre-production sample", (5,)), round_of("sample", (9,), 3), round_of("photograph", (10,), 4)]

    assert (5.0, 5.0) == sample_mark(rounds, "Fernhill")
    assert ["photograph", "sample", "pre-production sample"] == list(latest_of_each_kind(rounds, "Fernhill"))


def test_a_maker_without_marks_has_none():
    assert None is sample_mark([round_of(marks=())], "Fernhill")
    assert None is sample_mark([round_of()], "Brightholm")


def test_the_kept_piece_is_the_last_one_approved_in_the_hand():
    rounds = [
        round_of("photograph", decision="approved", came=date(2026, 11, 20), row=4),
        round_of("sample", decision="approved", came=date(2026, 11, 3)),
        round_of("pre-production sample", decision="approved with changes", came=date(2026, 11, 12), row=3),
        round_of("sample", decision="refused", came=date(2026, 11, 19), row=5),
    ]

    assert 3 == kept_piece(rounds, "Fernhill").row


@pytest.mark.parametrize(
    ("first", "second", "difference"),
    [
        ((50.0, 2.6772, -79.7751), (50.0, 0.0, -82.7485), 2.0425),
        ((50.0, -1.3802, -84.2814), (50.0, 0.0, -82.7485), 1.0),
        ((50.0, 0.0, 0.0), (50.0, -1.0, 2.0), 2.3669),
        ((50.0, 2.5, 0.0), (73.0, 25.0, -18.0), 27.1492),
        ((60.2574, -34.0099, 36.2677), (60.4626, -34.1751, 39.4387), 1.2644),
    ],
)
def test_the_published_colour_pairs_are_met(first, second, difference):
    assert difference == pytest.approx(colour_difference(first, second), abs=5e-5)


@given(st.lists(st.integers(0, 10), min_size=1, max_size=4))
def test_a_mark_lies_between_the_least_and_the_greatest_mark(marks):
    low, high = sample_mark([round_of(marks=marks)], "Fernhill")

    assert min(marks) <= low == high <= max(marks)


def test_a_sample_asked_for_or_received_is_paid_for_and_a_photograph_is_none():
    day = date(2026, 11, 13)
    rounds = [
        round_of(maker="Asked", asked_on=day),
        round_of(maker="Came", came=day),
        round_of(maker="Planned"),
        round_of("photograph", maker="Shown", asked_on=day),
    ]

    assert {"Asked", "Came"} == asked_of(rounds)


def test_a_sample_is_undecided_until_a_decision_is_written_beside_the_last_one():
    first = SampleRound(maker="Fernhill", row=2, kind="sample", asked_on=date(2026, 10, 1), decision="another round")
    second = SampleRound(maker="Fernhill", row=3, kind="sample", asked_on=date(2026, 11, 1))
    seen = SampleRound(maker="Fernhill", row=4, kind="photograph", asked_on=date(2026, 11, 20))

    assert (2, second) == undecided_round([first, second, seen], "Fernhill")
    assert undecided_round([first, seen], "Fernhill") is None
