"""The schedule in sentences."""

from dataclasses import replace
from datetime import date

import pytest
from planned import AS_OF, NEED_BY, NO_SAMPLE, QUICK, inputs, maker, way

from scorecard.orders import OrderRow
from scorecard.scheduling.calendars import BESIDE, Calendar, Closure, Doubt
from scorecard.scheduling.inputs import SampleUnderWay
from scorecard.scheduling.plans import plan_of
from scorecard.scheduling.schedule import WayOut, schedule_of
from scorecard.scheduling.wording import (
    ask_words,
    assumed_sentence,
    chain_rows,
    chain_words,
    closure_words,
    doubt_sentences,
    due_words,
    headline,
    holiday_sentence,
    left_words,
    plan_sentence,
    sample_words,
    slack_words,
    span_words,
    too_late_of,
    way_out_sentence,
)

SPRING = Calendar(country="CN", holidays={date(2027, 2, day): "Spring Festival" for day in range(5, 11)})
QUICKER = way(production=(5, 25), transit=(25, 40))


def plan(as_of=AS_OF, settings=None, of_maker=None):
    of_maker = of_maker or maker("Fernhill", QUICKER)
    return plan_of(inputs(of_maker, settings=settings, as_of=as_of), of_maker, of_maker.ways[0], NEED_BY)


@pytest.mark.parametrize(
    ("as_of", "sentence"),
    [
        (
            date(2027, 1, 10),
            "Fernhill by sea: ask for a sample by 11 January 2027 (1 day from today), and order by 3 February 2027 "
            "(24 days from today)",
        ),
        (
            date(2027, 2, 3),
            "Fernhill by sea: too late by 23 days to have a sample first, due to be asked for by 11 January 2027; "
            "without one, order by 3 February 2027 (today), at the risk of what a sample would have shown",
        ),
        (
            date(2027, 2, 4),
            "Fernhill by sea: too late by 1 day to plan on: the order was due by 3 February 2027; if every step takes "
            "its least and nothing is kept spare, there is time until 2 April 2027",
        ),
        (
            date(2027, 4, 30),
            "Fernhill by sea: too late by 86 days: the order was due by 3 February 2027, and even if every step takes "
            "its least, by 2 April 2027",
        ),
    ],
)
def test_a_plan_says_by_when_to_order_or_that_it_is_too_late(as_of, sentence):
    assert sentence == plan_sentence(plan(as_of))


def test_without_a_sample_the_order_alone_is_named():
    assert "Fernhill by sea: order by 3 February 2027 (70 days from today)" == plan_sentence(plan(settings=NO_SAMPLE))


@pytest.mark.parametrize(("as_of", "things"), [(AS_OF, 0), (date(2027, 2, 3), 1), (date(2027, 2, 4), 2)])
def test_what_is_too_late_is_listed(as_of, things):
    assert things == len(too_late_of(plan(as_of)))


def test_a_sample_that_nobody_wants_is_never_too_late():
    assert ["the order, planned on the late end of every step"] == too_late_of(plan(date(2027, 2, 4), NO_SAMPLE))


def test_the_chain_runs_back_to_the_order_and_the_sample():
    lines = chain_words(plan())

    assert (
        "receiving and packing, 3 working days of yours: 12 to 14 May 2027",
        "transit, 40 days: 16 March to 25 April 2027",
        "order and pay the deposit by 3 February 2027",
        "ask for the sample by 11 January 2027",
    ) == (lines[0], lines[3], lines[7], lines[-1])


def test_without_a_sample_the_chain_ends_in_the_order():
    assert "order and pay the deposit by 3 February 2027" == chain_words(plan(settings=NO_SAMPLE))[-1]


def test_a_holiday_that_moves_the_order_is_named_with_its_days():
    found = plan(of_maker=maker("Fernhill", way(), calendar=SPRING.with_stops(6, 5, 7)))

    assert (
        "Holidays move the latest day to order from 3 February 2027 to 15 January 2027: Spring Festival, closed 30 "
        "January to 17 February 2027, days that makers stop before and after counted"
    ) == holiday_sentence(found)


