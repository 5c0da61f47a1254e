"""Orders under way in sentences, the last day to complain first."""

from collections.abc import Sequence
from datetime import date

from scorecard.scheduling.progress import Progress
from scorecard.scheduling.schedule import WayOut
from scorecard.scheduling.wording import by_way, slack_words, way_out_sentence
from scorecard.words import counted, day_words, listed

STAGES = {
    "ordered": "the order is placed",
    "deposit paid": "the deposit is paid",
    "proof approved": "the proof is approved",
    "shipped": "the pieces are on their way",
    "arrived": "the pieces are at your door",
}


def order_sentences(one: Progress, way_out: WayOut | None) -> list[str]:
    """Return where an order stands, the last day to complain first; without full stops."""
    told = [_complaint(one), _standing(one), *_promise(one), *_need(one), *_leaving(one)]
    if way_out is not None and one.stage not in ("shipped", "arrived"):
        is_needed = one.slack_days is None or one.slack_days < 0
        told += [way_out_sentence(way_out, is_ordered=True)] if is_needed else []
    return told


def _complaint(one: Progress) -> str:
    match one.order.complain_until, one.complain_days:
        case date() as until, int() as days:
            return _last_day(one, until, days)
    if one.order.complain_days is not None:
        return f"Complaints are taken until {counted(one.order.complain_days, 'day')} after arrival"
    return "No last day to complain is written down: look it up, and write it under Complain until"


def _last_day(one: Progress, until: date, days: int) -> str:
    if days < 0:
        return f"The last day to complain was {day_words(until)}"
    said = f"Last day to complain: {day_words(until)} ({slack_words(days)})"
    if one.may_come_too_late_to_complain:
        return f"{said}; the pieces may come only after it, so ask now, in writing, for a later one"
    return f"{said}; check the pieces before that" if one.stage == "arrived" else said


def _standing(one: Progress) -> str:
    since = f"{STAGES[one.stage]}, {_day(one)}"
    if one.stage == "arrived":
        return f"{one.order.maker}: {since}"
    overdue = ""
    if one.overdue_days:
        overdue = f"; {one.steps[0].step.name} should have been over {counted(one.overdue_days, 'day')} ago: ask"
    assumed = ", the way being assumed," if one.way_assumed else ""
    return (
        f"{one.order.maker}: {since}; {by_way(one.way)}{assumed} the pieces are likely at your door by "
        f"{day_words(one.door_on)}{overdue}"
    )


def _day(one: Progress) -> str:
    """Return the day that a stage was reached, or that none is written down."""
    if one.stage == "ordered" and one.order.ordered is None:
        return "on a day that is not written down, so that the steps are counted from today"
    return day_words(one.since)


def _promise(one: Progress) -> list[str]:
    promised = one.order.promised
    if promised is None or one.stage == "arrived":
        return []
    if promised < one.as_of:
        return [f"The maker promised {day_words(promised)}: {counted((one.as_of - promised).days, 'day')} late"]
    if promised < one.door_on:
        return [f"The maker promised {day_words(promised)}, which is earlier than the steps to come allow"]
    return [f"The maker promised {day_words(promised)}"]


def _need(one: Progress) -> list[str]:
    match one.door_by, one.slack_days:
        case date() as by, int() as slack:
            return [_needed(one, by, slack)]
    return []


def _needed(one: Progress, by: date, slack: int) -> str:
    days, is_late = counted(abs(slack), "day"), slack < 0
    if one.stage == "arrived":
        return f"They were to be at your door by {day_words(by)}: {days} {'late' if is_late else 'to spare'}"
    day = "promised day" if one.expected_on > one.door_on else "likely day"
    left = f"{days} too late by the {day}, as things stand" if is_late else f"{days} of slack from the {day}"
    return f"They must be at your door by {day_words(by)}: {left}"


def _leaving(one: Progress) -> list[str]:
    if not one.ship_by:
        return []
    days: Sequence[str] = [
        f"{by_way(way)} by {day_words(day)}{_gone(day, one.as_of)}" for way, day in one.ship_by.items()
    ]
    return [f"They must leave the maker {listed(days, 'or')}"]


def _gone(day: date, as_of: date) -> str:
    """Return that a day is over; nothing where it is not."""
    return f" (too late by {counted((as_of - day).days, 'day')})" if day < as_of else ""
