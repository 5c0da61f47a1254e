"""The messages of a round on one HTML page to copy from, with who was asked and who is due a reminder.

Leaves: a page that needs no network and no script. Its content security policy allows its own style sheet, by its hash,
and nothing else.
"""

from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from urllib.parse import urlsplit

import numpy as np

from scorecard import __version__
from scorecard.asks import ANSWERED_ON
from scorecard.calculation import Calculation
from scorecard.frozen import dataclass
from scorecard.harmless import environment, safe_href
from scorecard.letters.asked import Asked
from scorecard.letters.messages import DAYS, MOST_QUESTIONS, Message, Round, cell_of, file_of
from scorecard.letters.plain import one_line
from scorecard.letters.wording import Kind
from scorecard.page_policy import worn
from scorecard.reasons import why_ruled_out
from scorecard.words import counted, day_words, moment_words

HERE = Path(__file__).parent
COLUMNS = 72  # characters in a line of a text box
MOST_LISTED = 50  # names in a sentence, and lines of what to look up
HEADINGS: dict[Kind, str] = {"short": "Short message", "full": "Full message", "reminder": "Reminder"}
CONTACT_HEADINGS = ("Contact", "Web page")


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A text to copy: its heading, the text, how many lines it takes on the page, and whether it is to be sent now."""

    heading: str
    text: str
    lines: int
    is_due: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """Where to write to: as typed, and the same as a link with its host where it is a web address."""

    text: str
    href: str | None
    host: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ToMaker:
    """One maker's texts, a line of notes about them, and the cells into which days and answers go."""

    maker: str
    notes: str
    cells: str
    contacts: tuple[Contact, ...]
    boxes: tuple[Box, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AskedRow:
    """One line of the list of who was asked."""

    maker: str
    asked_on: str
    since: str


def page(made: Round, *, written: datetime, enquire: str, with_contacts: bool = False) -> str:
    """Return the page to copy from; the same round and time give the same bytes.

    Parameters
    ----------
    made : the round
    written : when the page is made
    enquire : the command that made it, as the user types it
    with_contacts : whether Contact and Web page of the sheet stand beside each message
    """
    case = made.calculation.case
    return (
        environment(HERE)
        .get_template("page.html.jinja")
        .render(
            **worn(HERE / "style.css"),
            title=one_line(case.title),
            day=day_words(made.calculation.as_of),
            written=moment_words(written),
            version=__version__,
            enquire=enquire,
            named=None if made.named is None else _names(made, (made.named,))[0],
            messages=[_to_maker(made, one, with_contacts=with_contacts) for one in made.messages],
            left_out=counted(made.left_out, "more maker") if made.left_out else "",
            asked=[_asked_row(made, one) for one in made.asked],
            look_ups=_first([one.text for one in made.look_ups], len(made.look_ups)),
            ruled_out=_names(made, made.ruled_out),
        )
    )


def _names(made: Round, makers: tuple[int, ...]) -> list[str]:
    names = made.calculation.case.table.makers
    return _first([one_line(names[maker]) for maker in makers[: MOST_LISTED + 1]], len(makers))


def _first(words: list[str], number: int) -> list[str]:
    """Return the first words of a list, and how many more there are."""
    more = number - MOST_LISTED
    return words if more <= 0 else [*words[:MOST_LISTED], f"{more} more in enquiries.json"]


def _to_maker(made: Round, message: Message, *, with_contacts: bool) -> ToMaker:
    return ToMaker(
        maker=_names(made, (message.maker,))[0],
        notes=_notes(made, message),
        cells=_cells(made, message),
        contacts=_contacts(made, message.maker) if with_contacts else (),
        boxes=_boxes(made, message),
    )


def _boxes(made: Round, message: Message) -> tuple[Box, ...]:
    """Return a maker's texts, the one to send now first."""
    reminders = [one.text for one in made.reminders if one.maker == message.maker]
    texts: dict[Kind, str] = {"short": message.short, "full": message.full}
    if reminders:
        texts["reminder"] = reminders[0]
    boxes = [_box(HEADINGS[kind], text, is_due=kind == message.due) for kind, text in texts.items()]
    return tuple(sorted(boxes, key=lambda box: not box.is_due))


def _notes(made: Round, message: Message) -> str:
    deciding, number = message.could_change_leader, message.number
    quote = "it has quoted, and nothing else is open" if message.has_quoted else "nothing to ask but the quote"
    notes = [counted(number, "question") if number else quote]
    if number > MOST_QUESTIONS:
        notes.append(f"the short message asks the first {MOST_QUESTIONS}")
    if deciding:
        notes.append(f"{'one answer' if deciding == 1 else f'{deciding} of the answers'} could change who leads")
    notes.extend(f"ruled out: {one_line(reason)}" for reason in _reasons(made.calculation, message.maker))
    return "; ".join([*notes, _to_send(made, message)])


def _to_send(made: Round, message: Message) -> str:
    if message.due is None and message.has_quoted:
        return "nothing to send now"
    if message.due is None:
        return "it has time to answer: nothing to send now"
    return f"to send now: {message.due}, {file_of(made.calculation, message.maker, message.due)}"


def _reasons(calculation: Calculation, maker: int) -> Iterator[str]:
    """Yield why a maker is ruled out."""
    for at in np.flatnonzero(calculation.screening.fails[maker]).tolist():
        yield why_ruled_out(calculation.case.criteria.criteria[at], calculation.countings[at], maker)


def _cells(made: Round, message: Message) -> str:
    """Return where in the sheet the days and the answers go."""
    days = [_day(made, message.maker, heading) for heading in DAYS]
    answers = [f"answer {at}: {one.cells}" for at, one in enumerate(message.questions, 1 + message.again) if one.cells]
    return f"Into the sheet: {'; '.join([*days, *answers])}."


def _day(made: Round, maker: int, heading: str) -> str:
    return f"{heading}: {cell_of(made.calculation, heading, maker) or 'a new column'}"


def _box(heading: str, text: str, *, is_due: bool) -> Box:
    lines = sum(max(1, -(-len(line) // COLUMNS)) for line in text.rstrip("\n").split("\n"))
    return Box(heading=heading, text=text, lines=lines, is_due=is_due)


def _contacts(made: Round, maker: int) -> tuple[Contact, ...]:
    details = made.calculation.case.table.details
    texts = [details[heading][maker] for heading in CONTACT_HEADINGS if heading in details]
    return tuple(_contact(text) for text in texts if text.strip())


def _contact(text: str) -> Contact:
    href = safe_href(text)
    return Contact(text=one_line(text, 300), href=href, host=None if href is None else urlsplit(href).hostname)


def _asked_row(made: Round, asked: Asked) -> AskedRow:
    days = counted(asked.working_days, "working day")
    if asked.answered_on is not None:
        since = f"answered in {days}"
    else:
        is_due = "; due a reminder" if asked.is_due else ""
        since = f"no answer for {days}{is_due}; when it answers, {_day(made, asked.maker, ANSWERED_ON)}"
    return AskedRow(
        maker=_names(made, (asked.maker,))[0],
        asked_on=day_words(asked.asked_on),
        since=since,
    )
