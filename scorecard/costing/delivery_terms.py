"""Who pays what: the parts of the journey that a price covers, by its delivery term or by what the maker says.

The grid is the tool's own, for the eleven rules of Incoterms 2020, and speaks of cost alone, not of risk. EXW, FCA,
CPT, CIP, DAP and DPU agree with a public table seen in part; FAS, FOB, CFR, CIF and DDP are from memory.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

from scorecard.costing.charges import ORIGIN_PARTS, PARTS, Part
from scorecard.costing.freight import PARTS_OF_FREIGHT, FreightCovers
from scorecard.costing.quotes import COVERS, Covers, Term
from scorecard.frozen import dataclass

Point = Literal["the maker's door", "a port or terminal", "my door"]
Parts = frozenset[Part]

_DOOR: Parts = frozenset({"packing"})
_LOADED: Parts = _DOOR | {"loading", "export clearance"}
_COLLECTED: Parts = _LOADED | {"collection"}
_ALONGSIDE: Parts = _COLLECTED | {"origin charges"}
_ON_BOARD: Parts = _ALONGSIDE | {"loading on board"}
_CARRIED: Parts = _ON_BOARD | {"freight"}
_DELIVERED: Parts = _CARRIED | {"arrival charges", "delivery"}
_CLEARED: Parts = frozenset({"clearance", "duty", "import tax"})
_INSURED: Parts = frozenset({"insurance"})

_BY_TERM: Mapping[Term, Mapping[Point, Parts]] = MappingProxyType(
    {
        "EXW": {"the maker's door": _DOOR},
        "FCA": {"the maker's door": _LOADED, "a port or terminal": _COLLECTED},
        "FAS": {"a port or terminal": _ALONGSIDE},
        "FOB": {"a port or terminal": _ON_BOARD},
        "CFR": {"a port or terminal": _CARRIED},
        "CIF": {"a port or terminal": _CARRIED | _INSURED},
        "CPT": {"a port or terminal": _CARRIED, "my door": _DELIVERED},
        "CIP": {"a port or terminal": _CARRIED | _INSURED, "my door": _DELIVERED | _INSURED},
        "DAP": {"a port or terminal": _CARRIED, "my door": _DELIVERED},
        "DPU": {"a port or terminal": _CARRIED | {"arrival charges"}, "my door": _DELIVERED | {"unloading"}},
        "DDP": {"a port or terminal": _CARRIED | _CLEARED, "my door": _DELIVERED | _CLEARED},
    }
)
_USUAL_POINT: Mapping[Term, Point] = MappingProxyType({"DAP": "my door", "DPU": "my door", "DDP": "my door"})
_POINT_WORDS: Mapping[Point, tuple[str, ...]] = MappingProxyType(
    {
        "a port or terminal": ("port", "airport", "terminal", "depot", "station", "quay", "harbour", "harbor", "cfs"),
        "the maker's door": ("factory", "works", "workshop", "premises", "maker's door", "our door"),
        "my door": ("my door", "your door", "home", "studio", "address", "to door"),
    }
)
_COVERS_OF_TERM: Mapping[str, Covers] = MappingProxyType({"E": "goods", "F": "goods", "C": "goods and freight"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Coverage:
    """One way to read what a price covers.

    Parameters
    ----------
    parts : that the price pays for
    words : such as "FOB", or "if the price covers goods only"
    insured_by_maker : whether loss on the way is the maker's until delivery, so that no insurance is called for
    """

    parts: Parts
    words: str
    insured_by_maker: bool = False

    @property
    def pays_freight(self) -> bool:
        """Whether the main freight is in the price."""
        return "freight" in self.parts


def point_of(place: str) -> Point | None:
    """Return what kind of place a named place is by its own words, or None.

    Examples
    --------
    >>> point_of("Port of Leixoes"), point_of("your door, Dingle"), point_of("Leixoes")
    ('a port or terminal', 'my door', None)
    """
    padded = f" {' '.join(place.casefold().replace(',', ' ').split())} "
    kinds = [kind for kind, words in _POINT_WORDS.items() if any(f" {word} " in padded for word in words)]
    return kinds.pop() if len(kinds) == 1 else None


def by_term(term: Term, place: str) -> tuple[Coverage, ...]:
    """Return what a price covers by its delivery term: two readings where the place decides and its words do not say.

    Parameters
    ----------
    term : one of the eleven
    place : the named place as typed

    References
    ----------
    Incoterms 2020, in own words. Charges at arrival under C terms count as the buyer's, as they are unless the carriage
    includes them; carriage to the buyer's own door includes them.
    """
    points = _BY_TERM[term]
    point = point_of(place) if point_of(place) in points else _USUAL_POINT.get(term)
    chosen = {point: points[point]} if point else points
    insured = term.startswith("D")
    unsure = len(chosen) > 1
    return tuple(
        Coverage(parts=parts, words=f"{term}, if its place is {at}" if unsure else term, insured_by_maker=insured)
        for at, parts in chosen.items()
    )


def by_words(covers: Covers, freight_covers: FreightCovers | None) -> Coverage:
    """Return what a price covers by what the maker says.

    Parameters
    ----------
    covers : as chosen in the sheet
    freight_covers : what freight by the quote's way pays for; None where no way is named, which counts as to the port
    """
    words = f"the price covers {covers}" if covers != COVERS[2] else "the price is to my door, duty and tax paid"
    if covers == "goods":
        return Coverage(parts=_DOOR, words=words)
    if covers == "goods and freight":
        freight = PARTS_OF_FREIGHT[freight_covers or "port to port"]
        return Coverage(parts=_CARRIED | freight | frozenset(ORIGIN_PARTS), words=words)
    return Coverage(parts=frozenset(PARTS) - {"unloading"}, words=words, insured_by_maker=True)


def covers_by_term(term: Term) -> Covers:
    """Return the words for what a term covers: goods, goods and freight, or all."""
    if term == "DDP":
        return "to my door, duty and tax paid"
    return _COVERS_OF_TERM.get(term[0], "goods and freight")


def coverages(
    covers: Covers | None, term: Term | None, place: str, freight_covers: FreightCovers | None
) -> tuple[Coverage, ...]:
    """Return every way to read what a price covers, the least first.

    The delivery term decides; where the maker's words say otherwise, both are costed. Neither: goods, goods and
    freight, and all paid are costed.
    """
    if term is not None:
        said = covers if covers not in (None, covers_by_term(term)) else None
        return by_term(term, place) + ((by_words(said, freight_covers),) if said else ())
    return tuple(by_words(each, freight_covers) for each in ([covers] if covers else COVERS))
