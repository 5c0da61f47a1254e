import tomllib
from pathlib import Path

import pytest

from scorecard.reading.toml_rescue import Rescue

KINDS = sorted((Path(__file__).parents[2] / "criteria").glob("*.toml"))


@pytest.mark.parametrize("kind", KINDS, ids=[kind.stem for kind in KINDS])
def test_a_text_without_fault_comes_through_as_it_is(kind):
    text = kind.read_text("utf-8")
    rescue = Rescue(text)

    assert (rescue.values, rescue.faults, rescue.is_whole) == (tomllib.loads(text), [], True)


def test_what_is_put_right_and_what_is_lost_are_told_of_one_text():
    rescue = Rescue("a = “x”\nb = 1,5\nc = 2 weeks\nd = 3\n")

    assert {"a": "x", "b": 1.5, "d": 3} == rescue.values
    found = [(fault.code, fault.line, fault.path, fault.is_lost) for fault in rescue.faults]
    expected = [
        ("curly-quotes", 1, ("a",), False),
        ("comma-in-number", 2, ("b",), False),
        ("not-toml", 3, ("c",), True),
    ]
    assert expected == sorted(found, key=lambda fault: fault[1])
    assert [("a",), ("b",), ("c",), ("d",)] == [statement.path for statement in rescue.statements]
