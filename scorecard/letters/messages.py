"""The messages: what to ask, put into the user's wording, with the names of the files that hold them.

Enters: a calculation and the wording. Leaves: a round of messages, reminders, and who was asked.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from scorecard.calculation import Calculation
from scorecard.letters.asked import REMIND_AFTER, Asked, asked_of
from scorecard.letters.enquiry import Enquiry, LookUp, ToAsk, enquiries_of, enquiry_of, look_ups_of
from scorecard.letters.placeholders import fill
from scorecard.letters.values import values_for, values_of_maker
from scorecard.letters.wording import Kind, Wording
from scorecard.writing import safe_name

SCHEMA = "scorecard-enquire/1"
MOST_QUESTIONS = 8  # in a short message and a reminder
MOST_MESSAGES = 200  # in one round; --maker reaches any maker


@dataclass(frozen=True, slots=True, kw_only=True)
class Message:
    """A maker's message, short and full; ``questions`` holds all of them, though the short one asks eight at most."""

    maker: int
    questions: tuple[ToAsk, ...]
    short: str
    full: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Reminder:
    """A follow-up to a maker that is due one."""

    maker: int
    text: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Round:
    """A round of asking.

    Parameters
    ----------
    messages : whose answer matters most first
    left_out : how many makers more have open answers
    reminders : for those due one, the longest wait first
    asked : everybody who was asked
    look_ups : what the buyer finds out without the maker
    nothing_open : ranked makers of whom there is nothing to ask, in the order of rank
    ruled_out : those without a message, in sheet order
    """

    calculation: Calculation
    messages: tuple[Message, ...]
    left_out: int
    reminders: tuple[Reminder, ...]
    asked: tuple[Asked, ...]
    look_ups: tuple[LookUp, ...]
    nothing_open: tuple[int, ...]
    ruled_out: tuple[int, ...]


def round_of(
    calculation: Calculation, wording: Wording, *, maker: int | None = None, remind_after: int = REMIND_AFTER
) -> Round:
    """Return a round of asking.

    Parameters
    ----------
    calculation : of a case on a day
    wording : checked templates
    maker : position of the only maker to write to; None for every ranked maker of whom something is open
    remind_after : a reminder is due after more than so many working days without an answer
    """
    found = enquiries_of(calculation)
    chosen = found[:MOST_MESSAGES] if maker is None else (enquiry_of(calculation, maker),)
    asked = asked_of(calculation, remind_after)
    due = [one.maker for one in asked if one.is_due and maker in (None, one.maker)]
    writer = _Writer(calculation, wording, asked)
    with_message = {one.maker for one in (*found, *chosen)}
    return Round(
        calculation=calculation,
        messages=tuple(writer.message(one) for one in chosen),
        left_out=len(found) - len(chosen) if maker is None else 0,
        reminders=tuple(writer.reminder(one) for one in due[:MOST_MESSAGES]),
        asked=asked,
        look_ups=look_ups_of(calculation),
        nothing_open=tuple(one for one in calculation.ranking.order if one not in with_message),
        ruled_out=tuple(at for at in calculation.ranking.ruled_out if at not in with_message),
    )


class _Writer:
    """Fills the templates for one maker after another."""

    def __init__(self, calculation: Calculation, wording: Wording, asked: Sequence[Asked]) -> None:
        self.calculation, self.wording = calculation, wording
        self.asked = {one.maker: one for one in asked}
        self.shared = values_for(calculation.case.brief, calculation.as_of)

    def message(self, enquiry: Enquiry) -> Message:
        """Return one maker's message."""
        return Message(
            maker=enquiry.maker,
            questions=enquiry.questions,
            short=self._filled(self.wording.short, enquiry, MOST_QUESTIONS),
            full=self._filled(self.wording.full, enquiry, len(enquiry.questions)),
        )

    def reminder(self, maker: int) -> Reminder:
        """Return one maker's reminder."""
        enquiry = enquiry_of(self.calculation, maker)
        return Reminder(maker=maker, text=self._filled(self.wording.reminder, enquiry, MOST_QUESTIONS))

    def _filled(self, template: str, enquiry: Enquiry, most: int) -> str:
        asked = self.asked.get(enquiry.maker)
        own = values_of_maker(
            self.calculation.case.table.makers[enquiry.maker],
            [one.text for one in enquiry.questions[:most]],
            asked_on=None if asked is None else asked.asked_on,
            waited=0 if asked is None else asked.working_days,
        )
        return fill(template, self.shared | own)


def file_of(calculation: Calculation, maker: int, kind: Kind) -> str:
    """Return the name of the file that holds a message, such as ``06-lanternby-mugs-short.txt``."""
    table = calculation.case.table
    return f"{safe_name(table.makers[maker], table.rows[maker])}-{kind}.txt"


def files_of(made: Round) -> dict[str, str]:
    """Return every message and reminder by its file name."""
    files = {}
    for message in made.messages:
        files[file_of(made.calculation, message.maker, "short")] = message.short
        files[file_of(made.calculation, message.maker, "full")] = message.full
    for reminder in made.reminders:
        files[file_of(made.calculation, reminder.maker, "reminder")] = reminder.text
    return files


def result_of(made: Round, wording: Wording) -> dict[str, Any]:
    """Return what ``scorecard enquire --json`` prints.

    Parameters
    ----------
    made : the round
    wording : whose warnings are listed after those of the case
    """
    case = made.calculation.case
    names = case.table.makers
    reminders = {one.maker: one for one in made.reminders}
    return {
        "schema": SCHEMA,
        "title": case.title,
        "as_of": made.calculation.as_of.isoformat(),
        "messages": [_message(made, one) for one in made.messages],
        "left_out": made.left_out,
        "asked": [_asked(made, one, reminders.get(one.maker)) for one in made.asked],
        "look_up": [{"maker": names[one.maker], "criterion": one.criterion, "text": one.text} for one in made.look_ups],
        "nothing_open": [names[maker] for maker in made.nothing_open],
        "ruled_out": [names[maker] for maker in made.ruled_out],
        "warnings": [one.as_json() for one in (*case.warnings, *wording.warnings)],
    }


def _message(made: Round, message: Message) -> dict[str, Any]:
    table, calculation = made.calculation.case.table, made.calculation
    return {
        "maker": table.makers[message.maker],
        "row": table.rows[message.maker],
        "status": "ranked" if calculation.ranking.ranks[message.maker] else "ruled out",
        "file": file_of(calculation, message.maker, "short"),
        "full_file": file_of(calculation, message.maker, "full"),
        "questions": [
            {"criterion": one.criterion, "text": one.text, "could_change_leader": one.could_change_leader}
            for one in message.questions
        ],
        "short": message.short,
        "full": message.full,
    }


def _asked(made: Round, asked: Asked, reminder: Reminder | None) -> dict[str, Any]:
    return {
        "maker": made.calculation.case.table.makers[asked.maker],
        "asked_on": asked.asked_on.isoformat(),
        "answered_on": None if asked.answered_on is None else asked.answered_on.isoformat(),
        "working_days": asked.working_days,
        "due": asked.is_due,
        "reminder_file": None if reminder is None else file_of(made.calculation, asked.maker, "reminder"),
        "reminder": None if reminder is None else reminder.text,
    }