def test_every_step_says_in_whose_calendar_its_days_are_counted():
    found = {row.what: row.days for row in chain_rows(plan(of_maker=maker("Fernhill", way(), calendar=SPRING)))}

    assert ("3 working days of yours", "25 working days (China)", "40 days") == (
        found["receiving and packing"],
        found["production"],
        found["transit"],
    )


@pytest.mark.parametrize(("calendar", "where"), [(SPRING, " (China)"), (Calendar(), "")])
def test_days_of_production_that_are_not_working_days_leave_out_long_holidays(calendar, where):
    of_maker = maker("Fernhill", way(counts="days"), calendar=calendar)

    assert f"25 days less long holidays{where}" in [row.days for row in chain_rows(plan(of_maker=of_maker))]


def test_only_closures_that_take_work_from_steps_after_the_order_are_named():
    """The sample is made in January, 13 February 2027 is a Saturday, 5 to 10 February hold four working days."""
    beside = {date(2027, 1, 12): "While the sample is made", date(2027, 2, 13): "On a Saturday"}
    calendar = Calendar(country="CN", holidays=dict(SPRING.holidays) | beside)
    told = holiday_sentence(plan(of_maker=maker("Fernhill", way(), calendar=calendar)))

    assert told.endswith("to 28 January 2027: Spring Festival, closed 5 to 10 February 2027")


@pytest.mark.parametrize(
    ("settings", "production", "holidays", "told"),
    [
        # the proof is drawn from 4 February on; while you look at it, on the 8th, the maker need not work
        (
            None,
            25,
            {(2, 3): "Before", (2, 8): "Later"},
            "3 February 2027 to 2 February 2027: Before, closed 3 February",
        ),
        # sent on 4 April, a Sunday; four days of work from 29 March on, a Monday, and the order on Friday, the 26th
        (QUICK, 4, {(3, 31): "Within", (3, 27): "Saturday"}, "29 March 2027 to 26 March 2027: Within, closed 31 March"),
        # sent as it is
        (QUICK, 0, {(4, 2): "Friday", (4, 15): "Later"}, "2 April 2027 to 1 April 2027: Friday, closed 2 to 4 April"),
    ],
)
def test_what_parts_the_order_from_the_first_step_is_named_too(settings, production, holidays, told):
    calendar = Calendar(holidays={date(2027, *day): name for day, name in holidays.items()})
    found = plan(settings=settings, of_maker=maker("Fernhill", way(production=(production,) * 2), calendar=calendar))

    assert f"Holidays move the latest day to order from {told} 2027" == holiday_sentence(found)


@pytest.mark.parametrize(("holidays", "end"), [(3, "C, closed 3 March 2027"), (4, "C, closed 3 March 2027; 1 more")])
def test_three_holidays_are_named_and_more_are_counted(holidays, end):
    """Wednesdays of production, which lasts until 16 March."""
    days = date(2027, 2, 17), date(2027, 2, 24), date(2027, 3, 3), date(2027, 3, 10)
    calendar = Calendar(holidays=dict(zip(days[:holidays], "ABCD", strict=False)))
    told = holiday_sentence(plan(of_maker=maker("Fernhill", way(), calendar=calendar)))

    assert told.endswith(end)


def test_a_holiday_on_a_weekend_is_told_of_no_step():
    calendar = Calendar(
        country="CN", holidays={date(2027, 2, 13): "On a Saturday", date(2027, 2, 17): "On a Wednesday"}
    )
    (production,) = [
        row
        for row in chain_rows(plan(of_maker=maker("Fernhill", way(), calendar=calendar)))
        if row.what == "production"
    ]

    assert "On a Wednesday, closed 17 February 2027" == production.closed


