"""What the counts of an arrival come to: faulty share, money, photographs, and what each kind's limit says.

Enters: the arrival, how many pieces were opened, and faulty pieces by fault, each piece counted once, under its worst
fault. Leaves: an outcome. Nothing here says that a lot is good.
"""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from scorecard.costing.amounts import times, to_minor
from scorecard.errors import Place
from scorecard.frozen import dataclass
from scorecard.inspection.faults import KINDS, Kind, TallyLine
from scorecard.inspection.odds import most_faulty
from scorecard.inspection.plans import Plan, SamplingPlan

Verdict = Literal["over its limit", "not over its limit", "not judged"]


@dataclass(frozen=True, slots=True, kw_only=True)
class PiecePrice:
    """What a piece cost at the door.

    Parameters
    ----------
    low, high : the same where it is known
    currency : ISO 4217
    source : where it comes from, in words
    """

    low: Decimal
    high: Decimal
    currency: str
    source: str

    def of(self, pieces: int) -> tuple[Decimal, Decimal]:
        """Return what so many pieces cost, to the last minor unit: least and most."""
        low, high = (to_minor(times(end, Decimal(pieces)), self.currency) for end in (self.low, self.high))
        return low, high


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrival:
    """What arrived.

    Parameters
    ----------
    maker : None where no order is noted
    ordered, lot : pieces ordered, and pieces that arrived
    accepted : the fewest and the most pieces that were agreed on; None where nothing was
    complain_days : after arrival, from which the last day to complain follows; None where it does not
    per_carton : pieces in a full carton; None where it is not known
    price : None where it is not known
    counted_among : pieces among which the sheet's faulty ones count: opened, else ordered; None where it says neither
    arrived_at, complain_at, paid_at, faulty_at, opened_at : the order's cells; None where there is no order or column
    """

    maker: str | None
    item: str
    ordered: int
    lot: int
    ordered_on: date | None = None
    arrived_on: date | None = None
    complain_until: date | None = None
    accepted: tuple[int, int] | None = None
    complain_days: int | None = None
    per_carton: int | None = None
    price: PiecePrice | None = None
    counted_among: int | None = None
    arrived_at: Place | None = None
    complain_at: Place | None = None
    paid_at: Place | None = None
    faulty_at: Place | None = None
    opened_at: Place | None = None

    @property
    def cartons(self) -> int | None:
        """How many cartons there are; None where it is not known."""
        return None if self.per_carton is None else -(-self.lot // self.per_carton)

    @property
    def missing(self) -> int:
        """Pieces that were ordered and did not arrive."""
        return max(0, self.ordered - self.lot)

    @property
    def owed(self) -> int:
        """Missing pieces that are claimed: all of them, or none where so few were agreed on."""
        return 0 if self.accepted and self.lot >= self.accepted[0] else self.missing

    @property
    def extra(self) -> int:
        """Pieces that arrived beyond those ordered."""
        return max(0, self.lot - self.ordered)

    @property
    def beyond(self) -> int:
        """Pieces that arrived beyond the most that were agreed on; beyond those ordered where nothing was."""
        return max(0, self.lot - (self.accepted[1] if self.accepted else self.ordered))


@dataclass(frozen=True, slots=True, kw_only=True)
class Count:
    """Faulty pieces of one line of the sheet, and the numbers of their photographs, first and last."""

    line: TallyLine
    pieces: int
    photographs: tuple[int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """What one kind's plan says of the counts.

    Parameters
    ----------
    opened : pieces, as many as the plan judges, or others
    found : faulty pieces among them
    most : the most that the whole lot may well hold; see ``most_faulty``
    """

    plan: Plan
    opened: int
    found: int
    verdict: Verdict
    most: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What the counts come to.

    Parameters
    ----------
    opened : pieces
    counts : of the lines with a faulty piece, in the order of the sheet
    judged : by kind; none where no sample was drawn
    """

    arrival: Arrival
    opened: int
    counts: tuple[Count, ...]
    judged: tuple[Judged, ...] = ()

    def of(self, *kinds: Kind) -> int:
        """Return the faulty pieces of some kinds."""
        return sum(count.pieces for count in self.counts if count.line.kind in kinds)

    @property
    def faulty(self) -> int:
        """Faulty pieces of every kind, minor faults too."""
        return self.of(*KINDS)

    @property
    def share(self) -> Fraction:
        """The faulty part of the pieces that were opened."""
        return Fraction(self.faulty, self.opened)

    @property
    def lost(self) -> int:
        """Pieces that cannot be sold as what was ordered, and missing pieces that are claimed."""
        return self.of("critical", "major") + self.arrival.owed

    @property
    def unopened(self) -> int:
        """Pieces of which nothing is known."""
        return self.arrival.lot - self.opened

    @property
    def halted(self) -> int:
        """Pieces that are not counted as lost, and not to be sold since the lot has a critical fault."""
        return self.arrival.lot - self.of("critical", "major") if self.of("critical") else 0

    def worth(self, pieces: int) -> tuple[Decimal, Decimal] | None:
        """Return what so many pieces cost, to the last minor unit: least and most; None where it is not known."""
        return None if self.arrival.price is None else self.arrival.price.of(pieces)


def outcome_of(
    arrival: Arrival, opened: int, faulty: Mapping[TallyLine, int], plan: SamplingPlan | None = None
) -> Outcome:
    """Return what the counts of an arrival come to.

    Parameters
    ----------
    arrival : what arrived
    opened : pieces, at least 1 and at most those that arrived
    faulty : pieces by line of the sheet, adding up to at most those opened
    plan : where a sample was drawn

    Raises
    ------
    ValueError
        If more pieces were opened than arrived, or are faulty than were opened.
    """
    if not 1 <= opened <= arrival.lot or sum(faulty.values()) > opened:
        raise ValueError("faulty pieces are among those opened, and those among what arrived")
    counts = tuple(_counted(faulty))
    judged = () if plan is None else _judged(plan, opened, counts)
    return Outcome(arrival=arrival, opened=opened, counts=counts, judged=judged)


def _counted(faulty: Mapping[TallyLine, int]) -> Iterable[Count]:
    """Yield the counts with the numbers of their photographs, one a piece, in the order of the sheet."""
    before = 0
    for line in sorted(faulty, key=lambda one: (KINDS.index(one.kind), len(one.code), one.code)):
        pieces = faulty[line]
        if pieces:
            yield Count(line=line, pieces=pieces, photographs=(before + 1, before + pieces))
        before += pieces


def _judged(plan: SamplingPlan, opened: int, counts: Sequence[Count]) -> tuple[Judged, ...]:
    """Return what each kind's plan says."""
    judged = []
    for one in plan.plans:
        found = sum(count.pieces for count in counts if count.line.kind == one.kind)
        verdict, most = _verdict(one, plan.lot, opened, found), most_faulty(plan.lot, opened, found)
        judged.append(Judged(plan=one, opened=opened, found=found, verdict=verdict, most=most))
    return tuple(judged)


def _verdict(plan: Plan, lot: int, opened: int, found: int) -> Verdict:
    """Return what is certain: however the rest of the sample turns out; of a whole lot, by its share."""
    is_over = 100 * found > Fraction(str(plan.limit)) * lot
    if opened == lot != plan.opened:
        return "over its limit" if is_over else "not over its limit"
    more = max(0, opened - plan.opened)
    if found >= plan.reject + more or (more and is_over and found >= plan.reject):
        return "over its limit"
    return "not over its limit" if opened >= plan.opened and found <= plan.accept else "not judged"
