"""The messages: what to ask, put into the user's wording, with the names of the files that hold them.

Enters: a calculation and the wording. Leaves: a round of messages, reminders, and who was asked.
"""

from collections.abc import Sequence
from typing import Any

from scorecard.asks import ANSWERED_ON, ASKED_ON
from scorecard.calculation import Calculation
from scorecard.frozen import dataclass
from scorecard.harmless import safe_name
from scorecard.letters.again import again_questions
from scorecard.letters.asked import REMIND_AFTER, Asked, asked_of
from scorecard.letters.enquiry import Enquiry, LookUp, ToAsk, enquiries_of, look_ups_of, writing_order
from scorecard.letters.placeholders import fill
from scorecard.letters.question_words import can_you_questions, price_questions
from scorecard.letters.values import values_for, values_of_maker
from scorecard.letters.wording import Kind, Wording

SCHEMA = "scorecard-enquire/1"
DAYS = (ASKED_ON, ANSWERED_ON)
MOST_QUESTIONS = 8  # in a short message and a reminder
MOST_MESSAGES = 200  # in one round; --maker reaches any maker


@dataclass(frozen=True, slots=True, kw_only=True)
class Message:
    """A maker's message.

    Parameters
    ----------
    maker : its position
    questions : all of them, the most decisive first; the short message asks eight at most
    due : what to send now: the short message while questions are open, else the full one, for a quote; the reminder
        where one is due; None while the maker has time to answer, and once it has quoted and nothing else is open
    has_quoted : whether a price of it is written down
    again : how many questions about an earlier order stand before the others
    short, full : the texts
    """

    maker: int
    questions: tuple[ToAsk, ...]
    due: Kind | None
    short: str
    full: str
    has_quoted: bool = False
    again: int = 0

    @property
    def number(self) -> int:
        """How many questions the full message asks; 0 where it asks but for the quote."""
        return self.again + len(self.questions) if self.again or self.questions else 0

    @property
    def could_change_leader(self) -> int:
        """How many of its answers could each change the leader."""
        return sum(one.could_change_leader for one in self.questions)


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
    messages : to the named maker first, then to those whose answer could change the leader, then by rank
    named : the maker to write to whatever its place, by position; None where none was named
    left_out : how many ranked makers more there are
    reminders : for those of them due one, the longest wait first
    asked : everybody who was asked
    look_ups : what the buyer finds out without the maker
    ruled_out : those without a message, in sheet order
    """

    calculation: Calculation
    messages: tuple[Message, ...]
    named: int | None
    left_out: int
    reminders: tuple[Reminder, ...]
    asked: tuple[Asked, ...]
    look_ups: tuple[LookUp, ...]
    ruled_out: tuple[int, ...]


def round_of(
    calculation: Calculation, wording: Wording, *, named: int | None = None, remind_after: int = REMIND_AFTER
) -> Round:
    """Return a round of asking: to every ranked maker, and to the one that is named though it be ruled out.

    Parameters
    ----------
    calculation : of a case on a day
    wording : checked templates
    named : position of a maker that stands first; None where none is named
    remind_after : a reminder is due after more than so many working days without an answer
    """
    order = writing_order(calculation)
    first = () if named is None else (named,)
    chosen = tuple(dict.fromkeys([*first, *order[:MOST_MESSAGES]]))
    asked = asked_of(calculation, remind_after, named)
    due = [one.maker for one in asked if one.is_due and one.maker in chosen]
    writer = _Writer(calculation, wording, asked)
    return Round(
        calculation=calculation,
        messages=tuple(writer.message(one) for one in enquiries_of(calculation, chosen)),
        named=named,
        left_out=len(set(order).difference(chosen)),
        reminders=tuple(writer.reminder(one) for one in enquiries_of(calculation, due)),
        asked=asked,
        look_ups=look_ups_of(calculation),
        ruled_out=tuple(at for at in calculation.ranking.ruled_out if at != named),
    )


class _Writer:
    """Fills the templates for one maker after another."""

    def __init__(self, calculation: Calculation, wording: Wording, asked: Sequence[Asked]) -> None:
        self.calculation, self.wording = calculation, wording
        self.asked = {one.maker: one for one in asked}
        self.again = again_questions(calculation.case)
        costs = calculation.case.costs
        self.quoted = frozenset(quote.maker for quote in costs.quotes) if costs else frozenset()
        care = calculation.case.care
        self.shared = values_for(calculation.case.brief, calculation.as_of, care.goods if care else None)

    def message(self, enquiry: Enquiry) -> Message:
        """Return one maker's message."""
        return Message(
            maker=enquiry.maker,
            questions=enquiry.questions,
            due=self._due(enquiry),
            short=self._filled(self.wording.short, enquiry.maker, self._few(enquiry)),
            full=self._filled(self.wording.full, enquiry.maker, self._all(enquiry)),
            has_quoted=self._has_quoted(enquiry.maker),
            again=len(self.again.get(self.calculation.case.table.makers[enquiry.maker], ())),
        )

    def _has_quoted(self, maker: int) -> bool:
        return self.calculation.case.table.makers[maker] in self.quoted

    def _due(self, enquiry: Enquiry) -> Kind | None:
        asked = self.asked.get(enquiry.maker)
        if asked is None or asked.answered_on is not None:
            full: Kind | None = None if self._has_quoted(enquiry.maker) else "full"
            return "short" if enquiry.questions else full
        return "reminder" if asked.is_due else None

    def reminder(self, enquiry: Enquiry) -> Reminder:
        """Return one maker's reminder."""
        text = self._filled(self.wording.reminder, enquiry.maker, self._few(enquiry))
        return Reminder(maker=enquiry.maker, text=text)

    def _few(self, enquiry: Enquiry) -> Sequence[str]:
        """Return the first questions; where none is open, those of a quote, which nobody has given yet."""
        quote = () if enquiry.questions else price_questions(self.calculation.case.brief)
        return [*self._all(enquiry), *quote][:MOST_QUESTIONS]

    def _all(self, enquiry: Enquiry) -> Sequence[str]:
        again = self.again.get(self.calculation.case.table.makers[enquiry.maker], ())
        texts = [one.text for one in enquiry.questions] or can_you_questions(self.calculation.case.brief)
        return [*again, *texts]

    def _filled(self, template: str, maker: int, questions: Sequence[str]) -> str:
        asked = self.asked.get(maker)
        own = values_of_maker(
            self.calculation.case.table.makers[maker],
            questions,
            asked_on=None if asked is None else asked.asked_on,
            waited=0 if asked is None else asked.working_days,
        )
        return fill(template, self.shared | own)


