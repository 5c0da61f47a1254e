"""How much of a large field one page holds: all of an ordinary one, the best of a large one."""

from scorecard.calculation import Calculation
from scorecard.frozen import dataclass
from scorecard.ranking import Ranking

MANY = 500  # ranked makers, up to which the ranking is whole
BEST = 100  # makers shown of a larger field, and the most with their arithmetic
TRIED = 8  # answers that travel for trying weights, for each whose arithmetic does
FEW = 30  # makers, up to which a page is to be short
SHORT_BYTES, MOST_BYTES = 200_000, 1_200_000  # of the page of so few makers, and of any


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """How much detail one page holds; the results workbook and the result hold the rest.

    Parameters
    ----------
    cells : answers with their arithmetic
    costs, sums : landed costs in the table, and those with every line
    plans, chains : plans in the table of dates, and those with every step
    """

    cells: int
    costs: int
    sums: int
    plans: int
    chains: int


ROOMS = (
    Room(cells=1_000, costs=60, sums=25, plans=40, chains=16),
    Room(cells=300, costs=60, sums=12, plans=40, chains=8),
    Room(cells=300, costs=30, sums=6, plans=20, chains=4),
    Room(cells=150, costs=24, sums=4, plans=16, chains=3),
    Room(cells=100, costs=20, sums=3, plans=12, chains=2),
    Room(cells=50, costs=12, sums=2, plans=12, chains=2),
)  # tried in turn until the page is short enough


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


def most_bytes(makers: int) -> int:
    """Return how long the page of so many makers may be."""
    return SHORT_BYTES if makers <= FEW else MOST_BYTES


def extent_of(calculation: Calculation, cells: int = ROOMS[0].cells) -> Extent:
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
