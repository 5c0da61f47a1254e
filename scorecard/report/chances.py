"""In how many of 100 random weightings each maker leads: any weights, in the same order of importance, near these."""

from collections.abc import Iterator, Sequence

from scorecard.calculation import Calculation
from scorecard.frozen import dataclass
from scorecard.sensitivity.rank_shares import FirstShares, RankShares
from scorecard.sensitivity.weightings import KINDS
from scorecard.sentences import of_hundred
from scorecard.words import counted, drawn, rounded

MOST = 10  # makers told of
NEARLY_ALWAYS = 0.9  # of the weightings near these; our own choice


@dataclass(frozen=True, slots=True, kw_only=True)
class Chance:
    """One maker's figures, in the order of ``KINDS``."""

    maker: str
    figures: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Chances:
    """Who leads how often, as written.

    Parameters
    ----------
    rows : makers that led at least once, in the order of rank; empty where there is no rival
    half_width : the widest, in weightings of 100
    spread : how far a share may be from itself in the last column, in per cent
    rest : sentence about the makers left out; None where there are none
    both : sentence on why the leader leads nearly always and it is too close to call all the same; None where it is not
    """

    rows: tuple[Chance, ...]
    half_width: str
    spread: str
    rest: str | None
    both: str | None = None


def chances_of(calculation: Calculation) -> Chances:
    """Return in how many of 100 random weightings each maker leads."""
    found, front = calculation.firmness.rank_shares, calculation.firmness.front
    spread = rounded(100 * calculation.case.firmness.spread, 0)
    if len(front) < 2:
        return Chances(rows=(), half_width="", spread=spread, rest=None)
    first = [[float(share) for share in found[kind].shares[:, 0]] for kind in KINDS]
    leading = [at for at in range(len(front)) if any(column[at] for column in first)]
    rows = tuple(
        Chance(
            maker=calculation.case.table.makers[front[at]],
            figures=tuple(of_draws(column[at], found[kind]) for kind, column in zip(KINDS, first, strict=True)),
        )
        for at in leading[:MOST]
    )
    return Chances(
        rows=rows,
        half_width=rounded(max(100 * found[kind].half_width for kind in KINDS)),
        spread=spread,
        rest=_rest(calculation, len(leading) - len(rows), leading),
        both=_both(calculation, spread),
    )


def _both(calculation: Calculation, spread: str) -> str | None:
    """Return how a small change of weights and weights drawn near these can say two things, where they do."""
    verdict, near = calculation.verdict, calculation.firmness.rank_shares["near"]
    if verdict.kind != "close" or not verdict.moved or verdict.leader is None or verdict.rival is None:
        return None
    if near.shares[calculation.firmness.front.index(verdict.leader), 0] < NEARLY_ALWAYS:
        return None
    leader, rival = (calculation.case.table.makers[maker] for maker in (verdict.leader, verdict.rival))
    return (
        f"This and the verdict are both true: errors of up to {spread}% in each share seldom all pull the same way, so "
        f"{leader} nearly always leads; but one particular move, of {of_hundred(verdict.moved)}, brings {rival} level."
    )


def of_draws(share: float, found: FirstShares | RankShares) -> str:
    """Return a share as so many of 100, no finer than the draws allow; 0 of n is told as under 3/n, never as nothing.

    References
    ----------
    The rule of three: with 0 of n seen, the upper end of a 95 % interval is about 3/n.
    """
    return drawn(share, found.half_width) if share else f"under {rounded(max(0.1, 300 / found.draws))}"


def _rest(calculation: Calculation, more: int, leading: Sequence[int]) -> str | None:
    """Return how many led at times, and how many never did in the draws although some weighting puts them first."""
    of_front = calculation.firmness.can_lead[: len(calculation.firmness.front)]
    idle = [one for at, one in enumerate(of_front) if one.possible and at not in leading]
    joining = sum(one.level for one in idle)
    said = [f"{counted(more, 'more maker')} led at times."] if more else []
    if len(idle) > joining:
        each = "it" if len(idle) - joining == 1 else "each"
        number = counted(len(idle) - joining, "other")
        said.append(f"{number} never led in these draws, yet some weighting puts {each} first.")
    if joining:
        whole = f"{counted(joining, 'other')} never led in these draws; as the answers count now,"
        said.append(f"{whole} {'it' if joining == 1 else 'each'} can at best share first place.")
    return " ".join([*said, *_beyond(calculation)]) or None


def _beyond(calculation: Calculation) -> Iterator[str]:
    """Yield the sentence on how often a maker beyond those that the draws are of comes first, where there are any."""
    found, front = calculation.firmness.first_shares, calculation.firmness.front
    if found is not None:
        beyond = of_draws(float(found.shares[len(front) :].sum()), found)
        whole = f"These draws are of the {len(front)} best makers; among all, as the answers count now,"
        yield f"{whole} one of the others leads in {beyond} of 100 weightings."
