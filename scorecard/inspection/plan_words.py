"""A sampling plan in plain words: what to open, when a lot is over its limit, how likely a bad one slips through."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from scorecard.inspection.odds import slips_through
from scorecard.inspection.plans import Plan, SamplingPlan
from scorecard.words import counted, rounded, shortest

SHOWN_SHARES = (Fraction(1, 50), Fraction(1, 20), Fraction(1, 10), Fraction(1, 5))  # of the lot; our own choice
NO_PROMISE = (
    "A sample that stays within its limits does not say that the lot is good: it says that a very bad one would "
    "probably have shown"
)
SOURCE = (
    "Numbers from MIL-STD-105E, single sampling, normal inspection. Its limits are meant for lot after lot from one "
    "maker; of a single order the chances below say more"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Slip:
    """How likely a lot with so many faulty pieces stays within its limit all the same."""

    plan: Plan
    faulty: int
    chance: Fraction


def slips(plan: SamplingPlan) -> Iterator[Slip]:
    """Yield, for each kind, how likely lots with some shares of faulty pieces slip through; each number once."""
    for one in plan.plans:
        for faulty in sorted({ceil(share * plan.lot) for share in SHOWN_SHARES}):
            chance = slips_through(plan.lot, faulty, one.opened, one.accept)
            yield Slip(plan=one, faulty=faulty, chance=chance)


def limit_sentence(plan: Plan) -> str:
    """Return what one kind's limit is, and when a lot is over it."""
    limit = "none allowed" if plan.limit == 0 else f"limit {shortest(plan.limit)} of 100"
    return (
        f"{plan.kind.capitalize()} faults ({limit}): up to {plan.accept} in {counted(plan.opened, 'piece')} are within "
        f"it, {plan.reject} or more are over it"
    )


def slip_sentence(slip: Slip, lot: int) -> str:
    """Return how likely one bad lot slips through.

    Examples
    --------
    >>> from scorecard.inspection.plans import sampling_plan
    >>> plan = sampling_plan(100, "II", {"major": 2.5})
    >>> slip_sentence(next(one for one in slips(plan) if one.faulty == 10), 100)
    'with 10 of 100 faulty (10.0 of 100), it slips through in 36.3 of 100 cases'
    """
    share = rounded(100 * slip.faulty / lot)
    return f"with {slip.faulty} of {lot} faulty ({share} of 100), it slips through in {chance_words(slip.chance)}"


def chance_words(chance: Fraction) -> str:
    """Return a chance as so many of 100 cases; only what cannot happen is 0, and only what must is 100.

    Examples
    --------
    >>> chance_words(Fraction(0)), chance_words(Fraction(1, 10**6)), chance_words(Fraction(1, 3))
    ('no case', 'less than 0.1 of 100 cases', '33.3 of 100 cases')
    """
    if chance in (0, 1):
        return "every case" if chance else "no case"
    if chance < Fraction(1, 1000):
        return "less than 0.1 of 100 cases"
    if chance > Fraction(999, 1000):
        return "more than 99.9 of 100 cases"
    return f"{rounded(float(100 * chance))} of 100 cases"
