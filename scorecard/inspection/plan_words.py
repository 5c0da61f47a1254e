"""A sampling plan in plain words: what to open, when a lot is over its limit, how likely a bad one slips through."""

from collections.abc import Iterator
from fractions import Fraction
from math import ceil

from scorecard.frozen import dataclass
from scorecard.inspection.odds import slips_through
from scorecard.inspection.plans import Plan, SamplingPlan
from scorecard.inspection.sampling_tables import SIZES
from scorecard.words import counted, listed, rounded, shortest

SLIP_HEADING = "Of 100 lots with so many faulty pieces, so many slip through all the same"
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
    kind, opened = f"{plan.kind.capitalize()} faults", counted(plan.opened, "piece")
    if plan.accept == 0:
        limit = "none is allowed" if plan.limit == 0 else f"limit {shortest(plan.limit)} of 100"
        return f"{kind} ({limit}): the first one in {opened} is over it"
    within = "1 is" if plan.accept == 1 else f"up to {plan.accept} are"
    limit = f"limit {shortest(plan.limit)} of 100"
    return f"{kind} ({limit}): in {opened}, {within} within it, {plan.reject} or more are over it{_ended(plan)}"


def _ended(plan: Plan) -> str:
    """Return that a limit's numbers are in proportion, where the tables end before so large a sample; "" elsewhere."""
    last = SIZES[plan.letter]
    if last >= plan.opened:
        return ""
    return f", in proportion to the {last} pieces at which the tables end for this limit"


def shared_sentence(plan: SamplingPlan) -> str:
    """Return why more pieces are opened than some limit would ask for by itself; "" where none are.

    Examples
    --------
    >>> from scorecard.inspection.plans import sampling_plan
    >>> shared_sentence(sampling_plan(60, "II", {"major": 2.5, "minor": 4.0}))
    'Alone, the limits would ask for 20 pieces (major) and 13 (minor); one sample of 20 serves them all'
    """
    if not plan.is_more_than_alone:
        return ""
    first, *others = plan.plans
    alone = [f"{counted(first.alone, 'piece')} ({first.kind})", *(f"{one.alone} ({one.kind})" for one in others)]
    least = max(one.alone for one in plan.plans)
    why = "" if least == plan.opened else ", the smallest for which the tables have numbers for each"
    return f"Alone, the limits would ask for {listed(alone)}; one sample of {plan.opened} serves them all{why}"


def slip_rows(plan: SamplingPlan) -> Iterator[tuple[str, ...]]:
    """Yield how likely bad lots slip through: how many pieces have a fault, then of 100 such lots, for each kind.

    Examples
    --------
    >>> from scorecard.inspection.plans import sampling_plan
    >>> list(slip_rows(sampling_plan(100, "II", {"major": 2.5})))[2]
    ('10 of 100', '36.3')
    """
    found = list(slips(plan))
    for faulty in dict.fromkeys(slip.faulty for slip in found):
        yield (f"{faulty} of {plan.lot}", *(of_100(slip.chance) for slip in found if slip.faulty == faulty))


def of_100(chance: Fraction) -> str:
    """Return a chance as so many of 100; only what cannot happen is none, and only what must is all.

    Examples
    --------
    >>> of_100(Fraction(0)), of_100(Fraction(1, 10**6)), of_100(Fraction(1, 3)), of_100(Fraction(9999, 10000))
    ('none', 'under 0.1', '33.3', 'over 99.9')
    """
    if chance in (0, 1):
        return "all" if chance else "none"
    if chance < Fraction(1, 1000):
        return "under 0.1"
    return "over 99.9" if chance > Fraction(999, 1000) else rounded(float(100 * chance))
