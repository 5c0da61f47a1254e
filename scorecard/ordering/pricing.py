"""Landed costs at any quantity, each worked out once: what a maker costs there, and who is then the cheapest."""

from dataclasses import field
from decimal import Decimal

from scorecard.costing.amounts import added, over
from scorecard.costing.cheapest import cheapest_of
from scorecard.costing.choosing import chosen_ways, middle
from scorecard.costing.inputs import CostInputs
from scorecard.costing.landed import LandedCost, landed_costs
from scorecard.costing.pieces import bare_piece
from scorecard.frozen import dataclass
from scorecard.ordering.sizes import at_quantity, of_makers

Line = tuple[str, int, str | None]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Pricing:
    """Costs of some makers at any quantity.

    Parameters
    ----------
    inputs : settled, with the quotes of these makers alone
    """

    inputs: CostInputs
    _found: dict[int, tuple[LandedCost, ...]] = field(default_factory=dict)
    _lines: dict[int, Line | None] = field(default_factory=dict)

    def at(self, pieces: int) -> tuple[LandedCost, ...]:
        """Return what so many pieces cost, every maker by every way."""
        if pieces not in self._found:
            self._found[pieces] = landed_costs(at_quantity(self.inputs, pieces))
        return self._found[pieces]

    def chosen(self, pieces: int) -> dict[str, LandedCost]:
        """Return the way that stands for each maker at so many pieces."""
        return chosen_ways(self.at(pieces), self.inputs.as_of, self.inputs.brief.need_by)

    def of(self, maker: str) -> "Pricing":
        """Return the costs of one maker alone."""
        return Pricing(inputs=of_makers(self.inputs, [maker]))

    def total(self, maker: str, pieces: int) -> Decimal | None:
        """Return what a maker takes for so many pieces, the middle of a range; None with a cost missing or no end."""
        cost = self.chosen(pieces).get(maker)
        return None if cost is None or not cost.is_complete or cost.is_open else _middle_total(cost)

    def standing(self, pieces: int) -> dict[str, Decimal]:
        """Return the cost of a good piece of every maker whose costs have an end and are all known, the middle."""
        return {
            maker: middle(cost) for maker, cost in self.chosen(pieces).items() if cost.is_complete and not cost.is_open
        }

    def cheapest(self, pieces: int) -> str | None:
        """Return the maker whose good piece comes out cheapest at so many pieces, the first in sheet order of several.

        Of costs without an upper end the least counts, and only where there are no others.
        """
        found = self.standing(pieces) or {
            maker: cost.per_good_piece[0] for maker, cost in self.chosen(pieces).items() if cost.is_complete
        }
        return min(found, key=lambda maker: found[maker]) if found else None

    def rivals(self, pieces: int) -> tuple[str, ...]:
        """Return the other makers that may be cheaper than the cheapest at so many pieces."""
        found = cheapest_of(bare_piece(cost) for cost in self.chosen(pieces).values())
        return tuple(piece.maker for piece in found.rivals) if found else ()

    def line(self, pieces: int) -> Line | None:
        """Return what the cheapest good piece is: of which maker, reply and way. None where no maker has every cost."""
        if pieces not in self._lines:
            self._lines[pieces] = self._line(pieces)
        return self._lines[pieces]

    def _line(self, pieces: int) -> Line | None:
        maker = self.cheapest(pieces)
        if maker is None:
            return None
        cost = self.chosen(pieces)[maker]
        return maker, cost.reply.head.row, cost.way


def _middle_total(cost: LandedCost) -> Decimal:
    return over(added([cost.low, cost.high]), Decimal(2))
