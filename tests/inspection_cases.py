"""Arrivals and outcomes for tests."""

from scorecard.inspection.faults import KINDS, TallyLine, fault_list
from scorecard.inspection.outcome import Arrival, outcome_of

LINES = {line.code: line for line in fault_list({})} | {
    kind: TallyLine(code=kind, kind=kind, text="") for kind in KINDS
}


def arrival(lot=200, ordered=200, **fields):
    """Return what arrived, of an invented maker."""
    return Arrival(**{"maker": "Fernhill", "item": "mug", "ordered": ordered, "lot": lot} | fields)


def outcome(opened=200, *, plan=None, came=None, **counts):
    """Return the outcome of counts by code, or by kind."""
    return outcome_of(came or arrival(), opened, {LINES[code]: pieces for code, pieces in counts.items()}, plan)
