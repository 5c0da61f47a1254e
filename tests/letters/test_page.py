"""The page to copy from."""

import re
from dataclasses import replace
from datetime import UTC, date, datetime
from html.parser import HTMLParser

import numpy as np
import pytest
from cases import AS_OF, make_case, numbers

from scorecard.calculation import Calculation
from scorecard.criteria import Limit
from scorecard.letters.messages import round_of
from scorecard.letters.page import page
from scorecard.letters.wording import KINDS, Wording, shipped
from scorecard.page_policy import policy_for

SHIPPED = Wording(**{kind: shipped(kind) for kind in KINDS})
WRITTEN = datetime(2026, 11, 25, 9, tzinfo=UTC)
ENQUIRE = "python -m scorecard enquire --folder mugs"
HOSTILE = "</textarea><script>alert(1)</script><b x='\""


class Texts(HTMLParser):
    """Gathers what stands in text boxes, and the names of all tags."""

    def __init__(self):
        super().__init__()
        self.tags, self.boxes, self.inside = [], [], False

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)
        if tag == "textarea":
            self.inside = True
            self.boxes.append("")

    def handle_endtag(self, tag):
        self.inside = self.inside and tag != "textarea"

    def handle_data(self, data):
        if self.inside:
            self.boxes[-1] += data


def made_round(names=("Oxlip", "Tansy", "Vane"), **details):
    day = float(date(2026, 11, 13).toordinal())
    case = make_case(
        [numbers("a", 3), numbers("b", 2, limit=Limit(at_least=10))],
        dict(zip(names, ([90, 90], [None, 20], [None, 2]), strict=True)),
        asked_on=np.array([np.nan, day, np.nan]),
        answered_on=np.full(3, np.nan),
        details=details,
    )
    return round_of(Calculation.of(case, AS_OF), SHIPPED)


def parsed(text):
    found = Texts()
    found.feed(text)
    return found


def test_every_text_stands_on_the_page_whole():
    made = made_round()
    boxes = [box.removeprefix("\n") for box in parsed(page(made, written=WRITTEN, enquire=ENQUIRE)).boxes]

    oxlip, tansy = made.messages
    assert [oxlip.full, oxlip.short, made.reminders[0].text, tansy.short, tansy.full] == boxes


def test_a_hostile_name_adds_no_tag():
    plain, hostile = (
        parsed(page(made_round(names), written=WRITTEN, enquire=ENQUIRE)).tags
        for names in (("Oxlip", "Tansy", "Vane"), ("Oxlip", HOSTILE, f"{HOSTILE}2"))
    )

    assert plain == hostile


def test_only_the_pages_own_style_is_allowed_and_no_script():
    text = page(made_round(), written=WRITTEN, enquire=ENQUIRE)
    style = re.search(r"<style>(.*?)</style>", text, re.DOTALL)[1]

    assert policy_for(style).replace("'", "&#39;") in text
    assert (False, False) == ("<script" in text, " style=" in text)


def test_the_same_round_gives_the_same_page():
    assert page(made_round(), written=WRITTEN, enquire=ENQUIRE) == page(made_round(), written=WRITTEN, enquire=ENQUIRE)


def test_it_says_who_gets_no_message_and_who_is_due():
    text = page(made_round(), written=WRITTEN, enquire=ENQUIRE)

    assert all(
        words in text
        for words in (
            "nothing to ask but the quote; to send now: full, 02-oxlip-full.txt",
            "Ruled out, so no message: <bdi>Vane</bdi>",
            "no answer for 8 working days; due a reminder; when it answers, Answered on: a new column",
            "to send now: reminder, 03-tansy-reminder.txt",
        )
    )


def test_long_lists_of_names_are_cut_and_say_so():
    case = make_case([numbers("a", 1, limit=Limit(at_least=9))], {f"M{at}": [5] for at in range(60)})
    text = page(round_of(Calculation.of(case, AS_OF), SHIPPED), written=WRITTEN, enquire=ENQUIRE)

    assert "<bdi>M49</bdi>, <bdi>10 more in enquiries.json</bdi>." in text


