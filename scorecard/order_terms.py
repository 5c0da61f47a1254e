"""What an order sheet says beyond brief and quotes: the table ``[order]`` of the criteria file."""

from datetime import date
from decimal import Decimal
from math import ceil, floor
from typing import Literal, get_args

from scorecard.frozen import dataclass

Whose = Literal["mine", "the maker's"]
Overs = Literal["paid by the piece", "free"]

WHOSE: tuple[Whose, ...] = get_args(Whose)
OVERS: tuple[Overs, ...] = get_args(Overs)

USUAL_APPROVALS = (
    "a proof of each design, with its printed size, its position and its colours",
    "a piece made as the full run will be made (pre-production sample), or a photograph of the first one printed",
)
"""Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DesignTerms:
    """One ``[[order.designs]]``: a design where it differs from ``[order]`` and the brief.

    Parameters
    ----------
    file : of its artwork
    pieces : None for an equal part of all
    position, colours : "" for what ``[order]`` says
    width_mm, height_mm : None for what the brief says
    position_tolerance_mm, size_tolerance_mm : None for what ``[order]`` says
    """

    name: str = ""
    file: str = ""
    pieces: int | None = None
    width_mm: float | None = None
    height_mm: float | None = None
    position: str = ""
    position_tolerance_mm: Decimal | None = None
    size_tolerance_mm: Decimal | None = None
    colours: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderTerms:
    """The table ``[order]``; "" and None stand for what is not settled yet, and nothing is guessed.

    As TOML::

        [order]
        position = "centred, opposite the handle, 20 mm below the rim"
        position_tolerance_mm = 2
        size_tolerance_mm = 1
        over_percent = 5              # accepted over-run; under_percent likewise
        overs = "paid by the piece"   # or "free"

        [[order.designs]]
        name = "Harbour light"
        file = "harbour-light.pdf"

    Parameters
    ----------
    number : the buyer's own reference
    method : how it is printed; "" for what the maker answered in the column Print method
    approvals : what must be approved before the full run; the usual ones where it is not given
    artwork, tooling : whose they are, as the buyer says it
    complain_days : days after arrival within which the maker takes a complaint
    remedy : what the maker does about faulty pieces
    """

    number: str = ""
    method: str = ""
    buyer: str = ""
    address: str = ""
    position: str = ""
    position_tolerance_mm: Decimal | None = None
    size_tolerance_mm: Decimal | None = None
    colours: str = ""
    over_percent: Decimal | None = None
    under_percent: Decimal | None = None
    overs: Overs | None = None
    approvals: tuple[str, ...] = USUAL_APPROVALS
    packing: str = ""
    labels: str = ""
    deliver_by: date | None = None
    pay_by: str = ""
    complain_days: int | None = None
    remedy: str = ""
    artwork: Whose | None = None
    tooling: Whose | None = None
    designs: tuple[DesignTerms, ...] = ()

    def accepted(self, pieces: int) -> tuple[int, int]:
        """Return the fewest and the most pieces that are accepted of an order: just as many where nothing is agreed.

        Examples
        --------
        >>> OrderTerms(under_percent=Decimal(2), over_percent=Decimal(4)).accepted(250)
        (245, 260)
        """
        under, over = self.under_percent or 0, self.over_percent or 0
        return ceil(pieces * (100 - under) / 100), floor(pieces * (100 + over) / 100)
