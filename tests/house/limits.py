"""Limits of the corpus and the fuzzer, judged in every run but the one with coverage: tracing makes all slower."""

import os

import coverage

LEFT_OUT = "LIMITS_LEFT_OUT"


def is_within(taken: float, most: float) -> bool:
    """Return whether no more was taken than may be, or limits are not judged in this run."""
    return taken <= most or not _are_judged()


def _are_judged() -> bool:
    """Return whether limits are judged: unless the variable is set, in a process that is traced, outside CI."""
    is_traced = coverage.Coverage.current() is not None
    return LEFT_OUT not in os.environ or not is_traced or bool(os.environ.get("CI"))
