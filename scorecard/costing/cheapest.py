"""Who is the cheapest, and whether that is sure: of costs that may be ranges, without an upper end, or lack a part.

Enters: what a good piece costs at each maker, as far as it is known. Leaves: who comes out cheapest, who may be cheaper
all the same and what must be known to tell, and the words that every sentence about the cheapest shares.
"""

from collections.abc import Callable, Iterable, Sequence
from decimal import Decimal

from scorecard.codes import amount_range, money_range
from scorecard.frozen import dataclass
from scorecard.words import counted, listed

Ends = tuple[Decimal, Decimal]
Named = Callable[[str], str]

FEW = 3  # rivals named one by one
PARTS_NAMED = 4  # open parts of one maker


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """What a good piece costs at one maker.

    Parameters
    ----------
    maker : its name
    cases : least and most in each case of what is open for all makers alike (whether import tax comes back, a rate of
        duty), in one order for all; one where nothing is; infinite where there is no upper end
    missing : costs without a figure: every least is too low by them, and there is no most
    open_parts : what is not known of it, the missing costs among it
    """

    maker: str
    cases: tuple[Ends, ...]
    missing: tuple[str, ...] = ()
    open_parts: tuple[str, ...] = ()

    @property
    def low(self) -> Decimal:
        """The least in any case."""
        return min(low for low, _ in self.cases)

    @property
    def high(self) -> Decimal:
        """The most in any case."""
        return max(high for _, high in self.cases)

    def in_case(self, case: int) -> Ends:
        """Return least and most in one case; one that knows no cases is the same in all."""
        return self.cases[case % len(self.cases)]

    def may_be_below(self, other: "Piece") -> bool:
        """Say whether it may cost less than another, whose costs are all known."""
        return self.surely_above(other) < 0

    def surely_above(self, other: "Piece") -> Decimal:
        """Return by how much it surely costs more than another, in any case; below 0 where it may cost less."""
        cases = range(max(len(self.cases), len(other.cases)))
        return min(self.in_case(case)[0] - other.in_case(case)[1] for case in cases)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cheapest:
    """Who comes out cheapest.

    Parameters
    ----------
    piece : of those whose costs are all known, the one of the least middle; of those without an upper end, of the least
        low end
    rivals : all others that may be cheaper, the one of the least low end first
    level : others that cost just as much
    """

    piece: Piece
    rivals: tuple[Piece, ...] = ()
    level: tuple[Piece, ...] = ()

    @property
    def is_sure(self) -> bool:
        """Whether nobody can be cheaper."""
        return not self.rivals


def cheapest_of(pieces: Iterable[Piece]) -> Cheapest | None:
    """Return who comes out cheapest, and who may be cheaper all the same; None where nobody has every cost known."""
    every = list(pieces)
    whole = [piece for piece in every if not piece.missing]
    if not whole:
        return None
    best = min(whole, key=_standing)
    others = [piece for piece in every if piece is not best]
    return Cheapest(
        piece=best,
        rivals=tuple(sorted((piece for piece in others if piece.may_be_below(best)), key=lambda piece: piece.low)),
        level=tuple(
            piece for piece in others if not piece.missing and piece.low == piece.high == best.low == best.high
        ),
    )


def _standing(piece: Piece) -> tuple[bool, Decimal]:
    """Return what pieces are ordered by: those without an upper end last, by their low end."""
    return (False, piece.low + piece.high) if piece.high.is_finite() else (True, piece.low)


def piece_amount(piece: Piece, home: str) -> str:
    """Return what a good piece costs in words, with its currency.

    Examples
    --------
    >>> one = Piece(maker="A", cases=((Decimal("5.1"), Decimal("5.9")),))
    >>> piece_amount(one, "EUR"), piece_amount(Piece(maker="B", cases=one.cases, missing=("freight",)), "EUR")
    ('5.10 to 5.90 EUR', 'at least 5.10 EUR')
    """
    return _told(piece, home, amount_range)


def _told(piece: Piece, home: str, words: Callable[[Decimal, Decimal, str], str]) -> str:
    least = words(piece.low, piece.low, home)
    return f"at least {least}" if piece.missing else words(piece.low, piece.high, home)


def rivals_words(found: Cheapest, home: str, named: Named = str) -> str:
    """Return who else may be cheaper and what must be known to tell, such as "B (5.40 to 6.20) may be cheaper …".

    Returns
    -------
    without a capital or a full stop; "" where it is sure who is the cheapest
    """
    if found.is_sure:
        return ""
    first, more = found.rivals[:FEW], len(found.rivals) - FEW
    told = [f"{named(piece.maker)} ({_told(piece, home, money_range)})" for piece in first]
    told += [counted(more, "more maker")] if more > 0 else []
    return f"{listed(told)} may be cheaper{_until_words((found.piece, *first), named)}"


def _until_words(pieces: Sequence[Piece], named: Named) -> str:
    parts = [f"of {named(piece.maker)} {_parts(piece.open_parts)}" for piece in pieces if piece.open_parts]
    return f", until more is known: {'; '.join(parts)}" if parts else ""


def _parts(parts: Sequence[str]) -> str:
    more = len(parts) - PARTS_NAMED
    return listed([*parts[:PARTS_NAMED], *([f"{more} more"] if more > 0 else [])])


def level_words(found: Cheapest, named: Named = str) -> str:
    """Return who costs just as much, such as ", level with B"; "" where nobody does."""
    return f", level with {listed(named(piece.maker) for piece in found.level)}" if found.level else ""
