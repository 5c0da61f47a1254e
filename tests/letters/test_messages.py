"""A round of messages: whose, how many questions, in which files, and the machine-readable result."""

import json
from dataclasses import replace
from datetime import date
from importlib.resources import files

import jsonschema
import numpy as np
import pytest
from cases import AS_OF, make_case, numbers
from ordered import case_of

from scorecard.brief import Brief
from scorecard.calculation import Calculation
from scorecard.criteria import Limit
from scorecard.letters.messages import MOST_MESSAGES, files_of, result_of, round_of
from scorecard.letters.wording import KINDS, Wording, shipped
from scorecard.memory import Record

WORDING = Wording(**{kind: shipped(kind) for kind in KINDS})


def calculated(criteria, makers, **more):
    return Calculation.of(make_case(criteria, makers, **more), AS_OF)


def many_open(number):
    return calculated([numbers(f"c{at:02}", 30 - at) for at in range(number)], {"Oxlip": [None] * number})


def mixed():
    """Return Oxlip, of whom all is known; Tansy, asked long ago, with two open answers; Vane, ruled out."""
    criteria = [numbers("a", 3), numbers("b", 2), numbers("c", 1, limit=Limit(at_least=10))]
    day = float(date(2026, 11, 13).toordinal())
    return calculated(
        criteria,
        {"Oxlip": [90, 90, 90], "Tansy": [None, None, 20], "Vane": [None, 1, 2]},
        asked_on=np.array([np.nan, day, np.nan]),
        answered_on=np.full(3, np.nan),
    )


def questions_in(text):
    return [line for line in text.splitlines() if line.split(".")[0].isdigit()]


def test_a_short_message_asks_at_most_eight_and_the_first_ones():
    (message,) = round_of(many_open(11), WORDING).messages

    assert [f"{at}. {one.text}" for at, one in enumerate(message.questions[:8], start=1)] == questions_in(message.short)
    assert [f"c{at:02}" for at in range(11)] == [one.criterion for one in message.questions]


def test_a_full_message_asks_all():
    (message,) = round_of(many_open(11), WORDING).messages

    assert 11 == len(questions_in(message.full))


def test_every_ranked_maker_gets_a_message_and_the_ruled_out_are_named():
    made = round_of(mixed(), WORDING)

    assert ([0, 1], (2,), 0) == ([one.maker for one in made.messages], made.ruled_out, made.left_out)


def test_a_named_maker_stands_first_though_it_is_ruled_out_and_all_others_stay():
    made = round_of(mixed(), WORDING, named=2)

    assert ([2, 0, 1], ()) == ([one.maker for one in made.messages], made.ruled_out)
    assert ["c", "a"] == [ask.criterion for ask in made.messages[0].questions]


def test_a_named_maker_that_is_ranked_is_there_once():
    assert [1, 0] == [one.maker for one in round_of(mixed(), WORDING, named=1).messages]


def test_of_a_maker_of_whom_all_is_known_the_full_message_is_due_and_the_short_one_asks_the_price():
    message = round_of(mixed(), WORDING).messages[0]

    assert ("full", ()) == (message.due, message.questions)
    assert ["1. Can you make 200 pieces of this item?"] == questions_in(message.full)
    assert "2. What is the price of one piece for 200 pieces?" == questions_in(message.short)[1]


def test_while_its_questions_are_open_the_short_message_is_due():
    assert {"short"} == {one.due for one in round_of(many_open(2), WORDING).messages}


@pytest.mark.parametrize(("days", "due"), [(3, "reminder"), (8, None)])
def test_while_a_maker_is_silent_a_reminder_is_due_or_nothing(days, due):
    assert due == round_of(mixed(), WORDING, remind_after=days).messages[1].due


def test_after_an_answer_what_is_still_open_is_due():
    one = mixed()
    answered = np.array([np.nan, float(date(2026, 11, 17).toordinal()), np.nan])
    case = replace(one.case, table=replace(one.case.table, answered_on=answered))

    assert "short" == round_of(Calculation.of(case, AS_OF), WORDING).messages[1].due


def test_no_full_message_has_a_heading_without_its_lines():
    for message in round_of(mixed(), WORDING, named=2).messages:
        assert "1. " in message.full.split("QUESTIONS\n")[1].split("\n\n")[0]


def test_the_follow_up_to_a_named_maker_asks_first_about_what_rules_it_out():
    day = float(date(2026, 11, 13).toordinal())
    criteria = [numbers("a", 3), numbers("c", 1, limit=Limit(at_least=10))]
    calculation = calculated(criteria, {"Oxlip": [90, 90], "Vane": [None, 2]}, asked_on=np.array([np.nan, day]))

    assert () == round_of(calculation, WORDING).reminders
    (reminder,) = round_of(calculation, WORDING, named=1).reminders
    assert ["1. Please tell us: C. Our note says: 2. Is this right?", "2. Please tell us: A."] == questions_in(
        reminder.text
    )


