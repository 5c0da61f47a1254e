"""``dates``: by when to ask for samples and to order, per maker and way, and how orders under way stand."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Any

import numpy as np
import typer

from scorecard.case import Case
from scorecard.cli.following import inspect_of
from scorecard.cli.gate import show_json, tell
from scorecard.cli.scoring import Inputs, refuse_nobody, tell_case
from scorecard.cli.tables import as_text, plain, visible, wrapped
from scorecard.counting import count
from scorecard.errors import InputError, Place, Problem, UsageError
from scorecard.frozen import dataclass
from scorecard.points import table_of_points
from scorecard.ranking import Ranking, rank_makers
from scorecard.scheduling.order_words import order_sentences
from scorecard.scheduling.plans import Plan
from scorecard.scheduling.schedule import Schedule, WayOut, schedule_of
from scorecard.scheduling.schedule_json import schedule_json
from scorecard.scheduling.wording import (
    CAUTION,
    OVER,
    ask_words,
    assumed_sentence,
    by_way,
    chain_rows,
    doubt_sentences,
    due_words,
    headline,
    holiday_sentence,
    left_words,
    plan_sentence,
    sample_words,
    way_out_sentence,
)
from scorecard.screening import screen
from scorecard.words import counted, day_words, nearest

SHOWN = 16  # plans on the screen; --maker shows one maker's, --json all


@dataclass(frozen=True, slots=True, kw_only=True)
class Dated:
    """A case with its schedule."""

    case: Case
    schedule: Schedule
    ranked: tuple[str, ...]


def tell_dates(inputs: Inputs, maker: str | None, *, as_json: bool) -> None:
    """Print the schedule of a folder, or of one maker in it."""
    dated = read_dated(inputs)
    if maker is not None:
        dated = replace(dated, schedule=_of_one(dated, maker))
    if as_json:
        show_json(dates_result(dated, inputs))
        return
    tell_case(dated.case, inputs.day())
    tell([one for one in dated.case.warnings if one.code in ("need-by-past", "not-a-country")])
    for line in schedule_lines(dated.schedule, inputs, dated.ranked):
        typer.echo(line)


def read_dated(inputs: Inputs) -> Dated:
    """Return what the files say, with the schedule.

    Raises
    ------
    InputError
        If they have problems, if no maker is there, or if neither a need-by date nor an order is.
    """
    case = inputs.read(dates=True)
    refuse_nobody(case)
    if case.schedule is None or (case.schedule.need_by is None and not case.schedule.orders):
        place = Place(file=case.sources[0].name, key="brief.need_by")
        found, wanted = "the brief names no day by which the pieces are needed", "Add a line: need_by = 2027-05-14"
        raise InputError([Problem(code="missing-key", place=place, found=found, wanted=wanted)], case.warnings)
    ranking = ranking_of(case, inputs)
    names = case.table.makers
    out = [names[at] for at in ranking.ruled_out]
    ranked = tuple(names[at] for at in ranking.order)
    return Dated(case=case, schedule=schedule_of(case.schedule, out), ranked=ranked)


def ranking_of(case: Case, inputs: Inputs) -> Ranking:
    """Return how the makers rank, and which fail a limit."""
    criteria = case.criteria.criteria
    countings = tuple(count(criterion, case, inputs.day()) for criterion in criteria)
    shares = np.array(list(case.criteria.shares.values()), dtype=float)
    return rank_makers(table_of_points(criteria, countings), shares, screen(criteria, countings).ruled_out)


def dates_result(dated: Dated, inputs: Inputs) -> dict[str, Any]:
    """Return what ``scorecard dates --json`` prints."""
    return {
        "schema": "scorecard-dates/1",
        "title": dated.case.title,
        "as_of": inputs.day().isoformat(),
        **schedule_json(dated.schedule),
        "warnings": [one.as_json() for one in dated.case.warnings],
    }


def _of_one(dated: Dated, typed: str) -> Schedule:
    """Return the schedule of the one maker that is meant."""
    schedule, names = dated.schedule, dated.case.table.makers
    folded = typed.casefold().strip()
    meant = [name for name in names if name.casefold() == folded]
    meant = meant or [name for name in names if name.casefold().startswith(folded)]
    if len(meant) != 1:
        close = nearest(typed, list(names))
        offered = f" Did you mean {visible(close)}?" if close and not meant else ""
        fits = "no maker" if not meant else f"{len(meant)} makers"
        raise UsageError(f"--maker {plain(typed)}: {fits} of that name or beginning.{offered}")
    if meant[0] in schedule.ruled_out:
        raise UsageError(f"{visible(meant[0])} is ruled out by a limit, so it has no dates.")
    return replace(
        schedule,
        plans=schedule.plans_of(meant[0]),
        orders=tuple(one for one in schedule.orders if one.order.maker == meant[0]),
    )


def schedule_lines(schedule: Schedule, inputs: Inputs, ranked: Sequence[str]) -> list[str]:
    """Return the schedule in words, line by line."""
    lines = [*_order_lines(schedule), *_sentences([headline(schedule)])]
    if schedule.plans:
        lines += ["", *_table(schedule.plans[:SHOWN]), *_chains(schedule, inputs), ""]
    if len(schedule.plans) > SHOWN:
        more = counted(len(schedule.plans) - SHOWN, "plan")
        lines.append(f"… and {more} more. For those of one maker: {inputs.started.command('dates --maker NAME')}")
    if schedule.ruled_out:
        lines.append(f"Ruled out by a limit, and so without dates: {counted(len(schedule.ruled_out), 'maker')}.")
    lines += _sentences(f"Take care: {text}" for text in doubt_sentences(schedule.doubts))
    return [*lines, *_sentences([CAUTION]), f"Next: {_next_step(schedule, inputs, ranked)}"]


def _sentences(found: Iterable[str | None], margin: str = "") -> list[str]:
    return [line for sentence in found if sentence for line in wrapped(f"{plain(sentence)}.", margin)]


def _order_lines(schedule: Schedule) -> list[str]:
    lines = []
    for one in sorted(schedule.orders, key=lambda one: one.stage == "arrived"):
        first, *rest = order_sentences(one, schedule.ways_out.get(one.order.maker))
        what = "Arrived order" if one.stage == "arrived" else "Order"
        whose = f"{what} from {visible(one.order.maker)}, row {one.order.row}"
        lines += [*_sentences([f"{whose}: {first}"]), *_sentences(rest, "  ")]
    return lines


def _table(plans: Sequence[Plan]) -> list[str]:
    rows = [("Maker", "Way", "Ask for a sample by", "Order by", "Days left", "How it stands")]
    for plan in plans:
        order, left = due_words(plan.order_by, plan.order_slack_days), left_words(plan.days_left)
        rows.append((visible(plan.maker.maker), plan.way, ask_words(plan), order, left, plan.standing))
    over = any(plan.slack_days < 0 for plan in plans)
    return [
        *as_text(rows, right=frozenset({2, 3, 4})).split("\n"),
        *([f"{OVER}."] if over else []),
    ]


def _chains(schedule: Schedule, inputs: Inputs) -> list[str]:
    """Return the chain in words of each plan of which somebody has said any days; of none such, of the first due."""
    plans = schedule.plans
    one_maker = len({plan.maker.maker for plan in plans}) == 1
    told = plans if one_maker else [plan for plan in plans if plan.is_said]
    chosen = list(told[:SHOWN]) or [min(plans, key=lambda plan: plan.begin_by)]
    lines = [line for plan in chosen for line in _chain(plan, schedule.ways_out.get(plan.maker.maker))]
    if len(chosen) == len(plans):
        return lines
    return [*lines, "", f"The same of another maker: {inputs.started.command('dates --maker NAME')}"]


def _chain(plan: Plan, out: WayOut | None) -> list[str]:
    """Return one plan: by when to order, its steps one a line, then what bears on them."""
    beside = [holiday_sentence(plan), way_out_sentence(out) if out else None, assumed_sentence(plan)]
    return [
        "",
        *_sentences([plan_sentence(plan)]),
        *(line for row in _step_rows(plan) for line in row),
        *_sentences(beside, "  "),
    ]


def _step_rows(plan: Plan) -> list[list[str]]:
    """Return every step on its line, the closed days that it runs across beneath it."""
    rows = chain_rows(plan)
    table = as_text([(_short(row.when), row.what, plain(row.days)) for row in rows]).split("\n")
    inset = " " * (max(len(_short(row.when)) for row in rows) + 6)
    closed = [wrapped(plain(row.closed), inset) if row.closed else [] for row in rows]
    return [[f"  {line}", *beneath] for line, beneath in zip(table, closed, strict=True)]


def _short(when: str) -> str:
    """Return days with the first three letters of their months.

    Examples
    --------
    >>> _short("31 December 2026 to 4 January 2027")
    '31 Dec 2026 to 4 Jan 2027'
    """
    return " ".join(word[:3] if word.isalpha() else word for word in when.split(" "))


def _next_step(schedule: Schedule, inputs: Inputs, ranked: Sequence[str]) -> str:
    """Return what to do next, as the dates stand."""
    to_check = next((one for one in schedule.orders if one.is_to_be_checked), None)
    if to_check and (until := to_check.order.complain_until):
        whose = visible(to_check.order.maker)
        orders = [one.order for one in schedule.orders]
        inspect = inspect_of(to_check.order, orders) if len(orders) > 1 else "inspect"
        return f"check the pieces from {whose} by {day_words(until)}: {inputs.started.command(inspect)}"
    waiting = [one for one in schedule.orders if one.order.complain_until is None and one.order.complain_days is None]
    if waiting:
        return f"write the last day to complain of {visible(waiting[0].order.maker)} into the sheet Orders"
    if schedule.orders:
        return f"ask {visible(schedule.orders[0].order.maker)} whether its dates still hold"
    open_plans = [plan for plan in schedule.plans if plan.status in ("in time", "no time for a sample")]
    if not open_plans:
        return "move the need-by date, drop steps under [schedule], or look for a maker nearby"
    said = [plan for plan in open_plans if plan.is_said]
    if not said:
        return f"ask how long production and transit take: {inputs.started.command('enquire')}"
    first = min(said, key=lambda plan: (plan.status != "in time", ranked.index(plan.maker.maker), plan.act_by))
    sample = f"{sample_words(first)}; look at it, and " if first.status == "in time" and sample_words(first) else ""
    what = "ask it for a sample" if first.act_by != first.order_by else f"{sample}order"
    return f"decide on {visible(first.maker.maker)} {by_way(first.way)}: {what} by {day_words(first.act_by)}"
