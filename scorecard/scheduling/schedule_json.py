"""The schedule as the machine-readable result: dates in ISO form, each step with its working."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any

from scorecard.scheduling.calendars import Closure, Doubt
from scorecard.scheduling.order_words import order_sentences
from scorecard.scheduling.plans import Plan
from scorecard.scheduling.progress import Progress
from scorecard.scheduling.schedule import Schedule, WayOut
from scorecard.scheduling.settings import USUAL_SPARE, Days, ScheduleSettings
from scorecard.scheduling.steps import Placed
from scorecard.scheduling.wording import CAUTION, assumed_of, plan_sentence, too_late_of

Json = dict[str, Any]


def schedule_json(schedule: Schedule) -> Json:
    """Return a schedule ready for ``json.dumps``.

    Parameters
    ----------
    schedule : of a case on a day

    Returns
    -------
    what stands under ``schedule`` in the result of ``score``, and in that of ``dates``
    """
    inputs, ways_out = schedule.inputs, schedule.ways_out
    return {
        "need_by": _iso(inputs.need_by),
        "destination": inputs.destination,
        "settings": settings_json(inputs.settings),
        "orders": [_order(one, ways_out.get(one.order.maker)) for one in schedule.orders],
        "plans": [_plan(plan, ways_out.get(plan.maker.maker)) for plan in schedule.plans],
        "ruled_out": list(schedule.ruled_out),
        "notes": [_doubt(doubt) for doubt in schedule.doubts],
        "caution": CAUTION,
    }


def settings_json(settings: ScheduleSettings) -> Json:
    """Return the days that were counted with, and which of them the criteria file gives."""
    return {
        "receiving_days": settings.receiving_days,
        "clearance_days": _days(settings.clearance_days),
        "production_days": _days(settings.production_days),
        "production_counts": settings.production_counts,
        "proof_days": _days(settings.proof_days),
        "approval_days": settings.approval_days,
        "sample_rounds": settings.sample_rounds,
        "sample_days": _days(settings.sample_days),
        "sample_post_days": _days(settings.sample_post_days),
        "long_holiday_days": settings.long_holiday_days,
        "stop_before_days": settings.stop_before_days,
        "stop_after_days": settings.stop_after_days,
        "nearby_days": settings.nearby_days,
        "spare_days": {way: settings.spare_days(way) for way in USUAL_SPARE},
        "given": sorted(settings.given),
    }


def _plan(plan: Plan, way_out: WayOut | None) -> Json:
    return {
        "maker": plan.maker.maker,
        "row": plan.maker.row,
        "country": plan.maker.country,
        "way": plan.way,
        "way_assumed": plan.times.way_assumed,
        "status": plan.status,
        "sample": _sample(plan),
        "begin_by": _iso(plan.begin_by),
        "order_by": _iso(plan.order_by),
        "order_by_if_all_goes_quickly": _iso(plan.order_by_quickly),
        "order_by_without_holidays": _iso(plan.order_by_without_holidays),
        "ship_by": _iso(plan.ship_by),
        "door_by": _iso(plan.door_by),
        "slack_days": plan.slack_days,
        "order_slack_days": plan.order_slack_days,
        "ready_if_begun_today": _iso(plan.ready_if_begun_now),
        "days_to_door": _days(plan.days_to_door),
        "too_late": too_late_of(plan),
        "assumed": assumed_of(plan.steps),
        "way_out": _way_out(way_out),
        "text": f"{plan_sentence(plan)}.",
        "steps": _steps(plan.steps),
    }


def _sample(plan: Plan) -> Json | None:
    """Return the sample under way, or that has come, on which nothing is decided yet."""
    sample = plan.maker.sample
    if sample is None:
        return None
    asked, came = _iso(sample.asked_on), _iso(sample.received_on)
    return {"asked_on": asked, "received_on": came, "expected_on": _iso(plan.sample_due)}


def _order(one: Progress, way_out: WayOut | None) -> Json:
    order = one.order
    return {
        "maker": order.maker,
        "row": order.row,
        "complain_until": _iso(order.complain_until),
        "complain_days": one.complain_days,
        "stage": one.stage,
        "since": _iso(one.since),
        "way": one.way,
        "way_assumed": one.way_assumed,
        "overdue_days": one.overdue_days,
        "door_on": _iso(one.door_on),
        "promised_on": _iso(order.promised),
        "expected_on": _iso(one.expected_on),
        "ready_on": _iso(one.ready_on),
        "door_by": _iso(one.door_by),
        "slack_days": one.slack_days,
        "ship_by": {way: _iso(day) for way, day in one.ship_by.items()},
        "balance_paid_on": _iso(order.balance_paid),
        "way_out": _way_out(way_out),
        "text": [f"{sentence}." for sentence in order_sentences(one, way_out)],
        "steps": _steps(one.steps),
    }


def _steps(steps: Sequence[Placed]) -> list[Json]:
    return [
        {
            "step": placed.step.name,
            "days": placed.days,
            "range": _days(placed.step.days),
            "counted_in": placed.step.counted,
            "from": _iso(placed.first),
            "to": _iso(placed.last),
            "closed": [_closure(closure) for closure in placed.closures],
            "source": placed.step.source,
            "assumed": placed.step.assumed,
        }
        for placed in steps
    ]


def _closure(closure: Closure) -> Json:
    return {"from": _iso(closure.first), "to": _iso(closure.last), "names": list(closure.names)}


def _way_out(way_out: WayOut | None) -> Mapping[str, str | None] | None:
    if way_out is None:
        return None
    return {"day": _iso(way_out.day), "maker": way_out.maker, "way": way_out.way}


def _doubt(doubt: Doubt) -> Json:
    return {"kind": doubt.kind, "country": doubt.country, "year": doubt.year, "text": f"{doubt.text}."}


def _days(days: Days) -> int | Json:
    return days.low if days.low == days.high else {"low": days.low, "high": days.high}


def _iso(day: date | None) -> str | None:
    return None if day is None else day.isoformat()