def test_where_days_and_answers_go_is_named_cell_by_cell():
    minimum = numbers("m", 1, (1, 100), (2, 0), title="Minimum order", per_quantity=True)
    calculation = calculated([minimum], {"Oxlip": [None]}, brief=Brief(item="mug", quantity=9, designs=3))
    table = calculation.case.table
    letters = {**table.letters, "Minimum is per": "D", "Asked on": "E"}
    case = replace(calculation.case, table=replace(table, letters=letters))
    (message,) = result_of(round_of(Calculation.of(case, AS_OF), WORDING), WORDING)["messages"]

    assert {"Asked on": "E2", "Answered on": None} == message["cells"]
    assert ["B2 and D2"] == [one["cells"] for one in message["questions"]]


def test_who_is_due_gets_a_reminder_with_its_open_questions():
    (reminder,) = round_of(mixed(), WORDING).reminders

    assert (1, 2) == (reminder.maker, len(questions_in(reminder.text)))
    assert "We wrote to you on 13 November 2026." in reminder.text


def test_a_longer_patience_makes_no_reminder():
    assert () == round_of(mixed(), WORDING, remind_after=8).reminders


def test_each_text_has_a_file_named_by_the_row_and_the_maker():
    names = ["02-oxlip-short", "02-oxlip-full", "03-tansy-short", "03-tansy-full", "03-tansy-reminder"]

    assert [f"{name}.txt" for name in names] == list(files_of(round_of(mixed(), WORDING)))


def test_hostile_names_give_harmless_file_names_and_one_line():
    calculation = calculated([numbers("a", 1)], {"../../etc\n<script>": [None], "COM1": [None]})
    made = round_of(calculation, WORDING)

    assert ["02-etc-script-short.txt", "02-etc-script-full.txt", "03-com1-short.txt", "03-com1-full.txt"] == list(
        files_of(made)
    )
    assert "Hello ../../etc <script>,\n" in made.messages[0].short


def test_the_users_wording_is_used():
    wording = replace(WORDING, short="{maker}|{item}|{asked_on}|{waited}|{questions}")
    message = round_of(mixed(), wording).messages[1]

    assert message.short.startswith("Tansy|enamel mug|on 13 November 2026|8 working days|1. Please tell us: A.\n2. ")


def test_a_name_that_looks_like_a_placeholder_stays_a_name():
    wording = replace(WORDING, short="{maker}")
    (message,) = round_of(calculated([numbers("a", 1)], {"{item}": [None]}), wording).messages

    assert "{item}" == message.short


def test_more_makers_than_anybody_writes_to_are_left_out_and_counted():
    made = round_of(calculated([numbers("a", 1)], {f"M{at}": [None] for at in range(MOST_MESSAGES + 3)}), WORDING)

    assert (MOST_MESSAGES, 3) == (len(made.messages), made.left_out)


def test_no_message_holds_none_or_an_unfilled_placeholder():
    whole = "".join(files_of(round_of(mixed(), WORDING)).values())

    assert (False, False, False) == ("None" in whole, "{" in whole, "nan" in whole.split())


def test_the_result_fits_its_schema():
    schema = json.loads(files("scorecard").joinpath("schemas", "enquire.json").read_text("utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    for named in (None, 0, 2):
        jsonschema.validate(result_of(round_of(mixed(), WORDING, named=named), WORDING), schema)


def test_the_result_tells_who_was_asked_and_who_is_due():
    (asked,) = result_of(round_of(mixed(), WORDING), WORDING)["asked"]

    assert {
        "maker": "Tansy",
        "asked_on": "2026-11-13",
        "answered_on": None,
        "working_days": 8,
        "due": True,
        "reminder_file": "03-tansy-reminder.txt",
    }.items() <= asked.items()


def test_a_maker_that_has_quoted_and_has_nothing_open_gets_nothing_now():
    made = round_of(Calculation.of(case_of({"Ash": 90, "Birch": 70}, {"Ash": 5}), AS_OF), WORDING)

    assert [(True, None), (False, "full")] == [(one.has_quoted, one.due) for one in made.messages]


def test_a_maker_that_has_quoted_is_still_asked_what_is_open():
    case = case_of({"Ash": None, "Birch": 70}, {"Ash": 5})
    made = round_of(Calculation.of(case, AS_OF), WORDING)

    assert ["short"] == [one.due for one in made.messages if one.has_quoted]


def test_the_count_of_questions_is_that_of_the_message_those_on_an_earlier_order_with_them():
    before = (Record(maker="Tansy", item="mug", ordered=date(2026, 3, 1), arrived=date(2026, 5, 1)),)
    case = make_case([numbers("a", 3), numbers("b", 2)], {"Tansy": [None, 5], "Oxlip": [3, None]})
    messages = round_of(Calculation.of(replace(case, memory=before), AS_OF), WORDING).messages

    assert [len(questions_in(one.short)) for one in messages] == [one.number for one in messages]
    assert {0: 3, 1: 1} == {one.maker: one.number for one in messages}
