"""Samples and checks in the machine-readable result."""

from dataclasses import replace

from cases import AS_OF, rated

from scorecard.assessment import assess
from scorecard.checks import Check
from scorecard.samples import SampleRound

CASE = rated((1,), {"Fernhill": [3], "Brightholm": [2]})


def result_of(samples=(), checks=()):
    return assess(replace(CASE, samples=samples, checks=checks), as_of=AS_OF).as_json()


def test_nothing_written_down_adds_no_key():
    assert set() == {"samples", "checks"} & result_of().keys()


def test_a_round_is_given_with_its_mark():
    one = SampleRound(maker="Fernhill", row=3, kind="sample", marks={"Print": (8, 8), "Colour": (6, 7)})

    assert [
        {
            "maker": "Fernhill",
            "row": 3,
            "round": "sample",
            "received_on": None,
            "mark": {"low": 7.0, "high": 7.5},
            "decision": None,
        }
    ] == result_of((one,))["samples"]


def test_checks_are_given_by_maker():
    one = Check(maker="Brightholm", row=2, name="references", state="no")
    (found,) = result_of(checks=(one,))["checks"]

    assert ("Brightholm", [], ["it names no buyer who can be asked (guidance: US Commercial Service)"]) == (
        found["maker"],
        found["done"],
        found["warning_signs"],
    )
