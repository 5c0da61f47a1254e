"""The schedule of a case: whose, and when there is any."""

from dataclasses import replace
from datetime import date

from cases import AS_OF, rated
from planned import NEED_BY, inputs, maker, order, way

from scorecard.assessment import assess
from scorecard.criteria import Limit
from scorecard.scheduled import FIRST, arrive_by

ASSUMED = replace(
    way(),
    production=replace(way().production, assumed=True),
    transit=replace(way().transit, assumed=True),
)


def case(scores=(1, 3, 2), read=None, **more):
    """Return a case of makers named by letters with these scores."""
    names = [chr(ord("A") + at) if at < 26 else f"Z{at}" for at in range(len(scores))]
    made = rated((1,), {name: [score] for name, score in zip(names, scores, strict=True)}, **more)
    makers = [replace(maker(name, *(read or {}).get(name, ())), row=2 + at) for at, name in enumerate(names)]
    return replace(made, schedule=inputs(*makers))


def planned(of_case, as_of=AS_OF):
    return [plan.maker.maker for plan in assess(of_case, as_of=as_of).schedule.plans]


def test_plans_stand_in_the_order_of_the_ranking():
    assert ["B", "C", "A"] == planned(case())


def test_a_maker_that_is_ruled_out_has_no_plan():
    found = assess(case(limit=Limit(at_least=2)), as_of=AS_OF).schedule

    assert ({"B", "C"}, ("A",)) == ({plan.maker.maker for plan in found.plans}, found.ruled_out)


def test_without_anything_to_say_there_is_no_schedule():
    silent = replace(case(), schedule=None)

    assert (None, False) == (assess(silent, as_of=AS_OF).schedule, "schedule" in assess(silent, as_of=AS_OF).as_json())


def test_without_a_need_by_date_there_is_no_schedule():
    assert assess(replace(case(), schedule=inputs(need_by=None)), as_of=AS_OF).schedule is None


def test_the_result_holds_the_schedule():
    found = assess(case(), as_of=AS_OF).as_json()["schedule"]

    assert (NEED_BY.isoformat(), 3) == (found["need_by"], len(found["plans"]))


def test_the_day_that_stands_for_today_is_that_of_the_assessment():
    later = date(2026, 12, 25)

    assert [30] * 3 == [
        first.slack_days - second.slack_days
        for first, second in zip(
            assess(case(), as_of=AS_OF).schedule.plans, assess(case(), as_of=later).schedule.plans, strict=True
        )
    ]


def test_of_makers_that_have_said_nothing_only_the_first_are_planned():
    scores = [100 - at for at in range(FIRST + 5)]
    names = [chr(ord("A") + at) if at < 26 else f"Z{at}" for at in range(len(scores))]
    read = dict.fromkeys(names[:-1], (ASSUMED,))

    assert [*names[:FIRST], names[-1]] == planned(case(scores, read))


def test_an_order_of_a_maker_that_is_ruled_out_is_followed_all_the_same():
    made = case(limit=Limit(at_least=2))
    with_order = replace(made, schedule=replace(made.schedule, orders=(order(maker="A", ordered=AS_OF),)))

    assert ["A"] == [one.order.maker for one in assess(with_order, as_of=AS_OF).schedule.orders]


def test_without_days_that_were_read_the_pieces_may_arrive_on_the_need_by_date():
    made = case()
    with_day = replace(made, brief=replace(made.brief, need_by=NEED_BY))

    assert [NEED_BY, None] == [arrive_by(replace(one, schedule=None), "A") for one in (with_day, made)]
