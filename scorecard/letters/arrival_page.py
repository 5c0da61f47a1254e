"""Pages about an arrival: the tally sheet, and the outcome, each one printable HTML file without network or script.

Enters: an arrival, the lines of the sheet, a sampling plan or an outcome. Leaves: a page whose content security policy
allows its own style sheet, by its hash, and nothing else.
"""

from collections.abc import Iterator, Sequence
from datetime import date, datetime
from itertools import groupby
from pathlib import Path
from typing import Any

from scorecard import __version__
from scorecard.frozen import dataclass
from scorecard.harmless import environment
from scorecard.inspection.drawing import Spot
from scorecard.inspection.faults import KINDS, MEANINGS, SIGNS, TallyLine
from scorecard.inspection.outcome import Arrival, Outcome
from scorecard.inspection.outcome_words import (
    CAUTIONS,
    DANGER,
    claim_text,
    count_words,
    exact_sentence,
    found_sentence,
    judged_sentence,
    kind_lines,
    last_day_sentence,
    money_sentence,
    number_sentence,
    rest_sentence,
)
from scorecard.inspection.plan_words import NO_PROMISE, SLIP_HEADING, SOURCE, limit_sentence, shared_sentence, slip_rows
from scorecard.inspection.plans import SamplingPlan
from scorecard.letters.plain import one_line
from scorecard.page_policy import worn
from scorecard.words import all_of, counted, day_words, moment_words

HERE = Path(__file__).parent
COLUMNS = 8  # cartons side by side on a sheet of paper
MOST_COLUMNS = 40  # beyond it several cartons share a column
UNKNOWN_CARTONS = 6  # empty columns where it is not known how many cartons there are