def test_of_several_holidays_the_longest_is_named_first():
    calendar = Calendar(country="CN", holidays=dict(SPRING.holidays) | {date(2027, 3, 1): "Another"})
    told = holiday_sentence(plan(of_maker=maker("Fernhill", way(), calendar=calendar)))

    assert ": Spring Festival, closed 5 to 10 February 2027; Another, closed" in told


def test_holidays_that_move_nothing_are_not_told():
    assert holiday_sentence(plan()) is None


@pytest.mark.parametrize(
    ("names", "words"),
    [
        (("Tet",), "Tet, closed 4 to 10 February 2027"),
        ((BESIDE,), "days that makers stop before and after, closed 4 to 10 February 2027"),
        (("moving to a new hall",), "moving to a new hall, closed 4 to 10 February 2027"),
        (("Tet", "Founding day"), "Tet, closed 4 to 10 February 2027"),
    ],
)
def test_a_closure_is_named_by_its_holiday_or_by_why(names, words):
    assert words == closure_words(Closure(first=date(2027, 2, 4), last=date(2027, 2, 10), names=names))


@pytest.mark.parametrize(
    ("first", "last", "words"),
    [
        (date(2027, 2, 4), date(2027, 2, 4), "4 February 2027"),
        (date(2027, 2, 4), date(2027, 2, 10), "4 to 10 February 2027"),
        (date(2027, 2, 24), date(2027, 3, 2), "24 February to 2 March 2027"),
        (date(2026, 12, 24), date(2027, 1, 2), "24 December 2026 to 2 January 2027"),
    ],
)
def test_a_time_names_month_and_year_once(first, last, words):
    assert words == span_words(first, last)


@pytest.mark.parametrize(("days", "words"), [(2, "2 days from today"), (0, "today"), (-3, "too late by 3 days")])
def test_slack_is_told_in_words(days, words):
    assert words == slack_words(days)


@pytest.mark.parametrize(("left", "due", "words"), [(0, "3 February 2027", "0"), (-1, "(3 February 2027)", "none")])
def test_a_day_that_is_over_stands_in_brackets(left, due, words):
    assert (due, words) == (due_words(date(2027, 2, 3), left), left_words(left))


def test_days_that_nobody_has_said_are_named_where_the_way_is_said():
    told = assumed_sentence(plan(settings=NO_SAMPLE))

    assert told.startswith("Assumed, since nobody has said: proof drawn, proof approved, clearance")


def test_days_that_nobody_has_said_are_named():
    assumed = replace(way(), production=replace(way().production, assumed=True), way_assumed=True)
    told = assumed_sentence(plan(of_maker=maker("Fernhill", assumed), settings=NO_SAMPLE))

    assert told.startswith(
        "Assumed, since nobody has said: that it ships by sea, proof drawn, proof approved, production"
    )


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ({"counts": "working days"}, "that the maker's days are working days"),
        ({"counts": "days"}, "that the maker's days are calendar days"),
        ({"counts": "days", "up_to": "at the door"}, "that the maker's days to your door are calendar days"),
    ],
)
def test_which_days_the_makers_are_taken_to_be_is_said(more, words):
    assumed = way(counts_assumed=True, **more)
    told = assumed_sentence(plan(of_maker=maker("Fernhill", assumed), settings=NO_SAMPLE))

    assert told.startswith(f"Assumed, since nobody has said: {words}, proof drawn")


def test_where_all_is_assumed_that_is_all_that_is_said():
    said = way()
    assumed = replace(
        said, production=replace(said.production, assumed=True), transit=replace(said.transit, assumed=True)
    )

    assert "Every day counted here is assumed, since nobody has said" == assumed_sentence(
        plan(of_maker=maker("Fernhill", assumed))
    )


def test_the_way_out_names_the_nearby_maker():
    out = WayOut(day=date(2027, 3, 17), maker="Brightholm", way="road", days_left=9)

    assert (
        "If it comes to nothing, until 17 March 2027 you could still order from Brightholm by road, without a sample "
        "first"
    ) == way_out_sentence(out)


