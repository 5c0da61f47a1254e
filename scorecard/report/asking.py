"""Ruled out and why, what to ask next, and, where they are wanted, contact details: as rows of words."""

from collections.abc import Sequence
from typing import Any
from urllib.parse import urlsplit

import numpy as np

from scorecard.asks import cells_to_write, consequence_phrase, sheet_words
from scorecard.calculation import Calculation
from scorecard.frozen import dataclass
from scorecard.harmless import safe_href
from scorecard.questions import Question
from scorecard.reasons import what_lets_in, why_ruled_out
from scorecard.report.answers import typed_in_words
from scorecard.report.texts import bare, isolate
from scorecard.words import counted, rounded

MOST_ASKED = 60  # questions on one page
LONGEST_NOTE = 1_000


@dataclass(frozen=True, slots=True, kw_only=True)
class RuledOut:
    """A maker that is ruled out: why, what would let it in, and its score and rank then."""

    maker: str
    why: tuple[str, ...]
    let_in_by: tuple[str, ...]
    score: str
    rank: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One question: of whom, on what, what is known now, what it could change, what it carries, where to write it."""

    maker: str
    criterion: str
    now: str
    change: str | None
    carries: str
    cell: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Questions:
    """What to ask: what could change the leader, the rest, and in words what is left out, and whose cells are named."""

    deciding: tuple[Asked, ...]
    others: tuple[Asked, ...]
    left_out: tuple[str, ...]
    cells_of: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Detail:
    """One contact detail: its heading, the text, and where it is a web address that may be linked, address and host."""

    heading: str
    text: str
    href: str | None
    host: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """One maker's contact details."""

    maker: str
    details: tuple[Detail, ...]


def ruled_out_of(calculation: Calculation, result: dict[str, Any], shown: Sequence[int]) -> list[RuledOut]:
    """Return the makers that are ruled out.

    Parameters
    ----------
    calculation : of a case on a day
    result : of the same calculation, whose ``let_in`` is in sheet order
    shown : positions of the first of them, in sheet order
    """
    rows = []
    for maker, let_in in zip(shown, result["let_in"], strict=False):
        failed = [int(at) for at in np.flatnonzero(calculation.screening.fails[maker])]
        about = [(calculation.case.criteria.criteria[at], calculation.countings[at], maker) for at in failed]
        rows.append(
            RuledOut(
                maker=calculation.case.table.makers[maker],
                why=tuple(why_ruled_out(*one) for one in about),
                let_in_by=tuple(what_lets_in(*one) for one in about),
                score=rounded(let_in["score"]),
                rank=str(let_in["rank"]),
            )
        )
    return rows


def questions_of(calculation: Calculation) -> Questions:
    """Return what to ask, without the questions that carry nothing and change nothing."""
    worth = [one for one in calculation.questions if _matters(calculation, one)]
    idle = [one for one in calculation.questions if not _matters(calculation, one)]
    shown = worth[:MOST_ASKED]
    return Questions(
        deciding=tuple(_asked(calculation, one) for one in shown if one.could_change_leader),
        others=tuple(_asked(calculation, one) for one in shown if not one.could_change_leader),
        left_out=_left_out(calculation, len(worth) - len(shown), idle),
        cells_of=isolate(sheet_words(calculation.case.table)),
    )


def _left_out(calculation: Calculation, more: int, idle: Sequence[Question]) -> tuple[str, ...]:
    said = []
    if more:
        said.append(f"{counted(more, 'more question')} that carry no more than these are in shortlist.json.")
    weightless = sum(calculation.shares[one.criterion] == 0 for one in idle)
    if weightless:
        are = "is left out: its criterion has" if weightless == 1 else "are left out: their criteria have"
        said.append(f"{counted(weightless, 'open answer')} {are} weight 0.")
    if len(idle) > weightless:
        number = len(idle) - weightless
        verb = "is left out: whatever it turns" if number == 1 else "are left out: whatever they turn"
        said.append(f"{counted(number, 'open answer')} {verb} out to be, the points are the same.")
    return tuple(said)


def _matters(calculation: Calculation, question: Question) -> bool:
    may_fail = bool(calculation.screening.may_fail[question.maker, question.criterion])
    return question.could_change_leader or may_fail or question.carries > 0


def _asked(calculation: Calculation, question: Question) -> Asked:
    criterion = calculation.case.criteria.criteria[question.criterion]
    name = calculation.case.table.makers[question.maker]
    return Asked(
        maker=name,
        criterion=criterion.title,
        now=typed_in_words(calculation, question.maker, question.criterion),
        change=_change(calculation, question),
        carries=rounded(question.carries) if question.carries == 0 or question.carries >= 0.05 else "under 0.1",
        cell=cells_to_write(calculation, question.maker, question.criterion, bare(name)),
    )


def _change(calculation: Calculation, question: Question) -> str | None:
    if question.could_change_leader:
        return consequence_phrase(calculation, question)
    if calculation.screening.may_fail[question.maker, question.criterion]:
        return "may rule it out"
    return None


def contacts_of(calculation: Calculation, shown: Sequence[int]) -> list[Contact]:
    """Return the contact details and notes of some makers, without the makers of whom none are known."""
    details = calculation.case.table.details
    contacts = []
    for maker in shown:
        said = [_detail(heading, texts[maker]) for heading, texts in details.items() if texts[maker].strip()]
        if said:
            contacts.append(Contact(maker=calculation.case.table.makers[maker], details=tuple(said)))
    return contacts


def _detail(heading: str, text: str) -> Detail:
    href = safe_href(text)
    host = None if href is None else isolate(urlsplit(href).hostname or "")
    return Detail(heading=isolate(heading), text=isolate(text, LONGEST_NOTE), href=href, host=host)