@dataclass(frozen=True, slots=True, kw_only=True)
class TallyRow:
    """A line of the tally: its code and fault."""

    code: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TallyKind:
    """The lines of one kind, under its name and meaning."""

    name: str
    meaning: str
    rows: tuple[TallyRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Picked:
    """The pieces to open of one carton; of the whole lot where cartons are not known."""

    carton: str
    pieces: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """What a tally sheet is made from.

    Parameters
    ----------
    plan, drawn : None and nothing where all is opened
    """

    arrival: Arrival
    lines: tuple[TallyLine, ...]
    plan: SamplingPlan | None = None
    drawn: tuple[Spot, ...] = ()

    @property
    def to_open(self) -> int:
        """How many pieces are opened."""
        return self.plan.opened if self.plan else self.arrival.lot


def tally_page(sheet: Sheet, *, title: str, as_of: date, made: datetime, command: str) -> str:
    """Return the sheet to print and count on; the same sheet and time give the same bytes.

    Parameters
    ----------
    sheet : what is counted
    title : of the folder
    as_of : the day that stands for today
    made : when the page is made
    command : what this user types to enter the counts, with numbers for an example
    """
    views = {
        **_head(sheet.arrival, as_of),
        "all_of_it": sheet.plan is None or sheet.plan.is_whole_lot,
        "to_open": counted(sheet.to_open, "piece"),
        "everything": all_of(sheet.arrival.lot, "piece"),
        "lot": sheet.arrival.lot,
        "limits": [limit_sentence(one) for one in sheet.plan.plans] if sheet.plan else [],
        "shared": shared_sentence(sheet.plan) if sheet.plan else "",
        "kinds_judged": [one.kind for one in sheet.plan.plans] if sheet.plan else [],
        "chances": list(slip_rows(sheet.plan)) if sheet.plan else [],
        "slip_heading": SLIP_HEADING,
        "no_promise": NO_PROMISE,
        "source": SOURCE,
        "picked": list(_picked(sheet.drawn)),
        "cartons_known": sheet.arrival.per_carton is not None,
        "kinds": list(_kinds(sheet.lines)),
        "blocks": list(_blocks(columns_of(sheet))),
        "command": command,
    }
    return _set("tally.html.jinja", views, title=title, made=made)


def outcome_page(outcome: Outcome, *, title: str, as_of: date, made: datetime) -> str:
    """Return what the counts come to and what to claim; the same outcome and time give the same bytes."""
    lot = outcome.arrival.lot
    views = {
        **_head(outcome.arrival, as_of),
        "found": found_sentence(outcome),
        "rest": rest_sentence(outcome),
        "danger": DANGER if outcome.of("critical") else None,
        "number": number_sentence(outcome.arrival),
        "kinds": [
            (kind, meaning, [count_words(one) for one in counts]) for kind, meaning, counts in kind_lines(outcome)
        ],
        "judged": [judged_sentence(one, lot) for one in outcome.judged],
        "no_promise": NO_PROMISE if outcome.judged and outcome.unopened else None,
        "money": money_sentence(outcome),
        "claim": claim_text(outcome),
        "not_exact": exact_sentence(outcome),
        "cautions": CAUTIONS,
    }
    return _set("outcome.html.jinja", views, title=title, made=made)


def _set(template: str, views: dict[str, Any], *, title: str, made: datetime) -> str:
    own = {
        **worn(HERE / "arrival.css"),
        "title": one_line(title),
        "written": moment_words(made),
        "version": __version__,
    }
    return environment(HERE).get_template(template).render(own | views)


def _head(arrival: Arrival, as_of: date) -> dict[str, Any]:
    """Return what stands at the top of either page: name and value, line by line, and the last day to complain."""
    facts = [
        ("Maker", one_line(arrival.maker) if arrival.maker else "no order is noted yet"),
        ("Goods", one_line(arrival.item)),
        ("Ordered", _ordered(arrival)),
        ("Arrived", _arrived(arrival)),
    ]
    if arrival.per_carton and arrival.cartons:
        packed = f"{counted(arrival.cartons, 'carton')} of {arrival.per_carton}"
        rest = arrival.lot % arrival.per_carton
        facts.append(("Packed", f"{packed}, the last one with {rest}" if rest and arrival.cartons > 1 else packed))
    return {"facts": facts, "last_day": last_day_sentence(arrival, as_of)}


def _ordered(arrival: Arrival) -> str:
    on = f" on {day_words(arrival.ordered_on)}" if arrival.ordered_on else ""
    return f"{counted(arrival.ordered, 'piece')}{on}"


def _arrived(arrival: Arrival) -> str:
    on = f" on {day_words(arrival.arrived_on)}" if arrival.arrived_on else "; the day is not noted yet"
    return f"{counted(arrival.lot, 'piece')}{on}"


def _kinds(lines: Sequence[TallyLine]) -> Iterator[TallyKind]:
    for kind in KINDS:
        rows = tuple(TallyRow(code=line.code, text=one_line(line.text)) for line in lines if line.kind == kind)
        yield TallyKind(name=f"{SIGNS[kind]}: {kind}", meaning=MEANINGS[kind], rows=rows)


def columns_of(sheet: Sheet) -> list[str]:
    """Return the headings of the columns: the cartons in which something is opened, several to one where they are many.

    Where it is not known how the pieces are packed, the columns are left for the user to number.
    """
    if sheet.arrival.per_carton is None:
        return [""] * UNKNOWN_CARTONS
    cartons = sorted({spot.carton for spot in sheet.drawn if spot.carton}) or [
        *range(1, (sheet.arrival.cartons or 1) + 1)
    ]
    together = -(-len(cartons) // MOST_COLUMNS)
    grouped = [cartons[at : at + together] for at in range(0, len(cartons), together)]
    return [str(group[0]) if len(group) == 1 else f"{group[0]}–{group[-1]}" for group in grouped]


def _blocks(columns: Sequence[str]) -> Iterator[list[str]]:
    """Yield as many columns as go side by side on a sheet of paper, about the same number in each block."""
    blocks = -(-len(columns) // COLUMNS)
    each = -(-len(columns) // blocks)
    for at in range(0, len(columns), each):
        yield list(columns[at : at + each])


def _picked(drawn: Sequence[Spot]) -> Iterator[Picked]:
    for carton, spots in groupby(drawn, key=lambda spot: spot.carton):
        pieces = ", ".join(str(spot.piece) for spot in spots)
        yield Picked(carton="" if carton is None else str(carton), pieces=pieces)
