"""The head of the page: what is wanted, the verdict, and what was set aside.

Enters: an assessment. Leaves: sentences.
"""

from scorecard.calculation import Calculation
from scorecard.case import Case
from scorecard.errors import Problem
from scorecard.frozen import dataclass
from scorecard.report.texts import isolate, sentence
from scorecard.sentences import supporting, verdict_sentence
from scorecard.words import counted, day_words, listed

CAUTIONS = (
    "This ranking does not say that a maker is honest, nor that its goods are safe: it ranks the answers that were "
    "written down.",
    "Before you pay: choose a way of paying that protects you, and confirm bank details, changed ones above all, by a "
    "phone number that you already know.",
    "Product safety, rules for goods that touch food, customs and tax follow local rules: ask the authority, or "
    "somebody licensed to advise.",
)
CELLS_NAMED = 12  # cells set aside that are named in the first line


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """What stands at the head of the page.

    Parameters
    ----------
    title : of the case
    wanted : the brief in one line
    set_aside : cells that count as unknown since they could not be read; None where there are none
    verdict : a sentence
    supporting : what else to know beside the verdict, as sentences
    cautions : what the ranking does not say, and what to mind before money is at stake, as sentences
    """

    title: str
    wanted: str
    set_aside: str | None
    verdict: str
    supporting: tuple[str, ...]
    cautions: tuple[str, ...] = CAUTIONS


def opening_of(calculation: Calculation) -> Opening:
    """Return the head of the page."""
    return Opening(
        title=calculation.case.title,
        wanted=wanted_line(calculation.case),
        set_aside=set_aside_sentence(calculation.case.set_aside),
        verdict=sentence(verdict_sentence(calculation)),
        supporting=tuple(map(sentence, supporting(calculation))),
    )


def wanted_line(case: Case) -> str:
    """Return the brief in one line."""
    brief = case.brief
    parts = [
        brief.item,
        counted(brief.quantity, "piece") + (f" in {brief.designs} designs" if brief.designs > 1 else ""),
    ]
    if brief.destination:
        parts.append(f"to {brief.destination}")
    if brief.need_by:
        parts.append(f"needed by {day_words(brief.need_by)}")
    return " · ".join(parts)


def set_aside_sentence(set_aside: tuple[Problem, ...]) -> str | None:
    """Return which cells could not be read and count as unknown; None where there are none."""
    if not set_aside:
        return None
    cells = [isolate("!".join(part for part in (one.place.sheet, one.place.cell) if part)) for one in set_aside]
    more = len(cells) - CELLS_NAMED
    named = cells[:CELLS_NAMED] + ([f"{more} more"] if more > 0 else [])
    verb = "counts" if len(cells) == 1 else "count"
    return f"{counted(len(cells), 'cell')} could not be read and {verb} as unknown: {listed(named)}."