def file_of(calculation: Calculation, maker: int, kind: Kind) -> str:
    """Return the name of the file that holds a message, such as ``06-lanternby-mugs-short.txt``."""
    table = calculation.case.table
    return f"{safe_name(table.makers[maker], table.rows[maker])}-{kind}.txt"


def cell_of(calculation: Calculation, heading: str, maker: int) -> str | None:
    """Return the cell of one maker under a heading of the sheet; None where there is no such column."""
    table = calculation.case.table
    return table.place(maker, heading).cell if heading in table.letters else None


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
        "named": None if made.named is None else names[made.named],
        "messages": [_message(made, one) for one in made.messages],
        "left_out": made.left_out,
        "asked": [_asked(made, one, reminders.get(one.maker)) for one in made.asked],
        "look_up": [{"maker": names[one.maker], "criterion": one.criterion, "text": one.text} for one in made.look_ups],
        "ruled_out": [names[maker] for maker in made.ruled_out],
        "warnings": [one.as_json() for one in (*case.warnings, *wording.warnings)],
    }


def _message(made: Round, message: Message) -> dict[str, Any]:
    table, calculation = made.calculation.case.table, made.calculation
    return {
        "maker": table.makers[message.maker],
        "row": table.rows[message.maker],
        "due": message.due,
        "cells": {heading: cell_of(calculation, heading, message.maker) for heading in DAYS},
        "status": "ranked" if calculation.ranking.ranks[message.maker] else "ruled out",
        "file": file_of(calculation, message.maker, "short"),
        "full_file": file_of(calculation, message.maker, "full"),
        "questions": [
            {
                "criterion": one.criterion,
                "text": one.text,
                "could_change_leader": one.could_change_leader,
                "cells": one.cells,
            }
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
