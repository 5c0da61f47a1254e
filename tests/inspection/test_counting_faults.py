"""Counts as they are typed: every mistake at once, each with the word that it is about."""

import pytest

from scorecard.inspection.counting_faults import count_faults
from scorecard.inspection.faults import fault_list

LINES = fault_list({"critical": ("burr",), "major": ("chip", "smudge"), "minor": ("speck",)})


def counted(*words, opened=200, arrived=200):
    return count_faults(words, LINES, opened, arrived)


def test_codes_and_whole_kinds_are_counted():
    found = counted("b1=4", "minor=12", "A1=0")
    assert [("B1", 4), ("minor", 12), ("A1", 0)] == [(line.code, pieces) for line, pieces in found.faulty.items()]
    assert () == found.mistakes


def test_every_piece_that_came_may_be_opened_and_be_faulty_be_it_one_alone():
    assert () == counted("B1=1", opened=1, arrived=1).mistakes


@pytest.mark.parametrize(
    ("word", "told"),
    [
        ("B9=1", "B9 is no code of the sheet, which has B1 to B3"),
        ("Z1=1", "Z1 is no code of the sheet, which has A1 to C2"),
        ("=1", "nothing is no code of the sheet"),
        ("B1", "there is no = in it"),
        ("B1=x", "x is not a whole number"),
        ("B1=-1", "-1 is not a whole number"),
        ("B1=1.5", "1.5 is not a whole number"),
        ("B1=", "nothing is not a whole number"),
        ("B1=²", "² is not a whole number"),
    ],
)
def test_a_word_that_is_no_count_is_told_with_what_it_could_be(word, told):
    (mistake,) = counted(word).mistakes
    assert mistake.startswith(f"{word}: {told}")


def test_a_code_twice_is_refused():
    assert ["B1=2: B1 is counted twice. Give one number for it"] == list(counted("B1=1", "B1=2").mistakes)


def test_a_kind_as_a_whole_and_by_code_is_refused():
    (mistake,) = counted("major=7", "B2=3", "C1=1").mistakes
    assert mistake.startswith("major=… and B2: the same pieces would count twice")


@pytest.mark.parametrize(
    ("opened", "arrived", "told"),
    [
        (None, 200, "--opened is missing"),
        (0, 200, "--opened 0: nothing was opened"),
        (-3, 200, "--opened -3: nothing was opened"),
        (201, 200, "--opened 201: only 200 pieces arrived"),
        (3, 200, "4 faulty pieces of 3 opened: more than there are"),
    ],
)
def test_pieces_beyond_what_there_is_are_refused(opened, arrived, told):
    (mistake,) = counted("B1=4", opened=opened, arrived=arrived).mistakes
    assert mistake.startswith(told)


def test_every_mistake_is_told_at_once():
    assert 4 == len(counted("B9=1", "B1=x", "B2=300", opened=250).mistakes)
