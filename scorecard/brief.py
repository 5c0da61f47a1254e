"""The brief: what is wanted, how many, in how many designs, where and by when."""

from datetime import date
from typing import Literal, get_args

from scorecard.frozen import dataclass

Unit = Literal["order", "design", "colour", "size"]

UNITS: tuple[Unit, ...] = get_args(Unit)


@dataclass(frozen=True, slots=True, kw_only=True)
class Brief:
    """What is wanted.

    Parameters
    ----------
    item : the goods in words
    quantity : pieces in all, at least 1
    designs : how many designs the pieces are split into, evenly
    colours, sizes : how many colours or sizes the goods themselves come in; None where the brief does not say
    destination : ISO 3166-1 alpha-2 code
    currency : ISO 4217 code; every cost is shown in it
    bleed_mm : what is printed beyond each edge and cut off; None where the brief does not say
    decimal : the decimal mark of numbers typed as text, where it matters; None where the brief does not say
    """

    item: str
    quantity: int
    designs: int = 1
    colours: int | None = None
    sizes: int | None = None
    destination: str | None = None
    currency: str | None = None
    need_by: date | None = None
    print_width_mm: float | None = None
    print_height_mm: float | None = None
    bleed_mm: float | None = None
    decimal: Literal[".", ","] | None = None

    def units_of(self, unit: Unit) -> int | None:
        """Return how many of a unit this order has, or None where the brief does not say."""
        return {"order": 1, "design": self.designs, "colour": self.colours, "size": self.sizes}[unit]

    def pieces_per(self, unit: Unit) -> float | None:
        """Return the pieces in one unit of this order, or None where the brief does not say how many units it has."""
        units = self.units_of(unit)
        return None if units is None else self.quantity / units

    def possible_pieces_per(self, unit: Unit | None) -> tuple[float, float]:
        """Return the fewest and the most pieces that one unit may hold.

        Where the unit is not known, those of one design and of the whole order; where the brief does not say how many
        of it there are, one piece and the whole order.
        """
        if unit is None:
            return self.quantity / self.designs, float(self.quantity)
        pieces = self.pieces_per(unit)
        return (1.0, float(self.quantity)) if pieces is None else (pieces, pieces)
