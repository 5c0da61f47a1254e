"""How things stand with each maker before money moves: asked and answered, samples, checks, warning signs, in words."""

from collections.abc import Sequence
from datetime import date
from math import fsum, isinf, isnan
from typing import TYPE_CHECKING

import numpy as np

from scorecard.calculation import Calculation
from scorecard.checks import MONEY_CAUTION, USUAL_CHECKS, Checked, checked, sign_of
from scorecard.frozen import dataclass
from scorecard.ranking import Ranking, rank_makers
from scorecard.value_functions import Floats
from scorecard.words import counted, day_words, listed, rounded, shortest

if TYPE_CHECKING:
    from scorecard.samples import SampleRound

FIRST = 3  # makers of the ranking who are told of whatever is known of them
MOST = 12
CAUTION_ON_COLOUR = (
    "Colour differences are by CIEDE2000, from the figures that you typed. "
    "A photograph or a screen cannot settle a colour."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Dealing:
    """How things stand with one maker, each part in words; "" or nothing where there is nothing to say."""

    maker: str
    contact: str
    samples: tuple[str, ...]
    to_check: str
    signs: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Dealings:
    """How things stand with the first makers, what the usual checks are, and cautions."""

    makers: tuple[Dealing, ...]
    what_samples_change: str
    usual: tuple[tuple[str, str], ...]
    cautions: tuple[str, ...]


def dealings_of(calculation: Calculation) -> Dealings | None:
    """Return how things stand with the first of the ranking, and with every other ranked maker of whom there is word.

    None where no maker is ranked.
    """
    order = calculation.ranking.order
    case = calculation.case
    told = {one.maker for one in case.samples} | {one.maker for one in case.checks}
    names = calculation.case.table.makers
    chosen = [maker for place, maker in enumerate(order) if place < FIRST or names[maker] in told][:MOST]
    if not chosen:
        return None
    measured = any(one.wanted_lab and one.measured_lab for one in calculation.case.samples)
    return Dealings(
        makers=tuple(_dealing(calculation, maker) for maker in chosen),
        what_samples_change=what_samples_change(calculation),
        usual=tuple((one.name, one.how) for one in USUAL_CHECKS),
        cautions=(MONEY_CAUTION, *((CAUTION_ON_COLOUR,) if measured else ())),
    )


def what_samples_change(calculation: Calculation) -> str:
    """Return which of the first makers rank otherwise with a weight on sample marks than without it; "" where none.

    The weight is the criterion's own; where that is 0, the mean of the weights that there are, which is only tried. The
    other criteria keep their proportions.
    """
    case, shares = calculation.case, calculation.shares
    at = next((at for at, one in enumerate(case.criteria) if one.measure == "sample_marks"), None)
    if at is None or not case.samples or shares[at] >= 1:
        return ""
    tried = 0.0 if shares[at] else 1 / (1 + np.count_nonzero(shares))
    without, with_it = (_with_share(calculation, at, part) for part in (0.0, tried or float(shares[at])))
    if not tried:
        return f"Sample marks {_moves(calculation, without, with_it, '')}"
    weights = [one.weight for one in case.criteria if one.weight]
    weight = shortest(round(fsum(weights) / len(weights), 1))
    moves = _moves(calculation, without, with_it, "would ")
    return f"Sample marks have weight 0. With a weight of {weight} they {moves}"


def _with_share(calculation: Calculation, at: int, part: float) -> Ranking:
    """Return the ranking with one share of the criteria set, the others keeping their proportions."""
    shares = calculation.shares.copy()
    shares[at] = 0.0
    shares *= (1 - part) / shares.sum()
    shares[at] = part
    return rank_makers(calculation.points, shares, calculation.screening.ruled_out)


def _moves(calculation: Calculation, without: Ranking, with_it: Ranking, would: str) -> str:
    """Return which of the first makers rank otherwise, and who leads then; ``would``: "would " of what is but tried."""
    moved = [maker for maker in with_it.order[:MOST] if without.ranks[maker] != with_it.ranks[maker]]
    if not moved:
        return f"{would}change no rank among the first makers."
    names = calculation.case.table.makers
    moves = listed(f"{names[maker]} from rank {without.ranks[maker]} to {with_it.ranks[maker]}" for maker in moved)
    leads = "" if without.leaders == with_it.leaders else f" They {would}change who leads."
    return f"{would}move {moves}.{leads}"


def _dealing(calculation: Calculation, maker: int) -> Dealing:
    case, name = calculation.case, calculation.case.table.makers[maker]
    found = checked(case.checks, name)
    rounds = tuple(sample_words(one) for one in latest_and_undecided(case.samples, name))
    return Dealing(
        maker=name,
        contact=contact_words(calculation, maker),
        samples=rounds + _kept(case.samples, name),
        to_check=to_check_words(found),
        signs=tuple(sign_of(one) for one in found.signs),
    )


def contact_words(calculation: Calculation, maker: int) -> str:
    """Return when a maker was asked and when it answered."""
    table = calculation.case.table
    asked, answered = (_day(days, maker) for days in (table.asked_on, table.answered_on))
    if asked is None:
        return "not asked yet" if answered is None else f"answered on {day_words(answered)}"
    if answered is None:
        return f"asked on {day_words(asked)}, no answer yet"
    return f"asked on {day_words(asked)}, answered on {day_words(answered)}"


def _day(days: Floats, maker: int) -> date | None:
    if not len(days) or isnan(days[maker]):
        return None
    return date.fromordinal(int(days[maker]))


def latest_and_undecided(rounds: "Sequence[SampleRound]", maker: str) -> "list[SampleRound]":
    """Return a maker's last marked round of each kind, and its rounds without a mark, in the sheet's order."""
    if not rounds:
        return []
    from scorecard.samples import latest_of_each_kind

    latest = latest_of_each_kind(rounds, maker).values()
    unmarked = [one for one in rounds if one.maker == maker and one.mark is None]
    return sorted([*latest, *unmarked], key=lambda one: one.row)


def sample_words(one: "SampleRound") -> str:
    """Return one round in words: when it came, its marks, what is off, what was decided."""
    came = f"came on {day_words(one.received_on)}" if one.received_on else _asked_words(one)
    parts = [f"{one.kind} {came}".strip()]
    if one.mark is not None:
        marks = listed(f"{aspect.lower()} {_range(mark)}" for aspect, mark in one.marks.items())
        parts.append(f"marked {_range(one.mark)} of 10 ({marks})")
    off = [("position", one.position_off_mm), ("size", one.size_off_mm)]
    parts.extend(f"{what} off by {_range(ends)} mm" for what, ends in off if ends is not None)
    if one.wanted_lab and one.measured_lab:
        from scorecard.samples import colour_difference

        parts.append(f"colour off by {rounded(colour_difference(one.wanted_lab, one.measured_lab))}")
    if one.decision:
        parts.append(one.decision)
    return "; ".join(parts)


def _asked_words(one: "SampleRound") -> str:
    return f"asked for on {day_words(one.asked_on)}, not here yet" if one.asked_on else ""


def _range(ends: tuple[float, float]) -> str:
    low, high = ends
    if isinf(high):
        return f"{shortest(low)} or more"
    return _figure(low) if low == high else f"{_figure(low)} to {_figure(high)}"


def _figure(number: float) -> str:
    return shortest(round(number, 1))


def _kept(rounds: "Sequence[SampleRound]", maker: str) -> tuple[str, ...]:
    if not rounds:
        return ()
    from scorecard.samples import kept_piece

    kept = kept_piece(rounds, maker)
    if kept is None:
        return ()
    came = f" of {day_words(kept.received_on)}" if kept.received_on else ""
    return (f"keep the approved {kept.kind}{came}: deliveries and the next order are compared with it",)


def to_check_words(found: Checked) -> str:
    """Return which checks are still open, and how many are done."""
    if not found.done and not found.signs:
        return "nothing yet of the usual checks below" if len(found.open) == len(USUAL_CHECKS) else listed(found.open)
    done = counted(len(found.done), "check")
    return f"{listed(found.open)} ({done} done)" if found.open else f"nothing: {done} done"
