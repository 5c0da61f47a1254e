"""The answers: what is known of each maker, column by column, with the cell that each came from.

Enters: cells already read. Leaves: arrays of (makers,), in sheet order. A number has low == high; a range has two
ends, infinite where it is open; unknown is NaN at both. A choice is its position in the criterion's list.
"""

from collections.abc import Mapping, Sequence
from dataclasses import field, replace

import numpy as np

from scorecard.brief import Unit
from scorecard.errors import Place
from scorecard.frozen import dataclass
from scorecard.value_functions import Floats


@dataclass(frozen=True, slots=True, eq=False)
class Answers:
    """All makers' answers on one criterion.

    Parameters
    ----------
    low, high : (makers,), in the criterion's unit; NaN where unknown, infinite where a range is open

    Raises
    ------
    ValueError
        If the two differ in shape, if one is NaN without the other, or if low is above high.
    """

    low: Floats
    high: Floats

    def __post_init__(self) -> None:
        for name in ("low", "high"):
            copy = np.array(getattr(self, name), dtype=float)
            copy.setflags(write=False)
            object.__setattr__(self, name, copy)
        if self.low.shape != self.high.shape or (self.low > self.high).any():
            raise ValueError("low and high must have one shape, and low be at most high")
        if (np.isnan(self.low) != np.isnan(self.high)).any():
            raise ValueError("an unknown answer is NaN at both ends")

    @property
    def known(self) -> "np.ndarray[tuple[int, ...], np.dtype[np.bool_]]":
        """(makers,): whether anything is known."""
        return ~np.isnan(self.low)

    def only(self, positions: Sequence[int]) -> "Answers":
        """Return the answers of some makers."""
        chosen = list(positions)
        return Answers(self.low[chosen], self.high[chosen])

    @classmethod
    def all_unknown(cls, makers: int) -> "Answers":
        """Return unknown answers for so many makers."""
        nothing = np.full(makers, np.nan)
        return cls(nothing, nothing)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MakerTable:
    """One row a maker, as read.

    Parameters
    ----------
    makers : names, exactly as typed, in sheet order
    rows : their rows in the sheet, from 1
    file, sheet : where they stand; sheet is None for a .csv
    letters : column letter by heading-thing: "maker", "Minimum is per", …, and every criterion's key
    answers : by criterion key, for criteria whose column is there, and for measures that were typed
    counts : number of ratings, by criterion key, for steadied criteria whose count column is there
    minimum : the minimum orders in pieces, whatever the criteria draw on; None where no column has them
    minimum_per : unit that each minimum is per; None where blank
    asked_on, answered_on : days as ``date.toordinal``; NaN where blank; of no maker where the column is missing
    details : by heading ("Country", "Web page", "Contact", "Care", "Seen on", "Notes"), text per maker, "" where blank
    """

    makers: tuple[str, ...]
    rows: tuple[int, ...]
    file: str
    sheet: str | None
    letters: Mapping[str, str] = field(default_factory=dict)
    answers: Mapping[str, Answers] = field(default_factory=dict)
    counts: Mapping[str, Answers] = field(default_factory=dict)
    minimum: Answers | None = None
    minimum_per: tuple[Unit | None, ...] = ()
    asked_on: Floats = field(default_factory=lambda: np.empty(0))
    answered_on: Floats = field(default_factory=lambda: np.empty(0))
    details: Mapping[str, Sequence[str]] = field(default_factory=dict)

    def __len__(self) -> int:
        return len(self.makers)

    def only(self, positions: Sequence[int]) -> "MakerTable":
        """Return the table of some makers, in the order given."""
        chosen = list(positions)
        return replace(
            self,
            makers=tuple(self.makers[at] for at in chosen),
            rows=tuple(self.rows[at] for at in chosen),
            answers={key: answers.only(chosen) for key, answers in self.answers.items()},
            counts={key: counts.only(chosen) for key, counts in self.counts.items()},
            minimum=self.minimum.only(chosen) if self.minimum else None,
            minimum_per=tuple(self.minimum_per[at] for at in chosen) if self.minimum_per else (),
            asked_on=self.asked_on[chosen] if len(self.asked_on) else self.asked_on,
            answered_on=self.answered_on[chosen] if len(self.answered_on) else self.answered_on,
            details={key: tuple(texts[at] for at in chosen) for key, texts in self.details.items()},
        )

    def place(self, maker: int, column: str) -> Place:
        """Return the cell of one maker (position from 0) in one column; a column that is not there gives the row."""
        letter = self.letters.get(column, self.letters.get("maker", "A"))
        return Place(file=self.file, sheet=self.sheet, cell=f"{letter}{self.rows[maker]}")
