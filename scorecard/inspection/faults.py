"""Kinds of fault, and the list of faults that a tally sheet counts by.

The three kinds are the trade's; which fault is of which kind is the buyer's to say. The usual list is common practice,
no source.
"""

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Literal

from scorecard.frozen import dataclass

Kind = Literal["critical", "major", "minor"]

KINDS: tuple[Kind, ...] = ("critical", "major", "minor")
SIGNS: Mapping[Kind, str] = MappingProxyType({"critical": "A", "major": "B", "minor": "C"})
MEANINGS: Mapping[Kind, str] = MappingProxyType(
    {
        "critical": "could hurt somebody, or may not be sold at all",
        "major": "cannot be sold as what was ordered",
        "minor": "can be sold, though it is not as approved",
    }
)
OTHER = "another one"
USUAL_FAULTS: Mapping[Kind, tuple[str, ...]] = MappingProxyType(
    {
        "critical": ("sharp edge, splinter or point", "part that comes off", "safety mark or warning missing"),
        "major": (
            "wrong design, colour or size",
            "print missing, smudged or peeling",
            "print further out of place than agreed",
            "broken, cracked, chipped or torn",
        ),
        "minor": ("speck, scratch or stain", "colour a little off the approved sample", "packing damaged or dirty"),
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class TallyLine:
    """One line of the tally sheet.

    Parameters
    ----------
    code : such as "B2": the sign of its kind, and its place among them
    text : in words; "" where a count is of a whole kind
    """

    code: str
    kind: Kind
    text: str


def fault_list(names: Mapping[Kind, Sequence[str]]) -> tuple[TallyLine, ...]:
    """Return the lines of a tally sheet: the named faults of each kind, and one more for what nobody foresaw.

    Parameters
    ----------
    names : in words by kind; the usual ones for a kind that is not there
    """
    return tuple(
        TallyLine(code=f"{SIGNS[kind]}{number}", kind=kind, text=text)
        for kind in KINDS
        for number, text in enumerate((*names.get(kind, USUAL_FAULTS[kind]), OTHER), 1)
    )