def test_a_named_maker_stands_first_with_what_rules_it_out_and_the_others_stay():
    made = made_round()
    named = round_of(made.calculation, SHIPPED, named=2)
    text = page(named, written=WRITTEN, enquire=ENQUIRE)

    assert ["Vane", "Oxlip", "Tansy"] == re.findall("<h3><bdi>(.*?)</bdi></h3>", text)[:3]
    assert "<bdi>Vane</bdi>, whom you named, stands first" in text
    assert "ruled out: B: 2 is below the limit of 10" in text


def test_under_each_maker_stands_where_days_and_answers_go():
    made = made_round()
    table = made.calculation.case.table
    lettered = replace(table, letters={**table.letters, "Asked on": "E"})
    case = replace(made.calculation.case, table=lettered)
    text = page(round_of(Calculation.of(case, AS_OF), SHIPPED), written=WRITTEN, enquire=ENQUIRE)

    assert "Into the sheet: Asked on: E3; Answered on: a new column; answer 1: B3." in text


def test_the_text_to_send_now_stands_first_and_says_so():
    text = page(made_round(), written=WRITTEN, enquire=ENQUIRE)

    assert [
        "Full message: <b>send now</b>",
        "Short message",
        "Reminder: <b>send now</b>",
        "Short message",
        "Full message",
    ] == re.findall("<summary>(.*?)</summary>", text)


def test_every_command_is_as_the_user_starts_the_tool():
    text = page(made_round(), written=WRITTEN, enquire=ENQUIRE)

    assert {f"{ENQUIRE} --templates", f"{ENQUIRE} --maker NAME"} == set(re.findall("<code>(.*?)</code>", text))


@pytest.mark.parametrize(
    "words",
    [
        "Stay in the channel whose protection you rely on",
        "A bank transfer seldom comes back",
        "confirm them by a phone number that you already had",
        "Never send the print file first",
    ],
)
def test_the_cautions_stand_before_the_messages(words):
    assert words in page(made_round(), written=WRITTEN, enquire=ENQUIRE).split("<h2>Messages</h2>")[0]


def test_where_everybody_is_ruled_out_the_page_says_so_and_promises_no_order():
    case = make_case([numbers("a", 1, limit=Limit(at_least=9))], {"Oxlip": [5]})
    text = page(round_of(Calculation.of(case, AS_OF), SHIPPED), written=WRITTEN, enquire=ENQUIRE)

    assert ("Ruled out, so no message: <bdi>Oxlip</bdi>" in text, "by rank" in text) == (True, False)


def test_it_advises_a_small_marked_picture():
    assert "small picture of your artwork with your name across it." in page(
        made_round(), written=WRITTEN, enquire=ENQUIRE
    )


def test_contacts_are_left_out_unless_asked_for():
    made = made_round(**{"Contact": ("", "ask@tansy.example", ""), "Web page": ("", "javascript:alert(1)", "")})

    assert "tansy.example" not in page(made, written=WRITTEN, enquire=ENQUIRE)
    assert "<bdi>ask@tansy.example</bdi>" in page(made, written=WRITTEN, enquire=ENQUIRE, with_contacts=True)
    assert "href" not in page(made, written=WRITTEN, enquire=ENQUIRE, with_contacts=True).split("</style>")[1]


def test_a_web_page_is_a_link_that_shows_its_host():
    made = made_round(**{"Web page": ("", "https://tansy.example/mugs", "")})

    assert '<a href="https://tansy.example/mugs"' in page(made, written=WRITTEN, enquire=ENQUIRE, with_contacts=True)


@pytest.mark.browser
def test_a_box_is_tall_enough_and_copies_whole(browser):
    made = made_round()
    context = browser.new_context(offline=True, viewport={"width": 360, "height": 800})
    shown = context.new_page()
    errors = []
    shown.on("console", lambda message: errors.append(message.text) if message.type == "error" else None)
    shown.set_content(page(made, written=WRITTEN, enquire=ENQUIRE))
    box = shown.locator("textarea").first
    box.click()
    shown.keyboard.press("Control+A")
    chosen, hidden, wide = box.evaluate(
        "b => [b.value.slice(b.selectionStart, b.selectionEnd), b.scrollHeight - b.clientHeight,"
        " document.documentElement.scrollWidth - innerWidth]"
    )
    context.close()

    assert (made.messages[0].full, [], True, True) == (chosen, errors, hidden <= 1, wide <= 0)
