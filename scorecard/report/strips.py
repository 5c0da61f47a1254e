"""Rank shares as strips: a row per maker, a cell per rank, in each the figure and a bar as long as the figure.

Enters: a calculation. Leaves: for each kind of weightings a table, with no more digits than its half-width allows.
"""

from collections.abc import Mapping, Sequence

from scorecard.calculation import Calculation
from scorecard.frozen import dataclass
from scorecard.sensitivity.rank_shares import RankShares
from scorecard.sensitivity.weightings import KINDS
from scorecard.words import counted, decimals_meant, listed, rounded

MOST = 10  # makers, and ranks, in a strip

Cell = tuple[str, str | None]  # the figure, and the length of its bar; None where it is too seldom for one


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """One kind of weightings.

    Parameters
    ----------
    heading : which weightings, in words
    half_width : the widest, in weightings of 100
    draws : how many weightings were drawn
    seldom : what stands in a cell for less than its last digit, such as "<1"
    rows : a maker with its cells, in the order of rank
    """

    heading: str
    half_width: str
    draws: str
    seldom: str
    rows: tuple[tuple[str, tuple[Cell, ...]], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Strips:
    """The strips of all kinds, of any weights first; none where there is no rival.

    Parameters
    ----------
    ranks : at the head of the columns
    left_out : sentence about makers and ranks left out; None where all are there
    """

    strips: tuple[Strip, ...] = ()
    ranks: tuple[str, ...] = ()
    left_out: str | None = None


def strips_of(calculation: Calculation) -> Strips:
    """Return how often each of the best makers takes each of the first ranks."""
    found, front = calculation.firmness.rank_shares, calculation.firmness.front
    if len(front) < 2:
        return Strips()
    names = [calculation.case.table.makers[maker] for maker in front[:MOST]]
    headings = _headings(rounded(100 * calculation.case.firmness.spread, 0))
    return Strips(
        strips=tuple(_strip(headings[kind], names, found[kind]) for kind in KINDS),
        ranks=("rank 1", *(str(rank) for rank in range(2, min(MOST, len(front)) + 1))),
        left_out=left_out(len(calculation.ranking.order)),
    )


def _headings(spread: str) -> Mapping[str, str]:
    return {
        "any": "Any weights",
        "ordered": "Any weights in this order of importance",
        "near": f"Weights near these, each share within {spread}% of itself",
    }


def _strip(heading: str, names: Sequence[str], found: RankShares) -> Strip:
    decimals = decimals_meant(found.half_width)
    rows = found.shares[: len(names), :MOST].tolist()
    return Strip(
        heading=heading,
        half_width=rounded(100 * found.half_width),
        draws=f"{found.draws:,}",
        seldom=f"<{_unit(decimals)}",
        rows=tuple(
            (name, tuple(_cell(share, decimals) for share in row)) for name, row in zip(names, rows, strict=True)
        ),
    )


def _unit(decimals: int) -> str:
    return "0.1" if decimals else "1"


def _cell(share: float, decimals: int) -> Cell:
    figure = share_figure(share, decimals)
    return figure, None if figure[0] == "<" else f"{rounded(100 * share, 0)}%"


def share_figure(share: float, decimals: int) -> str:
    """Return a share as so many of 100: never nothing, as 0 of n is no proof, and all only where it was all.

    Examples
    --------
    >>> share_figure(0.613, 0), share_figure(0.0, 0), share_figure(0.0004, 1)
    ('61', '<1', '<0.1')
    >>> share_figure(0.999, 0), share_figure(1, 0)
    ('>99', '100')
    """
    figure = rounded(100 * share, decimals)
    if float(figure) == 0:
        return f"<{_unit(decimals)}"
    if float(figure) == 100 and share < 1:
        return f">{rounded(100 - 10**-decimals, decimals)}"
    return figure


def left_out(makers: int) -> str | None:
    """Return what the strips leave out of so many ranked makers, as a sentence; None where nothing is.

    Examples
    --------
    >>> left_out(11), left_out(10)
    ('1 other maker and the ranks from 11 on are left out, so a row need not add up to 100.', None)
    """
    if makers <= MOST:
        return None
    parts = [counted(makers - MOST, "other maker"), f"the ranks from {MOST + 1} on"]
    return f"{listed(parts)} are left out, so a row need not add up to 100."