def test_only_what_is_ordered_can_be_cancelled():
    out = WayOut(day=date(2027, 3, 17), maker="Brightholm", way="road", days_left=9)

    assert (
        "Until 17 March 2027 you could still cancel and order from Brightholm by road, without a sample first"
    ) == way_out_sentence(out, is_ordered=True)


@pytest.mark.parametrize(
    ("left", "sentence"),
    [
        (0, "If it comes to nothing, until 17 March 2027 you could still order nearby, by the usual days"),
        (-1, "Too late by 1 day to order nearby, by the usual days: 17 March 2027"),
        (-4, "Too late by 4 days to order nearby, by the usual days: 17 March 2027"),
    ],
)
def test_a_way_out_that_is_over_says_by_how_much(left, sentence):
    assert sentence == way_out_sentence(WayOut(day=date(2027, 3, 17), days_left=left))


def test_the_way_out_by_the_usual_days_names_nobody():
    assert "nearby, by the usual days" in way_out_sentence(WayOut(day=date(2027, 3, 17), days_left=9))


@pytest.mark.parametrize(
    ("as_of", "words"),
    [
        (AS_OF, "begin by 11 January 2027 with Fernhill by sea, or by "),
        (date(2027, 2, 20), "there is no time left for a sample first: Fernhill by air"),
        (date(2027, 6, 1), "it is too late to plan on any maker and way, by 85 days even with Fernhill by air"),
    ],
)
def test_the_headline_says_what_is_due_first(as_of, words):
    of_maker = maker("Fernhill", way(), way("air", transit=(15, 15)))

    assert words in headline(schedule_of(inputs(of_maker, as_of=as_of)))


AIR = OrderRow(maker="Fernhill", row=2, pieces=200, way="air", ordered=AS_OF)
ONLY_IF = (
    "Another order is needed only if the one under way with Fernhill fails; then, to have the pieces by 14 May 2027, "
)


def test_an_order_in_time_comes_before_another_that_is_needed_only_if_it_fails():
    """Quillmoor by sea as in the first test; Fernhill by air, had it no order, would be in time for longer."""
    ordered, other = maker("Fernhill", way("air", transit=(15, 15))), maker("Quillmoor", way())
    told = headline(schedule_of(inputs(ordered, other, orders=[AIR])))

    assert f"{ONLY_IF}begin by 11 January 2027" == told


@pytest.mark.parametrize(("promised", "opening"), [(11, ONLY_IF), (12, "To have the pieces by 14 May 2027, begin by ")])
def test_an_order_is_in_time_that_comes_on_the_last_day(promised, opening):
    """Receiving takes three working days, up to Friday, 14 May."""
    row = replace(AIR, promised=date(2027, 5, promised))

    assert headline(schedule_of(inputs(maker("Fernhill", way()), orders=[row]))).startswith(opening)


def test_an_order_that_comes_too_late_leaves_the_headline_as_it_is():
    late = OrderRow(maker="Fernhill", row=2, way="sea", ordered=date(2027, 4, 30))
    of_maker = maker("Fernhill", way())

    with_order, without = (
        headline(schedule_of(inputs(of_maker, as_of=date(2027, 5, 1), orders=orders))) for orders in ([late], [])
    )
    assert without == with_order


def test_without_plans_there_is_no_headline():
    assert headline(schedule_of(inputs(need_by=None))) is None


def test_parts_of_several_countries_are_said_in_one_sentence():
    doubts = [Doubt(kind="parts of the country", country=country, text=country) for country in ("PL", "DE")]
    thin = Doubt(kind="may be thin", country="CN", text="thin", year=2027)

    assert (["thin"], True) == (
        doubt_sentences([*doubts, thin])[:-1],
        "parts of Poland and Germany" in doubt_sentences([*doubts, thin])[-1],
    )
    assert ["PL"] == doubt_sentences(doubts[:1])


