"""How many pieces to open of a lot, and with how many faulty ones it is over its limit.

Enters: the lot, the level, and a limit for each kind of fault. Leaves: the plan of each kind, and one number of pieces
to open by which all of them are judged. Source: MIL-STD-105E, with its rules of use: an arrow changes the letter and
the sample with it; a sample of at least the lot is the whole lot; of several samples the largest may serve all kinds,
each being judged by the numbers that belong to that sample. Where the table ends before so large a sample, the last
numbers of the limit count in proportion (our own choice).
"""

from collections.abc import Mapping
from fractions import Fraction

from scorecard.frozen import dataclass
from scorecard.inspection.faults import KINDS, Kind
from scorecard.inspection.sampling_tables import LETTERS, SIZES, Level, cell, code_letter

NONE_ALLOWED = 0.0  # a limit that is no column of the tables: the first faulty piece is one too many


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """How one kind of fault is judged.

    Parameters
    ----------
    kind : of fault
    limit : faulty pieces of 100, one of ``LIMITS``; 0 where none is allowed
    letter : of the row in which the numbers stand
    opened : pieces that are judged: all that are drawn
    accept, reject : up to so many faulty pieces the lot is within its limit; from so many it is over it
    alone : pieces that this limit would ask for if it were the only one
    """

    kind: Kind
    limit: float
    letter: str
    opened: int
    accept: int
    reject: int
    alone: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SamplingPlan:
    """What to open of a lot.

    Parameters
    ----------
    lot : pieces that arrived
    level : general inspection level
    opened : pieces to open in all
    plans : one for each kind of fault
    """

    lot: int
    level: Level
    opened: int
    plans: tuple[Plan, ...]

    @property
    def is_more_than_alone(self) -> bool:
        """Whether more pieces are opened than some limit would ask for by itself."""
        return any(plan.alone < self.opened for plan in self.plans)

    @property
    def is_whole_lot(self) -> bool:
        """Whether the sample is the lot."""
        return self.opened == self.lot


def letter_of_plan(letter: str, limit: float) -> str:
    """Return the letter in whose row the plan stands, once the arrows are followed; where none is allowed, the same.

    Examples
    --------
    >>> letter_of_plan("H", 0.65), letter_of_plan("F", 1.0), letter_of_plan("R", 10.0)
    ('J', 'E', 'K')
    """
    return _followed(letter, limit)[0]


def _followed(letter: str, limit: float) -> tuple[str, int]:
    """Return the letter to which the arrows lead, and up to how many faulty pieces are within the limit there."""
    if limit == NONE_ALLOWED:
        return letter, 0
    found = cell(letter, limit)
    if isinstance(found, tuple):
        return letter, found[0]
    step = 1 if found == "down" else -1
    return _followed(LETTERS[LETTERS.index(letter) + step], limit)


def sampling_plan(lot: int, level: Level, limits: Mapping[Kind, float]) -> SamplingPlan:
    """Return what to open of a lot, and how it is judged.

    Parameters
    ----------
    lot : pieces, at least 1
    level : general inspection level
    limits : faulty pieces of 100 by kind, each one of ``LIMITS`` or 0

    Raises
    ------
    ValueError
        If the lot has no piece.

    Examples
    --------
    >>> plan = sampling_plan(300, "II", {"critical": 0, "major": 2.5, "minor": 4.0})
    >>> plan.opened, [(one.kind, one.accept, one.reject) for one in plan.plans]
    (50, [('critical', 0, 1), ('major', 3, 4), ('minor', 5, 6)])
    """
    if lot < 1:
        raise ValueError("a lot has at least one piece")
    own = code_letter(lot, level)
    shared = _shared_letter(own, list(limits.values()))
    plans = tuple(_plan(kind, limits[kind], own, shared, lot) for kind in KINDS if kind in limits)
    return SamplingPlan(lot=lot, level=level, opened=min(SIZES[shared], lot), plans=plans)


def _shared_letter(own: str, limits: list[float]) -> str:
    """Return the first letter whose sample judges all kinds, none smaller than any kind asks for."""
    largest = max(LETTERS.index(letter_of_plan(own, limit)) for limit in limits)
    return next(letter for letter in LETTERS[largest:] if all(_serves(letter, limit) for limit in limits))


def _serves(letter: str, limit: float) -> bool:
    """Return whether a limit is judged at a letter: by its numbers there, or because the table has none any more."""
    later = LETTERS[LETTERS.index(letter) :]
    return limit == NONE_ALLOWED or isinstance(cell(letter, limit), tuple) or not _has_numbers(later, limit)


def _has_numbers(letters: str, limit: float) -> bool:
    return any(isinstance(cell(letter, limit), tuple) for letter in letters)


def _plan(kind: Kind, limit: float, own: str, shared: str, lot: int) -> Plan:
    """Return the plan of one kind at the shared letter.

    Where another limit's sample is the whole lot, this one's numbers are those of the limit itself: those of so large a
    sample would let far more through.
    """
    (letter, within), alone = _followed(shared, limit), letter_of_plan(own, limit)
    opened = min(SIZES[shared], lot)
    accept = within * opened // min(SIZES[letter], opened)
    if shared != alone and opened == lot:
        accept = min(accept, int(Fraction(str(limit)) * lot / 100))
    return Plan(
        kind=kind,
        limit=limit,
        letter=letter,
        opened=opened,
        accept=accept,
        reject=accept + 1,
        alone=min(SIZES[alone], lot),
    )
