"""``care``: care cards from what a maker answered, with the usual cautions of such goods."""

from collections.abc import Iterator, Sequence
from datetime import date
from pathlib import Path
from typing import Any

import typer

from scorecard.care import (
    ADVICE,
    CAUTIONS,
    FOR_CHILDREN,
    NO_SYMBOLS,
    TOUCHES_FOOD,
    CareCard,
    CareFacts,
    care_card,
    promises_dishwasher,
)
from scorecard.case import Case
from scorecard.cli.gate import say, show_json
from scorecard.cli.naming import named_maker
from scorecard.cli.scoring import REPORTS, Inputs, tell_case, tell_kept
from scorecard.cli.tables import plain, visible
from scorecard.costed import costed_on
from scorecard.errors import InputError, Place, Problem
from scorecard.harmless import safe_name
from scorecard.letters.care_page import care_page
from scorecard.orders import latest
from scorecard.reading.cell_values import UNKNOWN_WORDS
from scorecard.reading.cells import quoted
from scorecard.reading.folder import CRITERIA_FILE
from scorecard.writing import time_stamp, write_outputs

CARE = "Care"


def write_care_cards(inputs: Inputs, typed: str, *, as_json: bool) -> None:
    """Write a maker's care cards, and print what stands on them and what to mind."""
    case = inputs.read()
    maker = named_maker(typed, case.table.makers, "MAKER")
    card, per_page = card_of(case, maker, inputs)
    warnings = list(doubtful(case, maker, card))
    notes = [*notes_of(case.care or CareFacts()), *(f"{one.found}: {one.wanted}" for one in warnings)]
    name = f"care-{safe_name(case.table.makers[maker], case.table.rows[maker])}.html"
    page = care_page(card, notes, per_page=per_page, pieces=pieces_of(case, maker, inputs.day()), made=time_stamp())
    tell_kept(write_outputs(inputs.folder / REPORTS, {name: page.encode()}))
    path = inputs.folder / REPORTS / name
    if as_json:
        show_json(care_result(case, maker, card, path, (*case.warnings, *warnings)))
        return
    tell_case(case, inputs.day())
    for warning in warnings:
        say(str(warning))
    tell_card(visible(case.table.makers[maker]), card, per_page, path, notes_of(case.care or CareFacts()))


def pieces_of(case: Case, maker: int, day: date) -> int:
    """Return how many pieces the cards are for: of the latest order, else of the next one, else of the brief."""
    name = case.table.makers[maker]
    order, costed = latest(case.orders, name), costed_on(case, day)
    cost = costed.chosen.get(name) if costed else None
    return (order.pieces if order else None) or (cost.quantities[1] if cost else case.brief.quantity)


def card_of(case: Case, maker: int, inputs: Inputs) -> tuple[CareCard, int]:
    """Return a maker's card, and how many stand on a page.

    Raises
    ------
    InputError
        With everything that is not known yet: the maker's answer, and what kind of goods these are.
    """
    answers = case.table.details.get(CARE)
    answer = answers[maker] if answers else ""
    facts = case.care or CareFacts()
    criteria = inputs.criteria.name if inputs.criteria else CRITERIA_FILE
    card = care_card(case.brief.item, "" if answer.strip().casefold() in UNKNOWN_WORDS else answer, facts)
    problems = [*_unknown_facts(facts, criteria), *_unanswered(case, maker, card, ADVICE[facts.goods])]
    if card.per_page is None:
        place = case.table.place(maker, CARE)
        wanted = "Keep what a buyer must know, in short lines parted by semicolons"
        problems.append(Problem(code="card-too-long", place=place, found="the text fits on no card", wanted=wanted))
    if problems or card.per_page is None:
        raise InputError(problems, case.warnings, case.set_aside)
    return card, card.per_page


def _unknown_facts(facts: CareFacts, file: str) -> Iterator[Problem]:
    """Yield what nobody has said of the goods yet."""
    asked = (
        (facts.touches_food, "touches_food", "touch food, drink or lips", "touches_food = true, or false"),
        (facts.for_children, "for_children", "are for children", "for_children = true, or false"),
        (facts.flame, "flame", "burn easily or hold a flame", 'flame = "burns", "holds a flame" or "neither"'),
    )
    for value, key, question, line in asked:
        if value is None:
            found = f"nothing says whether these goods {question}, and the tool does not guess"
            wanted = f"Write into [care]: {line}"
            yield Problem(code="missing-key", place=Place(file=file, key=f"care.{key}"), found=found, wanted=wanted)


def _unanswered(case: Case, maker: int, card: CareCard, advice: str) -> Iterator[Problem]:
    """Yield that a maker has said nothing about care."""
    if card.lines:
        return
    name = visible(case.table.makers[maker])
    is_there = CARE in case.table.details
    found = f"{name} has said nothing about care" if is_there else f"no column is headed {CARE}"
    into = "here" if is_there else f"into a new column {CARE}"
    wanted = f"Ask it ({advice}), and write its answer {into}, parted by semicolons"
    yield Problem(code="no-care-answer", place=case.table.place(maker, CARE), found=found, wanted=wanted)


def doubtful(case: Case, maker: int, card: CareCard) -> Iterator[Problem]:
    """Yield warnings of promises that say less than they seem to."""
    for line in card.lines:
        if promises_dishwasher(line):
            found = f"{quoted(line)} promises a dishwasher without a number of cycles"
            wanted = "Ask for how many cycles, by which test (EN 12875-1), and write that"
            place = case.table.place(maker, CARE)
            yield Problem(code="dishwasher-without-cycles", place=place, found=found, wanted=wanted)


def notes_of(facts: CareFacts) -> tuple[str, ...]:
    """Return what to mind with such goods."""
    food = (TOUCHES_FOOD,) if facts.touches_food else ()
    children = (FOR_CHILDREN,) if facts.for_children else ()
    return (*CAUTIONS, *food, *children, NO_SYMBOLS)


def care_result(case: Case, maker: int, card: CareCard, path: Path, warnings: tuple[Problem, ...]) -> dict[str, Any]:
    """Return what ``scorecard care --json`` prints."""
    facts = case.care or CareFacts()
    return {
        "schema": "scorecard-care/1",
        "title": case.title,
        "maker": case.table.makers[maker],
        "item": card.item,
        "lines": list(card.lines),
        "cautions": list(card.cautions),
        "from": card.sender or None,
        "goods": facts.goods,
        "touches_food": facts.touches_food,
        "for_children": facts.for_children,
        "flame": facts.flame,
        "per_page": card.per_page,
        "notes": list(notes_of(facts)),
        "file": path.as_posix(),
        "warnings": [one.as_json() for one in warnings],
    }


def tell_card(maker: str, card: CareCard, per_page: int, path: Path, notes: Sequence[str]) -> None:
    """Print what stands on the card, what to mind, and where the page is."""
    typer.echo(f"On each card, as {maker} answered:")
    for line in (*card.lines, *(f"{caution}." for caution in card.cautions), *filter(None, (card.sender,))):
        typer.echo(f"  {plain(line)}")
    for note in notes:
        typer.echo(f"{note}.")
    typer.echo(f"Cards to print, {per_page} to a page: {path.resolve()}")
    typer.echo("Next: read one card as your buyer would, then print the page at 100 % and cut from mark to mark")
