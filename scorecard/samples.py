"""Samples: rounds as they were judged, a maker's marks, and how far a measured colour is off.

Enters: rounds of the sheet Samples. Leaves: marks from 0 to 10 as a range, the piece to keep for comparison, and colour
differences by CIEDE2000.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import field
from datetime import date
from math import fsum
from typing import Literal, get_args

from scorecard.errors import Place
from scorecard.frozen import dataclass

Kind = Literal["photograph", "sample", "pre-production sample"]
Decision = Literal["approved", "approved with changes", "another round", "refused"]
Lab = tuple[float, float, float]

KINDS: tuple[Kind, ...] = get_args(Kind)  # the most telling last
ASPECTS = ("Print", "Colour", "Material", "Finish")
DECISIONS: tuple[Decision, ...] = get_args(Decision)


@dataclass(frozen=True, slots=True, kw_only=True)
class SampleRound:
    """One round of samples from one maker.

    Parameters
    ----------
    maker : spelt as on the sheet Makers
    row : in the sheet, from 1
    asked_on, received_on : None where blank
    marks : low and high mark, 0 to 10, by aspect; an aspect without a mark is not there
    position_off_mm, size_off_mm : low and high; None where blank
    wanted_lab, measured_lab : a colour as wanted and as measured, in CIELAB; None where blank
    """

    maker: str
    row: int
    kind: Kind
    asked_on: date | None = None
    received_on: date | None = None
    marks: Mapping[str, tuple[float, float]] = field(default_factory=dict)
    position_off_mm: tuple[float, float] | None = None
    size_off_mm: tuple[float, float] | None = None
    decision: Decision | None = None
    wanted_lab: Lab | None = None
    measured_lab: Lab | None = None
    place: Place = field(default_factory=Place)

    @property
    def mark(self) -> tuple[float, float] | None:
        """The mean of the marks, as a range; None where none is given."""
        if not self.marks:
            return None
        lows, highs = zip(*self.marks.values(), strict=True)
        return fsum(lows) / len(lows), fsum(highs) / len(highs)


def latest_of_each_kind(rounds: Iterable[SampleRound], maker: str) -> dict[Kind, SampleRound]:
    """Return a maker's last round of each kind that has marks: by the day it came, then by the sheet's order."""
    found: dict[Kind, SampleRound] = {}
    own = (one for one in rounds if one.maker == maker and one.mark is not None)
    for one in sorted(own, key=lambda one: (one.received_on or one.asked_on or date.min, one.row)):
        found[one.kind] = one
    return {kind: found[kind] for kind in KINDS if kind in found}


def sample_mark(rounds: Iterable[SampleRound], maker: str) -> tuple[float, float] | None:
    """Return a maker's mark, 0 to 10, as a range; None where no round has one.

    The most telling kind counts: a pre-production sample before a sample, a sample before a photograph; of it the last
    round, and of that the mean of the marks given (our own choice).
    """
    latest = latest_of_each_kind(rounds, maker)
    return list(latest.values())[-1].mark if latest else None


def asked_of(rounds: Iterable[SampleRound]) -> frozenset[str]:
    """Return the makers of which a sample was asked for or came, so that it is paid for; a photograph is none."""
    return frozenset(one.maker for one in rounds if one.kind != "photograph" and (one.asked_on or one.received_on))


def undecided_round(rounds: Iterable[SampleRound], maker: str) -> tuple[int, SampleRound] | None:
    """Return a maker's last sample that was asked for or came, and its number, from 1; None once it is decided on."""
    own = [one for one in rounds if one.maker == maker and one.kind != "photograph"]
    begun = [one for one in own if one.asked_on or one.received_on]
    last = max(begun, key=lambda one: (one.asked_on or one.received_on or date.min, one.row), default=None)
    return None if last is None or last.decision else (len(begun), last)


def kept_piece(rounds: Sequence[SampleRound], maker: str) -> SampleRound | None:
    """Return the round whose piece is kept, to compare deliveries and the next order with: the last approved."""
    approved = [one for one in rounds if one.maker == maker and one.decision in ("approved", "approved with changes")]
    in_hand = [one for one in approved if one.kind != "photograph"]
    return max(in_hand, key=lambda one: (one.received_on or one.asked_on or date.min, one.row), default=None)


def colour_difference(first: Lab, second: Lab) -> float:
    """Return the CIEDE2000 difference of two colours in CIELAB.

    References
    ----------
    Sharma, Wu and Dalal (2005), Color Research and Application 30(1), 21-30, as the library ``coloraide`` computes it.
    """
    from coloraide import Color

    return float(Color("lab-d65", first).delta_e(Color("lab-d65", second), method="2000"))
