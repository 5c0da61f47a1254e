"""Counts as a buyer types them, such as B2=4 or major=7: every mistake at once.

Enters: the words, the lines of the sheet, how many pieces were opened and how many arrived. Leaves: pieces by line, or
sentences that say what to type instead.
"""

from collections.abc import Mapping, Sequence
from dataclasses import field

from scorecard.frozen import dataclass
from scorecard.inspection.faults import KINDS, SIGNS, Kind, TallyLine
from scorecard.words import counted, listed

EXAMPLE = "Write a code of the sheet and a number, such as B2=4, or a whole kind, such as major=7"


@dataclass(frozen=True, slots=True, kw_only=True)
class Counted:
    """What was typed.

    Parameters
    ----------
    faulty : pieces by line; a whole kind is a line of its own, without a text
    mistakes : sentences without the full stop
    """

    faulty: Mapping[TallyLine, int] = field(default_factory=dict)
    mistakes: tuple[str, ...] = ()


def count_faults(words: Sequence[str], lines: Sequence[TallyLine], opened: int | None, arrived: int) -> Counted:
    """Return pieces by line of the sheet.

    Parameters
    ----------
    words : as typed
    lines : of the sheet
    opened : pieces; None where it is not said
    arrived : pieces
    """
    known = {line.code.casefold(): line for line in lines} | {
        kind: TallyLine(code=kind, kind=kind, text="") for kind in KINDS
    }
    faulty: dict[TallyLine, int] = {}
    mistakes = []
    for word in words:
        name, sign, number = (part.strip() for part in word.partition("="))
        line = known.get(name.casefold())
        if line is None or not sign:
            mistakes.append(f"{word}: {_unknown(name, lines) if sign else 'there is no = in it'}. {EXAMPLE}")
        elif not (number.isascii() and number.isdigit()):
            mistakes.append(f"{word}: {number or 'nothing'} is not a whole number of pieces. {EXAMPLE}")
        elif line in faulty:
            mistakes.append(f"{word}: {line.code} is counted twice. Give one number for it")
        else:
            faulty[line] = int(number)
    mistakes += [*_doubled_kinds(faulty), *_too_many(faulty, opened, arrived)]
    return Counted(faulty=faulty, mistakes=tuple(mistakes))


def _unknown(name: str, lines: Sequence[TallyLine]) -> str:
    sign = name[:1].upper()
    codes = [line.code for line in lines if line.code[0] == sign] or [line.code for line in lines]
    return f"{name or 'nothing'} is no code of the sheet, which has {codes[0]} to {codes[-1]}"


def _doubled_kinds(faulty: Mapping[TallyLine, int]) -> list[str]:
    """Return what is said of each kind that is counted as a whole and by fault too."""
    wholes: dict[Kind, str] = {line.kind: line.code for line in faulty if not line.text}
    return [
        f"{kind}=… and {listed(line.code for line in faulty if line.kind == kind and line.text)}: the same pieces "
        f"would count twice. Give {kind} as one number, or by its codes ({SIGNS[kind]}1 and so on)"
        for kind in wholes
        if any(line.kind == kind and line.text for line in faulty)
    ]


def _too_many(faulty: Mapping[TallyLine, int], opened: int | None, arrived: int) -> list[str]:
    """Return what is said of pieces that were opened or counted beyond what there is."""
    total = sum(faulty.values())
    if opened is None:
        return ["--opened is missing. Say how many pieces you opened, such as --opened 200"]
    if opened < 1:
        return [f"--opened {opened}: nothing was opened, so nothing can be said. Open some pieces first"]
    found = []
    if opened > arrived:
        found.append(
            f"--opened {opened}: only {counted(arrived, 'piece')} arrived. Correct it, or say --arrived with what came"
        )
    if total > opened:
        found.append(
            f"{counted(total, 'faulty piece')} of {opened} opened: more than there are. Count each piece once, under "
            "its worst fault"
        )
    return found