def test_where_no_time_is_left_for_a_sample_the_headline_says_so():
    of_maker = maker("Fernhill", QUICKER)
    sooner = maker("Brightholm", way(transit=(41, 41)))
    told = headline(schedule_of(inputs(sooner, of_maker, as_of=date(2027, 2, 2))))

    assert told.startswith(
        "To have the pieces by 14 May 2027 there is no time left for a sample first: Fernhill by sea:"
    )


@pytest.mark.parametrize(
    ("as_of", "asked_on", "received_on", "sentence"),
    [
        (
            AS_OF,
            date(2026, 11, 20),
            None,
            "a sample was asked for on 20 November 2026 and should come by 11 December 2026; decide on it, and "
            "order by 3 February 2027 (70 days from today)",
        ),
        (
            date(2026, 12, 11),
            date(2026, 11, 20),
            None,
            "a sample was asked for on 20 November 2026 and should come by 11 December 2026; decide on it, and "
            "order by 3 February 2027 (54 days from today)",
        ),
        (
            date(2027, 1, 10),
            date(2026, 11, 20),
            None,
            "a sample was asked for on 20 November 2026 and should have come by 11 December 2026; decide on it, and "
            "order by 3 February 2027 (24 days from today)",
        ),
        (
            AS_OF,
            None,
            date(2026, 11, 22),
            "a sample came on 22 November 2026; decide on it, and order by 3 February 2027 (70 days from today)",
        ),
        (
            date(2027, 2, 3),
            None,
            date(2027, 2, 2),
            "a sample came on 2 February 2027, too late to decide on before the order; without it, order by 3 February "
            "2027 (today), at the risk of what a sample would have shown",
        ),
    ],
)
def test_a_sample_under_way_is_told_instead_of_asking_for_one(as_of, asked_on, received_on, sentence):
    sample = SampleUnderWay(number=1, asked_on=asked_on, received_on=received_on)
    found = plan(as_of, of_maker=maker("Fernhill", QUICKER, sample=sample))

    assert f"Fernhill by sea: {sentence}" == plan_sentence(found)


ASKED = SampleUnderWay(number=1, asked_on=date(2026, 11, 20))


@pytest.mark.parametrize(
    ("sample", "settings", "as_of", "words"),
    [
        (None, None, AS_OF, "11 January 2027"),
        (None, None, date(2027, 1, 12), "(11 January 2027)"),
        (None, NO_SAMPLE, AS_OF, ""),
        (ASKED, NO_SAMPLE, AS_OF, ""),
        (ASKED, None, AS_OF, "asked for"),
        (replace(ASKED, received_on=date(2026, 11, 24)), None, AS_OF, "it has come"),
    ],
)
def test_a_table_says_by_when_to_ask_for_a_sample_or_how_it_stands(sample, settings, as_of, words):
    assert words == ask_words(plan(as_of, settings, maker("Fernhill", QUICKER, sample=sample)))


def test_of_no_sample_there_is_nothing_to_tell():
    assert "" == sample_words(plan())


def test_the_chain_ends_with_the_sample_that_was_asked_for():
    assert "the sample was asked for on 20 November 2026" == chain_words(plan(of_maker=maker("F", sample=ASKED)))[-1]


def test_a_holiday_of_the_buyer_that_moves_the_order_is_named_as_such():
    of_maker, buyer = maker("Fernhill", way()), Calendar(country="IE", holidays={date(2027, 2, 8): "A Monday"})
    found = plan_of(inputs(of_maker, buyer=buyer), of_maker, of_maker.ways[0], NEED_BY)

    assert (
        "Holidays move the latest day to order from 3 February 2027 to 2 February 2027: A Monday, closed 6 to 8 "
        "February 2027 where you are"
    ) == holiday_sentence(found)
