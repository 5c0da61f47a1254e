"""The tables of sampling by attributes: code letters by lot size, and the single plans of normal inspection.

Source: MIL-STD-105E (10 May 1989, public release, distribution unlimited), table I for general levels I to III, and
table II-A. That table is one pattern along its diagonals, from which each cell follows by the place of its letter and
its limit. Where the copies that we saw differ, at letter A and limit 10, the arrow points down: nothing lies above A.
"""

from bisect import bisect_left
from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

Level = Literal["I", "II", "III"]
Cell = tuple[int, int] | Literal["up", "down"]

LEVELS: tuple[Level, ...] = ("I", "II", "III")
LETTERS = "ABCDEFGHJKLMNPQR"
SIZES: Mapping[str, int] = MappingProxyType(
    dict(zip(LETTERS, (2, 3, 5, 8, 13, 20, 32, 50, 80, 125, 200, 315, 500, 800, 1250, 2000), strict=True))
)
LIMITS = (0.065, 0.1, 0.15, 0.25, 0.4, 0.65, 1.0, 1.5, 2.5, 4.0, 6.5, 10.0)  # faulty pieces of 100

_LOTS_UP_TO = (8, 15, 25, 50, 90, 150, 280, 500, 1200, 3200, 10_000, 35_000, 150_000, 500_000)  # and one for all above
_BY_LEVEL: Mapping[Level, str] = MappingProxyType(
    {"I": "AABCCDEFGHJKLMN", "II": "ABCDEFGHJKLMNPQ", "III": "BCDEFGHJKLMNPQR"}
)
_FIRST_PLAN = len(LIMITS) - 2  # the diagonal of 0 accepted, 1 rejected
_DIAGONALS: tuple[Cell, ...] = (
    (0, 1),
    "up",
    "down",
    (1, 2),
    (2, 3),
    (3, 4),
    (5, 6),
    (7, 8),
    (10, 11),
    (14, 15),
    (21, 22),
)


def code_letter(lot: int, level: Level) -> str:
    """Return the letter of a lot of so many pieces.

    Examples
    --------
    >>> code_letter(100, "II"), code_letter(300, "II"), code_letter(1_000_000, "III")
    ('F', 'H', 'R')
    """
    return _BY_LEVEL[level][bisect_left(_LOTS_UP_TO, lot)]


def cell(letter: str, limit: float) -> Cell:
    """Return what the table of single plans says: accept and reject numbers, or the way that its arrow points.

    Examples
    --------
    >>> cell("H", 2.5), cell("F", 1.0), cell("F", 0.4)
    ((3, 4), 'up', 'down')
    """
    row, diagonal = LETTERS.index(letter), LETTERS.index(letter) + LIMITS.index(limit) - _FIRST_PLAN
    if diagonal < 0:
        return "down"
    found = _DIAGONALS[diagonal] if diagonal < len(_DIAGONALS) else "up"
    return "down" if found == "up" and row == 0 else found
