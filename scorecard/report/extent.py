"""How much of a large field one page holds: all of an ordinary one, the best of a large one."""

from dataclasses import dataclass

from scorecard.calculation import Calculation
from scorecard.ranking import Ranking

MANY = 500  # ranked makers, up to which the ranking is whole
BEST = 100  # makers shown of a larger field, and the most with their arithmetic
TRIED = 8  # answers that travel for trying weights, for each whose arithmetic does
CELLS = (1_000, 300, 100)  # answers whose arithmetic one page holds; fewer where names without end make it too long


@dataclass(frozen=True, slots=True, kw_only=True)
class Extent:
    """Which makers a page shows; positions in the sheet.

    Parameters
    ----------
    ranked : in the ranking, best first
    tried : ranked again as weights are tried, best first
    detailed : with a receipt and their arithmetic, best first
    ruled_out : in the list of those, in sheet order
    ruled_out_detailed : of those, with their arithmetic
    """

    ranked: tuple[int, ...]
    tried: tuple[int, ...]
    detailed: tuple[int, ...]
    ruled_out: tuple[int, ...]
    ruled_out_detailed: tuple[int, ...]


def ruled_out_makers(ranking: Ranking) -> tuple[int, ...]:
    """Return the positions of the makers that are ruled out, in sheet order."""
    return ranking.ruled_out


def extent_of(calculation: Calculation, cells: int = CELLS[0]) -> Extent:
    """Return which makers the page of a calculation shows, with the arithmetic of so many answers."""
    order, out = calculation.ranking.order, ruled_out_makers(calculation.ranking)
    affordable = min(BEST, max(1, cells // len(calculation.case.criteria)))
    detailed = order[:affordable]
    ranked = order if len(order) <= MANY else order[:BEST]
    return Extent(
        ranked=ranked,
        tried=ranked[: max(2, TRIED * cells // len(calculation.case.criteria))],
        detailed=detailed,
        ruled_out=out[:BEST],
        ruled_out_detailed=out[: affordable - len(detailed)],
    )
