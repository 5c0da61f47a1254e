"""How firm first place is, in sentences: how far each weight can go, what brings rivals level, who can never lead."""

from collections import defaultdict
from collections.abc import Iterator, Sequence

from scorecard.calculation import Calculation
from scorecard.frozen import dataclass
from scorecard.ranking import TIE
from scorecard.report.texts import sentence
from scorecard.sensitivity.weight_ranges import WeightRange
from scorecard.sentences import NAMED, change_sentence, range_sentence, some
from scorecard.words import counted, listed

TOLD = 6  # weights told of in sentences; the table beside them has all


@dataclass(frozen=True, slots=True, kw_only=True)
class Firm:
    """How firm first place is, as written.

    Parameters
    ----------
    leader : whose first place it is; None where nobody is ranked
    alone : whether it has no rival
    joint : a note where first place is shared, else None
    ranges : sentences about the weights that can change the leader, the nearest first
    steady : sentence about those that cannot; None where there are none
    changes : sentences about the rivals that a change of weights brings level, nearest first
    weightless : sentence about the criteria of weight 0, which changes and draws leave at 0; None where all have some
    further : sentence about such rivals that are left out; None where none are
    never : sentences about the makers that no weighting puts first alone, and who beats them on everything
    """

    leader: str | None
    alone: bool = True
    joint: str | None = None
    ranges: tuple[str, ...] = ()
    steady: str | None = None
    weightless: str | None = None
    changes: tuple[str, ...] = ()
    further: str | None = None
    never: tuple[str, ...] = ()


def firm_of(calculation: Calculation) -> Firm:
    """Return how firm first place is."""
    order, names = calculation.ranking.order, calculation.case.table.makers
    if len(order) < 2:
        return Firm(leader=names[order[0]] if order else None)
    changes, further = _changes(calculation)
    ranges, steady = _ranges(calculation)
    return Firm(
        leader=names[order[0]],
        alone=False,
        joint=_joint(calculation),
        ranges=ranges,
        steady=steady,
        weightless=_weightless(calculation),
        changes=changes,
        further=further,
        never=_never(calculation),
    )


def _joint(calculation: Calculation) -> str | None:
    leaders = [calculation.case.table.makers[maker] for maker in calculation.ranking.leaders]
    if len(leaders) < 2:
        return None
    level = f"{some(leaders)} are level."
    return f"{level} What follows is told of {leaders[0]}, the first in the sheet; level counts as first."


def _ranges(calculation: Calculation) -> tuple[tuple[str, ...], str | None]:
    """Sentences about the weights that can change the leader, the nearest first, and one about the others."""
    criteria, found = calculation.case.criteria.criteria, calculation.firmness.weight_ranges
    steady = [at for at, one in enumerate(found) if one is not None and _held(one)]
    moving = sorted(set(range(len(found))) - set(steady), key=lambda at: (_room(calculation, at), at))
    told = tuple(f"{criteria[at].title}: {range_sentence(calculation, at)}." for at in moving[:TOLD])
    if not steady:
        return told, None
    leader = calculation.case.table.makers[calculation.ranking.order[0]]
    return told, f"Whatever the weight of {listed((criteria[at].title for at in steady), 'or')}, {leader} stays first."


def _held(found: WeightRange) -> bool:
    return found.overtaken_below is None and found.overtaken_above is None


def _room(calculation: Calculation, at: int) -> float:
    """Return how far a share is from the nearer end at which another takes over."""
    found, share = calculation.firmness.weight_ranges[at], float(calculation.shares[at])
    if found is None:
        return 1.0
    below = 1.0 if found.overtaken_below is None else share - found.low
    return min(below, 1.0 if found.overtaken_above is None else found.high - share)


def _weightless(calculation: Calculation) -> str | None:
    titles = [one.title for one in calculation.case.criteria if one.weight == 0]
    if not titles:
        return None
    has, it = ("has", "it") if len(titles) == 1 else ("have", "them")
    return (
        f"{some(titles)} {has} weight 0. What a weight for {it} alone would do stands in the table above; here, and "
        f"where weights are drawn at random, nothing gives {it} any."
    )


def _changes(calculation: Calculation) -> tuple[tuple[str, ...], str | None]:
    near = [(part, at, maker) for at, (maker, part) in enumerate(calculation.firmness.moved()) if part is not None]
    told = tuple(sentence(change_sentence(calculation, maker)) for _, _, maker in sorted(near)[:NAMED])
    more = len(near) - len(told)
    if not more:
        return told, None
    return told, f"For {counted(more, 'rival')} further off, more weight would have to move."


def _never(calculation: Calculation) -> tuple[str, ...]:
    names, firmness = calculation.case.table.makers, calculation.firmness
    found = list(zip(calculation.ranking.order, firmness.can_lead, strict=True))
    never = [maker for maker, one in found if not one.possible]
    joining = [maker for maker, one in found if one.level and maker not in calculation.ranking.leaders]
    said = []
    if never:
        said.append(
            f"As the answers count now, no weighting puts {some([names[maker] for maker in never], 'or')} first."
        )
    if joining:
        said.append(
            f"As the answers count now, {some([names[maker] for maker in joining])} can at best share first place."
        )
    return (*said, *_beaten(calculation, [*never, *joining]))


def _beaten(calculation: Calculation, outdone: Sequence[int]) -> Iterator[str]:
    """Yield who beats these makers on all that has weight, each once; those that only equal one somewhere come last."""
    names, beaters = calculation.case.table.makers, defaultdict(list)
    everything = "everything that has weight" if (calculation.shares == 0).any() else "everything"
    for better, worse in calculation.firmness.beats:
        beaters[worse].append(better)
    whole: dict[int, list[str]] = defaultdict(list)
    partly: dict[int, list[str]] = defaultdict(list)
    for maker in outdone:
        if beaters[maker]:
            better, outright = _beater(calculation, beaters[maker], maker)
            (whole if outright else partly)[better].append(names[maker])
    yield from (f"{names[better]} beats {some(worse)} on {everything}." for better, worse in whole.items())
    yield from (f"{names[better]} beats or equals {some(worse)} on {everything}." for better, worse in partly.items())


def _beater(calculation: Calculation, beaters: Sequence[int], maker: int) -> tuple[int, bool]:
    """Return who is first to beat a maker outright, or else to beat or equal it, and which of these it is."""
    counted = calculation.points.counted[:, calculation.shares > 0]
    outright = (counted[beaters] - counted[maker] > TIE).all(axis=1)
    return beaters[int(outright.argmax())], bool(outright.any())
